"""How the difference between hip and waist is shared over the seams and the dart of one half of the body.

Every place takes a share of the difference, and the shares bend but never jump: a little more waist is a
little more at each place. The seat line takes what its lean gives, the back's side seam what is left.
Where the waist is as large as the hip the same places give back, down to a centre front and side seams
that swing outwards.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

SLOW = 75.0
"""A front side seam that takes so much's share takes a greater one of what exceeds it, mm of half the
difference (own trial: without a front dart the side seam would walk backwards)."""

FRONT_SIDE, FRONT_SIDE_MORE = 0.24, 0.15
"""The front side seam's share, and what it takes more of what exceeds SLOW: 12 to 28 % (own judgement)."""

CENTRE_FRONT, CENTRE_FRONT_MOST = 0.06, 9.0
"""The centre front's share and its most, mm: about the 1.0 of Aldrich."""

FULL, GIVES, SIDE_GIVES, SLANT = 30.0, 0.40, 0.10, 30.0
"""Where half the difference is less than FULL, mm, the centre front gives back GIVES of what is wanting
and the front's side seam SIDE_GIVES more than its share; the centre front leans out by no more than SLANT,
mm: a third at the centre front, two at the sides, 1 1/4 in for a full waist (Hertzer)."""

DART, DART_WIDE, DART_MORE = 0.22, 130.0, 0.10
"""The back dart's share, and its share of what exceeds DART_WIDE, mm: 20 to 30 %, one dart of 2 to 3 cm is
usual (common practice, no source)."""

STEEPEST = 0.36
"""Seams and dart legs lean in no more than this over their height (20 degrees), or they would show
(common practice)."""

OUT_MOST = 60.0
"""And swing out by no more than this, mm: 2 in at most (Hertzer), the rest common practice."""


@dataclass(frozen=True)
class Suppression:
    """The shares of one half, mm measured level at the waist.

    Attributes:
        centre_front: How far the centre front leans in at the waist.
        front_side: Front side seam.
        back_side: Back side seam.
        dart: The back dart, or both of them together.
        left_over: What found no room: the waist is drafted this much too large (positive) or too small.
    """

    centre_front: float
    front_side: float
    back_side: float
    dart: float
    left_over: float = 0.0


def in_front(amount: float) -> tuple[float, float]:
    """Return what centre front and front side seam take of `amount`, half of hip less waist, mm."""
    wanting = max(FULL - amount, 0.0)
    centre = max(min(CENTRE_FRONT * max(amount, FULL), CENTRE_FRONT_MOST) - GIVES * wanting, -SLANT)
    side = FRONT_SIDE * amount + FRONT_SIDE_MORE * max(amount - SLOW, 0.0) - SIDE_GIVES * wanting
    return centre, side


def in_dart(amount: float, dart_least: float) -> float:
    """Return what the back dart takes of `amount`, half of hip less waist, mm: 0 below `dart_least`."""
    dart = DART * min(amount, DART_WIDE) + DART_MORE * max(amount - DART_WIDE, 0.0)
    return dart if dart >= dart_least else 0.0


def share(
    amount: float, height: float, dart_length: float, seat: float, *, front: float | None, dart_least: float
) -> Suppression:
    """Return how half of hip less waist is taken up; what its place cannot take goes to the next.

    Args:
        amount: Half of hip less waist, ease included, mm.
        height: From waist to hip, mm.
        dart_length: Of each back dart, mm.
        seat: What the lean of the seat line takes, mm.
        front: What the front has to take by its measured waist arc; None: its share.
        dart_least: A narrower dart is left to the seams, mm.
    """
    most, least = STEEPEST * height, -min(STEEPEST * height, OUT_MOST)
    centre, side = in_front(amount)
    if front is not None:
        side = front - centre
    dart = min(in_dart(amount, dart_least), STEEPEST * dart_length)
    wanted = Suppression(centre, _kept(side, least, most), 0.0, dart)
    rest = amount - seat - wanted.centre_front - wanted.front_side - dart
    taken = replace(wanted, back_side=_kept(rest, least, most))
    over = rest - taken.back_side
    # What the back's side seam cannot take: the darts, then the front's side seam, then its centre.
    more = _kept(taken.dart + over, 0.0, 2 * STEEPEST * dart_length) - taken.dart
    taken, over = replace(taken, dart=taken.dart + more), over - more
    more = _kept(taken.front_side + over, least, most) - taken.front_side
    taken, over = replace(taken, front_side=taken.front_side + more), over - more
    more = _kept(taken.centre_front + over, least, 2 * CENTRE_FRONT_MOST) - taken.centre_front
    return replace(taken, centre_front=taken.centre_front + more, left_over=over - more)


def _kept(value: float, low: float, high: float) -> float:
    return math.nan if high < low else min(max(value, low), high)
