"""Each constant of the proportions is found on the draft with ruler and set square, and moves what it says.

The wearer's numbers are round: crotch depth 265 + 5 = 270, waist height 780 + 265 - 20 = 1025, hip level a
third of the depth above the crotch line. What is read is the constant itself, so the numbers are those of the
tables in `drafting.base.construction_proportions`, where their sources stand: read once from the default
draft, and once from a draft with another value. Where another rule would take over, values in `beside` put it
out of the way.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields
from typing import Any

import pytest

from drafting import Block, Ease, LegCut, Proportions, draft_block
from drafting.block.shares import dart_count, dart_length, seat_lean
from drafting.block.suppression import in_dart
from drafting.geometry.curves import Cubic
from drafting.geometry.points import Point, meeting
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


def trunk(block: Block) -> float:
    """Return how much longer the trunk is than 0.19 of the hip and 22."""
    return block.levels.waist.mm - 780 - 0.19 * block.body["hip_girth"].mm - 22


def wide_enough(take: Callable[[float], bool]) -> float:
    """Return the first of the tenths of a millimetre for which something is so."""
    return next(tenths / 10 for tenths in range(1, 1000) if take(tenths / 10))


def dart_least(block: Block) -> float:
    """Return the narrowest dart: the less there is to share, the narrower."""
    least = block.proportions.dart_least
    return min(dart for part in range(20000) if (dart := in_dart(part / 1000, least)) > 0)


def side_drop(block: Block) -> float:
    """Return the drop where the centre back asks for more than its waist line can bend (see `beside`).

    Its chord then keeps 25 % of the turn between its ends, and the centre back hangs down from the side.
    """
    shares, way = block.shares, block.levels.waist.mm - block.levels.hip.mm
    fold = shares.suppression.dart / dart(block)
    side = shares.suppression.back_side / way
    low, high = -math.tan(shares.lean), fold + (side if side < 0 else 1.35 * side)
    rise = shares.back_waist * (low + 0.25 * (high - low))
    top = back(block)["centre at the waist"].y - block.levels.waist.mm
    return fold * shares.back_waist / 2 - rise - top - longer(block)


def longer(block: Block) -> float:
    """Return how much further the back's side seam runs in from hip to knee, as a length on the slant."""
    way = block.levels.hip.mm - block.levels.knee.mm
    front, back = (
        (panel.points()["hip at the side"] - panel.points()["knee at the side"]).x
        for panel in (block.front, block.back)
    )
    return (back**2 - front**2) / (2 * way)


def leaves_hip(block: Block) -> float:
    """Return the angle at which the side seam leaves the hip, as a share of that of its chord."""
    _, thigh = side(block)
    chord, leave = thigh.end - thigh.start, thigh.direction(0)
    return math.atan2(leave.x, -leave.y) / math.atan2(chord.x, -chord.y)


def fork_turn(block: Block) -> float:
    """Return how much less than square the back's crotch seam meets its inseam, degrees."""
    crotch, inseam = block.back.lower.crotch, block.back.lower.inseam.reversed()
    return 90 - abs(math.degrees(crotch.direction(0).angle_to(inseam.direction(0))))


def upper_inseam(block: Block, panel: str) -> Cubic:
    curve: Cubic = getattr(block, panel).lower.inseam.curves[-1]
    return curve


def even_turn(block: Block) -> float:
    at_knee, at_fork = turns(upper_inseam(block, "front"))
    return at_fork / at_knee


def side(block: Block) -> tuple[Cubic, Cubic]:
    """Return the front's side seam from waist to hip and from hip to knee."""
    upper, thigh, *_ = block.front.side.curves
    return upper, thigh


def waist_turn(block: Block) -> float:
    """Return the turn of the side seam from waist to hip as a multiple of that from its chord."""
    upper, thigh = side(block)
    chord, leave = upper.end - upper.start, thigh.direction(0)
    return upper.direction(0).angle_to(leave) / chord.angle_to(leave)


def knee_handle(block: Block) -> float:
    _, thigh = side(block)
    return (thigh.end - thigh.c2).length / (thigh.start.y - thigh.end.y)


def dart(block: Block) -> float:
    return dart_length(block.levels.waist - block.levels.hip, block.proportions).mm


HIGH = {"hip_girth": 1040}
"""A hip for which no proportion is brought into its usual range."""

