"""A level bottom with rounded corners, as deep as the point of a pointed pocket hangs."""

from __future__ import annotations

from drafting.geometry.curves import QUARTER_ROUND, Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector
from styles.back_pockets import PocketOutline, PocketSize

_RADIUS, _OF_WIDTH, _OF_HEIGHT = 38.0, 0.35, 0.45
"""Radius of the corners, mm, and its largest shares of the bottom's width and of the whole height (common
practice, no source)."""


def outline(size: PocketSize) -> PocketOutline:
    """Return the outline of a pocket of this size."""
    deep = size.height + size.point
    top, low = Point(-size.opening / 2, 0), Point(size.taper - size.opening / 2, -deep)
    radius = min(_RADIUS, _OF_WIDTH * -2 * low.x, _OF_HEIGHT * deep)
    down, across = (low - top).unit, Vector(1, 0)
    turn, after = low + down * -radius, low + across * radius
    bend = Cubic.bent(turn, down, after, across, QUARTER_ROUND)
    return PocketOutline.alike(Path.through([top, turn]), Path((bend, Cubic.line(after, Point(0, -deep)))))
