"""A back with a dart in place of the yoke: closed, the waist runs on smoothly and is as long as the band."""

from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon

from drafting import Measurements
from drafting.block.block import draft_block
from drafting.geometry.points import Point
from drafting.pieces.allowance import cut_line
from drafting.pieces.pieces import MarkKind
from outputs.reading.style_file import find_style
from styles.choice.style import STRAIGHT, Allowances, BackCut, Band, Felling, Style
from styles.making.jeans import make_jeans
from styles.top.back_dart import DartedBack, darted
from tests.strategies import bodies, examples
from tests.whole_jeans import WEARERS, block_of

DART = replace(STRAIGHT, back=BackCut.DART)
STYLES = {
    "shaped band": DART,
    "straight band": replace(DART, band=Band.STRAIGHT),
    "at the waist": replace(DART, band=Band.STRAIGHT, below_waist=0),
    "above the waist": replace(DART, below_waist=-25),
    "low": replace(DART, below_waist=80),
    "felled": replace(DART, allowances=Allowances(felling=Felling.FELLED)),
}


def turn(back: DartedBack) -> float:
    """Return the angle, radians, by which closing the dart turns its outer leg onto the inner one."""
    assert back.outer is not None
    return (back.outer.start - back.tip).angle_to(back.inner.end - back.tip)


@pytest.mark.slow
@pytest.mark.parametrize("wearer", WEARERS)
@pytest.mark.parametrize("style", STYLES)
def test_every_seam_meets_and_every_piece_can_be_cut(wearer: str, style: str) -> None:
    jeans = make_jeans(block_of(wearer), STYLES[style])
    assert not jeans.faults
    assert all(check.passes for check in (*jeans.seams, *jeans.corners))
    for piece in jeans.pattern.pieces:
        assert cut_line(piece).polygon.is_valid
        assert "yoke" not in piece.name


@examples(30)
@given(bodies(), st.sampled_from([Band.SHAPED, Band.STRAIGHT]), st.floats(-30, 90))
def test_on_any_body_the_closed_waist_is_smooth_and_square(
    body: Measurements, band: Band, below: float
) -> None:
    block = draft_block(body)
    # Where seams and darts cannot take the waist in it is said, and no line lies square to all of them.
    assume(abs(block.shares.suppression.left_over) < 1)
    for half in block.halves:
        back = darted(half.back, replace(DART, band=band, below_waist=below))
        if back.band:
            sewn = back.inner.length + (back.outer.length if back.outer else 0)
            assert back.band.lower.length == pytest.approx(sewn, abs=0.01)
        if back.outer is None:
            continue
        inner, outer, angle = back.inner, back.outer, turn(back)
        assert (back.tip - inner.end).length == pytest.approx((back.tip - outer.start).length, abs=1e-4)
        arriving, leaving = inner.direction(inner.length), outer.direction(0).turned(angle)
        assert abs(arriving.angle_to(leaving)) < 1e-4
        assert abs(inner.direction(0).dot(back.crotch.direction(back.crotch.length))) < 0.01
        assert abs(outer.direction(outer.length).dot(back.side.direction(0))) < 0.01
        assert (outer.end - back.side.start).length < 1e-6


def folded_roof(back: DartedBack) -> LineString:
    """Return the roof as it lies when the dart is closed and pressed towards the centre."""
    first, ridge, _ = (Point(*place) for place in back.dart_roof.flatten())
    leg = (first - back.tip).unit
    way = ridge - first
    return LineString([first, first + (leg * (2 * leg.dot(way)) + -way)])


@pytest.mark.parametrize("wearer", WEARERS)
def test_pressed_towards_the_centre_the_roof_lies_along_the_waist(wearer: str) -> None:
    """Within half a millimetre, which the waist bends over the width of half a dart."""
    back = darted(block_of(wearer).halves[0].back, replace(DART, below_waist=0, band=Band.STRAIGHT))
    waist = LineString(back.inner.flatten())
    assert max(waist.distance(shape) for shape in map(_spot, folded_roof(back).coords)) < 0.5


def rounded(place: Point) -> tuple[float, float]:
    return round(place.x, 4), round(place.y, 4)


def _spot(place: tuple[float, float]) -> LineString:
    return LineString([place, place])


def test_at_the_natural_waist_the_sewn_back_waist_is_that_of_the_block() -> None:
    block = block_of("zaneta")
    back = darted(block.halves[0].back, STYLES["at the waist"])
    assert back.outer is not None
    assert back.inner.length + back.outer.length == pytest.approx(block.halves[0].back.waist_length, abs=0.1)


def test_the_dart_is_marked_by_its_legs_two_notches_and_a_hole_within_the_leg() -> None:
    jeans = make_jeans(block_of("zaneta"), DART)
    leg = jeans.pattern.piece("back leg")
    marks = {mark.name: mark for mark in leg.marks}
    legs = [marks[name].path for name in ("inner dart leg", "outer dart leg")]
    assert legs[0].length == pytest.approx(legs[1].length, abs=1e-4)
    assert marks["dart tip"].kind is MarkKind.DRILL
    assert (marks["dart tip"].path.start - legs[0].start).length == pytest.approx(10)
    tops = {rounded(path.end) for path in legs}
    edge = leg.edge("dart")
    assert {rounded(edge.path.point(n.distance)) for n in edge.notches} == tops
    assert leg.polygon.buffer(0.01).covers(LineString([legs[0].start, legs[0].end]))
    # Above the pocket, which hides nothing of it.
    pocket = Polygon(marks["back pocket"].path.flatten())
    assert not pocket.intersects(LineString([legs[0].start, legs[0].end]))


def test_dart_and_band_stand_in_the_trueing_table_without_the_opening_of_the_dart() -> None:
    jeans = make_jeans(block_of("zaneta"), DART)
    checks = {check.name: check for check in jeans.seams}
    assert checks["back dart"].first_length == pytest.approx(checks["back dart"].second_length, abs=1e-4)
    leg = jeans.pattern.piece("back leg")
    whole = sum(leg.edge(name).length for name in ("waist", "dart", "outer waist"))
    opening = leg.edge("dart").length
    assert opening > 2
    assert checks["back to the waistband"].first_length == pytest.approx(whole - opening)
    assert not any("yoke" in name for name in checks)


def test_a_body_without_a_dart_has_a_plain_upper_edge() -> None:
    body = Measurements(waist_girth=1000, hip_girth=1000, inside_leg_height=780, body_rise=265)
    jeans = make_jeans(draft_block(body), DART)
    leg = jeans.pattern.piece("back leg")
    assert not jeans.faults
    assert [edge.name for edge in leg.edges if edge.name in ("dart", "outer waist")] == []
    assert not any("darts" in line.text for section in jeans.pattern.sections for line in section.lines)


def said(style: Style) -> str:
    jeans = make_jeans(block_of("zaneta"), style)
    return " ".join(line.text for section in jeans.pattern.sections for line in section.lines)


def test_the_order_of_sewing_sews_the_darts_and_no_yoke() -> None:
    text = said(DART)
    assert "Sew the darts" in text and "yoke" not in text
    assert "Sew the darts" not in said(STRAIGHT)


@pytest.mark.parametrize("name", ["skinny", "wide", "shorts"])
def test_other_cuts_take_a_dart_too(name: str) -> None:
    jeans = make_jeans(block_of("oksana"), replace(find_style(name), back=BackCut.DART, turn_up=30))
    assert not jeans.faults and all(check.passes for check in (*jeans.seams, *jeans.corners))
    for piece in jeans.pattern.pieces:
        assert cut_line(piece).polygon.is_valid
