"""Room at mid-thigh; the legs of uneven bodies are in test_sides.py."""

from __future__ import annotations

import pytest

from drafting import Block, draft_block
from drafting.report.block_findings import block_findings
from drafting.report.fit import girth_lines
from tests.sewn_block import joins, leg_girth, outline, unfair_lines
from tests.wearers import wearer


def drafted(mid_thigh: float | None) -> Block:
    return draft_block(
        wearer(
            thigh_girth=580, mid_thigh_girth=mid_thigh, knee_girth=380, knee_height=450,
            total_crotch_length=700,
        )
    )  # fmt: skip


MID = (780 + 450) / 2
"""Halfway between crotch and knee, above the floor."""


def codes(block: Block) -> set[str]:
    return {finding.code for finding in block_findings(block)}


@pytest.mark.parametrize("mid_thigh", [538, 539.5])
def test_a_full_mid_thigh_gets_its_room_over_the_side_seams_alone(mid_thigh: float) -> None:
    plain, full = drafted(None), drafted(mid_thigh)
    assert leg_girth(plain, MID) < mid_thigh + full.ease.mid_thigh
    assert leg_girth(full, MID) == pytest.approx(mid_thigh + full.ease.mid_thigh, abs=0.2)
    for panel in ("front", "back"):
        before, after = (getattr(block, panel).points() for block in (plain, full))
        assert after["fork"] == before["fork"] and after["knee at the side"] == before["knee at the side"]
    assert full.crotch_length == pytest.approx(705, abs=0.1)
    assert "mid-thigh-widened" in codes(full) and "girth-short" not in codes(full)
    assert joins(full).within() and unfair_lines(full) == []


def test_a_mid_thigh_that_has_room_changes_nothing() -> None:
    plain, slim = drafted(None), drafted(460)
    assert outline(slim.front).equals(outline(plain.front)) and outline(slim.back).equals(outline(plain.back))
    assert "mid-thigh-widened" not in codes(slim)


def test_a_mid_thigh_out_of_reach_is_said_to_be_short() -> None:
    block = drafted(575)
    [line] = [line for line in girth_lines(block) if line.level == "mid thigh"]
    assert not line.enough and "girth-short" in codes(block)
    assert joins(block).within() and unfair_lines(block) == []


def test_the_room_at_mid_thigh_is_the_mean_of_thigh_and_calf() -> None:
    # least visible room 2.5 at the thigh, 1.3 at the calf (pant fit guide for historical dress)
    assert drafted(None).ease.mid_thigh == pytest.approx((25 + 13) / 2)
