"""Walks along the edges of pieces, told by their corners, so that a mirrored piece needs no care."""

from __future__ import annotations

from drafting.pieces.kinds import EdgeKind, PlaceKind
from drafting.pieces.pieces import Piece
from drafting.pieces.seams import Run


def walk(
    piece: Piece,
    edge: EdgeKind,
    *,
    away_from: EdgeKind | None = None,
    towards: EdgeKind | None = None,
    start: float = 0.0,
    end: float | None = None,
) -> Run:
    """Return the run along `edge` from the corner it shares with `away_from`, or to the one with `towards`.

    Args:
        piece: The piece.
        edge: The edge walked.
        away_from: The neighbouring edge from which the walk leads away; or else
        towards: the neighbouring edge to which it leads.
        start: Where the stretch starts, mm from the start of the walk.
        end: Where it ends; None is the far end.

    Raises:
        ValueError: the piece has no such edge, or the two do not meet.
    """
    kinds = [e.kind for e in piece.edges]
    place = kinds.index(edge)
    before, after = kinds[place - 1], kinds[(place + 1) % len(kinds)]
    if away_from == before or towards == after:
        return Run(piece.id, edge, False, start, end)
    if away_from == after or towards == before:
        return Run(piece.id, edge, True, start, end)
    other = away_from or towards
    raise ValueError(f"{piece.name}: {str(edge)!r} does not meet {str(other)!r}")


def distance(piece: Piece, run: Run, notch: PlaceKind) -> float:
    """Return how far along `run`, from the corner it walks away from, a notch of its edge lies, mm.

    Raises:
        KeyError: the edge has no such notch.
    """
    edge = piece.edge(run.edge)
    for own in edge.notches:
        if own.shows == notch:
            return edge.length - own.distance if run.backwards else own.distance
    raise KeyError(f"{piece.name} {edge.name} has no notch {str(notch)!r}")
