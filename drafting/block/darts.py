"""Darts in a waist line: closed to draw the line in one sweep, and opened again to cut it.

Closing a dart swings everything outside it about its tip.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector
from drafting.geometry.solve import bisect


@dataclass(frozen=True)
class Dart:
    """A dart in the waist line: `inner` leg towards the centre, `outer` leg towards the side, `tip` below."""

    inner: Point
    tip: Point
    outer: Point

    @property
    def angle(self) -> float:
        """The turn, radians, that closes it by swinging the outer part in (negative: clockwise)."""
        return (self.outer - self.tip).angle_to(self.inner - self.tip)

    def opening(self, y: float) -> float:
        """Return how far its legs stand apart at height `y`, mm: 0 below the tip, its width at the top."""
        share = (y - self.tip.y) / ((self.inner.y + self.outer.y) / 2 - self.tip.y)
        return self.width * min(max(share, 0.0), 1.0)

    @property
    def width(self) -> float:
        """Its opening at the waist line, mm."""
        return (self.outer - self.inner).length


def close_darts(waist: tuple[Path, ...], darts: tuple[Dart, ...]) -> Path:
    """Return the waist line with the darts closed."""
    closed = waist[0]
    for index, part in enumerate(waist[1:], start=1):
        inside = darts[:index]
        closed = closed + part.moved(partial(swung_shut, inside=inside))
    return closed


@dataclass(frozen=True)
class Fold:
    """A dart before the waist line is known: its tip and the directions of its legs, open."""

    tip: Point
    inner: Vector
    outer: Vector

    @property
    def angle(self) -> float:
        """The turn, radians, that closes it (negative: clockwise)."""
        return self.outer.angle_to(self.inner)


def swung_shut(p: Point, inside: Sequence[Dart | Fold]) -> Point:
    """Return where a point beyond the darts `inside` lies when they are closed, the outermost first."""
    for dart in reversed(inside):
        p = p.turned(dart.tip, dart.angle)
    return p


def _opened(p: Point, inside: tuple[Fold, ...]) -> Point:
    """Return where a point of the closed waist lies when the darts `inside` are opened again."""
    for fold in inside:
        p = p.turned(fold.tip, -fold.angle)
    return p


def folds_between(top: Point, side: Point, count: int, angle: float, length: float) -> tuple[Fold, ...]:
    """Return the darts, evenly spaced between centre and side, square to the line between them."""
    down = (side - top).unit.left
    folds = []
    for index in range(count):
        tip = top.towards(side, (index + 1) / (count + 1)) + down * length
        folds.append(Fold(tip, (-down).turned(-angle / 2), (-down).turned(angle / 2)))
    return tuple(folds)


def open_darts(closed: Cubic, folds: tuple[Fold, ...]) -> tuple[tuple[Path, ...], tuple[Dart, ...]]:
    """Cut the closed waist at the dart legs and swing the outer parts back."""
    stretches: list[Path] = []
    cut: list[Dart] = []
    rest = closed
    for index, fold in enumerate(folds):
        inside = folds[:index]
        tip = swung_shut(fold.tip, inside)
        leg = fold.inner.turned(sum(f.angle for f in inside))
        part, rest = rest.split(_parameter_on_ray(rest, tip, leg))
        stretches.append(Path((part.moved(partial(_opened, inside=inside)),)))
        outer = _opened(part.end, folds[: index + 1])
        cut.append(Dart(stretches[-1].end, fold.tip, outer))
    stretches.append(Path((rest.moved(partial(_opened, inside=folds)),)))
    return tuple(stretches), tuple(cut)


def _parameter_on_ray(curve: Cubic, origin: Point, way: Vector) -> float:
    """Return where the curve crosses the line from `origin` along `way`; it crosses once."""
    sign = way.cross(curve.start - origin) > 0
    return bisect(lambda t: (way.cross(curve.point(t) - origin) > 0) != sign, 0.0, 1.0, within=1e-15)
