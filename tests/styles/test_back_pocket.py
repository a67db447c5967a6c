"""The back pocket: its size follows the hip, its place the yoke seam, and it stays on the back."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from shapely.geometry import Polygon

from drafting import Measurements, draft_block
from drafting.block.block import Block
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.allowance import cut_line
from drafting.pieces.pieces import MarkKind
from drafting.pieces.trueing import check_pieces
from styles.choice.style import STRAIGHT, Allowances
from styles.parts.back_pocket import PocketSize, back_pocket, placing, pocket_size
from styles.top.upper import BackTop, back_top
from tests.sewn_block import width_at
from tests.strategies import bodies, examples

LEVEL = Path.through([Point(0, 1000), Point(-240, 1000)])
"""A yoke seam 240 long, level, from the centre at 0 to the side."""


def test_its_opening_grows_with_the_hip() -> None:
    assert pocket_size(STRAIGHT, 1000, [LEVEL], crotch=700) == PocketSize(148, 0.95 * 148, 8, 20, 48, 32)
    assert pocket_size(STRAIGHT, 1040, [LEVEL], crotch=700).opening == pytest.approx(148 + 0.148 * 40)


def test_on_a_narrow_back_opening_and_distance_from_the_centre_shrink_alike() -> None:
    narrow = Path.through([Point(0, 1000), Point(-123, 1000)])
    size = pocket_size(STRAIGHT, 1000, [LEVEL, narrow], crotch=700)
    assert size.from_centre + size.opening == pytest.approx(123 - 25)
    assert size.opening / size.from_centre == pytest.approx(148 / 48)
    assert (size.point, size.taper) == pytest.approx((20 * size.opening / 148, 8 * size.opening / 148))


def test_on_a_short_seat_it_moves_up_and_then_gets_shorter() -> None:
    assert pocket_size(STRAIGHT, 1000, [LEVEL], crotch=1000 - 180).below_yoke == pytest.approx(
        180 - 20 - 140.6
    )
    short = pocket_size(STRAIGHT, 1000, [LEVEL], crotch=1000 - 160)
    assert short.below_yoke == 15
    assert short.height == pytest.approx(160 - 20 - 15)


def test_it_is_placed_square_under_the_yoke_seam_away_from_the_centre() -> None:
    outline, *drills = placing(LEVEL, PocketSize(150, 140, 8, 20, 48, 32))
    corners = [(round(x, 6), round(y, 6)) for x, y in outline.path.flatten()]
    assert set(corners) == {(-48, 968), (-198, 968), (-56, 828), (-190, 828), (-123, 808)}
    assert {drill.kind for drill in drills} == {MarkKind.DRILL}
    assert sorted(drill.path.start.x for drill in drills) == pytest.approx([-194, -52])
    assert [drill.path.start.y for drill in drills] == pytest.approx([964, 964])


def test_its_hem_is_mirrored_about_the_opening() -> None:
    (piece,) = back_pocket(STRAIGHT, PocketSize(150, 140, 8, 20, 48, 32)).pieces
    cut = cut_line(piece).polygon
    assert cut.bounds[3] == pytest.approx(22)
    assert width_at(cut, 21.99) == pytest.approx(width_at(cut, -21.99), abs=0.02)
    assert (piece.cutting.quantity, piece.cutting.pairs) == (2, True)
    assert check_pieces([piece]) == ()


def test_those_who_add_their_own_allowance_get_no_hem() -> None:
    bare = Allowances(waist=0, side_seam=0, inseam=0, crotch_seam=0, yoke=0, small=0, hem=0)
    (piece,) = back_pocket(replace(STRAIGHT, allowances=bare), PocketSize(150, 140, 8, 20, 48, 32)).pieces
    assert cut_line(piece).polygon.equals_exact(piece.polygon, 1e-6)


def tops(block: Block) -> list[BackTop]:
    return [back_top(half.back, STRAIGHT) for half in block.halves]


@examples(60)
@given(bodies())
def test_it_lies_within_the_back_leg_of_any_body(body: Measurements) -> None:
    block = draft_block(body)
    backs = tops(block)
    size = pocket_size(
        STRAIGHT, body.hip_girth or 0, [top.seam for top in backs], crotch=block.levels.crotch.mm
    )
    assert check_pieces(back_pocket(STRAIGHT, size).pieces) == ()
    for half, top in zip(block.halves, backs, strict=True):
        inseam = half.back.lower.inseam
        ring = [path.flatten()[:-1] for path in (top.seam, top.side, inseam, top.crotch)]
        leg = Polygon(np.vstack(ring))
        outline, *drills = placing(top.seam, size)
        pocket = Polygon(outline.path.flatten())
        assert leg.buffer(0.1).covers(pocket)
        assert all(pocket.covers(Polygon([drill.path.start] * 3).centroid) for drill in drills)
