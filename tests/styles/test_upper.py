"""The top of the jeans on bodies that ask much of it: yokes of a wide drop, bands above the waist."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.body.measurements import Measurements
from drafting.pieces.pieces import Notch
from outputs.reading.style_file import find_style
from styles.choice.style import STRAIGHT, BackCut, Band, Rise
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth
from styles.making.jeans import Jeans, make_jeans
from styles.top.upper import back_top
from styles.top.worn_level import girth_at

CURVED = Measurements(waist_girth=912, hip_girth=1374, inside_leg_height=896, body_rise=320)
"""A third less waist than hip: two darts of 28 mm in each back."""
SHORT_AND_CURVED = Measurements(waist_girth=1034, hip_girth=1432, inside_leg_height=700, body_rise=255)


@pytest.mark.parametrize("body", [CURVED, SHORT_AND_CURVED])
def test_a_yoke_that_takes_in_much_is_cut_deeper_and_stays_whole(body: Measurements) -> None:
    # Common practice, no source: a dart wider than half the yoke's depth cannot be closed in it.
    style = replace(STRAIGHT, rise=Rise.NATURAL, band=Band.STRAIGHT)
    block = block_for(body, style, Cloth())
    jeans = make_jeans(block, style)
    top = back_top(block.halves[0].back, jeans.style)
    assert not jeans.faults
    assert all(check.passes for check in (*jeans.seams, *jeans.corners))
    # where the fullness of an edge changes the last millimetres stay
    assert top.yoke.waist.length == pytest.approx(block.halves[0].back.waist_length, abs=3)
    depth = (top.yoke.centre.length + top.yoke.side.length) / 2
    assert depth > (style.yoke_centre + style.yoke_side) / 2 + 20
    assert top.yoke.lower.length - top.yoke.waist.length < depth


@pytest.mark.parametrize(
    ("waist", "hip", "rise", "band"),
    [(766, 895, 228, Band.STRAIGHT), (818, 1111, 230, Band.SHAPED), (1042, 1472, 345, Band.SHAPED)],
)
def test_at_the_waist_the_side_runs_on_over_the_yoke_seam(
    waist: int, hip: int, rise: int, band: Band
) -> None:
    # Bodies whose yokes were once leant against their back legs until the waist was long enough.
    body = Measurements(waist_girth=waist, hip_girth=hip, inside_leg_height=800, body_rise=rise)
    style = replace(STRAIGHT, rise=Rise.NATURAL, band=band)
    jeans = make_jeans(block_for(body, style, Cloth()), style)
    assert [corner.name for corner in jeans.corners if not corner.passes] == []


def test_an_ordinary_yoke_keeps_the_depth_of_its_style() -> None:
    body = Measurements(waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=265)
    style = replace(STRAIGHT, below_waist=0, band=Band.STRAIGHT)
    top = back_top(block_for(body, style, Cloth()).halves[0].back, style)
    assert top.yoke.centre.length == pytest.approx(65)
    assert top.yoke.side.length == pytest.approx(35)


@pytest.mark.parametrize("band", Band)
@pytest.mark.parametrize("above", [5, 25, 45])
def test_above_the_waist_a_band_is_no_smaller_than_the_girth_there(band: Band, above: float) -> None:
    body = Measurements(waist_girth=1090, hip_girth=1439, inside_leg_height=800, body_rise=230)
    style = replace(STRAIGHT, below_waist=-above, band=band)
    block = block_for(body, style, Cloth())
    girth = girth_at(block.body, block.levels.waist.mm + above)
    assert girth.mm == pytest.approx(1090 + above / 2)
    assert make_jeans(block, style).band_length >= girth.mm


@pytest.mark.parametrize("band", Band)
@pytest.mark.parametrize("above", [25, 45])
def test_above_the_waist_a_band_has_the_room_of_the_waist_and_not_twice_what_the_body_widens(
    band: Band, above: float
) -> None:
    body = Measurements(waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=265)
    style = replace(STRAIGHT, below_waist=-above, band=band)
    block = block_for(body, style, Cloth())
    # The body widens by half of what lies above; the bends of the side seams take up to 5 of the ease.
    room = make_jeans(block, style).band_length - (760 + above / 2)
    assert block.ease.waist - 5 <= room <= block.ease.waist + 1


@pytest.mark.parametrize("back", BackCut)
@pytest.mark.parametrize("band", Band)
@pytest.mark.parametrize("waist", [760, 900, 960])
def test_a_band_that_does_not_stretch_goes_round_the_body_although_the_hip_gives(
    waist: int, band: Band, back: BackCut
) -> None:
    cloth = Cloth(stretch=40)
    style = replace(find_style("skinny"), rise=Rise.LOW, band=band, back=back)
    body = Measurements(waist_girth=waist, hip_girth=980, inside_leg_height=780, body_rise=265)
    block = block_for(body, style, cloth)
    jeans = make_jeans(block, style, cloth=cloth)
    girth = girth_at(block.body, block.levels.waist.mm - jeans.style.below_waist)
    has_dart = back is BackCut.YOKE or any(notch.name == "inner dart leg" for notch in _notches(jeans))
    assert jeans.band_length >= girth.mm - (0 if has_dart else 16)
    assert all(check.passes for check in (*jeans.seams, *jeans.corners))


def _notches(jeans: Jeans) -> list[Notch]:
    return [notch for edge in jeans.pattern.piece("back leg").edges for notch in edge.notches]
