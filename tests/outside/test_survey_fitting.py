"""Several corrections at once on the people of a survey of real bodies: whole jeans that can be sewn and cut.

Source: 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), Natick technical report TR-15/007,
public domain; see test_survey_jeans.py. The corrections are drawn at random, the same on every run: nobody
tried these jeans on.
"""

from __future__ import annotations

import random
from collections.abc import Iterator

import pytest

from drafting import Measurements, draft_block
from drafting.body.corrections import CORRECTIONS
from styles.choice.style import STRAIGHT
from styles.making.jeans import make_jeans
from tests.outside.survey import STEP, body_of, rows, without_survey
from tests.outside.test_survey_jeans import amiss
from tests.sewn_block import joins, outline

PEOPLE = 200 if STEP == 1 else 40
GROUPS = 4

pytestmark = [pytest.mark.slow, without_survey]


def fittings(group: int) -> Iterator[tuple[str, Measurements, dict[str, float]]]:
    everybody = rows()
    for place, row in enumerate(everybody[:: len(everybody) // PEOPLE][:PEOPLE][group::GROUPS]):
        body = body_of(row)
        chance = random.Random(place * GROUPS + group)
        changes = sorted({correction.change for correction in CORRECTIONS.values()})
        seen = {}
        for change in chance.sample(changes, chance.randint(2, 5)):
            correction = chance.choice([c for c in CORRECTIONS.values() if c.change == change])
            seen[correction.key] = round(chance.uniform(*correction.usual), 1)
        yield row["id"], body, seen


@pytest.mark.parametrize("group", range(GROUPS))
def test_jeans_with_several_corrections_can_be_sewn_and_cut(group: int) -> None:
    found = {}
    for name, body, seen in fittings(group):
        block = draft_block(body, corrections=seen)
        wrong = amiss(make_jeans(block, STRAIGHT))
        if not joins(block).within():
            wrong.append(f"{joins(block)}")
        wrong += [p.name for p in (block.front, block.back) if not outline(p).is_valid]
        if wrong:
            found[name] = (seen, wrong)
    assert found == {}
