"""The waist line and its darts: exact, square, smooth when sewn."""

import math

import pytest

from drafting import draft_block
from drafting.block.block import Block
from drafting.block.darts import Dart
from drafting.geometry.points import Point
from tests.fairness import bend_changes, largest_turn
from tests.sewn_block import corner, joins, unfair_lines
from tests.wearers import wearer

ONE_DART = draft_block(wearer())
TWO_DARTS = draft_block(wearer(waist_girth=660, hip_girth=1060))
FULL = draft_block(wearer(waist_girth=1040, hip_girth=1040))
BLOCKS = pytest.mark.parametrize(
    "block", [ONE_DART, TWO_DARTS, FULL], ids=["one dart", "two darts", "full waist"]
)
DARTED = pytest.mark.parametrize("block", [ONE_DART, TWO_DARTS], ids=["one dart", "two darts"])


def test_the_difference_of_hip_and_waist_decides_how_many_darts_there_are() -> None:
    assert [len(block.back.darts) for block in (ONE_DART, TWO_DARTS)] == [1, 2]
    assert all(not block.front.darts for block in (ONE_DART, TWO_DARTS, FULL))


@DARTED
def test_the_legs_of_a_dart_are_equally_long(block: Block) -> None:
    for dart in block.back.darts:
        assert (dart.inner - dart.tip).length == pytest.approx((dart.outer - dart.tip).length, abs=1e-6)


@DARTED
def test_no_dart_is_wider_than_can_be_sewn_flat_nor_longer_than_the_yoke(block: Block) -> None:
    # a dart runs to the lower edge of the yoke (jeans refitting articles); widths by common practice, no
    # source
    for dart in block.back.darts:
        assert dart.width < 40
        assert (dart.inner - dart.tip).length < 115


@BLOCKS
def test_the_sewn_waist_is_the_wearers_with_exactly_its_ease(block: Block) -> None:
    wanted = block.body["waist_girth"].mm + block.ease.waist
    assert 2 * (block.front.closed_waist.length + block.back.closed_waist.length) == pytest.approx(
        wanted, abs=0.01
    )


@BLOCKS
def test_the_waist_is_square_to_both_centre_lines(block: Block) -> None:
    # both halves of the body together stay within 3 degrees
    found = joins(block)
    assert (found.centre_front, found.centre_back) == pytest.approx((0, 0), abs=1.5)


@BLOCKS
def test_front_and_back_waist_run_on_across_the_side_seam(block: Block) -> None:
    assert joins(block).side_waist <= 5


@BLOCKS
def test_the_waist_is_one_smooth_line_when_the_darts_are_sewn(block: Block) -> None:
    for panel in (block.front, block.back):
        assert largest_turn(panel.closed_waist) < 0.01
        assert bend_changes(panel.closed_waist) == []
        assert panel.closed_waist.length == pytest.approx(panel.waist_length)


@BLOCKS
def test_the_waist_runs_from_the_centre_line_to_the_side_seam(block: Block) -> None:
    for panel in (block.front, block.back):
        assert (panel.waist[0].start - panel.lower.crotch.end).length < 1e-6
        assert (panel.waist[-1].end - panel.side.start).length < 1e-6


@DARTED
def test_each_stretch_of_the_waist_ends_and_begins_at_the_legs_of_a_dart(block: Block) -> None:
    for dart, before, after in zip(block.back.darts, block.back.waist, block.back.waist[1:], strict=False):
        assert (before.end - dart.inner).length < 1e-6
        assert (after.start - dart.outer).length < 1e-6


@DARTED
def test_where_a_dart_is_sewn_the_two_stretches_meet_without_a_corner(block: Block) -> None:
    # Across one dart: the two angles between leg and waist make a straight line.
    for dart, before, after in zip(block.back.darts, block.back.waist, block.back.waist[1:], strict=False):
        inner = (dart.tip - dart.inner).angle_to(before.reversed().direction(0))
        outer = (dart.tip - dart.outer).angle_to(after.direction(0))
        assert math.degrees(abs(inner) + abs(outer)) == pytest.approx(180, abs=0.01)


