"""Points and vectors, with numbers to check in the head."""

import math

import pytest

from drafting.geometry.points import Point, Vector, meeting


def test_subtracting_two_places_gives_the_way_between_them() -> None:
    assert Point(7, 5) - Point(4, 1) == Vector(3, 4)
    assert (Point(7, 5) - Point(4, 1)).length == 5


def test_left_of_east_is_north() -> None:
    assert Vector(2, 0).left == Vector(0, 2)


def test_cross_is_positive_when_the_other_lies_to_the_left() -> None:
    assert Vector(1, 0).cross(Vector(0, 1)) == 1
    assert Vector(0, 1).cross(Vector(1, 0)) == -1


def test_a_quarter_turn_is_counter_clockwise() -> None:
    turned = Point(3, 1).turned(Point(1, 1), math.pi / 2)
    assert tuple(turned) == pytest.approx((1, 3))


def test_the_angle_between_ways_is_signed() -> None:
    assert Vector(1, 0).angle_to(Vector(1, 1)) == pytest.approx(math.pi / 4)
    assert Vector(1, 1).angle_to(Vector(1, 0)) == pytest.approx(-math.pi / 4)


def test_a_share_beyond_one_goes_beyond_the_other_place() -> None:
    assert Point(0, 0).towards(Point(10, 20), 1.5) == Point(15, 30)


def test_the_zero_vector_has_no_direction() -> None:
    with pytest.raises(ZeroDivisionError):
        _ = Vector(0, 0).unit


def test_two_lines_meet_where_drawn() -> None:
    assert meeting(Point(0, 1), Vector(5, 0), Point(3, -7), Vector(0, 2)) == Point(3, 1)


def test_parallel_lines_do_not_meet() -> None:
    with pytest.raises(ZeroDivisionError):
        meeting(Point(0, 0), Vector(1, 1), Point(0, 5), Vector(2, 2))
