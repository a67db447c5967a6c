"""The lines round a piece: where it is cut, folded and sewn, and its notches; curves stay curves."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import groupby, pairwise

import numpy as np

from drafting.base.tolerance import JOIN
from drafting.geometry.curves import Coordinates, Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.allowance import CutLine, CutSide
from drafting.pieces.parallels import added
from drafting.pieces.pieces import Edge, Finish, NotchKind, Piece
from outputs.canvas.canvas import Outline, Polyline, Role, line

NOTCH_APART = 6.0
"""Distance of the two cuts of a double notch, mm (common practice)."""
NOTCH_INWARD = 5.0
"""Length of a notch on an edge without allowance, mm: drawn into the piece, for there is nothing outside
(common practice)."""


def outlines(piece: Piece, cut: CutLine) -> Iterator[tuple[Outline, Role]]:
    """Yield the cut line, the folds and the sew line.

    Nothing is cut along a fold, which reaches through the allowances beside it, so that fold and cut line
    close. The sew line is left out where it would lie on the cut line.
    """
    folds = list(_folds(cut))
    if folds:
        yield from ((_cut_along(run), Role.CUT) for run in _cut_runs(cut))
    elif any(map(_stays_curved, cut.sides)):
        yield _cut_along((*cut.sides, cut.sides[0])), Role.CUT
    else:
        yield Polyline(cut.outline, closed=True), Role.CUT
    for fold in folds:
        yield fold, Role.FOLD
    for run in _sewn_runs(piece):
        yield run, Role.SEW


def _folds(cut: CutLine) -> Iterator[Polyline]:
    """Yield the folds from corner to corner of the cut line; cloth folds along a straight line only."""
    for side, following in pairwise((*cut.sides, cut.sides[0])):
        if side.edge.finish is Finish.FOLD:
            yield line(side.points[0], following.points[0])


def _cut_runs(cut: CutLine) -> Iterator[list[CutSide]]:
    """Yield the stretches between folds, each with the side behind it, at whose start it ends."""
    sides = list(cut.sides)
    first = next(i for i, side in enumerate(sides) if side.edge.finish is Finish.FOLD)
    sides = [*sides[first:], *sides[: first + 1]]
    run: list[CutSide] = []
    for side in sides:
        if side.edge.finish is not Finish.FOLD:
            run.append(side)
        elif run:
            yield [*run, side]
            run = []


def _stays_curved(side: CutSide) -> bool:
    """Return whether the cut line is the edge itself, with its curves, from end to end."""
    path = side.edge.path
    if added(side.edge) or all(curve.straight for curve in path.curves):
        return False
    return all(_nearest(side, end)[1] < JOIN for end in (path.start, path.end))


def _nearest(side: CutSide, place: Point) -> tuple[int, float]:
    """Return which point of the side lies nearest to a place, and how far from it."""
    gaps = np.hypot(*(side.points - np.array(tuple(place))).T)
    index = int(gaps.argmin())
    return index, float(gaps[index])


def _cut_along(run: Sequence[CutSide]) -> Outline:
    """Return the cut line along the sides up to where the last of them begins."""
    *sides, following = run
    if not any(map(_stays_curved, sides)):
        return Polyline(np.vstack([*(side.points for side in sides), following.points[:1]]))
    steps = [step for side in sides for step in _steps(side)]
    return Path(tuple(_joined([*steps, *_points(following.points[:1])])))


def _steps(side: CutSide) -> Iterator[Point | Cubic]:
    """Yield the corners and, where the cut line is the edge itself, the curves that it runs along."""
    if not _stays_curved(side):
        yield from _points(side.points)
        return
    path = side.edge.path
    yield from _points(side.points[: _nearest(side, path.start)[0]])
    yield from path.curves
    yield from _points(side.points[_nearest(side, path.end)[0] :])


def _points(coordinates: Coordinates) -> Iterator[Point]:
    return (Point(x, y) for x, y in coordinates.tolist())


def _joined(steps: Iterable[Point | Cubic]) -> Iterator[Cubic]:
    """Yield the steps as curves, with a straight line from each to the next where they do not meet."""
    at: Point | None = None
    for step in steps:
        start, end = (step.start, step.end) if isinstance(step, Cubic) else (step, step)
        if at is not None and math.dist(at, start) > JOIN:
            yield Cubic.line(at, start)
        if isinstance(step, Cubic):
            yield step
        at = end


def _sewn_runs(piece: Piece) -> Iterator[Path]:
    """Yield the stretches of the ring that carry an allowance, each as one path."""
    edges = list(piece.edges)
    bare = next((i for i, edge in enumerate(edges) if not edge.allowance), None)
    if bare is not None:
        edges = edges[bare:] + edges[:bare]  # so that no run is split where the ring happens to start
    for carries, run in groupby(edges, key=lambda edge: edge.allowance > 0):
        if carries:
            yield Path(tuple(curve for edge in run for curve in edge.path.curves))


def notch_lines(cut: CutLine, edge: Edge) -> Iterator[Polyline]:
    """Yield a stroke for every cut of an edge's notches: across the allowance, without one into the piece."""
    for notch in edge.notches:
        shifts = (0.0,) if notch.kind is NotchKind.SINGLE else (-NOTCH_APART / 2, NOTCH_APART / 2)
        for shift in shifts:
            place = cut.notch(edge, replace(notch, distance=notch.distance + shift))
            tip = place.cut if edge.allowance else place.sewn + place.outward * -NOTCH_INWARD
            yield line(place.sewn, tip)
