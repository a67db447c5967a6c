"""How hip less waist is shared over seams and dart."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.suppression import STEEPEST, Sink, Sinks, Suppression, share, share_apart

LONG = Sinks.over(200, 90)
"""The sinks over an ordinary way of 20 cm from waist to hip, the dart 9 cm long."""
SINKS = LONG.front + LONG.back
USUAL = sum(sink.usual for sink in SINKS)


def parts(taken: Suppression) -> tuple[float, ...]:
    return taken.centre_front, taken.front_side, taken.back_side, taken.dart


def test_a_sink_goes_from_least_over_usual_to_most() -> None:
    sink = Sink(-10, 20, 40)
    assert [sink.at(t) for t in (-1, -0.5, 0, 0.5, 1)] == [-10, 5, 20, 30, 40]


def test_the_usual_difference_takes_the_usual_amounts() -> None:
    assert parts(share(USUAL, LONG, dart_least=5)) == pytest.approx([sink.usual for sink in SINKS])


def test_two_sinks_share_in_proportion_to_their_room() -> None:
    # 60 is 30 more than usual; the rooms are 20 and 40
    taken = share_apart(60, (Sink(0, 10, 30), Sink(0, 20, 60)))
    assert taken.parts == pytest.approx((20, 40))
    assert taken.rest == pytest.approx(0)


@pytest.mark.parametrize(("amount", "rest"), [(100, 10), (-20, -20)])
def test_what_finds_no_room_is_the_rest(amount: float, rest: float) -> None:
    assert share_apart(amount, (Sink(0, 10, 30), Sink(0, 20, 60))).rest == pytest.approx(rest)


@given(st.floats(-400, 400), st.floats(0, 15))
def test_the_shares_and_the_rest_make_the_whole_amount(amount: float, dart_least: float) -> None:
    taken = share(amount, LONG, dart_least=dart_least)
    assert sum(parts(taken)) + taken.left_over == pytest.approx(amount, abs=1e-9)


@given(st.floats(-400, 400))
def test_no_share_goes_past_its_limits(amount: float) -> None:
    for sink, part in zip(SINKS, parts(share(amount, LONG, dart_least=5)), strict=True):
        assert sink.least - 1e-9 <= part <= sink.most + 1e-9


@given(st.floats(-400, 400))
def test_a_dart_is_worth_sewing_or_left_out(amount: float) -> None:
    dart = share(amount, LONG, dart_least=5).dart
    assert dart == 0 or dart >= 5


@given(st.floats(-400, 400), st.floats(0, 50))
def test_where_the_dart_stays_a_larger_difference_makes_no_share_smaller(amount: float, more: float) -> None:
    small, large = share(amount, LONG, dart_least=0), share(amount + more, LONG, dart_least=0)
    assert all(b >= a - 1e-9 for a, b in zip(parts(small), parts(large), strict=True))


def test_a_rest_is_left_only_when_every_limit_is_reached() -> None:
    taken = share(1000, LONG, dart_least=5)
    assert parts(taken) == pytest.approx([sink.most for sink in SINKS])
    assert taken.left_over == pytest.approx(1000 - sum(sink.most for sink in SINKS))


@given(st.floats(20, 300), st.floats(10, 90), st.floats(-400, 400))
def test_over_a_short_way_no_seam_and_no_dart_leg_leans_too_far(
    height: float, dart: float, amount: float
) -> None:
    taken = share(amount, Sinks.over(height, dart), dart_least=5)
    assert max(abs(part) for part in parts(taken)[:3]) <= STEEPEST * height + 1e-9
    assert taken.dart <= 2 * STEEPEST * dart + 1e-9
    assert sum(parts(taken)) + taken.left_over == pytest.approx(amount, abs=1e-9)
