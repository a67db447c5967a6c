"""Straight sides that run in a little, and a point in the middle of the bottom."""

from __future__ import annotations

from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from styles.back_pockets import PocketOutline, PocketSize


def outline(size: PocketSize) -> PocketOutline:
    """Return the outline of a pocket of this size."""
    low = Point(size.taper - size.opening / 2, -size.height)
    point = Point(0, -size.height - size.point)
    return PocketOutline.alike(
        Path.through([Point(-size.opening / 2, 0), low]),
        Path.through([low, point]),
    )
