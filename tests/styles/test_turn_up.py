"""A turn-up folds flat on the leg, on every cut, and what does not fit is said.

That each strip mirrors the one before it about their fold is geometry: cloth folded along a straight line is
its own mirror image.
"""

import math
from dataclasses import replace

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import LineString, Polygon

from drafting import Measurements
from drafting.pieces.allowance import AllowanceTooWide, cut_line
from drafting.pieces.pieces import Piece
from outputs.reading.measurements_file import read_measurements
from outputs.reading.style_file import find_style
from styles.choice.catalogue import catalogue_names
from styles.choice.style import STRAIGHT, Allowances
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth
from styles.making.jeans import Jeans, make_jeans
from tests.strategies import bodies, examples
from tests.whole_jeans import DEMO, WEARERS, block_of

DEEP = 5_000.0


def levelled(piece: Piece) -> tuple[Polygon, float]:
    """Return what is cut, turned so that the chord of the hem is y = 0 with the leg above, and its width."""
    hem = piece.edge("hem").path
    chord = LineString([tuple(hem.start), tuple(hem.end)])
    shape = affinity.translate(cut_line(piece).polygon, -hem.start.x, -hem.start.y)
    way = hem.end - hem.start
    return affinity.rotate(shape, -_angle(way), origin=(0, 0), use_radians=True), chord.length


def _angle(way) -> float:  # type: ignore[no-untyped-def]
    return math.atan2(way.y, way.x)


def strip(shape: Polygon, low: float, high: float) -> Polygon:
    return shapely.intersection(shape, shapely.box(-DEEP, low, DEEP, high))


def mirrored(shape: Polygon) -> Polygon:
    return affinity.scale(shape, 1, -1, origin=(0, 0))


def legs(jeans: Jeans) -> list[Piece]:
    return [piece for piece in jeans.pattern.pieces if piece.name.endswith(" leg")]


@pytest.mark.parametrize("style", ["straight", "tapered", "cropped"])
@pytest.mark.parametrize("depth", [30.0, 60.0])
def test_where_the_hem_is_straight_every_strip_lies_on_the_leg_edge_to_edge(style: str, depth: float) -> None:
    wanted = replace(find_style(style), turn_up=depth)
    read = read_measurements(DEMO / "zaneta.toml").measurements
    jeans = make_jeans(block_for(read, wanted, Cloth()), wanted)
    for piece in legs(jeans):
        shape, _ = levelled(piece)
        leg = strip(shape, 0, depth)
        first, second, hem = (
            strip(shape, a, b) for a, b in ((-depth, 0), (-2 * depth, -depth), (-DEEP, -2 * depth))
        )
        for part, on in (
            (mirrored(first), leg),
            (affinity.translate(second, 0, 2 * depth), leg),
            (mirrored(affinity.translate(hem, 0, 2 * depth)), strip(shape, 0, 30)),
        ):
            # A strip of paper 0.1 mm wide along its edges, no more.
            assert shapely.symmetric_difference(part, on).area < 0.1 * depth
        assert shape.bounds[1] == pytest.approx(-2 * depth - 30, abs=0.01)


@pytest.mark.slow
@pytest.mark.parametrize("style", catalogue_names())
@pytest.mark.parametrize("wearer", ["oksana", "theodoros"])
def test_in_every_cut_of_the_catalogue_it_can_be_cut_and_lies_on_the_leg(style: str, wearer: str) -> None:
    read = read_measurements(DEMO / f"{wearer}.toml").measurements
    for depth in (25.0, 120.0):
        wanted = replace(find_style(style), turn_up=depth)
        jeans = make_jeans(block_for(read, wanted, Cloth(stretch=30)), wanted)
        assert not jeans.faults and all(corner.passes for corner in jeans.corners)
        for piece in legs(jeans):
            shape, width = levelled(piece)
            drawn = jeans.style.turn_up
            assert shape.is_valid
            # No spike: below the hem it is nowhere wider than the leg above it, but for the hem's own bend.
            above, below = strip(shape, 0, max(drawn, 30)), strip(shape, -DEEP, 0)
            reach = (above.bounds[0] - 2.5, above.bounds[2] + 2.5)
            assert reach[0] <= below.bounds[0] and below.bounds[2] <= reach[1]
            # The edge of the turn-up is as wide as the leg that it comes to lie on.
            on, edge = (_width_at(shape, y) for y in (drawn, -drawn))
            assert edge == pytest.approx(on, abs=0.2)
            assert _width_at(shape, -2 * drawn) == pytest.approx(_width_at(shape, 0.0), abs=0.2)
            folds = {mark.name: mark.path for mark in piece.marks}
            assert folds["fold of the turn-up"].length == pytest.approx(
                _sewn_width(piece, drawn), rel=0.01
            ), width


def _width_at(shape: Polygon, y: float) -> float:
    return shapely.intersection(shape, LineString([(-DEEP, y), (DEEP, y)])).length


