"""Every style of the catalogue on real bodies and on the demo's: it drafts, sews together, covers the body.

Source of the bodies: as in test_survey_jeans. Some 25 people are drafted in every style, 200 when
JEANSBLOCK_WHOLE_SURVEY is set; without the survey's file only the demo's wearers are.
"""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from drafting import Block, Measurements
from drafting.base.errors import Severity
from outputs.reading.style_file import find_style
from styles.choice.catalogue import catalogue_names
from styles.choice.style import Style
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth
from styles.making.jeans import Jeans, make_jeans
from tests.outside.survey import STEP, SURVEY, body_of, rows
from tests.outside.test_survey_jeans import amiss
from tests.sewn_block import outline, unfair_lines, width_at
from tests.whole_jeans import DEMO_WEARERS, measurements_of

pytestmark = pytest.mark.slow

PEOPLE = 200 if STEP == 1 else 24
KNEE = 1.0
"""The knee of a shaped leg lies this near the wearer's, mm (a sewer cannot see it, common practice)."""


@cache
def bodies() -> dict[str, Measurements]:
    """Return the people by name."""
    found = {name: measurements_of(name) for name in DEMO_WEARERS}
    if SURVEY.exists():
        for row in rows()[:: len(rows()) // PEOPLE][:PEOPLE]:
            found[row["id"]] = body_of(row)
    return found


def drafted(style: Style, body: Measurements) -> Jeans:
    """Return the jeans in a cloth that the style asks for."""
    cloth = Cloth(stretch=style.least_stretch)
    return make_jeans(block_for(body, style, cloth), style, cloth=cloth)


def narrowest_below_the_thigh(block: Block) -> float:
    """Return the height at which the sewn leg is narrowest between mid-thigh and hem."""
    shapes = [outline(panel) for panel in (block.front, block.back)]
    levels = block.levels
    heights = np.arange(levels.hem.mm + 1, (levels.knee.mm + levels.crotch.mm) / 2, 0.5)
    return float(heights[np.argmin([sum(width_at(shape, y) for shape in shapes) for y in heights])])


@pytest.mark.parametrize("name", catalogue_names())
def test_it_drafts_meets_and_covers_the_body_in_fair_lines(name: str) -> None:
    style, wrong = find_style(name), {}
    for person, body in bodies().items():
        jeans = drafted(style, body)
        found = amiss(jeans)
        # Cloth that stretches is cut smaller than the body between the levels, too.
        short = ("girth-short",) if style.least_stretch else ("girth-short", "leg-short")
        found += [f.say() for f in jeans.pattern.findings if f.code in short]
        found += [f"bends back: {line}" for line in unfair_lines(jeans.block) if "waist" not in line]
        if found:
            wrong[person] = found
    assert wrong == {}


@pytest.mark.parametrize("name", ["bootcut", "flare"])
def test_a_shaped_leg_is_narrowest_at_the_wearers_own_knee(name: str) -> None:
    style = find_style(name)
    for person, body in bodies().items():
        block = block_for(body, style, Cloth())
        assert block.levels.knee.mm == block.body["knee_height"].mm, person
        assert abs(narrowest_below_the_thigh(block) - block.body["knee_height"].mm) <= KNEE, person


def test_a_skinny_cut_in_rigid_denim_says_what_will_not_go_on() -> None:
    style = find_style("skinny")
    for person, body in bodies().items():
        jeans = make_jeans(block_for(body, style, Cloth()), style, cloth=Cloth())
        said = [f for f in jeans.pattern.findings if f.code == "stretch-missing"]
        assert len(said) == 1 and said[0].severity is Severity.WARNING, person
