"""One sheet that lays published drafts over ours and tabulates what each of them does."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import BinaryIO

import numpy as np
from shapely.geometry import LineString
from shapely.geometry.base import BaseGeometry

from drafting.base.units import format_length
from drafting.block.block import Block
from drafting.block.point_names import Drawn
from drafting.geometry.points import Point
from drafting.lesson.compared import compared
from drafting.lesson.published import CROTCH_AT_SIDE, QUANTITIES, PublishedPanel, SystemDraft
from outputs.canvas.canvas import Align, Canvas, Polyline, Recording, Role, Ruler, line
from outputs.canvas.lettering import Line
from outputs.canvas.pdf_canvas import PdfCanvas
from outputs.canvas.point_labels import PointLabel, draw_point_labels
from outputs.canvas.text_flow import Area, Flow, Heads
from outputs.canvas.typeface import Typeface
from outputs.lesson.drawing import Window
from outputs.lesson.sheet import BARS, METRIC_BAR, SheetSet, scale_words
from outputs.lesson.words import Writing
from outputs.paper.paper import Paper
from outputs.reading.measurements_file import MeasurementFile
from outputs.sheets.tile_sheet import draw_bar
from outputs.words.print_report import PrintReport

PATTERNS = (Role.CUT, Role.SEW, Role.FOLD, Role.RULER, Role.MARK, Role.JOIN)
"""The line of each draft, ours first and solid."""
LABELLED = (Drawn.FORK, Drawn.SIDE_AT_WAIST, Drawn.HIP_AT_SIDE, Drawn.CENTRE_AT_WAIST, CROTCH_AT_SIDE)
"""Points at which the letter of each draft stands."""
BELOW = 130.0
"""The drawing ends so far below the crotch line, mm of the draft."""
FITS = ((5.0, 2.3), (6.0, 2.3), (6.0, 2.1), (6.0, 2.0), (8.0, 2.0), (10.0, 2.0), (12.0, 2.0))
"""Scale of the drawing and type size of the table, the largest that fit one sheet are taken."""
LETTER = 2.6
SAMPLE = 14.0


def write_systems(read: MeasurementFile, block: Block, target: BinaryIO, *, paper: Paper) -> PrintReport:
    """Write the sheet; the same block gives the same bytes.

    Args:
        read: Whose measurements they are.
        block: Drafted with `fitted=False`.
        target: Open binary file.
        paper: The sheet, upright.
    """
    typeface = Typeface()
    sheets = SheetSet(read, block, paper, "Drafting systems compared")
    drafts = compared(block)
    for scale, size in FITS:
        found = _set(typeface, sheets, drafts, scale, size)
        if len(found) == 1:
            break
    canvas = PdfCanvas(target, typeface, title=f"{sheets.title}, {read.wearer}")
    for number, sheet in enumerate(found, start=1):
        with canvas.page(paper.width, paper.height):
            sheets.draw_header(canvas, sheet=number, sheets=len(found))
            sheet.play(canvas)
    canvas.save()
    return PrintReport(len(found), (), tuple(typeface.warnings()))


def _set(
    ruler: Ruler, sheets: SheetSet, drafts: Sequence[SystemDraft], scale: float, size: float
) -> list[Recording]:
    flow = Flow(ruler, sheets.area, size=size)
    sheet = flow.new_sheet()
    flow.y = _draw_panels(sheet, sheets.area, drafts, scale) - 2
    unit = sheets.read.unit.value
    _draw_bar(sheet, sheets, scale, flow.y)
    words = f"Laid over each other at centre line and crotch line, {scale_words(scale)}."
    flow.text(Line(words, 2.6, bold=True))
    names = (f"{letter} {draft.name}" for letter, draft in _lettered(drafts))
    count = len(drafts)
    shares = (26,) * (count + 1)
    heads = Heads((f"full size, {unit}", *names, "apart"), (*shares, 12), frozenset({count + 1}))
    flow.table(heads, list(table_rows(drafts, Writing(sheets.read.unit))))
    flow.text(*(Line(words, size) for words in _sources(drafts)))
    return flow.sheets


def _draw_bar(canvas: Canvas, sheets: SheetSet, scale: float, top: float) -> None:
    """Draw the check bar at the right end of a line of text, with what it stands for."""
    length, words = BARS.get(sheets.read.unit, METRIC_BAR)
    start = sheets.area.right - length - 1
    draw_bar(canvas, Point(start, top - 1.6), length, upright=False)
    said = f"{words} = {format_length(length * scale, sheets.read.unit)}"
    canvas.text(said, Point(start - 2, top - 2.4), 2.2, align=Align.RIGHT)


def _lettered(drafts: Sequence[SystemDraft]) -> Iterator[tuple[str, SystemDraft]]:
    return zip("ABCDEFGH", drafts, strict=False)


def table_rows(drafts: Sequence[SystemDraft], writing: Writing) -> Iterator[tuple[str, ...]]:
    """Yield a row for each quantity: what each draft has, and by which formula, and how far they lie apart.

    A dash stands where a draft says nothing.
    """
    for quantity, name in QUANTITIES.items():
        cells = [name]
        for draft in drafts:
            length = draft.amounts.get(quantity)
            if length is None:
                cells.append("–")
                continue
            formula = length.formula(writing.exact) if length.parts else length.name
            value = writing.rounded(length.mm)
            cells.append(f"{value}: {formula}" if formula else value)
        mms = [d.amounts[quantity].mm for d in drafts if quantity in d.amounts]
        yield (*cells, writing.rounded(max(mms) - min(mms)) if len(mms) > 1 else "")


def _sources(drafts: Sequence[SystemDraft]) -> Iterator[str]:
    for letter, draft in _lettered(drafts):
        remarks = f"; {draft.remarks}" if draft.remarks else ""
        front = "" if draft.back else "; front alone"
        yield f"{letter}: {draft.source}{front}{remarks}."


def _draw_panels(canvas: Canvas, area: Area, drafts: Sequence[SystemDraft], scale: float) -> float:
    """Draw front and back side by side under the key to the lines; return the height of their foot."""
    y = area.top - 3
    for index, (letter, draft) in enumerate(_lettered(drafts)):
        left = area.left + (index % 3) * area.width / 3
        canvas.stroke(line((left, y), (left + SAMPLE, y)), PATTERNS[index])
        canvas.text(f"{letter} {draft.name}", Point(left + SAMPLE + 2, y - 0.9), 2.6, bold=index == 0)
        if index % 3 == 2:
            y -= 4.5
    panels = {name: _panels(drafts, name) for name in ("front", "back")}
    every = [p for some in panels.values() for _, _, panel in some for p in panel.points.values()]
    left, top = area.left + 2, max(p.y for p in every) + 15
    for name, some in panels.items():
        xs = [p.x for _, _, panel in some for p in panel.points.values() if p.y > -BELOW]
        frame = Area(min(xs) - 20, -BELOW, max(xs) + 20, top)
        canvas.text(name.upper(), Point(left, y - 3.5), 3.4, bold=True)
        _draw_panel(canvas, Window(frame, scale, Point(left, y - 5)), some)
        left += frame.width / scale + 12
    return y - 5 - (top + BELOW) / scale


def _panels(drafts: Sequence[SystemDraft], name: str) -> list[tuple[int, str, PublishedPanel]]:
    """Return the number, letter and lines of every draft that has this panel."""
    lettered = enumerate(_lettered(drafts))
    return [(i, letter, panel) for i, (letter, d) in lettered if (panel := getattr(d, name)) is not None]


def _draw_panel(canvas: Canvas, window: Window, shown: Sequence[tuple[int, str, PublishedPanel]]) -> None:
    ink: list[BaseGeometry] = []
    labels = []
    for index, letter, panel in shown:
        for path in panel.lines:
            places = [tuple(window.place(Point(x, y))) for x, y in path.flatten(0.01 * window.scale)]
            part = LineString(places).intersection(window.sheet)
            for run in getattr(part, "geoms", [part]):
                if isinstance(run, LineString) and not run.is_empty:
                    canvas.stroke(Polyline(np.array(run.coords)), PATTERNS[index])
                    ink.append(run)
        labels += [
            PointLabel(letter, window.place(panel.points[name]), LETTER, bold=True)
            for name in LABELLED
            if name in panel.points and panel.points[name].y > -BELOW
        ]
    draw_point_labels(canvas, labels, ink)
