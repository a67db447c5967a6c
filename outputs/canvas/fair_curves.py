"""Fine polylines turned back into few smooth curves, for files whose lines people go on working on.

A cut line is parallel to curves, and no Bézier is exactly parallel to another, so the engine has it as fine
points. Cubics are fitted through them by least squares, the ends and their tangents held, the parameters
improved by Newton's step, and split at the worst point where one does not do (after P. J. Schneider, "An
Algorithm for Automatically Fitting Digitized Curves", Graphics Gems, 1990; from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from drafting.base.tolerance import FLATTEN, JOIN
from drafting.geometry.curves import Coordinates, Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from outputs.canvas.chords import turning, without_repeats

GAP = FLATTEN / 2
"""A curve lies within this of the fine points, mm, which lie on the exact line."""
_BENT = 3 * FLATTEN
"""Chords of `length` that turn by `angle` stand for a curve with a sag of some length * angle / 8; a vertex
with a larger one, in mm, is a corner (own trial)."""
_TURN = 0.26
"""So is one that turns more, in radians: 15 degrees."""
_LONGER = 4.0
"""And one between a chord and another so many times as long, which is a straight line: no curve is fitted
where no points hold it (own trial)."""
_ROUNDS = 20
"""How often the parameters are improved before a stretch is split (own trial)."""


def fair_curves(fine: Coordinates) -> Path:
    """Return straight lines and few cubics along a line of shape (n, 2), n at least 2, within GAP of it.

    Corners and ends stay exactly where they are; a ring repeats its first point.
    """
    line = without_repeats(fine)
    curves: list[Cubic] = []
    for start, end in pairwise(_corners(line)):
        curves += _along(line[start : end + 1])
    return Path(tuple(curves))


def _corners(line: Coordinates) -> list[int]:
    """Return where the line turns in a corner, its ends among them."""
    way = np.diff(line, axis=0)
    long = np.hypot(way[:, 0], way[:, 1])
    turn = turning(line)[1:-1]
    short, longer = np.minimum(long[:-1], long[1:]), np.maximum(long[:-1], long[1:])
    corner = (turn > _TURN) | (turn * longer / 8 > _BENT) | (longer > _LONGER * short)
    return [0, *(np.flatnonzero(corner) + 1).tolist(), len(line) - 1]


def _along(stretch: Coordinates) -> Iterator[Cubic]:
    """Yield the curves along a stretch without corners."""
    if len(stretch) < 4:
        yield from Path.through([Point(x, y) for x, y in stretch.tolist()]).curves
        return
    yield from _fitted(stretch, _leaving(stretch), -_leaving(stretch[::-1]))


def _leaving(points: Coordinates) -> Coordinates:
    """Return the unit tangent at the first of the points, that of the parabola through three of them."""
    first, second = np.diff(points[:3], axis=0)
    long, longer = np.hypot(*first), np.hypot(*second)
    slope = first / long + (first / long - second / longer) * long / (long + longer)
    return np.asarray(slope / np.hypot(*slope))


def _fitted(points: Coordinates, leave: Coordinates, arrive: Coordinates) -> Iterator[Cubic]:
    """Yield cubics along the points from tangent to tangent, smooth where they join."""
    steps = np.hypot(*np.diff(points, axis=0).T)
    t = np.append(0.0, np.cumsum(steps)) / steps.sum()
    for _ in range(_ROUNDS):
        control = _least_squares(points, t, leave, arrive)
        on, velocity, bend = _at(control, t)
        off = on - points
        misses = np.hypot(off[:, 0], off[:, 1])
        if misses.max() <= GAP:
            yield Cubic(*(Point(x, y) for x, y in control.tolist()))
            return
        slope = (velocity**2).sum(axis=1) + (off * bend).sum(axis=1)
        step = np.divide((off * velocity).sum(axis=1), slope, out=np.zeros_like(t), where=slope > JOIN)
        t = np.maximum.accumulate(np.clip(t - step, 0, 1))
    if len(points) == 2:
        yield Cubic.line(*(Point(x, y) for x, y in points.tolist()))
        return
    middle = int(np.clip(misses.argmax(), 1, len(points) - 2))
    way = points[middle + 1] - points[middle - 1]
    way /= np.hypot(*way)
    yield from _fitted(points[: middle + 1], leave, way)
    yield from _fitted(points[middle:], way, arrive)


def _least_squares(
    points: Coordinates, t: NDArray[np.float64], leave: Coordinates, arrive: Coordinates
) -> Coordinates:
    """Return the control points of the cubic nearest to the points at the parameters `t`."""
    start, end = points[0], points[-1]
    u = 1 - t
    early, late = (3 * u * u * t)[:, None], (3 * u * t * t)[:, None]
    rest = points - start * (u[:, None] ** 3 + early) - end * (late + t[:, None] ** 3)
    sides = np.column_stack([(early * leave).ravel(), (late * -arrive).ravel()])
    reach = np.linalg.lstsq(sides, rest.ravel(), rcond=None)[0]
    chord = float(np.hypot(*(end - start)))
    if reach.min() < 0.01 * chord:  # a handle that points backwards makes a loop
        reach = np.full(2, chord / 3)
    return np.array([start, start + reach[0] * leave, end - reach[1] * arrive, end])


def _at(control: Coordinates, t: NDArray[np.float64]) -> tuple[Coordinates, Coordinates, Coordinates]:
    """Return places, first and second derivatives of a cubic, each of shape (n, 2)."""
    t, (p, q, r, s) = t[:, None], control
    u = 1 - t
    on = u**3 * p + 3 * u * u * t * q + 3 * u * t * t * r + t**3 * s
    velocity = 3 * (u * u * (q - p) + 2 * u * t * (r - q) + t * t * (s - r))
    bend = 6 * (u * (p - 2 * q + r) + t * (q - 2 * r + s))
    return on, velocity, bend
