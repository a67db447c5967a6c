"""Which pieces a toile needs: those that carry the fit."""

from __future__ import annotations

from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Material

CARRY_THE_FIT = ("leg", "yoke", "waistband", "pocket facing")
"""Words in their names. Without the pocket facing the front leg has a hole at the hip."""


def toile_pieces(pattern: Pattern) -> tuple[str, ...]:
    """Return the names of the pieces that a toile is sewn from: legs, yokes, band and pocket facings."""
    return tuple(
        piece.name
        for piece in pattern.pieces
        if piece.cutting.material is Material.DENIM and any(word in piece.name for word in CARRY_THE_FIT)
    )
