"""Finished widths and rises of the styles beside published ones.

Hem openings, round: skinny 10 to 14 in, straight 14 to 16, bootcut 16 to 20 (three denim glossaries), flare
21 to 27 (a fashion magazine), wide from 20; slim 13 to 14 1/2 in from memory; tapered: one published pair for
a 32 in waist, knee 17 1/2 in, hem 15 in. Front rises: low 7 to 9 1/2 in, mid 8 1/2 to 11, high 10 1/2 to 12,
from the waist seam's top to the crotch (two shop guides); natural waist 12 and more. They are for ordinary
sizes, so they are compared on hips from 90 to 102 cm; an inch is given at a hem, half an inch at a rise, as
shops round.
"""

from __future__ import annotations

import math

import pytest

from drafting import Measurements
from outputs.reading.style_file import find_style
from styles.choice.catalogue import catalogue_names
from styles.choice.style import Rise, Style
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth
from styles.top.upper import front_at
from tests.sewn_block import leg_girth
from tests.wearers import wearer

INCH = 25.4
OPENINGS = {
    "skinny": (10, 14),
    "slim": (13, 14.5),
    "straight": (14, 16),
    "bootcut": (16, 20),
    "flare": (21, 27),
    "wide": (20, math.inf),
}
RISES = {Rise.LOW: (7, 9.5), Rise.MID: (8.5, 11), Rise.HIGH: (10.5, 12), Rise.NATURAL: (12, 14)}
HIPS = (900, 940, 980, 1020)


def ordinary(hip: int) -> Measurements:
    """Return an invented body of ordinary proportions: knee and heel grow with the hip."""
    return wearer(
        hip_girth=hip, waist_girth=hip - 220, knee_girth=0.38 * hip, heel_girth=250 + 0.07 * hip,
        calf_girth=0.37 * hip,
    )  # fmt: skip


def hem_of(style: Style, body: Measurements) -> float:
    block = block_for(body, style, Cloth(stretch=style.least_stretch))
    return leg_girth(block, block.leg.hem_height.mm + 0.01)


@pytest.mark.parametrize("hip", HIPS)
@pytest.mark.parametrize("name", OPENINGS)
def test_the_hem_opening_is_one_that_is_sold_under_this_name(name: str, hip: int) -> None:
    least, most = OPENINGS[name]
    hem = hem_of(find_style(name), ordinary(hip)) / INCH
    assert least - 1 <= hem <= most + 1


def test_a_tapered_leg_is_one_published_pair() -> None:
    # Tag 32 of that pair, waist 34 in closed: a hip of some 39 in.
    style, body = find_style("tapered"), ordinary(990)
    block = block_for(body, style, Cloth())
    assert leg_girth(block, block.levels.knee.mm) == pytest.approx(17.5 * INCH, abs=0.5 * INCH)
    assert hem_of(style, body) == pytest.approx(15 * INCH, abs=0.5 * INCH)


@pytest.mark.parametrize("hip", HIPS)
def test_on_one_body_each_style_is_wider_than_the_one_before(hip: int) -> None:
    names = ["skinny", "slim", "tapered", "straight", "bootcut", "wide", "flare"]
    hems = [hem_of(find_style(name), ordinary(hip)) for name in names]
    assert hems == sorted(hems)
    knees = {name: leg_girth(block_for(ordinary(hip), find_style(name), Cloth()), 430) for name in names}
    assert knees["skinny"] < knees["slim"] < knees["tapered"] <= knees["straight"] < knees["wide"]


@pytest.mark.parametrize("rise", Rise)
@pytest.mark.parametrize("crotch", [700, 730])
def test_a_rise_lies_in_its_published_class(rise: Rise, crotch: float) -> None:
    block = block_for(wearer(total_crotch_length=crotch), find_style("straight"), Cloth())
    least, most = RISES[rise]
    front = front_at(block.front, rise.below_waist(block.body)).crotch.length / INCH
    assert least - 0.5 <= front <= most + 0.5


def test_the_catalogue_holds_every_leg_that_the_trade_names() -> None:
    assert set(catalogue_names()) >= {*OPENINGS, "tapered", "cropped", "shorts"}
