"""The test that is printed first: the scale figure, what to measure on it, and what wrong readings mean."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from drafting.geometry.points import Point
from outputs.canvas.canvas import Canvas
from outputs.canvas.lettering import Column, Line
from outputs.paper.paper import Paper
from outputs.paper.printer_scale import BAR, TOLERANCE, PrinterScale
from outputs.sheets.scale_bars import (
    L_DEPTH,
    SIDE,
    SQUARE,
    TICK,
    draw_factor_table,
    draw_scale_figure,
    write_causes,
)

HEADING = 3.6
"""Type size of a heading on the sheets, mm."""
BODY = 2.8
"""Type size of the text on the sheets, mm."""
GUTTER = 7.0
"""Distance between two columns, mm."""


def draw_print_test(canvas: Canvas, paper: Paper, *, top: float, next_step: str) -> float:
    """Draw the whole test across a sheet from `top` downwards and return the height of its foot.

    Args:
        canvas: The sheet.
        paper: What it is.
        top: Upper edge in mm.
        next_step: What to do when it passes, one sentence.
    """
    left, right, foot = paper.margin, paper.width - paper.margin, top - SIDE - 1
    draw_scale_figure(canvas, Point(left, foot))
    _write_print_advice(canvas, paper, left=left + TICK + L_DEPTH + 5, top=top, next_step=next_step)
    _write_measuring(canvas, left=left + TICK + L_DEPTH + SQUARE + 4, foot=foot + TICK + L_DEPTH)
    beside = left + SIDE + GUTTER
    table = draw_factor_table(canvas, left=beside, top=top, width=min(right - beside, 75))
    causes = Column(canvas, left=beside, top=table - 1, width=right - beside, bottom=foot)
    write_causes(causes, paper)
    return foot


def shop_advice(scale: PrinterScale, check: float) -> list[Line]:
    """Return what to ask for where large sheets are printed, and what to measure: bars of `check` mm."""
    low, high = check * (1 - TOLERANCE), check * (1 + TOLERANCE)
    said = [
        "Have the file of the pattern printed at 100 %, “actual size”, not fitted to the paper.",
        *([f"It is {scale.words}: have it printed on that one only."] if not scale.is_true else []),
        f"Before you cut, measure on every sheet, from tick to tick: both {check:g} mm bars, across and "
        f"upright, must read {low:g} to {high:g} mm.",
    ]
    return [Line("At the copy shop", HEADING, bold=True), *numbered(said)]


def numbered(steps: Iterable[str]) -> Iterator[Line]:
    """Yield the steps with their numbers from 1."""
    return (Line(f"{number}. {step}", BODY) for number, step in enumerate(steps, start=1))


def _write_print_advice(canvas: Canvas, paper: Paper, *, left: float, top: float, next_step: str) -> None:
    steps = (
        f"Paper {paper.label}, one side, upright.",
        "In the print window choose “actual size”, “100 %” or “no scaling”.",
        "Switch off “fit”, “shrink”, “fill” and “borderless”.",
        next_step,
        "If not, change the settings, or open the file in another program, and print this sheet again. "
        "A pattern is never made larger or smaller by the printer: its seam allowances would change "
        "too. Its size comes from the measurements alone.",
    )
    column = Column(canvas, left=left, top=top, width=SIDE - L_DEPTH - TICK - 7, bottom=top - 50)
    column.write(Line("Print this sheet alone first, and measure it", HEADING, bold=True), *numbered(steps))


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
