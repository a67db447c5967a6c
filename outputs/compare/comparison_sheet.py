"""The sheet that compares styles: their legs laid over each other, and a table of their numbers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import BinaryIO

from drafting.base.units import Unit, format_length
from drafting.geometry.points import Point
from outputs.canvas.canvas import Align, Canvas, Recording, Role, line
from outputs.canvas.header import Header
from outputs.canvas.lettering import Column, Line, shortened
from outputs.canvas.pdf_canvas import PdfCanvas
from outputs.canvas.picture_canvas import write_picture
from outputs.canvas.typeface import Typeface
from outputs.compare.comparison import HEADS, IN_YOUR_CLOTH, Compared, cells, said_shared
from outputs.compare.legs_drawing import LegsDrawing
from outputs.fit.fit_words import UNIT_HEADS
from outputs.paper.paper import Paper
from outputs.paper.printer_scale import BAR
from outputs.print.piece_text import taken
from outputs.sheets.tile_sheet import draw_bar
from outputs.words.print_report import PrintReport

TITLE = "Styles compared"
HEADING, BODY = 3.4, 2.6
SIZES = (BODY, 2.3, 2.0, 1.7)
"""Type of the words beside the drawing, mm: the first at which they fit."""
HEAD_LINES = Header(title=6.5, title_at=6, words=(3.6,), words_at=12, rule_at=14)
HEADER = 17.0
"""Height of the title, mm."""
FOOT = 9.0
"""Height of the check bar at the foot, mm."""
ROW = 4.2
"""Height of a row of the table, mm."""
SAMPLE = 16.0
"""Length of the sample of a style's line, mm."""
NAMES = 30.0
"""Width of the column of names, mm."""
LEAST_BESIDE = 46.0
"""Least width of the words beside the drawing, mm."""
GUTTER = 5.0


@dataclass(frozen=True, eq=False)
class ComparisonSheet:
    """The sheet as drawn.

    Attributes:
        page: What is on it.
        paper: What it is.
        typeface: What the words are set in.
        title: Of the document.
        words: What is seen, for those who cannot see it.
    """

    page: Recording
    paper: Paper
    typeface: Typeface
    title: str
    words: str

    @staticmethod
    def of(several: Sequence[Compared], *, paper: Paper, unit: Unit) -> ComparisonSheet:
        """Return the sheet for several styles of one wearer, all lengths in `unit`."""
        typeface = Typeface()
        title = f"{several[0].jeans.pattern.wearer}, {TITLE.lower()}"
        page = _draw(typeface, several, paper, unit)
        return ComparisonSheet(page, paper, typeface, title, described(several, unit))

    def write_pdf(self, target: BinaryIO) -> PrintReport:
        """Write one page."""
        canvas = PdfCanvas(target, self.typeface, title=self.title)
        with canvas.page(self.paper.width, self.paper.height):
            self.page.play(canvas)
        canvas.save()
        return PrintReport(1, (), tuple(self.typeface.warnings()))

    def write_png(self, target: BinaryIO) -> PrintReport:
        """Write the same to look at on a screen."""
        size = {"width": self.paper.width, "height": self.paper.height}
        write_picture(self.page, target, self.typeface, **size, description=self.words)
        return PrintReport()


def _draw(typeface: Typeface, several: Sequence[Compared], paper: Paper, unit: Unit) -> Recording:
    page = Recording(typeface)
    left, right = paper.margin, paper.width - paper.margin
    table = paper.margin + FOOT + ROW * (len(several) + 2.5)
    top = paper.height - paper.margin - HEADER
    legs = [compared.legs for compared in several]
    drawing = LegsDrawing.fitting(page, legs, right - left - LEAST_BESIDE - GUTTER, top - table - 4)
    _draw_header(page, paper, several[0], f"drawn 1 : {drawing.scale:g}")
    drawing.draw(page, Point(left, top))
    _write_beside(page, several, unit, left=left + drawing.width + GUTTER, right=right, top=top, foot=table)
    _draw_table(page, several, unit, left=left, right=right, top=table)
    _draw_foot(page, paper, drawing.scale, unit)
    return page


