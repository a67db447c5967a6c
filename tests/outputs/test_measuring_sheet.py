"""The measuring sheet, read back by readers that know nothing of how it was drawn."""

import io
import re
from collections.abc import Iterator
from functools import cache
from itertools import combinations
from pathlib import Path
from typing import Any

import numpy as np
import pdfplumber
import pypdfium2
import pytest
import shapely
from click.testing import CliRunner
from shapely.geometry import LineString

from drafting.base.units import Unit
from drafting.body.measurement_table import MEASUREMENTS, Need, Sides
from outputs.canvas.canvas import Polyline, Recording, Role, Stroke
from outputs.canvas.typeface import Typeface
from outputs.commands.main import main
from outputs.commands.measuring import MEASURING_SHEETS
from outputs.measuring.measuring_sheet import draw_sheets, write_measuring_sheet
from outputs.measuring.measuring_table import BOX_HEIGHT, BOX_WIDTH
from outputs.measuring.tape_marks import NUMBERS
from outputs.paper.paper import MARGIN, PAPERS
from outputs.words.print_report import PrintReport
from tests.outputs.reassembly import MM

NAME = "Ayşe Żółkiewska-Παπαδοπούλου"


@cache
def sheet(paper: str, wearer: str = NAME, unit: Unit = Unit.CM) -> bytes:
    target = io.BytesIO()
    assert write_measuring_sheet(target, wearer=wearer, paper=PAPERS[paper], unit=unit) == PrintReport(2)
    return target.getvalue()


@cache
def recordings(paper: str) -> tuple[Recording, Recording]:
    return draw_sheets(Typeface(), wearer=NAME, paper=PAPERS[paper], unit=Unit.INCH)


@cache
def pages(paper: str, unit: Unit = Unit.CM) -> list[Any]:
    return list(pdfplumber.open(io.BytesIO(sheet(paper, unit=unit))).pages)


def is_ring(stroke: Stroke) -> bool:
    outline = stroke.outline
    return isinstance(outline, Polyline) and outline.closed and stroke.role is Role.DIMENSION


@cache
def words(paper: str) -> list[str]:
    """Return the text of both pages, all white space as one space."""
    return [" ".join(page.extract_text().split()) for page in pages(paper)]


def how_column(paper: str, unit: Unit = Unit.CM) -> Iterator[str]:
    """Yield the column of either page alone: its lines are broken, and others stand beside them."""
    for page in pages(paper, unit):
        column = page.crop((66 / MM, 0, page.width - (MARGIN + 3 * BOX_WIDTH + 1) / MM, page.height))
        yield " ".join(column.extract_text().split())


@pytest.mark.slow
@pytest.mark.parametrize("paper", MEASURING_SHEETS)
def test_every_measurement_stands_on_the_sheet_by_its_name(paper: str) -> None:
    first, second = words(paper)
    for spec in MEASUREMENTS.values():
        assert spec.term in (second if spec.need is Need.HELPS else first)


@pytest.mark.slow
@pytest.mark.parametrize("paper", MEASURING_SHEETS)
def test_how_to_take_each_measurement_is_the_text_of_the_table(paper: str) -> None:
    whole = " ".join(how_column(paper))
    for spec in MEASUREMENTS.values():
        if spec.sides is not Sides.EACH:
            assert spec.how in whole
    each = next(spec for spec in MEASUREMENTS.values() if spec.sides is Sides.EACH)
    assert each.how[1:] in words(paper)[1]


@pytest.mark.slow
@pytest.mark.parametrize(("unit", "waist"), [(Unit.CM, "55–150"), (Unit.INCH, "21–60")])
def test_what_is_usual_stands_beside_each_measurement_in_whole_units(unit: Unit, waist: str) -> None:
    usual = re.findall(rf"Usual: (\d+–\d+) {unit.value}", " ".join(how_column("letter", unit)))
    assert len(usual) == sum(spec.sides is not Sides.EACH for spec in MEASUREMENTS.values())
    # the waist is the first: 550 to 1500 mm, outwards to whole units
    assert usual[0] == waist


@pytest.mark.slow
@pytest.mark.parametrize("paper", MEASURING_SHEETS)
def test_each_measurement_has_three_boxes_and_sides_that_differ_three_each(paper: str) -> None:
    counts = [
        sum(
            (one["width"] * MM, one["height"] * MM) == pytest.approx((BOX_WIDTH, BOX_HEIGHT), abs=0.05)
            for one in page.rects
        )
        for page in pages(paper)
    ]
    whole = [spec for spec in MEASUREMENTS.values() if spec.sides is not Sides.EACH]
    first = sum(spec.need is not Need.HELPS for spec in whole)
    sided = sum(spec.sides is not Sides.BODY for spec in MEASUREMENTS.values())
    assert counts == [3 * first, 3 * (len(whole) - first) + 6 * sided]


