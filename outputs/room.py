"""Where there is still room for lettering in a shape."""

from __future__ import annotations

import numpy as np
import shapely
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from drafting.points import Point

AT_ONCE = 200
"""How many places are tried in one call."""


class Room:
    """A shape with what already stands in it.

    Args:
        shape: Lettering must stay inside it, in mm.
        clearance: Least distance in mm of lettering from the shape's border and from everything drawn.
        step: Distance in mm between the places tried.
    """

    def __init__(self, shape: BaseGeometry, *, clearance: float, step: float = 6.0) -> None:
        """Start with nothing drawn in the shape."""
        self._clearance, self._step = clearance, step
        self._free: BaseGeometry = shape.buffer(-clearance)
        shapely.prepare(self._free)

    def take(self, drawn: BaseGeometry) -> None:
        """Keep lettering away from `drawn` from now on."""
        self._free = shapely.difference(self._free, drawn.buffer(self._clearance, quad_segs=2))
        shapely.prepare(self._free)

    def within(self, shape: BaseGeometry) -> Room:
        """Return the part of this room that lies inside `shape`, with the same clearance and step."""
        part = Room(shape, clearance=self._clearance, step=self._step)
        part._free = shapely.intersection(part._free, self._free)
        shapely.prepare(part._free)
        return part

    def holds(self, box: Polygon) -> bool:
        """Return whether the box is free."""
        return bool(shapely.covers(self._free, box))

    def corner_for(self, width: float, height: float, *, wish: Point) -> Point | None:
        """Return the upper left corner of a free upright box with its centre as near to `wish` as can be.

        The places tried lie a step apart, closer in a narrow shape; None when none is free.
        """
        left, bottom, right, top = self._free.bounds
        spare_x, spare_y = right - left - width, top - bottom - height
        if not (spare_x >= 0 and spare_y >= 0):  # also an empty shape, whose bounds are not numbers
            return None
        xs = np.linspace(left, left + spare_x, max(3, int(spare_x / self._step) + 1))
        ys = np.linspace(bottom, bottom + spare_y, max(3, int(spare_y / self._step) + 1))
        x, y = (axis.ravel() for axis in np.meshgrid(xs, ys))
        nearest = np.argsort(np.hypot(x + width / 2 - wish.x, y + height / 2 - wish.y), kind="stable")
        for some in np.array_split(nearest, len(nearest) // AT_ONCE + 1):
            free = shapely.covers(
                self._free, shapely.box(x[some], y[some], x[some] + width, y[some] + height)
            )
            if free.any():
                index = some[free.argmax()]
                return Point(float(x[index]), float(y[index]) + height)
        return None
