"""Pattern pieces: a closed ring of edges, each with its own allowance and finish.

A ring runs counter-clockwise seen from the right side of the cloth, so the cloth always lies to the left of
an edge and the allowance to the right. Distances of notches are millimetres along their edge from its start.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from enum import Enum
from functools import cached_property
from itertools import pairwise

import numpy as np
from shapely.geometry import Polygon

from drafting.base.tolerance import FLATTEN, JOIN
from drafting.body.measurements import Side
from drafting.geometry.curves import Coordinates
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.kinds import EdgeKind, PieceId, PieceKind, PlaceKind
from drafting.pieces.words import edge_name, piece_name, place_name


class Material(Enum):
    """What a piece is cut from."""

    DENIM = "denim"
    POCKETING = "pocketing"
    INTERFACING = "interfacing"
    TEMPLATE = "paper template"


class Finish(Enum):
    """How an edge is sewn, which decides the shape of its allowance."""

    SEAM = "seam"
    """Joined to another edge; the allowance runs parallel."""
    HEM = "hem"
    """Turned up along the edge; the allowance mirrors the piece so that it lies flat behind it."""
    FOLD = "fold"
    """Laid on the fold of the cloth; nothing is added."""


class NotchKind(Enum):
    """How many cuts mark the place: one for the front of the body, two for the back (common practice)."""

    SINGLE = 1
    DOUBLE = 2


class MarkKind(Enum):
    """What a mark inside the piece is for."""

    LINE = "line"
    """A line to transfer or to fold along, such as a crease or a placing line."""
    DRILL = "drill"
    """A point to mark through the cloth."""


@dataclass(frozen=True)
class Notch:
    """A place on an edge that meets a place on another; both show the same, with the same number."""

    shows: PlaceKind
    distance: float
    kind: NotchKind = NotchKind.SINGLE
    number: int = 0

    @property
    def place(self) -> tuple[PlaceKind, int]:
        """What it shows and the number of several, by which the notches of two edges find each other."""
        return self.shows, self.number

    @property
    def name(self) -> str:
        """What it is called in print."""
        return place_name(*self.place)


@dataclass(frozen=True)
class Edge:
    """One side of a piece, with its seam or hem allowance in millimetres (0 for none).

    A hem's allowance may hold a turn-up: cloth that is folded up behind the leg and then, along the hem line,
    up in front of it. Its depth is `turn_up`, and it takes twice that of the allowance.
    """

    kind: EdgeKind
    path: Path
    allowance: float = 0.0
    finish: Finish = Finish.SEAM
    notches: tuple[Notch, ...] = ()
    turn_up: float = 0.0

    @property
    def name(self) -> str:
        """What it is called in print."""
        return edge_name(self.kind)

    @property
    def length(self) -> float:
        """The sewn length in millimetres."""
        return self.path.length

    def moved(self, move: Callable[[Point], Point]) -> Edge:
        """Return the edge with `move` (an affine map) applied to its line; notches keep their distance."""
        return replace(self, path=self.path.moved(move))

    def reversed(self) -> Edge:
        """Return the edge walked the other way."""
        notches = (replace(notch, distance=self.length - notch.distance) for notch in reversed(self.notches))
        return replace(self, path=self.path.reversed(), notches=tuple(notches))


@dataclass(frozen=True)
class Mark:
    """A line or point drawn inside the piece: a path of any length, or a point as a path's start."""

    shows: PlaceKind
    kind: MarkKind
    path: Path

    @property
    def name(self) -> str:
        """What it is called in print."""
        return place_name(self.shows)

    def moved(self, move: Callable[[Point], Point]) -> Mark:
        """Return the mark with `move` (an affine map) applied to it."""
        return replace(self, path=self.path.moved(move))


SEWN_MARKS = {
    EdgeKind.OPENING: PlaceKind.POCKET_OPENING,
    EdgeKind.INNER_DART_LEG: PlaceKind.INNER_DART_LEG,
    EdgeKind.OUTER_DART_LEG: PlaceKind.OUTER_DART_LEG,
}
"""Marked lines that are sewn like edges."""


@dataclass(frozen=True)
class Cutting:
    """How a piece is cut: how many, of what, and whether as mirrored pairs."""

    quantity: int = 1
    pairs: bool = False
    material: Material = Material.DENIM

    def text(self) -> str:
        """Return the instruction as a cutter reads it, such as "cut 2 = 1 pair, flip for the second"."""
        if self.pairs:
            count = self.quantity // 2
            return f"cut {self.quantity} = {count} pair{'s' * (count > 1)}, flip for the second"
        return f"cut {self.quantity}, this side up"


