"""What one part of the jeans contributes: pieces, the seams between them, and what must be bought."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from drafting.block.block import Half
from drafting.body.measurements import Side
from drafting.pieces.pieces import Cutting, Material, Piece
from drafting.pieces.seams import Corner, Seam


@dataclass(frozen=True)
class Notion:
    """Something to buy besides cloth: what, how many, and a length in mm (0 where it has none)."""

    name: str
    count: int
    length: float = 0.0


def counted(notions: Iterable[Notion]) -> tuple[Notion, ...]:
    """Return the notions with equal ones counted together, in the order in which they come up."""
    counts: Counter[tuple[str, float]] = Counter()
    for notion in notions:
        counts[notion.name, notion.length] += notion.count
    return tuple(Notion(name, count, length) for (name, length), count in counts.items())


@dataclass(frozen=True)
class Part:
    """One part of the jeans, such as the fly."""

    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...] = ()
    corners: tuple[Corner, ...] = ()
    notions: tuple[Notion, ...] = ()

    def __add__(self, other: Part) -> Part:
        """Return both together."""
        return Part(
            self.pieces + other.pieces,
            self.seams + other.seams,
            self.corners + other.corners,
            self.notions + other.notions,
        )


@dataclass(frozen=True)
class HalfOf:
    """How the pieces of one half of the body are named, cut and turned.

    Attributes:
        half: The half of the block; its front is drawn as a right front, its back as a left back.
    """

    half: Half

    def name(self, piece: str) -> str:
        """Return the piece's name, with its side where the sides differ."""
        return f"{self.half.side.value} {piece}" if self.half.side else piece

    def cutting(self, material: Material = Material.DENIM, layers: int = 1) -> Cutting:
        """Return how a piece that each half needs `layers` times is cut."""
        if self.half.side:
            return Cutting(layers, False, material)
        return Cutting(2 * layers, True, material)

    def of_front(self, piece: Piece) -> Piece:
        """Return a piece drawn with the front, turned for its side of the body."""
        return piece.mirrored() if self.half.side is Side.LEFT else piece

    def of_back(self, piece: Piece) -> Piece:
        """Return a piece drawn with the back, turned for its side: the right one where both are alike."""
        return piece if self.half.side is Side.LEFT else piece.mirrored()
