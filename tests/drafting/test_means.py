"""The means of fitting: one number moves all of them, within ranges of the finished shape."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from drafting.base.construction_proportions import Ease, Proportions
from drafting.block.fitting import Fitter, followed
from drafting.block.leg_shape import LegCut, leg_shape
from drafting.block.means import MEANS, WIDEST, Fit, Mean
from drafting.body.body import complete
from tests.wearers import wearer

HEIGHT = Mean("height", "height", (20, 15, 10), (40, 50, 52), "invented")
FORK = Mean("fork", "fork", (0.05, 0.048, 0.047), (0.06, 0.065, 0.067), "invented", of_hip=True)


@pytest.mark.parametrize(
    ("number", "amount"),
    [(0, 30), (1, 40), (0.5, 35), (2, 50), (2.5, 51), (3, 52), (9, 52), (-1, 20), (-1.5, 17.5), (-3, 10)],
)
def test_a_mean_runs_straight_from_end_to_end_of_its_ranges(number: float, amount: float) -> None:
    assert HEIGHT.at(number, 30, 1000) == pytest.approx(amount)


def test_a_share_of_the_hip_is_one_for_every_hip() -> None:
    assert FORK.at(1, 55, 1000) == pytest.approx(60)
    assert FORK.at(1, 66, 1200) == pytest.approx(72)


def test_proportions_come_into_the_usual_range_with_room_to_either_side() -> None:
    # a twelfth of the range of 20 is some 1.6
    assert HEIGHT.within(30, 1000) == pytest.approx(30)
    assert HEIGHT.within(60, 1000) == pytest.approx(40 - 1.6)
    assert HEIGHT.within(5, 1000) == pytest.approx(20 + 1.6)


def test_a_proportion_beyond_a_range_waits_there_and_never_goes_back() -> None:
    assert [HEIGHT.at(number, 45, 1000) for number in (0, 1, 2, 3)] == pytest.approx([45, 45, 50, 52])


@pytest.mark.parametrize("mean", MEANS, ids=lambda mean: mean.name)
def test_the_ranges_of_a_mean_lie_inside_each_other_and_have_a_source(mean: Mean) -> None:
    ends = [*reversed(mean.low), *mean.high]
    assert sorted(set(ends)) == ends
    assert mean.source


def test_the_widest_shapes_are_those_that_a_cutter_still_draws() -> None:
    # front fork 4.7 to 6.7 % of the hip, both forks 23.5 %, centre back raised by 60 mm at most, a crotch
    # line 8 to 44 under the body (own trial)
    [raised] = [mean for mean in MEANS if mean.key == "centre_back_height"]
    [front] = [mean for mean in MEANS if mean.key == "front_fork"]
    [back] = [mean for mean in MEANS if mean.key == "back_fork"]
    [depth] = [mean for mean in MEANS if mean.key == "crotch_depth"]
    assert front.low[-1] >= 0.047 and front.high[-1] <= 0.067
    assert front.high[-1] + back.high[-1] <= 0.235
    assert raised.high[-1] <= 60 and (depth.low[-1], depth.high[-1]) == (8, 43.2)


def test_nothing_is_used_where_nothing_is_needed() -> None:
    fit = Fit()
    assert (fit.front_fork, fit.back_fork, fit.depth, fit.side_bulge) == (0, 0, 0, 0)


@pytest.mark.parametrize(
    ("thigh", "front", "back", "deeper", "bulge"),
    # a quarter and three quarters; beyond 30 also 0.3 deeper, at most 10
    [(16, 4, 12, 0, 16 / 30), (30, 7.5, 22.5, 0, 1), (50, 12.5, 37.5, 6, 1), (80, 20, 60, 10, 1)],
)
def test_what_the_thigh_needs_is_shared_by_hand(
    thigh: float, front: float, back: float, deeper: float, bulge: float
) -> None:
    fit = Fit(thigh=thigh)
    found = (fit.front_fork, fit.back_fork, fit.depth, fit.side_bulge)
    assert found == pytest.approx((front, back, deeper, bulge))
    assert fit.front_fork + fit.back_fork == pytest.approx(thigh)


def test_more_of_the_number_is_a_longer_crotch_seam_in_front_and_behind() -> None:
    body = complete(wearer(), Proportions())
    fitter = Fitter(body, leg_shape(body, Ease(), LegCut()), Ease(), Proportions())
    drafts = [fitter.draft(Fit(number=float(number))) for number in np.linspace(-WIDEST, WIDEST, 25)]
    for panel in ("front", "back"):
        lengths = [getattr(draft, panel).crotch.length for draft in drafts]
        assert all(after > before for before, after in pairwise(lengths))
    whole = [draft.front.crotch.length + draft.back.crotch.length for draft in drafts]
    assert whole[-1] - whole[0] > 100


@pytest.mark.parametrize(
    ("off", "drawn"), [(0, 0), (20, 0), (-20, 0), (30, 5), (-30, -5), (60, 20), (-60, -20)]
)
def test_a_split_counts_beyond_one_spread_and_by_half(off: float, drawn: float) -> None:
    assert followed(off) == pytest.approx(drawn)


@pytest.mark.parametrize(
    ("rise", "depth"),
    # standing rise 1025 - 780 = 245: the crotch line stays at 253 or lower; the widest range ends there too
    [(265, 253), (255, 253)],
)
def test_the_crotch_is_never_lifted_into_the_body(rise: float, depth: float) -> None:
    body = complete(wearer(body_rise=rise, waist_height=1025), Proportions())
    fitter = Fitter(body, leg_shape(body, Ease(), LegCut()), Ease(), Proportions())
    lower = fitter.draft(Fit(number=-WIDEST))
    assert lower.body["crotch_depth"].mm == pytest.approx(depth)
    assert lower.levels.crotch.mm == pytest.approx(1025 - depth)
