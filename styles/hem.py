"""The hem line of a leg."""

from __future__ import annotations

import math

from drafting.curves import Cubic
from drafting.paths import Path
from drafting.tolerance import HEM_CORNER_DEG

_STRAIGHT = math.radians(0.4 * HEM_CORNER_DEG)
"""A seam that leans no more than this leaves the hem straight, so that it turns up flat; two such seams
together stay within the tolerance."""


def hem_line(side: Path, inseam: Path) -> Path:
    """Return the hem from the side seam, given downwards, to the inseam, given upwards.

    Where a seam leans more, in a flare or in shorts, the hem bends towards square with it, so that front and
    back make one line across the seam.
    """
    chord = inseam.start - side.end
    square_to_side = chord.angle_to(side.direction(side.length).left)
    square_to_inseam = chord.angle_to(-inseam.direction(0).left)
    leave, arrive = (chord.turned(_beyond(turn)) for turn in (square_to_side, square_to_inseam))
    if leave == arrive == chord:
        return Path((Cubic.line(side.end, inseam.start),))
    return Path((Cubic.bent(side.end, leave, inseam.start, arrive, 2 / 3),))


def _beyond(turn: float) -> float:
    return math.copysign(max(abs(turn) - _STRAIGHT, 0.0), turn)
