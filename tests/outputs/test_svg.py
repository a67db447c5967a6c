"""The SVG is true, whole and readable: read back by svgelements and by the XML parser alone."""

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest
import svgelements
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon, box

from drafting.pieces.pieces import Finish
from outputs.demo import DEMO_FILES
from outputs.print.piece_text import title
from outputs.print.svg import write_svg
from outputs.reading.measurements_file import read_measurements
from tests.outputs import samples
from tests.outputs.drawings import (
    WHOLE,
    cut,
    page_height,
    pattern_of,
    sewn,
    source,
    svg_lines,
    svg_of,
    svg_paths,
    written,
)
from tests.strategies import examples

SAMPLE = ("Ada", "sample")
NAMESPACE = "{http://www.w3.org/2000/svg}"


def parsed(data: bytes) -> ElementTree.Element:
    return ElementTree.fromstring(data)


def said(data: bytes, tag: str) -> list[str]:
    return [one.text or "" for one in parsed(data).iter(NAMESPACE + tag)]


@pytest.mark.slow
@pytest.mark.parametrize("pair", WHOLE, ids=str)
def test_an_independent_reader_finds_every_cut_line_within_a_tenth_and_the_area_within_a_ten_thousandth(pair):
    data = svg_of(*pair)
    for placed in source(*pair):
        (line,) = svg_lines(data, placed.number, "cut-line")
        read, true = Polygon(line), cut(placed)
        assert read.hausdorff_distance(true) < 0.1, placed.piece.name
        assert read.area == pytest.approx(true.area, rel=1e-4), placed.piece.name


def test_an_independent_reader_finds_every_sew_line():
    data = svg_of(*WHOLE[0])
    rings = 0
    for placed in source(*WHOLE[0]):
        lines, true = svg_lines(data, placed.number, "sew-line"), sewn(placed)
        carried = sum(edge.length for edge in placed.piece.edges if edge.allowance)
        assert sum(line.length for line in lines) == pytest.approx(carried, abs=0.05)
        assert all(line.within(true.exterior.buffer(0.1)) for line in lines)
        if all(edge.allowance for edge in placed.piece.edges):
            assert Polygon(lines[0]).area == pytest.approx(true.area, rel=1e-4)
            rings += 1
    assert rings > 5


def test_one_unit_is_a_millimetre_on_a_page_with_room_for_all():
    root = parsed(svg_of(*SAMPLE))
    left, top, width, height = root.get("viewBox").split()
    assert (left, top) == ("0", "0")
    assert (root.get("width"), root.get("height")) == (f"{width}mm", f"{height}mm")
    page = box(0, 0, float(width), float(height)).buffer(-9)
    for paths in svg_paths(svg_of(*SAMPLE)).values():
        for path in paths:
            x0, y0, x1, y1 = path.bbox()
            assert page.covers(box(x0, y0, x1, y1))


def test_a_labelled_bar_of_100_mm_lies_outside_the_pieces():
    data = svg_of(*SAMPLE)
    bars = [LineString([p[0].end, p[-1].end]) for p in svg_paths(data)["scale-test-lines"]]
    assert sum(bar.length == pytest.approx(100, abs=0.001) for bar in bars) == 2
    height = page_height(data)
    for placed in source(*SAMPLE):
        (shape,) = svg_lines(data, placed.number, "cut-line")
        turned = [LineString([(x - 10, height - 10 - y) for x, y in bar.coords]) for bar in bars]
        assert all(Polygon(shape).distance(bar) > 1 for bar in turned)
    assert said(data, "text").count("100 mm") == 2


