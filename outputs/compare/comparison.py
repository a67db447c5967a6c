"""Several styles compared on one wearer: their numbers side by side, and which pieces they share."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from drafting.base.units import Unit
from drafting.pieces.kinds import PieceId
from drafting.pieces.same_pieces import shared_pieces
from drafting.pieces.words import piece_name
from drafting.report.fit import girth_lines
from drafting.report.levels import GirthLevel
from outputs.compare.leg_lines import LegLines, leg_lines
from outputs.fit.fit_words import bare
from styles.making.jeans import Jeans


@dataclass(frozen=True)
class Compared:
    """One style among several.

    Attributes:
        jeans: Its draft.
        legs: Its lines.
        shared: The pieces that a style before it has, too, each with the first such style.
    """

    jeans: Jeans
    legs: LegLines
    shared: Mapping[PieceId, str]

    @property
    def style(self) -> str:
        """Its name."""
        return self.jeans.style.name

    @property
    def stretches_enough(self) -> bool:
        """Whether the cloth has the stretch that the style needs."""
        return self.jeans.cloth.stretch >= self.jeans.style.least_stretch


def compare(several: Sequence[Jeans]) -> tuple[Compared, ...]:
    """Return the styles of one wearer, in their order."""
    shared = shared_pieces([jeans.pattern for jeans in several])
    return tuple(
        Compared(jeans, leg_lines(jeans.block, jeans.style, number), same)
        for number, (jeans, same) in enumerate(zip(several, shared, strict=True))
    )


IN_YOUR_CLOTH = ("in your", "cloth")
HEADS = (
    ("ease at", "hip"),
    ("ease at", "thigh"),
    ("front", "rise"),
    ("", "knee"),
    ("", "hem"),
    ("hem over", "floor"),
    ("stretch", "it needs"),
    IN_YOUR_CLOTH,
    ("shared", "pieces"),
)
"""Two lines over each column of `cells`."""


def cells(compared: Compared, unit: Unit) -> tuple[str, ...]:
    """Return a row of the table, lengths in `unit`; a dash where the body is not known or the leg ends."""
    jeans = compared.jeans
    girths = {line.level: line for line in girth_lines(jeans.block) if line.side is None}
    knee, wanted = girths.get(GirthLevel.KNEE), jeans.style.least_stretch
    return (
        bare(girths[GirthLevel.HIP].ease, unit),
        bare(girths[GirthLevel.THIGH].ease, unit),
        bare(jeans.front_rise, unit),
        bare(knee.pattern if knee else None, unit),
        bare(girths[GirthLevel.HEM].pattern, unit),
        bare(jeans.block.levels.hem.mm, unit),
        f"{wanted:g} %" if wanted else "none",
        "yes" if compared.stretches_enough else "NO",
        f"{len(compared.shared)} of {len(jeans.pattern.pieces)}",
    )


def said_shared(compared: Compared) -> str:
    """Return "belt loops, watch pocket: the same as straight", for each style that it shares with."""
    by_style: dict[str, list[PieceId]] = {}
    for piece, style in compared.shared.items():
        by_style.setdefault(style, []).append(piece)
    return "; ".join(f"{_named(some, compared)}: the same as {style}" for style, some in by_style.items())


def _named(some: Sequence[PieceId], compared: Compared) -> str:
    """Return the names of some pieces, or of those that are left out where these are fewer."""
    rest = [piece.name for piece in compared.jeans.pattern.pieces if piece.id not in some]
    if len(rest) >= len(some):
        return ", ".join(map(piece_name, some))
    return f"all pieces but {', '.join(rest)}" if rest else "all pieces"
