"""Bodies whose two sides differ: what one side has more or less than the whole body's measurements say.

Centre lines, forks and crotch seam stay the same on both sides, because they are sewn to each other; the side
seam, the hem and the levels of the leg follow their own side.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from drafting.body.body import Body
from drafting.body.measurements import Measurements, Side, SideMeasurements


@dataclass(frozen=True)
class OneSide:
    """How one side differs from the whole body, mm.

    Attributes:
        side: Which side.
        hip: Added to the hip width of its half.
        hip_rise: How much higher its side seam reaches hip level.
        floor: How much higher its floor lies: the shortness of its leg.
        top: How much higher its side seam ends at the waist.
        longer: How much longer its side was measured than a side is taken to be; 0 when it was not measured.
        slimmer: How much slimmer its thigh was measured than the other's.
    """

    side: Side
    hip: float
    hip_rise: float
    floor: float
    top: float
    longer: float
    slimmer: float


def known_of_both(given: Measurements) -> Measurements:
    """Return the measurements with what both sides tell told of the whole body.

    A value that is equal on both sides takes the place of the body's own; of two that differ the mean stands
    in where the body's own is missing, and of the thighs always the larger: the forks, alike on both sides,
    are drawn for it. The body's own thigh stands for a side whose thigh was not measured.
    """
    whole: dict[str, Any] = {}
    for key in ("inside_leg_height", "outside_leg_length", "hip_height"):
        left, right = (getattr(side, key, None) for side in (given.left, given.right))
        if left is not None and right is not None and (left == right or getattr(given, key) is None):
            whole[key] = (left + right) / 2
    thighs = [getattr(side, "thigh_girth", None) or given.thigh_girth for side in (given.left, given.right)]
    largest = max((thigh for thigh in thighs if thigh is not None), default=None)
    return replace(given, thigh_girth=largest, **whole)


def two_sides(given: Measurements, body: Body) -> tuple[OneSide, ...]:
    """Return right and left when they differ, nothing when one mirrored pair serves."""
    left, right = given.left or SideMeasurements(), given.right or SideMeasurements()
    sides = (_one(Side.RIGHT, right, left, body), _one(Side.LEFT, left, right, body))
    return () if replace(sides[0], side=Side.LEFT) == sides[1] else sides


def _one(side: Side, own: SideMeasurements, other: SideMeasurements, body: Body) -> OneSide:
    hip_rise = top = longer = hip = 0.0
    floor = _floor(own, body)
    if own.hip_height is not None:
        hip_rise = own.hip_height - body["hip_height"].mm
    if own.outside_leg_length is not None:
        whole = body.get("outside_leg_length")
        if other.outside_leg_length is not None:
            # Both above the whole body's floor, or a shorter leg would lower what is usual.
            usual = (own.outside_leg_length + floor + other.outside_leg_length + _floor(other, body)) / 2
        else:
            usual = (whole or body["waist_height"]).mm
        # A longer leg makes the side longer too; only the rest lies above the hip.
        longer = own.outside_leg_length - usual
        top = longer + floor
    if own.half_hip_arc is not None:
        hip = own.half_hip_arc - body["hip_girth"].mm / 2
    elif other.half_hip_arc is not None:
        hip = body["hip_girth"].mm / 2 - other.half_hip_arc
    slimmer = 0.0 if own.thigh_girth is None else body["thigh_girth"].mm - own.thigh_girth
    return OneSide(side, hip, hip_rise, floor, top, longer, slimmer)


def _floor(own: SideMeasurements, body: Body) -> float:
    """Return how much higher the floor of a side lies, mm."""
    return 0.0 if own.inside_leg_height is None else body["inside_leg_height"].mm - own.inside_leg_height
