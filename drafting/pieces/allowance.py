"""The cut line: every edge of a piece moved outwards by its own allowance, with corners that can be sewn."""

from __future__ import annotations

import bisect
import math
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise

import numpy as np
import shapely
from shapely.geometry import LineString, Polygon

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.tolerance import JOIN
from drafting.geometry.curves import Coordinates
from drafting.geometry.points import Point, Vector
from drafting.pieces.corners import join
from drafting.pieces.kinds import EdgeKind
from drafting.pieces.parallels import Misfit, Parallel, added, parallels
from drafting.pieces.pieces import Edge, Notch, Piece


class AllowanceTooWide(DraftRefused):
    """An allowance that cannot be cut.

    Attributes:
        piece: Name of the piece.
        edges: Names of the edges at which it fails.
        largest: The widest allowance in mm that these edges take, to a tenth of a millimetre rounded down.
    """

    def __init__(self, piece: str, edges: tuple[str, ...], wanted: float, largest: float, why: str) -> None:
        """Say what does not fit, why, and what would."""
        self.piece, self.edges, self.largest = piece, edges, largest
        message = f"This allowance does not fit, because {why}."
        where = f"{piece}, {', '.join(edges)}"
        plausible = f"at most {largest:.1f} mm"
        super().__init__([Problem(where, message, Severity.REFUSAL, f"{wanted:g} mm", plausible)])
        self.args = (piece, edges, wanted, largest, why)


@dataclass(frozen=True)
class NotchPlace:
    """Where a notch is cut: from the sew line at `sewn`, along `outward`, to the cut line at `cut`."""

    sewn: Point
    outward: Vector
    cut: Point


@dataclass(frozen=True, eq=False)
class CutSide:
    """The stretch of the cut line that belongs to one edge, shape (n, 2), from corner to corner."""

    edge: Edge
    points: Coordinates


@dataclass(frozen=True, eq=False)
class CutLine:
    """The line along which a piece is cut, counter-clockwise like its sew line.

    Attributes:
        sides: One stretch for each edge, in the order of the edges.
    """

    sides: tuple[CutSide, ...]

    @cached_property
    def outline(self) -> Coordinates:
        """The whole line, shape (n, 2), within FLATTEN of the exact one; the first point is not repeated.

        Points that repeat their neighbour or lie on a straight between two others are left out.
        """
        ring = np.vstack([side.points for side in self.sides])
        ahead = np.roll(ring, -1, axis=0) - ring
        ring = ring[np.hypot(ahead[:, 0], ahead[:, 1]) > JOIN]
        ahead = np.roll(ring, -1, axis=0) - ring
        ahead /= np.hypot(ahead[:, :1], ahead[:, 1:])
        behind = np.roll(ahead, 1, axis=0)
        turn = behind[:, 0] * ahead[:, 1] - behind[:, 1] * ahead[:, 0]
        onwards = (behind * ahead).sum(axis=1) > 0
        return np.asarray(ring[~(onwards & (np.abs(turn) < 1e-9))])

    @cached_property
    def polygon(self) -> Polygon:
        """The shape that is cut."""
        return Polygon(self.outline)

    def notch(self, edge: Edge, notch: Notch) -> NotchPlace:
        """Return where to draw `notch` of `edge`; shorter where a neighbour's corner trims the cut line."""
        place = edge.path.point(notch.distance)
        outward = -edge.path.direction(notch.distance).left
        end = place + outward * added(edge)
        inside = shapely.intersection(LineString([tuple(place), tuple(end)]), self.polygon)
        reach = max((math.dist(place, p) for p in shapely.get_coordinates(inside)), default=0.0)
        return NotchPlace(place, outward, place + outward * reach)


