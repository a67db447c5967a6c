"""What moves between two versions: points, lengths and edges by name, sides told apart where they differ."""

import numpy as np
import pytest

from drafting import draft_block
from drafting.body.measurements import Side, SideMeasurements
from drafting.pieces.kinds import EdgeKind, PieceId, PieceKind
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Cutting, Material, Piece
from drafting.report.moves import (
    BlockLength,
    EdgeKey,
    LengthKey,
    as_sides,
    edges_of,
    halves_of,
    lengths_of,
    moved,
    points_of,
)
from tests.drafting.small_pieces import square
from tests.printed import which
from tests.wearers import wearer

LEG, FLY = "front leg", "fly facing (left front)"


def named(keyed):  # type: ignore[no-untyped-def]
    return {key.name: amount for key, amount in keyed.items()}


EVEN = draft_block(wearer())
UNEVEN = draft_block(
    wearer(left=SideMeasurements(inside_leg_height=780), right=SideMeasurements(inside_leg_height=770))
)


def test_one_pair_stands_for_both_sides_where_they_are_told_apart() -> None:
    assert len(halves_of(EVEN, 2)) == len(halves_of(UNEVEN, 2)) == 2
    points = named(points_of(EVEN, 2))
    assert list(points["right front, fork"]) == list(points["left front, fork"])
    assert {"front, fork", "back, fork"} <= named(points_of(EVEN, 1)).keys()


def test_lengths_have_their_side_but_for_those_of_the_whole_body() -> None:
    one, two = named(lengths_of(EVEN, 1)), named(lengths_of(UNEVEN, 2))
    # waist 760 + 10, hip 980 + 30
    assert (one["waist"].item(), one["hip"].item()) == pytest.approx((770, 1010), abs=0.01)
    assert {"waist", "hip", "crotch seam", "right inseam", "left inseam"} <= two.keys()
    assert (two["left inseam"] - two["right inseam"]).item() == pytest.approx(10, abs=0.5)


def test_edges_of_one_name_go_together_and_interfacing_is_left_away() -> None:
    stiff = Piece(
        "stiff", square(0, 0, 0, 0).edges, square(0, 0, 0, 0).grain, Cutting(material=Material.INTERFACING)
    )
    pattern = Pattern("Ada", "straight", "", (square(0, 0, 0, 0), stiff))
    assert {name: mm.item() for name, mm in named(edges_of(pattern)).items()} == {
        f"shape, e{i}": 100 for i in range(4)
    }
    assert pattern.piece("stiff", interfacing=True) is stiff
    with pytest.raises(KeyError, match="no piece 'shirt'"):
        pattern.piece("shirt")


def test_a_mirrored_pair_is_known_as_right_and_left_where_another_version_knows_it_so() -> None:
    leg, pocket, fly = (EdgeKey(which(name), EdgeKind.HEM) for name in (LEG, "back pocket", FLY))
    sides = [EdgeKey(PieceId(PieceKind.FRONT_LEG, side), EdgeKind.HEM) for side in Side]
    other_fly = EdgeKey(PieceId(PieceKind.FLY_FACING, Side.RIGHT), EdgeKind.HEM)
    edges = {leg: np.array([400.0]), pocket: np.array([200.0]), fly: np.array([50.0])}
    found = as_sides(edges, [*sides, pocket, fly, other_fly])
    # The fly has its side already: that of the front it is for.
    assert {key: mm.item() for key, mm in found.items()} == dict.fromkeys(sides, 400) | {pocket: 200, fly: 50}


def test_only_what_both_versions_have_can_move() -> None:
    hem, dart = LengthKey(BlockLength.HEM), LengthKey(BlockLength.THIGH)
    old, new = {hem: np.array([400.0]), dart: np.array([90.0])}, {hem: np.array([390.0])}
    assert {key: by.item() for key, by in moved(old, new).items()} == {hem: -10}
