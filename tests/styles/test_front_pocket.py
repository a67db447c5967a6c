"""The pieces of the front pocket."""

from dataclasses import replace

import pytest
from hypothesis import given
from shapely.geometry import LineString, Polygon

from drafting.block.block import draft_block
from drafting.body.measurements import SideMeasurements
from drafting.pieces.pieces import Finish, MarkKind, Material
from styles.base.part import HalfToCut
from styles.choice.style import STRAIGHT, FrontPocket
from styles.parts.front_leg import open_front
from styles.parts.pocket_plan import plan_pocket
from tests.front_parts import front_parts
from tests.strategies import bodies, examples
from tests.wearers import wearer

BLOCK = draft_block(wearer())
SMALL = replace(STRAIGHT, front_pocket=FrontPocket(width=70, depth=100))
LARGE = replace(STRAIGHT, front_pocket=FrontPocket(width=130, depth=150, scoop=1))


def pieces(style=STRAIGHT, block=BLOCK):
    return {piece.name: piece for piece in front_parts(block, style).pieces}


def lopsided():
    return draft_block(
        wearer(
            left=SideMeasurements(inside_leg_height=788, half_hip_arc=496),
            right=SideMeasurements(half_hip_arc=484),
        )
    )


def test_the_opening_of_the_bag_is_that_of_the_leg():
    made = pieces()
    leg, bag = (made[name].edge("pocket opening").length for name in ("front leg", "pocket bag front"))
    assert bag == pytest.approx(leg, abs=0.01)


def test_seen_from_its_own_face_the_front_of_the_bag_is_the_mirror_image_of_its_back():
    """It is sewn face to face to the leg and turned, so its face looks at the body."""
    made = pieces()
    for name, side_is_left in (("front leg", True), ("pocket bag back", True), ("pocket bag front", False)):
        piece = made[name]
        side = piece.edge("side seam").path
        assert (side.point(0).x < piece.polygon.centroid.x) is side_is_left


def test_pocket_pieces_are_cut_in_pairs_the_facing_of_denim_and_the_bags_of_pocketing():
    made = pieces()
    for name, material in (
        ("pocket facing", Material.DENIM),
        ("pocket bag back", Material.POCKETING),
        ("pocket bag front", Material.POCKETING),
    ):
        cutting = made[name].cutting
        assert (cutting.quantity, cutting.pairs, cutting.material) == (2, True, material)


def test_the_watch_pocket_is_cut_once_with_a_hem_on_top_and_placed_by_two_drill_holes():
    made = pieces()
    watch, facing = made["watch pocket"], made["pocket facing"]
    assert (watch.cutting.quantity, watch.cutting.pairs) == (1, False)
    assert [e.name for e in watch.edges if e.finish is Finish.HEM] == ["upper edge"]
    holes = [m.path.start for m in facing.marks if m.kind is MarkKind.DRILL]
    assert len(holes) == 2
    assert (holes[0] - holes[1]).length == pytest.approx(watch.edge("upper edge").length)


def test_without_a_watch_pocket_there_is_neither_piece_nor_mark_nor_rivets_for_it():
    bare = replace(STRAIGHT, front_pocket=FrontPocket(watch=False))
    made = pieces(bare)
    assert "watch pocket" not in made
    assert [m.name for m in made["pocket facing"].marks] == ["pocket opening"]
    counts = [
        n.count for style in (STRAIGHT, bare) for n in front_parts(BLOCK, style).notions if n.name == "rivet"
    ]
    assert counts == [6, 4]


def test_on_two_different_sides_only_the_right_carries_the_watch_pocket():
    part = front_parts(lopsided(), STRAIGHT)
    made = {piece.name: piece for piece in part.pieces}
    assert sum("watch" in name for name in made) == 1
    marks = {side: {m.name for m in made[f"{side} pocket facing"].marks} for side in ("left", "right")}
    assert marks == {"left": {"pocket opening"}, "right": {"pocket opening", "watch pocket"}}
    assert sum(notion.count for notion in part.notions if notion.name == "rivet") == 6
    assert not any(made[f"{side} pocket bag back"].cutting.pairs for side in ("left", "right"))


@examples(60)
@given(bodies())
def test_on_any_body_the_facing_fills_the_opening_and_the_bag_holds_the_facing(measurements):
    block = draft_block(measurements)
    for half in block.halves:
        for style in (STRAIGHT, SMALL, LARGE):
            plan = plan_pocket(HalfToCut(half), style)
            facing, bag = (
                Polygon([xy for path in ring for xy in path.flatten(0.05)[:-1]])
                for ring in (plan.facing, plan.bag)
            )
            front = plan.opened.whole
            assert bag.buffer(0.2).covers(facing)
            assert facing.covers(Polygon([tuple(corner) for corner in plan.watch]))
            # The cloth behind the opening runs on beyond it, but for the two ends on waist and side.
            inner = LineString(plan.facing[2].flatten(0.05))
            assert inner.distance(LineString(plan.opened.curve.flatten(0.05))) >= 12
            # No lower than 30 mm below crotch level, unless the opening itself reaches so far down.
            reaches_down = plan.bag[1].length < plan.opened.depth + 15.01
            assert bag.bounds[1] >= half.levels.crotch.mm - 30.01 or reaches_down
            assert plan.bag[0].length <= front.waist.length - style.fly_width


