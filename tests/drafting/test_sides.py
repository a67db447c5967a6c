"""Bodies whose two sides differ: what is sewn to the other side stays alike, the rest follows its side."""

from __future__ import annotations

import pytest

from drafting import Block, draft_block
from drafting.block.block import Half
from drafting.body.checks import check_measurements
from drafting.body.measurements import Side, SideMeasurements
from drafting.report.block_figures import block_figures
from drafting.report.block_findings import block_findings
from drafting.report.fit import girth_lines
from styles.choice.style import STRAIGHT
from styles.making.jeans import Jeans, make_jeans
from tests.printed import called
from tests.sewn_block import joins, outline, unfair_lines, width_at
from tests.wearers import wearer


def uneven(left: dict[str, float], right: dict[str, float], **changed: float) -> Block:
    """Return the block of a wearer whose sides were measured as said."""
    return draft_block(wearer(left=SideMeasurements(**left), right=SideMeasurements(**right), **changed))


def half(block: Block, side: Side) -> Half:
    return next(half for half in block.halves if half.side is side)


def side_seam(block: Block, side: Side) -> float:
    return half(block, side).front.side.length


def hip_width(block: Block, side: Side) -> float:
    """Return the width of one side's two panels at hip level."""
    panels = (half(block, side).front.points(), half(block, side).back.points())
    return sum(points["hip point"].x - points["hip at the side"].x for points in panels)


def assert_sewable(block: Block) -> None:
    """Assert what is sewn together is equally long, and that each half is fair and smooth."""
    right, left = half(block, Side.RIGHT), half(block, Side.LEFT)
    for panel in ("front", "back"):
        seams = [getattr(own, panel).lower.crotch.length for own in (right, left)]
        assert seams[0] == pytest.approx(seams[1], abs=0.1)
    for own in block.halves:
        assert own.front.side.length == pytest.approx(own.back.side.length, abs=0.1)
        eased = own.front.lower.inseam.length - own.back.lower.inseam.length
        assert eased == pytest.approx(block.proportions.inseam_ease, abs=0.1)
        alone = Block(block.body, block.ease, block.proportions, block.leg, block.fit, block.shares, (own,))
        assert joins(alone).within() and unfair_lines(alone) == []
        assert outline(own.front).is_valid and outline(own.back).is_valid


# Two sides of the body differ, half patterns pull and twist (told). Made up: side 1040 and 1055, half hip 510
# and 490.
LEFT = {"outside_leg_length": 1040, "half_hip_arc": 510}
RIGHT = {"outside_leg_length": 1055, "half_hip_arc": 490}
TWISTED = [
    (LEFT, RIGHT),
    (RIGHT, LEFT),
    ({"outside_leg_length": 1040}, {"outside_leg_length": 1055}),
    ({"half_hip_arc": 510}, {"half_hip_arc": 490}),
    ({"hip_height": 850}, {"hip_height": 835}),
    ({"inside_leg_height": 772}, {"inside_leg_height": 780}),
    ({**LEFT, "inside_leg_height": 772}, {**RIGHT, "inside_leg_height": 780}),
    ({"thigh_girth": 600}, {"thigh_girth": 588}),
]


@pytest.mark.parametrize(("left", "right"), TWISTED)
@pytest.mark.parametrize("crotch", [None, 720])
def test_centre_and_crotch_seams_are_alike_however_the_sides_differ(
    left: dict[str, float], right: dict[str, float], crotch: float | None
) -> None:
    block = uneven(left, right, hip_girth=1000, total_crotch_length=crotch)
    assert [own.side for own in block.halves] == [Side.RIGHT, Side.LEFT]
    assert_sewable(block)
    if crotch:
        assert block.crotch_length == pytest.approx(725, abs=0.1)


@pytest.mark.parametrize(("left", "right"), [(LEFT, RIGHT), (RIGHT, LEFT), TWISTED[2], TWISTED[6]])
def test_the_side_seams_differ_as_the_outside_leg_lengths_do(
    left: dict[str, float], right: dict[str, float]
) -> None:
    block = uneven(left, right, hip_girth=1000)
    wanted = right["outside_leg_length"] - left["outside_leg_length"]
    assert side_seam(block, Side.RIGHT) - side_seam(block, Side.LEFT) == pytest.approx(wanted, abs=0.1)


