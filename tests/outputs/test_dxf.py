"""The DXF is sound, true and plain: audited and read back by ezdxf."""

import io
import re
from dataclasses import replace

import pytest
from ezdxf import recover
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Point, Polygon

from drafting.pieces.pieces import Finish, MarkKind, NotchKind
from outputs.demo import DEMO_FILES
from outputs.print.dxf import MEANINGS, DxfLayer, write_dxf
from outputs.reading.measurements_file import read_measurements
from tests.outputs import samples
from tests.outputs.drawings import (
    WHOLE,
    cut,
    dxf_line,
    dxf_of,
    dxf_piece,
    on_layer,
    pattern_of,
    read_dxf,
    sewn,
    source,
    written,
)
from tests.strategies import examples

SAMPLE = ("Ada", "sample")
SPELLED = {
    "gulsah": "Gulsah Cinaroglu",
    "oksana": "Oksana Shcherbak",
    "theodoros": "Theodoros Karydis",
    "zaneta": "Zaneta Lecka",
}


def texts(drawing) -> list[str]:
    words = [one.dxf.text for one in drawing.modelspace().query("TEXT")]
    return words + [one.dxf.text for block in drawing.blocks for one in block.query("TEXT")]


def place(point) -> Point:
    return Point(point.dxf.location.x, point.dxf.location.y)


@pytest.mark.slow
@pytest.mark.parametrize("pair", [SAMPLE, *WHOLE], ids=str)
def test_an_audit_finds_nothing_to_mend(pair):
    audit = dxf_of(*pair).audit()
    assert (audit.errors, audit.fixes) == ([], [])


def test_a_reader_that_mends_what_it_can_has_nothing_to_do():
    _, audit = recover.read(io.BytesIO(written(write_dxf, pattern_of(*SAMPLE))))
    assert (audit.errors, audit.fixes) == ([], [])


def test_the_unit_is_the_millimetre():
    header = dxf_of(*SAMPLE).header
    assert (header["$INSUNITS"], header["$MEASUREMENT"], header["$ACADVER"]) == (4, 1, "AC1009")
    assert "Units: METRIC" in texts(dxf_of(*SAMPLE))


@pytest.mark.slow
@pytest.mark.parametrize("pair", WHOLE, ids=str)
def test_every_cut_line_is_closed_and_within_a_tenth_and_its_area_within_a_thousandth(pair):
    for placed in source(*pair):
        (outline,) = on_layer(dxf_piece(dxf_of(*pair), placed.number), DxfLayer.CUT)
        assert outline.is_closed
        read, true = Polygon(dxf_line(outline)), cut(placed)
        assert read.hausdorff_distance(true) < 0.1, placed.piece.name
        assert read.area == pytest.approx(true.area, rel=1e-3), placed.piece.name


def test_every_sew_line_is_within_a_tenth_and_closed_where_all_edges_are_sewn():
    for placed in source(*WHOLE[0]):
        lines = [
            one
            for kind in ("POLYLINE", "LINE")
            for one in on_layer(dxf_piece(dxf_of(*WHOLE[0]), placed.number), DxfLayer.SEW, kind)
        ]
        true = sewn(placed)
        if all(edge.allowance for edge in placed.piece.edges):
            assert Polygon(dxf_line(lines[0])).hausdorff_distance(true) < 0.1
            assert lines[0].is_closed
        for one in lines:
            straight = one.dxftype() == "LINE"
            drawn = LineString([one.dxf.start, one.dxf.end]) if straight else dxf_line(one)
            assert drawn.within(true.exterior.buffer(0.1))


def test_a_curve_gets_few_points():
    """A leg printed from a polyline of 0.01 mm has some 300 points (measured here)."""
    (outline,) = on_layer(dxf_piece(dxf_of(*WHOLE[0]), 1), DxfLayer.CUT)
    assert 30 < len(outline.vertices) < len(source(*WHOLE[0])[0].cut) / 2.5


@pytest.mark.parametrize("pair", WHOLE, ids=str)
def test_every_piece_is_a_block_of_its_own_shown_once(pair):
    drawing = dxf_of(*pair)
    shown = [insert.dxf.name for insert in drawing.modelspace().query("INSERT")]
    pieces = [block.name for block in drawing.blocks if not block.name.startswith(("*", "$"))]
    assert sorted(shown) == sorted(pieces) and len(set(shown)) == len(source(*pair))
    assert shown[:3] == ["FRONT_LEG", "BACK_LEG", "BACK_YOKE"]
    assert all(re.fullmatch("[A-Z0-9_]{1,31}", name) for name in shown)
    for insert in drawing.modelspace().query("INSERT"):
        corners = [
            point for one in on_layer(list(drawing.blocks[insert.dxf.name]), 1) for point in one.points()
        ]
        assert min(p.x for p in corners) == pytest.approx(0, abs=0.1)
        assert min(p.y for p in corners) == pytest.approx(0, abs=0.1)
        assert (insert.dxf.xscale, insert.dxf.yscale, insert.dxf.rotation) == (1, 1, 0)


