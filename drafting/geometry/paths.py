"""Paths: curves joined end to end, walked by their length.

An edge of a pattern piece is a path. Distances are millimetres along the path from its start.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Protocol

import numpy as np

from drafting.base.tolerance import FLATTEN, JOIN
from drafting.geometry.curves import Coordinates, Cubic
from drafting.geometry.points import Point, Vector
from drafting.geometry.solve import newton


class Pen(Protocol):
    """What an outline is drawn with; a pen knows its paper, the outline does not."""

    def move_to(self, to: Point) -> None:
        """Start a new stroke at `to`."""

    def line_to(self, to: Point) -> None:
        """Draw straight to `to`."""

    def curve_to(self, c1: Point, c2: Point, to: Point) -> None:
        """Draw a cubic Bézier with handles `c1` and `c2` to `to`."""


@dataclass(frozen=True)
class Path:
    """Curves joined end to end.

    Raises:
        ValueError: there is no curve, or two neighbours do not meet within JOIN.
    """

    curves: tuple[Cubic, ...]

    def __post_init__(self) -> None:
        """Check that the curves meet."""
        if not self.curves:
            raise ValueError("a path needs at least one curve")
        for a, b in pairwise(self.curves):
            if (b.start - a.end).length > JOIN:
                raise ValueError(f"curves do not meet: {a.end} and {b.start}")

    @staticmethod
    def through(points: Sequence[Point]) -> Path:
        """Return the straight run through two or more points."""
        return Path(tuple(Cubic.line(a, b) for a, b in pairwise(points)))

    @property
    def start(self) -> Point:
        """The first point."""
        return self.curves[0].start

    @property
    def end(self) -> Point:
        """The last point."""
        return self.curves[-1].end

    @cached_property
    def length(self) -> float:
        """The length in millimetres."""
        return sum(curve.length for curve in self.curves)

    def _locate(self, distance: float) -> tuple[int, float]:
        """Return the curve at `distance` and the parameter on it, clipped to the ends."""
        for index, curve in enumerate(self.curves):
            if distance <= curve.length or index == len(self.curves) - 1:
                return index, curve.parameter_at(distance)
            distance -= curve.length
        raise AssertionError("a path has at least one curve")

    def point(self, distance: float) -> Point:
        """Return the point at `distance` along; out of range is clipped to the ends."""
        index, t = self._locate(distance)
        return self.curves[index].point(t)

    def direction(self, distance: float) -> Vector:
        """Return the unit tangent at `distance` along; out of range is clipped to the ends."""
        index, t = self._locate(distance)
        return self.curves[index].direction(t)

    def split(self, distance: float) -> tuple[Path, Path]:
        """Return the parts before and after `distance`.

        Raises:
            ValueError: `distance` is not inside the path, so one part would be empty.
        """
        if not JOIN < distance < self.length - JOIN:
            raise ValueError(f"cannot cut a path of {self.length:.3f} mm at {distance:.3f} mm")
        index, t = self._locate(distance)
        before, after = self.curves[index].split(t)
        first = self.curves[:index] + ((before,) if before.length > JOIN else ())
        rest = ((after,) if after.length > JOIN else ()) + self.curves[index + 1 :]
        return Path(first), Path(rest)

    def between(self, start: float, end: float) -> Path:
        """Return the part from `start` to `end` along, clipped to the path; raises ValueError when empty."""
        part = self
        if end < self.length - JOIN:
            part = part.split(end)[0]
        return part.split(start)[1] if start > JOIN else part

    def reversed(self) -> Path:
        """Return the same path walked the other way."""
        return Path(tuple(curve.reversed() for curve in reversed(self.curves)))

    def moved(self, move: Callable[[Point], Point]) -> Path:
        """Return the path with `move` (an affine map) applied to its points."""
        return Path(tuple(curve.moved(move) for curve in self.curves))

    def __add__(self, other: Path) -> Path:
        """Return this path followed by `other`, which must start where this one ends."""
        return Path(self.curves + other.curves)

    def flatten(self, sag: float = FLATTEN) -> Coordinates:
        """Return points, shape (n, 2), whose chords stay within `sag` millimetres of the path."""
        parts = [curve.places(curve.parameters(sag)) for curve in self.curves]
        return np.vstack([parts[0], *(part[1:] for part in parts[1:])])

    def crossing(self, y: float) -> Point | None:
        """Return the first point along at which the path meets the level `y`, None when it does not."""
        for curve in self.curves:
            t = parameter_at_level(curve, y)
            if t is not None:
                return curve.point(t)
        return None

    def draw(self, pen: Pen) -> None:
        """Draw the path as one stroke."""
        pen.move_to(self.start)
        self.draw_on(pen)

    def draw_on(self, pen: Pen) -> None:
        """Draw the path as the continuation of a stroke that already stands at its start."""
        for curve in self.curves:
            if curve.straight:
                pen.line_to(curve.end)
            else:
                pen.curve_to(curve.c1, curve.c2, curve.end)


def parameter_at_level(curve: Cubic, y: float) -> float | None:
    """Return the smallest parameter in 0..1 at which the curve has height `y`, None when it has none."""
    a, b, c, d = (p.y for p in (curve.start, curve.c1, curve.c2, curve.end))
    if not min(a, b, c, d) - JOIN <= y <= max(a, b, c, d) + JOIN:
        return None
    if not (a <= b <= c <= d or a >= b >= c >= d):
        roots = np.roots([d - 3 * c + 3 * b - a, 3 * (c - 2 * b + a), 3 * (b - a), a - y])
        inside = [float(r.real) for r in roots if abs(r.imag) < JOIN and -JOIN <= r.real <= 1 + JOIN]
        return min(max(min(inside), 0.0), 1.0) if inside else None
    # A curve that only rises or only falls crosses once.
    up = 1 if d > a else -1
    return newton(
        lambda t: up * (curve.point(t).y - y),
        lambda t: up * curve.velocity(t).y,
        (y - a) / (d - a) if d != a else 0.0,
        enough=JOIN,
    )
