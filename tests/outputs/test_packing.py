"""Outlines on a bed of cells: never one over another, and a gap between them."""

from itertools import combinations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from shapely.affinity import rotate, translate
from shapely.geometry import Polygon, box

from outputs.packing.cells import Bed, Placed, Stamp, place, stamp
from tests.strategies import examples

CELL = (7.0, 5.0)
GAP = 6.0
FLUSH = (0.0, 0.0, 0.0, 0.0)


def to_the_corner(_: Stamp, shape: tuple[int, ...]) -> np.ndarray:
    x, y = np.ogrid[: shape[0], : shape[1]]
    return x * 10_000 + y


def laid(outline: Polygon, placed: Placed) -> Polygon:
    """Return the outline where its stamp lies."""
    turned = rotate(outline, 180 if placed.stamp.turned else 0)
    left, bottom, _, _ = turned.bounds
    return translate(turned, placed.corner[0] - left, placed.corner[1] - bottom)


corners = st.tuples(st.integers(0, 60), st.integers(0, 90))
outlines = (
    st.lists(corners, min_size=3, max_size=9)
    .map(lambda points: Polygon(points).buffer(3).convex_hull)
    .map(lambda hull: hull.difference(translate(hull, 20, 15)))
    .filter(lambda shape: isinstance(shape, Polygon) and shape.area > 20)
)


@given(shapes=st.lists(outlines, min_size=2, max_size=7), turn=st.booleans())
@examples(60)
def test_outlines_of_any_shape_lie_a_gap_apart_and_inside_the_bed(shapes: list[Polygon], turn: bool) -> None:
    bed = Bed(30, 40)
    lie = []
    for shape in shapes:
        upright = stamp(shape, cell=CELL, gap=GAP)
        placed = place(bed, [upright, upright.upside_down] if turn else [upright], to_the_corner)
        if placed:
            lie.append(laid(shape, placed))
    assert lie
    for one, other in combinations(lie, 2):
        assert one.distance(other) >= GAP - 1e-6
    for shape in lie:
        assert box(0, 0, 30 * CELL[0], 40 * CELL[1]).buffer(1e-6).contains(shape)


def test_a_place_is_free_exactly_where_no_cell_would_be_taken_twice() -> None:
    rng = np.random.default_rng(7)
    bed = Bed(12, 9)
    taken = np.zeros((12, 9), dtype=bool)
    for _ in range(4):
        cells = rng.random((rng.integers(1, 5), rng.integers(1, 6))) < 0.6
        free = bed.free(Stamp(cells, CELL, FLUSH))
        for x, y in np.ndindex(free.shape):
            under = taken[x : x + cells.shape[0], y : y + cells.shape[1]]
            assert free[x, y] == (not (under & cells).any())
        spots = np.argwhere(free)
        if len(spots):
            x, y = spots[len(spots) // 2].tolist()
            bed.put(Placed(Stamp(cells, CELL, FLUSH), x, y))
            taken[x : x + cells.shape[0], y : y + cells.shape[1]] |= cells
    assert taken.any()


def test_a_square_of_a_whole_number_of_cells_takes_just_these() -> None:
    assert stamp(box(3, 4, 3 + 21, 4 + 20), cell=CELL, gap=0).cells.shape == (3, 4)


def test_what_is_larger_than_the_bed_finds_no_place() -> None:
    assert place(Bed(3, 3), [Stamp(np.ones((4, 1), dtype=bool), CELL, FLUSH)], to_the_corner) is None


def test_half_a_turn_is_taken_only_where_it_costs_less() -> None:
    corner = Stamp(np.array([[True, True], [True, False]]), CELL, FLUSH)
    bed = Bed(2, 2)
    first = place(bed, [corner, corner.upside_down], to_the_corner)
    assert first and not first.stamp.turned
    single = Stamp(np.ones((1, 1), dtype=bool), CELL, FLUSH)
    last = place(bed, [single], to_the_corner)
    assert last and (last.column, last.row) == (1, 1)


def test_an_outline_that_shall_lie_flush_begins_with_its_cells() -> None:
    placed = place(Bed(9, 9), [stamp(box(50, 50, 63, 61), cell=CELL, gap=GAP, flush=True)], to_the_corner)
    assert placed and placed.corner[0] == 0
    assert placed.stamp.cells.shape == (3, 4), "13 + 3 in columns of 7, 11 + 6 in rows of 5"
