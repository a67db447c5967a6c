"""From body, ease and proportions to the amounts of the front and the back panel."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.formula import Length, largest, mm, named
from drafting.leg_shape import LegShape
from drafting.means import CENTRE_BACK, CENTRE_FRONT, LEAN, Fit
from drafting.panel import Levels, PanelPlan
from drafting.proportions import Ease, Proportions
from drafting.suppression import Sinks, Suppression, share, share_apart

_ONE_BEND_MARGIN = 0.15
"""The waist line's chord keeps this share of the turn between its ends off either end (common practice)."""

_SIDE_BULGE = 0.24
"""Added to the side seam's handle at the hip when the thigh needs all of it (keeps the curve one bend)."""


@dataclass(frozen=True)
class Shares:
    """Front and back widths of one half of the body, ease included."""

    front_hip: Length
    back_hip: Length
    front_waist: float
    back_waist: float
    suppression: Suppression
    lean: float
    """Lean of the seat line, radians."""

    def widened(self, by: float) -> Shares:
        """Return the shares of a half whose hip is wider by `by` mm, all of it at the side seam."""
        if not by:
            return self
        more = named("this side's hip", by / 2)
        taken = replace(
            self.suppression,
            front_side=self.suppression.front_side + by / 2,
            back_side=self.suppression.back_side + by / 2,
        )
        return replace(
            self, front_hip=self.front_hip + more, back_hip=self.back_hip + more, suppression=taken
        )


def half_hip(body: Body, ease: Ease, p: Proportions) -> tuple[Length, Length]:
    """Return the hip widths of front and back: by the measured front arc, else balanced about a quarter."""
    room = named("hip ease", ease.hip)
    if arc := body.get("front_hip_arc"):
        front, back = (arc + room / 2) / 2, (body["hip_girth"] - arc + room / 2) / 2
    else:
        quarter = (body["hip_girth"] + room) / 4
        front, back = quarter - mm(p.hip_balance), quarter + mm(p.hip_balance)
    return front.called("front hip width"), back.called("back hip width")


def share_widths(body: Body, ease: Ease, p: Proportions, fit: Fit) -> Shares:
    """Return how hip and waist of one half are shared over front and back.

    The seat line leans as the proportions and the fit say, but less where waist and hip differ too little to
    take its lean up: otherwise the side seams and the centre front would have to swing out for it.
    """
    front_hip, back_hip = half_hip(body, ease, p)
    waist = (body["waist_girth"].mm + ease.waist) / 2
    height = body["waist_height"].mm - body["hip_height"].mm + p.back_raise + fit.amount(CENTRE_BACK)
    amount = front_hip.mm + back_hip.mm - waist
    least = math.radians(p.back_lean_least)
    usual = min(max(math.atan((amount - 15) / height), least), math.radians(p.back_lean))
    most = max(math.atan((amount + 75) / height), usual)
    lean = min(usual + math.radians(fit.amount(LEAN)), most)
    lean = max(lean, least)
    seat = height * math.tan(lean)
    way = body["waist_height"] - body["hip_height"]
    sinks = Sinks.over(way.mm, dart_length(way, p).mm, amount)
    if arc := body.get("front_waist_arc"):
        front_waist = arc.mm / 2 + ease.waist / 4
        front = share_apart(front_hip.mm - front_waist, sinks.front)
        back = share_apart(back_hip.mm - (waist - front_waist) - seat, sinks.back, dart_least=p.dart_least)
        (centre, front_side), (back_side, dart) = front.parts, back.parts
        taken = Suppression(centre, front_side, back_side, dart, front.rest + back.rest)
        front_waist += front.rest
    else:
        taken = share(amount - seat, sinks, dart_least=p.dart_least)
        # The lean of the seat line makes the back waist small; the side seam follows it back only so far.
        front_waist = front_hip.mm - taken.centre_front - taken.front_side
        taken = taken.towards_the_front(front_waist - waist / 2 - p.side_seam_back)
        front_waist = front_hip.mm - taken.centre_front - taken.front_side
    return Shares(front_hip, back_hip, front_waist, waist + taken.left_over - front_waist, taken, lean)


def _one_bend(rise: float, width: float, start: float, end: float) -> float:
    """Return the rise of a waist line over `width` kept between its end slopes, so that it bends one way.

    A chord too near one end's slope would put all of the bend at the other end, which shows as a point.
    """
    low, high = sorted((start, end))
    margin = _ONE_BEND_MARGIN * (high - low)
    return width * min(max(rise / width, low + margin), high - margin)


