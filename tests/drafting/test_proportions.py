"""Each constant of the proportions is found on the draft with ruler and set square, and moves what it says.

The wearer's numbers are round: crotch depth 265 + 5 = 270, waist height 780 + 265 - 20 = 1025, hip level a
third of the depth above the crotch line. What is read is the constant itself, so the numbers are those of the
tables in `drafting.base.proportions`, where their sources stand: read once from the default draft, and once
from a draft with another value. Where another rule would take over, values in `beside` put it out of the way.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields
from typing import Any

import pytest

from drafting import Block, Ease, LegCut, Proportions, draft_block
from drafting.block.means import Fit
from drafting.block.shares import dart_count, dart_length, share_widths
from drafting.block.suppression import Sinks, share
from drafting.geometry.curves import Cubic
from drafting.geometry.points import Point, Vector, meeting
from tests.wearers import wearer

Read = Callable[[Block], float]


@dataclass(frozen=True)
class Case:
    """Where a constant is read: from which wearer, with which other constants."""

    value: float
    read: Read
    body: Mapping[str, Any] = field(default_factory=dict)
    beside: Mapping[str, float] = field(default_factory=dict)
    cut: LegCut = field(default_factory=LegCut)


def front(block: Block) -> Mapping[str, Point]:
    return block.front.points()


def back(block: Block) -> Mapping[str, Point]:
    return block.back.points()


def depth(block: Block) -> float:
    return block.levels.waist.mm - block.levels.crotch.mm


def hips_less_waist(block: Block) -> float:
    """Return by how much a half of the hip is larger than a half of the waist, both with their ease."""
    return (block.body["hip_girth"].mm + 30 - block.body["waist_girth"].mm - 10) / 2


def back_height(block: Block) -> float:
    """Return how high the centre back would stand above hip level by the proportions."""
    return block.levels.waist.mm - block.levels.hip.mm + 28


def reach(curve: Cubic) -> float:
    """Return how far a curve's first handle reaches to the corner of its tangents, as a share."""
    corner = meeting(curve.start, curve.direction(0), curve.end, curve.direction(1))
    return (curve.c1 - curve.start).length / (corner - curve.start).length


def above_crotch(points: Mapping[str, Point]) -> float:
    return points["curve start"].y - points["crotch corner"].y


def hollow(curve: Cubic) -> float:
    """Return how far a curve lies off its chord at most."""
    chord = (curve.end - curve.start).unit
    return max(abs(chord.cross(curve.point(t / 100) - curve.start)) for t in range(101))


def turns(curve: Cubic) -> tuple[float, float]:
    """Return the angles between a curve and its chord at either end, degrees."""
    chord = curve.end - curve.start
    return math.degrees(chord.angle_to(curve.direction(0))), math.degrees(curve.direction(1).angle_to(chord))


def lean(block: Block) -> float:
    at = back(block)
    return math.atan2(-at["centre at the waist"].x, at["centre at the waist"].y - at["hip point"].y)


def owes(block: Block) -> float:
    """Return what the other seams give back where the fit leans the seat line as far as it may."""
    shares = share_widths(block.body, block.ease, block.proportions, Fit(back=1))
    return (back_height(block) + 38) * math.tan(shares.lean) - hips_less_waist(block)


def wide_enough(take: Callable[[float], bool]) -> float:
    """Return the first of the tenths of a millimetre for which something is so."""
    return next(tenths / 10 for tenths in range(1, 1000) if take(tenths / 10))


def dart_least(block: Block) -> float:
    """Return the narrowest dart: the less there is to share, the narrower."""
    sinks = Sinks.over(180, 90)
    return min(
        found
        for tenths in range(-2000, 1200)
        if (found := share(tenths / 10, sinks, dart_least=block.proportions.dart_least).dart) > 0
    )


def side_drop(block: Block) -> float:
    """Return the drop where the centre back asks for more than its waist line can bend (see `beside`).

    Its chord then keeps 15 % of the turn between its ends, and the centre back hangs down from the side.
    """
    shares, way = block.shares, block.levels.waist.mm - block.levels.hip.mm
    fold = shares.suppression.dart / dart(block)
    out = shares.suppression.back_side / way  # it swings out a little, so it runs straight on from the hip
    low, high = -math.tan(shares.lean), out + fold
    rise = shares.back_waist * (low + 0.15 * (high - low))
    top = back(block)["centre at the waist"].y - block.levels.waist.mm
    return fold * shares.back_waist / 2 - rise - top


