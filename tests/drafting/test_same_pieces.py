"""Which pieces of several patterns are the same."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.base.tolerance import SAME
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Cutting, Edge, Finish, Mark, MarkKind, Material, Notch, NotchKind, Piece
from drafting.pieces.same_pieces import are_same, shared_pieces
from tests.outputs.samples import leg
from tests.strategies import examples

PIECE = replace(
    leg("front leg", seat=30, kind=NotchKind.SINGLE),
    marks=(Mark("hole", MarkKind.DRILL, Path.through([Point(60, 90), Point(61, 90)])),),
)


def moved(piece: Piece, x: float, y: float) -> Piece:
    def move(p: Point) -> Point:
        return Point(p.x + x, p.y + y)

    return replace(
        piece,
        edges=tuple(replace(edge, path=edge.path.moved(move)) for edge in piece.edges),
        grain=piece.grain.moved(move),
        marks=tuple(replace(mark, path=mark.path.moved(move)) for mark in piece.marks),
    )


def with_edge(change: Callable[[Edge], Edge]) -> Piece:
    index = next(i for i, edge in enumerate(PIECE.edges) if edge.notches)
    return PIECE.with_edges(change(PIECE.edges[index]))


def notched(edge: Edge, change: Callable[[Notch], Notch]) -> Edge:
    return replace(edge, notches=(change(edge.notches[0]), *edge.notches[1:]))


def nudged(path: Path, by: float) -> Path:
    """Return the path with its handles moved, its ends where they were."""
    first = replace(path.curves[0], c1=Point(path.curves[0].c1.x + by, path.curves[0].c1.y))
    return Path((first, *path.curves[1:]))


coordinates = st.floats(-5000, 5000)


@given(coordinates, coordinates)
@examples(25)
def test_a_piece_is_the_same_wherever_it_was_drafted(x: float, y: float) -> None:
    assert are_same(PIECE, moved(PIECE, x, y))


def test_what_no_print_shows_makes_no_other_piece() -> None:
    assert are_same(PIECE, with_edge(lambda e: replace(e, path=nudged(e.path, 0.9 * SAME))))


OTHERS = {
    "name": replace(PIECE, kind="back leg"),
    "how many are cut": replace(PIECE, cutting=Cutting(4, pairs=True)),
    "of what": replace(PIECE, cutting=replace(PIECE.cutting, material=Material.POCKETING)),
    "the wash": replace(PIECE, drawn_larger=(1.03, 1.0)),
    "an allowance": with_edge(lambda e: replace(e, allowance=e.allowance + 1)),
    "a finish": with_edge(lambda e: replace(e, finish=Finish.HEM)),
    "a line": with_edge(lambda e: replace(e, path=nudged(e.path, 2 * SAME))),
    "a notch's place": with_edge(lambda e: notched(e, lambda n: replace(n, distance=n.distance + 2 * SAME))),
    "a notch's kind": with_edge(lambda e: notched(e, lambda n: replace(n, kind=NotchKind.DOUBLE))),
    "a notch's name": with_edge(lambda e: notched(e, lambda n: replace(n, shows="elsewhere"))),
    "a notch less": with_edge(lambda e: replace(e, notches=())),
    "no mark": replace(PIECE, marks=()),
    "a mark's place": replace(
        PIECE, marks=tuple(replace(m, path=m.path.moved(lambda p: Point(p.x, p.y + 1))) for m in PIECE.marks)
    ),
    "the grain": replace(PIECE, grain=PIECE.grain.moved(lambda p: Point(p.x + 1, p.y))),
    "the other side of the body": PIECE.mirrored(),
}  # fmt: skip


@pytest.mark.parametrize("change", OTHERS)
def test_a_piece_that_differs_in_one_thing_is_another(change: str) -> None:
    assert not are_same(PIECE, OTHERS[change]) and not are_same(OTHERS[change], PIECE)


def test_each_pattern_names_the_first_that_has_its_piece() -> None:
    def pattern(style: str, *pieces: Piece) -> Pattern:
        return Pattern("Ada Example (invented)", style, "", pieces)

    other = with_edge(lambda e: replace(e, allowance=20))
    pocket = replace(PIECE, kind="back pocket")
    first, second, third = shared_pieces(
        [
            pattern("one", PIECE, pocket),
            pattern("two", other, moved(pocket, 3, 4)),
            pattern("three", moved(other, 1, 1), pocket),
        ]
    )
    assert (first, second, third) == (
        {},
        {pocket.id: "one"},
        {PIECE.id: "two", pocket.id: "one"},
    )
