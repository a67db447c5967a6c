"""Walks along the edges of pieces, told by their corners, so that a mirrored piece needs no care."""

from __future__ import annotations

from drafting.pieces.pieces import Piece
from drafting.pieces.seams import Run


def walk(
    piece: Piece,
    edge: str,
    *,
    away_from: str = "",
    towards: str = "",
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
    names = [e.name for e in piece.edges]
    place = names.index(edge)
    before, after = names[place - 1], names[(place + 1) % len(names)]
    if away_from == before or towards == after:
        return Run(piece.name, edge, False, start, end)
    if away_from == after or towards == before:
        return Run(piece.name, edge, True, start, end)
    raise ValueError(f"{piece.name}: {edge!r} does not meet {away_from or towards!r}")


def distance(piece: Piece, run: Run, notch: str) -> float:
    """Return how far along `run`, from the corner it walks away from, a notch of its edge lies, mm.

    Raises:
        KeyError: the edge has no notch of that name.
    """
    edge = piece.edge(run.edge)
    for own in edge.notches:
        if own.name == notch:
            return edge.length - own.distance if run.backwards else own.distance
    raise KeyError(f"{piece.name} {run.edge} has no notch {notch!r}")
