"""The straight waistband: as long as the waist seam, segment by segment, and the underlap."""

from dataclasses import replace

import pytest

from drafting.body.measurements import Side
from drafting.pieces.allowance import cut_line
from drafting.pieces.kinds import PieceKind, PlaceKind, SeamKind
from drafting.pieces.pieces import Notch
from drafting.pieces.seams import Run, Seam
from drafting.pieces.trueing import check_pieces, check_seams
from styles.choice.style import STRAIGHT, Band, Laps
from styles.parts.shaped_band import WaistNotches
from styles.parts.straight_band import SEWN_TO_FRONT, HalfWaist, straight_band
from tests.styles.upper_parts import reach

STYLE = replace(STRAIGHT, band=Band.STRAIGHT)
NOTCHED = HalfWaist(
    190, 210, WaistNotches((Notch(PlaceKind.POCKET_CORNER, 80),), (Notch(PlaceKind.LOOP, 150, number=1),))
)


def test_its_length_is_the_waist_seam_and_the_underlap_and_its_height_twice_the_band() -> None:
    (band,) = straight_band([HalfWaist(190, 210)], STYLE).pieces
    assert reach(band) == pytest.approx((2 * (190 + 210) + 45, 80))


def test_the_case_of_the_band_that_was_shorter_than_its_seam_is_told() -> None:
    """Band 8 1/2 in, seam 9 1/4 in between side seam and centre front: a sewing forum's case, 19 mm short."""
    part = straight_band([HalfWaist(8.5 * 25.4, 210)], STYLE)
    other = straight_band([HalfWaist(9.25 * 25.4, 210)], STYLE).pieces[0]
    run = Run(part.pieces[0].id, SEWN_TO_FRONT[Side.LEFT])
    other = replace(other, kind=PieceKind.FRONT_LEG)
    seam = Seam(SeamKind.FRONT_TO_BAND, (run,), (replace(run, piece=other.id),))
    (check,) = check_seams([*part.pieces, other], [seam])
    assert not check.passes
    assert check.found == pytest.approx(-0.75 * 25.4)


def test_segments_run_from_the_left_front_over_the_back_to_the_right_front() -> None:
    (band,) = straight_band([HalfWaist(190, 210), HalfWaist(180, 220)], STYLE).pieces
    lower = [(edge.name, edge.length) for edge in band.edges[:5]]
    assert lower == [
        ("left front waist seam", 180),
        ("left back waist seam", 220),
        ("right back waist seam", 210),
        ("right front waist seam", 190),
        ("shield seam", 45),
    ]


def test_the_underlap_changes_ends_with_the_lap() -> None:
    (band,) = straight_band([HalfWaist(190, 210)], replace(STYLE, laps=Laps.RIGHT_OVER_LEFT)).pieces
    assert band.edges[0].name == "shield seam"
    marks = {mark.name: mark.path.start.x for mark in band.marks}
    assert marks["centre front"] == 45
    assert marks["centre back"] == 45 + 190 + 210
    assert marks["button"] == pytest.approx(45 - 12.7 - 3)
    assert marks["buttonhole"] == pytest.approx(845 - 12.7)


def test_marks_stand_at_side_seams_centre_back_and_centre_front() -> None:
    (band,) = straight_band([HalfWaist(190, 210)], STYLE).pieces
    marks = {mark.name: mark.path.start.x for mark in band.marks}
    assert [marks[n] for n in ("left side seam", "centre back", "right side seam", "centre front")] == [
        190,
        400,
        610,
        800,
    ]
    assert marks["buttonhole"] == pytest.approx(12.7)
    assert marks["button"] == pytest.approx(800 + 12.7 + 3)


def test_notches_lie_at_their_distance_from_the_centres() -> None:
    (band,) = straight_band([NOTCHED], STYLE).pieces
    places = {edge.name: edge.notches[0].distance for edge in band.edges[:4]}
    assert places == {
        "left front waist seam": 80,
        "left back waist seam": 210 - 150,
        "right back waist seam": 150,
        "right front waist seam": 190 - 80,
    }


def test_its_inner_edge_is_as_long_as_the_outer_segments() -> None:
    part = straight_band([HalfWaist(190, 210)], STYLE)
    assert all(check.passes and not check.findings for check in check_seams(part.pieces, part.seams))


@pytest.mark.parametrize("along", [True, False])
def test_it_is_cut_with_its_grain_inside(along: bool) -> None:
    (band,) = straight_band([HalfWaist(190, 210)], STYLE, along=along).pieces
    assert check_pieces([band]) == ()
    assert abs(band.grain.direction(0).x) == (1 if along else 0)
    assert cut_line(band).polygon.bounds == pytest.approx((-10, -10, 855, 90))
