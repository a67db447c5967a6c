"""The fitting guide on paper: the table of signs in two columns, to lie beside the wearer."""

from __future__ import annotations

from collections.abc import Iterator
from typing import BinaryIO

from drafting.base.units import Unit
from drafting.body.corrections import CORRECTIONS
from drafting.geometry.points import Point
from outputs.canvas.canvas import Recording
from outputs.canvas.header import Header
from outputs.canvas.lettering import Line, TextBlock
from outputs.canvas.pdf_canvas import PdfCanvas
from outputs.canvas.typeface import Typeface
from outputs.fit.fitting_guide import CORRECTIONS_HEADING, SIGNS_HEADING, TITLE, correction_lines, sign_lines
from outputs.fit.fitting_signs import ADVICE, SIGNS
from outputs.paper.paper import Paper
from outputs.words.print_report import PrintReport

BODY, HEADING, TITLE_SIZE = 2.7, 3.4, 5.4
HEAD_LINES = Header(title=TITLE_SIZE, title_at=5, place=BODY, place_at=5)
GUTTER, GAP, HEADER = 8.0, 2.2, 10.0
"""Between columns, between entries, and what the title takes at the head of a sheet, mm."""


def write_fitting_guide(target: BinaryIO, *, paper: Paper, unit: Unit) -> PrintReport:
    """Write the guide as PDF.

    Args:
        target: Open binary file; the same words give the same bytes.
        paper: What the sheets are.
        unit: Unit of the amounts.
    """
    typeface = Typeface()
    canvas = PdfCanvas(target, typeface, title=TITLE)
    sheets = draw_guide(typeface, paper=paper, unit=unit)
    for sheet in sheets:
        with canvas.page(paper.width, paper.height):
            sheet.play(canvas)
    canvas.save()
    return PrintReport(len(sheets), (), tuple(typeface.warnings()))


def draw_guide(typeface: Typeface, *, paper: Paper, unit: Unit) -> list[Recording]:
    """Return the guide as recordings, two columns a sheet; an entry is never broken over two columns."""
    width = (paper.width - 2 * paper.margin - GUTTER) / 2
    top, bottom = paper.height - paper.margin - HEADER, paper.margin
    sheets: list[Recording] = []
    columns, y = 0, -1.0
    for entry in _entries(unit):
        block = TextBlock.set(typeface, list(entry), width)
        if y - block.height < bottom:
            if columns % 2 == 0:
                sheets.append(Recording(typeface))
            columns += 1
            y = top
        left = paper.margin + (width + GUTTER) * ((columns - 1) % 2)
        block.draw(sheets[-1], Point(left, y))
        y -= block.height + GAP
    for number, sheet in enumerate(sheets, start=1):
        HEAD_LINES.draw(sheet, paper, TITLE, place=f"sheet {number} of {len(sheets)}  ·  {paper.label}")
    return sheets


def _entries(unit: Unit) -> Iterator[tuple[Line, ...]]:
    """Yield what is kept together, from the top; a heading stays with what follows it."""
    yield from ((Line(advice, BODY),) for advice in ADVICE)
    heading = [Line(SIGNS_HEADING, HEADING, bold=True)]
    for sign in SIGNS:
        yield (*heading, Line(sign.seen, BODY, bold=True), *(Line(t, BODY) for t in sign_lines(sign, unit)))
        heading = []
    heading = [Line(CORRECTIONS_HEADING, HEADING, bold=True)]
    for key in CORRECTIONS:
        yield (*heading, Line(key, BODY, bold=True), *(Line(t, BODY) for t in correction_lines(key, unit)))
        heading = []
