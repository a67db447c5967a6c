"""The means of fitting: each within its limits, each for its part of the crotch seam."""

import pytest

from drafting.body import complete
from drafting.fitting import Fitter
from drafting.leg_shape import LegCut, leg_shape
from drafting.means import MEANS, Fit, Mean, Part
from drafting.proportions import Ease, Proportions
from tests.wearers import wearer

HEIGHT = Mean("height", Part.BACK, -10, 30, "mm", "invented")


@pytest.mark.parametrize(
    ("s", "amount"), [(0, 0), (1, 30), (0.5, 15), (-1, -10), (-0.5, -5), (3, 30), (-3, -10)]
)
def test_a_mean_moves_in_proportion_and_stops_at_its_limits(s: float, amount: float) -> None:
    assert HEIGHT.at(s) == amount


@pytest.mark.parametrize("mean", MEANS, ids=lambda mean: mean.name)
def test_every_mean_can_shorten_and_lengthen_and_says_where_its_limits_come_from(mean: Mean) -> None:
    assert mean.least < 0 < mean.most
    assert mean.source


@pytest.mark.parametrize("mean", MEANS, ids=lambda mean: mean.name)
def test_front_and_back_move_only_their_own_means(mean: Mean) -> None:
    front, back = Fit(front=1).amount(mean), Fit(back=1).amount(mean)
    assert (front > 0) == (mean.part is not Part.BACK)
    assert (back > 0) == (mean.part is not Part.FRONT)


def test_the_depth_goes_with_the_middle_of_front_and_back() -> None:
    [depth] = [mean for mean in MEANS if mean.part is Part.BOTH]
    assert Fit(front=1, back=1).amount(depth) == depth.most
    assert Fit(front=1, back=0).amount(depth) == depth.most / 2
    assert Fit(front=1, back=-1).amount(depth) == 0


def test_nothing_is_used_where_nothing_is_needed() -> None:
    fit = Fit()
    assert [fit.amount(mean) for mean in MEANS] == [0] * len(MEANS)
    assert (fit.front_fork, fit.back_fork, fit.depth, fit.side_bulge) == (0, 0, 0, 0)


def test_up_to_3_cm_of_thigh_go_to_the_forks_and_the_crotch_stays() -> None:
    # "up to 3 cm: widen at fork and back side; over 3 cm: deepen the crotch and narrow the front fork",
    # a dressmaking school's trouser course
    fit = Fit(thigh=30)
    assert 0 < fit.front_fork < fit.back_fork
    assert fit.depth == 0


def test_more_than_3_cm_of_thigh_deepen_the_crotch_and_narrow_the_front_fork() -> None:
    assert Fit(thigh=50).depth > 0
    assert Fit(thigh=50).front_fork < Fit(thigh=30).front_fork
    assert Fit(thigh=50).back_fork > Fit(thigh=30).back_fork


@pytest.mark.parametrize("part", ["front", "back"])
def test_each_part_lengthens_its_own_half_of_the_crotch_seam(part: str) -> None:
    body = complete(wearer(), Proportions())
    fitter = Fitter(body, leg_shape(body, Ease(), LegCut()), Ease(), Proportions())
    lengths = [getattr(fitter.draft(Fit(**{part: s})), part).crotch.length for s in (-1, -0.5, 0, 0.5, 1)]
    assert lengths == sorted(lengths)
    assert lengths[-1] - lengths[0] > 50
