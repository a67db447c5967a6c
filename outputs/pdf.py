"""The pattern as a PDF at true scale: tiled for a home printer, or on one big page."""

from __future__ import annotations

from typing import BinaryIO

from drafting.findings import Show, in_centimetres
from drafting.pattern import Pattern
from outputs.canvas import Recording
from outputs.cover_sheet import draw_cover, draw_header
from outputs.notes_sheet import draw_notes
from outputs.paper import MARGIN, Paper
from outputs.pdf_canvas import LONGEST_PAGE, PdfCanvas
from outputs.pdf_fonts import Typeface
from outputs.piece_drawing import draw_layout
from outputs.piece_text import sheet_title
from outputs.print_report import PrintReport
from outputs.single_page import single_page
from outputs.tile_sheet import SheetWords, clip, draw_tile_sheet, shift
from outputs.tiling import UNDER, Tiling, tiled

DRAWING = "drawing"
"""Name of the picture that holds all pieces; every tile shows its part of it, so the file stays small."""


class PageTooLarge(ValueError):
    """The pieces do not fit on one page that every PDF reader shows."""


def write_tiled_pdf(
    pattern: Pattern, target: BinaryIO, *, paper: Paper, show: Show = in_centimetres
) -> PrintReport:
    """Write sheet 1 (scale test and map), the notes, and the pattern on sheets of `paper` to be taped.

    Args:
        pattern: At least one piece; all are printed.
        target: Open binary file; the same pattern gives the same bytes.
        paper: What the sheets are, see `outputs.paper.PAPERS`.
        show: Writes the lengths that the drafting found, in the wearer's unit.
    """
    tiling = tiled(pattern, paper)
    typeface = Typeface()
    drawing = Recording(typeface)
    unfit = draw_layout(drawing, tiling.layout, pattern, joins=tiling.joins())
    notes = draw_notes(typeface, tiling, pattern, show=show)
    first = 2 + len(notes)
    sheets = 1 + len(notes) + len(tiling.tiles)

    canvas = PdfCanvas(target, typeface, title=sheet_title(pattern))
    with canvas.page(paper.width, paper.height):
        draw_cover(canvas, tiling, pattern, first=first, sheets=sheets)
    for sheet, note in enumerate(notes, start=2):
        with canvas.page(paper.width, paper.height):
            draw_header(canvas, tiling, pattern, sheet=sheet, sheets=sheets)
            note.play(canvas)
    _draw_tiles(canvas, tiling, drawing, SheetWords(sheet_title(pattern), sheets), first)
    canvas.save()
    return PrintReport(sheets, tuple(unfit), tuple(typeface.warnings()))


def _draw_tiles(canvas: PdfCanvas, tiling: Tiling, drawing: Recording, words: SheetWords, first: int) -> None:
    form = tiling.format
    width, height = tiling.columns * form.width, tiling.rows * form.height
    with canvas.picture(DRAWING, left=-UNDER, bottom=-UNDER, right=width + UNDER, top=height + UNDER):
        drawing.play(canvas)
    ink = drawing.ink()
    for sheet, tile in enumerate(tiling.tiles, start=first):
        with canvas.page(form.paper.width, form.paper.height):
            canvas.show(DRAWING, at=shift(tiling, tile), **clip(form))
            draw_tile_sheet(canvas, tiling, tile, words, sheet=sheet, ink=ink)


def write_single_page_pdf(pattern: Pattern, target: BinaryIO) -> PrintReport:
    """Write all pieces side by side on one page just large enough, with the scale test beside them.

    Raises:
        PageTooLarge: a side of the page would be longer than 5080 mm; nothing is written.
    """
    typeface = Typeface()
    page = single_page(pattern, typeface)
    if max(page.width, page.height) > LONGEST_PAGE:
        raise PageTooLarge(
            f"the pieces need one page of {page.width:.0f} by {page.height:.0f} mm, and PDF readers show "
            f"at most {LONGEST_PAGE:.0f} mm; write the pattern on tiles instead"
        )
    drawing = Recording(typeface)
    unfit = draw_layout(drawing, page.layout, pattern)
    page.draw_scale_test(drawing)
    canvas = PdfCanvas(target, typeface, title=sheet_title(pattern))
    with canvas.page(page.width, page.height), canvas.moved(MARGIN, MARGIN):
        drawing.play(canvas)
    canvas.save()
    return PrintReport(1, tuple(unfit), tuple(typeface.warnings()))
