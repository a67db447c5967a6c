"""Any plausible body at all."""

import math

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from drafting import Measurements, draft_block
from drafting.report.block_figures import block_figures
from drafting.report.block_findings import block_findings
from styles.choice.style import STRAIGHT
from styles.making.jeans import make_jeans
from tests.sewn_block import joins, outline
from tests.strategies import bodies, examples
from tests.wearers import wearer

some_bodies = examples(100)


@some_bodies
@given(bodies(sides=False))
def test_any_body_gets_a_block_whose_seams_meet(body: Measurements) -> None:
    jeans = make_jeans(draft_block(body), STRAIGHT)
    # Where seams and darts cannot take the waist in, no yoke or band lies well; that is said, not drawn.
    out_of_reach = abs(jeans.block.shares.suppression.left_over) >= 1
    assert {fault.code for fault in jeans.faults} <= ({"outline-crosses"} if out_of_reach else set())
    assert all(check.passes for check in jeans.seams)


@some_bodies
@given(bodies(sides=False))
def test_any_outline_is_simple_and_holds_only_numbers(body: Measurements) -> None:
    block = draft_block(body)
    for panel in (block.front, block.back):
        shape = outline(panel)
        assert np.isfinite(shape.exterior.coords).all()
        assert shape.is_valid


@some_bodies
@given(bodies(sides=False))
def test_any_block_joins_square_and_straight(body: Measurements) -> None:
    assert joins(draft_block(body)).within()


@some_bodies
@given(bodies(sides=False))
def test_hip_and_waist_are_exact_or_the_report_says_by_how_much_not(body: Measurements) -> None:
    block = draft_block(body)
    assert math.isclose(block.trunk_girth(block.levels.hip.mm), body.hip_girth + block.ease.hip, abs_tol=0.1)
    over = block.waist_girth - body.waist_girth - block.ease.waist
    [said] = [f.measured for f in block_findings(block) if f.code == "suppression-left-over"] or [0.0]
    assert abs(over - said) <= 1.1


@some_bodies
@given(bodies(sides=False))
def test_a_crotch_seam_is_fitted_or_said_to_be_out_of_reach(body: Measurements) -> None:
    block = draft_block(body)
    crotch = block_figures(block)["crotch"]
    said = any(finding.code == "crotch-out-of-reach" for finding in block_findings(block))
    if crotch["target"] is not None:
        assert said == (abs(crotch["total"] - crotch["target"]) > 1.0)


@some_bodies
@given(st.floats(850, 1300), st.floats(1, 150))
def test_a_larger_hip_makes_a_wider_hip_by_exactly_as_much(hip: float, more: float) -> None:
    slim, full = draft_block(wearer(hip_girth=hip)), draft_block(wearer(hip_girth=hip + more))
    wider = full.trunk_girth(full.levels.hip.mm) - slim.trunk_girth(slim.levels.hip.mm)
    assert math.isclose(wider, more, abs_tol=1e-3)


@some_bodies
@given(st.floats(600, 950), st.floats(1, 100))
def test_a_longer_leg_makes_longer_seams(leg: float, more: float) -> None:
    short, long = (
        draft_block(wearer(inside_leg_height=leg)),
        draft_block(wearer(inside_leg_height=leg + more)),
    )
    for name in ("front", "back"):
        before, after = getattr(short, name), getattr(long, name)
        assert after.side.length > before.side.length
        assert after.lower.inseam.length > before.lower.inseam.length


@some_bodies
@given(st.floats(650, 1000), st.floats(1, 100))
def test_a_larger_waist_makes_a_longer_waist_by_exactly_as_much(waist: float, more: float) -> None:
    slim, full = draft_block(wearer(waist_girth=waist)), draft_block(wearer(waist_girth=waist + more))
    assert math.isclose(full.waist_girth - slim.waist_girth, more, abs_tol=1e-2)


@some_bodies
@given(st.floats(600, 760), st.floats(1, 60))
def test_a_longer_crotch_length_never_makes_a_shorter_seam(length: float, more: float) -> None:
    short = draft_block(wearer(total_crotch_length=length))
    long = draft_block(wearer(total_crotch_length=length + more))
    assert long.crotch_length > short.crotch_length
