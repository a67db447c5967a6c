"""All pieces on one big page, with the scale test where it finds room, for a copy shop or a plotter."""

from __future__ import annotations

from dataclasses import dataclass, replace

import shapely
from shapely.geometry import box

from drafting.pattern import Pattern
from drafting.points import Point
from outputs.canvas import Canvas, Ruler
from outputs.layout import EDGE, GAP, Layout, in_strip, side_by_side, standing
from outputs.lettering import Block, Line
from outputs.paper import Paper
from outputs.piece_text import check_length, sheet_title, some_pieces, taken
from outputs.printer_scale import BAR, TOLERANCE, TRUE, PrinterScale
from outputs.room import Room
from outputs.scale_test import SIDE, draw_scale_figure

SIZE = 3.6
"""Type size beside the scale test, mm."""
LONG_GRAIN = 250.0
"""Grain lines from this length on are worth measuring on the print, mm."""


@dataclass(frozen=True, eq=False)
class SinglePage:
    """One page with everything on it; the area of the pieces starts a margin from its lower left corner.

    Attributes:
        layout: The pieces.
        corner: Upper left corner of the words over the scale test, on the area.
        words: How to measure.
        paper: The page, of the size that it needs.
    """

    layout: Layout
    corner: Point
    words: Block
    paper: Paper

    @property
    def longest_side(self) -> float:
        """The longer side of the page in the file, mm."""
        return max(self.paper.width / self.paper.scale.across, self.paper.height / self.paper.scale.up)

    def draw_scale_test(self, canvas: Canvas) -> None:
        """Draw the words and the scale figure on the area."""
        self.words.draw(canvas, self.corner)
        draw_scale_figure(canvas, Point(self.corner.x, self.corner.y - self.words.height - GAP - SIDE))


def single_page(pattern: Pattern, ruler: Ruler, scale: PrinterScale = TRUE) -> SinglePage:
    """Return the pieces side by side, as high as the tallest; the scale test in a gap or a new column."""
    pieces = standing(pattern)
    layout = side_by_side(pieces, height=max(piece.height for piece in pieces) + 2 * EDGE)
    paper = Paper("one page", 0, 0).corrected(scale)
    words = Block.set(ruler, _lines(pattern, layout, paper), SIDE)
    test = words.height + GAP + SIDE
    width, height = layout.width, max(layout.height, test)
    corner = _room(layout, width, height).corner_for(SIDE, test, wish=Point(width, height))
    if corner is None:
        corner = Point(width + GAP, height)
        width += GAP + SIDE
    return _page(layout, corner, words, paper, width, height)


def page_from_roll(pattern: Pattern, ruler: Ruler, width: Paper) -> SinglePage:
    """Return the pieces on one page as wide as the roll; the scale test in a gap or above them.

    Args:
        pattern: Its widest piece fits across.
        ruler: Of the words.
        width: A page of the roll, whatever its height.
    """
    across = width.width - 2 * width.margin
    layout = in_strip(standing(pattern), width=across)
    words = Block.set(ruler, _lines(pattern, layout, width), SIDE)
    test = words.height + GAP + SIDE
    corner = _room(layout, across, layout.height).corner_for(SIDE, test, wish=Point(across, layout.height))
    height = layout.height
    if corner is None:
        height += GAP + test
        corner = Point(0, height)
    return _page(layout, corner, words, width, across, height)


def _room(layout: Layout, width: float, height: float) -> Room:
    room = Room(box(0, 0, width, height), clearance=0)
    room.take(shapely.union_all([shape.buffer(GAP) for shape in layout.shapes]))
    return room


def _page(
    layout: Layout, corner: Point, words: Block, paper: Paper, width: float, height: float
) -> SinglePage:
    border = 2 * paper.margin
    return SinglePage(layout, corner, words, replace(paper, width=width + border, height=height + border))


def _lines(pattern: Pattern, layout: Layout, paper: Paper) -> list[Line]:
    low, high = BAR * (1 - TOLERANCE), BAR * (1 + TOLERANCE)
    long = [check_length(p.number, p.piece) for p in layout.pieces if p.piece.grain.length >= LONG_GRAIN]
    said = [
        *([taken(pattern)] if pattern.date else []),
        *([f"{some_pieces(pattern)} printed here."] if pattern.printed else []),
        *([f"{paper.scale.words.capitalize()}: true on no other."] if not paper.scale.is_true else []),
        "Print at 100 %, without fitting to the page.",
        f"Both 100 mm bars, from tick to tick, must read {low:g} to {high:g} mm.",
        *(["Grain lines, from arrow tip to arrow tip:"] if long else []),
    ]
    return [
        Line(sheet_title(pattern), 1.6 * SIZE, bold=True),
        *(Line(words, SIZE) for words in said),
        *(Line(words, SIZE, bold=True) for words in long),
    ]
