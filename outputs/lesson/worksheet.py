"""The worksheet of a draft as a PDF: measurements, steps, the draft as it grows, key and remarks."""

from __future__ import annotations

from typing import BinaryIO

from drafting.block.block import Block
from drafting.body.words import SIDES
from drafting.lesson.hand_draft import HandDraft, hand_draft
from drafting.lesson.marking import asked_for
from outputs.canvas.canvas import Recording
from outputs.canvas.lettering import Line
from outputs.canvas.pdf_canvas import PdfCanvas
from outputs.canvas.text_flow import Flow, Heads
from outputs.canvas.typeface import Typeface
from outputs.lesson.finish import finish_sheet
from outputs.lesson.sheet import SheetSet, lying, scale_words
from outputs.lesson.stages import LEAST_SCALE, stage_sheets
from outputs.lesson.tiles import draw_tiles, tiled_draft, write_taping
from outputs.lesson.words import Writing, further_rows, line_ends, measurement_rows, step_rows
from outputs.paper.paper import Paper
from outputs.reading.measurements_file import MeasurementFile
from outputs.sheets.tile_sheet import SheetWords
from outputs.words.print_report import PrintReport

MEASUREMENT_HEADS = ("measurement", "value", "exact", "where from", "formula", "numbers put in")
FURTHER_HEADS = ("further numbers", "value", "exact", "where from")
STEP_HEADS = ("no.", "draws", "from", "which way", "formula", "numbers put in", "result", "exact")
ASKED_HEADS = ("no.", "line", "from–to", "your length")
WRITING_ROW = 7.0
"""Least height of a row to write in, mm."""


def hand_drafts(block: Block) -> tuple[HandDraft, ...]:
    """Return the instructions of both halves where the sides differ, else of one, numbered throughout."""
    drafts: list[HandDraft] = []
    for half in block.halves:
        first = int(drafts[-1].instructions[-1].label) + 1 if drafts else 1
        drafts.append(hand_draft(half, first=first))
    return tuple(drafts)


def write_worksheet(
    read: MeasurementFile,
    block: Block,
    target: BinaryIO,
    *,
    paper: Paper,
    scale: float,
    blank: bool,
    style: str = "straight",
) -> PrintReport:
    """Write the worksheet; the same block gives the same bytes.

    Args:
        read: Whose measurements they are, and in which unit.
        block: The draft.
        target: Open binary file.
        paper: The sheets, as they stand; they are laid on their side.
        scale: Millimetres of the draft on one of paper: 1, 2, 4 or 5.
        style: Name of the style whose leg the block has.
        blank: Leave the answers and the drawings away.
    """
    typeface = Typeface()
    title = f"Worksheet of the draft: jeans block, {style} leg" + (", to fill in" if blank else "")
    sheets = SheetSet(read, block, lying(paper), title)
    drafts = hand_drafts(block)
    tables = Flow(typeface, sheets.area)
    _write_tables(tables, sheets, drafts, scale, blank=blank)
    drawings: list[Recording] = []
    if not blank:
        for draft in drafts:
            side = f"{SIDES[draft.half.side]} half: " if draft.half.side else ""
            drawings += stage_sheets(typeface, sheets, draft, scale, side)
    last = finish_sheet(typeface, sheets, drafts, drawings)
    every = [*tables.sheets, *drawings, last]
    tilings = []
    if scale < LEAST_SCALE and not blank:
        tilings = [tiled_draft(typeface, draft, scale, paper, sheets.said(scale)) for draft in drafts]
        taping = Flow(typeface, sheets.area)
        first = len(every) + 2
        for tiling, _ in tilings:
            write_taping(taping, tiling, scale, first)
            first += len(tiling.tiles)
        every += taping.sheets
    count = len(every) + sum(len(tiling.tiles) for tiling, _ in tilings)
    canvas = PdfCanvas(target, typeface, title=f"{title}, {read.wearer}")
    for number, sheet in enumerate(every, start=1):
        with canvas.page(sheets.paper.width, sheets.paper.height):
            sheets.draw_header(canvas, sheet=number, sheets=count)
            sheet.play(canvas)
    first = len(every) + 1
    for tiling, drawing in tilings:
        words = SheetWords(f"{scale_words(scale)}: {read.wearer}", count)
        draw_tiles(canvas, tiling, drawing, words, first=first)
        first += len(tiling.tiles)
    canvas.save()
    return PrintReport(count, (), tuple(typeface.warnings()))


def _write_tables(
    flow: Flow, sheets: SheetSet, drafts: tuple[HandDraft, ...], scale: float, *, blank: bool
) -> None:
    writing = Writing(sheets.read.unit)
    intro = (
        f"Every length is full size, in {writing.unit_in_words}; the exact value stands beside the one that "
        "a ruler shows. "
        + (
            "Fill in what is left empty; the further numbers and the guides of the curves are given."
            if blank
            else f"Drawings: {scale_words(max(scale, LEAST_SCALE))}, unless one says otherwise."
        )
    )
    flow.text(Line("Measurements", 3.8, bold=True), Line(intro, 2.8), keep=30)
    rows = list(measurement_rows(sheets.block, writing, blank=blank))
    flow.table(
        Heads(MEASUREMENT_HEADS, (38, 14, 16, 34, 60, 50), frozenset({1, 2})), rows, least=_least(blank)
    )
    for draft in drafts:
        flow.text(Line("Further numbers that the steps use", 3.8, bold=True), keep=30)
        further = list(further_rows(sheets.block, draft, writing, blank=blank))
        flow.table(Heads(FURTHER_HEADS, (75, 14, 16, 107), frozenset({1, 2})), further)
        side = f"Steps of the {SIDES[draft.half.side]} half" if draft.half.side else "Steps"
        flow.text(Line(side, 3.8, bold=True), keep=30)
        heads = Heads(STEP_HEADS, (9, 44, 14, 54, 62, 50, 14, 17), frozenset({6, 7}))
        flow.table(heads, list(step_rows(draft, sheets.block, writing, blank=blank)), least=_least(blank))
    if blank:
        asked = [(s.label, f"{s.panel} {s.name}", line_ends(s), "") for s in asked_for(drafts)]
        flow.text(Line("Lengths to measure on your draft, full size", 3.8, bold=True), keep=30)
        flow.table(Heads(ASKED_HEADS, (10, 90, 40, 60)), asked, least=WRITING_ROW)


def _least(blank: bool) -> float:
    return WRITING_ROW if blank else 0.0