@pytest.mark.parametrize("paper", MEASURING_SHEETS)
def test_the_bar_of_each_page_is_exactly_100_mm_between_its_ticks(paper: str) -> None:
    for page in pages(paper):
        hair = [one for one in page.lines if abs(one["linewidth"] * MM - 0.15) < 0.01]
        (bar,) = (one for one in hair if one["width"] * MM > 10)
        ticks = [one["x0"] for one in hair if one["width"] < 0.01]
        assert bar["width"] * MM == pytest.approx(100, abs=0.01)
        assert (max(ticks) - min(ticks)) * MM == pytest.approx(100, abs=0.01)


@pytest.mark.parametrize("paper", MEASURING_SHEETS)
@pytest.mark.parametrize("wearer", [NAME, "", "W" * 80])
def test_no_ink_lies_within_10_mm_of_an_edge(paper: str, wearer: str) -> None:
    dots = 5
    for page in pypdfium2.PdfDocument(sheet(paper, wearer)):
        grey = np.asarray(page.render(scale=dots * MM * (1 - 1e-6), grayscale=True).to_pil())
        border = int(MARGIN * dots)
        inner = grey[border:-border, border:-border]
        assert inner.min() < 60
        assert (grey < 250).sum() == (inner < 250).sum()


@pytest.mark.parametrize("paper", MEASURING_SHEETS)
def test_no_text_touches_a_line_of_the_drawing_or_another_text(paper: str) -> None:
    for page in recordings(paper):
        boxes = [text.box for text in page.texts]
        for one, other in combinations(boxes, 2):
            assert not one.intersects(other)
        # A number stands in its ring, a name on its line.
        lines = [s for s in page.strokes if not is_ring(s)]
        strokes = [LineString(s.outline.flatten(0.1)) for s in lines]
        tree = shapely.STRtree(strokes)
        for text in page.texts:
            crossed = tree.query(text.box, predicate="intersects")
            assert len(crossed) == 0 or text.string == NAME, text.string


@pytest.mark.parametrize("paper", MEASURING_SHEETS)
def test_every_number_is_drawn_on_a_figure_and_stands_in_the_table(paper: str) -> None:
    first, second = recordings(paper)
    seen = {text.string for text in first.texts if text.string.isdigit()}
    assert seen == {str(number) for number in NUMBERS.values()}
    tabled = [text.string for page in (first, second) for text in page.texts if text.string.isdigit()]
    assert all(tabled.count(str(number)) >= 2 for number in NUMBERS.values())


def test_what_is_needed_is_ringed_on_the_figures_and_in_the_table() -> None:
    first, _ = recordings("a4")
    rings = [s for s in first.strokes if is_ring(s)]
    needed = [spec for spec in MEASUREMENTS.values() if spec.need in (Need.NEEDED, Need.ONE_OF)]
    assert len(rings) == 2 * len(needed)


def test_a_helper_or_a_mirror_is_named_where_one_is_needed() -> None:
    text = " ".join(words("a4"))
    helped = sum(spec.helper for spec in MEASUREMENTS.values())
    again = sum(spec.helper for spec in MEASUREMENTS.values() if spec.sides is Sides.EITHER)
    assert text.count("with a helper") == helped + again
    assert text.count("with a mirror") == sum(s.mirror and not s.helper for s in MEASUREMENTS.values())


@pytest.mark.parametrize("unit", Unit)
def test_the_unit_stands_over_the_boxes(unit: Unit) -> None:
    for page in draw_sheets(Typeface(), wearer="", paper=PAPERS["a4"], unit=unit):
        assert f"1st, {unit.value}" in [text.string for text in page.texts]


def test_the_same_words_give_the_same_bytes() -> None:
    again = io.BytesIO()
    write_measuring_sheet(again, wearer=NAME, paper=PAPERS["a4"], unit=Unit.CM)
    assert again.getvalue() == sheet("a4")


def test_the_command_names_the_file_after_the_wearer_and_replaces_none_unasked(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)

    def run(*typed: str):
        return CliRunner().invoke(main, ["measuring-sheet", *typed])

    assert run().stdout == "measuring-sheet.pdf: 2 pages\n"
    assert run("Ada Field", "--paper", "letter").stdout == "ada-field-measuring-sheet.pdf: 2 pages\n"
    Path("measuring-sheet.pdf").write_text("mine")
    refused = run()
    assert refused.exit_code == 2 and "already exists" in refused.stderr
    assert Path("measuring-sheet.pdf").read_text() == "mine"
    assert run("--force").exit_code == 0
    assert Path("measuring-sheet.pdf").read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize("name", ["", "  ", "two\nlines", "x" * 81])
def test_a_name_that_cannot_be_printed_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    monkeypatch.chdir(tmp_path)
    result = CliRunner().invoke(main, ["measuring-sheet", name])
    assert result.exit_code == 2 and result.stderr.startswith("wearer = ")
    assert not list(tmp_path.iterdir())


def test_letters_that_the_font_lacks_are_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert "not in the font" in CliRunner().invoke(main, ["measuring-sheet", "愛"]).stdout
