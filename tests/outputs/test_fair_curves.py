"""Fine polylines as few smooth curves: within the gap, corners kept, straight lines straight."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon

from drafting.base.tolerance import FLATTEN
from drafting.geometry.points import Point
from outputs.canvas.fair_curves import GAP, fair_curves
from tests.outputs import samples
from tests.outputs.drawings import WHOLE, source
from tests.strategies import examples

PLACE = st.tuples(st.floats(-500, 500), st.floats(-500, 500))


def test_straight_lines_and_their_corners_stay():
    ring = np.array([(0, 0), (300, 0), (300, 40), (297, 200), (0, 200), (0, 0.0)])
    found = fair_curves(ring)
    assert [curve.end for curve in found.curves] == [Point(x, y) for x, y in ring[1:].tolist()]
    assert all(curve.straight for curve in found.curves)


def test_a_quarter_circle_is_one_or_two_curves_of_its_length():
    """A quarter circle of 50 mm is 25 pi long."""
    turns = np.linspace(0, np.pi / 2, 60)
    found = fair_curves(50 * np.column_stack([np.cos(turns), np.sin(turns)]))
    assert len(found.curves) <= 2
    assert found.length == pytest.approx(25 * np.pi, abs=0.02)


def test_a_single_sweep_comes_back_as_the_cubic_it_was():
    (found,) = fair_curves(samples.curve((0, 0), (100, 0), (200, 300), (300, 320)).flatten()).curves
    assert tuple(found.c1) == pytest.approx((100, 0), abs=0.5)
    assert tuple(found.c2) == pytest.approx((200, 300), abs=0.5)


def test_curves_join_smoothly():
    turns = np.linspace(0, 1.7 * np.pi, 300)
    found = fair_curves(50 * np.column_stack([np.cos(turns), np.sin(turns)]))
    assert 1 < len(found.curves) < 12
    for before, after in pairwise(found.curves):
        assert abs(before.direction(1).angle_to(after.direction(0))) < 1e-6


def test_the_cut_lines_of_a_whole_pair_keep_their_place_in_a_fifth_of_the_points():
    points = curves = 0
    for placed in source(*WHOLE[0]):
        ring = np.vstack([placed.cut, placed.cut[:1]])
        found = fair_curves(ring)
        assert Polygon(found.flatten(0.001)).hausdorff_distance(placed.line.polygon) < GAP + 2 * FLATTEN
        assert (found.start, found.end) == (Point(*ring[0]), Point(*ring[0]))
        points, curves = points + len(ring), curves + len(found.curves)
    assert curves < points / 5


@examples(25)
@given(st.tuples(PLACE, PLACE, PLACE, PLACE))
def test_any_curve_keeps_its_place(control):
    curve = samples.curve(*control)
    if curve.curves[0].straight:
        return
    fine = curve.flatten()
    found = LineString(fair_curves(fine).flatten(0.001))
    assert found.within(LineString(fine).buffer(GAP + 2 * FLATTEN))
    assert LineString(fine).within(found.buffer(GAP + 2 * FLATTEN))
