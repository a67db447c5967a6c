"""The teacher's sheet: the right lengths of twenty lines, what they may miss, and room for a student's."""

from __future__ import annotations

from typing import BinaryIO

from drafting.block.block import Block
from drafting.lesson.hand_draft import Instruction
from drafting.lesson.marking import asked_for, tolerance
from outputs.canvas.lettering import Line
from outputs.canvas.pdf_canvas import PdfCanvas
from outputs.canvas.text_flow import Flow, Heads
from outputs.canvas.typeface import Typeface
from outputs.lesson.sheet import SheetSet, lying
from outputs.lesson.words import Writing, line_ends
from outputs.lesson.worksheet import hand_drafts
from outputs.paper.paper import Paper
from outputs.reading.measurements_file import MeasurementFile
from outputs.words.print_report import PrintReport

HEADS = ("no.", "line", "from–to", "right length", "exact", "may miss ±", "student's length", "right?")
SHARES = (10, 62, 22, 24, 24, 24, 50, 40)
ROW = 6.2
"""Least height of a row to write in, mm."""


def marking_rows(steps: tuple[Instruction, ...], writing: Writing, scale: float) -> list[tuple[str, ...]]:
    """Return a row for each line."""
    return [
        (
            step.label,
            f"{step.panel} {step.name}".strip(),
            line_ends(step),
            writing.rounded(step.result),
            writing.exact(step.result),
            writing.rounded(tolerance(step, scale)),
            "",
            "",
        )
        for step in steps
    ]


def write_marking_sheet(
    read: MeasurementFile,
    block: Block,
    target: BinaryIO,
    *,
    paper: Paper,
    scale: float,
    style: str = "straight",
) -> PrintReport:
    """Write the sheet for drafts made at `scale`; the same block gives the same bytes."""
    typeface = Typeface()
    sheets = SheetSet(read, block, lying(paper), f"Marking sheet for the teacher: jeans block, {style} leg")
    writing = Writing(read.unit)
    steps = asked_for(hand_drafts(block))
    flow = Flow(typeface, sheets.area)
    intro = (
        f"Lengths are full size, in {writing.unit_in_words}; what they may miss is for a draft at "
        f"1:{scale:g}. The length of a seam is measured along it."
    )
    flow.text(Line(intro, 2.8))
    flow.table(Heads(HEADS, SHARES, frozenset({3, 4, 5})), marking_rows(steps, writing, scale), least=ROW)
    canvas = PdfCanvas(target, typeface, title=f"{sheets.title}, {read.wearer}")
    for number, sheet in enumerate(flow.sheets, start=1):
        with canvas.page(sheets.paper.width, sheets.paper.height):
            sheets.draw_header(canvas, sheet=number, sheets=len(flow.sheets))
            sheet.play(canvas)
    canvas.save()
    return PrintReport(len(flow.sheets), (), tuple(typeface.warnings()))