def described(several: Sequence[Compared], unit: Unit) -> str:
    """Return in words what the page shows."""
    heads = [" ".join(filter(None, head)) for head in HEADS]
    rows = (
        f"{compared.style}: "
        + ", ".join(f"{head} {value}" for head, value in zip(heads, cells(compared, unit), strict=True))
        for compared in several
    )
    return (
        f"Legs of {len(several)} styles laid over each other by crease and floor, back and front. "
        f"Lengths {UNIT_HEADS[unit]}. {'. '.join(rows)}."
    )


def _draw_header(canvas: Canvas, paper: Paper, first: Compared, scale: str) -> None:
    pattern = first.jeans.pattern
    words = "  ·  ".join(filter(None, (TITLE.lower(), taken(pattern), scale)))
    HEAD_LINES.draw(canvas, paper, pattern.wearer, words=words)


def _write_beside(
    canvas: Canvas,
    several: Sequence[Compared],
    unit: Unit,
    *,
    left: float,
    right: float,
    top: float,
    foot: float,
) -> None:
    """Write how to read the drawing, and which pieces are the same."""
    for size in SIZES:
        column = Column(canvas, left=left, top=top, width=right - left, bottom=foot)
        words = list(_words(several, unit, size))
        if column.height(*words) <= top - foot or size == SIZES[-1]:
            break
    column.write(*words)


def _words(several: Sequence[Compared], unit: Unit, size: float) -> Iterator[Line]:
    legs = "right leg" if len(several[0].jeans.block.halves) > 1 else "leg"
    yield Line("The drawing", HEADING, bold=True)
    drawing = (
        f"The finished {legs} of each style up to the upper edge of the waistband, without allowance, the "
        "back dart open. All are laid on one floor and crease; each is named at its hem, on either side."
    )
    yield Line(drawing, size)
    yield Line("The table", HEADING, bold=True)
    table = (
        f"Lengths {UNIT_HEADS[unit]}, girths all round, as sewn. Ease is what the girth has over the body; a "
        "dash stands where the body is not known, or the leg ends above the knee. The front rise runs along "
        "the seam from the fork to the upper edge. Your cloth is given with "
        f"{several[0].jeans.cloth.stretch:g} % of stretch."
    )
    yield Line(table, size)
    yield Line("The same pieces", HEADING, bold=True)
    for compared in several:
        if compared.shared:
            yield Line(f"{compared.style}: {said_shared(compared)}.", size)
    if not any(compared.shared for compared in several):
        yield Line("No piece of a style is the same as that of another.", size)


def _draw_table(
    canvas: Canvas, several: Sequence[Compared], unit: Unit, *, left: float, right: float, top: float
) -> None:
    start = left + SAMPLE + 3 + NAMES
    stops = [start + (right - start) * (index + 1) / len(HEADS) for index in range(len(HEADS))]
    y = top - ROW
    for row in (0, 1):
        if row:
            canvas.text("style", Point(left + SAMPLE + 3, y), BODY, bold=True)
        for head, stop in zip(HEADS, stops, strict=True):
            canvas.text(head[row], Point(stop, y), BODY, bold=True, align=Align.RIGHT)
        y -= ROW * (0.8 if row == 0 else 1.1)
    canvas.stroke(line((left, y + 0.75 * ROW), (right, y + 0.75 * ROW)), Role.FRAME)
    for compared in several:
        middle = y + 0.35 * BODY
        canvas.stroke(line((left, middle), (left + SAMPLE, middle)), compared.legs.role)
        name = shortened(canvas, compared.style, NAMES - 2, BODY)
        canvas.text(name, Point(left + SAMPLE + 3, y), BODY)
        for head, cell, stop in zip(HEADS, cells(compared, unit), stops, strict=True):
            bold = head is IN_YOUR_CLOTH and not compared.stretches_enough
            canvas.text(cell, Point(stop, y), BODY, bold=bold, align=Align.RIGHT)
        y -= ROW


def _draw_foot(canvas: Canvas, paper: Paper, scale: float, unit: Unit) -> None:
    foot = paper.margin + 1.6
    start = Point(paper.margin + 0.2, foot)
    draw_bar(canvas, start, BAR, upright=False)
    words = f"{BAR:g} mm if printed at true size: {format_length(BAR * scale, unit)} of the jeans"
    canvas.text(words, Point(start.x + BAR + 3, foot - 0.35 * BODY), BODY)
