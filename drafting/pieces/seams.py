"""Seams as declarations: what is sewn to what, how much longer one side is on purpose, which corners join."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.base.tolerance import ANGLE_DEG


@dataclass(frozen=True)
class Run:
    """A stretch of one edge, walked in sewing order.

    Attributes:
        piece: Name of the piece.
        edge: Name of its edge, or of a marked line that is sewn, such as the leg of a dart.
        backwards: Walk against the ring's direction.
        start: Where the stretch starts, mm from the start of the walk along the edge.
        end: Where it ends; None is the far end.
    """

    piece: str
    edge: str
    backwards: bool = False
    start: float = 0.0
    end: float | None = None


@dataclass(frozen=True)
class Seam:
    """Two sides that are sewn together, both walked from the same end.

    Attributes:
        name: Unique within a pattern.
        first: One side, one or more runs end to end.
        second: The other side.
        ease: Intended difference in mm: first minus second; the longer side is eased or stretched on.
        eased: The stretch of the first side over which the ease is spread evenly, as two distances in mm from
            the common end; None is the whole seam.
    """

    name: str
    first: tuple[Run, ...]
    second: tuple[Run, ...]
    ease: float = 0.0
    eased: tuple[float, float] | None = None


@dataclass(frozen=True)
class CornerPlace:
    """A corner of a piece: the place where two of its neighbouring edges meet, named in either order."""

    piece: str
    edges: tuple[str, str]


@dataclass(frozen=True)
class Corner:
    """Two corners that come together at the end of a seam, so that an edge runs on across it.

    Attributes:
        name: Unique within a pattern.
        first: The corner of one piece.
        second: The corner of the other; the same piece again where a piece is sewn to its own mirror image.
        angle: What the two interior angles should add up to, in degrees; 180 is a line that runs straight on.
        tolerance: Largest miss in degrees.
    """

    name: str
    first: CornerPlace
    second: CornerPlace
    angle: float = 180.0  # straight on
    tolerance: float = ANGLE_DEG