def test_only_the_layers_that_are_explained_are_used():
    data = written(write_dxf, pattern_of(*WHOLE[0])).decode("ascii")
    drawing = dxf_of(*WHOLE[0])
    used = {
        one.dxf.layer for block in drawing.blocks for one in block if not block.name.startswith(("*", "$"))
    }
    assert used == {str(int(layer)) for layer in MEANINGS}
    assert all(f"999\nlayer {int(layer)}: {words}\n" in data for layer, words in MEANINGS.items())
    assert "conformance with it is not claimed" in data


def test_notches_are_points_on_the_cut_line_with_their_stroke_on_another_layer():
    for placed in source(*WHOLE[0]):
        entities = dxf_piece(dxf_of(*WHOLE[0]), placed.number)
        notches = on_layer(entities, DxfLayer.NOTCH, "POINT")
        assert all(place(one).distance(cut(placed).exterior) < 0.1 for one in notches)
        cuts = sum(
            1 if n.kind is NotchKind.SINGLE else 2 for edge in placed.piece.edges for n in edge.notches
        )
        assert len(notches) == cuts
        strokes = [
            LineString([one.dxf.start, one.dxf.end]) for one in on_layer(entities, DxfLayer.INTERNAL, "LINE")
        ]
        assert all(any(stroke.distance(place(one)) < 0.001 for stroke in strokes) for one in notches)


def test_the_grain_is_one_line_pointing_up_and_drill_holes_are_points():
    for placed in source(*WHOLE[0]):
        entities = dxf_piece(dxf_of(*WHOLE[0]), placed.number)
        (grain,) = on_layer(entities, DxfLayer.GRAIN, "LINE")
        assert grain.dxf.end.y - grain.dxf.start.y == pytest.approx(placed.piece.grain.length, abs=0.001)
        assert grain.dxf.end.x == pytest.approx(grain.dxf.start.x, abs=0.001)
        marked = [mark.path.start for mark in placed.piece.marks if mark.kind is MarkKind.DRILL]
        drilled = [place(one) for one in on_layer(entities, DxfLayer.DRILL, "POINT")]
        assert len(drilled) == len(marked)
        assert all(a.distance(Point(*b)) < 0.001 for a, b in zip(drilled, marked, strict=True))


def test_a_fold_is_drawn_and_closes_the_outline():
    folded = [p for p in source(*WHOLE[0]) if any(e.finish is Finish.FOLD for e in p.piece.edges)]
    assert folded
    for placed in folded:
        entities = dxf_piece(dxf_of(*WHOLE[0]), placed.number)
        (fold,) = on_layer(entities, DxfLayer.FOLD, "LINE")
        (outline,) = on_layer(entities, DxfLayer.CUT)
        line = LineString([fold.dxf.start, fold.dxf.end])
        assert line.within(dxf_line(outline).buffer(0.001))


def test_every_point_of_the_outline_is_told_to_be_corner_or_curve():
    entities = dxf_piece(dxf_of(*SAMPLE), 3)
    (outline,) = on_layer(entities, DxfLayer.CUT)
    turns = [place(one) for one in on_layer(entities, DxfLayer.TURN, "POINT")]
    curves = [place(one) for one in on_layer(entities, DxfLayer.CURVE, "POINT")]
    assert len(turns) == 4
    assert len(turns) + len(curves) == len(outline.vertices)
    low = min(spot.y for spot in turns)
    assert sorted((round(t.y - low)) for t in turns) == [0, 0, 160, 160]


def test_the_same_pattern_gives_the_same_bytes():
    pattern = pattern_of(*SAMPLE)
    assert written(write_dxf, pattern) == written(write_dxf, pattern)


@pytest.mark.slow
@pytest.mark.parametrize("file", DEMO_FILES, ids=lambda file: file.stem)
def test_the_names_of_the_demo_wearers_can_be_read(file):
    drawing = read_dxf(written(write_dxf, samples.pattern(read_measurements(file).wearer)))
    assert f"for {SPELLED[file.stem]}, measured 2025-03-01" in texts(drawing)
    assert f"{SPELLED[file.stem]}, straight leg" in texts(drawing)


def test_pieces_whose_names_are_spelled_alike_get_a_number():
    names = ("Žep", "Zep", "жеп")
    pieces = tuple(replace(samples.loop(), kind=name) for name in names)
    drawing = read_dxf(written(write_dxf, replace(samples.pattern(), pieces=pieces)))
    shown = [insert.dxf.name for insert in drawing.modelspace().query("INSERT")]
    assert shown == ["ZEP", "ZEP_2", "ZHEP"]


@examples(12)
@given(st.text(max_size=25))
def test_a_name_of_any_characters_gives_a_valid_file(name: str):
    piece = replace(samples.loop(), kind=name)
    data = written(write_dxf, replace(samples.pattern(name), pieces=(piece,), style=name))
    assert data.isascii()
    audit = read_dxf(data).audit()
    assert (audit.errors, audit.fixes) == ([], [])


@pytest.mark.parametrize("name", ["%%u%%d", "a^Jb", "\x00\x1b\r\n", "\ud800", "  0\nEOF"])
def test_control_codes_in_a_name_do_no_harm(name: str):
    piece = replace(samples.loop(), kind=name)
    drawing = read_dxf(written(write_dxf, replace(samples.pattern(name), pieces=(piece,))))
    assert not drawing.audit().errors
    assert any(words.endswith(", straight leg") for words in texts(drawing))
    assert not any(re.search("%%|\\^", words) for words in texts(drawing))
