"""The front leg and its pocket opening."""

import math
from dataclasses import replace

import pytest
from hypothesis import given

from drafting.block.block import draft_block
from drafting.body.measurements import SideMeasurements
from drafting.pieces.allowance import AllowanceTooWide, cut_line
from drafting.pieces.pieces import Finish, NotchKind
from drafting.pieces.trueing import check_pieces, check_seams
from styles.base.part import HalfToCut
from styles.choice.style import STRAIGHT, Allowances, Band, Felling, FrontPocket
from styles.parts.back_leg import FromHem
from styles.parts.fly_length import fly_length
from styles.parts.front_leg import front_leg, open_front
from styles.top.upper import front_at, seam_depth
from tests.front_parts import front_parts
from tests.strategies import bodies, examples
from tests.wearers import wearer

BLOCK = draft_block(wearer())
HALF = HalfToCut(BLOCK.halves[0])
STYLES = (
    STRAIGHT,
    replace(STRAIGHT, band=Band.STRAIGHT, below_waist=0),
    replace(STRAIGHT, below_waist=70, front_pocket=FrontPocket(scoop=0, watch=False)),
    replace(STRAIGHT, front_pocket=FrontPocket(width=140, depth=160, scoop=1)),
)


def leg(style=STRAIGHT, half=HALF, block=BLOCK):
    return front_leg(half, style, fly_length(block, style)).pieces[0]


def with_pocket(**changed):
    return replace(STRAIGHT, front_pocket=FrontPocket(**changed))


@examples(60)
@given(bodies())
def test_on_any_body_the_front_is_whole_can_be_cut_and_sews_to_its_pockets_and_fly(measurements):
    block = draft_block(measurements)
    for style in STYLES:
        part = front_parts(block, style)
        assert check_pieces(part.pieces) == ()
        for piece in part.pieces:
            try:
                cut = cut_line(piece).polygon
            except AllowanceTooWide as refused:
                # The block's crotch curve itself may be too tight for its allowance; the wearer is told.
                assert refused.edges in (("crotch seam",), ("centre front",)), refused
                continue
            assert cut.is_valid and cut.buffer(0.02).covers(piece.polygon)
        for check in check_seams(part.pieces, part.seams):
            assert check.passes and not check.findings, check


def test_the_ring_is_waist_opening_side_hem_inseam_crotch():
    names = [edge.name for edge in leg().edges]
    assert names == ["waist", "pocket opening", "side seam", "hem", "inseam", "crotch seam"]
    assert leg().edge("hem").finish is Finish.HEM


def test_opening_and_what_is_left_of_waist_and_side_make_up_the_front():
    front, piece = front_at(HALF.drafted.front, seam_depth(STRAIGHT)), leg()
    assert piece.edge("waist").length == pytest.approx(front.waist.length - 100)
    assert piece.edge("side seam").length == pytest.approx(front.side.length - 75)


def test_a_scoop_leaves_square_to_the_waist_and_arrives_square_to_the_side():
    piece = leg()
    waist, opening, side = (piece.edge(name).path for name in ("waist", "pocket opening", "side seam"))
    at_waist = waist.direction(waist.length).angle_to(opening.direction(0))
    at_side = opening.direction(opening.length).angle_to(side.direction(0))
    assert math.degrees(at_waist) == pytest.approx(90, abs=0.01)
    assert math.degrees(at_side) == pytest.approx(90, abs=0.01)


def test_no_scoop_is_a_straight_slant_and_each_deeper_one_leaves_less_of_the_leg():
    scoops = (0, 0.1, 0.3, 0.5, 0.7, 1)
    legs = [leg(with_pocket(scoop=scoop)) for scoop in scoops]
    slant = legs[0].edge("pocket opening").path
    assert slant.length == pytest.approx((slant.end - slant.start).length)
    areas = [piece.polygon.area for piece in legs]
    assert areas == sorted(areas, reverse=True) and len(set(areas)) == len(scoops)


def test_an_opening_asked_too_wide_or_too_deep_stays_on_the_front_and_above_the_hip():
    opened = open_front(HALF, with_pocket(width=400, depth=400))
    waist = opened.whole.waist.length
    assert opened.width == pytest.approx(min(0.45 * waist, 2 * opened.depth))
    assert opened.depth == pytest.approx(opened.hip - 10)


def test_hip_and_knee_are_single_notches_as_far_from_the_hem_as_the_back_has_them():
    piece, at = leg(), FromHem.of(HALF)
    side = piece.edge("side seam")
    assert {n.name: side.length - n.distance for n in side.notches} == pytest.approx(
        {"hip": at.hip, "knee": at.knee}
    )
    assert [(n.name, n.distance) for n in piece.edge("inseam").notches] == [("knee", at.knee)]
    assert all(n.kind is NotchKind.SINGLE for edge in piece.edges for n in edge.notches)


def test_one_pair_serves_both_sides_and_different_sides_get_a_leg_each_turned_for_its_side():
    assert leg().cutting.text() == "cut 2 = 1 pair, flip for the second"
    block = draft_block(
        wearer(left=SideMeasurements(half_hip_arc=500), right=SideMeasurements(half_hip_arc=480))
    )
    right, left = (leg(half=HalfToCut(half), block=block) for half in block.halves)
    assert (right.name, left.name) == ("right front leg", "left front leg")
    assert right.cutting.quantity == left.cutting.quantity == 1
    assert right.edge("inseam").path.point(0).x > right.edge("side seam").path.point(0).x
    assert left.edge("inseam").path.point(0).x < left.edge("side seam").path.point(0).x


def test_felling_folds_the_front_inseam_in_and_no_allowance_stays_none():
    felled = replace(STRAIGHT, allowances=Allowances(felling=Felling.FELLED))
    assert leg(felled).edge("inseam").allowance == 9
    bare = Allowances(
        waist=0, side_seam=0, inseam=0, crotch_seam=0, yoke=0, small=0, hem=0, felling=Felling.FELLED
    )
    part = front_parts(BLOCK, replace(STRAIGHT, allowances=bare))
    assert {edge.allowance for piece in part.pieces for edge in piece.edges} == {0}


def test_the_scoop_is_as_wide_and_deep_as_one_measured_on_trousers():
    """10 cm wide and 7 cm deep below the band (bumblesews.wordpress.com, jeans pockets)."""
    opened = open_front(HALF, with_pocket(width=100, depth=70))
    assert (opened.width, opened.depth) == (100, 70)


def test_the_opening_of_work_pants_fits_the_size_it_is_made_for():
    """Opening 7 in, 1 3/4 in from the side along the waist, size 32: waist 33.5, hip 39.5, front rise 12.5 in
    with a band of 1 3/4 (work-pant size chart, casualindustrees.com). Worn at the block's waist,
    straight band."""
    block = draft_block(wearer(waist_girth=851, hip_girth=965, inside_leg_height=810, body_rise=260))
    pocket = FrontPocket(width=44, depth=170, scoop=0)
    style = replace(STRAIGHT, below_waist=0, band=Band.STRAIGHT, band_height=44, front_pocket=pocket)
    opening = leg(style, HalfToCut(block.halves[0]), block).edge("pocket opening").length
    assert opening == pytest.approx(7 * 25.4, abs=6)
