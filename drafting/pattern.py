"""A pattern: the pieces with their declared seams, under the names that every printed piece carries."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.findings import Finding
from drafting.pieces import Piece
from drafting.seams import Seam


@dataclass(frozen=True)
class Pattern:
    """Pieces and seams ready to be checked and written.

    Attributes:
        wearer: Whose measurements these are, as typed.
        style: Name of the style.
        date: When the measurements were taken, as typed.
        pieces: All pieces, names unique, in the order they are numbered from 1.
        seams: Which edges are sewn together.
        findings: What drafting had to say, before any check of the seams.
    """

    wearer: str
    style: str
    date: str
    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...] = ()
    findings: tuple[Finding, ...] = ()

    def piece(self, name: str) -> Piece:
        """Return the piece called `name`; raises KeyError when there is none."""
        for piece in self.pieces:
            if piece.name == name:
                return piece
        raise KeyError(f"no piece {name!r} in this pattern")
