"""A deep, squarish opening: straight down from the waist, a rounded corner, straight out to the side."""

from __future__ import annotations

from dataclasses import replace

from drafting.geometry.curves import QUARTER_ROUND, Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import meeting
from styles.front_pockets import Mouth, scoop

_RADIUS, _OF_LEG = 35.0, 0.85
"""Radius of the corner, mm, and its largest share of either straight (common practice, no source)."""

_LEAST_RADIUS = 16.0
"""A tighter corner leaves no room for a seam allowance of 10 mm, clipped and turned (common practice), mm."""


def edge(mouth: Mouth) -> Path:
    """Return the edge of the opening; the scoop is not looked at.

    Where a sloping waist leaves no room for the corner it is drawn as a scoop.
    """
    corner = meeting(mouth.corner, mouth.down, mouth.end, mouth.out)
    radius = min(_RADIUS, *(_OF_LEG * (corner - end).length for end in (mouth.corner, mouth.end)))
    if radius < _LEAST_RADIUS:
        return scoop.edge(replace(mouth, scoop=0.5))
    before, after = corner + mouth.down * -radius, corner + mouth.out * radius
    bend = Cubic.bent(before, mouth.down, after, mouth.out, QUARTER_ROUND)
    return Path((Cubic.line(mouth.corner, before), bend, Cubic.line(after, mouth.end)))
