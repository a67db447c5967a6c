"""All pieces on one big page, with the scale test where it finds room, for a copy shop or a plotter."""

from __future__ import annotations

from dataclasses import dataclass

import shapely
from shapely.geometry import box

from drafting.pattern import Pattern
from drafting.points import Point
from outputs.canvas import Canvas, Ruler
from outputs.layout import EDGE, GAP, Layout, side_by_side, standing
from outputs.lettering import Block, Line
from outputs.paper import MARGIN
from outputs.piece_text import TOLERANCE, check_length, sheet_title, taken
from outputs.room import Room
from outputs.scale_test import BAR, SIDE, draw_scale_figure

SIZE = 3.6
"""Type size beside the scale test, mm."""
LONG_GRAIN = 250.0
"""Grain lines from this length on are worth measuring on the print, mm."""


@dataclass(frozen=True, eq=False)
class SinglePage:
    """One page with everything on it; the area of the pieces starts MARGIN from its lower left corner.

    Attributes:
        layout: The pieces.
        corner: Upper left corner of the words over the scale test, on the area.
        words: How to measure.
        width: Of the page, in mm.
        height: Of the page, in mm.
    """

    layout: Layout
    corner: Point
    words: Block
    width: float
    height: float

    def draw_scale_test(self, canvas: Canvas) -> None:
        """Draw the words and the scale figure on the area."""
        self.words.draw(canvas, self.corner)
        draw_scale_figure(canvas, Point(self.corner.x, self.corner.y - self.words.height - GAP - SIDE))


def single_page(pattern: Pattern, ruler: Ruler) -> SinglePage:
    """Return the pieces side by side, as high as the tallest; the scale test in a gap or a new column."""
    pieces = standing(pattern)
    layout = side_by_side(pieces, height=max(piece.height for piece in pieces) + 2 * EDGE)
    words = Block.set(ruler, _lines(pattern, layout), SIDE)
    width, height = layout.width, max(layout.height, words.height + GAP + SIDE)
    room = Room(box(0, 0, width, height), clearance=0)
    room.take(shapely.union_all([shape.buffer(GAP) for shape in layout.shapes]))
    corner = room.corner_for(SIDE, words.height + GAP + SIDE, wish=Point(width, height))
    if corner is None:
        corner = Point(width + GAP, height)
        width += GAP + SIDE
    return SinglePage(layout, corner, words, width + 2 * MARGIN, height + 2 * MARGIN)


def _lines(pattern: Pattern, layout: Layout) -> list[Line]:
    low, high = BAR * (1 - TOLERANCE), BAR * (1 + TOLERANCE)
    long = [check_length(p.number, p.piece) for p in layout.pieces if p.piece.grain.length >= LONG_GRAIN]
    return [
        Line(sheet_title(pattern), 1.6 * SIZE, bold=True),
        *([Line(taken(pattern), SIZE)] if pattern.date else []),
        Line("Print at 100 %, without fitting to the page.", SIZE),
        Line(f"Both 100 mm bars, from tick to tick, must read {low:g} to {high:g} mm.", SIZE),
        *([Line("Grain lines, from arrow tip to arrow tip:", SIZE)] if long else []),
        *(Line(words, SIZE, bold=True) for words in long),
    ]
