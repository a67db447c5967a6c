"""Fitting the crotch seam: the total comes first, then the share of the front as near as it may."""

from __future__ import annotations

from functools import cache
from itertools import pairwise

import pytest

from drafting import draft_block
from drafting.block.block import Block
from drafting.block.fitting import CLOSE
from tests.wearers import wearer

SHARES = (0.30, 0.36, 0.42, 0.48, 0.53, 0.58)
"""Fronts of a crotch length, 0.30 to 0.58 in the 2012 US Army survey (Natick TR-15/007)."""
each_body = pytest.mark.parametrize("thigh", [None, 640])
each_total = pytest.mark.parametrize("total", [640, 700, 760])


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
    fronts = [block.front.panel.crotch.length for block in blocks(total, thigh)]
    assert all(after >= before - 1 for before, after in pairwise(fronts))
    assert fronts[-1] - fronts[0] > 20


@each_total
@each_body
def test_the_front_is_met_or_a_limit_stands_in_its_way(total: float, thigh: float | None) -> None:
    for share, block in zip(SHARES, blocks(total, thigh), strict=True):
        miss = block.front.panel.crotch.length - share * (total + 5)
        # a front that is too long is as short as may be, or the back, which makes up, as long; or the reverse
        limits = (block.fit.front, -block.fit.back) if miss > 0 else (-block.fit.front, block.fit.back)
        assert abs(miss) <= 1 or min(limits) == pytest.approx(-1, abs=0.01)
