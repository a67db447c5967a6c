"""What a measurement 10 mm more or less changes, held against the draft itself and a brute-force distance."""

from functools import cache, partial

import numpy as np
import pytest
from hypothesis import given

from drafting.base.construction_proportions import Ease
from drafting.block.block import draft_block
from drafting.body.measurements import Measurements, SideMeasurements
from drafting.report.tape_error import TapeError, tape_errors
from tests.strategies import bodies, examples
from tests.wearers import wearer

FULL = wearer(
    total_crotch_length=720, thigh_girth=590, knee_height=450, knee_girth=370, waist_height=1030, stature=1670
)


@cache
def errors_of(measurements: Measurements, **asked: float) -> dict[str, TapeError]:
    return {e.key: e for e in tape_errors(measurements, **asked)}


def test_a_girth_of_the_trunk_passes_its_10_mm_on_whole() -> None:
    found = errors_of(FULL)
    for key, length in (
        ("waist_girth", "waist"),
        ("hip_girth", "hip"),
        ("total_crotch_length", "crotch seam"),
    ):
        for effect in (found[key].more, found[key].less):
            assert effect.lengths[length] == pytest.approx(effect.by, abs=0.5)
    assert found["waist_girth"].more.lengths["hip"] == pytest.approx(0, abs=0.01)


def test_a_longer_leg_makes_inseam_and_side_seam_longer_and_lifts_the_waist() -> None:
    effect = errors_of(wearer())["inside_leg_height"].more
    assert effect.lengths["inseam"] == pytest.approx(10, abs=0.3)
    assert effect.lengths["side seam"] == pytest.approx(10, abs=0.3)
    assert effect.lengths["waist"] == pytest.approx(0, abs=0.01)
    assert 10 <= effect.outline < 12


def test_the_lengths_are_those_of_the_block_drafted_anew() -> None:
    old, new = draft_block(FULL), draft_block(wearer(**{**FULL.given(), "hip_girth": 990}))
    effect = errors_of(FULL)["hip_girth"].more
    assert effect.lengths["thigh"] == pytest.approx(new.thigh_girth - old.thigh_girth)
    assert effect.lengths["crotch seam"] == pytest.approx(new.crotch_length - old.crotch_length)


def test_the_outline_moves_as_far_as_the_points_of_the_sewn_edges_lie_from_the_old_ones() -> None:
    def points(measurements: Measurements) -> list[np.ndarray]:
        block = draft_block(measurements)
        edges = [
            (half.lower.crotch, half.side, half.lower.inseam, *half.waist)
            for half in (block.front, block.back)
        ]
        return [
            np.array([tuple(e.point(s)) for e in panel for s in np.linspace(0, e.length, 200)])
            for panel in edges
        ]

    old, new = points(FULL), points(wearer(**{**FULL.given(), "body_rise": 275}))
    farthest = 0.0
    for a, b in zip(old, new, strict=True):
        apart = np.hypot(*(a[:, None] - b[None]).transpose(2, 0, 1))
        farthest = max(farthest, apart.min(axis=0).max(), apart.min(axis=1).max())
    # 200 points to an edge of a metre lie 5 mm apart, so a nearest one may be 2.5 mm along the line away.
    assert errors_of(FULL)["body_rise"].more.outline == pytest.approx(farthest, abs=0.5)


def test_the_one_that_moves_most_comes_first_and_idle_ones_last() -> None:
    found = tape_errors(FULL)
    assert [e.outline for e in found] == sorted((e.outline for e in found), reverse=True)
    assert {e.key for e in found} == FULL.given().keys()
    # Nothing is estimated from stature, and the knee of straight jeans is wider than this one by far.
    assert {e.key for e in found if e.idle} >= {"stature", "knee_girth"}
    assert not found[0].idle


def test_a_change_that_the_checks_refuse_is_told_with_its_reason_and_the_other_is_drafted() -> None:
    # 390 mm is less than 0.4 of the hip, 980 mm: too little by drafting.body.relations.
    error = errors_of(wearer(waist_girth=400))["waist_girth"]
    assert error.less.outline == 0 and error.less.lengths == {} and not error.idle
    assert "hip girth" in error.less.refusals[0].message
    assert error.more.refusals == () and len(error.more.lengths) == 6


def test_a_side_of_its_own_is_changed_alone() -> None:
    uneven = wearer(left=SideMeasurements(inside_leg_height=770), right=SideMeasurements(half_hip_arc=495))
    found = errors_of(uneven)
    assert found["left.inside_leg_height"].more.lengths["inseam"] == pytest.approx(10, abs=0.3)
    assert found["right.half_hip_arc"].outline > 1


def test_a_slip_that_makes_the_sides_alike_is_compared_too() -> None:
    found = errors_of(wearer(left=SideMeasurements(inside_leg_height=770)))
    # 10 mm more, and the left leg is as long as the right: one mirrored pair serves both.
    assert found["left.inside_leg_height"].more.lengths["inseam"] == pytest.approx(10, abs=0.3)
    assert found["left.inside_leg_height"].more.outline == pytest.approx(10, abs=1)


def test_the_draft_is_the_callers() -> None:
    # With 100 mm of ease the thigh decides the width, which with the usual ease it does not.
    loose = partial(draft_block, ease=Ease(thigh=100))
    found = {e.key: e for e in tape_errors(FULL, draft=loose)}
    assert errors_of(FULL)["thigh_girth"].idle
    assert found["thigh_girth"].more.lengths["thigh"] == pytest.approx(10, abs=0.1)


def test_where_one_side_alone_gets_shorter_that_side_is_told() -> None:
    found = errors_of(wearer(left=SideMeasurements(inside_leg_height=770)))["left.inside_leg_height"]
    assert found.more.lengths["inseam"] == pytest.approx(10, abs=0.1)
    assert found.less.lengths["inseam"] == pytest.approx(-10, abs=0.1)


def test_half_the_slip_does_about_half() -> None:
    whole, half = errors_of(FULL)["hip_girth"], errors_of(FULL, slip=5.0)["hip_girth"]
    assert half.more.lengths["thigh"] == pytest.approx(whole.more.lengths["thigh"] / 2, abs=0.5)


@pytest.mark.slow
@given(bodies())
@examples(4)
def test_any_plausible_body_gets_an_answer_for_every_measurement(measurements: Measurements) -> None:
    found = errors_of(measurements)
    assert found.keys() == measurements.given().keys()
    for error in found.values():
        for effect in (error.more, error.less):
            assert bool(effect.refusals) == (not effect.lengths)
            assert np.isfinite([effect.outline, *effect.lengths.values()]).all()
