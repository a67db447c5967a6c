"""Whole jeans for the people of a survey of real bodies: what the engine draws for anybody can be sewn and
cut.

Source: 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), Natick technical report TR-15/007,
public domain. The survey's file lies beside the project, not in it; without it these tests are skipped.
Every ninth person is drafted, all of them when JEANSBLOCK_WHOLE_SURVEY is set. The tolerances are those of
the trueing: 1 mm along a seam, half a millimetre at a notch (common practice).
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from drafting.base.tolerance import NOTCH, SEAM
from drafting.pieces.allowance import AllowanceTooWide, cut_line
from styles.choice.settings import with_settings
from styles.choice.style import STRAIGHT, BackCut, Band, Fly, Rise
from styles.making.jeans import Jeans, make_jeans
from tests.outside.survey import STEP, block_of, body_of, rows, without_survey

GROUPS = 8
"""The people are drafted in so many groups, so that workers can share them."""

pytestmark = [pytest.mark.slow, without_survey]


def jeans_of_group(group: int) -> Iterator[tuple[str, Jeans]]:
    for row in rows()[group::GROUPS]:
        if block := block_of(body_of(row)):  # a refusal is counted where the blocks are tested
            yield row["id"], make_jeans(block, STRAIGHT)


def amiss(jeans: Jeans) -> list[str]:
    """Return what would keep a pair of jeans from being sewn, in words."""
    found = [f"{fault.where}: {fault.say()}" for fault in jeans.faults]
    for check in jeans.seams:
        miss = check.first_length - check.second_length - check.intended
        if not abs(miss) <= SEAM or min(check.first_length, check.second_length) <= 0:
            found.append(f"{check.name} misses by {miss:.1f}")
        found += [f"{check.name}: {n.name} misses" for n in check.notches if not abs(n.miss) <= NOTCH]
    for piece in jeans.pattern.pieces:
        try:
            cut_line(piece)
        except AllowanceTooWide as refused:
            found.append(f"{piece.name} cannot be cut: {refused}")
    return found


@pytest.mark.parametrize("group", range(GROUPS))
def test_every_seam_and_notch_meets_and_every_piece_can_be_cut(group: int) -> None:
    made = dict(jeans_of_group(group))
    assert len(made) >= 0.99 * len(rows()[group::GROUPS])
    assert {name: found for name, jeans in made.items() if (found := amiss(jeans))} == {}


DETAILS = {
    "buttons, western, rounded, turn-up": {
        "fly": Fly.BUTTONS,
        "front_pocket.kind": "western",
        "back_pocket.shape": "rounded",
        "turn_up": 45.0,
    },
    "dart, slant, cut corners": {
        "back": BackCut.DART,
        "front_pocket.kind": "slant",
        "back_pocket.shape": "cut corners",
    },
    "dart, straight band, square, turn-up": {
        "back": BackCut.DART,
        "band": Band.STRAIGHT,
        "back_pocket.shape": "square",
        "turn_up": 90.0,
        "rise": Rise.HIGH,
    },
}


@pytest.mark.parametrize("name", DETAILS)
def test_so_it_is_with_other_details_on_some_thirty_of_them(name: str) -> None:
    """Every sixteenth of them, shared out among the details."""
    found = {}
    for row in rows()[16 * list(DETAILS).index(name) :: 16 * len(DETAILS)]:
        block = block_of(body_of(row))
        assert block, row["id"]
        jeans = make_jeans(block, with_settings(STRAIGHT, DETAILS[name]))
        if wrong := amiss(jeans):
            found[row["id"]] = wrong
    assert found == {}


@pytest.mark.skipif(STEP == 1, reason="the sample is not drawn where everybody is drafted")
def test_about_five_hundred_people_are_drafted() -> None:
    assert len(rows()) >= 500
