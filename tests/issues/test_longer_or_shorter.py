"""No test saw "longer" and "shorter" exchanged in what the report says of the crotch seam."""

import pytest

from drafting import draft_block
from drafting.base.findings import Finding
from drafting.report.block_findings import block_findings
from tests.wearers import wearer


def said(key: str) -> Finding:
    block = draft_block(wearer(total_crotch_length=700), corrections={key: 10})
    assert block.toile
    [finding] = [finding for finding in block_findings(block) if finding.code == "crotch-corrected"]
    more = block.crotch_length - block.toile.crotch_length
    assert finding.amounts == pytest.approx((abs(more),))
    return finding


@pytest.mark.parametrize("key", ["higher_rise", "full_seat", "full_abdomen", "front_crotch_pulls"])
def test_a_crotch_seam_that_gained_is_said_to_be_longer(key: str) -> None:
    assert said(key).say().endswith("cm longer.")


@pytest.mark.parametrize("key", ["lower_rise", "flat_seat", "flat_abdomen", "sway_back"])
def test_a_crotch_seam_that_lost_is_said_to_be_shorter(key: str) -> None:
    assert said(key).say().endswith("cm shorter.")


@pytest.mark.parametrize(("length", "word"), [(1000, "short"), (500, "long")])
def test_a_crotch_seam_out_of_reach_is_too_short_for_a_long_body_and_too_long_for_a_short_one(
    length: float, word: str
) -> None:
    block = draft_block(wearer(total_crotch_length=length))
    [finding] = [finding for finding in block_findings(block) if finding.code == "crotch-out-of-reach"]
    assert f" too {word}: " in finding.say()