def _sewn_width(piece: Piece, y: float) -> float:
    hem = piece.edge("hem").path
    sewn = affinity.rotate(
        affinity.translate(piece.polygon, -hem.start.x, -hem.start.y),
        -_angle(hem.end - hem.start),
        origin=(0, 0),
        use_radians=True,
    )
    return _width_at(sewn, y)


@examples(8)
@given(bodies(), st.floats(5, 120), st.sampled_from(["straight", "slim", "bootcut", "wide", "shorts"]))
def test_on_any_body_it_makes_no_piece_harder_to_cut(body: Measurements, depth: float, name: str) -> None:
    style = find_style(name)
    block = block_for(body, style, Cloth())
    for piece, plain in zip(
        *(legs(make_jeans(block, s)) for s in (replace(style, turn_up=depth), style)), strict=True
    ):
        try:
            cut_line(plain)
        except AllowanceTooWide:
            continue
        cut = cut_line(piece).polygon
        assert cut.is_valid and cut.area > cut_line(plain).polygon.area


def test_on_short_shorts_it_is_made_less_deep_and_that_is_said() -> None:
    shorts = find_style("shorts")
    shorts = replace(shorts, leg=replace(shorts.leg, hem_above_knee=0.6), turn_up=120)
    body = Measurements(waist_girth=760, hip_girth=980, inside_leg_height=700, body_rise=265)
    jeans = make_jeans(block_for(body, shorts, Cloth()), shorts)
    (said,) = [f for f in jeans.pattern.findings if f.code == "turn-up-short"]
    assert said.amounts == (120, jeans.style.turn_up)
    assert 0 < jeans.style.turn_up < 120
    assert not jeans.faults


def test_a_bent_hem_says_how_much_the_turn_up_has_to_give_and_a_straight_one_nothing() -> None:
    body = Measurements(waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=265)
    codes = {}
    for name in ("straight", "flare"):
        style = replace(find_style(name), turn_up=50)
        jeans = make_jeans(block_for(body, style, Cloth()), style)
        codes[name] = {f.code: f.amounts for f in jeans.pattern.findings if f.code.startswith("turn-up")}
    assert codes["straight"] == {}
    ((code, (gives,)),) = codes["flare"].items()
    assert code == "turn-up-bent" and 2 < gives < 15


@pytest.mark.parametrize("wearer", WEARERS)
def test_it_moves_no_seam_and_no_notch(wearer: str) -> None:
    plain, turned = (make_jeans(block_of(wearer), replace(STRAIGHT, turn_up=d)) for d in (0, 40))
    assert plain.seams == turned.seams and plain.corners == turned.corners
    for before, after in zip(legs(plain), legs(turned), strict=True):
        assert before.polygon.equals_exact(after.polygon, 1e-9)
        assert after.edge("hem").allowance == before.edge("hem").allowance + 80


def test_it_is_cloth_and_stays_where_no_allowance_is_added() -> None:
    bare = Allowances(waist=0, side_seam=0, inseam=0, crotch_seam=0, yoke=0, small=0, hem=0)
    jeans = make_jeans(block_of("zaneta"), replace(STRAIGHT, turn_up=40, allowances=bare))
    for piece in legs(jeans):
        shape, width = levelled(piece)
        assert shape.bounds[1] == pytest.approx(-80, abs=0.01)
        assert _width_at(shape, -79.99) == pytest.approx(width, abs=0.1)


def test_in_cloth_that_shrinks_lengthwise_it_is_drawn_as_much_deeper() -> None:
    """A turn-up of 40 in cloth that loses 5 %: 40 / 0.95 = 42.1, and its fold with it."""
    jeans = make_jeans(block_of("zaneta"), replace(STRAIGHT, turn_up=40), cloth=Cloth(lengthwise_change=-5))
    for piece in legs(jeans):
        hem = piece.edge("hem")
        assert hem.turn_up == pytest.approx(40 / 0.95)
        assert hem.allowance == pytest.approx(30 + 80 / 0.95)
        fold = next(mark.path for mark in piece.marks if mark.name == "fold of the turn-up")
        assert hem.path.start.y - fold.start.y == pytest.approx(40 / 0.95, abs=0.01)


def test_the_order_of_sewing_says_how_it_is_folded_and_the_label_what_is_in_the_hem() -> None:
    jeans = make_jeans(block_of("zaneta"), replace(STRAIGHT, turn_up=40))
    said = [line for section in jeans.pattern.sections for line in section.lines if "turn-up" in line.text]
    (step,) = said
    assert step.amounts == (15, 40)
    assert "fold the turn-up of {1} outwards" in step.text


def test_without_one_there_is_neither_fold_nor_word_of_it() -> None:
    jeans = make_jeans(block_of("zaneta"), STRAIGHT)
    assert all(edge.turn_up == 0 for piece in legs(jeans) for edge in piece.edges)
    assert not [mark for piece in legs(jeans) for mark in piece.marks if "turn-up" in mark.name]
