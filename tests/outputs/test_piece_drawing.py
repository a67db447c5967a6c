"""One piece drawn on a canvas: everything there, nothing on top of anything else."""

from dataclasses import replace
from itertools import combinations

import pytest
import shapely
from shapely.affinity import rotate
from shapely.geometry import LineString, Point, Polygon

from drafting.pieces.pieces import Finish, Mark, MarkKind, NotchKind, Piece
from outputs.canvas.canvas import LINE_STYLES, Align, Recording, Role, text_box
from outputs.canvas.typeface import Typeface
from outputs.packing.layout import StandingPiece, standing
from outputs.print.piece_drawing import draw_piece
from outputs.print.piece_text import allowance_text
from tests.outputs import samples
from tests.whole_jeans import jeans_of


class RoundRuler:
    """A ruler whose letters are all six tenths of the type size wide."""

    def text_width(self, string: str, size: float, *, bold: bool = False) -> float:
        return 0.6 * size * len(string)


def drawn(name: str) -> tuple[Recording, StandingPiece, list[str]]:
    pattern = samples.pattern()
    placed = next(p for p in standing(pattern) if p.piece.name == name)
    recording = Recording(RoundRuler())
    return recording, placed, draw_piece(recording, placed, pattern)


def lines(recording: Recording, role: Role) -> list[LineString]:
    return [LineString(s.outline.flatten(0.01)) for s in recording.strokes if s.role is role]


def words(recording: Recording) -> str:
    return " ".join(text.string for text in recording.texts)


@pytest.mark.parametrize("name", ["front leg", "back leg", "pocket bag", "belt loop"])
def test_words_stand_inside_the_piece_and_on_no_line_and_no_other_words(name: str):
    recording, placed, _ = drawn(name)
    strokes = shapely.union_all([LineString(s.outline.flatten(0.01)) for s in recording.strokes])
    boxes = [text.box for text in recording.texts]
    assert all(placed.piece.polygon.covers(box) for box in boxes)
    assert all(box.distance(strokes) > 1 for box in boxes)
    assert all(not one.buffer(-0.05).intersects(other) for one, other in combinations(boxes, 2))


def test_the_label_of_a_leg_tells_all():
    recording, _, unfit = drawn("front leg")
    said = words(recording)
    assert unfit == []
    for wanted in (
        "1. front leg",
        "denim: cut 2 = 1 pair, flip for the second",
        "straight leg",
        "for Ada Example (invented), measured 2025-03-01",
        "grain",
        "hip level",
        "pocket corner",
    ):
        assert wanted in said
    assert "hem 30 mm" in said.replace("\n", " ")


def test_labels_are_large_enough_to_read():
    recording, _, _ = drawn("pocket bag")
    assert min(text.size for text in recording.texts) >= 2.0


def test_words_keep_off_the_joins_of_the_sheets_where_there_is_room():
    pattern = samples.pattern()
    placed = standing(pattern)[0]
    plain = Recording(RoundRuler())
    draw_piece(plain, placed, pattern)
    title = next(text for text in plain.texts if text.string == "1. front leg")
    join = LineString([(-1000, title.at.y + 2), (1000, title.at.y + 2)])
    kept_off = Recording(RoundRuler())
    draw_piece(kept_off, placed, pattern, joins=join)
    label = [text.box for text in kept_off.texts if text.string in words(plain) and text.bold]
    assert label
    assert all(not box.intersects(join) for box in label)


@pytest.mark.parametrize("caption", ["hip level", "pocket corner"])
def test_the_name_of_a_mark_keeps_off_the_joins_too(caption: str):
    placed = standing(samples.pattern())[0]
    plain, kept_off = Recording(RoundRuler()), Recording(RoundRuler())
    draw_piece(plain, placed, samples.pattern())
    (named,) = [text for text in plain.texts if text.string == caption]
    join = LineString([(named.at.x + 1, -1000), (named.at.x + 1, 1000)])
    assert named.box.intersects(join)
    draw_piece(kept_off, placed, samples.pattern(), joins=join)
    (moved,) = [text for text in kept_off.texts if text.string == caption]
    assert not moved.box.intersects(join) and moved.size == named.size


def test_a_piece_too_small_for_its_label_is_reported():
    recording, _, unfit = drawn("belt loop")
    assert words(recording).split() == ["4"]
    assert unfit == ["belt loop, number 4 alone"]


def test_a_piece_turned_by_half_a_turn_keeps_its_shape_and_says_so_upright():
    pattern, recording = samples.pattern(), Recording(RoundRuler())
    upright = standing(pattern)[0]
    turned = upright.upside_down
    assert turned.line.polygon.equals_exact(rotate(upright.line.polygon, 180, origin=(0, 0)), 1e-9)
    draw_piece(recording, turned, pattern)
    assert "its lower end is up here" in words(recording).replace("\n", " ")
    assert "its lower end" not in words(drawn("front leg")[0])
    assert {text.angle for text in recording.texts} <= {0.0, 90.0}
    sewn = Polygon(turned.piece.polygon.exterior)
    assert all(
        Point(notch.coords[0]).distance(sewn.exterior) < 0.02 for notch in lines(recording, Role.NOTCH)
    )


def test_the_sew_line_is_drawn_as_the_curves_of_the_piece():
    recording, placed, _ = drawn("front leg")
    (sewn,) = lines(recording, Role.SEW)
    assert sewn.length == pytest.approx(sum(edge.length for edge in placed.piece.edges), abs=0.05)
    (cut,) = lines(recording, Role.CUT)
    assert Polygon(cut).area == pytest.approx(placed.line.polygon.area)


