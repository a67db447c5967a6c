"""Where there is still room for lettering in a shape."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from drafting.geometry.points import Point, Vector

AT_ONCE = 100
"""How many places are tried in one call."""

_PROBES = ((0.5, 0.5), (0, 0), (1, 1), (0, 1), (1, 0))
"""Points of a box, as shares of its width and height: its middle and its corners."""


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

    def take(self, *drawn: BaseGeometry) -> None:
        """Keep lettering away from all that is `drawn` from now on; many at once are quicker than in turn."""
        near = shapely.buffer(drawn, self._clearance, quad_segs=2)
        self._free = shapely.difference(self._free, shapely.union_all(near))
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

        The places tried lie a step apart, closer in a narrow part of the shape; None when none is free.
        """
        found = (self._corner_in(part, width, height, wish) for part in shapely.get_parts(self._free))
        corners = [corner for corner in found if corner]
        middle = Vector(width / 2, -height / 2)
        return min(corners, key=lambda corner: (corner + middle - wish).length, default=None)

    def _corner_in(self, part: BaseGeometry, width: float, height: float, wish: Point) -> Point | None:
        left, bottom, right, top = part.bounds
        spare_x, spare_y = right - left - width, top - bottom - height
        if not (spare_x >= 0 and spare_y >= 0):  # also an empty shape, whose bounds are not numbers
            return None
        xs = np.linspace(left, left + spare_x, max(3, int(spare_x / self._step) + 1))
        ys = np.linspace(bottom, bottom + spare_y, max(3, int(spare_y / self._step) + 1))
        x, y = (axis.ravel() for axis in np.meshgrid(xs, ys))
        nearest = np.argsort(np.hypot(x + width / 2 - wish.x, y + height / 2 - wish.y), kind="stable")
        for some in np.array_split(nearest, len(nearest) // AT_ONCE + 1):
            free = self._first_free(x[some], y[some], width, height)
            if free is not None:
                index = some[free]
                return Point(float(x[index]), float(y[index]) + height)
        return None

    def _first_free(
        self, x: npt.NDArray[np.float64], y: npt.NDArray[np.float64], width: float, height: float
    ) -> int | None:
        """Return the index of the first box that is free, by their lower left corners; None when none is."""
        left = np.arange(len(x))
        # Points are asked about far more quickly than boxes, and most boxes have one that is not free.
        for across, up in _PROBES:
            left = left[shapely.intersects_xy(self._free, x[left] + across * width, y[left] + up * height)]
        boxes = shapely.box(x[left], y[left], x[left] + width, y[left] + height)
        free = left[shapely.covers(self._free, boxes)]
        return int(free[0]) if len(free) else None
