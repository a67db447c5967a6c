"""Paths walked by their length."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector

HOOK = Path.through([Point(0, 0), Point(30, 0), Point(30, 40)])
CURVED = Path(
    (
        Cubic(Point(0, 0), Point(10, 40), Point(60, 70), Point(100, 80)),
        Cubic(Point(100, 80), Point(160, 95), Point(200, 60), Point(220, 0)),
    )
)
inside = st.floats(0.01, 0.99)


def test_a_hook_of_30_and_40_is_70_long() -> None:
    assert HOOK.length == 70


def test_fifty_along_the_hook_is_twenty_up_its_second_leg() -> None:
    assert tuple(HOOK.point(50)) == pytest.approx((30, 20))
    assert HOOK.direction(50) == Vector(0, 1)


def test_distances_beyond_the_ends_are_clipped() -> None:
    assert HOOK.point(-1) == HOOK.start
    assert tuple(HOOK.point(71)) == pytest.approx((30, 40))


def test_curves_that_do_not_meet_are_no_path() -> None:
    with pytest.raises(ValueError, match="do not meet"):
        Path((Cubic.line(Point(0, 0), Point(1, 0)), Cubic.line(Point(2, 0), Point(3, 0))))


def test_nothing_is_no_path() -> None:
    with pytest.raises(ValueError, match="at least one"):
        Path(())


@pytest.mark.parametrize("distance", [0.0, 70.0, -3.0, 100.0])
def test_a_path_is_not_cut_outside_itself(distance: float) -> None:
    with pytest.raises(ValueError, match="cannot cut"):
        HOOK.split(distance)


def test_a_cut_at_a_joint_leaves_no_empty_curve() -> None:
    before, after = HOOK.split(30)
    assert (len(before.curves), len(after.curves)) == (1, 1)
    assert (before.length, after.length) == pytest.approx((30, 40))


@given(inside)
def test_cutting_and_joining_gives_the_same_length(share: float) -> None:
    before, after = CURVED.split(share * CURVED.length)
    assert before.length == pytest.approx(share * CURVED.length, abs=1e-3)
    assert (before + after).length == pytest.approx(CURVED.length, abs=1e-3)


@given(inside, inside)
def test_the_stretch_between_two_distances_is_as_long_as_their_difference(a: float, b: float) -> None:
    low, high = sorted((a * CURVED.length, b * CURVED.length + 1))
    high = min(high, CURVED.length)
    if high - low > 0.01:
        assert CURVED.between(low, high).length == pytest.approx(high - low, abs=1e-3)


@given(inside)
def test_walking_backwards_reaches_the_same_place_from_the_other_end(share: float) -> None:
    distance = share * CURVED.length
    there = CURVED.point(distance)
    back = CURVED.reversed().point(CURVED.length - distance)
    assert tuple(back) == pytest.approx(tuple(there), abs=1e-3)


def test_moving_a_path_moves_all_of_it() -> None:
    moved = CURVED.moved(lambda p: p + Vector(10, -5))
    assert moved.length == pytest.approx(CURVED.length)
    assert moved.end == CURVED.end + Vector(10, -5)


def test_the_hook_crosses_height_ten_forty_along() -> None:
    crossing = HOOK.crossing(10)
    assert crossing is not None
    assert tuple(crossing) == pytest.approx(tuple(HOOK.point(40)))
    assert HOOK.crossing(41) is None


def test_a_curved_crossing_lies_on_its_level() -> None:
    crossing = CURVED.crossing(50)
    assert crossing is not None
    assert crossing.y == pytest.approx(50, abs=1e-3)


def test_flattening_keeps_every_joint() -> None:
    points = CURVED.flatten(1.0).tolist()
    assert [100, 80] in points
    assert points[0] == [0, 0]
    assert points[-1] == pytest.approx([220, 0])


class Strokes(list[tuple[str, Point]]):
    """A pen that remembers."""

    def move_to(self, to: Point) -> None:
        self.append(("move", to))

    def line_to(self, to: Point) -> None:
        self.append(("line", to))

    def curve_to(self, c1: Point, c2: Point, to: Point) -> None:
        self.append(("curve", to))


def test_straight_curves_are_drawn_as_lines() -> None:
    pen = Strokes()
    (HOOK + Path((Cubic(Point(30, 40), Point(30, 60), Point(50, 80), Point(70, 80)),))).draw(pen)
    assert [kind for kind, _ in pen] == ["move", "line", "line", "curve"]
    assert pen[-1][1] == Point(70, 80)