def test_a_dart_opens_evenly_from_its_tip() -> None:
    dart = Dart(inner=Point(10, 100), tip=Point(0, 0), outer=Point(-10, 100))
    assert dart.width == 20
    assert [dart.opening(y) for y in (-50, 0, 50, 100, 150)] == [0, 0, 10, 20, 20]
    assert dart.outer.turned(dart.tip, dart.angle).x == pytest.approx(dart.inner.x)


@BLOCKS
def test_the_trunk_is_at_hip_level_what_the_hip_asks_for(block: Block) -> None:
    hip = block.body["hip_girth"].mm + block.ease.hip
    assert block.trunk_girth(block.levels.hip.mm) == pytest.approx(hip, abs=0.01)


@BLOCKS
def test_the_whole_side_seams_are_equally_long(block: Block) -> None:
    assert block.front.side.length == pytest.approx(block.back.side.length, abs=0.01)


@DARTED
def test_a_slim_waist_is_taken_in_at_the_side(block: Block) -> None:
    for panel in (block.front, block.back):
        assert panel.points()["side at the waist"].x > panel.points()["hip at the side"].x
        assert 60 < corner(panel.waist[-1].reversed(), panel.side) < 120


@DARTED
def test_the_record_sets_the_darts_where_they_are_drawn(block: Block) -> None:
    points, count = block.back.points(), len(block.back.darts)
    top, side = points["centre at the waist"], points["side at the waist"]
    for number, dart in enumerate(block.back.darts, start=1):
        assert (points[f"dart {number} tip"] - dart.tip).length == pytest.approx(0, abs=1e-6)
        middle = top.towards(side, number / (count + 1))
        assert (points[f"dart {number} middle"] - middle).length == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize(("waist", "to_hip", "bow"), [(760, 180, None), (640, 110, 10)])
def test_the_side_seam_is_bowed_by_half_its_turn_and_10_degrees_at_most(
    waist: float, to_hip: float, bow: float | None
) -> None:
    # half of the turn from the chord to where the seam leaves the hip
    block = draft_block(wearer(waist_girth=waist, waist_to_hip=to_hip), fitted=False)
    upper = block.front.side.curves[0]
    chord = upper.end - upper.start
    turn = math.degrees(chord.angle_to(block.front.side.curves[1].direction(0)))
    found = math.degrees(upper.direction(0).angle_to(chord))
    assert abs(found) == pytest.approx(0.5 * abs(turn) if bow is None else bow, abs=0.01)


@pytest.mark.parametrize(("waist", "hip", "rise"), [(1280, 1140, 260), (1360, 1140, 220), (1360, 1220, 260)])
def test_where_the_waist_is_far_over_the_hip_its_lines_still_bend_one_way_and_join(
    waist: float, hip: float, rise: float
) -> None:
    given = {"waist_girth": waist, "hip_girth": hip, "body_rise": rise}
    block = draft_block(wearer(**given, total_crotch_length=800))
    assert unfair_lines(block) == []
    assert joins(block).within()


@pytest.mark.parametrize(
    "changed",
    [
        {"waist_girth": 700, "total_crotch_length": 740},
        {"waist_girth": 680, "total_crotch_length": 760},
        {"waist_girth": 960, "total_crotch_length": 760},
        {"waist_girth": 900, "total_crotch_length": 740, "waist_to_hip": 130},
    ],
)
def test_no_waist_line_has_a_point_near_its_seams(changed: dict[str, float]) -> None:
    # a hand's curve ruler is no sharper at its head: some 5 cm of radius (common practice, no source)
    block = draft_block(wearer(**changed))
    for panel in (block.front, block.back):
        assert max(curve.sharpest_bend() for curve in panel.closed_waist.curves) < 1 / 50, panel.name
