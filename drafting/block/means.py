"""The means a cutter has to fit the crotch seam, each with its limits.

A single number s moves all of them together: 0 leaves the proportions, 1 takes every mean to its upper limit,
-1 to its lower one. Front and back may have their own s.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from drafting.base.proportions import COMMON, TRIAL


class Part(Enum):
    """Which part of the crotch seam a mean lengthens."""

    FRONT = "front"
    BACK = "back"
    BOTH = "both"


@dataclass(frozen=True)
class Mean:
    """One means of fitting: its name, part, limits (mm, degrees for an angle) and where they come from."""

    name: str
    part: Part
    least: float
    most: float
    unit: str
    source: str

    def at(self, s: float) -> float:
        """Return the amount at s; beyond -1..1 it is clipped to the limits."""
        s = min(max(s, -1.0), 1.0)
        return s * (self.most if s > 0 else -self.least)


CENTRE_BACK = Mean(
    "centre-back height",
    Part.BACK,
    -18,
    38,
    "mm",
    "up to 6 cm in all, 6.6 for the last in a thousand: " + TRIAL,
)
LEAN = Mean(
    "seat-line lean",
    Part.BACK,
    -7,
    9.5,
    "deg",
    "7 to 22 degrees in all, 23.5 for the last in a thousand: " + TRIAL,
)
BACK_FORK = Mean(
    "back fork", Part.BACK, -20, 58, "mm", "0.6 to 2.5 for a full seat; wider for deep bodies: " + TRIAL
)
CENTRE_FRONT = Mean(
    "centre-front height", Part.FRONT, -15, 33, "mm", "1 to 2.5 for a full abdomen: " + COMMON
)
FRONT_FORK = Mean(
    "front fork", Part.FRONT, -12, 29, "mm", "1/2 in in a worked example; small steps: " + COMMON
)
DEPTH = Mean("crotch depth", Part.BOTH, -12, 28, "mm", "0.3 to 1.5: " + COMMON)

MEANS = (CENTRE_BACK, LEAN, BACK_FORK, CENTRE_FRONT, FRONT_FORK, DEPTH)

SIDE_REACH = 30.0
"""Widening for the thigh beyond this deepens the crotch, too, mm (a dressmaking school)."""

FRONT_SHARE = 1 / 3
"""Of that widening the front fork takes this share, the back fork the rest (common practice, no source)."""

NARROWED = 0.2
"""Beyond it the front fork loses this share of what the thigh needs more, and the back fork gains it besides
the whole (the school gives no number; own trial)."""

DEEPENED, DEEPENED_MOST = 0.3, 10.0
"""And the crotch is deepened by this share of it, by no more than so many mm (likewise own trial)."""


@dataclass(frozen=True)
class Fit:
    """How far the means are used, and how much the thigh needs.

    Attributes:
        front: s of the means of the front.
        back: s of the means of the back.
        thigh: Width added for the thigh, mm.
        bulge: How far the side seams are kept out for the mid-thigh, 0 to 1.
    """

    front: float = 0.0
    back: float = 0.0
    thigh: float = 0.0
    bulge: float = 0.0

    def amount(self, mean: Mean) -> float:
        """Return how much of a mean is used, mm or degrees, without what the thigh adds."""
        s = {Part.FRONT: self.front, Part.BACK: self.back, Part.BOTH: (self.front + self.back) / 2}
        return mean.at(s[mean.part])

    @property
    def front_fork(self) -> float:
        """What is added to the front fork, mm: narrower again where the thigh needs more than SIDE_REACH."""
        within, over = self._thigh_parts
        return self.amount(FRONT_FORK) + within * FRONT_SHARE - over * NARROWED

    @property
    def back_fork(self) -> float:
        """What is added to the back fork, mm."""
        within, over = self._thigh_parts
        return self.amount(BACK_FORK) + within * (1 - FRONT_SHARE) + over * (1 + NARROWED)

    @property
    def depth(self) -> float:
        """What is added to the crotch depth, mm."""
        return self.amount(DEPTH) + min(self._thigh_parts[1] * DEEPENED, DEEPENED_MOST)

    @property
    def _thigh_parts(self) -> tuple[float, float]:
        """What the thigh needs up to SIDE_REACH, and beyond it, mm."""
        return min(self.thigh, SIDE_REACH), max(self.thigh - SIDE_REACH, 0.0)

    @property
    def side_bulge(self) -> float:
        """How far the side seams are kept out over the thigh, 0 to 1."""
        return max(min(self.thigh / SIDE_REACH, 1.0), self.bulge)
