"""A cloth on the table with pieces laid on it: how wide, how long, how much of it is used."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TypeVar

from shapely import STRtree
from shapely.affinity import rotate, translate
from shapely.geometry import LineString, Polygon

from drafting.pieces.pieces import Material
from outputs.cloth.cut_pieces import CutPiece, Laying

GAP = 3.0
"""Least distance of two outlines in mm: a line of chalk and the blade (common practice, no source)."""
SELVEDGE = 10.0
"""Left free along a selvedge, mm: it is woven tighter and shrinks more (10 to 15 mm, from memory)."""
END = 10.0
"""Left free at either end, mm: cloth is seldom cut square off the roll (common practice, no source)."""
ROUND = 0.01
"""Places are multiples of this, mm, so that a file holds them exactly; the gap is kept but for twice that."""
WIDTH_OPTIONS = {
    Material.DENIM: "--width",
    Material.POCKETING: "--pocketing-width",
    Material.INTERFACING: "--interfacing-width",
}
"""What a person types for the width of each cloth."""
NARROWEST, WIDEST = 300.0, 3300.0
"""Widths that cloth and interfacing are sold in, mm (from memory)."""

_Outline = TypeVar("_Outline", Polygon, LineString)


@dataclass(frozen=True, kw_only=True)
class ClothOnTable:
    """A cloth as it lies on the table, warp upwards.

    Attributes:
        width: From selvedge to selvedge, mm.
        folded: Whether it is folded along its middle, right sides together, the fold to the left.
        one_way: Whether every piece must stand with its hem to the lower end.
    """

    width: float
    folded: bool = False
    one_way: bool = False

    @property
    def lying(self) -> float:
        """Width as it lies, mm."""
        return self.width / 2 if self.folded else self.width

    @property
    def left(self) -> float:
        """Where pieces may begin, mm from the left border, which is a selvedge or the fold."""
        return 0.0 if self.folded else SELVEDGE

    @property
    def right(self) -> float:
        """Where pieces must end, mm from the left border."""
        return self.lying - SELVEDGE

    @property
    def room(self) -> float:
        """Width that pieces may take, mm."""
        return self.right - self.left


@dataclass(frozen=True, eq=False)
class Laid:
    """A piece in its place.

    Attributes:
        piece: What is laid.
        x: Its left end from the left border of the lying cloth, mm.
        y: Its lower end from the lower end of the cloth, mm.
        turned: Whether its hem points up.
    """

    piece: CutPiece
    x: float
    y: float
    turned: bool = False

    @cached_property
    def shape(self) -> Polygon:
        """The cut line in its place."""
        return self._moved(self.piece.shape)

    @property
    def grain(self) -> LineString:
        """The grain line in its place, from hem to waist."""
        return self._moved(self.piece.grain)

    @property
    def top(self) -> float:
        """Its upper end, mm."""
        return self.y + self.piece.height

    def _moved(self, outline: _Outline) -> _Outline:
        middle = self.piece.width / 2, self.piece.height / 2
        turned = rotate(outline, 180, origin=middle) if self.turned else outline
        return translate(turned, self.x, self.y)


def rounded(mm: float) -> float:
    """Return a place as it is kept."""
    return round(round(mm / ROUND) * ROUND, 2)


@dataclass(frozen=True, eq=False)
class LaidCloth:
    """Everything that is cut from one cloth, in its place.

    Attributes:
        material: Which cloth.
        cloth: How it lies.
        laid: The pieces.
    """

    material: Material
    cloth: ClothOnTable
    laid: tuple[Laid, ...]

    @property
    def length(self) -> float:
        """Length that is needed, ends included, mm."""
        return max(laid.top for laid in self.laid) + END

    @property
    def least_by_area(self) -> float:
        """The length that the area of the pieces would fill without any gap, mm."""
        return sum(laid.piece.shape.area for laid in self.laid) / self.cloth.room + 2 * END

    @property
    def least_by_longest(self) -> float:
        """The length that the longest piece needs, mm."""
        return max(laid.piece.height for laid in self.laid) + 2 * END

    @property
    def share_used(self) -> float:
        """The share of the whole cloth, 0 to 1, that becomes pieces."""
        layers = {Laying.PAIR: 2, Laying.ON_FOLD: 2}
        cut = sum(laid.piece.shape.area * layers.get(laid.piece.lie, 1) for laid in self.laid)
        return cut / (self.cloth.width * self.length)

    def faults(self) -> Iterator[str]:
        """Yield what is wrong: pieces too near to each other, or beyond their room; shapely measures."""
        for laid in self.laid:
            left, bottom, right, _ = laid.shape.bounds
            if left < self.cloth.left - ROUND or right > self.cloth.right + ROUND or bottom < END - ROUND:
                yield f"{laid.piece.title} lies beyond the cloth"
            if laid.piece.lie is Laying.ON_FOLD and left > ROUND:
                yield f"{laid.piece.title} does not lie on the fold"
            if laid.turned and self.cloth.one_way:
                yield f"{laid.piece.title} is turned, and the cloth has one way"
        for one, other in too_near(self.laid):
            yield f"{one.piece.title} and {other.piece.title} are less than {GAP:g} mm apart"


def too_near(laid: Sequence[Laid]) -> list[tuple[Laid, Laid]]:
    """Return the pairs of pieces that lie less than GAP apart."""
    tree = STRtree([each.shape for each in laid])
    first, second = tree.query([each.shape for each in laid], predicate="dwithin", distance=GAP - 2 * ROUND)
    return [(laid[i], laid[j]) for i, j in sorted(zip(first.tolist(), second.tolist(), strict=True)) if i < j]
