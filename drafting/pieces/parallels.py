"""Lines parallel to an edge: each curve is sampled and moved along its own normals, never its chords'.

The chords of a polygon turn the ends of an offset by half a chord's angle (0.3 mm at a 15 mm allowance);
normals taken from the Bézier itself leave the ends exact at any sampling.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from drafting.base.tolerance import FLATTEN
from drafting.geometry.curves import Coordinates, Cubic
from drafting.geometry.points import Point, Vector
from drafting.pieces.kinds import EdgeKind
from drafting.pieces.pieces import Edge, Finish


class Misfit(Exception):
    """An allowance that cannot be laid round these edges."""

    def __init__(self, *edges: EdgeKind, hollow: bool = False) -> None:
        """Keep which edges, and whether the curve itself is too hollow for the allowance."""
        super().__init__(*edges)
        self.edges = frozenset(edges)
        self.hollow = hollow


@dataclass(frozen=True, eq=False)
class Parallel:
    """A smooth stretch of an edge with the line parallel to it.

    Attributes:
        edge: The edge it belongs to.
        points: The parallel line, shape (n, 2), on the right of the edge by the edge's allowance.
        start: Where the stretch starts on the sew line.
        end: Where it ends there.
        leaving: Unit tangent at the start.
        arriving: Unit tangent at the end.
    """

    edge: Edge
    points: Coordinates
    start: Point
    end: Point
    leaving: Vector
    arriving: Vector

    @property
    def allowance(self) -> float:
        """How far the line lies from the edge, in mm; nothing is added at a fold."""
        return added(self.edge)

    def reversed(self) -> Parallel:
        """Return the same line walked the other way; the allowance then lies to the left."""
        return Parallel(self.edge, self.points[::-1], self.end, self.start, -self.arriving, -self.leaving)


def added(edge: Edge) -> float:
    """Return the width in mm that `edge` gets: its allowance, or nothing where the cloth is folded."""
    return 0.0 if edge.finish is Finish.FOLD else edge.allowance


def parallels(edge: Edge) -> list[Parallel]:
    """Return the smooth stretches of `edge` in order, cut wherever two of its curves meet in a corner.

    Raises:
        Misfit: the edge is somewhere more hollow than its allowance is wide.
    """
    done: list[Parallel] = []
    for curve in edge.path.curves:
        parallel = _beside(curve, edge)
        if done and smooth(done[-1], parallel):
            before = done.pop()
            join = 0.5 * (before.points[-1:] + parallel.points[:1])
            points = np.vstack([before.points[:-1], join, parallel.points[1:]])
            parallel = Parallel(edge, points, before.start, parallel.end, before.leaving, parallel.arriving)
        done.append(parallel)
    return done


def smooth(before: Parallel, after: Parallel) -> bool:
    """Return whether the two parallels meet end to end without a corner that could be seen or cut."""
    turn = abs(before.arriving.angle_to(after.leaving))
    return before.allowance == after.allowance and before.allowance * turn < FLATTEN


def extended(points: Coordinates, way: Vector, reach: float) -> Coordinates:
    """Return the line `points`, shape (n, 2), with one more point `reach` mm on along `way`."""
    return np.vstack([points, points[-1] + reach * np.array((way.x, way.y))])


def crossings(first: Coordinates, second: Coordinates) -> list[tuple[float, float]]:
    """Return where two lines of shape (n, 2) cross, in order along `first`.

    Each crossing is a position on either line, 0..n-1, counted in points.
    """
    p, r = first[:-1, None], np.diff(first, axis=0)[:, None]
    q, s = second[None, :-1], np.diff(second, axis=0)[None]
    area = r[..., 0] * s[..., 1] - r[..., 1] * s[..., 0]
    gap = q - p
    with np.errstate(divide="ignore", invalid="ignore"):
        u = (gap[..., 0] * s[..., 1] - gap[..., 1] * s[..., 0]) / area
        v = (gap[..., 0] * r[..., 1] - gap[..., 1] * r[..., 0]) / area
    slack = 1e-9
    hits = np.argwhere((u >= -slack) & (u <= 1 + slack) & (v >= -slack) & (v <= 1 + slack))
    return sorted((i + float(u[i, j]), j + float(v[i, j])) for i, j in hits.tolist())


def at(points: Coordinates, position: float) -> Coordinates:
    """Return the place, shape (2,), at a position counted in points."""
    index = min(max(int(position), 0), len(points) - 2)
    return np.asarray(points[index] + (position - index) * (points[index + 1] - points[index]))


def _beside(curve: Cubic, edge: Edge) -> Parallel:
    d = added(edge)
    t = curve.parameters()
    bends = curve.bends(t)
    if (1 + d * bends <= 0).any():
        raise Misfit(edge.kind, hollow=True)
    widening = 1 + d * max(float(bends.max()), 0.0)
    if widening > 1:
        # The parallel of a rounded-out curve has longer chords, hence a larger gap, than the curve.
        t = curve.parameters(FLATTEN / widening)
    points, tangents = curve.sample(t)
    points = points + d * np.column_stack([tangents[:, 1], -tangents[:, 0]])
    return Parallel(edge, points, curve.start, curve.end, Vector(*tangents[0]), Vector(*tangents[-1]))
