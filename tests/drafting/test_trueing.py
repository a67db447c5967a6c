"""The trueing table on pieces with seams to add up in the head."""

from dataclasses import replace

import pytest

from drafting.base.errors import Severity
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.pieces import Cutting, Edge, Notch, Piece
from drafting.pieces.seams import Corner, Run, Seam
from drafting.pieces.trueing import check_corners, check_pieces, check_seams
from tests.drafting.small_pieces import leg, place, ring, run, square


def strip(name: str, length: float, *notches: Notch) -> Piece:
    """Return a strip 50 wide whose edge `long` runs `length` to the right along the bottom."""
    points = [Point(0, 0), Point(length, 0), Point(length, 50), Point(0, 50), Point(0, 0)]
    names = ("long", "right", "top", "left")
    edges = [
        Edge(label, Path.through([a, b]), 10)
        for label, a, b in zip(names, points[:-1], points[1:], strict=True)
    ]
    edges[0] = replace(edges[0], notches=notches)
    return Piece(name, tuple(edges), Path.through([Point(5, 5), Point(5, 45)]))


def seam(ease: float = 0.0, eased: tuple[float, float] | None = None) -> Seam:
    return Seam("side", (run("front", "long"),), (run("back", "long"),), ease, eased)


def codes(check: object) -> list[str]:
    return [finding.code for finding in check.findings]  # type: ignore[attr-defined]


def test_equal_sides_pass_with_their_lengths_in_the_table() -> None:
    (check,) = check_seams([strip("front", 300), strip("back", 300)], [seam()])
    assert (check.first_length, check.second_length, check.found) == pytest.approx((300, 300, 0))
    assert check.passes
    assert check.findings == ()


def test_eight_millimetres_too_long_fails_and_says_so() -> None:
    # A back side seam 8 mm longer after reshaping the hip.
    (check,) = check_seams([strip("front", 300), strip("back", 308)], [seam()])
    assert not check.passes
    assert codes(check) == ["seam-length"]
    assert check.findings[0].severity is Severity.FAULT
    assert check.findings[0].say(lambda mm: f"{mm:.0f} mm") == (
        "One side is 300 mm long and the other 308 mm; the first is -8 mm longer where 0 mm is wanted."
    )


def test_a_declared_ease_passes_and_its_absence_fails() -> None:
    pieces = [strip("front", 300), strip("back", 292)]
    assert check_seams(pieces, [seam(8)])[0].passes
    assert not check_seams(pieces, [seam(-8)])[0].passes


@pytest.mark.parametrize(("back", "passes"), [(300.9, True), (301.1, False)])
def test_a_sewer_does_not_see_a_millimetre(back: float, passes: bool) -> None:
    assert check_seams([strip("front", 300), strip("back", back)], [seam()])[0].passes is passes


def test_a_side_of_several_runs_is_as_long_as_their_sum() -> None:
    # A band of 230 against two legs of 120 and 110; one of 216 is 14 too short.
    band = Seam("waist", (run("band", "long"),), (run("front", "long"), run("back", "long", backwards=True)))
    pieces = [strip("band", 230), strip("front", 120), strip("back", 110)]
    assert check_seams(pieces, [band])[0].passes
    short = check_seams([strip("band", 216), *pieces[1:]], [band])[0]
    assert short.found == pytest.approx(-14)
    assert not short.passes


def test_a_stretch_of_an_edge_can_be_sewn_on_its_own() -> None:
    part = Seam("bag", (run("front", "long", start=50, end=170),), (run("bag", "long"),))
    assert check_seams([strip("front", 300), strip("bag", 120)], [part])[0].passes


def test_notches_meet_when_walked_from_the_common_end() -> None:
    # The common end is the start of the front and the end of the back: 100 and 300 - 200.
    pieces = [strip("front", 300, Notch("knee", 100)), strip("back", 300, Notch("knee", 200))]
    both = Seam("side", (run("front", "long"),), (run("back", "long", backwards=True),))
    (check,) = check_seams(pieces, [both])
    assert check.notches[0].miss == pytest.approx(0)
    assert check.findings == ()


