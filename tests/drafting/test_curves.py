"""Curves against exact lengths and against themselves."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.geometry.curves import Cubic
from drafting.geometry.points import Point, Vector

places = st.builds(Point, st.floats(-500, 500), st.floats(-500, 500))
shares = st.floats(0.02, 0.98)


@st.composite
def fair_curves(draw: st.DrawFn) -> Cubic:
    """Return a curve as drafts have them: handles a quarter to half the chord, turned under 80 degrees."""
    start, way = draw(places), Vector(draw(st.floats(20, 600)), 0).turned(draw(st.floats(-3, 3)))
    end = start + way
    c1 = start + way.turned(draw(st.floats(-1.4, 1.4))) * draw(st.floats(0.25, 0.5))
    c2 = end + -way.turned(draw(st.floats(-1.4, 1.4))) * draw(st.floats(0.25, 0.5))
    return Cubic(start, c1, c2, end)


def parabola(a: float) -> Cubic:
    """Return y = x^2 from 0 to `a`, a quadratic Bézier raised to a cubic: both are exact."""
    start, middle, end = Point(0, 0), Point(a / 2, 0), Point(a, a * a)
    return Cubic(start, start.towards(middle, 2 / 3), end.towards(middle, 2 / 3), end)


def quarter(rx: float, ry: float) -> Cubic:
    """Return the usual cubic for a quarter of an ellipse, 0.03 % off at most."""
    k = 4 / 3 * (math.sqrt(2) - 1)
    return Cubic(Point(rx, 0), Point(rx, k * ry), Point(k * rx, ry), Point(0, ry))


@pytest.mark.parametrize("a", [0.5, 3.0, 20.0])
def test_a_parabola_has_its_exact_length(a: float) -> None:
    # Integral of sqrt(1 + 4 x^2), any table of integrals.
    exact = a / 2 * math.sqrt(1 + 4 * a * a) + math.asinh(2 * a) / 4
    assert parabola(a).length == pytest.approx(exact, abs=1e-4)


def test_a_quarter_circle_is_a_quarter_circumference_long() -> None:
    assert quarter(100, 100).length == pytest.approx(50 * math.pi, rel=3e-4)


def test_a_quarter_ellipse_is_as_long_as_ramanujan_says() -> None:
    # Ramanujan 1914, second approximation; its own error is below 1e-6 for this ratio.
    a, b = 100.0, 60.0
    h = ((a - b) / (a + b)) ** 2
    circumference = math.pi * (a + b) * (1 + 3 * h / (10 + math.sqrt(4 - 3 * h)))
    assert quarter(a, b).length == pytest.approx(circumference / 4, rel=3e-4)


def test_a_straight_curve_is_as_long_as_its_chord() -> None:
    line = Cubic.line(Point(1, 1), Point(4, 5))
    assert line.straight
    assert line.length == 5
    assert line.bend(0.3) == pytest.approx(0)


def test_a_quarter_circle_walked_counter_clockwise_bends_left_by_one_over_its_radius() -> None:
    assert quarter(100, 100).bend(0.5) == pytest.approx(1 / 100, rel=0.01)
    assert quarter(100, 100).reversed().bend(0.5) == pytest.approx(-1 / 100, rel=0.01)


def test_a_handle_on_its_own_end_still_leaves_a_tangent() -> None:
    curve = Cubic(Point(0, 0), Point(0, 0), Point(30, 40), Point(100, 40))
    assert curve.direction(0).angle_to(Vector(3, 4)) == pytest.approx(0, abs=1e-4)
    _, tangents = curve.sample(np.array([0.0, 1.0]))
    assert tangents[0] == pytest.approx([0.6, 0.8], abs=1e-4)
    assert tangents[1] == pytest.approx([1, 0], abs=1e-4)


@given(fair_curves(), shares)
def test_the_two_parts_of_a_split_are_as_long_as_the_whole(curve: Cubic, t: float) -> None:
    before, after = curve.split(t)
    assert before.end == after.start
    assert before.length + after.length == pytest.approx(curve.length, abs=2e-4)


@given(fair_curves(), shares, shares)
def test_a_part_of_a_split_is_the_same_curve(curve: Cubic, t: float, u: float) -> None:
    assert tuple(curve.split(t)[0].point(u)) == pytest.approx(tuple(curve.point(t * u)), abs=1e-9)


@given(fair_curves(), shares)
def test_the_parameter_at_a_length_gives_that_length_back(curve: Cubic, share: float) -> None:
    distance = share * curve.length
    assert curve.length_to(curve.parameter_at(distance)) == pytest.approx(distance, abs=1e-4)


@given(fair_curves(), shares)
def test_walking_backwards_passes_the_same_points(curve: Cubic, t: float) -> None:
    assert tuple(curve.reversed().point(1 - t)) == pytest.approx(tuple(curve.point(t)), abs=1e-9)
    assert curve.reversed().length == pytest.approx(curve.length, abs=2e-4)


@given(fair_curves(), st.sampled_from([0.5, 0.1, 0.01]))
def test_chords_stay_within_the_sag_asked_for(curve: Cubic, sag: float) -> None:
    t = curve.parameters(sag)
    ends = curve.places(t)
    middles = curve.places((t[1:] + t[:-1]) / 2)
    chord = np.diff(ends, axis=0)
    gap = middles - ends[:-1]
    across = np.abs(chord[:, 0] * gap[:, 1] - chord[:, 1] * gap[:, 0]) / np.hypot(*chord.T)
    assert across.max() <= sag


@given(fair_curves(), shares)
def test_sampling_agrees_with_single_points_and_tangents(curve: Cubic, t: float) -> None:
    points, tangents = curve.sample(np.array([t]))
    assert points[0] == pytest.approx(tuple(curve.point(t)), abs=1e-9)
    way = curve.direction(t)
    assert tangents[0] == pytest.approx((way.x, way.y), abs=1e-9)


@given(fair_curves(), shares)
def test_bend_is_the_turn_of_the_tangent_over_the_way_gone(curve: Cubic, t: float) -> None:
    step = 1e-4
    turn = curve.direction(t - step).angle_to(curve.direction(t + step))
    way = (curve.velocity(t) * (2 * step)).length
    assert curve.bend(t) == pytest.approx(turn / way, rel=1e-3, abs=1e-6)


def test_lengths_beyond_the_ends_are_clipped() -> None:
    curve = quarter(100, 100)
    assert curve.parameter_at(-5) == 0
    assert curve.parameter_at(1e6) == 1


@pytest.mark.parametrize("turn", [0.1, 0.45, 0.8])
@pytest.mark.parametrize(("near", "times"), [(10, 3.3), (40, 1.9), (100, 1.35)])
def test_a_squared_curve_is_nearly_an_arc_at_the_nearer_end(near: float, times: float, turn: float) -> None:
    """An arc that touches both lines `near` from their corner has a radius of near / tan(turn / 2)."""
    start, corner = Point(0, 0), Point(200, 0)
    arrive = Vector(1, 0).turned(turn)
    curve = Cubic.squared(start, Vector(1, 0), corner + arrive * near, arrive)
    assert curve.direction(0).angle_to(Vector(1, 0)) == pytest.approx(0)
    assert curve.direction(1).angle_to(arrive) == pytest.approx(0, abs=1e-9)
    assert curve.sharpest_bend() <= times * math.tan(turn / 2) / near
    # from the other side it is the same curve
    back = Cubic.squared(curve.end, -arrive, start, Vector(-1, 0)).reversed()
    assert (back.point(0.3) - curve.point(0.3)).length == pytest.approx(0, abs=1e-9)


def test_a_squared_curve_midway_between_its_ends_is_a_parabola() -> None:
    start, corner, end = Point(0, 0), Point(50, 0), Point(50, 50)
    curve = Cubic.squared(start, Vector(1, 0), end, Vector(0, 1))
    assert (curve.c1 - start.towards(corner, 2 / 3)).length == pytest.approx(0, abs=1e-9)
    assert (curve.c2 - end.towards(corner, 2 / 3)).length == pytest.approx(0, abs=1e-9)
