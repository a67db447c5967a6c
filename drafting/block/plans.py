"""From body, ease and proportions to the amounts of the front and the back panel."""

from __future__ import annotations

import math
from typing import Any

from drafting.base.formula import Length, Reason, largest, mm, named
from drafting.base.proportions import Proportions
from drafting.block.leg_shape import LegShape
from drafting.block.means import CENTRE_BACK, CENTRE_FRONT, Fit
from drafting.block.panel import Levels, PanelPlan
from drafting.block.shares import Shares, dart_length
from drafting.body.body import Body

_ONE_BEND_MARGIN = 0.15
"""The waist line's chord keeps this share of the turn between its ends off either end (common practice)."""

_SIDE_BULGE = 0.24
"""Added to the side seam's handle at the hip when the thigh needs all of it: the curve keeps one bend (own
trial)."""


def _one_bend(rise: float, width: float, start: float, end: float) -> float:
    """Return the rise of a waist line over `width` kept between its end slopes, so that it bends one way.

    A chord too near one end's slope would put all of the bend at the other end, which shows as a point.
    """
    low, high = sorted((start, end))
    margin = _ONE_BEND_MARGIN * (high - low)
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


def front_plan(
    body: Body, levels: Levels, leg: LegShape, shares: Shares, p: Proportions, fit: Fit
) -> PanelPlan:
    """Return the amounts of the front."""
    height = (levels.waist - levels.hip).mm
    in_at_waist = shares.suppression.centre_front
    wanted = -p.front_drop + fit.amount(CENTRE_FRONT) + p.full_front_rise * max(-in_at_waist, 0.0)
    side = shares.suppression.front_side / height
    rise = _one_bend(-wanted, shares.front_waist, -in_at_waist / height, _waist_slope(side, p))
    proportion = body["hip_girth"] / p.front_fork_divisor - mm(p.front_fork_less)
    fork = _fork(proportion, fit.front_fork, "front fork")
    return PanelPlan(
        name="front",
        hip=shares.front_hip,
        fork=fork,
        drop=mm(0),
        lean=math.atan(in_at_waist / (height - rise)),
        top=named("centre front above the waist level", -rise, Reason.FRONT_WAIST),
        curve_height=_curve_height(body, fork, p.front_curve_divisor, p.front_curve_of_fork, p),
        curve_handle=p.front_curve_handle,
        crease=mm(0),
        knee=leg.knee / 2 - mm(p.knee_balance),
        hem=leg.hem / 2 - mm(p.knee_balance),
        hollow=p.front_inseam_hollow,
        side_lean=lean_at_hip(side * height, height),
        **_alike(body, leg, p, fit),
    )


def back_plan(
    body: Body, levels: Levels, leg: LegShape, shares: Shares, p: Proportions, fit: Fit
) -> PanelPlan:
    """Return the amounts of the back; the length of its inseam follows from the front's."""
    height = (levels.waist - levels.hip).mm
    wanted = p.back_raise + fit.amount(CENTRE_BACK)
    fold = shares.suppression.dart / dart_length(levels.waist - levels.hip, p).mm
    lift = fold * shares.back_waist / 2 - p.back_side_drop
    side = shares.suppression.back_side / height
    end = _waist_slope(side, p) + fold
    rise = _one_bend(lift - wanted, shares.back_waist, -math.tan(shares.lean), end)
    proportion = body["hip_girth"] / p.back_fork_divisor - mm(p.back_fork_less)
    fork = _fork(proportion, fit.back_fork, "back fork")
    return PanelPlan(
        name="back",
        hip=shares.back_hip,
        fork=fork,
        drop=None,
        lean=shares.lean,
        top=named("centre back above the waist level", lift - rise, Reason.BACK_WAIST),
        curve_height=_curve_height(body, fork, p.back_curve_divisor, p.back_curve_of_fork, p),
        curve_handle=p.back_curve_handle,
        crease=mm(p.back_crease_shift),
        knee=leg.knee / 2 + mm(p.knee_balance),
        hem=leg.hem / 2 + mm(p.knee_balance),
        hollow=p.back_inseam_hollow,
        side_lean=lean_at_hip(side * height, height),
        **_alike(body, leg, p, fit),
    )


def _alike(body: Body, leg: LegShape, p: Proportions, fit: Fit) -> dict[str, Any]:
    """Return the amounts that front and back have in common."""
    narrow = min(leg.knee.mm / body["hip_girth"].mm / p.knee_hugs_from, 1.0) ** 4
    return {
        "inseam_handle": p.inseam_handle,
        "even_turn": p.inseam_even_turn,
        "hollow_turn": math.radians(p.inseam_fork_turn),
        "side_handle": p.side_hip_handle + _SIDE_BULGE * fit.side_bulge,
        "knee_handle": p.side_knee_handle * narrow,
        "side_turn": p.side_waist_turn,
    }


def _fork(proportion: Length, fitted: float, name: str) -> Length:
    more = named(f"added to the {name} for the fit", fitted, Reason.CROTCH_AND_THIGH)
    return (proportion + more if fitted else proportion).called(name)


def _curve_height(body: Body, fork: Length, divisor: float, of_fork: float, p: Proportions) -> Length:
    """Return how high above crotch level a crotch curve starts: below the waist, however wide the fork."""
    depth = body["crotch_depth"]
    height = largest(depth / divisor, fork * of_fork)
    for highest in (depth * p.curve_highest, fork * p.curve_highest_of_fork):
        if height.mm > highest.mm:
            height = highest
    return height
