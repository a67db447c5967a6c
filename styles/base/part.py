"""What one part of the jeans contributes: pieces, the seams between them, and what must be bought."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from drafting.block.block import Half
from drafting.body.measurements import Side
from drafting.pieces.kinds import PieceId, PieceKind
from drafting.pieces.pieces import Cutting, Material, Piece
from drafting.pieces.seams import Corner, Seam


class NotionKind(StrEnum):
    """What is to be bought besides cloth."""

    ZIP = "zip"
    FLY_BUTTON = "fly button"
    BAND_BUTTON = "jeans button"
    RIVET = "rivet"


NOTIONS: dict[NotionKind, str] = {
    NotionKind.ZIP: "jeans zip, closed end",
    NotionKind.FLY_BUTTON: "fly button, 14 mm (9/16 in)",
    NotionKind.BAND_BUTTON: "jeans button, 17 mm (5/8 in)",
    NotionKind.RIVET: "rivet",
}
"""What they are called in print."""


@dataclass(frozen=True)
class Notion:
    """Something to buy besides cloth: what, how many, and a length in mm (0 where it has none)."""

    kind: NotionKind
    count: int
    length: float = 0.0

    @property
    def name(self) -> str:
        """What it is called in print."""
        return NOTIONS[self.kind]


def counted(notions: Iterable[Notion]) -> tuple[Notion, ...]:
    """Return the notions with equal ones counted together, in the order in which they come up."""
    counts: Counter[tuple[NotionKind, float]] = Counter()
    for notion in notions:
        counts[notion.kind, notion.length] += notion.count
    return tuple(Notion(kind, count, length) for (kind, length), count in counts.items())


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
class HalfToCut:
    """How the pieces of one half of the body are known, cut and turned.

    Attributes:
        drafted: The half of the block; its front is drawn as a right front, its back as a left back.
    """

    drafted: Half

    @property
    def side(self) -> Side | None:
        """The side of the body, None where both sides are alike."""
        return self.drafted.side

    def id(self, kind: PieceKind) -> PieceId:
        """Return which piece of the pattern this half's piece of a kind is."""
        return PieceId(kind, self.side)

    def cutting(self, material: Material = Material.DENIM, layers: int = 1) -> Cutting:
        """Return how a piece that each half needs `layers` times is cut."""
        if self.side:
            return Cutting(layers, False, material)
        return Cutting(2 * layers, True, material)

    def of_front(self, piece: Piece) -> Piece:
        """Return a piece drawn with the front, turned for its side of the body."""
        return piece.mirrored() if self.side is Side.LEFT else piece

    def of_back(self, piece: Piece) -> Piece:
        """Return a piece drawn with the back, turned for its side: the right one where both are alike."""
        return piece if self.side is Side.LEFT else piece.mirrored()