def test_the_facing_shows_where_the_edge_of_the_opening_comes_to_lie():
    facing = pieces()["pocket facing"]
    line = next(m.path for m in facing.marks if m.name == "pocket opening")
    waist, side = facing.edge("waist"), facing.edge("side seam")
    corner, end = (next(n for n in e.notches if n.name.startswith("pocket")) for e in (waist, side))
    assert (waist.path.point(corner.distance) - line.start).length < 0.001
    assert (side.path.point(end.distance) - line.end).length < 0.001


def test_a_rise_lower_by_25_mm_lifts_the_pocket_and_shortens_the_bag_by_as_much():
    deep, low = (plan_pocket(HalfToCut(BLOCK.halves[0]), replace(STRAIGHT, below_waist=x)) for x in (30, 55))
    tall, short = (plan.bag[0].end.y - min(y for _, y in plan.bag[2].flatten(0.05)) for plan in (deep, low))
    assert tall - short == pytest.approx(25, abs=1)
    assert low.opened.depth == deep.opened.depth == 75


def test_a_bag_of_a_work_pant_is_about_as_large_as_its_size_chart_says():
    """Front bag 10 x 6.5 in on all sizes 30 to 38 (work-pant size chart, casualindustrees.com); size 32 has
    waist 33.5, hip 39.5, front rise 12.5 in with a band of 1 3/4."""
    block = draft_block(wearer(waist_girth=851, hip_girth=965, inside_leg_height=810, body_rise=260))
    style = replace(STRAIGHT, below_waist=0, band_height=44)
    bag = pieces(style, block)["pocket bag back"].polygon
    x0, y0, x1, y1 = bag.bounds
    assert x1 - x0 == pytest.approx(6.5 * 25.4, abs=15)
    assert y1 - y0 == pytest.approx(10 * 25.4, abs=25)


def test_a_wider_hip_by_one_size_does_not_narrow_the_bag():
    wider = draft_block(wearer(hip_girth=1020, waist_girth=800))
    before, after = (plan_pocket(HalfToCut(b.halves[0]), STRAIGHT) for b in (BLOCK, wider))
    assert after.bag[0].length > before.bag[0].length
    assert open_front(HalfToCut(wider.halves[0]), STRAIGHT).width == 100


# The rest is common practice, no source: what a sewer would see on the cut pieces.
@pytest.mark.parametrize(("rise", "ends_below"), [(265, "crotch level"), (330, "the waist")])
def test_the_bag_hangs_240_deep_but_ends_30_below_crotch_level(rise: int, ends_below: str):
    block = draft_block(wearer(body_rise=rise))
    plan = plan_pocket(HalfToCut(block.halves[0]), STRAIGHT)
    bottom = min(y for _, y in plan.bag[2].flatten(0.01))
    level = block.levels.crotch.mm - 30 if ends_below == "crotch level" else plan.bag[1].start.y - 240
    assert bottom == pytest.approx(level, abs=0.1)


def test_the_facing_reaches_30_past_the_opening_and_12_past_a_watch_pocket():
    def depth(pocket: FrontPocket) -> float:
        return pieces(replace(STRAIGHT, front_pocket=pocket))["pocket facing"].edge("side seam").length

    assert depth(FrontPocket(watch=False)) == pytest.approx(75 + 30)
    assert depth(FrontPocket(watch=True)) == pytest.approx(20 + 88 + 12)
    assert depth(FrontPocket(depth=100)) == pytest.approx(100 + 30)


@pytest.mark.parametrize(("opening", "width"), [(80, 0.78 * 80), (120, 78)])
def test_the_watch_pocket_is_a_coins_pocket_within_the_opening(opening: int, width: float):
    watch = pieces(replace(STRAIGHT, front_pocket=FrontPocket(width=opening)))["watch pocket"]
    assert watch.edge("upper edge").length == pytest.approx(width)
    assert watch.edge("lower edge").length == pytest.approx(width - 2 * 3)
    assert watch.edge("outer edge").length == pytest.approx(88, abs=2)


def test_corners_of_bag_and_facing_are_round():
    plan = plan_pocket(HalfToCut(BLOCK.halves[0]), STRAIGHT)
    _, level, turn, upright = plan.bag[2].curves
    assert turn.end.x - turn.start.x == pytest.approx(50, abs=5)
    assert turn.end.y - turn.start.y == pytest.approx(50, abs=5)
    assert level.length > 20 and upright.length > 20
    _, bend, _ = plan.facing[2].curves
    assert (bend.end - bend.start).length == pytest.approx(38 * 2**0.5, abs=4)


def test_on_a_narrow_front_the_bag_reaches_40_past_the_opening_and_keeps_5_from_the_fly():
    narrow = draft_block(wearer(waist_girth=640, hip_girth=880))
    plan = plan_pocket(HalfToCut(narrow.halves[0]), STRAIGHT)
    reach = plan.bag[0].length
    assert reach == pytest.approx(plan.opened.width + 40)
    _, _, turn, _ = plan.bag[2].curves
    assert turn.end.y - turn.start.y == pytest.approx(0.35 * reach, abs=0.5)
    wide_fly = plan_pocket(HalfToCut(narrow.halves[0]), replace(STRAIGHT, fly_width=60))
    assert wide_fly.bag[0].length == pytest.approx(plan.opened.whole.waist.length - (60 + 6) - 5)
