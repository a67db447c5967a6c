"""What can be set in a style: every setting by its name, with its range, what it means, and how to set it.

Names of a group are "group.setting", such as "leg.knee_of_hip". Defaults and their sources stand with the
fields of `styles.choice.style` and `drafting.block.leg_shape`.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from enum import Enum
from functools import reduce
from importlib import import_module
from typing import Any

from styles.choice.kinds import kinds_in
from styles.choice.style import BackCut, Band, Felling, Fly, Laps, Rise, Style


class SettingKind(Enum):
    """What kind of value a setting takes."""

    LENGTH = "length"
    """Held in mm."""
    PERCENT = "percentage"
    """Held as typed."""
    SHARE = "share"
    """Typed as a percentage, held as a share of 1."""
    CHOICE = "choice"
    """One of some words; held is a member of an Enum, or of a kind that is a module its word."""
    YES_OR_NO = "yes or no"


@dataclass(frozen=True)
class Setting:
    """One setting.

    Attributes:
        kind: What value it takes.
        says: What it means.
        least: Smallest plausible value as held; of a choice and of yes or no 0.
        most: Largest plausible value as held.
        choices: Gives the words of a choice, each with what is held for it.
    """

    kind: SettingKind
    says: str
    least: float = 0.0
    most: float = 0.0
    choices: Callable[[], Mapping[str, Any]] = dict


def _length(least: float, most: float, says: str) -> Setting:
    return Setting(SettingKind.LENGTH, says, least, most)


def _share(least: float, most: float, says: str) -> Setting:
    return Setting(SettingKind.SHARE, says, least, most)


def _choice(choices: type[Enum], says: str) -> Setting:
    members: dict[str, Any] = {str(member.value): member for member in choices}
    return Setting(SettingKind.CHOICE, says, choices=lambda: members)


def _kind(package: str, says: str) -> Setting:
    # Loaded and listed when it is asked for: packages of shapes need the geometry, and new modules count.
    return Setting(
        SettingKind.CHOICE, says, choices=lambda: {word: word for word in kinds_in(import_module(package))}
    )


# Ranges: from the narrowest to the widest that is worn or sewn (common practice, no source).
SETTINGS: Mapping[str, Setting] = {
    "rise": _choice(
        Rise, "how high the jeans reach, by your own trunk; below_waist sets it to a length instead"
    ),
    "below_waist": _length(-50, 120, "how far below the waist the jeans sit; a minus for above"),
    "least_stretch": Setting(
        SettingKind.PERCENT, "the crosswise stretch that the cloth needs at least", 0, 100
    ),
    "band": _choice(Band, "a waistband in parts that follow the body, or one straight strip"),
    "band_height": _length(20, 90, "finished height of the waistband"),
    "turn_up": _length(0, 120, "depth of a turn-up at the hem; 0 for none"),
    "back": _choice(BackCut, "a yoke, or a dart in a back that reaches up to the band"),
    "yoke_centre": _length(20, 140, "depth of the yoke at the centre back, below the band"),
    "yoke_side": _length(20, 120, "depth of the yoke at the side seam; less than at the centre slants it"),
    "fly_width": _length(25, 60, "from the centre front to the topstitching of the fly"),
    "fly": _choice(Fly, "what closes the fly below the band"),
    "laps": _choice(Laps, "which front lies on top at the fly"),
    "interfacing": Setting(
        SettingKind.YES_OR_NO, "whether waistband and fly facing get pieces that stiffen them"
    ),
    "leg.knee_of_hip": _share(0.3, 0.9, "knee girth, of the hip girth; never tighter than your knee"),
    "leg.hem_of_hip": _share(0.2, 1.2, "hem girth, of the hip girth; never tighter than your heel"),
    "leg.hem_least": _length(0, 1200, "no narrower hem"),
    "leg.hem_most": _length(200, math.inf, "no wider hem, unless your calf or heel needs it"),
    "leg.break_above_knee": _length(0, 80, "how far above your knee the leg breaks"),
    "leg.hem_above_floor": _length(-30, 200, "where a leg of full length ends, barefoot"),
    "leg.hem_below_knee": _share(0.1, 1, "where a cropped leg ends, of the way from knee to floor"),
    "leg.hem_above_knee": _share(0, 0.6, "where shorts end, of the way from knee to crotch; 0 for long legs"),
    "ease.waist": _length(-20, 60, "room at the waist"),
    "ease.hip": _length(-60, 250, "room at the hip"),
    "ease.thigh": _length(-40, 250, "least room at the thigh"),
    "ease.knee": _length(-30, 300, "least room at the knee"),
    "ease.calf": _length(-30, 300, "least room at the calf"),
    "ease.heel": _length(-60, 200, "least room of the hem over the heel; below 0 for a slit or zip"),
    "ease.crotch": _length(-10, 60, "added to the crotch length"),
    "front_pocket.kind": _kind("styles.front_pockets", "how its opening runs"),
    "front_pocket.width": _length(40, 170, "how far its opening reaches along the waist"),
    "front_pocket.depth": _length(30, 220, "how far its opening reaches down the side seam"),
    "front_pocket.scoop": _share(0, 1, "of the kind scoop: 0 for a straight slant, up to 100 for a deep one"),
    "front_pocket.watch": Setting(SettingKind.YES_OR_NO, "whether the right one carries a watch pocket"),
    "back_pocket.shape": _kind("styles.back_pockets", "its outline"),
    "back_pocket.opening": _share(0.06, 0.25, "its width, of the hip girth"),
    "back_pocket.height": _share(0.6, 1.5, "height of its sides, of its width"),
    "back_pocket.taper": _length(-10, 30, "how much narrower it is at the bottom, each side"),
    "back_pocket.point": _length(0, 60, "how far its bottom hangs below the sides"),
    "back_pocket.below_yoke": _length(10, 120, "its top edge below the yoke seam"),
    "back_pocket.from_centre": _length(20, 120, "its inner corner from the centre back"),
    "allowances.waist": _length(0, 40, "seam allowance at the waist"),
    "allowances.side_seam": _length(0, 40, "at the side seam"),
    "allowances.inseam": _length(0, 40, "at the inseam"),
    "allowances.crotch_seam": _length(0, 40, "at the crotch seam"),
    "allowances.yoke": _length(0, 40, "at the yoke seam"),
    "allowances.small": _length(0, 25, "round pockets, facings, fly and band ends"),
    "allowances.hem": _length(0, 100, "at the hem, turned up twice by half"),
    "allowances.felling": _choice(Felling, "plain and overlocked, or flat-felled with unequal allowances"),
    "allowances.felled_wide": _length(0, 40, "felled: the side that folds over"),
    "allowances.felled_narrow": _length(0, 40, "felled: the side folded in"),
}


def value_of(style: Style, key: str) -> Any:
    """Return the value of a setting as held."""
    return reduce(getattr, key.split("."), style)


def with_settings(style: Style, values: Mapping[str, Any]) -> Style:
    """Return the style with some settings, by name, as held; what sets the rise last counts."""
    return reduce(lambda made, item: _with(made, *item), values.items(), style)


def _with(style: Style, key: str, value: Any) -> Style:
    group, _, name = key.rpartition(".")
    if group:
        return replace(style, **{group: replace(getattr(style, group), **{name: value})})
    if name == "below_waist":
        return replace(style, rise=None, below_waist=value)
    return replace(style, **{name: value})


def fighting(values: Mapping[str, Any], style: Style) -> Iterator[tuple[str, str]]:
    """Yield the settings that exclude each other: a name, and what is the matter with it.

    Args:
        values: What was set.
        style: The style that this makes.
    """
    if "rise" in values and "below_waist" in values:
        yield "below_waist", "The rise is set as well; keep one of the two."
    if style.leg.hem_least > style.leg.hem_most:
        yield "leg.hem_least", "The narrowest hem is wider than the widest, leg.hem_most."
    if style.leg.short and style.leg.hem_below_knee < 1:
        yield (
            "leg.hem_below_knee",
            "The hem cannot lie both below and above the knee; see leg.hem_above_knee.",
        )
