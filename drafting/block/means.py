"""The means a cutter has to fit the crotch seam, each with its limits, and what they come to.

One number moves all of them together: 0 leaves the proportions, 1 takes every mean to the upper end of its
usual range, 2 to the end of a wide one, 3 to the widest; -1, -2 and -3 to the lower ends. The ranges are
those of the finished shape, not of the step, so whoever stands near an end already has little left to go.
Between these numbers the amounts run straight: a little more crotch length is a little more of each.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from drafting.base.construction_proportions import COMMON, TRIAL

USUAL, WIDEST = 1.0, 3.0
"""The numbers that take the means to the ends of their usual and of their widest ranges (own judgement)."""


_ROOM = 0.08
"""Proportions stay this share of a usual range inside it: with all other means at their ends the last one
would have to move alone (own trial)."""


@dataclass(frozen=True)
class Mean:
    """One means of fitting: what it is called, the ranges of the finished shape, and where they come from.

    Attributes:
        key: Its name in the figures.
        name: Its name in the report.
        low: The lowest amounts of the usual, the wide and the widest range, mm or shares of the hip girth.
        high: The highest ones.
        source: Where the ranges come from.
        of_hip: Whether the amounts are shares of the hip girth.
    """

    key: str
    name: str
    low: tuple[float, float, float]
    high: tuple[float, float, float]
    source: str
    of_hip: bool = False

    def within(self, proportion: float, hip: float) -> float:
        """Return what the proportions give, mm, brought into the usual range with room either way."""
        scale = hip if self.of_hip else 1.0
        low, high = self.low[0] * scale, self.high[0] * scale
        room = _ROOM * (high - low)
        return min(max(proportion, low + room), high - room)

    def at(self, number: float, proportion: float, hip: float) -> float:
        """Return the finished amount, mm, where the proportions give `proportion` and the fit says `number`.

        A proportion beyond a range stays where it is until the number leaves that range; beyond -3..3 the
        widest ends hold.
        """
        scale = hip if self.of_hip else 1.0
        ends, pick = (self.high, max) if number > 0 else (self.low, min)
        amounts = [proportion, *(pick(end * scale, proportion) for end in ends)]
        return float(np.interp(abs(number), range(len(amounts)), amounts))


CENTRE_BACK = Mean(
    "centre_back_height",
    "centre-back height",
    (18, 15, 13),
    (54, 59, 60),
    "2 to 4 for jeans, 2 to 10 in seven drafts; ranges: " + TRIAL,
)
BACK_FORK = Mean(
    "back_fork",
    "back fork",
    (0.124, 0.1198, 0.115),
    (0.149, 0.1551, 0.1655),
    "5 to 12 cm at a hip of 94, from other lines; ranges: " + TRIAL,
    of_hip=True,
)
DEPTH = Mean(
    "crotch_depth",
    "crotch depth",
    (10, 8.5, 8),
    (29.9, 33.4, 43.2),
    "how far under the body's crotch the line hangs; ranges: " + TRIAL,
)
FRONT_FORK = Mean(
    "front_fork",
    "front fork",
    (0.051, 0.0494, 0.0478),
    (0.0638, 0.0655, 0.0668),
    "hip/20 to hip/16 in jeans and close trousers; ranges: " + TRIAL,
    of_hip=True,
)
CENTRE_FRONT = Mean(
    "centre_front_height",
    "centre-front height",
    (-11, -14, -17),
    (-5, -2, 2),
    "0.6 to 2.5 under the waist: " + COMMON,
)

MEANS = (CENTRE_BACK, BACK_FORK, DEPTH, FRONT_FORK, CENTRE_FRONT)

LEAN, LEAN_NAME = "seat_line_lean", "seat-line lean"
"""What follows from a centre back that is wedged: no mean of its own, but told with them."""


@dataclass(frozen=True)
class Moved:
    """What a means of fitting moved on paper against the proportions alone.

    Attributes:
        key: As in `Mean`, or LEAN.
        name: As in `Mean`, or LEAN_NAME.
        amount: mm, degrees for the lean; positive is higher, longer, deeper, further from plumb.
    """

    key: str
    name: str
    amount: float

    @property
    def unit(self) -> str:
        """The unit of the amount: mm or deg."""
        return "deg" if self.key == LEAN else "mm"


SIDE_REACH = 30.0
"""Widening for the thigh beyond this deepens the crotch, too, mm (a dressmaking school)."""

FRONT_SHARE = 1 / 4
"""Of that widening the front fork takes this share, the back fork the rest (common practice, no source)."""

DEEPENED, DEEPENED_MOST = 0.3, 10.0
"""Beyond it the crotch is deepened by this share of what the thigh needs more, by no more than so many mm
(the school gives no number; own trial)."""


@dataclass(frozen=True)
class Fit:
    """How far the means are used, and how much the thigh needs.

    Attributes:
        number: What moves all means of the crotch seam together, -3 to 3.
        split: How much longer the front part of the body's crotch length is than it lets expect, as far as it
            counts, mm: added to the centre front's height, within its range, and taken off the centre back's.
        thigh: Width added for the thigh, mm.
        bulge: How far the side seams are kept out for the mid-thigh, 0 to 1.
    """

    number: float = 0.0
    split: float = 0.0
    thigh: float = 0.0
    bulge: float = 0.0

    @property
    def front_fork(self) -> float:
        """What the thigh adds to the front fork, mm."""
        return self.thigh * FRONT_SHARE

    @property
    def back_fork(self) -> float:
        """What the thigh adds to the back fork, mm."""
        return self.thigh - self.front_fork

    @property
    def depth(self) -> float:
        """What the thigh adds to the crotch depth, mm."""
        return min(max(self.thigh - SIDE_REACH, 0.0) * DEEPENED, DEEPENED_MOST)

    @property
    def side_bulge(self) -> float:
        """How far the side seams are kept out over the thigh, 0 to 1."""
        return max(min(self.thigh / SIDE_REACH, 1.0), self.bulge)
