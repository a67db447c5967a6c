"""Solving a few unknowns within their bounds."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.geometry.solve import Numbers, bisect, newton, secant, solve_within


def solved(residual, start, slopes, low, high, **more):  # type: ignore[no-untyped-def]
    bounds = (np.array(low, float), np.array(high, float))
    return solve_within(
        residual, np.array(start, float), np.array(slopes, float), bounds, enough=1e-9, **more
    )


def test_two_straight_lines_meet_where_they_cross() -> None:
    # x + y = 3 and x - y = 1
    x = solved(
        lambda x: np.array([x[0] + x[1] - 3, x[0] - x[1] - 1]), [0, 0], [[1, 1], [1, -1]], [-9, -9], [9, 9]
    )
    assert x == pytest.approx([2, 1])


def test_a_bad_first_guess_of_the_slopes_is_mended_on_the_way() -> None:
    x = solved(
        lambda x: np.array([x[0] + x[1] - 3, x[0] - x[1] - 1]), [0, 0], [[2, 0], [0, -3]], [-9, -9], [9, 9]
    )
    assert x == pytest.approx([2, 1])


def test_a_curve_is_followed() -> None:
    assert solved(lambda x: x * x - 4, [1], [[1]], [0], [10]) == pytest.approx([2])


@pytest.mark.parametrize(("wanted", "reached"), [(5, 1), (-5, -1)])
def test_out_of_reach_the_bound_is_the_answer(wanted: float, reached: float) -> None:
    assert solved(lambda x: x - wanted, [0], [[1]], [-1], [1]) == pytest.approx([reached])


@pytest.mark.parametrize("sign", [1, -1])
def test_when_one_unknown_is_at_its_bound_the_other_makes_up(sign: int) -> None:
    # x + y = 3 and x = y would be 1.5 each; x may only reach 1. The sum weighs most, so y goes to 2.
    def residual(x: Numbers) -> Numbers:
        return np.array([100 * (x[0] + x[1] - 3 * sign), 0.01 * (x[0] - x[1])])

    low, high = ([0, 0], [1, 9]) if sign > 0 else ([-1, -9], [0, 0])
    x = solved(residual, [0, 0], [[100, 100], [0.01, -0.01]], low, high)
    assert x == pytest.approx([1 * sign, 2 * sign], abs=1e-3)


@pytest.mark.parametrize(("enough", "drafts"), [(3.1, 1), (2.5, 2), (1, 3), (0.1, 4), (0.01, 5)])
def test_no_more_drafts_are_made_than_are_needed(enough: float, drafts: int) -> None:
    # x * x - 4 from x = 1 with a slope of 2, by hand: x = 1, 1 + 3/2, 2.5 - 2.25/3.5, ...; the slope becomes
    # that between the last two; the misses are 3, 2.25, 0.55, 0.065, 0.0024.
    made: list[float] = []

    def residual(x: Numbers) -> Numbers:
        made.append(float(x[0]))
        return x * x - 4

    bounds = np.array([0.0]), np.array([10.0])
    solve_within(residual, np.array([1.0]), np.array([[2.0]]), bounds, enough=enough)
    assert len(made) == drafts


def test_what_is_already_solved_is_not_moved() -> None:
    drafts = []

    def residual(x: Numbers) -> Numbers:
        drafts.append(x)
        return x * 0

    assert solved(residual, [0.3], [[1]], [-1], [1]) == pytest.approx([0.3])
    assert len(drafts) == 1


@given(st.floats(-50, 50), st.floats(0.1, 5), st.floats(0.1, 5))
def test_the_answer_never_leaves_its_bounds(wanted: float, slope: float, guess: float) -> None:
    [x] = solved(lambda x: slope * x - wanted, [0], [[guess]], [-1], [1])
    assert -1 <= x <= 1
    if abs(wanted) < slope:
        assert x == pytest.approx(wanted / slope, abs=1e-6)


def test_halving_finds_the_last_place_that_is_not_beyond() -> None:
    # from 0 to 8 in halves of 1: 4 is beyond 3.2, 2 is not, 3 is not
    assert bisect(lambda x: x > 3.2, 0.0, 8.0, within=1.0) == 3
    assert bisect(lambda x: x >= 3.2, 0.0, 8.0, within=1e-9) == pytest.approx(3.2, abs=1e-9)
    assert bisect(lambda x: x > 3.2, 0.0, 8.0, within=1e-9) <= 3.2


def test_newton_stays_inside_where_a_step_would_leave() -> None:
    # x^9 is flat at the start, so that the first step leads far beyond 1
    root = newton(lambda x: x**9 - 0.5, lambda x: 9 * x**8, 0.1, enough=1e-12)
    assert root == pytest.approx(0.5 ** (1 / 9))
    assert newton(lambda x: x - 0.25, lambda x: 0.0, 0.9, enough=1e-9) == pytest.approx(0.25)
    assert newton(lambda x: x - 0.25, lambda x: 1.0, 0.9, enough=1e-9) == 0.25


def test_a_secant_that_keeps_its_slope_halves_the_miss_with_every_step() -> None:
    # the slope is 1 and taken for 2
    assert secant(lambda x: x - 8, 0.0, 2.0, enough=0.0, rounds=3) == 7
    assert secant(lambda x: x - 8, 0.0, 2.0, enough=2.5, rounds=9) == 6
    assert secant(lambda x: x - 8, 0.0, 1.0, enough=1e-9, rounds=1) == 8


def test_a_secant_learns_its_slope_as_far_as_it_may() -> None:
    tried: list[float] = []

    def miss(x: float) -> float:
        tried.append(x)
        return x - 8

    assert secant(miss, 0.0, 2.0, enough=1e-9, rounds=9, slopes=(0.5, 4.0)) == 8
    assert tried == [0, 4, 8]
    # it is not believed that the slope is less than 2
    assert secant(lambda x: x - 8, 0.0, 4.0, enough=0.0, rounds=2, slopes=(2.0, 4.0)) == 5
