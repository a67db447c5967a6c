"""The shaped waistband: it follows yoke and front, and ends where the fly needs it."""

from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from drafting import Measurements, draft_block
from drafting.body.measurements import SideMeasurements
from drafting.pieces.allowance import cut_line
from drafting.pieces.pieces import Finish
from drafting.pieces.trueing import check_corners, check_pieces, check_seams
from styles.base.part import HalfToCut
from styles.choice.style import STRAIGHT, Allowances, Laps
from styles.parts.shaped_band import shaped_band
from styles.top.upper import back_top, front_band
from tests.strategies import bodies, examples
from tests.styles.upper_parts import whole_band
from tests.wearers import wearer

BLOCK = draft_block(wearer())
FRONT, BACK = whole_band(BLOCK, STRAIGHT).pieces
UNEVEN = draft_block(
    wearer(left=SideMeasurements(half_hip_arc=500), right=SideMeasurements(half_hip_arc=480))
)


@examples(60)
@given(bodies())
def test_the_band_of_any_body_is_sewn_together(body: Measurements) -> None:
    block = draft_block(body)
    # Where seams and darts cannot take the waist in it is said, and no shaped band lies well.
    assume(abs(block.shares.suppression.left_over) < 1)
    band = whole_band(block, STRAIGHT, loops=False)
    assert all(check.passes and not check.findings for check in check_seams(band.pieces, band.seams))
    # A waist far smaller than the hip over a short trunk costs a corner its straightness; it is then said.
    assert all(check.passes or check.findings for check in check_corners(band.pieces, band.corners))
    assert check_pieces(band.pieces) == ()


@examples(60)
@given(st.integers(820, 1300), st.floats(0.68, 0.95), st.integers(240, 330))
def test_the_band_of_any_common_figure_is_cut_with_its_allowances(hip: int, share: float, rise: int) -> None:
    block = draft_block(wearer(hip_girth=hip, waist_girth=round(share * hip), body_rise=rise))
    band = whole_band(block, STRAIGHT)
    assert all(check.passes for check in check_corners(band.pieces, band.corners))
    for piece in band.pieces:
        assert cut_line(piece).polygon.covers(piece.polygon.buffer(-0.1))


def test_each_part_is_as_long_as_what_it_is_sewn_to() -> None:
    half = BLOCK.halves[0]
    assert FRONT.edge("waist seam").length == pytest.approx(front_band(half.front, 30, 40).lower.length)
    assert BACK.edge("waist seam").length == pytest.approx(back_top(half.back, STRAIGHT).yoke.waist.length)


def test_its_ends_are_as_high_as_the_band() -> None:
    assert FRONT.edge("side seam").length == pytest.approx(40)
    assert BACK.edge("centre back").length == pytest.approx(40)


def test_it_reaches_under_the_lap_as_far_as_the_fly_shield() -> None:
    assert FRONT.edge("shield seam").length == pytest.approx(38 + 7)
    assert FRONT.edge("upper edge of the underlap").length == pytest.approx(45)


def test_a_pair_is_cut_in_two_layers_and_the_back_on_the_fold() -> None:
    assert (FRONT.cutting.quantity, FRONT.cutting.pairs) == (4, True)
    assert (BACK.cutting.quantity, BACK.cutting.pairs) == (2, False)
    assert BACK.edge("centre back").finish is Finish.FOLD


def test_the_fold_is_plumb_so_that_it_lies_on_the_grain() -> None:
    fold = BACK.edge("centre back").path
    assert fold.start.x == pytest.approx(fold.end.x)


@pytest.mark.parametrize(("laps", "side"), [(Laps.LEFT_OVER_RIGHT, "left"), (Laps.RIGHT_OVER_LEFT, "right")])
def test_the_lapping_side_is_cut_off_one_allowance_beyond_the_centre_front(laps: Laps, side: str) -> None:
    front, _ = whole_band(BLOCK, replace(STRAIGHT, laps=laps)).pieces
    marks = {mark.name: mark.path for mark in front.marks}
    beyond = marks[f"cut off here on the {side}"].start.x - marks["centre front"].start.x
    assert beyond == pytest.approx(10)


def test_without_allowances_it_is_cut_off_at_the_centre_front() -> None:
    style = replace(STRAIGHT, allowances=Allowances(small=0))
    marks = {mark.name: mark.path for mark in whole_band(BLOCK, style).pieces[0].marks}
    assert marks["cut off here on the left"] == marks["centre front"]


def test_button_and_buttonhole_meet_when_the_centre_fronts_do() -> None:
    marks = {mark.name: mark.path for mark in FRONT.marks}
    centre = marks["centre front"].start.x
    hole = [centre - end.x for end in (marks["buttonhole"].start, marks["buttonhole"].end)]
    assert hole == pytest.approx([12.7, 31.7])
    assert hole[0] < marks["button"].start.x - centre < hole[1]


def test_a_body_whose_sides_differ_gets_an_underlap_on_one_side_and_a_seam_at_the_back() -> None:
    pieces = {piece.name: piece for piece in whole_band(UNEVEN, STRAIGHT).pieces}
    assert set(pieces) == {
        f"{side} {band}" for side in ("left", "right") for band in ("front waistband", "back waistband")
    }
    right, left = pieces["right front waistband"], pieces["left front waistband"]
    assert [e.name for e in right.edges].count("shield seam") == 1
    assert "shield seam" not in [e.name for e in left.edges]
    assert {mark.name for mark in left.marks} == {"buttonhole"}
    assert left.cutting.quantity == 2 and left.cutting.pairs
    assert pieces["left back waistband"].edge("centre back").finish is Finish.SEAM


def test_a_mirrored_part_keeps_its_notches_at_the_same_distance_from_the_centre() -> None:
    pieces = {piece.name: piece for piece in whole_band(UNEVEN, STRAIGHT).pieces}
    for side in ("left", "right"):
        piece = pieces[f"{side} front waistband"]
        edge = piece.edge("waist seam")
        centre = edge.path.end if side == "right" else edge.path.start
        (notch,) = edge.notches
        far = (edge.path.point(notch.distance) - centre).length
        assert far == pytest.approx(90, abs=10)


@pytest.mark.parametrize("below_waist", [-25, 0, 55])
def test_a_change_of_rise_keeps_the_band_in_step_with_its_seam(below_waist: float) -> None:
    style = replace(STRAIGHT, below_waist=below_waist)
    half = BLOCK.halves[0]
    front, back = shaped_band(HalfToCut(half), style).pieces
    assert front.edge("waist seam").length == pytest.approx(
        front_band(half.front, below_waist, 40).lower.length
    )
    assert back.edge("waist seam").length == pytest.approx(back_top(half.back, style).yoke.waist.length)
