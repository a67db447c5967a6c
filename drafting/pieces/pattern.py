"""A pattern: the pieces with their declared seams, under the names that every printed piece carries."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.base.errors import Severity
from drafting.base.findings import Finding, Sentence
from drafting.body.measurements import Side
from drafting.pieces.kinds import PieceId, PieceKind
from drafting.pieces.pieces import Piece
from drafting.pieces.seams import Seam
from drafting.pieces.words import piece_name


@dataclass(frozen=True)
class TextTable:
    """Columns with their heads and relative widths; a row of one text alone is a heading right across."""

    heads: tuple[str, ...]
    shares: tuple[int, ...]
    rows: tuple[tuple[Sentence, ...], ...]


@dataclass(frozen=True)
class Section:
    """A heading with the sentences under it, printed with the pattern, and a table under these."""

    heading: str
    lines: tuple[Sentence, ...]
    table: TextTable | None = None


@dataclass(frozen=True)
class Pattern:
    """Pieces and seams ready to be checked and written.

    Attributes:
        wearer: Whose measurements these are, as typed.
        style: Name of the style.
        date: When the measurements were taken, as typed.
        pieces: All pieces, no two the same, in the order they are numbered from 1.
        seams: Which edges are sewn together.
        findings: What the draft and the trueing had to say.
        verdict: One sentence that says whether the pieces sew together, for the first sheet.
        sections: What else is printed with the pattern: the trueing table, the order of sewing.
        printed: The pieces to print; empty for all.
    """

    wearer: str
    style: str
    date: str
    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...] = ()
    findings: tuple[Finding, ...] = ()
    verdict: str = ""
    sections: tuple[Section, ...] = ()
    printed: tuple[PieceId, ...] = ()

    @property
    def faults(self) -> tuple[Finding, ...]:
        """What would keep the pattern from being sewn."""
        return tuple(finding for finding in self.findings if finding.severity is Severity.FAULT)

    @property
    def numbered(self) -> tuple[tuple[int, Piece], ...]:
        """The pieces to print, each with its number, which stays the same when only some are printed."""
        numbered = enumerate(self.pieces, start=1)
        return tuple((n, piece) for n, piece in numbered if not self.printed or piece.id in self.printed)

    def piece(self, kind: PieceKind, side: Side | None = None, *, interfacing: bool = False) -> Piece:
        """Return a piece; raises KeyError when there is none of this kind and side."""
        wanted = PieceId(kind, side, interfacing)
        for piece in self.pieces:
            if piece.id == wanted:
                return piece
        raise KeyError(f"no piece {piece_name(wanted)!r} in this pattern")
