"""The table of relations on one invented, ordinary body, all of whose measurements are known."""

from __future__ import annotations

import pytest

from drafting.body.relation import Relation
from drafting.body.relations import RELATIONS

SIDED = {"inside_leg_height": 780, "outside_leg_length": 1055, "hip_height": 845, "thigh_girth": 580}
ORDINARY = {
    "stature": 1680, "waist_girth": 760, "top_hip_girth": 890, "hip_girth": 980, "front_waist_arc": 390,
    "front_hip_arc": 480, "half_hip_arc": 490, "left.half_hip_arc": 490, "right.half_hip_arc": 490,
    "waist_height": 1035, "body_rise": 275, "waist_to_hip": 200, "waist_to_top_hip": 100, "knee_height": 450,
    "calf_height": 330, "mid_thigh_girth": 500, "knee_girth": 380, "calf_girth": 365, "ankle_girth": 220,
    "heel_girth": 320, "total_crotch_length": 700, "front_crotch_length": 310, "back_crotch_length": 390,
    **SIDED, **{f"{side}.{key}": mm for key, mm in SIDED.items() for side in ("left", "right")},
}  # fmt: skip


@pytest.mark.parametrize("row", RELATIONS, ids=lambda row: f"{row.key} by {' and '.join(row.given)}")
def test_what_is_usual_is_possible_and_holds_an_ordinary_body(row: Relation) -> None:
    given = [ORDINARY[key] for key in row.given]
    usual, possible = row.usual(*given), row.possible(*given)
    assert possible.low <= usual.low < ORDINARY[row.key] < usual.high <= possible.high
    # room on either side: an ordinary body is not at the edge of what is remarked upon
    room = min(ORDINARY[row.key] - usual.low, usual.high - ORDINARY[row.key]) / (usual.high - usual.low)
    assert room > 0.1