def upper_inseam(block: Block, panel: str) -> Cubic:
    curve: Cubic = getattr(block, panel).panel.inseam.curves[-1]
    return curve


def even_turn(block: Block) -> float:
    at_knee, at_fork = turns(upper_inseam(block, "front"))
    return at_fork / at_knee


def side(block: Block) -> tuple[Cubic, Cubic]:
    """Return the front's side seam from waist to hip and from hip to knee."""
    upper, thigh, *_ = block.front.side.curves
    return upper, thigh


def waist_turn(block: Block) -> float:
    upper, _ = side(block)
    plumb, chord = Vector(0, -1), upper.end - upper.start
    return upper.direction(0).angle_to(plumb) / chord.angle_to(plumb)


def knee_handle(block: Block) -> float:
    _, thigh = side(block)
    return (thigh.end - thigh.c2).length / (thigh.start.y - thigh.end.y)


def dart(block: Block) -> float:
    return dart_length(block.levels.waist - block.levels.hip, block.proportions).mm


CASES: dict[str, Case] = {
    "seated_more_than_standing": Case(20, lambda b: 780 + 265 - b.levels.waist.mm),
    "depth_over_seated_rise": Case(5, lambda b: depth(b) - 265),
    "depth_over_standing_rise": Case(
        22.5, lambda b: depth(b) - 250, {"body_rise": None, "waist_height": 1030}
    ),
    "depth_least": Case(8, lambda b: depth(b) - 245, {"body_rise": 236, "waist_height": 1025}),
    "hip_level_divisor": Case(3, lambda b: 270 / (b.levels.hip.mm - b.levels.crotch.mm)),
    "knee_over_mid_inseam": Case(50, lambda b: b.levels.knee.mm - 780 / 2),
    "hip_balance": Case(10, lambda b: (b.back.panel.plan.hip.mm - b.front.panel.plan.hip.mm) / 2),
    "front_fork_divisor": Case(16, lambda b: 980 / (front(b)["fork"].x + 10)),
    "front_fork_less": Case(10, lambda b: 980 / 16 - front(b)["fork"].x),
    "back_fork_divisor": Case(8, lambda b: 980 / (back(b)["fork"].x + 5)),
    "back_fork_less": Case(5, lambda b: 980 / 8 - back(b)["fork"].x),
    "inseam_ease": Case(4, lambda b: b.front.panel.inseam.length - b.back.panel.inseam.length),
    "knee_balance": Case(
        10, lambda b: (b.back.panel.width(500) - b.front.panel.width(500)) / 2, {"knee_height": 500}
    ),
    "back_crease_shift": Case(
        7, lambda b: back(b)["crease"].x + (-back(b)["hip at the side"].x - back(b)["fork"].x) / 2
    ),
    "front_drop": Case(8, lambda b: b.levels.waist.mm - front(b)["centre at the waist"].y),
    "full_front_rise": Case(
        0.5,
        lambda b: (
            (front(b)["centre at the waist"].y - b.levels.waist.mm + 8) / front(b)["centre at the waist"].x
        ),
        {"waist_girth": 1080},
    ),
    "back_lean": Case(14, lambda b: math.degrees(lean(b))),
    "back_lean_least": Case(6, lambda b: math.degrees(lean(b)), {"waist_girth": 980}),
    "lean_leaves": Case(
        15, lambda b: hips_less_waist(b) - back_height(b) * math.tan(lean(b)), {"waist_girth": 900}
    ),
    "lean_owes_most": Case(75, owes, {"waist_girth": 1060}),
    "back_raise": Case(28, lambda b: back(b)["centre at the waist"].y - b.levels.waist.mm),
    "back_side_drop": Case(14, side_drop, beside={"back_raise": 80}),
    "side_seam_back": Case(10, lambda b: b.shares.front_waist - (760 + 10) / 4),
    "front_curve_divisor": Case(3, lambda b: 270 / above_crotch(front(b))),
    "front_curve_of_fork": Case(
        1, lambda b: above_crotch(front(b)) / front(b)["fork"].x, beside={"front_curve_divisor": 9}
    ),
    "back_curve_divisor": Case(2, lambda b: 270 / above_crotch(back(b))),
    "back_curve_of_fork": Case(
        0.75, lambda b: above_crotch(back(b)) / back(b)["fork"].x, beside={"back_curve_divisor": 9}
    ),
    "curve_highest": Case(
        0.75,
        lambda b: above_crotch(front(b)) / 270,
        beside={"front_curve_divisor": 1, "curve_highest_of_fork": 99},
    ),
    "curve_highest_of_fork": Case(
        2.2, lambda b: above_crotch(front(b)) / front(b)["fork"].x, beside={"front_curve_divisor": 1}
    ),
    "front_curve_handle": Case(0.6, lambda b: reach(b.front.panel.crotch.curves[0])),
    "back_curve_handle": Case(0.77, lambda b: reach(b.back.panel.crotch.curves[0])),
    "front_inseam_hollow": Case(6.5, lambda b: hollow(upper_inseam(b, "front"))),
    "back_inseam_hollow": Case(10.5, lambda b: hollow(upper_inseam(b, "back"))),
    "inseam_handle": Case(0.75, lambda b: reach(upper_inseam(b, "back"))),
    "inseam_even_turn": Case(0.4, even_turn, beside={"front_inseam_hollow": 0.1}),
    "inseam_fork_turn": Case(
        8, lambda b: turns(upper_inseam(b, "front"))[1], beside={"front_inseam_hollow": 40}
    ),
    "side_waist_turn": Case(1.5, waist_turn),
    "side_hip_handle": Case(
        0.36, lambda b: (side(b)[1].c1 - side(b)[1].start).length / (side(b)[1].start.y - side(b)[1].end.y)
    ),
    "side_knee_handle": Case(0.42, knee_handle),
    "knee_hugs_from": Case(
        0.46, lambda b: 0.4 / (knee_handle(b) / 0.42) ** 0.25, cut=LegCut(knee_of_hip=0.4, hem_of_hip=0.4)
    ),
    "dart_length_share": Case(0.5, lambda b: dart(b) / 160, {"waist_to_hip": 160}),
    "dart_longest": Case(90, dart, {"waist_to_hip": 220}),
    "dart_shortest": Case(65, dart, {"waist_to_hip": 100}),
    "dart_clear_of_hip": Case(0.85, lambda b: dart(b) / 72, {"waist_to_hip": 72}),
    "dart_widest": Case(32, lambda b: wide_enough(lambda mm: dart_count(mm, b.proportions) == 2) - 0.1),
    "dart_least": Case(5, dart_least),
    "thigh_below_fork": Case(25, lambda b: b.levels.crotch.mm - b.thigh_level),
}


