"""What a measurement is said to narrow, against what its want costs real bodies.

Source: 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), Natick technical report TR-15/007,
public domain; see test_survey.py. Every sixtieth person is drafted from four measurements.
"""

from __future__ import annotations

import numpy as np
import pytest

from drafting import Measurements, draft_block
from drafting.body.measurements import Population, WaistLevel
from drafting.report.what_to_measure import doubts
from tests.outside.survey import COLUMNS, everyone, without_survey

pytestmark = [pytest.mark.slow, without_survey]

FOUR = ("waist_girth", "hip_girth", "inside_leg_height", "waist_height")
KEYS = ("total_crotch_length", "hip_height", "knee_height")
LIKE = {"F": Population.WOMEN, "M": Population.MEN}


@pytest.mark.parametrize("estimated", [False, True])
def test_a_doubt_is_as_large_as_what_people_miss_for_want_of_the_measurement(estimated: bool) -> None:
    misses, said = [], []
    for row in everyone()[::60]:
        body = {key: float(row[column]) * 10 for column, key in COLUMNS.items()}
        like = LIKE[row["sex"]] if estimated else Population.NOBODY
        four = {key: body[key] for key in FOUR}
        # the survey's waist is at the navel, about where jeans are worn
        given = Measurements(**four, estimate_like=like, waist_taken_at=WaistLevel.WORN)
        block = draft_block(given)
        drafted = block.crotch_length - block.ease.crotch, block.levels.hip.mm, block.levels.knee.mm
        misses.append([mm - body[key] for mm, key in zip(drafted, KEYS, strict=True)])
        by = {doubt.key: doubt.by for doubt in doubts(block)}
        said.append([by[key] for key in KEYS])
    found, told = (np.sqrt((np.array(rows) ** 2).mean(axis=0)) for rows in (misses, said))
    # of some 76 people a root mean square is known to a tenth or so
    assert list(found) == pytest.approx(list(told), rel=0.25)
