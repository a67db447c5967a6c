"""The short table that a draft prints on the terminal."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.base.errors import Problem
from drafting.base.findings import Show
from drafting.base.units import Unit, format_length
from drafting.body.corrections import CORRECTIONS
from drafting.body.words import SIDES
from drafting.report.corrections import CHANGED_LENGTHS, LEAST_CHANGE, LengthChange
from drafting.report.fit import crotch_line, girth_lines
from outputs.fit.fit_words import UNIT_HEADS, bare, level_name, mark_of, origin_mark
from outputs.lines.wrapped import wrapped
from styles.cloth.shrinkage_and_stretch import Cloth, width_off
from styles.making.fitted import jeans_changes
from styles.making.jeans import Jeans

_ROW = "{:<15}{:>10}{:>10}{:>10}  {}"


def summary_lines(jeans: Jeans, unit: Unit, warnings: tuple[Problem, ...]) -> Iterator[str]:
    """Yield body, ease and pattern at each level, the seam lengths, and every warning, in 80 letters a line.

    Args:
        jeans: what was drafted.
        unit: unit of every number.
        warnings: what the measurements file gave rise to.
    """

    def show(mm: float | None) -> str:
        return bare(mm, unit)

    def whole(mm: float) -> str:
        return format_length(mm, unit)

    block = jeans.block
    yield _row(UNIT_HEADS[unit], "body", "ease", "pattern")
    for line in girth_lines(block):
        mark = origin_mark(line.origin, line.spread, unit) + ("" if line.enough else ", SHORT")
        yield _row(level_name(line), show(line.body), show(line.ease), show(line.pattern), mark)
    crotch = crotch_line(block)
    body = None if crotch.target is None else crotch.target - block.ease.crotch - crotch.corrected
    ease = None if body is None else crotch.total - body
    mark = mark_of(block.body.values.get("total_crotch_length"), unit)
    yield _row("crotch seam", show(body), show(ease), show(crotch.total), mark)

    yield ""
    yield _row("", "front", "back")
    for half in block.halves:
        side = f" {SIDES[half.side]}" if half.side else ""
        front, back = half.front, half.back
        inseams = show(front.lower.inseam.length), show(back.lower.inseam.length)
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

    if changes := jeans_changes(jeans):
        yield ""
        yield from _corrected(jeans, changes, unit)

    yield ""
    yield from _making(jeans, whole)
    for problem in warnings:
        yield from wrapped(f"warning: {problem}")
    for finding in jeans.pattern.findings:
        if finding.code == CHANGED_LENGTHS:
            continue  # they stand in the table above
        said = finding.say(whole)
        yield from wrapped(f"{finding.severity.value}: {finding.where}: {said}")


def _corrected(jeans: Jeans, changes: tuple[LengthChange, ...], unit: Unit) -> Iterator[str]:
    """Yield what was seen on the toile, and the lengths that it changed."""
    seen = [
        f"{CORRECTIONS[key].term} {format_length(mm, unit)}" for key, mm in jeans.block.corrections.items()
    ]
    yield from wrapped(f"corrected after the fitting: {'; '.join(seen)}")
    yield _changed("", "toile", "now", "change")
    for change in changes:
        if abs(change.by) >= LEAST_CHANGE:
            by = ("+" if change.by > 0 else "") + bare(change.by, unit)
            yield _changed(change.name, bare(change.before, unit), bare(change.after, unit), by)


def _changed(name: str, before: str, after: str, by: str) -> str:
    # The lengths stand in the columns of the tables above, whose names are shorter.
    return f"{name:<23}{before:>10}{after:>10}{by:>10}"


def _making(jeans: Jeans, show: Show) -> Iterator[str]:
    """Yield how many pieces there are, what is to buy, whether all meet, and what the cloth does."""
    style, below = jeans.style, jeans.style.below_waist
    worn = f"{show(abs(below))} {'below' if below > 0 else 'above'} the waist" if below else "at the waist"
    band = f"{style.band.value} waistband of {show(jeans.band_length)}"
    yield from wrapped(f"{len(jeans.pattern.pieces)} pieces: {band}, worn {worn}, {style.laps.value}")
    bought = [
        (f"{notion.count} x " if notion.count > 1 else "")
        + notion.name
        + (f", {show(notion.length)}" if notion.length else "")
        for notion in jeans.notions
    ]
    yield from wrapped(f"to buy: {'; '.join(bought)}")
    yield from wrapped(_trueing(jeans))
    if cloth := _cloth(jeans.cloth):
        yield from wrapped(f"cloth: {cloth}")


def _trueing(jeans: Jeans) -> str:
    miss = [check.name for check in jeans.seams if not check.passes]
    miss += [check.name for check in jeans.corners if not check.passes]
    among = f"{len(jeans.seams)} seams and {len(jeans.corners)} joined corners"
    return f"trueing: {among}, {'all meet' if not miss else 'these do not meet: ' + ', '.join(miss)}"


def _cloth(cloth: Cloth) -> str:
    """Return what is reckoned with; nothing for rigid denim that was washed."""
    said = []
    if cloth.lengthwise_change or cloth.crosswise_change:
        said += [f"cut unwashed, drawn for {cloth.lengthwise_change:g} % lengthwise"]
        said += [f"{cloth.crosswise_change:g} % crosswise"]
    if cloth.stretch:
        said += [
            f"{cloth.stretch:g} % of stretch, {width_off(cloth.stretch):.1%} taken off the widths for it"
        ]
    return ", ".join(said)


def _row(name: str, first: str, second: str = "", third: str = "", remark: str = "") -> str:
    return _ROW.format(name, first, second, third, remark).rstrip()