@pytest.mark.parametrize(("left", "right"), [(LEFT, RIGHT), (RIGHT, LEFT), TWISTED[3]])
def test_each_hip_is_its_own_half_arc_and_half_the_ease(
    left: dict[str, float], right: dict[str, float]
) -> None:
    block = uneven(left, right, hip_girth=1000)
    for side, own in ((Side.LEFT, left), (Side.RIGHT, right)):
        assert hip_width(block, side) == pytest.approx(own["half_hip_arc"] + block.ease.hip / 2, abs=0.01)
    assert block.hip_girth == pytest.approx(1000 + block.ease.hip)


def test_one_half_arc_tells_the_other() -> None:
    block = uneven({"half_hip_arc": 510}, {}, hip_girth=1000)
    assert hip_width(block, Side.RIGHT) == pytest.approx(490 + block.ease.hip / 2, abs=0.01)


def test_a_hip_that_lies_higher_on_one_side_moves_its_own_hip_level_only() -> None:
    block = uneven({"hip_height": 850}, {"hip_height": 835}, hip_girth=1000)
    assert [own.levels.side_hip.mm for own in block.halves] == [835, 850]
    assert [own.levels.crotch.mm for own in block.halves] == [block.levels.crotch.mm] * 2


# Long body, short legs of unequal length, the same hem put on both (told). Made up: rise 310, inside leg 690
# and 682, height 1600.
@pytest.mark.parametrize(("left", "right"), [(682, 690), (690, 682), (675, 690)])
def test_each_hem_follows_its_own_inside_leg(left: float, right: float) -> None:
    legs = {"inside_leg_height": left}, {"inside_leg_height": right}
    block = uneven(*legs, inside_leg_height=690, body_rise=310, stature=1600)
    for side, leg in ((Side.LEFT, left), (Side.RIGHT, right)):
        assert half(block, side).levels.hem.mm == pytest.approx(690 - leg)
    inseams = [half(block, side).front.lower.inseam.length for side in (Side.RIGHT, Side.LEFT)]
    # 0.2: the shin, not plumb, is made up along its own line
    assert inseams[0] - inseams[1] == pytest.approx(right - left, abs=0.2)
    assert side_seam(block, Side.RIGHT) - side_seam(block, Side.LEFT) == pytest.approx(right - left, abs=0.2)
    assert_sewable(block)


def test_the_knee_line_is_one_for_both_legs_and_comes_from_the_inseam() -> None:
    block = uneven(
        {"inside_leg_height": 682}, {}, inside_leg_height=690, body_rise=310, stature=1600
    )  # fmt: skip
    assert {own.levels.knee.mm for own in block.halves} == {690 / 2 + 50}


def test_a_long_rise_over_short_unequal_legs_is_remarked_upon_at_most() -> None:
    body = wearer(
        inside_leg_height=690, body_rise=310, stature=1600, left=SideMeasurements(inside_leg_height=682)
    )
    assert all(problem.severity.value == "warning" for problem in check_measurements(body))


def test_the_mean_of_two_hip_levels_is_the_bodys_where_it_has_no_other() -> None:
    assert uneven({"hip_height": 850}, {"hip_height": 835}).levels.hip.mm == 842.5
    assert uneven({"hip_height": 850}, {"hip_height": 835}, hip_height=845).levels.hip.mm == 845


def test_the_larger_thigh_decides_for_both_legs_so_that_the_crotch_seams_meet() -> None:
    block = uneven({"thigh_girth": 560}, {"thigh_girth": 640})
    assert [own.side for own in block.halves] == [Side.RIGHT, Side.LEFT]
    assert block.thigh_girth >= 640 + block.ease.thigh - 0.1
    assert_sewable(block)


def thigh(block: Block, side: Side) -> float:
    """Return the girth of one side's outlines just below the fork."""
    own = half(block, side)
    return sum(width_at(outline(panel), block.thigh_level) for panel in (own.front, own.back))


@pytest.mark.parametrize(("left", "right"), [(570, 580), (640, 628), (600, 606)])
@pytest.mark.parametrize("hip", [960, 1040])
def test_a_slimmer_thigh_is_drawn_as_much_slimmer(left: float, right: float, hip: float) -> None:
    block = uneven({"thigh_girth": left}, {"thigh_girth": right}, hip_girth=hip)
    # over its side seam alone a leg goes in by about 1 cm
    wanted = min(max(left - right, -8), 8)
    difference = thigh(block, Side.LEFT) - thigh(block, Side.RIGHT)
    assert difference * wanted > 0 and abs(wanted) - 0.2 <= abs(difference) <= abs(left - right) + 0.2
    for side, girth in ((Side.LEFT, left), (Side.RIGHT, right)):
        assert thigh(block, side) >= girth + block.ease.thigh - 0.1
    assert_sewable(block)


