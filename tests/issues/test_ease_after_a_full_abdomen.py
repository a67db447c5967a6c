"""No test saw the waist that a full abdomen gains by its hinge told as a waist that is too large."""

import pytest

from drafting import draft_block
from drafting.base.errors import Severity
from drafting.report.block_findings import block_findings
from drafting.report.fit import girth_lines
from tests.wearers import wearer


@pytest.mark.parametrize("key", ["full_abdomen", "flat_abdomen"])
@pytest.mark.parametrize("amount", [8, 15])
def test_the_waist_that_the_abdomen_gains_is_no_fault_of_the_fit(key: str, amount: float) -> None:
    block = draft_block(wearer(), corrections={key: amount})
    assert block.toile and abs(block.waist_girth - block.toile.waist_girth) > 10
    assert [finding.code for finding in block_findings(block) if finding.severity is Severity.WARNING] == []
    waist = girth_lines(block)[0]
    assert waist.ease == pytest.approx(waist.least_ease, abs=0.1)
