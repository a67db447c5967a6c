"""A grain line for a small piece: plumb, as long as the piece lets it be."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import shapely
from shapely.geometry import LineString, Polygon

from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.pieces import Edge

_CLEAR = 0.12
"""The line keeps this share of its chord's length from either end (common practice)."""


def plumb_grain(edges: Iterable[Edge], *, across: float | None = None) -> Path:
    """Return a plumb line in the ring, upwards, clear of the outline at both ends.

    Args:
        edges: The ring.
        across: Where it stands, as a share of the ring's width from the left; None is the middle of its area.
    """
    shape = Polygon(np.vstack([edge.path.flatten(0.1)[:-1] for edge in edges]))
    left, low, right, high = shape.bounds
    x = shape.representative_point().x if not shape.contains(shape.centroid) else shape.centroid.x
    if across is not None:
        x = left + across * (right - left)
    inside = shapely.get_parts(shape.intersection(LineString([(x, low - 1), (x, high + 1)])))
    longest = max(inside, key=lambda part: float(part.length))
    y0, y1 = sorted(float(y) for _, y in longest.coords)
    clear = _CLEAR * (y1 - y0)
    return Path.through([Point(x, y0 + clear), Point(x, y1 - clear)])
