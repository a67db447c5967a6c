"""Cut lines: by hand on squares, and judged by shapely on shapes of every kind."""

import math
import pickle
from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString
from shapely.geometry import Point as Spot

from drafting.base.errors import DraftRefused
from drafting.base.tolerance import MITRE
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.allowance import AllowanceTooWide, CutLine, cut_line
from drafting.pieces.parallels import added
from drafting.pieces.pieces import Edge, Finish, Notch, Piece
from tests.drafting.small_pieces import bezier, leg, ring, square
from tests.strategies import examples


def corners(cut: CutLine) -> set[tuple[float, float]]:
    """Return the outline's points, rounded."""
    return {(round(x, 6) + 0.0, round(y, 6) + 0.0) for x, y in cut.outline}


def judge(piece: Piece, *, mirrored: tuple[str, ...] = ()) -> CutLine:
    """Assert all that a cut line promises, with shapely measuring; hems are measured elsewhere."""
    cut = cut_line(piece)
    assert cut.polygon.is_valid
    assert cut.polygon.exterior.is_ccw
    assert cut.polygon.buffer(1e-6).covers(piece.polygon)
    widest = max(added(edge) for edge in piece.edges)
    far = max(piece.polygon.distance(Spot(p)) for p in cut.outline) if not mirrored else 0.0
    assert far <= MITRE * widest + 0.02
    for side in cut.sides:
        if side.edge.name in mirrored:
            continue
        line = LineString(side.edge.path.flatten(0.001))
        ends = [Spot(tuple(p)) for p in (side.edge.path.start, side.edge.path.end)]
        for p in map(Spot, side.points):
            if all(p.distance(end) > MITRE * widest for end in ends):
                assert p.distance(line) == pytest.approx(added(side.edge), abs=0.02)
    return cut


def test_ten_round_a_square_of_a_hundred_is_a_square_of_120() -> None:
    assert corners(judge(square(10, 10, 10, 10))) == {(-10, -10), (110, -10), (110, 110), (-10, 110)}


def test_each_edge_gets_its_own_allowance() -> None:
    assert corners(judge(square(40, 15, 10, 0))) == {(0, -40), (115, -40), (115, 110), (0, 110)}


def test_no_allowance_is_the_sew_line() -> None:
    assert corners(judge(square(0, 0, 0, 0))) == {(0, 0), (100, 0), (100, 100), (0, 100)}


def test_a_fold_gets_nothing_even_when_asked() -> None:
    cut = cut_line(square(10, 10, 10, 10, e3=Finish.FOLD))
    assert corners(cut) == {(0, -10), (110, -10), (110, 110), (0, 110)}


def test_an_allowance_that_changes_along_a_straight_ends_in_a_square_step() -> None:
    shape = ring([(0, 0), (60, 0), (100, 0), (100, 50), (0, 50)], [10, 25, 0, 0, 0])
    assert {(60, -10), (60, -25)} <= corners(judge(shape))


def test_an_allowance_beside_a_fold_that_runs_straight_on_ends_in_a_square_step() -> None:
    shape = ring([(0, 0), (60, 0), (100, 1), (100, 50), (0, 50)], [25, 10, 0, 0, 0], e1=Finish.FOLD)
    assert {(60, 0), (60, -25)} <= corners(judge(shape))


def test_a_step_beside_a_curve_that_swings_back_stays_at_its_corner() -> None:
    # The first edge's line, run on straight, would meet the second one's cut line again far along it.
    bowed = Path((bezier((60, 0), (90, 4), (120, -40), (150, -30)),))
    frame = [(150, -30), (150, 80), (0, 80), (0, 0)]
    sides = [Edge(f"s{i}", Path.through([Point(*a), Point(*b)])) for i, (a, b) in enumerate(pairwise(frame))]
    base = Edge("base", Path.through([Point(0, 0), Point(60, 0)]))
    shape = Piece("shape", (base, Edge("bow", bowed, 12), *sides), Path.through([Point(9, 9), Point(9, 60)]))
    cut = judge(shape)
    assert cut.sides[1].points[0] == pytest.approx([60, 0])
    assert np.hypot(*(cut.sides[1].points[1] - np.array((60, 0)))) == pytest.approx(12)


