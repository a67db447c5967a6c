"""What is cut from a cloth: every piece as often as it is needed, flipped, unfolded, or from both layers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import Enum
from typing import TypeVar

import shapely
from shapely.affinity import scale, translate
from shapely.geometry import LineString, Polygon

from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Finish, Material
from outputs.packing.layout import StandingPiece, standing

CLOTHS = (Material.DENIM, Material.POCKETING, Material.INTERFACING)
"""What is bought by length; a paper template is not."""
SEAM = 1e-3
"""Two halves that meet along a fold are joined over gaps of this size in mm, which rounding leaves."""

_Outline = TypeVar("_Outline", Polygon, LineString)


class Laying(Enum):
    """How an outline lies on the cloth."""

    UP = ""
    """As drawn, on one layer that lies right side up."""
    FLIPPED = "flipped"
    """Face down: the other one of a pair."""
    UNFOLDED = "unfolded"
    """A piece for the fold, drawn whole, on one layer."""
    PAIR = "both layers"
    """Through both layers, which gives a pair."""
    ON_FOLD = "on the fold"
    """Through both layers along the fold, which gives one whole piece."""
    LOWER = "lower layer"
    """A single piece on folded cloth: the layer whose right side is up is kept."""

    @property
    def words(self) -> str:
        """What is written on the outline."""
        return LAYINGS[self]


LAYINGS: dict[Laying, str] = {lie: lie.value for lie in Laying}
"""How they are called in print."""


@dataclass(frozen=True, eq=False)
class CutPiece:
    """One outline to lay on a cloth.

    Attributes:
        wearer: Whose it is, counted from 1.
        number: Its number in the wearer's pattern.
        name: The piece's name.
        name_in_its_cloth: The same where the cloth is told already.
        lie: How it lies.
        shape: The cut line, grain upright, hem down, its box beginning at 0, 0; the fold at x = 0. In mm.
        grain: Lower and upper end of the grain line, on the shape.
    """

    wearer: int
    number: int
    name: str
    name_in_its_cloth: str
    lie: Laying
    shape: Polygon
    grain: LineString

    @property
    def key(self) -> tuple[int, int, str]:
        """What tells it from other outlines; copies have the same."""
        return self.wearer, self.number, self.lie.value

    @property
    def title(self) -> str:
        """Number and name, with what is to be done, such as "1 front leg (flipped)"."""
        return f"{self.number} {self.name}{f' ({self.lie.words})' if self.lie.words else ''}"

    @property
    def width(self) -> float:
        """Across the cloth, mm."""
        return float(self.shape.bounds[2])

    @property
    def height(self) -> float:
        """Along the cloth, mm."""
        return float(self.shape.bounds[3])


def pieces_to_cut(patterns: Sequence[Pattern], cloth: Material, *, folded: bool) -> list[CutPiece]:
    """Return everything that is cut from one cloth, wearer by wearer, in the order of the numbers."""
    return [
        piece
        for wearer, pattern in enumerate(patterns, start=1)
        for placed in standing(pattern)
        if placed.piece.cutting.material is cloth
        for piece in _copies(wearer, placed, folded)
    ]


def _copies(wearer: int, placed: StandingPiece, folded: bool) -> Iterator[CutPiece]:
    cutting = placed.piece.cutting
    if any(edge.finish is Finish.FOLD for edge in placed.piece.edges):
        lie = Laying.ON_FOLD if folded else Laying.UNFOLDED
        lies = [lie] * cutting.quantity
    elif not cutting.pairs:
        lies = [Laying.LOWER if folded else Laying.UP] * cutting.quantity
    elif folded:
        lies = [Laying.PAIR] * (cutting.quantity // 2)
    else:
        lies = [Laying.UP, Laying.FLIPPED] * (cutting.quantity // 2)
    whole = {lie: _laid(wearer, placed, lie) for lie in dict.fromkeys(lies)}
    yield from (whole[lie] for lie in lies)


def _laid(wearer: int, placed: StandingPiece, lie: Laying) -> CutPiece:
    """Return the outline as it lies, its box beginning at 0, 0."""
    shape, grain = placed.line.polygon, LineString(placed.piece.grain.flatten())
    folds = [edge.path.start.x for edge in placed.piece.edges if edge.finish is Finish.FOLD]
    # Symmetrical about its fold, a piece may as well be laid face down, with the fold to the left.
    if lie is Laying.FLIPPED or (lie is Laying.ON_FOLD and folds[0] > shape.centroid.x):
        shape, grain = _flipped(shape, 0), _flipped(grain, 0)
    elif lie is Laying.UNFOLDED:
        whole = shapely.union(shape, _flipped(shape, folds[0]), grid_size=SEAM)
        shape = Polygon(shapely.get_exterior_ring(whole))
    left, bottom, _, _ = shape.bounds
    return CutPiece(
        wearer,
        placed.number,
        placed.piece.name,
        placed.piece.name_in_its_cloth,
        lie,
        translate(shape, -left, -bottom),
        translate(grain, -left, -bottom),
    )


def _flipped(outline: _Outline, x: float) -> _Outline:
    """Return an outline mirrored about the upright line at `x`."""
    flipped: _Outline = scale(outline, -1, 1, origin=(x, 0))
    return flipped
