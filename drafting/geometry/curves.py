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

from drafting.base.tolerance import FLATTEN, JOIN, LENGTH
from drafting.geometry.points import Point, Vector
from drafting.geometry.solve import newton

Coordinates = NDArray[np.float64]
"""An array of shape (n, 2): x and y in millimetres."""


def _quadratics(t: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the weights, shape (n, 3), of a quadratic Bézier's three points at `t`, shape (n, 1)."""
    u = 1 - t
    return np.hstack([u * u, 2 * u * t, t * t])


def _changes(t: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return half the derivatives of those weights by `t`, likewise shaped."""
    return np.hstack([t - 1, 1 - 2 * t, t])


def _gauss() -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Return what measures a curve twice over, in one piece and in two halves.

    The first, shape (72, 3), weights the velocity's three points at the places of Gauss and Legendre: 24 of
    them measure a cutter's curve to rounding. The second, shape (2, 72), sums the speeds there.
    """
    node, weight = np.polynomial.legendre.leggauss(24)
    place, weight, none = 0.5 + 0.5 * node, 0.5 * weight, np.zeros(24)
    places = np.concatenate([place, place / 2, 0.5 + place / 2])
    sums = np.concatenate([weight, none, none, none, weight / 2, weight / 2]).reshape(2, 72)
    return _quadratics(places[:, None]), sums


_VELOCITIES, _SUMS = _gauss()

_EVENLY = np.linspace(0, 1, 65)[:, None]
"""Parameters at which a curve is asked for its sharpest bend: a deep scoop turns within a short stretch."""
_VELOCITIES_EVENLY, _CHANGES_EVENLY = _quadratics(_EVENLY), _changes(_EVENLY)

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

    @cached_property
    def _edges(self) -> Coordinates:
        """The three sides of the control polygon; three times their quadratic Bézier is the velocity."""
        return self._control[1:] - self._control[:-1]

    @staticmethod
    def bent(start: Point, leave: Vector, end: Point, arrive: Vector, share: float) -> Cubic:
        """Return the curve of one bend that leaves `start` along `leave` and reaches `end` along `arrive`.

        Its handles reach `share` (0 to 1) of the way to the corner in which the two directions meet: 0.55 is
        a quarter ellipse, 2/3 a parabola. Directions that meet in no such corner, so that no curve of one
        bend exists, get handles of a third of the chord.
        """
        corner = _corner(start, leave, end, arrive)
        if corner:
            return Cubic(start, start.towards(corner, share), end.towards(corner, share), end)
        return _unbent(start, leave, end, arrive)

    @staticmethod
    def squared(start: Point, leave: Vector, end: Point, arrive: Vector) -> Cubic:
        """Return such a curve that bends as roundly as the end nearer to the corner allows.

        From the other end it runs almost straight, as a line is squared to a seam. Both handles stop short of
        the corner by a third of the way from it to the nearer end; midway between the ends that is a
        parabola.
        """
        corner = _corner(start, leave, end, arrive)
        if not corner:
            return _unbent(start, leave, end, arrive)
        first, last = start - corner, end - corner
        short = min(first.length, last.length) / 3
        return Cubic(start, corner + first.unit * short, corner + last.unit * short, end)

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
        t = t[:, None]
        return self._bends(_quadratics(t), _changes(t))

    def sharpest_bend(self) -> float:
        """Return the largest curvature, whichever way it turns, in 1/mm."""
        return float(np.abs(self._bends(_VELOCITIES_EVENLY, _CHANGES_EVENLY)).max())

    def _bends(self, velocities: NDArray[np.float64], changes: NDArray[np.float64]) -> NDArray[np.float64]:
        v, a = 3 * velocities @ self._edges, 6 * changes @ self._edges
        cross = v[:, 0] * a[:, 1] - v[:, 1] * a[:, 0]
        return np.asarray(cross / np.maximum(np.hypot(v[:, 0], v[:, 1]) ** 3, JOIN), dtype=np.float64)

    def direction(self, t: float) -> Vector:
        """Return the unit tangent at `t`; where a handle lies on its own end, the tangent just inside it."""
        v = self.velocity(t)
        return v.unit if v.length > JOIN else self.velocity(min(max(t, _INSIDE), 1 - _INSIDE)).unit

    def length_to(self, t: float) -> float:
        """Return the length from the start to parameter `t` in millimetres."""
        if self.straight:
            return (self.point(t) - self.start).length
        edges = self._edges
        if t != 1:
            u = 1 - t
            edges = np.array(((1, 0, 0), (u, t, 0), (u * u, 2 * u * t, t * t))) @ edges
        velocity = _VELOCITIES @ edges
        whole, halves = 3 * t * (_SUMS @ np.hypot(velocity[:, 0], velocity[:, 1]))
        if abs(whole - halves) <= max(LENGTH, _ROUNDING * whole):
            return float(halves)
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
        return newton(
            lambda t: self.length_to(t) - distance,
            lambda t: max(self.velocity(t).length, JOIN),
            distance / self.length,
            enough=LENGTH / 100,
        )

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

    def places(self, t: NDArray[np.float64]) -> Coordinates:
        """Return the points, shape (n, 2), at the parameters `t`, shape (n,)."""
        t = t[:, None]
        u = 1 - t
        return np.hstack([u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t]) @ self._control

    def sample(self, t: NDArray[np.float64]) -> tuple[Coordinates, Coordinates]:
        """Return points and unit tangents, each of shape (n, 2), at the parameters `t`, shape (n,)."""
        d = self._edges
        within = t[:, None]
        if min(math.hypot(*d[0]), math.hypot(*d[2])) < JOIN:
            within = np.clip(within, _INSIDE, 1 - _INSIDE)
        velocity = _quadratics(within) @ d
        return self.places(t), velocity / np.hypot(velocity[:, :1], velocity[:, 1:])


def _corner(start: Point, leave: Vector, end: Point, arrive: Vector) -> Point | None:
    """Return where the two directions meet, None where that is behind either end."""
    turn, chord = leave.cross(arrive), end - start
    if not turn:
        return None
    ahead, behind = chord.cross(arrive) / turn, leave.cross(chord) / turn
    return start + leave * ahead if ahead > 0 and behind > 0 else None


def _unbent(start: Point, leave: Vector, end: Point, arrive: Vector) -> Cubic:
    """Return a curve between directions that meet in no corner."""
    reach = (end - start).length / 3
    return Cubic(start, start + leave.unit * reach, end + arrive.unit * -reach, end)