@pytest.mark.parametrize("bend", [-8, 8])
def test_a_step_at_a_slight_corner_is_square_to_the_wider_edge(bend: float) -> None:
    shape = ring([(0, 0), (60, 0), (120, bend), (120, 80), (0, 80)], [10, 25, 0, 0, 0])
    cut = judge(shape)
    foot, tip = cut.sides[1].points[:2] - np.array((60, 0))
    along = np.array((60, bend)) / math.hypot(60, bend)
    assert [foot @ along, tip @ along] == pytest.approx([0, 0], abs=1e-9)
    assert foot[1] == pytest.approx(-10)
    assert np.hypot(*tip) == pytest.approx(25)


@pytest.mark.parametrize("degrees", [10, 20, 30, 45])
def test_a_sharp_tip_is_squared_off_one_allowance_beyond_it(degrees: float) -> None:
    # Mitred, a tip of 20 degrees reaches 10 / sin(10 deg) = 57.6 mm.
    half = 200 * math.tan(math.radians(degrees / 2))
    cut = judge(ring([(0, 0), (200, -half), (200, half)], [10, 10, 10]))
    assert cut.outline[:, 0].min() == pytest.approx(-10)


def test_a_blunt_tip_keeps_its_mitre() -> None:
    # 60 degrees: 10 / sin(30 deg) = 20 mm, within the limit.
    cut = judge(ring([(0, 0), (100, -57.735), (100, 57.735)], [10, 10, 10]))
    assert cut.outline[:, 0].min() == pytest.approx(-20, abs=1e-3)


def test_a_tip_between_unequal_allowances_stays_within_the_limit() -> None:
    judge(ring([(0, 0), (200, -30), (200, 30)], [10, 15, 25]))


def test_an_inside_corner_is_trimmed_where_the_lines_cross() -> None:
    notched = ring([(0, 0), (100, 0), (100, 40), (40, 40), (40, 100), (0, 100)], [10, 10, 10, 15, 10, 10])
    assert (55, 50) in corners(judge(notched))


def test_an_inside_corner_is_trimmed_at_the_crossing_next_to_it() -> None:
    # The second line dips below the first one's and comes up through its extension again, 25 mm further on.
    dip = Path((bezier((60, 0), (70, -5.8), (74, -5), (80, 20)),))
    frame = [(80, 20), (80, 80), (0, 80), (0, 0)]
    sides = [Edge(f"s{i}", Path.through([Point(*a), Point(*b)])) for i, (a, b) in enumerate(pairwise(frame))]
    base = Edge("base", Path.through([Point(0, 0), Point(60, 0)]), 10)
    shape = Piece("shape", (base, Edge("dip", dip, 10), *sides), Path.through([Point(9, 9), Point(9, 60)]))
    cut = judge(shape)
    assert cut.sides[1].points[0] == pytest.approx([57.3, -10], abs=0.5)


def test_the_skirt_shape_that_confuses_a_mitre_limit_of_zero() -> None:
    # shapely 2.2: buffer(2, join_style="mitre", mitre_limit=0) of this shape raises "invalid argument".
    judge(ring([(0, 0), (10, 0), (6.5, 5.6), (0, 10)], [2, 2, 2, 2]))


def hollow(radius: float, allowance: float) -> Piece:
    """Return a block of 200 by 100 with a half circle of `radius` cut out of its top."""
    k = 0.5523 * radius
    arch = Path(
        (
            bezier(
                (100 + radius, 100), (100 + radius, 100 - k), (100 + k, 100 - radius), (100, 100 - radius)
            ),
            bezier(
                (100, 100 - radius), (100 - k, 100 - radius), (100 - radius, 100 - k), (100 - radius, 100)
            ),
        )
    )
    frame = [
        (100 - radius, 100.0),
        (0.0, 100.0),
        (0.0, 0.0),
        (200.0, 0.0),
        (200.0, 100.0),
        (100 + radius, 100.0),
    ]
    edges = [Edge("arch", arch, allowance)]
    for i, (a, b) in enumerate(pairwise(frame)):
        edges.append(Edge(f"side {i}", Path.through([Point(*a), Point(*b)])))
    return Piece("facing", tuple(edges), Path.through([Point(20, 10), Point(20, 80)]))


