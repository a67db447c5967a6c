"""The sheet that compares styles, read back by pdfplumber, and the pictures of legs."""

import io
import json
import re
from functools import cache
from itertools import combinations
from pathlib import Path
from typing import Any

import pdfplumber
import pytest
import shapely
import svgelements
from click.testing import CliRunner
from PIL import Image

from drafting.block.block import Block
from drafting.geometry.points import Point
from outputs.canvas.canvas import Recording, Role
from outputs.canvas.typeface import Typeface
from outputs.commands import main as command
from outputs.compare.comparison import compare
from outputs.compare.comparison_sheet import ComparisonSheet
from outputs.compare.leg_lines import LegLines, leg_lines
from outputs.compare.legs_drawing import LegsDrawing
from outputs.demo import AVERAGE, DEMO_FILES
from outputs.paper.paper import PAPERS
from outputs.reading.jeans_from_file import jeans_from
from outputs.reading.measurements_file import read_measurements
from outputs.reading.style_file import find_style, find_styles
from outputs.reading.style_options import StyleOptions
from styles.choice.catalogue import catalogue_names
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth
from styles.making.jeans_figures import jeans_figures
from tests.outputs.typed_files import PLAIN, UNEVEN

MM = 25.4 / 72
STYLES = ("bootcut", "shorts", "skinny", "wide")
NUMBER = r"[–\d.]+"


@cache
def drawn(wearer: Path, styles: tuple[str, ...], paper: str) -> tuple[bytes, list[Any]]:
    """Return the sheet as a PDF and the figures of every style."""
    read = read_measurements(wearer)
    made = [jeans_from(read, style, StyleOptions()) for style in find_styles(styles)]
    target = io.BytesIO()
    ComparisonSheet.of(compare(made), paper=PAPERS[paper], unit=read.unit).write_pdf(target)
    return target.getvalue(), [json.loads(json.dumps(jeans_figures(jeans))) for jeans in made]


@cache
def block_of(wearer: Path, style: str) -> Block:
    return block_for(read_measurements(wearer).measurements, find_style(style), Cloth())


@cache
def legs_of(wearer: Path) -> tuple[LegLines, ...]:
    return tuple(
        leg_lines(block_of(wearer, name), find_style(name), number)
        for number, name in enumerate(catalogue_names())
    )


def rows(page: Any) -> dict[str, list[str]]:
    """Return the cells of the table by the style's name."""
    found = {}
    for words in page.extract_text().splitlines():
        name, *cells = words.split(maxsplit=1)
        if name in STYLES and re.search(r" \d+ of \d+$", words):
            found[name] = re.findall(rf"{NUMBER} %|\d+ of \d+|none|yes|NO|{NUMBER}", cells[0])
    return found


def test_the_numbers_of_the_table_are_those_of_the_figures() -> None:
    """In cm to a tenth, as figures.json has them to a hundredth of a millimetre."""
    pdf, figures = drawn(AVERAGE, STYLES, "a4")
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        (page,) = document.pages
        table = rows(page)
    assert tuple(table) == STYLES
    for figure in figures:
        girths = figure["girths"]
        *lengths, needs, given, _ = table[figure["style"]]
        wanted = [
            girths["hip"]["ease"],
            girths["thigh"]["ease"],
            figure["front_rise"],
            girths["knee"]["pattern"] if "knee" in girths else None,
            girths["hem"]["pattern"],
            figure["hem_height"],
        ]
        read = [None if length == "–" else float(length) for length in lengths]
        assert read == [None if cm is None else pytest.approx(cm, abs=0.0501) for cm in wanted]
        assert (needs, given) == (("20 %", "NO") if figure["style"] == "skinny" else ("none", "yes"))


def test_a_thigh_that_is_not_known_is_a_dash() -> None:
    """Gülşah gave four measurements and no average to go by."""
    (gulsah,) = (path for path in DEMO_FILES if path.stem == "gulsah")
    pdf, _ = drawn(gulsah, ("bootcut", "wide"), "a4")
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        assert {name: cells[1] for name, cells in rows(document.pages[0]).items()} == {
            "bootcut": "–", "wide": "–"
        }  # fmt: skip


@pytest.mark.slow
@pytest.mark.parametrize("paper", ["a4", "letter", "either"])
def test_the_sheet_keeps_its_border_and_its_bar_and_scale_are_true(paper: str) -> None:
    """100 mm within 0.01; hip level over the floor, times the scale, is that of the block."""
    pdf, figures = drawn(AVERAGE, STYLES, paper)
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        (page,) = document.pages
        assert (page.width * MM, page.height * MM) == pytest.approx(
            (PAPERS[paper].width, PAPERS[paper].height), abs=0.01
        )
        text = page.extract_text()
        scale = float(re.search(r"drawn 1 : (\d+)", text)[1])
        level = [each for each in page.lines if abs(each["top"] - each["bottom"]) < 0.01]
        bar = max(level, key=lambda each: each["top"])
        assert (bar["x1"] - bar["x0"]) * MM == pytest.approx(100, abs=0.01)
        assert f"100 mm if printed at true size: {10 * scale:.1f} cm of the jeans" in text
        small = 2.3 / MM  # of the names of the levels
        words = {
            each["text"]: each for each in page.extract_words(extra_attrs=["size"]) if each["size"] < small
        }
        middles = [(words[name]["top"] + words[name]["bottom"]) / 2 for name in ("hip", "floor")]
        heights = [min((each["top"] for each in level), key=lambda y, m=m: abs(y - m)) for m in middles]
        hip = figures[0]["body"]["hip_height"]["value"] * 10
        assert (heights[1] - heights[0]) * MM * scale == pytest.approx(hip, abs=0.05)
        ink = [*page.chars, *page.lines, *page.curves, *page.rects]
        assert min(each["x0"] for each in ink) >= 10 / MM - 0.01
        assert max(each["x1"] for each in ink) <= page.width - 10 / MM + 0.01
        assert min(each["top"] for each in ink) >= 10 / MM
        assert max(each["bottom"] for each in ink) <= page.height - 10 / MM + 0.01


