"""Sheet 1 of the tiled pattern: no pattern on it, but all that is needed to print and tape the rest truly."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from drafting.pattern import Pattern
from drafting.points import Point
from outputs.canvas import Canvas, Role, line
from outputs.layout import StandingPiece
from outputs.lettering import Column, Line, shortened
from outputs.piece_text import TOLERANCE, check_length, taken
from outputs.scale_test import (
    BAR,
    L_DEPTH,
    SIDE,
    SIZE,
    SQUARE,
    TICK,
    draw_factor_table,
    draw_scale_figure,
    write_causes,
)
from outputs.sheet_map import HEAD, SheetMap
from outputs.tiling import Tiling

HEADING = 3.6
BODY = 2.8
GUTTER = 7.0
HEADER = 17.0
"""Height of the title at the top of a sheet, mm."""
TAPING = (
    "Check the 50 mm bars of every sheet.",
    "Cut off the right and the top edge along the dotted line where ✂ stands; leave left and bottom.",
    "Tape each row from left to right: lay the cut edge on the dotted line of the next sheet.",
    "Lay the cut top edge of each row on the dotted line of the row above it.",
    "Go by the crosses on the joins, not by the paper's edge. Crossed-out places on the map are empty; "
    "no sheet is printed for them.",
)


def cutting_list(pieces: Sequence[StandingPiece]) -> list[str]:
    """Return what is cut from each cloth, such as "Denim: 1 front leg ×2, 2 back leg ×2."."""
    cloths: dict[str, list[str]] = {}
    for placed in pieces:
        cutting = placed.piece.cutting
        name = placed.piece.name.removesuffix(f" {cutting.material.value}")
        cloths.setdefault(cutting.material.value, []).append(f"{placed.number} {name} ×{cutting.quantity}")
    return [f"{cloth.capitalize()}: {', '.join(names)}." for cloth, names in cloths.items()]


def check_lengths(tiling: Tiling) -> list[str]:
    """Return the grain lines that run over several sheets, as lengths to measure on the taped pattern."""
    long = [p for p in tiling.layout.pieces if p.piece.grain.length > tiling.format.height]
    return [check_length(p.number, p.piece) for p in long]


def draw_header(canvas: Canvas, tiling: Tiling, pattern: Pattern, *, sheet: int, sheets: int) -> float:
    """Draw the title at the top of a sheet and return the height of its foot."""
    paper = tiling.format.paper
    left, right, top = paper.margin, paper.width - paper.margin, paper.height - paper.margin
    place = f"sheet {sheet} of {sheets}  ·  {paper.label}"
    room = right - left - canvas.text_width(place, BODY) - 6
    canvas.text(shortened(canvas, pattern.wearer, room, 6.5, bold=True), Point(left, top - 6), 6.5, bold=True)
    canvas.text(place, Point(right - canvas.text_width(place, BODY), top - 6), BODY)
    subtitle = "  ·  ".join(filter(None, (pattern.style, taken(pattern))))
    canvas.text(shortened(canvas, subtitle, right - left, 3.6), Point(left, top - 12), 3.6)
    canvas.stroke(line((left, top - 15), (right, top - 15)), Role.FRAME)
    return top - HEADER


def draw_cover(canvas: Canvas, tiling: Tiling, pattern: Pattern, *, first: int, sheets: int) -> None:
    """Draw sheet 1.

    Args:
        canvas: The sheet.
        tiling: The sheets of the pattern.
        pattern: What is printed.
        first: The sheet number of the first tile.
        sheets: How many sheets there are in all.
    """
    paper = tiling.format.paper
    left, right, bottom = paper.margin, paper.width - paper.margin, paper.margin
    top = draw_header(canvas, tiling, pattern, sheet=1, sheets=sheets)
    foot = top - SIDE - 1
    draw_scale_figure(canvas, Point(left, foot))
    _write_print_advice(canvas, tiling, left=left + TICK + L_DEPTH + 5, top=top, first=first, last=sheets)
    _write_measuring(canvas, left=left + TICK + L_DEPTH + SQUARE + 4, foot=foot + TICK + L_DEPTH)
    beside = left + SIDE + GUTTER
    table = draw_factor_table(canvas, left=beside, top=top, width=min(right - beside, 75))
    causes = Column(canvas, left=beside, top=table - 1, width=right - beside, bottom=foot)
    causes.write(Line("What such readings come from", SIZE, bold=True), gap=0.4)
    write_causes(causes, paper)

    canvas.stroke(line((left, foot - 2), (right, foot - 2)), Role.FRAME)
    top = foot - 5
    half = (right - left - GUTTER) / 2
    pieces = [Line("Pieces to cut", HEADING, bold=True)]
    pieces += [Line(words, BODY) for words in cutting_list(tiling.layout.pieces)]
    column = Column(canvas, left=left, top=top, width=half, bottom=bottom)
    column.write(Line("Map of the sheets", HEADING, bold=True))
    foot = bottom + column.height(*pieces) + 3
    key = Column(canvas, left=left + HEAD, top=foot + 9, width=half - HEAD, bottom=foot)
    sheet_map = SheetMap(canvas, tiling, left=left, top=column.y, width=half, height=column.y - key.y)
    sheet_map.draw(first=first)
    key.y = sheet_map.bottom - 1.5
    key.write(Line("Small numbers: sheets, in the order of taping. In rings: pieces.", BODY), gap=0)
    column.y = key.y - 3
    column.write(*pieces)
    column = Column(canvas, left=left + half + GUTTER, top=top, width=half, bottom=bottom)
    _write_taping(column, tiling)
    if pattern.verdict:
        column.write(Line("Do the pieces meet?", HEADING, bold=True), Line(pattern.verdict, BODY))


def _write_print_advice(
    canvas: Canvas, tiling: Tiling, *, left: float, top: float, first: int, last: int
) -> None:
    steps = (
        f"Paper {tiling.format.paper.label}, one side, upright.",
        "In the print window choose “actual size”, “100 %” or “no scaling”.",
        "Switch off “fit”, “shrink”, “fill” and “borderless”.",
        f"Measure as said below. If it passes, print sheets {first} to {last} with the same settings.",
        "If not, change the settings, or open the file in another program, and print this sheet again. "
        "A pattern is never made larger or smaller by the printer: its seam allowances would change "
        "too. Its size comes from the measurements alone.",
    )
    column = Column(canvas, left=left, top=top, width=SIDE - L_DEPTH - TICK - 7, bottom=top - 50)
    column.write(Line("Print this sheet alone first, and measure it", HEADING, bold=True), *_numbered(steps))


def _write_measuring(canvas: Canvas, *, left: float, foot: float) -> None:
    low, high = BAR * (1 - TOLERANCE), BAR * (1 + TOLERANCE)
    column = Column(canvas, left=left, top=foot + SQUARE, width=SIDE - L_DEPTH - SQUARE - 6, bottom=foot)
    column.write(
        Line("What to measure", HEADING, bold=True),
        Line("With a stiff ruler, from the middle of one end tick to the middle of the other.", BODY),
        Line(f"Both 100 mm bars, across and upright, must read {low:g} to {high:g} mm.", BODY, bold=True),
        Line("With a ruler in inches: both 4 in bars, right to 1/50 in.", BODY),
        Line("A cloth tape is too coarse, and so is the square by itself.", BODY),
    )


def _write_taping(column: Column, tiling: Tiling) -> None:
    if len(tiling.tiles) > 1:
        column.write(Line("Tape the sheets", HEADING, bold=True), *_numbered(TAPING))
        column.y -= 2
    lengths = check_lengths(tiling)
    if lengths:
        column.write(
            Line("Check the taped pattern before cutting", HEADING, bold=True),
            Line("Grain line, from arrow tip to arrow tip:", BODY),
            *(Line(words, BODY, bold=True) for words in lengths),
        )
        column.y -= 2


def _numbered(steps: Iterable[str]) -> Iterator[Line]:
    return (Line(f"{number}. {step}", BODY) for number, step in enumerate(steps, start=1))