def test_an_allowance_wider_than_a_hollow_names_the_edge_and_what_would_fit() -> None:
    # GEOS gives an empty line for a half circle of 30 moved 40 inwards.
    with pytest.raises(
        AllowanceTooWide, match=r"facing, arch = 40 mm.*too hollow.*at most 29\.[5-9] mm"
    ) as refusal:
        cut_line(hollow(30, 40))
    assert refusal.value.edges == ("arch",)
    judge(hollow(30, refusal.value.largest))


def test_each_of_two_hollows_is_named_with_its_own_limit() -> None:
    def half_circle(x: float, radius: float, name: str) -> Edge:
        arch = hollow(radius, 40).edge("arch")
        return Edge(name, arch.path.moved(lambda p: Point(p.x - 100 + x, p.y)), 40)

    right, left = half_circle(230, 30, "right"), half_circle(80, 20, "left")
    frame = [(60, 100), (0, 100), (0, 0), (300, 0), (300, 100), (260, 100)]
    sides = [Edge(f"side {x} {y}", Path.through([Point(x, y), Point(*b)])) for (x, y), b in pairwise(frame)]
    top = Edge("bridge", Path.through([Point(200, 100), Point(100, 100)]))
    piece = Piece("facing", (right, top, left, *sides), Path.through([Point(9, 9), Point(9, 80)]))
    with pytest.raises(AllowanceTooWide, match="facing, right = 40 mm") as refusal:
        cut_line(piece)
    assert refusal.value.largest == pytest.approx(29.7, abs=0.3)
    with pytest.raises(AllowanceTooWide, match="facing, left = 40 mm") as refusal:
        cut_line(piece.with_edges(Edge("right", right.path, 10)))
    assert refusal.value.largest == pytest.approx(19.8, abs=0.2)


def test_a_refused_allowance_is_a_refused_draft_and_survives_pickling() -> None:
    with pytest.raises(DraftRefused) as refusal:
        cut_line(hollow(30, 40))
    assert str(pickle.loads(pickle.dumps(refusal.value))) == str(refusal.value)


def test_a_hollow_takes_an_allowance_narrower_than_its_radius() -> None:
    judge(hollow(30, 25))


def test_a_slot_narrower_than_two_allowances_is_refused_with_half_its_width() -> None:
    slot = [(0, 0), (100, 0), (100, 100), (60, 100), (60, 40), (44, 40), (44, 100), (0, 100)]
    with pytest.raises(AllowanceTooWide, match="run into each other") as refusal:
        cut_line(ring(slot, [10] * 8))
    assert set(refusal.value.edges) == {"e3", "e4", "e5"}
    assert refusal.value.largest == pytest.approx(8, abs=0.1)
    judge(ring(slot, [refusal.value.largest if i in (3, 4, 5) else 10 for i in range(8)]))


def test_a_sew_line_that_crosses_itself_is_told_apart_from_a_wide_allowance() -> None:
    with pytest.raises(ValueError, match="shape: the sew line crosses itself"):
        cut_line(ring([(0, 0), (200, 0), (200, 100), (90, -50)], [10, 10, 10, 10]))


def test_a_hem_deeper_than_its_mirrored_sides_allow_is_refused() -> None:
    # Both sides lean in by one in one: mirrored, they meet 50 below a hem of 100.
    flare = ring([(0, 0), (100, 0), (60, 40), (40, 40)], [60, 0, 0, 0], e0=Finish.HEM)
    with pytest.raises(AllowanceTooWide) as refusal:
        cut_line(flare)
    assert "e0" in refusal.value.edges
    assert refusal.value.largest == pytest.approx(50, abs=0.1)


def test_the_line_starts_beside_the_first_edge_and_keeps_the_order() -> None:
    cut = judge(square(10, 12, 14, 16))
    assert [side.edge.name for side in cut.sides] == ["e0", "e1", "e2", "e3"]
    assert cut.outline[0] == pytest.approx([-16, -10])


def test_a_tapered_leg_has_a_hem_that_widens_downwards() -> None:
    # Sides lean in 10 in 100 towards the hem: 40 below it, the allowance is 4 wider on each side.
    taper = ring([(10, 0), (110, 0), (120, 100), (0, 100)], [40, 0, 0, 0], e0=Finish.HEM)
    assert {(6, -40), (114, -40)} <= corners(cut_line(taper))


def test_a_flared_leg_has_a_hem_that_narrows_downwards() -> None:
    flare = ring([(0, 0), (120, 0), (110, 100), (10, 100)], [40, 0, 0, 0], e0=Finish.HEM)
    assert {(4, -40), (116, -40)} <= corners(cut_line(flare))


