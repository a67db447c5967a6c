"""Pieces that several patterns of one wearer have in common, so that one print serves all of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from drafting.base.tolerance import SAME
from drafting.geometry.points import Point
from drafting.pieces.kinds import PieceId
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Piece


def are_same(one: Piece, other: Piece) -> bool:
    """Return whether two pieces are cut, marked and labelled alike, wherever on the block they were drafted.

    Kind, side, cutting, what is drawn larger, every edge with its allowance, finish and notches, every mark
    and the grain must agree; their places within SAME.
    """
    if _told(one) != _told(other):
        return False
    way = other.edges[0].path.start - one.edges[0].path.start
    pairs = zip(_places(one), _places(other), strict=True)
    return all((a + way - b).length <= SAME for a, b in pairs)


def _told(piece: Piece) -> tuple[object, ...]:
    """Return all of a piece that is no place, and of how many curves each line consists."""
    return (
        piece.id,
        piece.cutting,
        piece.drawn_larger,
        len(piece.grain.curves),
        [
            (e.kind, e.allowance, e.finish, len(e.path.curves), [(n.place, n.kind) for n in e.notches])
            for e in piece.edges
        ],
        [(mark.shows, mark.kind, len(mark.path.curves)) for mark in piece.marks],
    )


def _places(piece: Piece) -> Iterator[Point]:
    """Yield every point that makes the drawing: of edges, notches, marks and grain."""
    for path in (*(e.path for e in piece.edges), *(mark.path for mark in piece.marks), piece.grain):
        for curve in path.curves:
            yield from (curve.start, curve.c1, curve.c2, curve.end)
    for edge in piece.edges:
        yield from (edge.path.point(notch.distance) for notch in edge.notches)


def shared_pieces(patterns: Sequence[Pattern]) -> tuple[Mapping[PieceId, str], ...]:
    """Return for each pattern the pieces that an earlier one has, too, each with its style.

    The style is that of the first pattern with this piece, which has none for it itself.
    """
    first: dict[PieceId, list[tuple[str, Piece]]] = {}
    found = []
    for pattern in patterns:
        shared = {}
        for piece in pattern.pieces:
            earlier = first.setdefault(piece.id, [])
            style = next((style for style, other in earlier if are_same(piece, other)), None)
            if style is None:
                earlier.append((pattern.style, piece))
            else:
                shared[piece.id] = style
        found.append(shared)
    return tuple(found)
