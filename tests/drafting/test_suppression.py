"""How hip less waist is shared over seams and dart."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting import draft_block
from drafting.block.suppression import STEEPEST, Sink, Sinks, Suppression, share, share_apart
from tests.wearers import wearer

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


def test_a_usual_half_by_hand() -> None:
    # 2 cm at most in front as in a dart (dart budget of a dressmaking school), the rest common practice:
    # 1.2 at the centre front, 2.1 and 1.5 at the sides, 2.2 in the dart are 7; all at their most are 16.6.
    assert parts(share(70, LONG, dart_least=5)) == pytest.approx((12, 21, 15, 22))
    assert parts(share(166, LONG, dart_least=5)) == pytest.approx((20, 42, 42, 62))
    # halfway between them
    assert parts(share(118, LONG, dart_least=5)) == pytest.approx((16, 31.5, 28.5, 42))


def test_a_half_whose_waist_is_larger_swings_out_at_centre_front_and_sides() -> None:
    # all the way: 6 at the centre front, 5 at either side, and no dart
    taken = share(-160, LONG, dart_least=5)
    assert parts(taken) == pytest.approx((-60, -50, -50, 0))
    assert taken.left_over == pytest.approx(0)


def test_of_a_small_difference_the_dart_takes_no_more_than_two_fifths() -> None:
    assert Sinks.over(200, 90, 40).dart.usual == pytest.approx(0.4 * 40)
    assert Sinks.over(200, 90, 100).dart.usual == pytest.approx(22)


def test_seams_and_dart_legs_lean_by_no_more_than_20_degrees() -> None:
    # tan 20 degrees is 0.364
    short = Sinks.over(50, 50)
    assert (short.front_side.most, short.back_side.least) == pytest.approx((18, -18))
    assert short.dart.most == pytest.approx(36)


@pytest.mark.parametrize(
    ("by", "moved"),
    # the front takes 42 at most; the back may swing out by 4 and still look plumb
    [(-5, 0), (10, 10), (30, 19), (12, 12)],
)
def test_a_back_that_is_too_small_gives_its_side_seam_to_the_front(by: float, moved: float) -> None:
    taken = Suppression(12, 21, 15, 22).towards_the_front(by, 42)
    assert (taken.front_side, taken.back_side) == pytest.approx((21 + moved, 15 - moved))
    assert (taken.centre_front, taken.dart) == (12, 22)


def test_the_front_gets_no_more_than_it_can_take() -> None:
    assert Suppression(12, 35, 15, 22).towards_the_front(30, 42).front_side == pytest.approx(42)


def test_over_a_short_way_from_waist_to_hip_the_block_takes_less_in_at_its_seams() -> None:
    # hip level 8 cm below the waist: 0.36 * 80 is less than the 42 that a side seam takes elsewhere
    wearers = (wearer(waist_girth=640, waist_to_hip=mm) for mm in (80, 200))
    short, long = (draft_block(given, fitted=False).shares.suppression for given in wearers)
    assert max(short.front_side, short.back_side) <= 0.36 * 80 + 1e-9
    assert short.front_side < long.front_side


def test_a_wider_hip_on_one_side_goes_to_its_two_seams_alike() -> None:
    even = draft_block(wearer(), fitted=False).shares
    wider, taken = even.widened(10, "left"), even.suppression
    for one, other in ((wider.front_hip, even.front_hip), (wider.back_hip, even.back_hip)):
        assert one.mm == pytest.approx(other.mm + 5)
    assert wider.suppression.front_side == pytest.approx(taken.front_side + 5)
    assert wider.suppression.back_side == pytest.approx(taken.back_side + 5)