@examples(60)
@given(st.floats(-20, 60), st.floats(180, 280), st.floats(5, 60))
def test_a_turned_up_hem_lies_on_the_leg_edge_to_edge(left: float, right: float, depth: float) -> None:
    piece = leg(hem_left=left, hem_right=right, hem=depth)
    cut = judge(piece, mirrored=("hem",))
    below = cut.polygon.intersection(shapely.box(-500, -500, 500, 0))
    turned_up = shapely.transform(below, lambda xy: xy * [1, -1])
    behind = cut.polygon.intersection(shapely.box(-500, 0, 500, depth))
    assert turned_up.symmetric_difference(behind).area < 0.05
    assert cut.polygon.bounds[1] == pytest.approx(-depth)


def test_a_hem_runs_straight_on_from_a_fold() -> None:
    half = ring([(0, 0), (50, 0), (60, 100), (0, 100)], [40, 10, 10, 0], e0=Finish.HEM, e3=Finish.FOLD)
    assert (0, -40) in corners(cut_line(half))


def test_a_hem_under_a_single_arch_mirrors_each_of_its_ends() -> None:
    # Half a circle of 50: 20 from the hem, above as below, it is sqrt(50^2 - 20^2) = 45.83 from the middle.
    k = 27.614
    arch = Path((bezier((50, 0), (50, k), (k, 50), (0, 50)), bezier((0, 50), (-k, 50), (-50, k), (-50, 0))))
    hem = Edge("hem", Path.through([Point(-50, 0), Point(50, 0)]), 20, Finish.HEM)
    cut = cut_line(Piece("flap", (hem, Edge("arch", arch)), Path.through([Point(0, 5), Point(0, 45)])))
    bottom = cut.outline[cut.outline[:, 1] < -19.999]
    assert sorted(bottom[:, 0]) == pytest.approx([-45.83, 45.83], abs=0.05)


def test_a_hem_on_a_short_piece_runs_on_straight() -> None:
    # The side is 20 high, the hem 50 deep: the mirrored side goes on along its own line.
    low = ring([(0, 0), (100, 0), (102, 20), (-2, 20)], [50, 0, 0, 0], e0=Finish.HEM)
    assert {(-5, -50), (105, -50)} <= corners(cut_line(low))


def test_a_circle_of_one_edge_grows_by_its_allowance() -> None:
    k = 55.2285
    turns = [(100, 0), (0, 100), (-100, 0), (0, -100), (100, 0)]
    quarters = tuple(
        bezier(
            (x0, y0), (x0 - y0 * k / 100, y0 + x0 * k / 100), (x1 + y1 * k / 100, y1 - x1 * k / 100), (x1, y1)
        )
        for (x0, y0), (x1, y1) in pairwise(turns)
    )
    disc = Piece("disc", (Edge("rim", Path(quarters), 10),), Path.through([Point(0, -9), Point(0, 9)]))
    radii = np.hypot(*cut_line(disc).outline.T)
    assert radii.min() == pytest.approx(110, abs=0.05)
    assert radii.max() == pytest.approx(110, abs=0.05)


def test_a_wide_allowance_round_a_small_curve_stays_within_the_flattening() -> None:
    # Quarter of a circle of 10 with 40 round it: the chords of the sew line, moved out, would gap by 0.05 mm.
    round_corner = Path((bezier((10, 0), (10, 5.5228), (5.5228, 10), (0, 10)),))
    edges = (
        Edge("base", Path.through([Point(0, 0), Point(10, 0)])),
        Edge("round", round_corner, 40),
        Edge("left", Path.through([Point(0, 10), Point(0, 0)])),
    )
    cut = cut_line(Piece("tab", edges, Path.through([Point(1, 1), Point(1, 5)])))
    line = cut.sides[1].points[1:-1]
    chords = np.hypot(*(0.5 * (line[1:] + line[:-1])).T)
    assert chords.min() > 50 - 0.011


def test_a_notch_crosses_the_allowance_square_to_its_edge() -> None:
    piece = square(10, 15, 10, 10)
    place = cut_line(piece).notch(piece.edge("e1"), Notch("hip", 30))
    assert tuple(place.sewn) == pytest.approx((100, 30))
    assert (place.outward.x, place.outward.y) == pytest.approx((1, 0))
    assert tuple(place.cut) == pytest.approx((115, 30))


