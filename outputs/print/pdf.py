"""The pattern as a PDF at true scale: tiled for a home printer, on large sheets, or on one big page."""

from __future__ import annotations

from collections.abc import Sequence
from typing import BinaryIO

from drafting.base.findings import Show, in_centimetres
from drafting.pieces.pattern import Pattern
from outputs.canvas.canvas import Recording
from outputs.canvas.layers import Layer, only_layer
from outputs.canvas.pdf_canvas import LONGEST_PAGE, PdfCanvas
from outputs.canvas.typeface import Typeface
from outputs.paper.paper import A4, EITHER, Paper
from outputs.paper.printer_scale import BAR
from outputs.print.cover_sheet import draw_cover, draw_map, draw_pattern_header
from outputs.print.notes_sheet import draw_notes
from outputs.print.piece_drawing import draw_layout
from outputs.print.piece_text import sheet_title
from outputs.print.single_page import SinglePage, single_page
from outputs.sheets.print_test import HEADING, shop_advice
from outputs.sheets.tile_sheet import SheetWords, clip, draw_tile_sheet, shift
from outputs.sheets.tiling import UNDER, Tiling, sheet_round, tiled
from outputs.words.print_report import PrintReport


class PageTooLarge(ValueError):
    """The pieces do not fit on one page that every PDF reader shows."""


def write_tiled_pdf(
    pattern: Pattern, target: BinaryIO, *, paper: Paper = A4, show: Show = in_centimetres
) -> PrintReport:
    """Write the pattern on sheets of `paper`, see `write_sheets_with_notes`."""
    return write_sheets_with_notes(pattern, tiled(pattern, paper), target, show=show)


def write_single_page_pdf(pattern: Pattern, target: BinaryIO) -> PrintReport:
    """Write all pieces side by side on one page just large enough, with the scale test beside them.

    Raises:
        PageTooLarge: a side of the page would be longer than 5080 mm; nothing is written.
    """
    return write_page(pattern, single_page(pattern, Typeface()), target)


def write_sheets_with_notes(
    pattern: Pattern,
    tiling: Tiling,
    target: BinaryIO,
    *,
    notes: Sequence[Recording] = (),
    show: Show = in_centimetres,
) -> PrintReport:
    """Write sheet 1 (print test and map), the notes, and the pattern on sheets to be taped.

    Args:
        pattern: At least one piece.
        tiling: Its sheets.
        target: Open binary file; the same pattern gives the same bytes.
        notes: As `notes_of` draws them, where that is done already.
        show: Writes the lengths that the drafting found, in the wearer's unit.
    """
    paper = tiling.format.paper.upright
    typeface = Typeface()
    notes = notes or notes_of(pattern, tiling, show=show)
    first = 2 + len(notes)
    sheets = 1 + len(notes) + len(tiling.tiles)
    canvas = PdfCanvas(target, typeface, title=sheet_title(pattern), scale=paper.scale)
    with canvas.page(paper.width, paper.height):
        draw_cover(canvas, paper, tiling, pattern, first=first, sheets=sheets)
    _draw_notes(canvas, paper, pattern, notes, sheets=sheets)
    unfit = _draw_tiles(canvas, tiling, pattern, SheetWords(sheet_title(pattern), sheets), first)
    canvas.save()
    return PrintReport(sheets, unfit, tuple(typeface.warnings()))


def notes_of(pattern: Pattern, tiling: Tiling, *, show: Show = in_centimetres) -> list[Recording]:
    """Return the notes that go with the sheets, on paper of the same size."""
    return draw_notes(Typeface(), tiling.format.paper.upright, tiling.layout, pattern, show=show)


def write_sheets(pattern: Pattern, tiling: Tiling, target: BinaryIO) -> PrintReport:
    """Write the sheets of the pattern alone."""
    typeface = Typeface()
    canvas = PdfCanvas(target, typeface, title=sheet_title(pattern), scale=tiling.format.paper.scale)
    words = SheetWords(sheet_title(pattern), len(tiling.tiles))
    unfit = _draw_tiles(canvas, tiling, pattern, words, 1)
    canvas.save()
    return PrintReport(len(tiling.tiles), unfit, tuple(typeface.warnings()))