def cut_line(piece: Piece) -> CutLine:
    """Return the cut line of `piece`: each edge moved along its own normals by its own allowance.

    Neighbouring lines run on straight to their common corner; a corner further than MITRE times the wider
    allowance from the sew line is squared off one allowance beyond it. Where the sew line runs on but the
    allowance changes, the wider one ends in a square step. A hem's allowance mirrors the two edges beside it,
    cut line and all, about the hem line, so that it lies flat once turned up; a double turn counts as one.
    Folds and allowances of zero add nothing.

    Raises:
        AllowanceTooWide: an edge is too hollow, or the lines run into each other.
        ValueError: the sew line itself crosses itself.
    """
    try:
        return _laid_round(piece)
    except Misfit as misfit:
        if not piece.polygon.is_valid:
            raise ValueError(f"{piece.name}: the sew line crosses itself") from None
        raise _too_wide(piece, misfit) from None


def _laid_round(piece: Piece) -> CutLine:
    stretches = [(place, parallel) for place, edge in enumerate(piece.edges) for parallel in parallels(edge)]
    if len(stretches) == 1:
        stretches = [(0, half) for half in _halves(stretches[0][1])]
    ring = [parallel for _, parallel in stretches]
    joints = [join(a, b) for a, b in pairwise((*ring, ring[0]))]
    lines: list[list[Coordinates]] = [[] for _ in piece.edges]
    for i, (owner, parallel) in enumerate(stretches):
        coming, going = joints[i - 1], joints[i]
        if coming.enter > going.leave:
            raise Misfit(*(ring[k % len(ring)].edge.kind for k in (i - 1, i, i + 1)))
        inner = np.arange(len(parallel.points))
        kept = parallel.points[(inner > coming.enter) & (inner < going.leave)]
        lines[owner] += [coming.after, kept, going.before]
    cut = CutLine(
        tuple(CutSide(edge, np.vstack(line)) for edge, line in zip(piece.edges, lines, strict=True))
    )
    if not cut.polygon.is_valid:
        raise Misfit(*_tangled(cut))
    return cut


def _halves(parallel: Parallel) -> list[Parallel]:
    """Return a ring of a single parallel as two, so that each has a neighbour."""
    middle = len(parallel.points) // 2
    path = parallel.edge.path
    place = path.point(path.length / 2)
    ahead = path.direction(path.length / 2)
    return [
        replace(parallel, points=parallel.points[: middle + 1], end=place, arriving=ahead),
        replace(parallel, points=parallel.points[middle:], start=place, leaving=ahead),
    ]


def _tangled(cut: CutLine) -> tuple[EdgeKind, ...]:
    """Return the edge, or the two edges, whose cut lines cross."""
    lines = [
        LineString(np.vstack([side.points, following.points[:1]]))
        for side, following in pairwise((*cut.sides, cut.sides[0]))
    ]
    for i, line in enumerate(lines):
        if not line.is_simple:
            return (cut.sides[i].edge.kind,)
        for j in range(i):
            if lines[j].crosses(line):
                return cut.sides[j].edge.kind, cut.sides[i].edge.kind
    return tuple(side.edge.kind for side in cut.sides)


def _too_wide(piece: Piece, misfit: Misfit) -> AllowanceTooWide:
    """Return the refusal for a misfit, with the widest allowance that its edges would take."""
    guilty = [edge for edge in piece.edges if edge.kind in misfit.edges]
    wanted = max(added(edge) for edge in guilty)

    def fits(limit: float) -> bool:
        narrower = (replace(edge, allowance=min(edge.allowance, limit)) for edge in guilty)
        try:
            _laid_round(piece.with_edges(*narrower))
        except Misfit as other:
            return not misfit.edges & other.edges
        return True

    tenths = bisect.bisect_left(
        range(1, math.ceil(10 * wanted)), True, key=lambda tenths: not fits(tenths / 10)
    )
    why = "the edge is too hollow for it" if misfit.hollow else "the cut lines would run into each other"
    return AllowanceTooWide(piece.name, tuple(edge.name for edge in guilty), wanted, tenths / 10, why)
