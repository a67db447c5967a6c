"""The people of a survey of real bodies, and their blocks, each drafted once a run.

Source: 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), Natick technical report TR-15/007,
public domain. The survey's file lies beside the project, not in it; without it what needs it is skipped.
"""

from __future__ import annotations

import csv
import os
from functools import cache
from pathlib import Path

import pytest

from drafting import Block, DraftRefused, Measurements, draft_block

SURVEY = Path(__file__).parents[3] / "shared" / "data" / "bodies" / "army-2012.csv"
STEP = 1 if os.environ.get("JEANSBLOCK_WHOLE_SURVEY") else 9
"""Every ninth person is drafted, all of them when JEANSBLOCK_WHOLE_SURVEY is set."""
COLUMNS = {
    key: key
    for key in (
        "stature", "waist_girth", "hip_girth", "waist_height", "hip_height", "inside_leg_height",
        "knee_height", "thigh_girth", "calf_girth", "ankle_girth", "heel_girth", "total_crotch_length",
        "back_crotch_length",
    )
} | {"lower_thigh_girth": "knee_girth"}  # fmt: skip
"""The survey's columns and what they are called here; it has no girth at the kneecap, only just above."""

without_survey = pytest.mark.skipif(not SURVEY.exists(), reason="the survey's file is not beside the project")


@cache
def everyone() -> list[dict[str, str]]:
    """Return the cells of everybody by column, mm / 10."""
    with SURVEY.open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


def rows() -> list[dict[str, str]]:
    """Return those who are drafted."""
    return everyone()[::STEP]


def body_of(row: dict[str, str]) -> Measurements:
    """Return what was measured of one person."""
    return Measurements(**{key: float(row[column]) * 10 for column, key in COLUMNS.items()})


@cache
def block_of(body: Measurements) -> Block | None:
    """Return the block of one person; None where the draft is refused."""
    try:
        return draft_block(body)
    except DraftRefused:
        return None
