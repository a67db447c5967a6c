"""One panel up to its waist line: what a ruler and a set square find on it."""

import math

import pytest

from drafting import draft_block
from drafting.base.construction_proportions import Proportions
from drafting.block.block import Block
from drafting.block.waist_line import BlockPanel
from drafting.geometry.points import Point
from tests.sewn_block import corner, outline, width_at
from tests.wearers import wearer

BLOCK = draft_block(wearer())
FITTED = draft_block(wearer(total_crotch_length=700, thigh_girth=610, knee_girth=390, knee_height=450))
PANELS = [
    pytest.param(panel, id=f"{name} {panel.name}")
    for name, block in (("proportions", BLOCK), ("fitted", FITTED))
    for panel in (block.front, block.back)
]
each_panel = pytest.mark.parametrize("panel", PANELS)


@each_panel
def test_hip_level_is_level_and_as_wide_as_planned(panel: BlockPanel) -> None:
    points = panel.points()
    assert points["hip point"].y == points["hip at the side"].y == panel.lower.levels.hip.mm
    assert points["hip point"].x - points["hip at the side"].x == pytest.approx(panel.lower.plan.hip.mm)


@each_panel
def test_the_centre_line_is_straight_from_the_waist_through_the_hip_point(panel: BlockPanel) -> None:
    points = panel.points()
    line = points["hip point"] - points["centre at the waist"]
    for name in ("hip point", "curve start"):
        assert line.cross(points[name] - points["centre at the waist"]) == pytest.approx(0, abs=1e-6)


@each_panel
def test_the_crotch_seam_leaves_the_centre_line_without_a_corner(panel: BlockPanel) -> None:
    curve, straight = panel.lower.crotch.curves
    assert math.degrees(curve.direction(1).angle_to(straight.direction(0))) == pytest.approx(0, abs=1e-6)


@each_panel
def test_the_crotch_seam_arrives_at_the_inseam_so_that_both_forks_are_one_curve(panel: BlockPanel) -> None:
    # 96 + 84 is 180: what the back has less than square, so that it curves down to the fork, the front has
    # more
    square = 96 if panel.name == "front" else 84
    assert corner(panel.lower.crotch, panel.lower.inseam.reversed()) == pytest.approx(square, abs=0.01)


@each_panel
def test_the_crotch_curve_stays_inside_its_corner(panel: BlockPanel) -> None:
    # A hollow towards the corner, never beyond it: to the left of the fork, above its level.
    points, seam = panel.points(), panel.lower.crotch
    for step in range(11):
        at = seam.point(step / 10 * seam.curves[0].length)
        assert at.x <= points["fork"].x + 1e-6
        assert at.y >= points["fork"].y - 3


@each_panel
def test_knee_and_hem_lie_evenly_about_the_crease(panel: BlockPanel) -> None:
    points = panel.points()
    for level, width in (("knee", panel.lower.plan.knee), ("hem", panel.lower.plan.hem)):
        crease = points[f"crease at the {level}"]
        assert points[f"{level} at the inseam"].x - crease.x == pytest.approx(width.mm / 2)
        assert crease.x - points[f"{level} at the side"].x == pytest.approx(width.mm / 2)
        assert crease.x == points["crease"].x


@each_panel
def test_the_leg_is_straight_from_knee_to_hem(panel: BlockPanel) -> None:
    assert panel.lower.inseam.curves[0].straight
    assert panel.lower.side.curves[-1].straight


@each_panel
def test_the_inseam_runs_into_the_straight_leg_without_a_corner(panel: BlockPanel) -> None:
    lower, upper = panel.lower.inseam.curves
    assert math.degrees(lower.direction(1).angle_to(upper.direction(0))) == pytest.approx(0, abs=0.01)


@each_panel
def test_the_side_seam_leaves_the_hip_towards_the_knee_and_is_smooth_throughout(panel: BlockPanel) -> None:
    above, thigh, shin = panel.side.curves
    # at 0.6 of the angle of its chord
    chord = thigh.end - thigh.start
    leaves, whole = (math.atan2(way.x, -way.y) for way in (thigh.direction(0), chord))
    assert leaves == pytest.approx(0.6 * whole, abs=1e-6)
    for before, after in ((above, thigh), (thigh, shin)):
        assert math.degrees(before.direction(1).angle_to(after.direction(0))) == pytest.approx(0, abs=0.01)


@each_panel
def test_widths_are_those_of_the_drawn_outline(panel: BlockPanel) -> None:
    shape, levels = outline(panel), panel.lower.levels
    for y in (levels.knee.mm, levels.knee.mm / 2, levels.knee.mm + 100, panel.points()["fork"].y - 5):
        assert panel.lower.width(y) == pytest.approx(width_at(shape, y), abs=0.05)
    assert panel.lower.width(levels.knee.mm) == pytest.approx(panel.lower.plan.knee.mm)


@pytest.mark.parametrize("block", [BLOCK, FITTED], ids=["proportions", "fitted"])
def test_the_thigh_is_measured_below_both_forks(block: Block) -> None:
    # 1 in below the crotch: a work-pant spec sheet
    assert block.thigh_level <= block.levels.crotch.mm - Proportions().thigh_below_fork + 1e-9
    assert block.thigh_level < min(panel.points()["fork"].y for panel in (block.front, block.back))


def test_the_front_crease_halves_the_width_at_crotch_level() -> None:
    # crease at half of the total crotch width: Rosenfeld 1918, lesson 82; the same in three other drafts
    points = BLOCK.front.points()
    side, fork = points["hip at the side"].x, points["fork level"].x
    assert points["crease"].x == pytest.approx((side + fork) / 2)


def test_the_back_fork_reaches_further_and_lies_lower_than_the_front_fork() -> None:
    front, back = BLOCK.front.points()["fork"], BLOCK.back.points()["fork"]
    assert back.x > front.x + 40
    assert -16 <= back.y - front.y <= -5  # dropped 0.5 to 1.6 cm: metric block, Italian draft, American text


def test_both_panels_share_their_levels() -> None:
    assert BLOCK.front.lower.levels == BLOCK.back.lower.levels == BLOCK.levels


def test_the_plumb_line_through_the_hip_point_is_the_zero_of_the_drawing() -> None:
    assert BLOCK.front.points()["hip point"] == Point(0, 845)  # crotch height 755 and 270 / 3


@pytest.mark.parametrize(("handle", "radius"), [(0.4, 58.3), (0.44, 18.2), (0.7, 56.9)])
def test_a_crotch_curve_that_would_turn_more_sharply_than_18_mm_is_drawn_rounder(
    handle: float, radius: float
) -> None:
    # short handles turn it in the middle: 0.44 to a radius of 18.2 mm, 0.4 to less; 0.7 is nearly the
    # roundest
    block = draft_block(wearer(), proportions=Proportions(front_curve_handle=handle), fitted=False)
    assert 1 / block.front.lower.crotch.curves[0].sharpest_bend() == pytest.approx(radius, abs=0.6)


def test_measured_arcs_of_the_front_are_its_widths_by_hand() -> None:
    # half of each arc, and a quarter of the ease: (500 + 15) / 2 and (480 + 15) / 2; 400 / 2 + 10 / 4
    block = draft_block(wearer(front_hip_arc=500, front_waist_arc=400), fitted=False)
    assert (block.shares.front_hip.mm, block.shares.back_hip.mm) == pytest.approx((257.5, 247.5))
    assert block.front.waist_length == pytest.approx(202.5, abs=0.01)
    assert block.back.waist_length == pytest.approx(770 / 2 - 202.5, abs=0.01)
