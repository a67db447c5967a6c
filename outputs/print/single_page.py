"""All pieces on one big page, with the scale test where it finds room, for a copy shop or a plotter."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import shapely
from shapely.geometry import Polygon, box

from drafting.geometry.points import Point
from drafting.pieces.pattern import Pattern
from outputs.canvas.canvas import Canvas, Ruler
from outputs.canvas.free_space import Room
from outputs.canvas.lettering import Line, TextBlock
from outputs.packing.layout import EDGE, GAP, Layout, StandingPiece, side_by_side, standing
from outputs.packing.roll_packing import Spot, laid, packed_narrow, packed_short
from outputs.paper.paper import Paper
from outputs.paper.printer_scale import BAR, TOLERANCE, TRUE, PrinterScale
from outputs.print.piece_text import check_length, sheet_title, some_pieces, taken
from outputs.sheets.scale_bars import SIDE, draw_scale_figure

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
    words: TextBlock
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
    """Return pieces and scale test packed on a page as high as the tallest, as narrow as found."""
    pieces, paper = standing(pattern), Paper("one page", 0, 0).corrected(scale)
    words, shapes = _shapes(pattern, pieces, ruler, paper)
    height = max(top - bottom for _, bottom, _, top in (shape.bounds for shape in shapes)) + 2 * EDGE
    return _packed(pieces, words, packed_narrow(shapes, height=height), paper)


def page_from_roll(pattern: Pattern, ruler: Ruler, width: Paper) -> SinglePage:
    """Return pieces and scale test packed on one page as wide as the roll, as short as found.

    Args:
        pattern: Its widest piece fits across.
        ruler: Of the words.
        width: A page of the roll, whatever its height.
    """
    pieces = standing(pattern)
    words, shapes = _shapes(pattern, pieces, ruler, width)
    across = width.width - 2 * width.margin
    page = _packed(pieces, words, packed_short(shapes, width=across), width)
    return replace(page, paper=replace(page.paper, width=width.width))


def drawn_side_by_side(pattern: Pattern, ruler: Ruler) -> SinglePage:
    """Return the pieces upright in columns as high as the tallest, where there is no need to save paper.

    The scale test lies in a gap or a new column.
    """
    pieces, paper = standing(pattern), Paper("one page", 0, 0)
    words, (*_, test) = _shapes(pattern, pieces, ruler, paper)
    layout = side_by_side(pieces, height=max(piece.height for piece in pieces) + 2 * EDGE)
    width, height = layout.width, max(layout.height, test.bounds[3])
    room = Room(box(0, 0, width, height), clearance=0)
    room.take(shapely.union_all([shape.buffer(GAP) for shape in layout.shapes]))
    corner = room.corner_for(SIDE, test.bounds[3], wish=Point(width, height))
    if corner is None:
        corner = Point(width + GAP, height)
        width += GAP + SIDE
    return _page(layout, corner, words, paper, width, height)


def _shapes(
    pattern: Pattern, pieces: Sequence[StandingPiece], ruler: Ruler, paper: Paper
) -> tuple[TextBlock, list[Polygon]]:
    """Return the words of the scale test, and what has to find room: the pieces, and the test with them."""
    words = TextBlock.set(ruler, _lines(pattern, pieces, paper), SIDE)
    test = box(0, 0, SIDE, words.height + GAP + SIDE)
    return words, [*(piece.line.polygon for piece in pieces), test]


def _packed(
    pieces: Sequence[StandingPiece], words: TextBlock, spots: Sequence[Spot], paper: Paper
) -> SinglePage:
    layout, test = laid(pieces, spots[:-1]), spots[-1]
    corner = Point(test.left, test.bottom + words.height + GAP + SIDE)
    width, height = max(layout.width, test.left + SIDE + EDGE), max(layout.height, corner.y + EDGE)
    return _page(layout, corner, words, paper, width, height)


def _page(
    layout: Layout, corner: Point, words: TextBlock, paper: Paper, width: float, height: float
) -> SinglePage:
    border = 2 * paper.margin
    return SinglePage(layout, corner, words, replace(paper, width=width + border, height=height + border))


def _lines(pattern: Pattern, pieces: Sequence[StandingPiece], paper: Paper) -> list[Line]:
    low, high = BAR * (1 - TOLERANCE), BAR * (1 + TOLERANCE)
    long = [check_length(p.number, p.piece) for p in pieces if p.piece.grain.length >= LONG_GRAIN]
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
