"""Kinds of pocket: every module in their packages is one, and is drawn on any body."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon, box

from drafting import Measurements, draft_block
from drafting.geometry.points import Point, Vector
from drafting.pieces.allowance import cut_line
from styles import back_pockets, front_pockets
from styles.back_pockets import PocketSize
from styles.base.part import HalfToCut
from styles.choice.kinds import kinds_in
from styles.choice.settings import with_settings
from styles.choice.style import STRAIGHT
from styles.front_pockets import Mouth, western
from styles.parts.back_pocket import back_pocket, outline_of
from styles.parts.fly_length import fly_length
from styles.parts.front_leg import front_leg, open_front
from styles.parts.front_pocket import front_pocket
from styles.parts.pocket_plan import plan_pocket
from tests.strategies import bodies, examples

SHAPES, OPENINGS = kinds_in(back_pockets), kinds_in(front_pockets)
SIZES = st.builds(
    PocketSize,
    opening=st.floats(90, 220),
    height=st.floats(80, 220),
    taper=st.floats(-10, 20),
    point=st.one_of(st.just(0.0), st.floats(0, 60)),
    from_centre=st.just(48.0),
    below_yoke=st.just(32.0),
    shape=st.sampled_from(SHAPES),
)


def test_kinds_are_words_in_alphabetical_order() -> None:
    assert SHAPES == ("cut corners", "pointed", "rounded", "square"), "a new shape is named here"
    assert OPENINGS == ("scoop", "slant", "western")


@given(SIZES)
def test_every_back_pocket_stays_within_its_size_and_can_be_cut(size: PocketSize) -> None:
    ring = outline_of(size).ring
    wide = max(size.opening, size.opening - 2 * size.taper) / 2
    within = box(-wide, -size.height - size.point, wide, 0)
    shape = Polygon(ring.flatten()[:-1])
    assert shape.is_valid and within.buffer(0.01).covers(shape)
    assert shape.bounds[1] == pytest.approx(within.bounds[1]) and shape.bounds[3] == 0
    (piece,) = back_pocket(STRAIGHT, size).pieces
    # 10 mm all round and 22 above, which round corners take less of than mitred ones.
    assert cut_line(piece).polygon.buffer(0.01).covers(piece.polygon.buffer(9.9, join_style="round"))


def test_the_four_shapes_of_one_size_by_their_areas() -> None:
    """150 wide, sides of 140 with no taper, 20 below: the square one has 150 x 160, the others less."""
    area = {
        shape: Polygon(outline_of(PocketSize(150, 140, 0, 20, 48, 32, shape)).ring.flatten()[:-1]).area
        for shape in SHAPES
    }
    assert area["square"] == pytest.approx(150 * 160)
    assert area["pointed"] == pytest.approx(150 * 160 - 150 * 20 / 2)
    assert area["cut corners"] == pytest.approx(150 * 160 - 20 * 20)
    # Two quarter rounds of 38 mm leave (2 - pi / 2) of their square.
    assert area["rounded"] == pytest.approx(150 * 160 - (2 - np.pi / 2) * 38**2, rel=1e-3)


@pytest.mark.parametrize("kind", OPENINGS)
@examples(25)
@given(body=bodies(), width=st.floats(80, 150), depth=st.floats(60, 180))
def test_on_any_body_facing_and_bag_lie_behind_every_kind_of_opening(
    kind: str, body: Measurements, width: float, depth: float
) -> None:
    wanted = {"front_pocket.kind": kind, "front_pocket.width": width, "front_pocket.depth": depth}
    style, block = with_settings(STRAIGHT, wanted), draft_block(body)
    for half in block.halves:
        of = HalfToCut(half)
        plan = plan_pocket(of, style)
        opening, inner = (LineString(path.flatten(0.05)) for path in (plan.opened.curve, plan.facing[2]))
        assert inner.distance(opening) >= 12
        leg = front_leg(of, style, fly_length(block, style)).pieces[0]
        # The front of the bag has the leg's opening, hollow like it.
        for piece in front_pocket(of, style, leg).pieces:
            assert cut_line(piece).polygon.is_valid


def test_a_slant_is_straight_and_a_western_opening_deeper_than_a_scoop() -> None:
    block = draft_block(Measurements(waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=265))
    cut_away = {}
    for kind in OPENINGS:
        opened = open_front(HalfToCut(block.halves[0]), with_settings(STRAIGHT, {"front_pocket.kind": kind}))
        chord = LineString([opened.curve.start, opened.curve.end])
        cut_away[kind] = max(chord.distance(line) for line in map(_point, opened.curve.flatten()))
    assert cut_away["slant"] == pytest.approx(0, abs=1e-6)
    assert 20 < cut_away["scoop"] < cut_away["western"] < 60


def _point(place):  # type: ignore[no-untyped-def]
    return LineString([place, place])


def test_where_a_sloping_waist_leaves_no_room_a_western_pocket_is_a_scoop() -> None:
    # radius 16 at least (common practice): 85 % of a straight of 15 mm is less
    mouth = Mouth(Point(-15, 60), Vector(0, -1), Point(-100, 0), Vector(-1, 0), 0.0)
    flat = Mouth(Point(0, 10), Vector(0, -1), Point(-100, 0), Vector(-1, 0), 0.0)
    assert len(western.edge(mouth).curves) == 3
    assert western.edge(flat).end == flat.end and len(western.edge(flat).curves) != 3
