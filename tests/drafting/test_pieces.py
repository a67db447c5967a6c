"""Pieces: rings of named edges, and their mirror images."""

import pytest

from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.pieces import Cutting, Edge, Notch, Piece
from tests.drafting.small_pieces import bezier, leg, ring, square


def test_a_ring_that_runs_clockwise_is_refused() -> None:
    with pytest.raises(ValueError, match="counter-clockwise"):
        ring([(0, 0), (0, 10), (10, 10), (10, 0)], [0, 0, 0, 0])


def test_a_ring_that_does_not_close_names_the_two_edges() -> None:
    edges = (
        Edge("hem", Path.through([Point(0, 0), Point(10, 0)])),
        Edge("side", Path.through([Point(11, 0), Point(0, 9)])),
    )
    with pytest.raises(ValueError, match="hem does not meet side"):
        Piece("scrap", edges, Path.through([Point(1, 1), Point(1, 2)]))


def test_an_edge_is_found_by_its_name() -> None:
    assert leg().edge("fly").allowance == 40
    with pytest.raises(KeyError, match="no edge 'yoke'"):
        leg().edge("yoke")


def test_the_mirror_image_has_the_same_area_and_lengths() -> None:
    piece, mirrored = leg(), leg().mirrored()
    assert mirrored.polygon.area == pytest.approx(piece.polygon.area)
    for edge in piece.edges:
        assert mirrored.edge(edge.name).length == pytest.approx(edge.length, abs=1e-3)
        assert mirrored.edge(edge.name).allowance == edge.allowance


def test_notches_keep_their_place_on_the_mirror_image() -> None:
    piece, mirrored = leg(), leg().mirrored()
    for edge in piece.edges:
        there = {
            notch.name: mirrored.edge(edge.name).path.point(notch.distance)
            for notch in mirrored.edge(edge.name).notches
        }
        for notch in edge.notches:
            place = edge.path.point(notch.distance)
            assert tuple(there[notch.name]) == pytest.approx((-place.x, place.y), abs=1e-3)


def test_mirroring_twice_gives_the_piece_back() -> None:
    twice = leg().mirrored().mirrored()
    assert twice.outline(1.0) == pytest.approx(leg().outline(1.0))
    assert [notch.distance for notch in twice.edge("side").notches] == pytest.approx([420, 800])


def test_the_outline_keeps_corners_and_repeats_none() -> None:
    assert square(0, 0, 0, 0).outline().tolist() == [[0, 0], [100, 0], [100, 100], [0, 100]]


def test_the_outline_follows_curves_within_its_sag() -> None:
    # A semicircle of radius 50 (two quarter cubics, 0.03 % off) over its diameter: pi r^2 / 2.
    k = 27.614
    dome = Path(
        (
            bezier((50, 0), (50, k), (k, 50), (0, 50)),
            bezier((0, 50), (-k, 50), (-50, k), (-50, 0)),
        )
    )
    piece = Piece(
        "dome",
        (Edge("base", Path.through([Point(-50, 0), Point(50, 0)])), Edge("dome", dome)),
        Path.through([Point(0, 1), Point(0, 9)]),
    )
    assert piece.polygon.area == pytest.approx(3926.99, rel=1e-3)


def test_replacing_an_edge_leaves_the_others_alone() -> None:
    piece = leg()
    changed = piece.with_edges(Edge("waist", piece.edge("waist").path, 0.0, notches=(Notch("crease", 80),)))
    assert changed.edge("waist").notches[0].name == "crease"
    assert changed.edge("side") is piece.edge("side")


def test_a_pair_says_to_flip_for_the_second() -> None:
    assert Cutting(2, pairs=True).text() == "cut 2 = 1 pair, flip for the second"
    assert Cutting(4, pairs=True).text() == "cut 4 = 2 pairs, flip for the second"
    assert Cutting(1).text() == "cut 1, this side up"


def test_a_moved_piece_takes_grain_and_marks_with_it_and_leaves_the_old_one() -> None:
    piece = leg()
    moved = piece.moved(lambda p: Point(p.x + 3, p.y + 4))
    for old, new in zip(piece.edges, moved.edges, strict=True):
        assert (new.path.start - old.path.start).length == pytest.approx(5)
        assert (new.kind, new.allowance, new.notches) == (old.kind, old.allowance, old.notches)
    way = moved.grain.start - piece.grain.start
    assert (way.x, way.y) == pytest.approx((3, 4))
    assert moved.id == piece.id and piece == leg()
    with pytest.raises(ValueError, match="counter-clockwise"):
        piece.moved(lambda p: Point(-p.x, p.y))