def test_notches_run_across_the_allowance():
    recording, placed, _ = drawn("front leg")
    notches = lines(recording, Role.NOTCH)
    assert [notch.length for notch in notches] == pytest.approx([15, 15, 15], abs=0.02)
    sewn, cut = placed.piece.polygon.exterior, placed.line.polygon.exterior
    for notch in notches:
        assert Point(notch.coords[0]).distance(sewn) < 0.02
        assert Point(notch.coords[-1]).distance(cut) < 0.02


def test_a_double_notch_is_two_strokes_six_millimetres_apart():
    recording, _, _ = drawn("back leg")
    notches = lines(recording, Role.NOTCH)
    assert len(notches) == 6
    assert notches[0].distance(notches[1]) == pytest.approx(6, abs=0.1)


def test_a_notch_without_allowance_points_into_the_piece():
    pocket = samples.pocket()
    notched = pocket.with_edges(
        replace(
            pocket.edge("right"),
            notches=samples.leg("x", seat=30, kind=NotchKind.SINGLE).edge("inseam").notches,
        )
    )
    notched = notched.with_edges(
        replace(notched.edge("right"), notches=(replace(notched.edge("right").notches[0], distance=80),))
    )
    recording = _draw(notched)
    (notch,) = lines(recording, Role.NOTCH)
    assert list(notch.coords) == [pytest.approx((120, 80)), pytest.approx((115, 80))]


def _draw(piece: Piece) -> Recording:
    pattern = replace(samples.pattern(), pieces=(piece,))
    recording = Recording(RoundRuler())
    (placed,) = standing(pattern)
    draw_piece(recording, placed, pattern)
    return recording


def test_nothing_is_cut_along_a_fold():
    recording, placed, _ = drawn("pocket bag")
    (fold,) = lines(recording, Role.FOLD)
    cuts = shapely.union_all(lines(recording, Role.CUT))
    assert fold.length == pytest.approx(160)
    assert cuts.intersection(fold.buffer(0.01)).length < 0.1
    assert cuts.length + fold.length == pytest.approx(placed.line.polygon.exterior.length)
    assert "place on the fold" in words(recording)


def test_without_allowances_the_sew_line_is_not_drawn_twice():
    recording, _, _ = drawn("pocket bag")
    assert lines(recording, Role.SEW) == []


def test_the_grain_line_has_an_arrow_at_each_end():
    recording, placed, _ = drawn("front leg")
    (grain,) = lines(recording, Role.GRAIN)
    tips = [arrow.coords[1] for arrow in lines(recording, Role.ARROW)]
    assert tips == [pytest.approx(grain.coords[-1]), pytest.approx(grain.coords[0])]
    assert grain.length == placed.piece.grain.length


def test_a_crease_on_the_grain_line_is_drawn_only_beyond_it():
    front = samples.leg("x", seat=30, kind=NotchKind.SINGLE)
    crease = Mark("crease", MarkKind.LINE, samples.straight((110, 0), (110, 1000)))
    recording = _draw(replace(front, marks=(crease,)))
    marks = lines(recording, Role.MARK)
    assert sorted(mark.length for mark in marks) == pytest.approx([40 - 0.3, 60 - 0.3])
    assert "crease" in words(recording)


@pytest.mark.parametrize(
    ("piece", "text"),
    [
        (
            samples.leg("x", seat=30, kind=NotchKind.SINGLE),
            "seam allowance included: crotch, waist 10 mm; inseam, side 15 mm; hem 30 mm",
        ),
        (samples.pocket(), "seam allowance NOT included, add your own"),
    ],
)
def test_the_label_says_which_allowances_are_included(piece: Piece, text: str):
    assert allowance_text(piece) == text


def test_an_edge_without_allowance_among_others_is_named():
    pocket = samples.pocket()
    assert pocket.edge("centre").finish is Finish.FOLD
    hemmed = pocket.with_edges(replace(pocket.edge("top"), allowance=20))
    assert allowance_text(hemmed) == "seam allowance included: bottom, right none; top 20 mm"


def test_no_two_lines_of_a_pattern_look_alike_and_the_cut_line_is_heavy():
    pattern_roles = [Role.CUT, Role.SEW, Role.FOLD, Role.GRAIN, Role.MARK, Role.JOIN]
    dashes = [LINE_STYLES[role].dash for role in pattern_roles]
    assert len(set(dashes)) == len(dashes)
    assert LINE_STYLES[Role.CUT].width >= 0.35
    assert min(style.width for style in LINE_STYLES.values()) >= 0.15


def test_a_text_box_turns_about_its_point():
    box = text_box(samples.Point(10, 20), 30, 4, angle=90, align=Align.CENTRE)
    assert box.bounds == pytest.approx((10 - 0.78 * 4, 5, 10 + 0.24 * 4, 35))


@pytest.mark.parametrize("wearer", ["gulsah", "oksana"])
def test_every_piece_of_a_pair_carries_its_whole_label(wearer: str):
    pattern = replace(jeans_of(wearer, "shaped band").pattern, date="2026-03-14")
    assert len({piece.name for piece in pattern.pieces}) == len(pattern.pieces)
    for placed in standing(pattern):
        recording, piece = Recording(Typeface()), placed.piece
        assert draw_piece(recording, placed, pattern) == []
        said = words(recording)
        for wanted in (
            f"{placed.number}. {piece.name}",
            piece.cutting.material.value,
            piece.cut_text,
            f"for {wearer}, measured 2026-03-14",
            "straight, scale 1:1",
            allowance_text(piece),
        ):
            assert wanted in said, (piece.name, wanted)
        boxes = [text.box for text in recording.texts]
        assert all(not one.buffer(-0.05).intersects(other) for one, other in combinations(boxes, 2))