def test_notches_of_a_stretch_are_walked_from_where_it_starts() -> None:
    pieces = [strip("front", 300, Notch("bag", 80)), strip("bag", 120, Notch("bag", 30))]
    part = Seam("bag", (run("front", "long", start=50, end=170),), (run("bag", "long"),))
    (check,) = check_seams(pieces, [part])
    assert (check.notches[0].first, check.notches[0].second) == pytest.approx((30, 30))


@pytest.mark.parametrize(("at", "found"), [(100.4, []), (100.6, ["notch-miss"])])
def test_notches_may_miss_by_half_a_millimetre(at: float, found: list[str]) -> None:
    pieces = [strip("front", 300, Notch("knee", 100)), strip("back", 300, Notch("knee", at))]
    assert codes(check_seams(pieces, [seam()])[0]) == found


def test_ease_is_spread_evenly_over_the_seam() -> None:
    # 8 mm on 400: 2 mm of it lie before the notch at 100.
    pieces = [strip("front", 400, Notch("knee", 100)), strip("back", 392, Notch("knee", 98))]
    assert check_seams(pieces, [seam(8)])[0].findings == ()


def test_ease_is_spread_over_the_declared_stretch_only() -> None:
    # All 8 mm lie beyond the knee, so the knee notches are level: a back inseam stretched above the knee.
    pieces = [strip("front", 400, Notch("knee", 100)), strip("back", 392, Notch("knee", 100))]
    assert codes(check_seams(pieces, [seam(8)])[0]) == ["notch-miss"]
    assert check_seams(pieces, [seam(8, (100, 400))])[0].findings == ()


def test_a_notch_without_partner_is_found_on_either_side() -> None:
    plain, notched = strip("front", 300), strip("back", 300, Notch("hip", 40))
    (check,) = check_seams([plain, notched], [seam()])
    assert codes(check) == ["notch-alone"]
    assert "back long, 4.0 cm" in check.findings[0].say()


def test_a_notch_needs_only_one_of_the_seams_it_lies_in_for_its_partner() -> None:
    front = strip("front", 300, Notch("pocket", 40))
    back, bag = strip("back", 300), strip("bag", 300, Notch("pocket", 40))
    seams = [seam(), Seam("bag", (run("front", "long"),), (run("bag", "long"),))]
    assert [codes(check) for check in check_seams([front, back, bag], seams)] == [[], []]


def test_a_notch_without_partner_in_two_seams_is_told_once() -> None:
    front = strip("front", 300, Notch("pocket", 40))
    seams = [seam(), Seam("bag", (run("front", "long"),), (run("bag", "long"),))]
    checks = check_seams([front, strip("back", 300), strip("bag", 300)], seams)
    assert [codes(check) for check in checks] == [["notch-alone"], []]


def test_a_notch_at_the_end_of_a_seam_has_the_corner_for_its_partner() -> None:
    # A pocket bag that ends at hip level needs no hip notch of its own; one that runs on does.
    front = strip("front", 300, Notch("hip", 120.00001))
    down_to_the_hip = Seam("bag", (run("front", "long", end=120),), (run("bag", "long"),))
    assert codes(check_seams([front, strip("bag", 120)], [down_to_the_hip])[0]) == []
    past_the_hip = Seam("bag", (run("front", "long", end=125),), (run("bag", "long"),))
    assert codes(check_seams([front, strip("bag", 125)], [past_the_hip])[0]) == ["notch-alone"]


@pytest.mark.parametrize(
    "side",
    [run("yoke", "long"), run("back", "hem"), run("back", "long", start=200, end=400)],
    ids=["no such piece", "no such edge", "beyond its end"],
)
def test_a_side_that_is_not_there_is_a_fault_not_an_error(side: Run) -> None:
    (check,) = check_seams(
        [strip("front", 300), strip("back", 300)], [Seam("side", (run("front", "long"),), (side,))]
    )
    assert codes(check) == ["seam-side-missing"]
    assert not check.passes


def test_the_legs_of_a_curved_piece_and_its_mirror_image_meet() -> None:
    right, left = leg(), replace(leg().mirrored(), kind="left")
    for name in ("side", "inseam", "crotch"):
        both = Seam(name, (run("front leg", name),), (run("left", name, backwards=True),))
        (check,) = check_seams([right, left], [both])
        assert check.passes
        assert check.findings == ()


