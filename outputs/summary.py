"""The short table that a draft prints on the terminal."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from drafting.errors import Problem
from drafting.fit_report import crotch_line, girth_lines
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
        return "–" if mm is None else _bare(mm, unit)

    block = jeans.block
    yield _row(_HEADS[unit], "body", "ease", "pattern")
    for line in girth_lines(block):
        remarks = ["body estimated ± " + show(line.spread)] if line.spread else []
        remarks += [] if line.enough else ["SHORT"]
        name = "hem over heel" if line.level == "hem" else line.level
        yield _row(name, show(line.body), show(line.ease), show(line.pattern), ", ".join(remarks))
    crotch = crotch_line(block)
    body = None if crotch.target is None else crotch.target - block.ease.crotch
    ease = None if body is None else crotch.total - body
    yield _row("crotch seam", show(body), show(ease), show(crotch.total))

    yield ""
    yield _row("", "front", "back")
    for half in block.halves:
        side = f" {half.side.value}" if half.side else ""
        front, back = half.front, half.back
        inseams = show(front.panel.inseam.length), show(back.panel.inseam.length)
        yield _row(f"inseam{side}", *inseams)
        yield _row(f"outseam{side}", show(front.side.length), show(back.side.length))
    lower = block.body["inside_leg_height"].mm - block.levels.crotch.mm
    place = "below" if lower >= 0 else "above"
    yield f"{_row('crotch level', show(abs(lower)))}  {place} the body's own"

    for problem in warnings:
        yield from wrapped(f"warning: {problem}")
    for finding in jeans.pattern.findings:
        said = finding.say(lambda mm: format_length(mm, unit))
        yield from wrapped(f"{finding.level.value}: {finding.where}: {said}")


def _row(name: str, first: str, second: str = "", third: str = "", remark: str = "") -> str:
    return _ROW.format(name, first, second, third, remark).rstrip()


def _bare(mm: float, unit: Unit) -> str:
    """Return a length without its unit, which stands at the head of the table."""
    return format_length(mm, unit).removesuffix(f" {unit.value}")


def wrapped(text: str) -> list[str]:
    """Return a message as lines of at most 80 letters, those after the first set in."""
    return textwrap.wrap(text, _WIDTH, subsequent_indent="  ", break_on_hyphens=False)
