"""The crotch curve: one bend to the fork, whatever the body, and smooth across the inseam."""

import math

import pytest

from drafting import draft_block
from drafting.block.crotch_curve import crotch_curve, missing_turn
from drafting.geometry.points import Point, Vector
from tests.sewn_block import joins, unfair_lines
from tests.wearers import wearer


def arriving(degrees: float) -> float:
    """Return the missing turn, in degrees, of a curve that falls 100 mm plumb and goes 100 mm to the fork."""
    way = Vector(1, 0).turned(math.radians(degrees))
    curve = crotch_curve(Point(0, 100), Vector(0, -1), Point(100, 0), way, handle=0.6)
    return math.degrees(missing_turn(curve))


def test_a_curve_that_turns_enough_at_the_fork_lacks_nothing() -> None:
    assert arriving(0) == 0
    assert arriving(-35) == 0  # 10 of the 45 degrees it turned off its chord at the centre line


def test_a_flat_one_lacks_what_makes_a_fifth_of_its_turn_at_the_centre_line() -> None:
    assert arriving(-40) == pytest.approx(45 / 5 - 5, abs=0.01)
    assert arriving(-50) == pytest.approx(45 / 5 + 5, abs=0.01)


@pytest.mark.parametrize(("waist", "hip", "rise"), [(1200, 1450, 230), (1300, 1450, 260), (1400, 1500, 280)])
def test_a_very_wide_fork_under_a_short_trunk_bends_one_way_and_has_no_point(
    waist: float, hip: float, rise: float
) -> None:
    given = {"waist_girth": waist, "hip_girth": hip, "body_rise": rise, "inside_leg_height": 700}
    block = draft_block(wearer(**given, total_crotch_length=900))
    assert unfair_lines(block) == []
    assert joins(block).within()
    for panel in (block.front.lower, block.back.lower):
        assert panel.crotch.curves[0].sharpest_bend() < 1 / 20
