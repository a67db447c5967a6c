"""How hip and waist of one half are shared over front and back."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from drafting.base.formula import Length, Reason, mm, named
from drafting.base.proportions import Ease, Proportions
from drafting.block.means import CENTRE_BACK, LEAN, Fit
from drafting.block.suppression import Sinks, Suppression, share, share_apart
from drafting.body.body import Body


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

    def widened(self, by: float, side: str) -> Shares:
        """Return the shares of a half whose hip is wider by `by` mm at its seam; `side` names it."""
        if not by:
            return self
        more = named(f"{side} side: hip", by / 2, Reason.SIDE_OF_BODY)
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
    room = named("hip ease", ease.hip, Reason.EASE)
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
    usual = min(max(math.atan((amount - p.lean_leaves) / height), least), math.radians(p.back_lean))
    most = max(math.atan((amount + p.lean_owes_most) / height), usual)
    lean = min(usual + math.radians(fit.amount(LEAN)), most)
    lean = max(lean, least)
    seat = height * math.tan(lean)
    way = body["waist_height"] - body["hip_height"]
    sinks = Sinks.over(way.mm, dart_length(way, p).mm, amount)
    if arc := body.get("front_waist_arc"):
        front_waist = arc.mm / 2 + ease.waist / 4
        taken = _apart(front_hip.mm - front_waist, amount - seat, sinks, p.dart_least)
        front_waist = front_hip.mm - taken.centre_front - taken.front_side
    else:
        taken = share(amount - seat, sinks, dart_least=p.dart_least)
        # The lean of the seat line makes the back waist small; the side seam follows it back only so far.
        front_waist = front_hip.mm - taken.centre_front - taken.front_side
        by = front_waist - waist / 2 - p.side_seam_back
        taken = taken.towards_the_front(by, sinks.front_side.most)
        front_waist = front_hip.mm - taken.centre_front - taken.front_side
    return Shares(front_hip, back_hip, front_waist, waist + taken.left_over - front_waist, taken, lean)


def _apart(front_amount: float, amount: float, sinks: Sinks, dart_least: float) -> Suppression:
    """Return `amount` mm shared, `front_amount` of it by the front where the limits allow.

    The whole waist comes first: what the front cannot take up the back does, and the reverse.
    """
    front = share_apart(front_amount, sinks.front)
    back = share_apart(amount - sum(front.parts), sinks.back, dart_least=dart_least)
    if back.rest:
        front = share_apart(sum(front.parts) + back.rest, sinks.front)
    (centre, front_side), (back_side, dart) = front.parts, back.parts
    return Suppression(centre, front_side, back_side, dart, front.rest if back.rest else 0.0)


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
