"""The means of fitting: each within its limits, each for its part of the crotch seam."""

import pytest

from drafting.base.proportions import Ease, Proportions
from drafting.block.fitting import Fitter
from drafting.block.leg_shape import LegCut, leg_shape
from drafting.block.means import MEANS, Fit, Mean, Part
from drafting.body.body import complete
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


# What the limits come to, mm or degrees, with the proportions that they are added to: 6.6 cm of centre back,
# 7 to 23.5 degrees (own trial on the 2012 US Army survey); the rest as in the table.
LIMITS = {
    "centre-back height": (28 - 18, 28 + 38),
    "seat-line lean": (14 - 7, 14 + 9.5),
    "back fork": (-20, 58),
    "centre-front height": (-15, 33),
    "front fork": (-12, 29),
    "crotch depth": (-12, 28),
}


def test_the_limits_are_those_that_the_table_says() -> None:
    p = Proportions()
    base = {"centre-back height": p.back_raise, "seat-line lean": p.back_lean}
    found = {
        mean.name: tuple(base.get(mean.name, 0) + end for end in (mean.least, mean.most)) for mean in MEANS
    }
    assert found == LIMITS
    assert found["centre-back height"][1] == 66 and found["seat-line lean"] == (7, 23.5)


@pytest.mark.parametrize(
    ("thigh", "front", "back", "deeper", "bulge"),
    # up to 30: a third and two thirds; beyond it a fifth less and six fifths more, and 0.3 deeper, at most 10
    [(15, 5, 10, 0, 0.5), (30, 10, 20, 0, 1), (50, 6, 44, 6, 1), (80, 0, 80, 10, 1)],
)
def test_what_the_thigh_needs_is_shared_by_hand(
    thigh: float, front: float, back: float, deeper: float, bulge: float
) -> None:
    fit = Fit(thigh=thigh)
    found = (fit.front_fork, fit.back_fork, fit.depth, fit.side_bulge)
    assert found == pytest.approx((front, back, deeper, bulge))
    assert fit.front_fork + fit.back_fork == pytest.approx(thigh)


@pytest.mark.parametrize(
    ("rise", "depth"),
    # standing rise 1025 - 780 = 245: the crotch line stays at 253 or lower; the mean takes 12 off 265 + 5,
    # and 7 off 255 + 5
    [(265, 258), (255, 253)],
)
def test_the_crotch_is_never_lifted_into_the_body(rise: float, depth: float) -> None:
    body = complete(wearer(body_rise=rise, waist_height=1025), Proportions())
    fitter = Fitter(body, leg_shape(body, Ease(), LegCut()), Ease(), Proportions())
    lower = fitter.draft(Fit(front=-1, back=-1))
    assert lower.body["crotch_depth"].mm == pytest.approx(depth)
    assert lower.levels.crotch.mm == pytest.approx(1025 - depth)
