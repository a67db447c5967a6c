"""The draft as instructions for ruler and pencil."""

from __future__ import annotations

import pytest
from hypothesis import given

from drafting import draft_block
from drafting.block.leg_shape import LegCut
from drafting.block.step_record import Stage
from drafting.body.measurements import Measurements
from drafting.lesson.hand_draft import How, hand_draft
from tests.strategies import bodies, examples
from tests.wearers import wearer

BLOCK = draft_block(wearer(total_crotch_length=700))
DRAFT = hand_draft(BLOCK.halves[0])


@given(bodies())
@examples(25)
def test_no_body_needs_a_point_before_it_stands(body: Measurements) -> None:
    for half in draft_block(body).halves:
        stands = {"floor"}
        for step in hand_draft(half).instructions:
            assert set(step.start) <= stands, f"{step.label} {step.name}"
            stands.add(step.label)


def test_a_point_is_where_its_instruction_leads() -> None:
    at = {step.label: step.at for step in DRAFT.instructions}
    for step in DRAFT.instructions:
        start = at.get(step.start[0])
        if step.how is How.OFFSET:
            assert start and step.offset and step.at and ((start + step.offset) - step.at).length < 1e-9
        if step.how is How.RULED and start:
            assert step.direction and step.at
            assert ((start + step.direction * step.result) - step.at).length < 1e-9
        if step.how is How.HEIGHT:
            low, end = at[step.start[2]], at[step.start[1]]
            assert start and low and end and step.at
            assert abs(step.at.y - low.y - step.result) < 1e-9
            assert abs((end - start).cross(step.at - start)) < 1e-6


def test_every_line_ends_at_its_points_and_every_curve_has_its_guides() -> None:
    at = {step.label: step.at for step in DRAFT.instructions}
    curves = 0
    for step in DRAFT.instructions:
        if step.curve:
            ends = [step.curve.start, step.curve.end]
            ends += [] if step.how is How.STRAIGHT else [step.curve.c1, step.curve.c2]
            curves += step.how is How.CURVE
            for label, end in zip(step.start, ends, strict=True):
                place = at[label]
                assert place is not None and (place - end).length < 1e-5
    assert curves >= 9


def test_both_crotch_curves_say_how_far_their_guides_lie_on_the_way_to_the_corner() -> None:
    # the shares that the proportions give: 0.70 in front
    shares = [s.share for s in DRAFT.instructions if s.name == "guide, crotch seam" and s.panel == "front"]
    assert [round(share, 6) for share in shares if share] == [0.7, 0.7]


@pytest.mark.parametrize("cut", [LegCut(hem_of_hip=0.6), LegCut(hem_above_knee=0.5)], ids=["flare", "shorts"])
def test_flares_and_shorts_are_drawn_whole(cut: LegCut) -> None:
    half = draft_block(wearer(), cut=cut).halves[0]
    steps = hand_draft(half).instructions
    at = {step.label: step.at for step in steps}
    for panel in (half.front, half.back):
        edges = [*panel.waist, panel.side, panel.lower.inseam, panel.lower.crotch]
        drawn = [step.curve for step in steps if step.panel == panel.name and step.curve]
        assert all(curve in drawn for edge in edges for curve in edge.curves)
    for step in steps:
        ends = (step.curve.start, step.curve.end) if step.curve else ()
        for label, end in zip(step.start, ends, strict=False):
            place = at[label]
            assert place is not None and (place - end).length < 1e-5


def test_the_second_half_goes_on_counting() -> None:
    again = hand_draft(BLOCK.halves[0], first=int(DRAFT.instructions[-1].label) + 1)
    assert int(again.instructions[0].label) == int(DRAFT.instructions[-1].label) + 1


def test_stages_follow_each_other() -> None:
    stages = [list(Stage).index(step.stage) for step in DRAFT.instructions]
    assert stages == sorted(stages)
