"""Seams as declarations: what is sewn to what, how much longer one side is on purpose, which corners join."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.base.tolerance import ANGLE_DEG
from drafting.body.measurements import Side
from drafting.pieces.kinds import CornerKind, EdgeKind, PieceId, SeamKind
from drafting.pieces.words import corner_name, seam_name


@dataclass(frozen=True)
class Run:
    """A stretch of one edge, walked in sewing order.

    Attributes:
        piece: Which piece.
        edge: Which of its edges, or which marked line that is sewn, such as the leg of a dart.
        backwards: Walk against the ring's direction.
        start: Where the stretch starts, mm from the start of the walk along the edge.
        end: Where it ends; None is the far end.
    """

    piece: PieceId
    edge: EdgeKind
    backwards: bool = False
    start: float = 0.0
    end: float | None = None


@dataclass(frozen=True)
class Seam:
    """Two sides that are sewn together, both walked from the same end.

    Attributes:
        kind: What it joins; with side and piece no other of a pattern is the same.
        first: One side, one or more runs end to end.
        second: The other side.
        ease: Intended difference in mm: first minus second; the longer side is eased or stretched on.
        eased: The stretch of the first side over which the ease is spread evenly, as two distances in mm from
            the common end; None is the whole seam.
        side: The side of the body, None where both sides are alike.
        piece: The piece it is told by, where several pieces have such a seam.
    """

    kind: SeamKind
    first: tuple[Run, ...]
    second: tuple[Run, ...]
    ease: float = 0.0
    eased: tuple[float, float] | None = None
    side: Side | None = None
    piece: PieceId | None = None

    @property
    def name(self) -> str:
        """What it is called in print."""
        return seam_name(self.kind, self.side, self.piece)


@dataclass(frozen=True)
class CornerPlace:
    """A corner of a piece: the place where two of its neighbouring edges meet, given in either order."""

    piece: PieceId
    edges: tuple[EdgeKind, EdgeKind]


@dataclass(frozen=True)
class Corner:
    """Two corners that come together at the end of a seam, so that an edge runs on across it.

    Attributes:
        kind: Which edge runs on; with side and piece no other of a pattern is the same.
        first: The corner of one piece.
        second: The corner of the other; the same piece again where a piece is sewn to its own mirror image.
        angle: What the two interior angles should add up to, in degrees; 180 is a line that runs straight on.
        tolerance: Largest miss in degrees.
        side: The side of the body, None where both sides are alike.
        piece: The piece it is told by, where several pieces have such a corner.
    """

    kind: CornerKind
    first: CornerPlace
    second: CornerPlace
    angle: float = 180.0  # straight on
    tolerance: float = ANGLE_DEG
    side: Side | None = None
    piece: PieceId | None = None

    @property
    def name(self) -> str:
        """What it is called in print."""
        return corner_name(self.kind, self.side, self.piece)
