"""Two versions of a pattern in lines: what differs, what moved how far, and by which input."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence

import numpy as np

from drafting.base.units import Unit, format_length
from drafting.pieces.words import piece_name
from drafting.report.moves import Amounts
from outputs.compare.versions import Move, TwoVersions
from outputs.compare.words import LEAST_MOVE, letter, moved_enough
from outputs.fit.fit_words import bare
from outputs.lines.wrapped import WIDTH, wrapped
from outputs.reading.draft_record import Inputs, tool_version

_LEAST_SHARE = {Unit.MM: 0.1, Unit.CM: 0.1, Unit.INCH: 25.4 / 32}
"""A smaller share is not told, mm."""

_NAME, _SHARES_AT = 32, 52
"""Where the name ends and the shares begin in a line, letters."""


def version_lines(versions: TwoVersions) -> Iterator[str]:
    """Yield the inputs that differ, then every length, point and edge that moved, in lines of 80 letters."""
    unit = versions.new.unit
    for name, inputs in (("old", versions.old), ("new", versions.new)):
        yield from wrapped(f"{name}: {_title(inputs)}")
    yield ""
    if not versions.changes:
        yield "Nothing differs that a draft is made from."
    for index, change in enumerate(versions.changes):
        yield from wrapped(f"{letter(index)}  {change.what}: {change.old}, now {change.new}")
        for problem in versions.not_alone.get(index, ()):
            yield from (f"   not drafted alone: {line}" for line in wrapped(problem.message)[:1])
    yield from _pieces(versions)
    several = len(versions.changes) > 1
    if several:
        yield ""
        yield from wrapped(
            "Behind a move stands the share of each input: what it does when it alone is changed. The rest "
            'is "together": what the inputs do to each other, and what cannot be changed alone.'
        )
    by = "in" if unit is Unit.INCH else "mm"
    now = f"now, {unit.value}"
    yield ""
    yield f"{'lengths of the block':<32}{now:>10}{f'by, {by}':>10}"
    yield from _lengths(versions.lengths, unit, several=several)
    yield ""
    yield from wrapped(
        "points of the block: across, + towards the inseam and - towards the side seam; up, + higher"
    )
    yield f"{'':<32}{'across':>10}{'up':>10}"
    yield from _points(versions.points, unit, several=several)
    yield ""
    yield f"{'edges of the pieces':<32}{now:>10}{f'by, {by}':>10}"
    yield from _lengths(versions.edges, unit, several=several)


def signed(mm: float, unit: Unit) -> str:
    """Return a move with its sign: "+18.4" in mm, "-5/16" in inches; "0" for one that is none."""
    if abs(mm) < LEAST_MOVE[unit] / 10:
        return "0"
    if unit is not Unit.INCH:
        return f"{mm:+.1f}"
    text = format_length(abs(mm), unit).removesuffix(" in")
    return text if text == "0" else f"{'-' if mm < 0 else '+'}{text}"


def _title(inputs: Inputs) -> str:
    made = f", drafted by version {inputs.version}" if inputs.version != tool_version() else ""
    return ", ".join(part for part in (inputs.wearer, inputs.taken_on, inputs.style.name) if part) + made


def _pieces(versions: TwoVersions) -> Iterator[str]:
    for said, pieces in (("no longer there", versions.gone), ("new pieces", versions.added)):
        if pieces:
            yield from wrapped(f"{said}: {', '.join(map(piece_name, pieces))}")


def _lengths(moves: Sequence[Move], unit: Unit, *, several: bool) -> Iterator[str]:
    for move in moves:
        if moved_enough(move, unit):
            now, by = bare(float(move.now[0]), unit), signed(float(move.by[0]), unit)
            yield from _rows(move, now, by, unit, several=several)
    yield from _unmoved(moves, unit)


def _points(moves: Sequence[Move], unit: Unit, *, several: bool) -> Iterator[str]:
    for move in moves:
        if moved_enough(move, unit):
            across, up = (signed(float(mm), unit) for mm in move.by)
            yield from _rows(move, across, up, unit, several=several)
    yield from _unmoved(moves, unit)


def _rows(move: Move, first: str, second: str, unit: Unit, *, several: bool) -> Iterator[str]:
    """Yield a name with its two columns, under it where it is too long for one line, and the shares."""
    name = move.name
    if len(name) >= _NAME:
        yield name
        name = ""
    row = f"{name:<{_NAME}}{first:>10}{second:>10}"
    yield from _with_shares(row, move, unit) if several else (row,)


def _unmoved(moves: Sequence[Move], unit: Unit) -> Iterator[str]:
    count = sum(not moved_enough(move, unit) for move in moves)
    if count:
        yield f"  {count} of {len(moves)} stay within {'1/32 in' if unit is Unit.INCH else '0.5 mm'}"


def _with_shares(row: str, move: Move, unit: Unit) -> Iterator[str]:
    named = [(letter(index), share) for index, share in enumerate(move.shares)]
    said = [
        f"{name} {_said(share, unit)}"
        for name, share in (*named, ("together", move.together))
        if np.hypot.reduce(share) >= _LEAST_SHARE[unit]
    ]
    # Words that belong together stay together at the end of a line.
    joined = " ".join(f"{text.replace(' ', chr(160))}," for text in said).rstrip(",")
    lines = textwrap.wrap(joined, WIDTH - _SHARES_AT - 2, break_on_hyphens=False) or [""]
    for number, line in enumerate(lines):
        start = row if number == 0 else ""
        yield f"{start:<{_SHARES_AT}}  {line.replace(chr(160), ' ')}".rstrip()


def _said(share: Amounts, unit: Unit) -> str:
    return "/".join(signed(float(mm), unit) for mm in share)