@pytest.mark.parametrize("hip", [960, 1000])
@pytest.mark.parametrize("shift", [0, 5, 12])
def test_nothing_is_widened_for_a_slimmer_thigh_on_a_narrower_side(hip: float, shift: float) -> None:
    left = {"thigh_girth": 640, "half_hip_arc": hip / 2 + shift}
    right = {"thigh_girth": 610, "half_hip_arc": hip / 2 - shift}
    block = uneven(left, right, hip_girth=hip)
    assert block.fit == draft_block(wearer(hip_girth=hip, thigh_girth=640)).fit


def test_a_slimmer_leg_is_not_short_of_room_for_the_fuller_thigh() -> None:
    block = uneven({"thigh_girth": 620}, {"thigh_girth": 560}, knee_girth=390)
    assert "leg-short" not in {finding.code for finding in block_findings(block)}


def test_each_thigh_has_a_line_in_the_report() -> None:
    block = uneven({"thigh_girth": 560}, {"thigh_girth": 640})
    lines = {line.name: line for line in girth_lines(block)}
    assert (lines["thigh"].body, lines["left thigh"].body) == (640, 560)
    assert lines["left thigh"].pattern == pytest.approx(thigh(block, Side.LEFT), abs=0.1)
    assert block_figures(block)["girths"]["left_thigh"]["body"] == 56
    assert all(line.enough for line in lines.values())


@pytest.mark.parametrize("shift", [4, 8, 12])
@pytest.mark.parametrize("girth", [600, 640])
def test_no_thigh_is_short_because_its_side_of_the_hip_is_narrower(shift: float, girth: float) -> None:
    arcs = {"half_hip_arc": 480 + shift}, {"half_hip_arc": 480 - shift}
    block = uneven(*arcs, hip_girth=960, thigh_girth=girth, total_crotch_length=700)
    for side in Side:
        assert thigh(block, side) >= girth + block.ease.thigh - 0.2
    assert block.crotch_length == pytest.approx(705, abs=0.1)
    assert_sewable(block)


def jeans(block: Block) -> Jeans:
    return make_jeans(block, STRAIGHT)


@pytest.mark.parametrize(("left", "right"), TWISTED)
def test_unequal_sides_give_pieces_for_each_side_to_be_cut_once(
    left: dict[str, float], right: dict[str, float]
) -> None:
    made = jeans(uneven(left, right, hip_girth=1000))
    legs = {"right front leg", "right back leg", "left front leg", "left back leg"}
    assert {called(made.pattern, name).cutting.text() for name in legs} == {"cut 1, this side up"}
    assert made.faults == ()
    names = {check.name for check in made.seams}
    assert {"front crotch seam", "back crotch seam"} <= names


def test_the_left_pieces_are_drawn_the_other_way_round() -> None:
    made = jeans(uneven(LEFT, RIGHT, hip_girth=1000))
    for name in ("front leg", "back leg"):
        waists = [
            called(made.pattern, f"{side} {name}").edge("crotch seam").path for side in ("right", "left")
        ]
        middles = [called(made.pattern, f"{side} {name}").polygon.centroid.x for side in ("right", "left")]
        outwards = [path.start.x > middle for path, middle in zip(waists, middles, strict=True)]
        assert outwards[0] != outwards[1]


@pytest.mark.parametrize(
    "own", [{}, {"outside_leg_length": 1040}, {"half_hip_arc": 495}, {"hip_height": 840}]
)
def test_equal_sides_give_one_mirrored_pair(own: dict[str, float]) -> None:
    block = uneven(own, own)
    assert [half.side for half in block.halves] == [None]
    pieces = jeans(block).pattern
    for name in ("front leg", "back leg"):
        assert called(pieces, name).cutting.text() == "cut 2 = 1 pair, flip for the second"


def test_equal_sides_are_drafted_like_the_same_values_given_once() -> None:
    own = {"inside_leg_height": 785, "hip_height": 840, "thigh_girth": 600}
    once, twice = draft_block(wearer(**own)), uneven(own, own)
    assert twice.front.points() == once.front.points() and twice.back.points() == once.back.points()


def test_the_blocks_own_figures_count_every_piece() -> None:
    once, apart = draft_block(wearer()), uneven({"thigh_girth": 600}, {"thigh_girth": 588})
    assert [(piece["name"], piece["quantity"]) for piece in block_figures(once)["pieces"]] == [
        ("front", 2), ("back", 2)
    ]  # fmt: skip
    assert {(piece["name"], piece["quantity"]) for piece in block_figures(apart)["pieces"]} == {
        (f"{side} {name}", 1) for side in ("left", "right") for name in ("front", "back")
    }
