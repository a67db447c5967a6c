"""What pieces, edges, places and seams are called in print; no code decides anything by these words.

Each table starts from the keys of `drafting.pieces.kinds` and changes what reads differently.
"""

from __future__ import annotations

from drafting.body.measurements import Side
from drafting.body.words import SIDES, of_side
from drafting.pieces.kinds import CornerKind, EdgeKind, PieceId, PieceKind, PlaceKind, SeamKind

PIECES: dict[PieceKind, str] = {kind: kind.value for kind in PieceKind} | {
    PieceKind.FLY_FACING: "fly facing ({side} front)",
    PieceKind.BUTTONHOLE_FACING: "fly facing for buttonholes ({side} front)",
    PieceKind.FLY_SHIELD: "fly shield ({side} front)",
    PieceKind.FLY_TEMPLATE: "fly topstitching template ({side} front)",
}
"""`{side}` stands where the side does not come first."""

INTERFACING = "{piece} interfacing"
"""How the interfacing of a piece is called."""

EDGES: dict[EdgeKind, str] = {kind: kind.value for kind in EdgeKind}

PLACES: dict[PlaceKind, str] = {kind: kind.value for kind in PlaceKind}

SEAMS: dict[SeamKind, str] = {kind: kind.value for kind in SeamKind} | {
    SeamKind.YOKE: "{piece} to yoke",
    SeamKind.AT_CENTRE_FRONT: "{piece} at the centre front",
    SeamKind.BEHIND_FACING: "{piece} behind the facing",
}
"""`{piece}` stands for the piece that the seam is told by."""

CORNERS: dict[CornerKind, str] = {kind: kind.value for kind in CornerKind} | {
    CornerKind.YOKE_ACROSS_SIDE: "{piece} across the side seam",
    CornerKind.YOKE_ACROSS_CENTRE_BACK: "{piece} across the centre back",
}


def piece_name(piece: PieceId) -> str:
    """Return the printed name of a piece, such as "left back yoke interfacing"."""
    name = _sided(PIECES.get(piece.kind, piece.kind), piece.side)
    return INTERFACING.format(piece=name) if piece.interfacing else name


def edge_name(kind: EdgeKind) -> str:
    """Return the printed name of an edge."""
    return EDGES.get(kind, kind)


def place_name(kind: PlaceKind, number: int = 0) -> str:
    """Return the printed name of a notch or mark, with its number where there are several."""
    name = PLACES.get(kind, kind)
    return f"{name} {number}" if number else name


def seam_name(kind: SeamKind, side: Side | None, piece: PieceId | None) -> str:
    """Return the printed name of a seam: with its side, or told by one of its pieces."""
    return _told_by(SEAMS.get(kind, kind), side, piece)


def corner_name(kind: CornerKind, side: Side | None, piece: PieceId | None) -> str:
    """Return the printed name of a joined corner: with its side, or told by one of its pieces."""
    return _told_by(CORNERS.get(kind, kind), side, piece)


def _told_by(words: str, side: Side | None, piece: PieceId | None) -> str:
    return words.format(piece=piece_name(piece)) if piece else _sided(words, side)


def _sided(words: str, side: Side | None) -> str:
    """Return words with the side where they leave room for it, else before them."""
    return words.format(side=SIDES[side]) if side and "{side}" in words else of_side(words, side)
