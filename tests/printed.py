"""Pieces by the names that are printed on them, so that a test reads like the sheets it is about."""

from __future__ import annotations

from drafting.body.measurements import Side
from drafting.pieces.kinds import PieceId, PieceKind
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Piece


def called(pattern: Pattern, name: str) -> Piece:
    """Return the piece of that printed name; raises KeyError when there is none."""
    for piece in pattern.pieces:
        if piece.name == name:
            return piece
    raise KeyError(name)


def which(name: str) -> PieceId:
    """Return the piece that is called so: "left front leg", "fly facing (right front)"."""
    for side in Side:
        if name.startswith(f"{side.value} "):
            return PieceId(PieceKind(name.removeprefix(f"{side.value} ")), side)
        if name.endswith(f" ({side.value} front)"):
            return PieceId(PieceKind(name.removesuffix(f" ({side.value} front)")), side)
    return PieceId(PieceKind(name))
