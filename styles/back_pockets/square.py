"""Straight sides down to a level bottom, as deep as the point of a pointed pocket hangs."""

from __future__ import annotations

from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from styles.back_pockets import PocketOutline, PocketSize


def outline(size: PocketSize) -> PocketOutline:
    """Return the outline of a pocket of this size."""
    bottom = -size.height - size.point
    low = Point(size.taper - size.opening / 2, bottom)
    return PocketOutline.alike(
        Path.through([Point(-size.opening / 2, 0), low]),
        Path.through([low, Point(0, bottom)]),
    )
