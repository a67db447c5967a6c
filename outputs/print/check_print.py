"""The sheet that tests a printer: bars and a square to measure, without any pattern."""

from __future__ import annotations

from typing import BinaryIO

from outputs.canvas.lettering import Column, Line
from outputs.canvas.pdf_canvas import PdfCanvas
from outputs.canvas.typeface import Typeface
from outputs.paper.paper import Paper
from outputs.paper.printer_scale import OPTION
from outputs.print.cover_sheet import draw_header
from outputs.sheets.print_test import HEADING, draw_print_test, numbered
from outputs.words.print_report import PrintReport

TITLE = "Print test"
NEXT = "Measure as said below. If it passes, print the pattern with the same settings."
STEPS = (
    "Measure both 100 mm bars, across and up, to a fifth of a millimetre.",
    f'Type: jeansblock check-print {OPTION} "97 mm", with what you measured, or {OPTION} twice, across and '
    "then up, where they differ. It says what to set in the print window.",
    f"Where no setting helps, give the same {OPTION} to jeansblock draft: it writes a pattern that is "
    "corrected for this printer, and says so on every sheet.",
    "Print this sheet again whenever printer, paper or program change.",
)


def write_print_check(target: BinaryIO, *, paper: Paper) -> PrintReport:
    """Write the test sheet; the same paper gives the same bytes."""
    canvas = PdfCanvas(target, Typeface(), title=TITLE)
    with canvas.page(paper.width, paper.height):
        top = draw_header(canvas, paper, TITLE, ["before the first sheet of a pattern is printed"], "1 sheet")
        foot = draw_print_test(canvas, paper, top=top, next_step=NEXT)
        width = paper.width - 2 * paper.margin
        column = Column(canvas, left=paper.margin, top=foot - 6, width=width, bottom=paper.margin)
        column.write(Line("If the bars do not read 100 mm", HEADING, bold=True), *numbered(STEPS))
    canvas.save()
    return PrintReport(1)
