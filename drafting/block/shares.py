"""How hip and waist of one half are shared over front and back."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from drafting.base.construction_proportions import Ease, Proportions
from drafting.base.formula import Length, Reason, mm, named
from drafting.block.suppression import Suppression, in_front, share
from drafting.body.body import Body

_SLANTS_TO = 100.0
"""With so much to take in, mm of one half, the back's waist line reaches as far across as it is long (own
trial)."""


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


def share_widths(body: Body, ease: Ease, p: Proportions, raised: float) -> Shares:
    """Return how hip and waist of one half are shared over front and back.

    A centre back that stands higher than usual by a wedge turns the seat line, the waist and the side seam
    about the hip at the side; so `raised`, its height over the waist in mm, leans the seat line. It
    leans no further than its share of hip less waist allows: the front stays as it is.
    """
    front_hip, back_hip = half_hip(body, ease, p)
    waist = (body["waist_girth"].mm + ease.waist) / 2
    way = body["waist_height"] - body["hip_height"]
    amount = front_hip.mm + back_hip.mm - waist
    arc = body.get("front_waist_arc")
    front = None if arc is None else front_hip.mm - arc.mm / 2 - ease.waist / 4
    back_waist = waist - front_hip.mm + (sum(in_front(amount)) if front is None else front)
    wedge = math.atan(max(raised - p.back_raise, 0.0) / max(back_waist, 1.0))
    lean = seat_lean(amount, way.mm, wedge, p)
    # A waist line that slants down to the side reaches less far across than it is long; a wide dart,
    # opened, makes up for it.
    slant = min(raised, back_waist * math.tan(lean)) ** 2 / (2 * max(back_waist, 1.0))
    slant *= min(max(1 - amount / _SLANTS_TO, 0.0), 1.0)
    taken = share(
        amount,
        way.mm,
        dart_length(way, p).mm,
        (way.mm + raised) * math.tan(lean) - slant,
        front=front,
        dart_least=p.dart_least,
    )
    front_waist = front_hip.mm - taken.centre_front - taken.front_side
    return Shares(front_hip, back_hip, front_waist, waist + taken.left_over - front_waist, taken, lean)


def seat_lean(amount: float, way: float, wedge: float, p: Proportions) -> float:
    """Return the lean of the seat line, radians.

    Args:
        amount: Half of hip less waist, mm.
        way: From waist to hip, mm.
        wedge: How far a wedge at the centre back turns it, radians.
        p: The proportions.
    """
    least, usual, most = (math.radians(angle) for angle in (p.back_lean_least, p.back_lean, p.back_lean_most))
    lean = min(max(math.atan(p.lean_share * amount / way), least), usual)
    taken = max(p.lean_share_most * amount, p.lean_full + p.lean_full_share * amount)
    allowed = max(math.atan(taken / way), least)
    return min(max(lean + wedge, least), most, allowed)


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
