"""Belt loops: how many, how long the strip, and where they stand."""

import pytest

from drafting.pieces.allowance import cut_line
from drafting.pieces.trueing import check_pieces
from styles.choice.style import STRAIGHT, Style
from styles.parts.belt_loops import belt_loops, loop_count, loop_length, loop_places


@pytest.mark.parametrize(("waist", "count"), [(700, 5), (999, 5), (1000, 7), (1300, 7)])
def test_five_loops_are_usual_and_seven_from_a_waist_of_a_metre(waist: float, count: int) -> None:
    assert loop_count(waist) == count


def test_a_loop_is_cut_ten_centimetres_long_and_longer_for_a_high_band() -> None:
    assert loop_length(STRAIGHT) == 100
    assert loop_length(Style(name="high", band_height=80)) == 130


def test_the_strip_holds_every_loop_and_folds_in_three() -> None:
    (strip,) = belt_loops(STRAIGHT, 800).pieces
    assert strip.polygon.bounds == (0, 0, 500, 14)
    assert [mark.path.start.x for mark in strip.marks] == [100, 200, 300, 400]
    assert cut_line(strip).polygon.bounds == pytest.approx((0, -14, 500, 28))
    assert check_pieces([strip]) == ()


def test_loops_are_evenly_spaced_from_the_centre_back() -> None:
    places = loop_places(200, 200, 5)
    assert [notch.distance for notch in places.back] == [160]
    assert [notch.distance for notch in places.front] == [80]


def test_seven_loops_leave_three_on_each_half() -> None:
    places = loop_places(350, 350, 7)
    assert [(n.name, n.distance) for n in places.back] == [("loop 1", 200)]
    assert [(n.name, n.distance) for n in places.front] == [("loop 3", 100), ("loop 2", 300)]


def test_a_loop_keeps_clear_of_the_side_seam() -> None:
    places = loop_places(235, 165, 5)
    assert [notch.distance for notch in places.back] == [153]
    assert loop_places(245, 155, 5).back[0].distance == 143
