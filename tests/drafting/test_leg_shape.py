from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting import DraftRefused, LegCut, Measurements, draft_block
from drafting.block.block import Block
from drafting.geometry.points import Point
from drafting.report.block_figures import block_figures
from tests.sewn_block import leg_girth, outline, unfair_lines, width_at
from tests.strategies import bodies, examples
from tests.wearers import wearer

FLARE = LegCut(knee_of_hip=0.42, hem_of_hip=0.6)
SHORTS = LegCut(knee_of_hip=0.54, hem_above_knee=0.3)


def drafted(cut: LegCut, **more: float) -> Block:
    return draft_block(wearer(hip_girth=1000, **more), cut=cut)


def test_knee_and_hem_are_shares_of_the_hip() -> None:
    block = drafted(LegCut(knee_of_hip=0.5, hem_of_hip=0.4))
    assert leg_girth(block, block.levels.knee.mm) == pytest.approx(500, abs=0.1)
    assert leg_girth(block, 0.01) == pytest.approx(400, abs=0.1)


@pytest.mark.parametrize(("least", "most", "hem"), [(0, 380, 380), (430, 500, 430), (350, 450, 400)])
def test_the_rails_hold_the_hem_of_an_ordinary_size(least: float, most: float, hem: float) -> None:
    cut = LegCut(hem_of_hip=0.4, hem_least=least, hem_most=most)
    assert leg_girth(drafted(cut), 0.01) == pytest.approx(hem, abs=0.1)


def test_beyond_the_sizes_that_are_published_the_rails_move_with_the_hip() -> None:
    cut = LegCut(knee_of_hip=0.5, hem_of_hip=0.5, hem_most=460)
    # 1380 is 1.2 times the largest of those sizes, 1150.
    wide = draft_block(wearer(hip_girth=1380, waist_girth=1100), cut=cut)
    assert leg_girth(wide, 0.01) == pytest.approx(1.2 * 460, abs=0.1)


def test_the_body_comes_before_the_rails() -> None:
    assert drafted(LegCut(hem_most=300), heel_girth=340).leg.hem.mm == pytest.approx(345)


def test_a_flare_on_a_full_knee_stays_a_flare() -> None:
    # Asked: knee 420 and hem 460 on this hip; the knee needs 560 with its ease, and half of the flare stays.
    block = drafted(LegCut(knee_of_hip=0.42, hem_of_hip=0.46), knee_girth=520, thigh_girth=700)
    assert block.leg.knee.mm == pytest.approx(560)
    assert block.leg.hem.mm == pytest.approx(560 * (1 + 46 / 42) / 2)


@pytest.mark.parametrize("share", [0.4, 0.6, 1.0])
def test_a_cropped_leg_ends_on_the_way_from_knee_to_floor(share: float) -> None:
    block = drafted(LegCut(hem_below_knee=share), knee_height=450)
    assert block.levels.hem.mm == pytest.approx((1 - share) * 450)
    assert leg_girth(block, block.levels.hem.mm + 0.01) == pytest.approx(420, abs=0.1)


def test_a_full_leg_may_end_above_the_floor() -> None:
    assert drafted(LegCut(hem_above_floor=30)).levels.hem.mm == 30


def test_shorts_end_on_the_way_from_knee_to_crotch_and_keep_their_seams_equal() -> None:
    block = drafted(SHORTS, knee_height=450)
    knee, crotch = 450, block.levels.crotch.mm
    # The level is taken on the body's own crotch, which fitting may lower a little.
    assert block.levels.hem.mm == pytest.approx(knee + 0.3 * (crotch - knee), abs=10)
    assert block.front.side.length == pytest.approx(block.back.side.length, abs=0.01)
    ease = block.proportions.inseam_ease
    assert block.front.lower.inseam.length - block.back.lower.inseam.length == pytest.approx(ease, abs=0.01)


def test_shorts_are_told_nothing_about_knee_calf_and_ankle() -> None:
    levels = block_figures(drafted(SHORTS, calf_girth=360, ankle_girth=220))["girths"]
    assert "hem" in levels and not {"knee", "calf", "ankle"} & set(levels)


@examples(40)
@given(bodies(sides=False))
def test_a_flare_is_narrowest_at_the_wearers_own_knee(body: Measurements) -> None:
    try:
        block = draft_block(body, cut=FLARE)
    except DraftRefused:
        return
    shapes = [outline(panel) for panel in (block.front, block.back)]
    knee = block.levels.knee.mm
    at_knee = sum(width_at(shape, knee) for shape in shapes)
    for y in (knee - 20, knee - 5):
        assert at_knee <= sum(width_at(shape, y) for shape in shapes) + 0.02
    assert knee == block.body["knee_height"].mm
    assert not [line for line in unfair_lines(block) if "inseam" in line]


@examples(30)
@given(st.floats(600, 950))
def test_the_leg_breaks_at_the_knee_whatever_the_leg_length(inside_leg: float) -> None:
    knee = 0.55 * inside_leg
    block = draft_block(
        wearer(inside_leg_height=inside_leg, waist_height=inside_leg + 255, knee_height=knee), cut=FLARE
    )
    assert block.levels.knee.mm == pytest.approx(knee)
    raised = draft_block(
        wearer(inside_leg_height=inside_leg, waist_height=inside_leg + 255, knee_height=knee),
        cut=LegCut(knee_of_hip=0.42, hem_of_hip=0.6, break_above_knee=30),
    )
    assert raised.levels.knee.mm == pytest.approx(knee + 30)


@pytest.mark.parametrize("panel", ["front", "back"])
def test_a_flare_is_rounded_over_three_tenths_of_the_way_to_the_hem(panel: str) -> None:
    # plumb for 15 % of the way, then as far again along the flare, the corner rounded (common practice)
    points, side = getattr(drafted(FLARE), panel).points(), getattr(drafted(FLARE), panel).side
    knee, hem = points["knee at the side"], points["hem at the side"]
    leg = knee.y - hem.y
    corner = Point(knee.x, knee.y - 0.15 * leg)
    assert side.curves[-1].straight
    assert side.curves[-1].length == pytest.approx((hem - corner).length - 0.15 * leg, abs=0.01)


def test_the_hem_of_shorts_is_found_on_both_seams() -> None:
    points = drafted(SHORTS).back.points()
    seam = drafted(SHORTS).back.lower.inseam
    assert points["hem at the inseam"] == seam.start
    assert points["hem at the side"].y == pytest.approx(points["hem at the inseam"].y, abs=1e-6)
