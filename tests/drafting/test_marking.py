"""Marking: which lengths are right, and where the first mistake lies."""

from __future__ import annotations

import pytest

from drafting import draft_block
from drafting.lesson.hand_draft import Instruction, hand_draft
from drafting.lesson.marking import Judgement, Marked, asked_for, mark_lengths, tolerance
from tests.wearers import wearer

# hip 1000, ease 30: front hip 252.5; the trunk is 10 longer than 0.19 of the hip and 22, so the front fork is
# 62.5 - 6 - 1.2 = 55.3 and the crease (252.5 - 55.3) / 2 = 98.6
DRAFTS = (hand_draft(draft_block(wearer(hip_girth=1000, body_rise=242), fitted=False).halves[0]),)
STEPS = {(s.panel, s.name): s for s in DRAFTS[0].instructions}
HIP, FORK, CREASE = (STEPS["front", name] for name in ("hip at the side", "fork level", "crease"))
CURVE = STEPS["front", "crotch seam, curved part"]
LENGTHS = {step.label: step.result for step in asked_for(DRAFTS)}


def marked(changed: dict[Instruction, float], scale: float = 1) -> dict[str, Marked]:
    lengths = LENGTHS | {step.label: mm for step, mm in changed.items()}
    return {m.step.label: m for m in mark_lengths(DRAFTS, lengths, scale)}


def test_twenty_lines_are_asked_for_in_the_order_of_the_draft() -> None:
    asked = asked_for(DRAFTS)
    assert len(asked) == 20
    order = [s.label for s in DRAFTS[0].instructions]
    assert [s.label for s in asked] == sorted((s.label for s in asked), key=order.index)
    assert {"front", "back"} == {s.panel for s in asked}
    assert any(s.curve for s in asked)


def test_right_lengths_are_right() -> None:
    assert {m.mark for m in marked({}).values()} == {Judgement.RIGHT}


@pytest.mark.parametrize(("scale", "allowed"), [(1, 1.5), (4, 3.0), (5, 3.5)])
def test_a_small_draft_may_miss_more(scale: float, allowed: float) -> None:
    # 1 mm to draw and half a millimetre of the paper to read
    assert tolerance(FORK, scale) == pytest.approx(allowed)
    assert marked({FORK: FORK.result + allowed - 0.01}, scale)[FORK.label].mark is Judgement.RIGHT
    assert marked({FORK: FORK.result + allowed + 0.01}, scale)[FORK.label].mark is Judgement.WRONG


def test_a_length_that_is_right_by_a_wrong_one_before_it_follows_from_it() -> None:
    # The fork is drawn 61.3, without its - 0.6; the crease is then (252.5 - 61.3) / 2 = 95.6.
    found = marked({FORK: 61.3, CREASE: 95.6})
    assert found[FORK.label].mark is Judgement.WRONG
    assert (found[CREASE.label].mark, found[CREASE.label].because) == (Judgement.FOLLOWS, FORK.label)


def test_a_length_that_is_wrong_by_the_wearers_own_numbers_too_is_a_mistake_of_its_own() -> None:
    found = marked({FORK: 61.3, CREASE: 110.0})
    assert [m.mark for m in (found[FORK.label], found[CREASE.label])] == [Judgement.WRONG, Judgement.WRONG]


def test_a_crotch_curve_follows_from_a_wrong_fork() -> None:
    found = marked({FORK: 61.3, CURVE: CURVE.result + 12})
    assert (found[CURVE.label].mark, found[CURVE.label].because) == (Judgement.FOLLOWS, FORK.label)


def test_a_wrong_length_later_does_not_excuse_an_earlier_one() -> None:
    found = marked({CREASE: 80.0, FORK: 70.0, HIP: 200.0})
    first = next(m for m in found.values() if m.mark is not Judgement.RIGHT)
    assert first.step is HIP and first.mark is Judgement.WRONG


@pytest.mark.parametrize(
    ("step", "length", "done", "part"),
    [
        (FORK, 61.3, "left out", "0.6"),  # hip / 16 - 0.12
        (FORK, 67.3, "added instead of taken away", "0.6"),  # hip / 16 + 0.6 - 0.12
        (HIP, 245.0, "left out", "hip ease"),  # hip / 4 - 0.5
        (CREASE, 197.2, "not divided", "front hip width − front fork"),
        (CREASE, 153.9, "added instead of taken away", "front fork"),
    ],
)
def test_a_common_slip_is_recognised(step: Instruction, length: float, done: str, part: str) -> None:
    slip = marked({step: length})[step.label].slip
    assert slip is not None
    assert (slip[0], slip[1].name or slip[1].formula()) == (done, part)


def test_a_length_that_no_slip_gives_is_not_explained() -> None:
    assert marked({FORK: 59.6})[FORK.label].slip is None


def test_a_number_without_a_step_is_an_error() -> None:
    with pytest.raises(KeyError):
        mark_lengths(DRAFTS, {"999": 10.0}, 4)
    assert mark_lengths(DRAFTS, {}, 4) == ()