EASES: dict[str, Case] = {
    "waist": Case(10, lambda b: b.waist_girth - 760),
    "hip": Case(30, lambda b: b.hip_girth - 980),
    "thigh": Case(25, lambda b: b.thigh_girth - 640, {"thigh_girth": 640}),
    "knee": Case(40, lambda b: b.leg.knee.mm - 450, {"knee_girth": 450}),
    "calf": Case(
        13, lambda b: b.leg_girth(b.body["calf_height"].mm) - 440, {"calf_girth": 440, "knee_height": 450}
    ),
    "heel": Case(5, lambda b: b.leg.hem.mm - 430, {"heel_girth": 430}),
    "crotch": Case(5, lambda b: b.crotch_length - 700, {"total_crotch_length": 700}),
}


def drawn(name: str, value: float | None = None) -> Block:
    case = CASES[name]
    p = Proportions(**{**case.beside, **({} if value is None else {name: value})})
    return draft_block(wearer(**case.body), proportions=p, cut=case.cut, fitted=False)


def test_no_constant_is_left_out() -> None:
    assert [constant.name for constant in fields(Proportions)] == [*CASES]
    assert [constant.name for constant in fields(Ease)] == [*EASES]


@pytest.mark.parametrize("name", CASES)
def test_a_constant_is_what_the_draft_shows(name: str) -> None:
    assert CASES[name].read(drawn(name)) == pytest.approx(CASES[name].value, rel=6e-3)


@pytest.mark.parametrize("name", CASES)
def test_another_value_moves_what_it_says(name: str) -> None:
    other = CASES[name].value * 0.9
    assert CASES[name].read(drawn(name, other)) == pytest.approx(other, rel=6e-3)


@pytest.mark.parametrize("name", EASES)
def test_the_room_over_the_body_is_what_was_asked_for(name: str) -> None:
    case = EASES[name]
    for ease, asked in ((None, case.value), (Ease(**{name: case.value + 8}), case.value + 8)):
        block = draft_block(wearer(**case.body), ease=ease)
        assert case.read(block) == pytest.approx(asked, abs=0.05)
