"""Which pieces a toile needs: those that carry the fit."""

from __future__ import annotations

from drafting.pieces.kinds import PieceId, PieceKind
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Material

CARRY_THE_FIT = frozenset(
    {
        PieceKind.FRONT_LEG,
        PieceKind.BACK_LEG,
        PieceKind.BACK_YOKE,
        PieceKind.FRONT_BAND,
        PieceKind.BACK_BAND,
        PieceKind.STRAIGHT_BAND,
        PieceKind.POCKET_FACING,
    }
)
"""Without the pocket facing the front leg has a hole at the hip."""


def toile_pieces(pattern: Pattern) -> tuple[PieceId, ...]:
    """Return the pieces that a toile is sewn from: legs, yokes, band and pocket facings."""
    return tuple(
        piece.id
        for piece in pattern.pieces
        if piece.cutting.material is Material.DENIM and piece.kind in CARRY_THE_FIT
    )
