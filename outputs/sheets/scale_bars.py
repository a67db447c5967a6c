"""The printed scale: bars and a square to measure, and what a wrong reading means."""

from __future__ import annotations

from drafting.geometry.points import Point
from outputs.canvas.canvas import Align, Canvas, Role, line, rectangle
from outputs.canvas.lettering import Column, Line
from outputs.paper.paper import A4, LETTER, Paper
from outputs.paper.printer_scale import BAR, INCH_BAR, TOLERANCE
from outputs.sheets.tile_sheet import draw_bar

SQUARE = 50.0
"""Side of the square, mm."""
READINGS = (
    90.0,
    91.0,
    92.0,
    93.0,
    94.0,
    95.0,
    96.0,
    97.0,
    98.0,
    99.0,
    99.5,
    100.0,
    100.5,
    101.0,
    102.0,
    103.0,
    104.0,
    105.0,
)
"""Readings of the 100 mm bar in the table, mm."""
BORDERS = (3.0, 5.0)
"""Dead borders of home printers, mm (makers' data sheets), which "fit to page" shrinks a page into."""
SIZE = 2.8
CAUSE_SIZES = (SIZE, 2.4, 2.1)
"""Sizes that are tried for the causes, mm."""
TICK = 2.0
BAR_STEP = 9.0
L_DEPTH = 2 * BAR_STEP
"""Depth of the two bars side by side, mm."""
SIDE = L_DEPTH + INCH_BAR + 2
"""Width and height of the whole test figure, mm."""


def passes(reading: float) -> bool:
    """Return whether a reading of the 100 mm bar, in mm, is near enough to true size."""
    return abs(reading / BAR - 1) <= TOLERANCE + 1e-9


def draw_scale_figure(canvas: Canvas, corner: Point) -> None:
    """Draw both bars in both directions and the square; `corner` is the lower left of SIDE by SIDE mm."""
    x, y = corner.x + TICK, corner.y + TICK
    for row, (length, words) in enumerate(((BAR, "100 mm"), (INCH_BAR, "4 in"))):
        off = row * BAR_STEP
        draw_bar(canvas, Point(x + L_DEPTH, y + off), length, upright=False, tick=TICK)
        canvas.text(words, Point(x + L_DEPTH + length / 2, y + off + 1.4), SIZE, align=Align.CENTRE)
        draw_bar(canvas, Point(x + off, y + L_DEPTH), length, upright=True, tick=TICK)
        canvas.text(
            words,
            Point(x + off - 1.4 + SIZE + 1.2, y + L_DEPTH + length / 2),
            SIZE,
            angle=90,
            align=Align.CENTRE,
        )
    left, bottom = x + L_DEPTH, y + L_DEPTH
    canvas.stroke(rectangle(left, bottom, left + SQUARE, bottom + SQUARE), Role.RULER)
    canvas.text("50 mm square", Point(left + SQUARE / 2, bottom + SQUARE / 2), SIZE, align=Align.CENTRE)


def draw_factor_table(canvas: Canvas, *, left: float, top: float, width: float) -> float:
    """Draw the table of wrong readings and return the height of its foot."""
    stops = [left + width * share for share in (0.22, 0.45, 0.76, 1.0)]
    size = min(SIZE, 0.22 * width / canvas.text_width("bar reads", 1, bold=True))
    row = SIZE * 1.5
    y = top - row
    for words in (("100 mm", "printed", "100 cm hip"), ("bar reads", "at", "becomes")):
        for word, stop in zip(words, stops[:3], strict=True):
            canvas.text(word, Point(stop, y), size, bold=True, align=Align.RIGHT)
        y -= row
    canvas.stroke(line((left, y + row - 1.2), (left + width, y + row - 1.2)), Role.FRAME)
    y -= 0.8
    for reading in READINGS:
        good = passes(reading)
        verdict = "pass" if good else "reprint"
        cells = (f"{reading:g}", f"{reading / BAR:.1%}", f"{reading:.1f} cm", verdict)
        for word, stop in zip(cells, stops, strict=True):
            canvas.text(word, Point(stop, y), size, bold=good, align=Align.RIGHT)
        y -= row
    return y + row - 1


def usual_causes(paper: Paper) -> list[tuple[float, str]]:
    """Return readings in mm that a print dialog's "fit" gives with this paper, each with its cause, rising.

    Only those between 85 and 105 mm are of use: outside, no one takes the print for true.
    """
    causes = [(paper.fit_factor(paper, b), f"“fit to page” with a {b:g} mm border") for b in BORDERS]
    causes.append((paper.fit_factor(paper, BORDERS[-1]) ** 2, "the same twice: program and printer"))
    causes += [
        (paper.fit_factor(other, BORDERS[-1]), f"fitted on {other.label}")
        for other in (A4, LETTER)
        if other.label != paper.label
    ]
    return sorted((BAR * factor, cause) for factor, cause in causes if 0.85 <= factor <= 1.05)


def write_causes(column: Column, paper: Paper) -> None:
    """Write the usual causes into a column, smaller where it is short."""
    for size in CAUSE_SIZES:
        said = [Line("What such readings come from", size, bold=True)]
        said += [Line(f"{reading:.1f}: {cause}", size) for reading, cause in usual_causes(paper)]
        if column.height(*said, gap=0.4) <= column.y - column.bottom:
            break
    column.write(*said, gap=0.4)
