"""Walks along an edge of a square of 100, e0 below, e1 right, e2 above, e3 left."""

from dataclasses import replace

import pytest

from drafting.pieces.pieces import Notch, Piece
from styles.base.edge_runs import distance, walk
from tests.drafting.small_pieces import run, square


def notched() -> Piece:
    piece = square(0, 0, 0, 0)
    first, *others = piece.edges
    return replace(piece, edges=(replace(first, notches=(Notch("knee", 30),)), *others))


@pytest.mark.parametrize(
    ("corner", "backwards"),
    [
        ({"away_from": "e3"}, False),
        ({"towards": "e1"}, False),
        ({"away_from": "e1"}, True),
        ({"towards": "e3"}, True),
    ],
)
def test_a_walk_knows_its_way_by_the_neighbour(corner: dict[str, str], backwards: bool) -> None:
    assert walk(square(0, 0, 0, 0), "e0", **corner) == run("shape", "e0", backwards)


def test_an_edge_across_the_piece_is_no_neighbour() -> None:
    with pytest.raises(ValueError, match="'e0' does not meet 'e2'"):
        walk(square(0, 0, 0, 0), "e0", away_from="e2")


def test_a_notch_lies_as_far_as_one_has_walked() -> None:
    piece = notched()
    assert distance(piece, walk(piece, "e0", away_from="e3"), "knee") == 30
    assert distance(piece, walk(piece, "e0", away_from="e1"), "knee") == 70
    with pytest.raises(KeyError, match="has no notch 'hip'"):
        distance(piece, walk(piece, "e0", away_from="e3"), "hip")
