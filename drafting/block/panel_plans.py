"""From body, ease and proportions to the amounts of the front and the back panel."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from drafting.base.construction_proportions import Proportions
from drafting.base.formula import Length, Reason, largest, mm, named
from drafting.block.leg_shape import LegShape
from drafting.block.means import BACK_FORK, CENTRE_BACK, CENTRE_FRONT, DEPTH, FRONT_FORK, Fit, Mean
from drafting.block.panel import Levels, PanelPlan
from drafting.block.shares import Shares, dart_length
from drafting.body.body import Body, long_trunk

_ONE_BEND_MARGIN = 0.15
"""The waist line's chord keeps this share of the turn between its ends off either end (common practice)."""

_BAND_MARGIN, _BAND_SHARE = 0.1, 0.25
"""Behind it keeps at least so much off them, as a slope, or this share of a small turn: a band worn 5 cm
lower has its edge between the same directions over a wider back, and would turn in a point (own trial)."""

_SIDE_BULGE = 0.24
"""Added to the side seam's handle at the hip when the thigh needs all of it: the curve keeps one bend (own
trial)."""


def _one_bend(rise: float, width: float, start: float, end: float, least: float = 0.0) -> float:
    """Return the rise of a waist line over `width` kept between its end slopes, so that it bends one way.

    A chord too near one end's slope would put all of the bend at the other end, which shows as a point.
    """
    low, high = sorted((start, end))
    turn = high - low
    margin = max(_ONE_BEND_MARGIN * turn, min(least, _BAND_SHARE * turn))
    return width * min(max(rise / width, low + margin), high - margin)


def _waist_slope(side: float, p: Proportions) -> float:
    """Return how the waist line rises at the side, square to a side seam that leans in by `side`.

    A seam that leans in is bowed and so steeper at the waist; one that swings out runs straight on from the
    hip.
    """
    return p.side_waist_turn * side if side > 0 else side


def lean_at_hip(side: float, height: float) -> float:
    """Return how a side seam leans at the hip, radians: plumb, or straight where the waist swings out.

    `side` is its suppression over `height`, both mm.
    """
    return max(-side, 0.0) / height


@dataclass(frozen=True)
class Amounts:
    """What a draft's means come to, as the proportions and the fit want them; mm.

    Attributes:
        front_fork: Of the front, from the plumb line of its hip point.
        back_fork: Of the back, likewise.
        raised: Height of the centre back over waist level.
        top: Height of the centre front over waist level, negative below it.
        deepened: Added to the depth of the body's crotch line.
    """

    front_fork: Length
    back_fork: Length
    raised: float
    top: float
    deepened: float


def amounts(body: Body, p: Proportions, fit: Fit) -> Amounts:
    """Return the amounts: the proportions kept within their usual ranges, then moved as the fit says."""
    hip = body["hip_girth"]
    trunk = long_trunk(body, p)

    def fork(proportion: Length, mean: Mean, thigh: float, name: str) -> Length:
        usual = mean.within(proportion.mm, hip.mm)
        added = mean.at(fit.number, usual, hip.mm) - usual
        for what, by, reason in (
            (f"kept within its usual range: {name}", usual - proportion.mm, Reason.USUAL_RANGE),
            (f"added to the {name} for the fit", added, Reason.CROTCH_AND_THIGH),
            (f"added to the {name} for the thigh", thigh, Reason.CROTCH_AND_THIGH),
        ):
            if by:
                proportion = proportion + named(what, by, reason)
        return proportion.called(name)

    front = hip / p.front_fork_divisor - mm(p.front_fork_less) - trunk * p.trunk_in_front_fork
    back = hip / p.back_fork_divisor + mm(p.back_fork_more) - trunk * p.trunk_in_back_fork
    raised = CENTRE_BACK.within(p.back_raise - p.trunk_in_raise * trunk.mm, hip.mm)
    top = CENTRE_FRONT.at(fit.number, -p.front_drop, hip.mm)
    split = min(max(top + fit.split, CENTRE_FRONT.low[-1]), CENTRE_FRONT.high[-1]) - top
    line = body["crotch_depth"].mm - body["waist_height"].mm + body["inside_leg_height"].mm
    return Amounts(
        fork(front, FRONT_FORK, fit.front_fork, "front fork"),
        fork(back, BACK_FORK, fit.back_fork, "back fork"),
        CENTRE_BACK.at(fit.number, raised, hip.mm) - split,
        top + split,
        DEPTH.at(fit.number, line, hip.mm) - line + fit.depth,
    )