@dataclass(frozen=True)
class Piece:
    """A pattern piece, drawn as seen from the right side of the cloth.

    Attributes:
        kind: What it is.
        edges: The ring, counter-clockwise; each edge starts where the one before it ends.
        grain: The straight line that lies along the warp, from hem to waist.
        cutting: Quantity, pairs and material.
        marks: Lines and points inside.
        drawn_larger: How many times its size after the first wash it is drawn, along the grain and across it.
        side: The side of the body it is for, None where both sides are alike; of the fly the front it is for.

    Raises:
        ValueError: the ring does not close or runs clockwise.
    """

    kind: PieceKind
    edges: tuple[Edge, ...]
    grain: Path
    cutting: Cutting = field(default_factory=Cutting)
    marks: tuple[Mark, ...] = ()
    drawn_larger: tuple[float, float] = (1.0, 1.0)
    side: Side | None = None

    def __post_init__(self) -> None:
        """Check that the ring closes and runs counter-clockwise."""
        for before, after in pairwise((*self.edges, self.edges[0])):
            if (after.path.start - before.path.end).length > JOIN:
                raise ValueError(f"{self.name}: {before.name} does not meet {after.name}")
        if _signed_area(self.outline(1.0)) <= 0:
            raise ValueError(f"{self.name}: the edges must run counter-clockwise")

    @property
    def id(self) -> PieceId:
        """Which piece of a pattern it is; no other has the same."""
        return PieceId(self.kind, self.side, self.cutting.material is Material.INTERFACING)

    @property
    def name(self) -> str:
        """What it is called in print."""
        return piece_name(self.id)

    @property
    def name_in_its_cloth(self) -> str:
        """What it is called where the cloth is told already: an interfacing like its piece."""
        return piece_name(replace(self.id, interfacing=False))

    @property
    def cut_text(self) -> str:
        """How it is cut, as a cutter reads it, such as "cut 2 on the fold"."""
        if any(edge.finish is Finish.FOLD for edge in self.edges):
            return f"cut {self.cutting.quantity} on the fold"
        return self.cutting.text()

    def has(self, kind: EdgeKind) -> bool:
        """Return whether there is an edge of a kind."""
        return any(edge.kind == kind for edge in self.edges)

    def edge(self, kind: EdgeKind) -> Edge:
        """Return the edge of a kind; raises KeyError when there is none."""
        for edge in self.edges:
            if edge.kind == kind:
                return edge
        raise KeyError(f"{self.name} has no edge {edge_name(kind)!r}")

    def sewn(self, kind: EdgeKind) -> Edge:
        """Return the edge of a kind, or the marked line that is sewn as one; else KeyError."""
        for mark in self.marks:
            if mark.kind is MarkKind.LINE and mark.shows == SEWN_MARKS.get(kind):
                return Edge(kind, mark.path)
        return self.edge(kind)

    def outline(self, sag: float = FLATTEN) -> Coordinates:
        """Return the sew line as points (n, 2), the first not repeated, `sag` mm off the curves at most."""
        return np.vstack([edge.path.flatten(sag)[:-1] for edge in self.edges])

    @cached_property
    def polygon(self) -> Polygon:
        """The sewn shape, chords within FLATTEN of the curves."""
        return Polygon(self.outline())

    def with_edges(self, *changed: Edge) -> Piece:
        """Return the piece with each edge of the same kind replaced."""
        new = {edge.kind: edge for edge in changed}
        return replace(self, edges=tuple(new.get(edge.kind, edge) for edge in self.edges))

    def moved(self, move: Callable[[Point], Point]) -> Piece:
        """Return the piece with `move` (an affine map that does not mirror) applied to it; see `Edge`."""
        edges = tuple(edge.moved(move) for edge in self.edges)
        return replace(self, edges=edges, grain=self.grain.moved(move), marks=self._marks(move))

    def mirrored(self) -> Piece:
        """Return the piece for the other side of the body: flipped, its ring still counter-clockwise."""

        def flip(p: Point) -> Point:
            return Point(-p.x, p.y)

        edges = tuple(edge.reversed().moved(flip) for edge in reversed(self.edges))
        return replace(self, edges=edges, grain=self.grain.moved(flip), marks=self._marks(flip))

    def _marks(self, move: Callable[[Point], Point]) -> tuple[Mark, ...]:
        return tuple(mark.moved(move) for mark in self.marks)


def _signed_area(ring: Coordinates) -> float:
    x, y = ring.T
    return 0.5 * float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1)))