def _waist_slope(side: float) -> float:
    """Return how the waist line rises at the side, square to a side seam that leans in by `side`.

    A seam that leans in is bowed and so steeper at the waist; one that swings out runs straight on from the
    hip.
    """
    return 1.5 * side if side > 0 else side


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
    rise = _one_bend(-wanted, shares.front_waist, -in_at_waist / height, _waist_slope(side))
    fork = _fork(
        body["hip_girth"] / p.front_fork_divisor - mm(p.front_fork_less), fit.front_fork, "front fork"
    )
    return PanelPlan(
        name="front",
        hip=shares.front_hip,
        fork=fork,
        drop=mm(0),
        lean=math.atan(in_at_waist / (height - rise)),
        top=named("centre front above the waist level", -rise),
        curve_height=_curve_height(body, fork, p.front_curve_divisor, p.front_curve_of_fork, p),
        curve_handle=p.front_curve_handle,
        crease=mm(0),
        knee=leg.knee / 2 - mm(p.knee_balance),
        hem=leg.hem / 2 - mm(p.knee_balance),
        hollow=p.front_inseam_hollow,
        inseam_handle=p.inseam_handle,
        even_turn=p.inseam_even_turn,
        hollow_turn=math.radians(p.inseam_fork_turn),
        side_lean=lean_at_hip(side * height, height),
        side_handle=p.side_hip_handle + _SIDE_BULGE * fit.side_bulge,
        knee_handle=p.side_knee_handle,
    )


def back_plan(
    body: Body, levels: Levels, leg: LegShape, shares: Shares, p: Proportions, fit: Fit, *, inseam: float
) -> PanelPlan:
    """Return the amounts of the back; `inseam` is the length its inseam must have, mm."""
    height = (levels.waist - levels.hip).mm
    wanted = p.back_raise + fit.amount(CENTRE_BACK)
    fold = shares.suppression.dart / dart_length(levels.waist - levels.hip, p).mm
    lift = fold * shares.back_waist / 2 - p.back_side_drop
    side = shares.suppression.back_side / height
    end = _waist_slope(side) + fold
    rise = _one_bend(lift - wanted, shares.back_waist, -math.tan(shares.lean), end)
    fork = _fork(body["hip_girth"] / p.back_fork_divisor - mm(p.back_fork_less), fit.back_fork, "back fork")
    return PanelPlan(
        name="back",
        hip=shares.back_hip,
        fork=_fork(
            body["hip_girth"] / p.back_fork_divisor - mm(p.back_fork_less), fit.back_fork, "back fork"
        ),
        drop=None,
        lean=shares.lean,
        top=named("centre back above the waist level", lift - rise),
        curve_height=_curve_height(body, fork, p.back_curve_divisor, p.back_curve_of_fork, p),
        curve_handle=p.back_curve_handle,
        crease=mm(p.back_crease_shift),
        knee=leg.knee / 2 + mm(p.knee_balance),
        hem=leg.hem / 2 + mm(p.knee_balance),
        hollow=p.back_inseam_hollow,
        inseam_handle=p.inseam_handle,
        even_turn=p.inseam_even_turn,
        hollow_turn=math.radians(p.inseam_fork_turn),
        side_lean=lean_at_hip(side * height, height),
        side_handle=p.side_hip_handle + _SIDE_BULGE * fit.side_bulge,
        knee_handle=p.side_knee_handle,
        inseam_length=inseam,
    )


def _fork(proportion: Length, fitted: float, name: str) -> Length:
    return (proportion + named("added for the fit", fitted) if fitted else proportion).called(name)


def _curve_height(body: Body, fork: Length, divisor: float, of_fork: float, p: Proportions) -> Length:
    """Return how high above crotch level a crotch curve starts: below the waist, however wide the fork."""
    depth = body["crotch_depth"]
    height = largest(depth / divisor, fork * of_fork)
    for highest in (depth * p.curve_highest, fork * p.curve_highest_of_fork):
        if height.mm > highest.mm:
            height = highest
    return height


def dart_length(way: Length, p: Proportions) -> Length:
    """Return the length of the back dart: a share of the `way` from waist to hip, within the yoke.

    Over a short way it is kept long, so that it does not end in a blunt point, but above the hip.
    """
    length = way * p.dart_length_share
    if length.mm > p.dart_longest:
        return mm(p.dart_longest)
    return length if length.mm >= p.dart_shortest else mm(min(p.dart_shortest, way.mm * p.dart_clear_of_hip))


def dart_count(take_up: float, p: Proportions) -> int:
    """Return over how many darts a take-up of so many mm is shared: 0, 1 or 2."""
    return 0 if take_up <= 0 else 1 if take_up <= p.dart_widest else 2
