"""Bodies whose two sides differ: what one side has more or less than the whole body's measurements say.

Centre lines, forks and crotch seam stay the same on both sides, because they are sewn to each other; the side seam,
the hem and the levels of the leg follow their own side.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.body import Body
from drafting.measurements import Measurements, Side, SideMeasurements


@dataclass(frozen=True)
class OneSide:
    """How one side differs from the whole body, mm.

    Attributes:
        side: Which side.
        hip: Added to the hip width of its half.
        hip_rise: How much higher its side seam reaches hip level.
        floor: How much higher its floor lies: the shortness of its leg.
        top: How much higher its side seam ends at the waist.
    """

    side: Side
    hip: float
    hip_rise: float
    floor: float
    top: float

    @property
    def alike(self) -> bool:
        """Whether it is drawn like the whole body."""
        return not any((self.hip, self.hip_rise, self.floor, self.top))


def two_sides(given: Measurements, body: Body) -> tuple[OneSide, ...]:
    """Return left and right when they differ, nothing when one mirrored pair serves."""
    left, right = given.left or SideMeasurements(), given.right or SideMeasurements()
    sides = (_one(Side.RIGHT, right, left, body), _one(Side.LEFT, left, right, body))
    return () if all(side.alike for side in sides) else sides


def _one(side: Side, own: SideMeasurements, other: SideMeasurements, body: Body) -> OneSide:
    floor = hip_rise = top = hip = 0.0
    if own.inside_leg_height is not None:
        floor = body["inside_leg_height"].mm - own.inside_leg_height
    if own.hip_height is not None:
        hip_rise = own.hip_height - body["hip_height"].mm
    if own.outside_leg_length is not None:
        whole = body.get("outside_leg_length")
        if other.outside_leg_length is not None:
            usual = (own.outside_leg_length + other.outside_leg_length) / 2
        else:
            usual = (whole or body["waist_height"]).mm
        # A longer leg makes the side longer too; only the rest lies above the hip.
        top = own.outside_leg_length - usual + floor
    if own.half_hip_arc is not None:
        hip = own.half_hip_arc - body["hip_girth"].mm / 2
    elif other.half_hip_arc is not None:
        hip = body["hip_girth"].mm / 2 - other.half_hip_arc
    return OneSide(side, hip, hip_rise, floor, top)


def largest_thigh(given: Measurements) -> float | None:
    """Return the larger thigh, mm: the forks, alike on both sides, are drawn for it."""
    thighs = [
        holder.thigh_girth
        for holder in (given, given.left, given.right)
        if holder is not None and holder.thigh_girth is not None
    ]
    return max(thighs, default=None)
