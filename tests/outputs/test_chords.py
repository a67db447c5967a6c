"""Curves as few chords: held within the gap, corners kept, and no chord to spare."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString

from outputs.canvas.chords import GAP, few_chords
from tests.outputs import samples
from tests.strategies import examples

PLACE = st.tuples(st.floats(-500, 500), st.floats(-500, 500))


def arc(radius: float, angle: float) -> np.ndarray:
    turns = np.linspace(0, angle, 2000)
    return radius * np.column_stack([np.cos(turns), np.sin(turns)])


def test_an_arc_gets_as_few_chords_as_geometry_allows():
    """A chord that turns by a lies r (1 - cos(a / 2)) from its arc."""
    points, _ = few_chords(arc(100, np.pi / 2), gap=0.11)
    most_turned = 2 * np.arccos(1 - 0.1 / 100)  # of the gap, 0.01 mm is the fine line's own
    assert len(points) - 1 == np.ceil((np.pi / 2) / most_turned)


def test_a_straight_line_is_one_chord_and_its_ends_are_corners():
    points, corners = few_chords(np.column_stack([np.arange(50), 2 * np.arange(50)]))
    assert points.tolist() == [[0, 0], [49, 98]]
    assert corners.tolist() == [True, True]


def test_corners_stay_even_where_they_are_flatter_than_the_gap():
    points, corners = few_chords(np.array([(0, 0), (0.1, 0.05), (0.2, 0), (30, 0), (30, 40.0)]))
    assert points.tolist() == [[0, 0], [0.1, 0.05], [0.2, 0], [30, 0], [30, 40]]
    assert corners.all()


def test_a_point_of_a_curve_is_no_corner():
    _, corners = few_chords(arc(20, np.pi))
    assert corners.tolist() == [True] + [False] * (len(corners) - 2) + [True]


def test_points_that_repeat_are_one():
    assert len(few_chords(np.array([(0, 0), (0, 0), (5, 0), (5, 0), (5, 5.0)]))[0]) == 3


@examples(25)
@given(st.tuples(PLACE, PLACE, PLACE, PLACE))
def test_any_curve_stays_within_the_gap(control):
    path = samples.curve(*control)
    if path.curves[0].straight:
        return
    points, _ = few_chords(path.flatten())
    fine = LineString(path.flatten(0.0005))
    assert fine.within(LineString(points).buffer(GAP + 0.0005))
    assert points[0] == pytest.approx(tuple(path.start)) and points[-1] == pytest.approx(tuple(path.end))