def test_a_notch_ends_on_the_cut_line_all_round_a_leg() -> None:
    piece = leg()
    cut = cut_line(piece)
    for edge in piece.edges:
        for share in (0.05, 0.5, 0.95):
            place = cut.notch(edge, Notch("any", share * edge.length))
            assert cut.polygon.exterior.distance(Spot(tuple(place.cut))) < 0.01


def test_a_notch_on_an_edge_without_allowance_has_no_length() -> None:
    piece = square(10, 0, 10, 10)
    place = cut_line(piece).notch(piece.edge("e1"), Notch("hip", 30))
    assert tuple(place.cut) == pytest.approx(tuple(place.sewn))


def test_a_notch_beside_a_slanting_fold_stops_at_the_fold_line() -> None:
    # The fold leans by 60 degrees; 2 mm before it, its line runs 2 tan 60 = 3.46 mm below the edge.
    shape = ring([(0, 0), (100, 0), (130, 51.9615), (0, 51.9615)], [15, 0, 0, 0], e1=Finish.FOLD)
    place = cut_line(shape).notch(shape.edge("e0"), Notch("low", 98))
    assert tuple(place.cut) == pytest.approx((98, -3.4641), abs=1e-3)


allowances = st.sampled_from([0.0, 6.0, 10.0, 15.0])


@st.composite
def bulging(draw: st.DrawFn) -> Piece:
    """Return a piece of 3 to 8 curved edges around a circle, each bulging out or in by up to 15 mm."""
    count = draw(st.integers(3, 8))
    gaps = [draw(st.floats(1, 2)) for _ in range(count)]
    angles = np.cumsum(gaps) / sum(gaps) * 2 * math.pi
    spots = [Point(200 * math.cos(a), 200 * math.sin(a)) for a in angles]
    edges = []
    for i, (a, b) in enumerate(zip(spots, spots[1:] + spots[:1], strict=True)):
        right = -(b - a).left.unit
        c1 = a.towards(b, 1 / 3) + right * draw(st.floats(-20, 20))
        c2 = a.towards(b, 2 / 3) + right * draw(st.floats(-20, 20))
        path = Path((bezier(tuple(a), tuple(c1), tuple(c2), tuple(b)),))  # type: ignore[arg-type]
        edges.append(Edge(f"e{i}", path, draw(allowances)))
    return Piece("bulging", tuple(edges), Path.through([Point(0, -9), Point(0, 9)]))


@examples(150)
@given(bulging())
def test_shapely_finds_every_promise_kept_on_curved_shapes(piece: Piece) -> None:
    judge(piece)


@examples(60)
@given(bulging(), st.sampled_from([6.0, 10.0, 15.0]))
def test_a_constant_allowance_agrees_with_shapelys_own_buffer(piece: Piece, width: float) -> None:
    # shapely 2 (GEOS): an independent implementation, compared away from corners, where mitre rules differ.
    even = piece.with_edges(*(Edge(edge.name, edge.path, width) for edge in piece.edges))
    buffered = even.polygon.buffer(width, join_style="mitre", mitre_limit=MITRE)
    near_corners = shapely.union_all(
        [Spot(tuple(edge.path.start)).buffer(MITRE * width + 5) for edge in even.edges]
    )
    ours = cut_line(even).polygon.exterior.difference(near_corners)
    assert ours.length > 100
    assert max(buffered.exterior.distance(Spot(p)) for p in shapely.get_coordinates(ours)) < 0.05


@examples(60)
@given(bulging(), st.sampled_from([6.0, 15.0]))
def test_taking_the_allowance_off_again_gives_the_sew_line_back(piece: Piece, width: float) -> None:
    even = piece.with_edges(*(Edge(edge.name, edge.path, width) for edge in piece.edges))
    inset = cut_line(even).polygon.buffer(-width)
    assert inset.symmetric_difference(even.polygon).area < 0.02 * even.polygon.length + 2 * len(even.edges)


def test_a_leg_keeps_every_promise_on_both_sides_of_the_body() -> None:
    right = judge(leg(), mirrored=("hem",))
    left = judge(leg().mirrored(), mirrored=("hem",))
    assert left.polygon.area == pytest.approx(right.polygon.area, rel=1e-6)
