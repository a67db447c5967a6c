"""Pattern pieces: a closed ring of named edges, each with its own allowance and finish.

A ring runs counter-clockwise seen from the right side of the cloth, so the cloth always lies to the left of
an edge and the allowance to the right. Distances of notches are millimetres along their edge from its start.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import Enum
from functools import cached_property
from itertools import pairwise

import numpy as np
from shapely.geometry import Polygon

from drafting.base.tolerance import FLATTEN, JOIN
from drafting.geometry.curves import Coordinates
from drafting.geometry.paths import Path
from drafting.geometry.points import Point


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
    """A place on an edge that meets a place on another; both carry the same name."""

    name: str
    distance: float
    kind: NotchKind = NotchKind.SINGLE


@dataclass(frozen=True)
class Edge:
    """One named side of a piece, with its seam or hem allowance in millimetres (0 for none).

    A hem's allowance may hold a turn-up: cloth that is folded up behind the leg and then, along the hem line,
    up in front of it. Its depth is `turn_up`, and it takes twice that of the allowance.
    """

    name: str
    path: Path
    allowance: float = 0.0
    finish: Finish = Finish.SEAM
    notches: tuple[Notch, ...] = ()
    turn_up: float = 0.0

    @property
    def length(self) -> float:
        """The sewn length in millimetres."""
        return self.path.length


@dataclass(frozen=True)
class Mark:
    """A line or point drawn inside the piece: a path of any length, or a point as a path's start."""

    name: str
    kind: MarkKind
    path: Path


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
        name: Unique within a pattern.
        edges: The ring, counter-clockwise; each edge starts where the one before it ends.
        grain: The straight line that lies along the warp, from hem to waist.
        cutting: Quantity, pairs and material.
        marks: Lines and points inside.
        drawn_larger: How many times its size after the first wash it is drawn, along the grain and across it.

    Raises:
        ValueError: the ring does not close or runs clockwise.
    """

    name: str
    edges: tuple[Edge, ...]
    grain: Path
    cutting: Cutting = field(default_factory=Cutting)
    marks: tuple[Mark, ...] = ()
    drawn_larger: tuple[float, float] = (1.0, 1.0)

    def __post_init__(self) -> None:
        """Check that the ring closes and runs counter-clockwise."""
        for before, after in pairwise((*self.edges, self.edges[0])):
            if (after.path.start - before.path.end).length > JOIN:
                raise ValueError(f"{self.name}: {before.name} does not meet {after.name}")
        if _signed_area(self.outline(1.0)) <= 0:
            raise ValueError(f"{self.name}: the edges must run counter-clockwise")

    @property
    def cut_text(self) -> str:
        """How it is cut, as a cutter reads it, such as "cut 2 on the fold"."""
        if any(edge.finish is Finish.FOLD for edge in self.edges):
            return f"cut {self.cutting.quantity} on the fold"
        return self.cutting.text()

    def edge(self, name: str) -> Edge:
        """Return the edge called `name`; raises KeyError when there is none."""
        for edge in self.edges:
            if edge.name == name:
                return edge
        raise KeyError(f"{self.name} has no edge {name!r}")

    def sewn(self, name: str) -> Edge:
        """Return the edge called `name`, or the marked line of that name; KeyError when there is neither."""
        for mark in self.marks:
            if mark.name == name and mark.kind is MarkKind.LINE:
                return Edge(name, mark.path)
        return self.edge(name)

    def outline(self, sag: float = FLATTEN) -> Coordinates:
        """Return the sew line as points (n, 2), the first not repeated, `sag` mm off the curves at most."""
        return np.vstack([edge.path.flatten(sag)[:-1] for edge in self.edges])

    @cached_property
    def polygon(self) -> Polygon:
        """The sewn shape, chords within FLATTEN of the curves."""
        return Polygon(self.outline())

    def with_edges(self, *changed: Edge) -> Piece:
        """Return the piece with each edge of the same name replaced."""
        new = {edge.name: edge for edge in changed}
        return replace(self, edges=tuple(new.get(edge.name, edge) for edge in self.edges))

    def mirrored(self) -> Piece:
        """Return the piece for the other side of the body: flipped, its ring still counter-clockwise."""

        def flip(p: Point) -> Point:
            return Point(-p.x, p.y)

        edges = tuple(
            replace(
                edge,
                path=edge.path.moved(flip).reversed(),
                notches=tuple(replace(n, distance=edge.length - n.distance) for n in reversed(edge.notches)),
            )
            for edge in reversed(self.edges)
        )
        marks = tuple(replace(mark, path=mark.path.moved(flip)) for mark in self.marks)
        return replace(self, edges=edges, grain=self.grain.moved(flip), marks=marks)


def _signed_area(ring: Coordinates) -> float:
    x, y = ring.T
    return 0.5 * float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1)))
