"""The short table that a draft prints on the terminal."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from drafting.errors import Problem
from drafting.fit_report import crotch_line, girth_lines
from outputs.fit_words import bare, level_name, mark_of, origin_mark
from outputs.units import Unit, format_length
from styles.jeans import Jeans

_WIDTH = 80
"""Letters in a line: what every terminal shows and every mail keeps."""

_HEADS = {Unit.MM: "in mm", Unit.CM: "in cm", Unit.INCH: "in inches"}
_ROW = "{:<13}{:>10}{:>10}{:>10}  {}"


def summary_lines(jeans: Jeans, unit: Unit, warnings: tuple[Problem, ...]) -> Iterator[str]:
    """Yield body, ease and pattern at each level, the seam lengths, and every warning, in 80 letters a line.

    Args:
        jeans: what was drafted.
        unit: unit of every number.
        warnings: what the measurements file gave rise to.
    """

    def show(mm: float | None) -> str:
        return bare(mm, unit)

    block = jeans.block
    yield _row(_HEADS[unit], "body", "ease", "pattern")
    for line in girth_lines(block):
        mark = origin_mark(line.origin, line.spread, unit) + ("" if line.enough else ", SHORT")
        yield _row(level_name(line), show(line.body), show(line.ease), show(line.pattern), mark)
    crotch = crotch_line(block)
    body = None if crotch.target is None else crotch.target - block.ease.crotch
    ease = None if body is None else crotch.total - body
    mark = mark_of(block.body.values.get("total_crotch_length"), unit)
    yield _row("crotch seam", show(body), show(ease), show(crotch.total), mark)

    yield ""
    yield _row("", "front", "back")
    for half in block.halves:
        side = f" {half.side.value}" if half.side else ""
        front, back = half.front, half.back
        inseams = show(front.panel.inseam.length), show(back.panel.inseam.length)
        yield _row(f"inseam{side}", *inseams)
        yield _row(f"outseam{side}", show(front.side.length), show(back.side.length))

    yield ""
    yield _row("above floor", "height")
    for name in ("waist", "hip", "crotch", "knee"):
        if name == "crotch":
            lower = block.body["inside_leg_height"].mm - block.levels.crotch.mm
            mark = f"{show(abs(lower))} {'below' if lower >= 0 else 'above'} the body's own"
        else:
            mark = mark_of(block.body.values.get(f"{name}_height"), unit)
        yield f"{_row(f'{name} level', show(block.body[f'{name}_height'].mm))}  {mark}"

    for problem in warnings:
        yield from wrapped(f"warning: {problem}")
    for finding in jeans.pattern.findings:
        said = finding.say(lambda mm: format_length(mm, unit))
        yield from wrapped(f"{finding.level.value}: {finding.where}: {said}")


def _row(name: str, first: str, second: str = "", third: str = "", remark: str = "") -> str:
    return _ROW.format(name, first, second, third, remark).rstrip()


def wrapped(text: str) -> list[str]:
    """Return a message as lines of at most 80 letters, those after the first set in."""
    return textwrap.wrap(text, _WIDTH, subsequent_indent="  ", break_on_hyphens=False)
