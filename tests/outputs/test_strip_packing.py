"""Outlines on a strip: inside it, a gap apart, and no longer than they need."""

from __future__ import annotations

from itertools import combinations

import pytest
from shapely.geometry import Polygon, box

from outputs.packing.cells import stamp
from outputs.packing.layout import EDGE, GAP, standing
from outputs.packing.roll_packing import laid, packed_narrow, packed_short
from outputs.packing.strip_packing import Blank, cells_across, shortest, slides
from tests.whole_jeans import DEMO_WEARERS, jeans_of

USED = 0.6
"""Share of the paper that is pieces: 0.64 to 0.73 on rolls (measured); rows of pieces gave 0.43 to 0.59."""


def wedge(long: float, left: float, right: float) -> Polygon:
    """Return a piece with its wide end below."""
    return Polygon([(0, 0), (left, 0), (right, long), (0, long)])


def test_two_wedges_lie_head_to_foot_where_that_is_shorter() -> None:
    shapes = [wedge(600, 300, 100)] * 2
    spots = packed_short(shapes, width=420)
    assert sorted(spot.turned for spot in spots) == [False, True]
    assert max(spot.bottom for spot in spots) < 20, "side by side, not one above the other"


def test_what_exactly_fits_across_finds_its_place() -> None:
    (spot,) = packed_short([box(0, 0, 300, 40)], width=300 + 2 * EDGE)
    assert (spot.left, spot.bottom) == (pytest.approx(EDGE, abs=0.1), pytest.approx(EDGE, abs=0.3))


def test_an_outline_that_may_not_be_turned_stays_upright() -> None:
    columns, cell = cells_across(420)
    shapes = [wedge(600, 300, 100)] * 2
    blanks = [Blank((stamp(shape, cell=cell, gap=GAP),), shape.area) for shape in shapes]
    assert not any(placed.stamp.turned for placed in shortest(blanks, columns))


def test_outlines_slide_down_until_they_lie_a_gap_apart() -> None:
    ways = slides([box(0, 10, 50, 20), box(0, 60, 50, 70), box(60, 3, 90, 5)], end=2, gap=8)
    assert ways == pytest.approx([8, 60 - 20 - 8 + 8, 1], abs=0.2)


@pytest.mark.slow
@pytest.mark.parametrize(("wearer", "width"), [(DEMO_WEARERS[0], 821.0), (DEMO_WEARERS[1], 590.0)])
def test_jeans_take_little_more_of_a_roll_than_their_area(wearer: str, width: float) -> None:
    pieces = standing(jeans_of(wearer, "shaped band").pattern)
    shapes = [piece.line.polygon for piece in pieces]
    layout = laid(pieces, packed_short(shapes, width=width))
    area = sum(shape.area for shape in shapes)
    assert area / USED >= width * layout.height >= area
    assert layout.width <= width
    for one, other in combinations(layout.shapes, 2):
        assert one.distance(other) >= GAP - 1e-6
    for shape in layout.shapes:
        assert box(EDGE, EDGE, width - EDGE, layout.height).buffer(1e-6).contains(shape)
    for piece in layout.pieces:
        assert piece.piece.grain.start.x == pytest.approx(piece.piece.grain.end.x, abs=1e-9)


def test_on_a_page_of_fixed_height_the_same_pieces_lie_as_narrow_as_they_are_short_on_a_strip() -> None:
    shapes = [wedge(300, 200, 60), wedge(250, 90, 60), box(0, 0, 120, 80)]
    across = [Polygon([(y, x) for x, y in shape.exterior.coords]) for shape in shapes]
    narrow, short = packed_narrow(shapes, height=320), packed_short(across, width=320)
    assert [(s.left, s.bottom, s.turned) for s in narrow] == [(s.bottom, s.left, s.turned) for s in short]