CASES: dict[str, Case] = {
    "seated_more_than_standing": Case(20, lambda b: 780 + 265 - b.levels.waist.mm),
    "depth_over_seated_rise": Case(5, lambda b: depth(b) - 265),
    "depth_over_standing_rise": Case(
        23, lambda b: depth(b) - 208.2, {"body_rise": None, "waist_height": 988.2}, {"trunk_in_depth": 0}
    ),
    "depth_least": Case(8, lambda b: depth(b) - 245, {"body_rise": 236, "waist_height": 1025}),
    "hip_level_divisor": Case(3, lambda b: 270 / (b.levels.hip.mm - b.levels.crotch.mm)),
    "knee_over_mid_inseam": Case(50, lambda b: b.levels.knee.mm - 780 / 2),
    "trunk_usual": Case(
        22,
        lambda b: 245 - 0.19 * 980 - (980 / 8 + 15 - back(b)["fork"].x) / 0.23,
        beside={"trunk_of_hip": 0.19},
    ),
    "trunk_of_hip": Case(0.19, lambda b: (245 - 22 - (980 / 8 + 15 - back(b)["fork"].x) / 0.23) / 980),
    "trunk_in_depth": Case(
        0.17, lambda b: (23 - depth(b) + 228.2) / 20, {"body_rise": None, "waist_height": 1008.2}
    ),
    "trunk_in_depth_most": Case(
        6.5, lambda b: 23 - depth(b) + 268.2, {"body_rise": None, "waist_height": 1048.2}
    ),
    "trunk_in_raise": Case(
        0.48, lambda b: (42 - back(b)["centre at the waist"].y + b.levels.waist.mm) / trunk(b), HIGH
    ),
    "trunk_in_back_fork": Case(0.23, lambda b: (980 / 8 + 15 - back(b)["fork"].x) / trunk(b)),
    "trunk_in_front_fork": Case(0.12, lambda b: (1040 / 16 - 6 - front(b)["fork"].x) / trunk(b), HIGH),
    "hip_balance": Case(5, lambda b: (b.back.lower.plan.hip.mm - b.front.lower.plan.hip.mm) / 2),
    "front_fork_divisor": Case(16, lambda b: 1040 / (front(b)["fork"].x + 0.12 * trunk(b) + 6), HIGH),
    "front_fork_less": Case(6, lambda b: 1040 / 16 - 0.12 * trunk(b) - front(b)["fork"].x, HIGH),
    "back_fork_divisor": Case(8, lambda b: 980 / (back(b)["fork"].x + 0.23 * trunk(b) - 15)),
    "back_fork_more": Case(15, lambda b: back(b)["fork"].x + 0.23 * trunk(b) - 980 / 8),
    "inseam_ease": Case(4, lambda b: b.front.lower.inseam.length - b.back.lower.inseam.length),
    "knee_balance": Case(
        12.7, lambda b: (b.back.lower.width(500) - b.front.lower.width(500)) / 2, {"knee_height": 500}
    ),
    "back_crease_shift": Case(
        4.5, lambda b: -back(b)["crease"].x - (-back(b)["hip at the side"].x - back(b)["fork"].x) / 2
    ),
    "front_drop": Case(6.5, lambda b: b.levels.waist.mm - front(b)["centre at the waist"].y),
    "full_front_rise": Case(
        0.5,
        lambda b: (
            (front(b)["centre at the waist"].y - b.levels.waist.mm + 6.5) / front(b)["centre at the waist"].x
        ),
        {"waist_girth": 960},
    ),
    "back_lean": Case(12, lambda b: math.degrees(seat_lean(130, 170, 0, b.proportions))),
    "back_lean_least": Case(6, lambda b: math.degrees(lean(b)), {"waist_girth": 1010}),
    "back_lean_most": Case(15.5, lambda b: math.degrees(seat_lean(130, 170, 0.2, b.proportions))),
    "lean_share": Case(0.5, lambda b: 170 * math.tan(seat_lean(60, 170, 0, b.proportions)) / 60),
    "lean_share_most": Case(0.585, lambda b: 170 * math.tan(seat_lean(70, 170, 0.2, b.proportions)) / 70),
    "lean_full": Case(25, lambda b: 170 * math.tan(seat_lean(0, 170, 0.2, b.proportions))),
    "lean_full_share": Case(
        0.09, lambda b: (170 * math.tan(seat_lean(20, 170, 0.3, b.proportions)) - 25) / 20
    ),
    "back_raise": Case(
        42, lambda b: back(b)["centre at the waist"].y - b.levels.waist.mm + 0.48 * trunk(b), HIGH
    ),
    "back_side_drop": Case(-1.4, side_drop, {"waist_girth": 980}),
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
    "front_curve_handle": Case(0.7, lambda b: reach(b.front.lower.crotch.curves[0])),
    "back_curve_handle": Case(0.74, lambda b: reach(b.back.lower.crotch.curves[0])),
    "front_inseam_hollow": Case(6.5, lambda b: hollow(upper_inseam(b, "front"))),
    "back_inseam_hollow": Case(
        10, lambda b: hollow(upper_inseam(b, "back")), beside={"inseam_even_turn": 0.05}
    ),
    "inseam_handle": Case(0.75, lambda b: reach(upper_inseam(b, "back"))),
    "inseam_even_turn": Case(0.4, even_turn, beside={"front_inseam_hollow": 0.1}),
    "inseam_fork_turn": Case(
        7, lambda b: turns(upper_inseam(b, "front"))[1], beside={"front_inseam_hollow": 40}
    ),
    "fork_turn": Case(6, fork_turn),
    "side_hip_turn": Case(0.6, leaves_hip),
    "side_waist_turn": Case(1.5, waist_turn),
    "side_hip_handle": Case(
        0.24, lambda b: (side(b)[1].c1 - side(b)[1].start).length / (side(b)[1].start.y - side(b)[1].end.y)
    ),
    "side_knee_handle": Case(0.225, knee_handle),
    "knee_hugs_from": Case(
        0.46, lambda b: 0.4 / (knee_handle(b) / 0.225) ** 0.25, cut=LegCut(knee_of_hip=0.4, hem_of_hip=0.4)
    ),
    "dart_length_share": Case(0.5, lambda b: dart(b) / 160, {"waist_to_hip": 160}),
    "dart_longest": Case(90, dart, {"waist_to_hip": 220}),
    "dart_shortest": Case(65, dart, {"waist_to_hip": 100}),
    "dart_clear_of_hip": Case(0.85, lambda b: dart(b) / 72, {"waist_to_hip": 72}),
    "dart_widest": Case(32, lambda b: wide_enough(lambda mm: dart_count(mm, b.proportions) == 2) - 0.1),
    "dart_least": Case(2.5, dart_least),
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
