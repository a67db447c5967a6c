"""Fitting the crotch seam: the total is met, the split moves the tops of the centre lines and no fork."""

from __future__ import annotations

from functools import cache
from itertools import pairwise

import pytest

from drafting import Block, Measurements, block_lines, draft_block
from drafting.block.fitting import CLOSE
from drafting.report.block_figures import block_figures
from drafting.report.block_findings import block_findings
from tests.wearers import wearer

SHARES = (0.30, 0.36, 0.42, 0.48, 0.53, 0.58)
"""Fronts of a crotch length, 0.30 to 0.58 in the 2012 US Army survey (Natick TR-15/007)."""
each_body = pytest.mark.parametrize("thigh", [None, 600])
each_total = pytest.mark.parametrize("total", [650, 700, 730])


@cache
def blocks(total: float, thigh: float | None) -> list[Block]:
    crotch = ({"total_crotch_length": total, "front_crotch_length": total * share} for share in SHARES)
    return [draft_block(wearer(**given, thigh_girth=thigh)) for given in crotch]


@each_total
@each_body
def test_whatever_the_front_measures_the_whole_seam_is_met(total: float, thigh: float | None) -> None:
    for block in blocks(total, thigh):
        assert block.crotch_length == pytest.approx(total + 5, abs=2 * CLOSE)


@each_total
@each_body
def test_a_longer_front_of_the_body_never_makes_the_drafted_front_shorter(
    total: float, thigh: float | None
) -> None:
    fronts = [block.front.lower.crotch.length for block in blocks(total, thigh)]
    assert all(after >= before - 0.1 for before, after in pairwise(fronts))
    assert fronts[-1] - fronts[0] > 5


@each_total
@each_body
def test_no_split_moves_the_front_fork_by_more_than_5_mm(total: float, thigh: float | None) -> None:
    forks = [block.front.points()["fork"].x for block in blocks(total, thigh)]
    assert max(forks) - min(forks) < 5


def test_a_longer_crotch_length_moves_every_means_the_same_way_and_without_a_step() -> None:
    drafts = [draft_block(wearer(total_crotch_length=total)) for total in range(600, 781, 5)]
    for read in (
        lambda b: b.front.points()["fork"].x,
        lambda b: b.back.points()["fork"].x,
        lambda b: -b.levels.crotch.mm,
        lambda b: b.back.points()["centre at the waist"].y,
    ):
        amounts = [read(block) for block in drafts]
        steps = [after - before for before, after in pairwise(amounts)]
        assert min(steps) >= -0.3  # 0.3: a centre back at what its waist line can bend goes with the depth
        assert max(steps) <= 5


def test_what_lengthens_the_seam_leaves_the_side_of_the_front_at_hip_and_waist() -> None:
    # a wedge at the centre back is hinged at the side seam: widths of the front and its top stay
    short, long = (draft_block(wearer(total_crotch_length=total)) for total in (660, 720))
    assert short.front.lower.plan.hip.mm == long.front.lower.plan.hip.mm
    assert short.front.waist_length == pytest.approx(long.front.waist_length, abs=0.01)
    assert long.front.side.start.x == pytest.approx(short.front.side.start.x, abs=2.5)


BODIES = {
    "four measurements": wearer(),
    "a long seam": wearer(total_crotch_length=740),
    "a short seam": wearer(total_crotch_length=620),
    "a full thigh": wearer(total_crotch_length=690, thigh_girth=650),
    "a long front": wearer(total_crotch_length=700, front_crotch_length=380),
    "a full waist": wearer(waist_girth=1010, total_crotch_length=700),
}


@pytest.mark.parametrize("body", BODIES.values(), ids=BODIES.keys())
def test_what_is_told_of_a_means_is_what_the_lines_show(body: Measurements) -> None:
    block = draft_block(body)
    lines, plain = block_lines(block), block_lines(draft_block(body, fitted=False))
    told = {row["key"]: row["amount"] for row in block_figures(block)["crotch"]["means"]}

    def moved(panel: str, row: int, column: int) -> float:
        return float(lines[panel]["crotch seam"][row, column] - plain[panel]["crotch seam"][row, column]) / 10  # type: ignore[literal-required]

    drawn = {
        "centre_back_height": moved("back", 0, 1),
        "back_fork": moved("back", -1, 0),
        "crotch_depth": -moved("front", -1, 1),
        "front_fork": moved("front", -1, 0),
        "centre_front_height": moved("front", 0, 1),
    }
    for key, amount in drawn.items():
        assert told.get(key, 0.0) == pytest.approx(amount, abs=0.01), key
    assert set(told) <= {*drawn, "seat_line_lean"}


def test_a_seam_beyond_the_usual_proportions_is_told_and_one_within_is_not() -> None:
    def codes(total: float) -> set[str]:
        return {finding.code for finding in block_findings(draft_block(wearer(total_crotch_length=total)))}

    assert "crotch-out-of-proportion" not in codes(680)
    assert "crotch-out-of-proportion" in codes(745)
    assert "crotch-out-of-reach" in codes(900) and "crotch-out-of-proportion" not in codes(900)