@pytest.mark.parametrize("pair", [SAMPLE, *WHOLE], ids=str)
def test_ids_are_safe_and_unique_and_every_piece_has_its_groups(pair):
    root = parsed(svg_of(*pair))
    ids = [one.get("id") for one in root.iter() if one.get("id")]
    assert len(set(ids)) == len(ids)
    assert all(re.fullmatch("[a-z][a-z0-9-]*", name) for name in ids)
    for placed in source(*pair):
        (group,) = [g for g in root if (g.get("id") or "").startswith(f"piece-{placed.number}-")]
        layers = {
            layer.get("id").removeprefix(group.get("id") + "-") for layer in group.iter(NAMESPACE + "g")
        }
        wanted = {"cut-line", "grain", "text"}
        wanted |= {"sew-line"} if any(edge.allowance for edge in placed.piece.edges) else set()
        wanted |= {"notches"} if any(edge.notches for edge in placed.piece.edges) else set()
        wanted |= {"fold"} if any(edge.finish is Finish.FOLD for edge in placed.piece.edges) else set()
        wanted |= {"marks"} if placed.piece.marks else set()
        assert layers - {group.get("id")} == wanted, placed.piece.name
        assert group[0].text == title(placed.number, placed.piece)


def test_words_tell_what_is_drawn():
    data = svg_of(*SAMPLE)
    root = parsed(data)
    assert (root[0].tag, root[1].tag) == (f"{NAMESPACE}title", f"{NAMESPACE}desc")
    assert root.get("aria-labelledby") == f"{root[0].get('id')} {root[1].get('id')}"
    assert root[0].text == "Ada Example (invented), straight leg"
    assert all(f"{n}. {p.name}" in root[1].text for n, p in enumerate(samples.pattern().pieces, start=1))
    assert any("cut 2 = 1 pair" in text and "hem 30 mm" in text for text in said(data, "desc"))


def test_curves_of_the_source_are_cubic_beziers():
    paths = svg_paths(svg_of(*SAMPLE))
    for placed in source(*SAMPLE):
        curves = [
            c for edge in placed.piece.edges if edge.allowance for c in edge.path.curves if not c.straight
        ]
        name = f"piece-{placed.number}-{placed.piece.name.replace(' ', '-')}"
        drawn = [s for p in paths.get(f"{name}-sew-line", []) for s in p]
        assert sum(isinstance(s, svgelements.CubicBezier) for s in drawn) == len(curves)


def test_a_cut_line_is_a_few_curves_and_no_string_of_points():
    paths = svg_paths(svg_of(*WHOLE[0]))
    (leg,) = paths["piece-1-front-leg-cut-line"]
    curves = sum(isinstance(segment, svgelements.CubicBezier) for segment in leg)
    assert 10 < curves < 50 and len(leg) - curves < 15
    assert len(source(*WHOLE[0])[0].cut) > 300


def test_a_cut_line_without_allowance_keeps_its_curves():
    paths = svg_paths(svg_of(*WHOLE[1]))
    (leg,) = paths["piece-1-front-leg-cut-line"]
    curves = [c for edge in source(*WHOLE[1])[0].piece.edges for c in edge.path.curves if not c.straight]
    assert sum(isinstance(s, svgelements.CubicBezier) for s in leg) == len(curves) > 3


def test_the_same_pattern_gives_the_same_bytes():
    pattern = pattern_of(*SAMPLE)
    assert written(write_svg, pattern) == written(write_svg, pattern)


@pytest.mark.slow
@pytest.mark.parametrize("file", DEMO_FILES, ids=lambda file: file.stem)
def test_the_names_of_the_demo_wearers_survive(file):
    wearer = read_measurements(file).wearer
    data = written(write_svg, samples.pattern(wearer))
    assert f"for {wearer}, measured 2025-03-01" in said(data, "text")
    assert said(data, "title")[0] == f"{wearer}, straight leg"


@examples(12)
@given(st.text(max_size=25))
def test_a_name_of_any_characters_gives_a_valid_file(name: str):
    pattern = replace(samples.pattern(name), pieces=(samples.loop(),), style=name)
    root = parsed(written(write_svg, pattern))
    plain = "".join(ch for ch in name if ch.isalnum())
    assert plain in "".join(ch for ch in root[0].text if ch.isalnum())


@pytest.mark.parametrize("name", ["\x00\x1b", "\ud800", "\ufffe", "a\tb\nc", "]]>&<'\"", "  "])
def test_characters_that_no_xml_file_may_hold_do_no_harm(name: str):
    pattern = replace(samples.pattern(name), pieces=(samples.loop(),))
    assert parsed(written(write_svg, pattern))[0].text.endswith(", straight leg")
