"""How front and back share the waist where the body's arcs were measured: the whole waist comes first."""

from __future__ import annotations

import pytest

from drafting import Block, draft_block
from drafting.block.suppression import BACK_SIDE, CENTRE_FRONT, DART, FRONT_SIDE
from drafting.report.findings import block_findings
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


# The front takes in 20 at the centre and 42 at the side at most: 2 * 62 = 124 of its hip. What it cannot take
# up the back still can.
@pytest.mark.parametrize(
    ("waist", "front_waist", "front_hip"), [(680, 0.47, 0.52), (700, 0.47, None), (640, 0.5, 0.5)]
)
def test_what_the_front_cannot_take_up_the_back_does_and_the_waist_is_right(
    waist: float, front_waist: float, front_hip: float | None
) -> None:
    block = block_with(waist, front_waist, front_hip)
    taken = block.shares.suppression
    assert (taken.centre_front, taken.front_side) == pytest.approx((CENTRE_FRONT.most, FRONT_SIDE.most))
    assert taken.back_side <= BACK_SIDE.most and taken.dart <= DART.most
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
    block = block_with(500, 0.5, 0.5)
    taken = block.shares.suppression
    assert (taken.front_side, taken.back_side) == pytest.approx((FRONT_SIDE.most, BACK_SIDE.most))
    assert sewn_waist(block) == pytest.approx(510 + 2 * taken.left_over, abs=0.1)
    [said] = [finding for finding in block_findings(block) if finding.code == "suppression-left-over"]
    assert said.amounts == pytest.approx((2 * taken.left_over,), abs=0.1)
