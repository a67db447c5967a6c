"""The girth where the jeans are worn: measured, between measured levels, or estimated above the waist."""

import pytest

from drafting.base.construction_proportions import Proportions
from drafting.base.errors import Severity
from drafting.body.body import complete
from styles.top.worn_level import check_worn_girth, girth_at
from tests.wearers import wearer

BODY = complete(wearer(waist_height=1025, waist_to_hip=200, body_rise=None), Proportions())
"""Waist 760 at 1025, hip 980 at 825."""


def test_at_the_waist_it_is_as_measured() -> None:
    girth = girth_at(BODY, 1025)
    assert (girth.mm, girth.spread) == (760, 0)


def test_between_waist_and_hip_it_runs_straight_and_is_least_certain_midway() -> None:
    assert girth_at(BODY, 925).mm == pytest.approx((760 + 980) / 2)
    assert girth_at(BODY, 925).spread == pytest.approx(45)
    assert girth_at(BODY, 975).mm == pytest.approx(760 + 220 / 4)
    assert girth_at(BODY, 825).spread == pytest.approx(0)


def test_a_measured_top_hip_is_used_and_makes_it_surer() -> None:
    measured = wearer(
        waist_height=1025, waist_to_hip=200, body_rise=None, top_hip_girth=900, waist_to_top_hip=100
    )
    body = complete(measured, Proportions())
    assert girth_at(body, 925).mm == pytest.approx(900)
    assert girth_at(body, 925).spread == pytest.approx(0)
    assert girth_at(body, 975).mm == pytest.approx(830)
    assert girth_at(body, 975).spread == pytest.approx(45 / 2)


def test_above_the_waist_it_is_an_estimate_with_its_spread() -> None:
    girth = girth_at(BODY, 1025 + 20)
    assert (girth.mm, girth.spread) == (770, 10)


def test_a_band_that_goes_round_needs_no_word_and_a_shorter_one_a_warning() -> None:
    assert check_worn_girth(BODY, 1025, 760) == ()
    (finding,) = check_worn_girth(BODY, 1025, 750)
    assert finding.severity is Severity.WARNING
    assert finding.say() == "The waistband closes at 75.0 cm, but the body measures 76.0 cm where it is worn."
    (guessed,) = check_worn_girth(BODY, 925, 800)
    assert "give or take 4.5 cm: measure it there" in guessed.say()