def notes_apart(pattern: Pattern, laid: Tiling | SinglePage, *, show: Show) -> list[Recording]:
    """Return the notes that go with large sheets, on pages that print at home."""
    return draw_notes(Typeface(), EITHER, laid.layout, pattern, show=show)


def write_notes_pdf(
    pattern: Pattern, laid: Tiling | SinglePage, target: BinaryIO, *, notes: Sequence[Recording]
) -> PrintReport:
    """Write the map of large sheets, what to cut and the notes, as `notes_apart` draws them."""
    if isinstance(laid, SinglePage):
        tiling, advice = sheet_round(laid.layout), shop_advice(laid.paper.scale, BAR)
    else:
        tiling, advice = laid, shop_advice(laid.format.paper.scale, laid.format.check)
    typeface = Typeface()
    sheets = 1 + len(notes)
    canvas = PdfCanvas(target, typeface, title=f"{sheet_title(pattern)}: notes")
    with canvas.page(EITHER.width, EITHER.height):
        top = draw_pattern_header(canvas, EITHER, pattern, sheet=1, sheets=sheets)
        draw_map(canvas, EITHER, tiling, pattern, top=top - HEADING, first=1, advice=advice)
    _draw_notes(canvas, EITHER, pattern, notes, sheets=sheets)
    canvas.save()
    return PrintReport(sheets, (), tuple(typeface.warnings()))


def _draw_notes(
    canvas: PdfCanvas, paper: Paper, pattern: Pattern, notes: Sequence[Recording], *, sheets: int
) -> None:
    for sheet, note in enumerate(notes, start=2):
        with canvas.page(paper.width, paper.height):
            draw_pattern_header(canvas, paper, pattern, sheet=sheet, sheets=sheets)
            note.play(canvas)


def _draw_tiles(
    canvas: PdfCanvas, tiling: Tiling, pattern: Pattern, words: SheetWords, first: int
) -> tuple[str, ...]:
    """Draw the sheets of the pattern and return the pieces whose label did not fit.

    Each layer of the pieces is one picture, of which every tile shows its part, so the file stays small.
    """
    form = tiling.format
    drawing = Recording(canvas)
    unfit = draw_layout(drawing, tiling.layout, pattern, joins=tiling.joins())
    width, height = tiling.columns * form.width, tiling.rows * form.height
    for layer in Layer:
        with canvas.picture(layer.name, left=-UNDER, bottom=-UNDER, right=width + UNDER, top=height + UNDER):
            only_layer(drawing, layer).play(canvas)
    ink = drawing.ink()
    for sheet, tile in enumerate(tiling.tiles, start=first):
        with canvas.page(form.paper.width, form.paper.height, landscape=form.paper.landscape):
            for layer in Layer:
                with canvas.layer(layer):
                    canvas.show(layer.name, at=shift(tiling, tile), **clip(form))
            draw_tile_sheet(canvas, tiling, tile, words, sheet=sheet, ink=ink)
    return tuple(unfit)


def write_page(pattern: Pattern, page: SinglePage, target: BinaryIO) -> PrintReport:
    """Write one big page with the scale test on it.

    Raises:
        PageTooLarge: a side of the page would be longer than LONGEST_PAGE; nothing is written.
    """
    if page.longest_side > LONGEST_PAGE:
        raise PageTooLarge(
            f"the pieces need one page of {page.paper.width:.0f} by {page.paper.height:.0f} mm, and PDF "
            f"readers show at most {LONGEST_PAGE:.0f} mm; write the pattern on sheets or on a roll instead"
        )
    typeface = Typeface()
    paper = page.paper
    canvas = PdfCanvas(target, typeface, title=sheet_title(pattern), scale=paper.scale)
    drawing = Recording(canvas)
    unfit = draw_layout(drawing, page.layout, pattern)
    with canvas.page(paper.width, paper.height), canvas.moved(paper.margin, paper.margin):
        for layer in Layer:
            with canvas.layer(layer):
                only_layer(drawing, layer).play(canvas)
        page.draw_scale_test(canvas)
    canvas.save()
    return PrintReport(1, tuple(unfit), tuple(typeface.warnings()))
