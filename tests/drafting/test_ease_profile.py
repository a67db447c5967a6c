"""The ease along the body, measured on the outlines."""

from __future__ import annotations

import pytest

from drafting import draft_block
from drafting.report.block_findings import block_findings
from drafting.report.ease_profile import EaseProfile, GirthPoint, Zone, ease_profiles
from drafting.report.fit import girth_lines
from tests.sewn_block import leg_girth, outline, width_at
from tests.wearers import wearer

FULL = {
    "top_hip_girth": 900, "thigh_girth": 570, "mid_thigh_girth": 500, "knee_girth": 380, "calf_girth": 365,
    "ankle_girth": 220, "heel_girth": 320,
}  # fmt: skip


def profile(pattern: list[tuple[float, float]], body: list[tuple[float, float]]) -> EaseProfile:
    """Return a leg from (height, girth) pairs."""
    points = tuple(GirthPoint(*p) for p in pattern), tuple(GirthPoint(*p) for p in body)
    return EaseProfile(Zone.LEG, *points, ())


def test_trunk_and_leg_hold_every_level_of_the_report_once() -> None:
    block = draft_block(wearer(**FULL))
    trunk, leg = ease_profiles(block)
    assert [line.level for line in trunk.levels] == ["waist", "top hip", "hip"]
    assert (*trunk.levels, *leg.levels) == girth_lines(block)


def test_the_pattern_reaches_from_hem_to_thigh_and_from_hip_to_waist() -> None:
    block = draft_block(wearer(**FULL))
    trunk, leg = ease_profiles(block)
    assert (leg.pattern[0].height, leg.pattern[-1].height) == (0, block.thigh_level)
    assert (trunk.pattern[0].height, trunk.pattern[-1].height) == (845, 1025)
    for points in (trunk.pattern, leg.pattern):
        heights = [point.height for point in points]
        assert heights == sorted(heights)
    assert trunk.pattern[0].girth == pytest.approx(1010, abs=0.1)
    assert trunk.pattern[-1].girth == pytest.approx(770, abs=0.1)


def test_the_girths_of_the_leg_are_those_of_the_outline() -> None:
    block = draft_block(wearer(**FULL))
    _, leg = ease_profiles(block)
    for point in leg.pattern[1:-1:25]:
        assert point.girth == pytest.approx(leg_girth(block, point.height), abs=0.1)


def test_above_the_forks_and_below_the_darts_the_girths_of_the_trunk_are_those_of_the_outline() -> None:
    block = draft_block(wearer(total_crotch_length=690))
    trunk, _ = ease_profiles(block)
    # below, the forks' curves lie outside the centre lines
    curves = max(panel.points()["curve start"].y for panel in (block.front, block.back))
    tip = min(dart.tip.y for dart in block.back.darts)
    straight = [point for point in trunk.pattern if curves < point.height < tip]
    assert len(straight) > 5
    for point in straight:
        halves = sum(width_at(outline(panel), point.height) for panel in (block.front, block.back))
        assert point.girth == pytest.approx(2 * halves, abs=0.2)


def test_the_bodys_thigh_stands_at_its_own_crotch_and_not_at_the_lower_one_of_the_pattern() -> None:
    block = draft_block(wearer(**FULL))
    _, leg = ease_profiles(block)
    [thigh] = [line for line in leg.levels if line.level == "thigh"]
    assert leg.body_point(thigh) == GirthPoint(780, 570)
    assert thigh.height < 755


def test_the_heel_is_no_girth_of_the_leg() -> None:
    _, leg = ease_profiles(draft_block(wearer(heel_girth=320)))
    assert leg.body == () and leg.side_by_side() == () and leg.tight_spots() == ()


def test_pattern_and_body_stand_side_by_side_only_where_both_are_known() -> None:
    pairs = profile([(0, 400), (100, 420), (200, 440)], [(50, 300), (150, 340)]).side_by_side()
    assert [(p.height, p.girth, b.girth) for p, b in pairs] == [
        (50, 410, 300), (100, 420, 320), (150, 430, 340),
    ]  # fmt: skip


def test_a_tight_spot_is_told_with_its_place_and_amount() -> None:
    pattern = [(0, 400), (100, 400), (200, 400), (300, 400), (400, 400)]
    [spot] = profile(pattern, [(0, 380), (100, 410), (200, 430), (300, 405), (400, 390)]).tight_spots()
    assert (spot.at, spot.by, spot.low, spot.high) == (GirthPoint(200, 400), 30, 100, 300)


def test_a_tenth_of_a_centimetre_is_not_tight() -> None:
    assert profile([(0, 400), (100, 400)], [(0, 401), (100, 401)]).tight_spots() == ()


@pytest.mark.parametrize(
    "changed",
    [{}, {"mid_thigh_girth": 640, "calf_girth": 520}, {"thigh_girth": 660, "calf_girth": 520}],
)
def test_the_leg_is_tight_where_the_report_says_so(changed: dict[str, float]) -> None:
    block = draft_block(wearer(**changed))
    _, leg = ease_profiles(block)
    said = {finding.code: finding for finding in block_findings(block)}
    assert bool(leg.tight_spots()) == ("leg-short" in said)
    for spot in leg.tight_spots():
        # the report looks every centimetre, the profile every half
        assert spot.by == pytest.approx(said["leg-short"].amounts[0], abs=1)