@pytest.mark.slow
@pytest.mark.parametrize("wearer", DEMO_FILES, ids=lambda path: path.stem)
def test_no_word_touches_a_line_or_another_word(wearer: Path) -> None:
    page = Recording(Typeface())
    drawing = LegsDrawing.fitting(page, legs_of(wearer), 140, 200)
    assert drawing.width <= 140 and drawing.height <= 200
    drawing.draw(page, Point(0, 200))
    lines = shapely.union_all([shapely.LineString(stroke.outline.flatten(0.1)) for stroke in page.strokes])
    assert {text.string for text in page.texts} >= {*catalogue_names(), "hip", "crotch", "knee", "floor"}
    assert [text.string for text in page.texts if text.box.distance(lines) < 0.2] == []
    assert not any(a.box.intersects(b.box) for a, b in combinations(page.texts, 2))


def test_lines_to_the_names_end_at_the_hems_and_cross_none_of_their_like() -> None:
    page = Recording(Typeface())
    LegsDrawing.fitting(page, legs_of(AVERAGE), 140, 200).draw(page, Point(0, 200))
    leaders = [shapely.LineString(s.outline.flatten()) for s in page.strokes if s.role is Role.RULER]
    assert len(leaders) == 2 * len(catalogue_names())
    assert not any(a.crosses(b) for a, b in combinations(leaders, 2))
    outlines = [
        shapely.LineString(s.outline.flatten()) for s in page.strokes if s.role.name.startswith("STYLE")
    ]
    assert all(
        min(shapely.Point(leader.coords[0]).distance(outline) for outline in outlines) < 0.01
        for leader in leaders
    )


@pytest.mark.parametrize("name", catalogue_names())
def test_the_drawn_legs_have_the_girths_of_the_block(name: str) -> None:
    """Front and back together, measured by shapely across the drawing where the leg is a tube."""
    block = block_of(AVERAGE, name)
    leg = legs_of(AVERAGE)[catalogue_names().index(name)]
    for height in (block.levels.hem.mm + 30, block.levels.hem.mm + 80):
        across = shapely.LineString([(-1000, height), (1000, height)])
        widths = [
            shapely.Polygon(panel.outline.flatten()).intersection(across).length
            for panel in (leg.front, leg.back)
        ]
        assert sum(widths) == pytest.approx(block.leg_girth(height), abs=0.1)


def test_the_right_leg_is_named_where_the_sides_differ(tmp_path: Path) -> None:
    told = []
    for text in (UNEVEN, PLAIN):
        (tmp_path / "ada.toml").write_text(text)
        read = read_measurements(tmp_path / "ada.toml")
        several = compare([jeans_from(read, find_style("slim"), StyleOptions())])
        sheet = ComparisonSheet.of(several, paper=PAPERS["a4"], unit=read.unit)
        told.append("right leg" in " ".join(text.string for text in sheet.page.texts))
    assert told == [True, False]


def test_the_picture_is_the_same_sheet_at_150_dots_an_inch_and_tells_its_numbers(tmp_path: Path) -> None:
    read = read_measurements(AVERAGE)
    several = compare([jeans_from(read, find_style(name), StyleOptions()) for name in ("slim", "wide")])
    sheet = ComparisonSheet.of(several, paper=PAPERS["a4"], unit=read.unit)
    for name in ("one.png", "two.png"):
        with (tmp_path / name).open("wb") as stream:
            sheet.write_png(stream)
    assert (tmp_path / "one.png").read_bytes() == (tmp_path / "two.png").read_bytes()
    with Image.open(tmp_path / "one.png") as picture:
        assert picture.size == (1240, 1753)
        assert "wide: ease at hip 4.0," in picture.text["Description"]
        grey = picture.convert("L")
        border = [grey.crop(box).getextrema()[0] for box in ((0, 0, 55, 1753), (0, 0, 1240, 55))]
        assert border == [255, 255] and grey.getextrema()[0] < 50


@pytest.mark.slow
@pytest.mark.parametrize("ending", ["png", "svg"])
def test_the_legs_of_all_styles_are_drawn_for_a_readme(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, ending: str
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "ada.toml").write_text(PLAIN)
    words = ["styles", "--picture", f"legs.{ending}", "--on", "ada.toml"]
    result = CliRunner().invoke(command.main, words)
    assert (result.exit_code, result.output) == (0, f"legs.{ending}\n")
    first = Path(f"legs.{ending}").read_bytes()
    assert CliRunner().invoke(command.main, words).exit_code == 2
    assert CliRunner().invoke(command.main, [*words, "--force"]).exit_code == 0
    assert Path(f"legs.{ending}").read_bytes() == first
    if ending == "svg":
        drawing = svgelements.SVG.parse(io.BytesIO(first), ppi=25.4)
        texts = [each.text for each in drawing.elements() if isinstance(each, svgelements.Text)]
        assert all(texts.count(name) == 2 for name in catalogue_names())
        assert "Styles of jeans on Ada Example" in texts
