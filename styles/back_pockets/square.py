"""Straight sides down to a level bottom, as deep as the point of a pointed pocket hangs."""

from __future__ import annotations

from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from styles.back_pockets import Outline, PocketSize


def outline(size: PocketSize) -> Outline:
    """Return the outline of a pocket of this size."""
    bottom = -size.height - size.point
    low = Point(size.taper - size.opening / 2, bottom)
    return Outline.alike(
        Path.through([Point(-size.opening / 2, 0), low]),
        Path.through([low, Point(0, bottom)]),
    )
