"""Styles in lines: the catalogue in short, and one style with all its settings."""

from __future__ import annotations

import math
import textwrap
from collections.abc import Iterable, Iterator

from drafting.base.units import Unit
from drafting.block.leg_shape import LegCut
from outputs.lines.wrapped import WIDTH
from styles.choice.setting_values import show_value
from styles.choice.settings import SETTINGS, value_of
from styles.choice.style import Style

_NAME, _KEY, _VALUE = 10, 26, 16
"""Letters of the columns of names, of settings and of their values."""


def catalogue_lines(styles: Iterable[Style], unit: Unit) -> Iterator[str]:
    """Yield what each style is like, its rise, the cloth that it needs, and its leg."""
    for style in styles:
        rise, leg = _rise(style, unit), _leg(style.leg, unit)
        for number, words in enumerate((style.says, f"{rise}; {_cloth(style)}", f"leg: {leg}")):
            yield from _hung("" if number else style.name, _NAME, words)


def setting_lines(style: Style, unit: Unit) -> Iterator[str]:
    """Yield every setting of a style by the name that --set takes, its value and its meaning."""
    yield f"{style.name}: {style.says}"
    for key, setting in SETTINGS.items():
        value = None if key == "below_waist" and style.rise else value_of(style, key)
        shown = show_value(key, value, unit) or "–"
        yield from _hung(f"{key:<{_KEY}}{shown}", _KEY + _VALUE, setting.says)


def _hung(head: str, width: int, words: str) -> list[str]:
    """Return the words beside their head, all their lines beginning after `width` letters."""
    indent = " " * width
    return textwrap.wrap(
        words,
        WIDTH,
        initial_indent=f"{head:<{width - 1}} ",
        subsequent_indent=indent,
        break_on_hyphens=False,
    )


def _rise(style: Style, unit: Unit) -> str:
    if style.rise is not None:
        return f"{style.rise.value} rise"
    where = "above" if style.below_waist < 0 else "below"
    return f"{show_value('below_waist', abs(style.below_waist), unit)} {where} the waist"


def _cloth(style: Style) -> str:
    least = style.least_stretch
    return f"cloth that stretches by {least:g} % or more" if least else "rigid denim will do"


def _leg(cut: LegCut, unit: Unit) -> str:
    def said(key: str) -> str:
        return show_value(f"leg.{key}", getattr(cut, key), unit)

    if cut.short:
        ends = f"ends {said('hem_above_knee')} of the way from knee to crotch"
        return f"knee {said('knee_of_hip')} of the hip girth; {ends}"
    parts = [f"knee {said('knee_of_hip')}, hem {said('hem_of_hip')} of the hip girth"]
    least, most = cut.hem_least > 0, math.isfinite(cut.hem_most)
    if least or most:
        words = ("at least " * (not most) + said("hem_least")) * least
        parts.append(f"hem {' to '.join(filter(None, (words, said('hem_most'))))}")
    if cut.hem_below_knee < 1:
        parts.append(f"ends {said('hem_below_knee')} of the way from knee to floor")
    elif cut.hem_above_floor:
        parts.append(f"ends {said('hem_above_floor')} above the floor")
    return "; ".join(parts)
