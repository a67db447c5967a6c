"""Pieces on paper from a roll: one page as wide as the roll, or pages to be joined."""

from __future__ import annotations

import math
from dataclasses import replace

from drafting.pieces.pattern import Pattern
from outputs.canvas.canvas import Ruler
from outputs.canvas.pdf_canvas import LONGEST_PAGE
from outputs.packing.layout import EDGE, standing
from outputs.packing.roll_packing import laid, packed_short
from outputs.paper.paper import Paper, Roll
from outputs.paper.printer_scale import PrinterScale
from outputs.print.single_page import SinglePage, page_from_roll
from outputs.sheets.tiling import SLACK, TileFormat, Tiling


def laid_on_roll(pattern: Pattern, roll: Roll, scale: PrinterScale, ruler: Ruler) -> SinglePage | Tiling:
    """Return the pieces on one page as wide as the roll, or on several to be joined.

    Several are needed where a piece is wider than the roll, or where the page would be longer than PDF
    readers show; they are of equal length.
    """
    pieces = standing(pattern)
    widest = max(piece.width for piece in pieces) + 2 * EDGE
    longest = math.floor(LONGEST_PAGE) * scale.up
    paper = Paper(roll.label, roll.width, 0).corrected(scale)
    if widest <= paper.width - 2 * paper.margin:
        page = page_from_roll(pattern, ruler, paper)
        if page.longest_side <= LONGEST_PAGE:
            return page
    form = TileFormat(replace(paper, height=longest))
    width = math.ceil(widest / form.width) * form.width
    layout = laid(pieces, packed_short([piece.line.polygon for piece in pieces], width=width))
    rows = math.ceil(layout.height / form.height)
    spent = longest - form.height
    return Tiling(layout, TileFormat(replace(paper, height=spent + layout.height / rows + SLACK)))