def front_plan(
    body: Body, levels: Levels, leg: LegShape, shares: Shares, p: Proportions, fit: Fit, wanted: Amounts
) -> PanelPlan:
    """Return the amounts of the front."""
    height = (levels.waist - levels.hip).mm
    in_at_waist = shares.suppression.centre_front
    top = wanted.top + p.full_front_rise * max(-in_at_waist, 0.0)
    side = shares.suppression.front_side / height
    slopes = -in_at_waist / height, _waist_slope(side, p)
    rise = _one_bend(-top, shares.front_waist, *slopes)
    return PanelPlan(
        name="front",
        hip=shares.front_hip,
        fork=wanted.front_fork,
        drop=mm(0),
        lean=math.atan(in_at_waist / (height - rise)),
        top=named("centre front above the waist level", -rise, Reason.FRONT_WAIST),
        curve_height=_curve_height(body, wanted.front_fork, p.front_curve_divisor, p.front_curve_of_fork, p),
        curve_handle=p.front_curve_handle,
        crease=mm(0),
        knee=leg.knee / 2 - mm(p.knee_balance),
        hem=leg.hem / 2 - mm(p.knee_balance),
        hollow=p.front_inseam_hollow,
        side_lean=lean_at_hip(side * height, height),
        fork_turn=-math.radians(p.fork_turn),
        **_alike(leg, body, p, fit),
    )


def back_plan(
    body: Body, levels: Levels, leg: LegShape, shares: Shares, p: Proportions, fit: Fit, wanted: Amounts
) -> PanelPlan:
    """Return the amounts of the back; the length of its inseam follows from the front's."""
    height = (levels.waist - levels.hip).mm
    fold = shares.suppression.dart / dart_length(levels.waist - levels.hip, p).mm
    lift = fold * shares.back_waist / 2 - _side_drop(levels, leg, shares, p, wanted)
    side = shares.suppression.back_side / height
    end = _waist_slope(side, p) + fold
    slopes = -math.tan(shares.lean), end
    rise = _one_bend(lift - wanted.raised, shares.back_waist, *slopes, _BAND_MARGIN)
    return PanelPlan(
        name="back",
        hip=shares.back_hip,
        fork=wanted.back_fork,
        drop=None,
        lean=shares.lean,
        top=named("centre back above the waist level", lift - rise, Reason.BACK_WAIST),
        curve_height=_curve_height(body, wanted.back_fork, p.back_curve_divisor, p.back_curve_of_fork, p),
        curve_handle=p.back_curve_handle,
        crease=mm(-p.back_crease_shift),
        knee=leg.knee / 2 + mm(p.knee_balance),
        hem=leg.hem / 2 + mm(p.knee_balance),
        hollow=p.back_inseam_hollow,
        side_lean=lean_at_hip(side * height, height),
        fork_turn=math.radians(p.fork_turn),
        **_alike(leg, body, p, fit),
    )


def _side_drop(levels: Levels, leg: LegShape, shares: Shares, p: Proportions, wanted: Amounts) -> float:
    """Return how far under waist level the back's side seam ends, mm, as long as the front's.

    Below the hip the back's runs further in, and so is longer by the difference of the slants.
    """
    way = (levels.hip - leg.knee_height).mm
    front = (shares.front_hip.mm + wanted.front_fork.mm - leg.knee.mm / 2 + p.knee_balance) / 2
    back = (shares.back_hip.mm + wanted.back_fork.mm - leg.knee.mm / 2 - p.knee_balance) / 2
    return p.back_side_drop + ((back - p.back_crease_shift) ** 2 - front**2) / (2 * way)


def _alike(leg: LegShape, body: Body, p: Proportions, fit: Fit) -> dict[str, Any]:
    """Return the amounts that front and back have in common."""
    narrow = min(leg.knee.mm / body["hip_girth"].mm / p.knee_hugs_from, 1.0) ** 4
    return {
        "inseam_handle": p.inseam_handle,
        "even_turn": p.inseam_even_turn,
        "hollow_turn": math.radians(p.inseam_fork_turn),
        "side_hip_turn": p.side_hip_turn,
        "side_handle": p.side_hip_handle + _SIDE_BULGE * fit.side_bulge,
        "knee_handle": p.side_knee_handle * narrow,
        "side_turn": p.side_waist_turn,
    }


def _curve_height(body: Body, fork: Length, divisor: float, of_fork: float, p: Proportions) -> Length:
    """Return how high above crotch level a crotch curve starts: below the waist, however wide the fork."""
    depth = body["crotch_depth"]
    height = largest(depth / divisor, fork * of_fork)
    for highest in (depth * p.curve_highest, fork * p.curve_highest_of_fork):
        if height.mm > highest.mm:
            height = highest
    return height
