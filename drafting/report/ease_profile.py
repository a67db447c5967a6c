"""The ease along the body: girth of pattern and body from waist to hem, for the trunk and for one leg."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from itertools import groupby

import numpy as np

from drafting.base.tolerance import SEAM
from drafting.block.block import Block
from drafting.report.fit import GirthLine, body_profile, girth_lines
from drafting.report.levels import GirthLevel

_STEP = 5.0
"""The pattern is measured this often, mm of height."""
_TRUNK_LEVELS = (GirthLevel.WAIST, GirthLevel.TOP_HIP, GirthLevel.HIP)


class Zone(Enum):
    """A part of the body with one kind of girth."""

    TRUNK = "trunk"
    """From hip level to the waist, whole girth."""
    LEG = "leg"
    """From the hem to just below the fork, one leg; of the tighter one where the sides differ."""


@dataclass(frozen=True)
class GirthPoint:
    """A girth at a height above the floor, both mm."""

    height: float
    girth: float


@dataclass(frozen=True)
class TightSpot:
    """A stretch between two levels where the pattern is smaller than the body.

    Attributes:
        at: Where it is tightest; the girth is the pattern's.
        by: By how much, mm.
        low: Lower end, mm above the floor.
        high: Upper end.
    """

    at: GirthPoint
    by: float
    low: float
    high: float


@dataclass(frozen=True)
class EaseProfile:
    """Pattern and body along one zone.

    Attributes:
        zone: Which part.
        pattern: Finished girths of the pattern, heights rising.
        body: Girths of the body where they are known, heights rising; straight between them. The thigh
            stands at the body's own crotch, which the pattern hangs a little below.
        levels: The levels of the fit report in this zone, from the top down.
    """

    zone: Zone
    pattern: tuple[GirthPoint, ...]
    body: tuple[GirthPoint, ...]
    levels: tuple[GirthLine, ...]

    def body_point(self, line: GirthLine) -> GirthPoint | None:
        """Return where the body's girth of a level stands, None when it is not known."""
        if line.body is None:
            return None
        height = self.body[-1].height if line.level is GirthLevel.THIGH else line.height
        return GirthPoint(height, line.body)

    def side_by_side(self) -> tuple[tuple[GirthPoint, GirthPoint], ...]:
        """Return pattern and body at each height, rising, where both are known; empty without a body."""
        if len(self.body) < 2:
            return ()
        low = max(self.pattern[0].height, self.body[0].height)
        high = min(self.pattern[-1].height, self.body[-1].height)
        heights = sorted({p.height for p in (*self.pattern, *self.body) if low <= p.height <= high})
        return tuple(zip(_at(self.pattern, heights), _at(self.body, heights), strict=True))

    def tight_spots(self) -> tuple[TightSpot, ...]:
        """Return the stretches where the pattern is more than a seam's tolerance smaller than the body."""
        spots = []
        for tight, run in groupby(self.side_by_side(), lambda pair: pair[1].girth - pair[0].girth > SEAM):
            if tight:
                stretch = list(run)
                pattern, body = max(stretch, key=lambda pair: pair[1].girth - pair[0].girth)
                ends = stretch[0][0].height, stretch[-1][0].height
                spots.append(TightSpot(pattern, body.girth - pattern.girth, *ends))
        return tuple(spots)


def _at(points: tuple[GirthPoint, ...], heights: list[float]) -> list[GirthPoint]:
    girths = np.interp(heights, [p.height for p in points], [p.girth for p in points])
    return [GirthPoint(height, float(girth)) for height, girth in zip(heights, girths, strict=True)]


def ease_profiles(block: Block) -> tuple[EaseProfile, EaseProfile]:
    """Return trunk and leg."""
    lines = girth_lines(block)
    trunk = tuple(line for line in lines if line.level in _TRUNK_LEVELS)
    leg = tuple(line for line in lines if line.level not in _TRUNK_LEVELS and line.side is None)
    body = tuple(GirthPoint(line.height, line.body) for line in reversed(trunk) if line.body is not None)
    return (
        EaseProfile(Zone.TRUNK, _trunk(block, trunk), body, trunk),
        EaseProfile(Zone.LEG, _leg(block, leg), tuple(map(GirthPoint, *body_profile(block))), leg),
    )


def _trunk(block: Block, lines: tuple[GirthLine, ...]) -> tuple[GirthPoint, ...]:
    """Measure the trunk between level lines; at the top along the waist line itself, which is not level."""
    waist, hip = block.levels.waist.mm, block.levels.hip.mm
    lowest = min(path.flatten(1.0)[:, 1].min() for half in block.halves
                 for panel in (half.front, half.back) for path in panel.waist)  # fmt: skip
    heights = _heights(hip, max(min(lowest, waist) - _STEP, hip), lines)
    below = [GirthPoint(y, block.trunk_girth(y)) for y in heights if y < waist]
    return (*below, GirthPoint(waist, block.waist_girth))


def _leg(block: Block, lines: tuple[GirthLine, ...]) -> tuple[GirthPoint, ...]:
    heights = _heights(block.leg.hem_height.mm, block.thigh_level, lines)
    return tuple(GirthPoint(y, block.leg_girth(y)) for y in heights)


def _heights(low: float, high: float, lines: tuple[GirthLine, ...]) -> list[float]:
    """Return rising heights from `low` to `high`, those of the levels among them."""
    steps = np.linspace(low, high, max(int((high - low) / _STEP), 1) + 1)
    named = [line.height for line in lines if low < line.height < high]
    return sorted({float(y) for y in steps} | set(named))
