"""Points and vectors of the drawing plane: millimetres, x to the right, y up.

A point is a place and a vector is a way to go; subtracting places gives the way between them, and adding two
places is an error that shows at once.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Vector:
    """A displacement in millimetres."""

    x: float
    y: float

    def __add__(self, other: Vector) -> Vector:
        """Return the displacement of one after the other."""
        return Vector(self.x + other.x, self.y + other.y)

    def __neg__(self) -> Vector:
        """Return the way back."""
        return Vector(-self.x, -self.y)

    def __mul__(self, factor: float) -> Vector:
        """Return the displacement stretched by a factor."""
        return Vector(self.x * factor, self.y * factor)

    def dot(self, other: Vector) -> float:
        """Return the scalar product, in square millimetres."""
        return self.x * other.x + self.y * other.y

    def cross(self, other: Vector) -> float:
        """Return the signed area of the two, positive when `other` lies to the left (counter-clockwise)."""
        return self.x * other.y - self.y * other.x

    @property
    def length(self) -> float:
        """The length in millimetres."""
        return math.hypot(self.x, self.y)

    @property
    def left(self) -> Vector:
        """The same turned a quarter to the left."""
        return Vector(-self.y, self.x)

    @property
    def unit(self) -> Vector:
        """The same at length one; raises ZeroDivisionError for the zero vector."""
        return self * (1 / self.length)

    def turned(self, angle: float) -> Vector:
        """Return the same turned by `angle` radians, positive counter-clockwise."""
        c, s = math.cos(angle), math.sin(angle)
        return Vector(c * self.x - s * self.y, s * self.x + c * self.y)

    def angle_to(self, other: Vector) -> float:
        """Return the signed turn from self to `other` in radians, in (-pi, pi], left positive."""
        return math.atan2(self.cross(other), self.dot(other))


@dataclass(frozen=True, slots=True)
class Point:
    """A place on the paper."""

    x: float
    y: float

    def __add__(self, way: Vector) -> Point:
        """Return the place reached by going `way` from here."""
        return Point(self.x + way.x, self.y + way.y)

    def __sub__(self, other: Point) -> Vector:
        """Return the way from `other` to here."""
        return Vector(self.x - other.x, self.y - other.y)

    def __iter__(self) -> Iterator[float]:
        """Yield x then y, so that numpy and shapely take a point as a pair."""
        yield self.x
        yield self.y

    def towards(self, other: Point, share: float) -> Point:
        """Return the place at `share` of the way to `other`: 0 is here, 1 is there, others go beyond."""
        return Point(self.x + (other.x - self.x) * share, self.y + (other.y - self.y) * share)

    def turned(self, about: Point, angle: float) -> Point:
        """Return this place swung round `about` by `angle` radians, positive counter-clockwise."""
        return about + (self - about).turned(angle)


def meeting(a: Point, way_a: Vector, b: Point, way_b: Vector) -> Point:
    """Return where the line through `a` along `way_a` meets the one through `b` along `way_b`.

    Raises:
        ZeroDivisionError: the lines are parallel.
    """
    return a + way_a * ((b - a).cross(way_b) / way_a.cross(way_b))
