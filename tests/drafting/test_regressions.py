"""The first guesses: their figures against the survey, two by hand; a guess is never called measured."""

from __future__ import annotations

import csv
import math
from pathlib import Path

import numpy as np
import pytest

from drafting import Measurements, draft_block
from drafting.base.construction_proportions import Proportions
from drafting.base.formula import named
from drafting.body.body import Body, Origin, complete
from drafting.body.measurements import Population
from drafting.body.regressions import ARMY, REGRESSIONS, Regression
from drafting.report.block_figures import block_figures
from tests.wearers import wearer

SURVEY = Path(__file__).parents[3] / "shared" / "data" / "bodies" / "army-2012.csv"
SEXES = {Population.WOMEN: "F", Population.MEN: "M"}
ROWS = [(population, row) for population in SEXES for row in REGRESSIONS[population]]
ARMY_ROWS = [(population, row) for population, row in ROWS if row.source == ARMY]


def body(population: Population, **changed: float | None) -> Body:
    return complete(wearer(estimate_like=population, **changed), Proportions())


def guess(row: Regression, **cm: float) -> float | None:
    """Return the guess in cm from predictors in cm."""
    found = row.guess({key: named(key, value * 10) for key, value in cm.items()})
    return None if found is None else found.mm / 10


def test_a_womans_crotch_length_by_hand() -> None:
    # 7.24 + 0.414 * 100 - 0.078 * 80 + 0.972 * (100 - 75) = 7.24 + 41.4 - 6.24 + 24.3 = 66.7; spread 2.35
    [row] = [row for row in REGRESSIONS[Population.WOMEN] if row.target == "total_crotch_length"]
    known = {"hip_girth": 100, "waist_girth": 80, "waist_height": 100, "inside_leg_height": 75}
    assert guess(row, **known) == pytest.approx(66.7)
    assert row.spread == 2.35


def test_a_mans_thigh_by_hand() -> None:
    # -1.92 + 0.760 * 100 - 0.017 * 90 - 0.065 * 180 = -1.92 + 76 - 1.53 - 11.7 = 60.85; spread 1.9
    row = next(row for row in REGRESSIONS[Population.MEN] if "stature" in row.factors)
    assert row.target == "thigh_girth"
    assert guess(row, hip_girth=100, waist_girth=90, stature=180) == pytest.approx(60.85)
    assert row.spread == 1.9


@pytest.mark.parametrize(("population", "row"), ROWS)
def test_without_a_predictor_there_is_no_guess(population: Population, row: Regression) -> None:
    known = dict.fromkeys(row.factors, 100.0)
    assert guess(row, **known) is not None
    for missing in row.factors:
        assert guess(row, **{key: value for key, value in known.items() if key != missing}) is None


@pytest.fixture(scope="module")
def survey() -> dict[Population, dict[str, np.ndarray]]:
    if not SURVEY.exists():
        pytest.skip("the survey's file is not beside the project")
    with SURVEY.open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))
    keys = [key for key in rows[0] if key not in ("id", "sex", "age")]
    return {
        population: {key: np.array([float(r[key]) for r in rows if r["sex"] == sex]) for key in keys}
        for population, sex in SEXES.items()
    }


@pytest.mark.parametrize(("population", "row"), ARMY_ROWS)
def test_the_figures_are_those_of_the_survey(
    population: Population, row: Regression, survey: dict[Population, dict[str, np.ndarray]]
) -> None:
    # the 2012 US Army survey itself, Natick TR-15/007, every woman or man in it
    people = survey[population]
    known = sum(factor * people[key] for key, factor in row.factors.items())
    miss = people[row.target] - row.constant - known
    columns = np.column_stack([*(people[key] for key in row.factors), np.ones(len(miss))])
    best = people[row.target] - columns @ np.linalg.lstsq(columns, people[row.target], rcond=None)[0]
    # printed to three figures: 0.0005 of 100 cm and more of them
    assert abs(miss.mean()) < 0.2
    assert miss.std() == pytest.approx(row.spread, abs=0.06)
    assert best.std() <= miss.std() < 1.02 * best.std()


@pytest.mark.parametrize("population", SEXES)
def test_spreads_combine_along_a_chain_of_guesses(population: Population) -> None:
    rows = {row.target: row for row in reversed(REGRESSIONS[population])}  # the first that can is used
    values = body(population, stature=1650).values
    thigh, calf, ankle, heel = (values[f"{name}_girth"] for name in ("thigh", "calf", "ankle", "heel"))
    assert thigh.spread == pytest.approx(10 * rows["thigh_girth"].spread)
    for value, before, name, step in (
        (calf, thigh, "calf_girth", "thigh_girth"),
        (ankle, calf, "ankle_girth", "calf_girth"),
        (heel, ankle, "heel_girth", "ankle_girth"),
    ):
        row = rows[name]
        assert value.spread == pytest.approx(math.hypot(10 * row.spread, row.factors[step] * before.spread))
        assert value.spread > 10 * row.spread


@pytest.mark.parametrize("population", SEXES)
@pytest.mark.parametrize("stature", [None, 1650])
def test_an_estimate_is_never_marked_as_measured(population: Population, stature: float | None) -> None:
    given = wearer(estimate_like=population, stature=stature)
    values = complete(given, Proportions()).values
    measured = {key for key, value in values.items() if value.origin is Origin.MEASURED}
    # the crotch line follows from the measured rise
    assert measured - {"crotch_depth", "crotch_height"} == given.given().keys()
    for value in values.values():
        assert (value.origin is Origin.ESTIMATED) == (value.spread > 0) == ("20" in value.source)


@pytest.mark.parametrize("population", SEXES)
def test_in_the_figures_too_an_estimate_is_marked_as_one(population: Population) -> None:
    figures = block_figures(draft_block(wearer(estimate_like=population)))
    for level in ("thigh", "knee", "calf", "ankle", "hem"):
        row = figures["girths"][level]
        assert row["origin"] == "estimated" and row["spread"] > 0
    assert figures["body"]["total_crotch_length"]["origin"] == "estimated"
    assert figures["girths"]["hip"] | {"origin": "measured", "spread": 0.0} == figures["girths"]["hip"]


@pytest.mark.parametrize("changed", [{}, {"stature": 1650}, {"thigh_girth": 580, "calf_girth": 360}])
def test_for_nobody_nothing_is_estimated(changed: dict[str, float]) -> None:
    assert REGRESSIONS[Population.NOBODY] == ()
    values = body(Population.NOBODY, **changed).values
    assert all(value.spread == 0 and value.origin is not Origin.ESTIMATED for value in values.values())
    assert {"total_crotch_length", "heel_girth", "knee_girth"}.isdisjoint(values)


def test_nobody_is_what_a_wearer_gets_who_says_nothing() -> None:
    assert Measurements().estimate_like is Population.NOBODY
