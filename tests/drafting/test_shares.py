"""How front and back share the waist where the body's arcs were measured: the whole waist comes first."""

from __future__ import annotations

import math

import pytest

from drafting import Block, draft_block
from drafting.block.suppression import STEEPEST
from drafting.report.block_findings import block_findings
from tests.sewn_block import joins, outline
from tests.wearers import wearer


def block_with(waist: float, front_waist: float, front_hip: float | None = None) -> Block:
    """Return a fitted block over a hip of 1000, its front arcs given as shares of the girths."""
    arcs = {"front_waist_arc": front_waist * waist, "front_hip_arc": front_hip and front_hip * 1000}
    return draft_block(wearer(waist_girth=waist, hip_girth=1000, total_crotch_length=700, **arcs))


def front_arc(block: Block) -> float:
    return 2 * block.front.closed_waist.length


def sewn_waist(block: Block) -> float:
    return 2 * (block.front.closed_waist.length + block.back.closed_waist.length)


@pytest.mark.parametrize(("waist", "front_waist", "front_hip"), [(760, 0.5, 0.48), (900, 0.53, None)])
def test_front_and_back_have_the_waist_that_was_measured_and_half_of_the_ease(
    waist: float, front_waist: float, front_hip: float | None
) -> None:
    block = block_with(waist, front_waist, front_hip)
    assert front_arc(block) == pytest.approx(front_waist * waist + block.ease.waist / 2, abs=0.1)
    assert sewn_waist(block) == pytest.approx(waist + block.ease.waist, abs=0.1)
    assert "waist-split" not in {finding.code for finding in block_findings(block)}


# No side seam leans in by more than 20 degrees. What the front cannot take up the back still can.
@pytest.mark.parametrize(("waist", "front_waist", "front_hip"), [(680, 0.4, 0.52), (640, 0.38, 0.5)])
def test_what_the_front_cannot_take_up_the_back_does_and_the_waist_is_right(
    waist: float, front_waist: float, front_hip: float | None
) -> None:
    block = block_with(waist, front_waist, front_hip)
    taken, way = block.shares.suppression, block.levels.waist.mm - block.levels.hip.mm
    assert taken.front_side == pytest.approx(STEEPEST * way)
    assert sewn_waist(block) == pytest.approx(waist + block.ease.waist, abs=0.1)
    [said] = [finding for finding in block_findings(block) if finding.code == "waist-split"]
    assert said.amounts == pytest.approx(
        (front_arc(block), front_waist * waist + block.ease.waist / 2), abs=0.1
    )
    assert "further back" in said.text
    assert joins(block).within() and all(outline(panel).is_valid for panel in (block.front, block.back))


@pytest.mark.parametrize("front_waist", [0.56, 0.6, 0.64])
def test_what_the_back_cannot_take_up_the_front_does(front_waist: float) -> None:
    block = block_with(650, front_waist, 0.44)
    assert block.shares.suppression.left_over == pytest.approx(0, abs=1e-9)
    assert sewn_waist(block) == pytest.approx(650 + block.ease.waist, abs=0.1)
    assert front_arc(block) <= front_waist * 650 + block.ease.waist / 2 + 0.1


def test_what_neither_can_take_up_is_left_over_and_said() -> None:
    block = block_with(420, 0.5, 0.5)
    taken, way = block.shares.suppression, block.levels.waist.mm - block.levels.hip.mm
    assert (taken.front_side, taken.back_side) == pytest.approx((STEEPEST * way, STEEPEST * way))
    assert sewn_waist(block) == pytest.approx(430 + 2 * taken.left_over, abs=0.1)
    [said] = [finding for finding in block_findings(block) if finding.code == "suppression-left-over"]
    assert said.amounts == pytest.approx((2 * taken.left_over,), abs=0.1)


@pytest.mark.parametrize("waist", [700, 760, 840, 920])
def test_the_seat_line_takes_its_share_and_a_wedge_leans_it_no_further_than_its_most(waist: float) -> None:
    # 50 % of half of hip less waist at waist level, 58.5 % wedged, 6 to 12 and 15.5 degrees
    for total in (620, 700, 760):
        block = draft_block(wearer(waist_girth=waist, hip_girth=1000, total_crotch_length=total))
        half, way = (1000 + 30 - waist - 10) / 2, block.levels.waist.mm - block.levels.hip.mm
        lean = block.shares.lean
        assert math.radians(6) - 1e-9 <= lean <= math.radians(15.5) + 1e-9
        assert (
            way * math.tan(lean)
            <= max(0.585 * half, 22 + 0.15 * half, way * math.tan(math.radians(6))) + 1e-6
        )
    alone = draft_block(wearer(waist_girth=waist, hip_girth=1000), fitted=False)
    assert math.degrees(alone.shares.lean) <= 12 + 3


@pytest.mark.parametrize("total", [640, 700, 740])
def test_what_the_fit_does_behind_leaves_the_waist_of_the_front(total: float) -> None:
    fitted = draft_block(wearer(total_crotch_length=total))
    assert fitted.shares.front_waist == draft_block(wearer(), fitted=False).shares.front_waist
