"""A level bottom whose corners are cut off slantwise, as high as the point of a pointed pocket hangs."""

from __future__ import annotations

from drafting.base.tolerance import JOIN
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from styles.back_pockets import PocketOutline, PocketSize

_MOST_CUT = 0.7
"""Both cuts together take no more than this share of the bottom (common practice, no source)."""


def outline(size: PocketSize) -> PocketOutline:
    """Return the outline of a pocket of this size; without a point it is square."""
    low = Point(size.taper - size.opening / 2, -size.height)
    bottom = -size.height - size.point
    middle = Point(0, bottom)
    # As wide as high: a cut of 45 degrees.
    across = Point(low.x + min(size.point, -low.x * _MOST_CUT), bottom)
    return PocketOutline.alike(
        Path.through([Point(-size.opening / 2, 0), low]),
        Path.through([low, across, middle] if size.point > JOIN else [low, middle]),
    )
