"""Cubic Béziers as a pattern cutter needs them: measured, walked, split.

All lengths are measured on the curve itself by Gauss-Legendre quadrature (24 points, halves compared), never
on chords: a polyline of 0.1 mm sag is already some 0.1 mm short on a crotch curve.
Every object is frozen; an operation returns a new one.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from drafting.points import Point, Vector
from drafting.tolerance import FLATTEN, JOIN, LENGTH

Coordinates = NDArray[np.float64]
"""An array of shape (n, 2): x and y in millimetres."""

_GAUSS = [
    (0.5 + 0.5 * float(node), 0.5 * float(weight))
    for node, weight in zip(*np.polynomial.legendre.leggauss(24), strict=True)
]
"""Places and weights of Gauss and Legendre on 0 to 1: 24 of them measure a cutter's curve to rounding."""

_ROUNDING = 1e-12
"""No length is known better than to this share of it, however small its pieces."""
QUARTER_ROUND = 0.55
"""Handles of a quarter ellipse as a share of the way to its corner."""
_INSIDE = 1e-6
"""A parameter this far inside the ends has a tangent even where the end itself has none."""


@dataclass(frozen=True)
class Cubic:
    """A cubic Bézier from `start` to `end`; a straight line is one whose handles lie at its thirds."""

    start: Point
    c1: Point
    c2: Point
    end: Point

    @staticmethod
    def line(start: Point, end: Point) -> Cubic:
        """Return the straight line from `start` to `end`."""
        return Cubic(start, start.towards(end, 1 / 3), start.towards(end, 2 / 3), end)

    @cached_property
    def _control(self) -> Coordinates:
        p, q, r, s = self.start, self.c1, self.c2, self.end
        return np.array(((p.x, p.y), (q.x, q.y), (r.x, r.y), (s.x, s.y)))

    @staticmethod
    def bent(start: Point, leave: Vector, end: Point, arrive: Vector, share: float) -> Cubic:
        """Return the curve of one bend that leaves `start` along `leave` and reaches `end` along `arrive`.

        Its handles reach `share` (0 to 1) of the way to the corner in which the two directions meet: 0.55 is
        a quarter ellipse, 2/3 a parabola. Directions that meet in no such corner, so that no curve of one
        bend exists, get handles of a third of the chord.
        """
        turn, chord = leave.cross(arrive), end - start
        if turn:
            ahead, behind = chord.cross(arrive) / turn, leave.cross(chord) / turn
            if ahead > 0 and behind > 0:
                corner = start + leave * ahead
                return Cubic(start, start.towards(corner, share), end.towards(corner, share), end)
        reach = chord.length / 3
        return Cubic(start, start + leave.unit * reach, end + arrive.unit * -reach, end)

    @cached_property
    def straight(self) -> bool:
        """Whether both handles lie on the chord (within JOIN)."""
        chord = self.end - self.start
        reach = JOIN * max(chord.length, JOIN)
        return all(abs(chord.cross(c - self.start)) <= reach for c in (self.c1, self.c2))

    def point(self, t: float) -> Point:
        """Return the point at parameter `t`; 0 is the start, 1 the end, beyond is extrapolated."""
        u = 1 - t
        a, b, c, d = u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t
        p, q, r, s = self.start, self.c1, self.c2, self.end
        return Point(a * p.x + b * q.x + c * r.x + d * s.x, a * p.y + b * q.y + c * r.y + d * s.y)

    def velocity(self, t: float) -> Vector:
        """Return the derivative by the parameter at `t`."""
        u = 1 - t
        a, b, c = 3 * u * u, 6 * u * t, 3 * t * t
        p, q, r, s = self.start, self.c1, self.c2, self.end
        return Vector(
            a * (q.x - p.x) + b * (r.x - q.x) + c * (s.x - r.x),
            a * (q.y - p.y) + b * (r.y - q.y) + c * (s.y - r.y),
        )

    def bend(self, t: float) -> float:
        """Return the signed curvature at `t` in 1/mm, positive where the curve turns left."""
        return float(self.bends(np.array([t]))[0])

    def bends(self, t: NDArray[np.float64]) -> NDArray[np.float64]:
        """Return the signed curvatures at the parameters `t`, shape (n,), in 1/mm, positive to the left."""
        d, u, t = self._control[1:] - self._control[:-1], 1 - t[:, None], t[:, None]
        v = 3 * (u * u * d[0] + 2 * u * t * d[1] + t * t * d[2])
        a = 6 * (u * (d[1] - d[0]) + t * (d[2] - d[1]))
        cross = v[:, 0] * a[:, 1] - v[:, 1] * a[:, 0]
        return np.asarray(cross / np.maximum(np.hypot(v[:, 0], v[:, 1]) ** 3, JOIN), dtype=np.float64)

    def sharpest_bend(self, places: int = 17) -> float:
        """Return the largest curvature, whichever way it turns, at so many even parameters, in 1/mm."""
        return float(np.abs(self.bends(np.linspace(0, 1, places))).max())

    def direction(self, t: float) -> Vector:
        """Return the unit tangent at `t`; where a handle lies on its own end, the tangent just inside it."""
        v = self.velocity(t)
        return v.unit if v.length > JOIN else self.velocity(min(max(t, _INSIDE), 1 - _INSIDE)).unit

    def _quadrature(self, t0: float, t1: float) -> float:
        p, q, r, s = self.start, self.c1, self.c2, self.end
        x0, x1, x2 = 3 * (q.x - p.x), 3 * (r.x - q.x), 3 * (s.x - r.x)
        y0, y1, y2 = 3 * (q.y - p.y), 3 * (r.y - q.y), 3 * (s.y - r.y)
        span, total = t1 - t0, 0.0
        for node, weight in _GAUSS:
            t = t0 + span * node
            u = 1 - t
            a, b, c = u * u, 2 * u * t, t * t
            total += weight * math.hypot(a * x0 + b * x1 + c * x2, a * y0 + b * y1 + c * y2)
        return span * total

    def length_to(self, t: float) -> float:
        """Return the length from the start to parameter `t` in millimetres."""
        if self.straight:
            return (self.point(t) - self.start).length
        whole = self._quadrature(0, t)
        halves = self._quadrature(0, t / 2) + self._quadrature(t / 2, t)
        if abs(whole - halves) <= max(LENGTH, _ROUNDING * whole):
            return halves
        return sum(half.length for half in self.split(t)[0].split(0.5))

    @cached_property
    def length(self) -> float:
        """The length in millimetres."""
        return self.length_to(1)

    def parameter_at(self, distance: float) -> float:
        """Return the parameter at `distance` millimetres along; out of range is clipped to the ends."""
        if distance <= 0:
            return 0.0
        if distance >= self.length:
            return 1.0
        t, low, high = distance / self.length, 0.0, 1.0
        for _ in range(50):
            miss = self.length_to(t) - distance
            if abs(miss) < LENGTH / 100:
                break
            low, high = (low, t) if miss > 0 else (t, high)
            step = t - miss / max(self.velocity(t).length, JOIN)
            t = step if low < step < high else (low + high) / 2
        return t

    def split(self, t: float) -> tuple[Cubic, Cubic]:
        """Return the two parts before and after parameter `t` (de Casteljau)."""
        a, b, c = (p.towards(q, t) for p, q in pairwise((self.start, self.c1, self.c2, self.end)))
        d, e = a.towards(b, t), b.towards(c, t)
        f = d.towards(e, t)
        return Cubic(self.start, a, d, f), Cubic(f, e, c, self.end)

    def reversed(self) -> Cubic:
        """Return the same curve walked the other way."""
        return Cubic(self.end, self.c2, self.c1, self.start)

    def moved(self, move: Callable[[Point], Point]) -> Cubic:
        """Return the curve with `move` (an affine map) applied to its points."""
        return Cubic(move(self.start), move(self.c1), move(self.c2), move(self.end))

    def parameters(self, sag: float = FLATTEN) -> NDArray[np.float64]:
        """Return parameters, shape (n,), whose chords stay within `sag` millimetres of the curve.

        The count follows from the largest second difference: n = sqrt(6 max|D2| / 8 sag).
        """
        if self.straight:
            return np.array([0.0, 1.0])
        p, q, r, s = self.start, self.c1, self.c2, self.end
        second = max(((p - q) + (r - q)).length, ((q - r) + (s - r)).length)
        count = max(1, math.ceil(math.sqrt(6 * second / (8 * sag))))
        return np.linspace(0.0, 1.0, count + 1)

    def sample(self, t: NDArray[np.float64]) -> tuple[Coordinates, Coordinates]:
        """Return points and unit tangents, each of shape (n, 2), at the parameters `t`."""
        t = t[:, None]
        u = 1 - t
        weights = np.hstack([u**3, 3 * u * u * t, 3 * u * t * t, t**3])
        points = weights @ self._control
        d = self._control[1:] - self._control[:-1]
        if min(math.hypot(*d[0]), math.hypot(*d[2])) < JOIN:
            t, u = np.clip(t, _INSIDE, 1 - _INSIDE), np.clip(u, _INSIDE, 1 - _INSIDE)
        velocity = u * u * d[0] + 2 * u * t * d[1] + t * t * d[2]
        return points, velocity / np.hypot(velocity[:, :1], velocity[:, 1:])
