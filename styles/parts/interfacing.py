"""Interfacing: copies of pieces, cut on the sew line, to be fused behind one layer."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from drafting.pieces.kinds import PieceKind, PlaceKind
from drafting.pieces.pieces import Cutting, Material, Piece
from styles.parts.shaped_band import CUT_OFF

STIFFENED = frozenset(
    {
        PieceKind.FRONT_BAND,
        PieceKind.BACK_BAND,
        PieceKind.STRAIGHT_BAND,
        PieceKind.FLY_FACING,
        PieceKind.BUTTONHOLE_FACING,
    }
)
"""The waistband, where it carries the belt, and the fly facings."""


def interfaced(piece: Piece) -> bool:
    """Return whether a piece is stiffened."""
    return piece.cutting.material is Material.DENIM and piece.kind in STIFFENED


def interfacing(pieces: Iterable[Piece]) -> tuple[Piece, ...]:
    """Return an interfacing for every piece that is stiffened, without allowance so that no seam gets thick.

    A piece of two layers is stiffened in one of them. Copies of pieces fitted to their cloth have their size,
    so they lie on the cut pieces.
    """
    return tuple(_copy(piece) for piece in pieces if interfaced(piece))


def _copy(piece: Piece) -> Piece:
    layers = 2 if piece.cutting.quantity > 1 else 1
    count = piece.cutting.quantity // layers
    edges = tuple(replace(edge, allowance=0.0, notches=()) for edge in piece.edges)
    # Without allowance the lapping side ends at the centre front itself.
    centre = [mark.path for mark in piece.marks if mark.shows is PlaceKind.CENTRE_FRONT]
    marks = tuple(replace(m, path=centre[0]) for m in piece.marks if m.shows in CUT_OFF.values())
    cutting = Cutting(count, piece.cutting.pairs and count % 2 == 0, Material.INTERFACING)
    return replace(piece, edges=edges, marks=marks, cutting=cutting)
