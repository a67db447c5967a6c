"""What pieces, seams and steps are called in print, from what they are."""

import pytest

from drafting.block.point_names import Drawn, drawn, drawn_name
from drafting.body.measurements import Side
from drafting.lesson.words import About, Portion
from drafting.pieces.kinds import CornerKind, EdgeKind, PieceId, PieceKind, PlaceKind, SeamKind
from drafting.pieces.words import (
    CORNERS,
    EDGES,
    PIECES,
    PLACES,
    SEAMS,
    corner_name,
    edge_name,
    piece_name,
    place_name,
    seam_name,
)

YOKE = PieceId(PieceKind.BACK_YOKE, Side.LEFT)


@pytest.mark.parametrize(
    ("piece", "name"),
    [
        (PieceId(PieceKind.FRONT_LEG), "front leg"),
        (YOKE, "left back yoke"),
        (PieceId(PieceKind.FLY_FACING, Side.RIGHT), "fly facing (right front)"),
        (PieceId(PieceKind.STRAIGHT_BAND, interfacing=True), "waistband interfacing"),
        (PieceId(PieceKind.FLY_SHIELD, Side.LEFT, interfacing=True), "fly shield (left front) interfacing"),
    ],
)
def test_a_piece_is_called_by_kind_and_side(piece: PieceId, name: str) -> None:
    assert piece_name(piece) == name


def test_seams_and_corners_are_told_by_their_side_or_by_a_piece() -> None:
    assert seam_name(SeamKind.INSEAM, None, None) == "inseam"
    assert seam_name(SeamKind.INSEAM, Side.LEFT, None) == "left inseam"
    assert seam_name(SeamKind.AT_CENTRE_FRONT, None, YOKE) == "left back yoke at the centre front"
    assert corner_name(CornerKind.YOKE_ACROSS_SIDE, None, YOKE) == "left back yoke across the side seam"
    assert corner_name(CornerKind.HEM_ACROSS_SIDE, Side.RIGHT, None) == "right hem across the side seam"


def test_one_of_several_places_has_its_number() -> None:
    assert (place_name(PlaceKind.LOOP, 2), place_name(PlaceKind.HIP)) == ("loop 2", "hip")
    assert edge_name(EdgeKind.OUTER_WAIST) == "outer waist"


def test_every_kind_has_its_words() -> None:
    tables = ((PieceKind, PIECES), (EdgeKind, EDGES), (PlaceKind, PLACES), (SeamKind, SEAMS))
    for kinds, words in (*tables, (CornerKind, CORNERS)):
        assert set(words) == set(kinds) and all(words.values())
        assert len(set(words.values())) == len(words), "two of a kind cannot be told apart in print"


@pytest.mark.parametrize(
    ("key", "it", "number"),
    [
        ("fork", Drawn.FORK, 0),
        ("dart 2 tip", Drawn.DART_TIP, 2),
        ("dart 1", Drawn.DART, 1),
        ("waist 3", Drawn.WAIST, 3),
    ],
)
def test_a_step_is_known_by_its_key_and_called_as_it(key: str, it: Drawn, number: int) -> None:
    assert drawn(key) == (it, number)
    assert drawn_name(it, number) == key
    with pytest.raises(ValueError, match="nothing"):
        drawn("nothing")


def test_an_instruction_is_about_a_portion_of_what_is_drawn() -> None:
    side = About(Drawn.WHOLE_SIDE_SEAM, portion=Portion.CURVED, part=2)
    assert side.name == "whole side seam, curved part 2"
    assert (side.edge.name, side.of_its_edge.name) == ("side seam", "side seam, curved part 2")
    guide = About(Drawn.WHOLE_SIDE_SEAM, portion=Portion.GUIDE)
    assert guide.name == guide.of_its_edge.name == "guide, whole side seam"
    assert About(Drawn.WAIST, 2, Portion.JOINT).name == "joint of the waist 2"
