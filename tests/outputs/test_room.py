"""Room for lettering in a shape of several parts."""

import shapely
from shapely.geometry import box

from drafting.geometry.points import Point
from outputs.canvas.free_space import Room


def test_a_part_that_just_holds_the_words_is_found_among_wider_ones():
    strip = box(0, 0, 200, 8)
    room = Room(strip, clearance=0, step=6)
    room.take(shapely.union_all([box(5, 0, 10, 8), box(41, 0, 50, 8)]))
    corner = room.corner_for(30.5, 8, wish=Point(25, 4))
    assert corner is not None and 10 <= corner.x <= 10.5 and corner.y == 8


def test_of_several_parts_the_one_nearest_to_the_wish_is_taken():
    room = Room(box(0, 0, 90, 10), clearance=0)
    room.take(box(40, 0, 50, 10))
    corners = [room.corner_for(20, 5, wish=Point(x, 5)) for x in (10, 80)]
    assert [corner is not None and corner.x for corner in corners] == [0, 70]


def test_where_no_part_is_wide_enough_there_is_no_room():
    room = Room(box(0, 0, 90, 10), clearance=0)
    room.take(box(40, 0, 50, 10))
    assert room.corner_for(41, 5, wish=Point(45, 5)) is None
