"""The ranges that the checks call usual, against everybody in the survey they are taken from.

Source: 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), Natick technical report TR-15/007,
public domain. The survey's file lies beside the project, not in it; without it these tests are skipped.
"""

from __future__ import annotations

import re

import numpy as np
import pytest

from drafting.body.measurement_table import MEASUREMENTS
from drafting.body.relation import Relation
from drafting.body.relations import RELATIONS
from tests.outside.survey import COLUMNS, SURVEY, everyone

# Just above the kneecap, which is as near as the survey comes to the girth of the knee.
TAKEN = {**COLUMNS, "lower_thigh_girth": "knee_girth"}
STATED = re.compile(r"SURVEY (-?[\d.]+) to (-?[\d.]+)( mm)?( less| more)?")


@pytest.fixture(scope="module")
def people() -> dict[str, np.ndarray]:
    """Every measurement of everybody, mm, by our key."""
    if not SURVEY.exists():
        pytest.skip("the survey's file is not beside the project")
    found = {key: np.array([float(row[column]) * 10 for row in everyone()]) for column, key in TAKEN.items()}
    return {**found, "front_crotch_length": found["total_crotch_length"] - found["back_crotch_length"]}


STATING = [row for row in RELATIONS if STATED.match(row.source)]
ONE = [row for row in STATING if len(row.given) == 1]


def test_most_relations_that_name_the_survey_state_what_is_in_it() -> None:
    assert len(ONE) >= 13


@pytest.mark.parametrize("row", ONE, ids=lambda row: f"{row.key} by {row.given[0]}")
def test_a_range_of_the_survey_is_the_one_that_is_stated(
    row: Relation, people: dict[str, np.ndarray]
) -> None:
    low, high, in_mm, less = STATED.match(row.source).groups()  # type: ignore[union-attr]
    own, other = people[row.key], people[row.given[0]]
    found = (other - own if less == " less" else own - other) if in_mm else own / other
    digits = len(low.partition(".")[2])
    assert (float(low), float(high)) == pytest.approx((found.min(), found.max()), abs=0.51 * 10**-digits)


@pytest.mark.slow
@pytest.mark.parametrize("row", STATING, ids=lambda row: f"{row.key} by {row.given[0]}")
def test_hardly_anybody_in_the_survey_is_remarked_upon(row: Relation, people: dict[str, np.ndarray]) -> None:
    given = zip(*(people[key] for key in row.given), strict=True)
    ranges = [(row.usual(*values), row.possible(*values)) for values in given]
    usual = [usual.holds(value) for (usual, _), value in zip(ranges, people[row.key], strict=True)]
    assert all(possible.holds(value) for (_, possible), value in zip(ranges, people[row.key], strict=True))
    # "for 94 in 100"; and 1 in 70 has the fullest seat below the crotch, which is remarked upon
    remarked = 0.06 if "94 in 100" in row.source else 1 / 70 if "-29" in row.source else 0.0
    assert 1 - np.mean(usual) == pytest.approx(remarked, abs=0.005 if "94" in row.source else 0.001)


@pytest.mark.parametrize("key", sorted(set(COLUMNS.values())))
def test_a_usual_range_is_that_of_the_survey_opened_a_little(key: str, people: dict[str, np.ndarray]) -> None:
    usual, possible = MEASUREMENTS[key].usual, MEASUREMENTS[key].possible
    least, most = people[key].min(), people[key].max()
    # "by a tenth or so, since soldiers are fitter and younger than the public": by a quarter at most
    assert 0.75 * least <= usual.low <= least
    assert most <= usual.high <= 1.25 * most
    assert possible.low < usual.low and usual.high < possible.high