def test_two_square_corners_join_to_a_straight_line() -> None:
    join = Corner("hem", place("front", ("long", "right")), place("back", ("left", "long")))
    (check,) = check_corners([strip("front", 300), strip("back", 300)], [join])
    assert check.angle == pytest.approx(180)
    assert check.passes


def test_a_peaked_waist_is_told_with_its_angle() -> None:
    # 100 degrees inside against 90: ten degrees too many.
    slanted = ring([(0, 0), (100, 0), (117.633, 100), (0, 100)], [0, 0, 0, 0])
    join = Corner("waist", place("shape", ("e1", "e0")), place("front", ("long", "right")))
    (check,) = check_corners([slanted, strip("front", 300)], [join])
    assert check.angle == pytest.approx(190, abs=0.01)
    assert codes(check) == ["corner-angle"]
    assert "190.0 where 180 is wanted" in check.findings[0].say()


def test_a_hollow_corner_counts_more_than_half_a_turn() -> None:
    notched = ring([(0, 0), (100, 0), (100, 40), (40, 40), (40, 100), (0, 100)], [0] * 6)
    join = Corner("notch", place("shape", ("e2", "e3")), place("front", ("long", "right")), angle=360)
    assert check_corners([notched, strip("front", 300)], [join])[0].angle == pytest.approx(360)


def test_a_corner_of_edges_that_do_not_meet_is_a_fault() -> None:
    join = Corner("hem", place("front", ("long", "top")), place("front", ("long", "right")))
    assert codes(check_corners([strip("front", 300)], [join])[0]) == ["corner-missing"]


def test_sound_pieces_have_no_findings() -> None:
    assert check_pieces([strip("front", 300, Notch("knee", 100)), strip("back", 300), leg()]) == ()


def found(piece: Piece) -> list[str]:
    return [finding.code for finding in check_pieces([piece])]


def test_two_pieces_of_one_name_are_found() -> None:
    (finding,) = check_pieces([strip("front", 300), strip("front", 200)])
    assert (finding.code, finding.where) == ("name-twice", "front")


def test_an_outline_that_crosses_itself_is_found() -> None:
    bow = ring([(0, 0), (200, 0), (200, 100), (90, -50)], [0, 0, 0, 0])
    assert found(bow) == ["outline-crosses"]


def test_a_grain_line_outside_the_piece_is_found() -> None:
    assert found(replace(square(0, 0, 0, 0), grain=Path.through([Point(50, 50), Point(50, 120)]))) == [
        "grain-outside"
    ]


@pytest.mark.parametrize("cutting", [Cutting(0), Cutting(3, pairs=True)])
def test_a_quantity_that_cannot_be_cut_is_found(cutting: Cutting) -> None:
    assert found(replace(square(0, 0, 0, 0), cutting=cutting)) == ["quantity"]


def test_notches_off_their_edge_or_twice_on_it_are_found() -> None:
    assert found(strip("front", 300, Notch("hip", 301))) == ["notch-off-edge"]
    assert found(strip("front", 300, Notch("hip", 30), Notch("hip", 60))) == ["notch-twice"]


def test_two_edges_of_one_name_are_found() -> None:
    piece = strip("front", 300)
    assert found(replace(piece, edges=(*piece.edges[:3], replace(piece.edges[3], kind="right")))) == [
        "edge-twice"
    ]


@pytest.mark.parametrize("length", [8.0, 30_000.0])
def test_a_piece_in_the_wrong_unit_is_found(length: float) -> None:
    assert found(strip("front", length)) == ["size"]


@pytest.mark.parametrize(("at", "passes"), [(0, True), (300, True), (-0.1, False), (300.1, False)])
def test_a_notch_may_lie_at_the_very_end_of_its_edge_and_no_further(at: float, passes: bool) -> None:
    found = check_pieces([strip("front", 300, Notch("knee", at))])
    assert [finding.code for finding in found] == ([] if passes else ["notch-off-edge"])
