"""Which measurement to take next: the one whose want leaves most in doubt, with the amount."""

from __future__ import annotations

import math
from statistics import NormalDist
from typing import Any

import numpy as np
import pytest

from drafting import Block, Ease, draft_block
from drafting.base.errors import Severity
from drafting.base.findings import Finding
from drafting.body.measurements import Population
from drafting.report.block_findings import block_findings
from drafting.report.what_to_measure import advice, doubts, mean_shortage
from tests.wearers import wearer

LENGTHS = {"total_crotch_length": 690, "hip_height": 845, "knee_height": 445}


def block(**changed: Any) -> Block:
    return draft_block(wearer(**changed))


def keys(drafted: Block) -> list[str]:
    return [doubt.key for doubt in doubts(drafted)]


def told(drafted: Block) -> Finding:
    [finding] = [finding for finding in block_findings(drafted) if finding.code == "measure-next"]
    return finding


def test_of_a_wearer_who_measured_little_the_crotch_length_is_asked_first() -> None:
    # The proportions miss the crotch length by more than any other length (2012 US Army survey).
    assert keys(block()) == ["total_crotch_length", "hip_height", "knee_height", "thigh_girth"]
    finding = told(block())
    assert finding.severity is Severity.NOTE
    assert finding.where == "total crotch length"
    assert finding.amounts == (doubts(block())[0].by,)
    assert "by construction" not in finding.say() and "proportions of the draft" in finding.say()


@pytest.mark.parametrize("given", LENGTHS)
def test_what_was_measured_is_not_asked_again(given: str) -> None:
    drafted = block(**{given: LENGTHS[given]})
    assert given not in keys(drafted)
    assert LENGTHS.keys() - {given} <= set(keys(drafted))


def test_waist_to_hip_tells_the_hip_level_as_well() -> None:
    assert "hip_height" not in keys(block(waist_to_hip=180))


def test_when_all_that_decides_the_fit_is_measured_nothing_is_asked() -> None:
    drafted = block(**LENGTHS, thigh_girth=580, knee_girth=370, heel_girth=320)
    assert doubts(drafted) == () and advice(drafted) == ()
    assert all(finding.code != "measure-next" for finding in block_findings(drafted))


@pytest.mark.parametrize("estimate_like", [Population.NOBODY, Population.MEN])
def test_a_thigh_that_was_not_measured_is_asked_for_when_a_close_leg_may_be_short(
    estimate_like: Population,
) -> None:
    drafted = draft_block(wearer(**LENGTHS, estimate_like=estimate_like), ease=Ease(thigh=60))
    assert keys(drafted)[0] == "thigh_girth"
    assert told(drafted).amounts[0] < 22, "never more than the spread of people"


@pytest.mark.parametrize(("room", "spread"), [(0, 20), (15, 20), (-25, 20), (60, 20)])
def test_the_mean_shortage_is_that_of_many_people(room: float, spread: float) -> None:
    """People of a room that is normally distributed, laid out evenly over their ranks."""
    ranks = (np.arange(20_000) + 0.5) / 20_000
    lacks = np.maximum([NormalDist(-room, spread).inv_cdf(rank) for rank in ranks], 0)
    assert mean_shortage(room, spread) == pytest.approx(float(np.sqrt((lacks**2).mean())), abs=0.05)


def test_an_estimate_narrows_the_doubt_to_its_spread() -> None:
    doubt = {d.key: d for d in doubts(block(estimate_like=Population.WOMEN))}
    # Natick TR-15/007, women: crotch length 2.35 cm, knee height from the inside leg 0.99 cm; 1 cm more or
    # less of the way from navel to waist counts twice, 0.972 of it by the line
    assert doubt["total_crotch_length"].by == pytest.approx(math.hypot(23.5, 1.028 * 10))
    assert doubt["knee_height"].by == pytest.approx(9.9)
    assert "TR-15/007" in doubt["total_crotch_length"].why
    assert doubt["total_crotch_length"].by < {d.key: d.by for d in doubts(block())}["total_crotch_length"]


def test_the_largest_doubt_comes_first_and_is_the_one_that_is_told() -> None:
    for changed in ({}, {"estimate_like": Population.MEN}, {"total_crotch_length": 690}):
        found = doubts(block(**changed))
        assert [doubt.by for doubt in found] == sorted((doubt.by for doubt in found), reverse=True)
        assert told(block(**changed)).measured == found[0].by


def test_a_guessed_thigh_that_just_goes_in_is_short_for_every_second_body() -> None:
    # so much ease is asked for that the block is widened to the guessed thigh and not more
    drafted = draft_block(wearer(**LENGTHS, estimate_like=Population.WOMEN), ease=Ease(thigh=90))
    thigh = drafted.body.values["thigh_girth"]
    assert drafted.thigh_girth == pytest.approx(thigh.length.mm + 90, abs=0.1)
    doubt = doubts(drafted)[0]
    # 1.92 cm, Natick TR-15/007; half of the people lack nothing, so the mean square is halved
    assert (doubt.key, doubt.by) == ("thigh_girth", pytest.approx(19.2 / math.sqrt(2), abs=0.1))
    assert "thigh girth" in told(drafted).say()


def test_a_girth_with_room_for_a_larger_body_is_not_in_doubt() -> None:
    # A straight leg leaves far more than its least ease round ankle and heel.
    drafted = block(**LENGTHS, estimate_like=Population.WOMEN)
    heel = drafted.body.values["heel_girth"]
    assert heel.length.mm + heel.spread + drafted.ease.heel < drafted.leg.hem.mm
    assert "heel_girth" not in keys(drafted)


def test_the_doubt_is_told_in_the_unit_of_the_reader() -> None:
    finding = told(block(estimate_like=Population.WOMEN))
    assert finding.say(lambda mm: f"{mm:.1f} mm").endswith("may be off by 25.7 mm.")
