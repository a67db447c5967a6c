"""A printer that is not true: what its bars tell, and files corrected for it."""

import io
from functools import cache

import numpy as np
import pdfplumber
import pypdfium2
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely.affinity import scale as stretched
from shapely.affinity import translate

from drafting.base.errors import DraftRefused
from outputs.canvas.typeface import Typeface
from outputs.paper.paper import A4, PAPERS, Orientation, Paper, Roll
from outputs.paper.printer_scale import PrinterScale, advice, read_printer_scale
from outputs.print.pdf import write_page, write_sheets, write_sheets_with_notes
from outputs.print.roll import laid_on_roll
from outputs.print.single_page import SinglePage, single_page
from outputs.sheets.tiling import tiled
from tests.outputs import samples
from tests.outputs.reassembly import MM, assembled, bars, tiles_among

UNEVEN = PrinterScale(0.97, 0.98)


# Plain divisions: 97/100, 98.5/100, and 3.92 in of 4.
@pytest.mark.parametrize(
    ("typed", "scale"),
    [
        ([], (1, 1)),
        (["97 mm"], (0.97, 0.97)),
        (["97"], (0.97, 0.97)),
        (["9,85 cm", "98 1/2 mm"], (0.985, 0.985)),
        (["97 mm", "98 mm"], (0.97, 0.98)),
        (["3.92 in"], (0.98, 0.98)),
    ],
)
def test_a_reading_is_of_the_100_mm_bar_or_in_inches_of_the_4_in_bar(typed, scale):
    found = read_printer_scale(typed)
    assert (found.across, found.up) == pytest.approx(scale)


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        (["80 mm"], "a setting of the print window is"),
        (["106 mm"], "a setting of the print window is"),
        (["97 cm"], "a setting of the print window is"),
        (["long"], "cannot be read"),
        (["-97 mm"], "cannot be negative"),
        (["94 mm", "98 mm"], "measure both again"),
        (["97", "97", "97"], "first across, then up"),
    ],
)
def test_a_reading_that_cannot_be_meant_is_refused(typed, told):
    with pytest.raises(DraftRefused, match=told) as refusal:
        read_printer_scale(typed)
    assert all(problem.key == "--printed-bar" for problem in refusal.value.problems)


def test_all_wrong_readings_are_told_at_once():
    with pytest.raises(DraftRefused) as refusal:
        read_printer_scale(["80 mm", "x"])
    assert [problem.value for problem in refusal.value.problems] == ["80 mm", "x"]


@given(st.floats(90, 105))
def test_what_a_print_window_is_set_to_undoes_what_the_printer_does(across):
    scale = read_printer_scale([f"{across:.1f} mm"])
    said = " ".join(advice(scale))
    if scale.passes:
        assert "Change nothing" in said
    else:
        percent = float(said.partition("in the print window to ")[2].partition(" %")[0])
        assert percent / 100 * scale.across == pytest.approx(1, abs=0.0006)


def test_a_print_window_cannot_mend_what_differs_across_and_up():
    said = " ".join(advice(UNEVEN))
    assert "set the scale" not in said and '--printed-bar "97 mm" --printed-bar "98 mm"' in said


@cache
def corrected(paper: Paper) -> bytes:
    target = io.BytesIO()
    tiling = tiled(samples.pattern(), paper, Orientation.PORTRAIT)
    write_sheets_with_notes(samples.pattern(), tiling, target)
    return target.getvalue()


@cache
def pages():
    return pdfplumber.open(io.BytesIO(corrected(A4.corrected(UNEVEN)))).pages


@pytest.mark.slow
def test_in_a_corrected_file_every_bar_is_longer_by_what_the_printer_takes():
    wide, high = 1 / 0.97, 1 / 0.98
    for page, length in [(pages()[0], 100), (pages()[2], 50), (pages()[-1], 50)]:
        found = bars(page)
        assert any(bar == pytest.approx(length * wide, abs=0.01) for bar in found)
        assert any(bar == pytest.approx(-length * high, abs=0.01) for bar in found)


@pytest.mark.slow
def test_a_bar_of_a_printer_at_97_percent_is_103_093_mm_in_the_file():
    page = pdfplumber.open(io.BytesIO(corrected(A4.corrected(PrinterScale(0.97, 0.97))))).pages[0]
    assert sorted(bars(page))[1:3] == pytest.approx([-103.093, 103.093], abs=0.01)  # 100 x 100 / 97


# A sheet in landscape is printed upright: what the printer does up the sheet goes across the page.
@pytest.mark.slow
@pytest.mark.parametrize(
    ("way", "across", "up"), [(Orientation.PORTRAIT, 0.97, 0.98), (Orientation.LANDSCAPE, 0.98, 0.97)]
)
def test_a_corrected_print_taped_together_gives_the_true_outline(way, across, up):
    tiling, target = tiled(samples.pattern(), A4.corrected(UNEVEN), way), io.BytesIO()
    write_sheets(samples.pattern(), tiling, target)
    taped = assembled(tiles_among(pdfplumber.open(target).pages), "cut")
    printed = stretched(taped, across, up, origin=(0, 0))
    true = shapely.union_all([shape.exterior for shape in tiling.layout.shapes])
    way = np.array(true.bounds[:2]) - np.array(printed.bounds[:2])
    # the fold of the pocket bag, 160 mm, is drawn as a fold and is no cut line
    fold = true.difference(translate(printed, *way).buffer(0.1))
    assert fold.length == pytest.approx(160, abs=0.5)
    assert translate(printed, *way).difference(true.buffer(0.1)).length < 0.01


@pytest.mark.slow
def test_every_sheet_of_a_corrected_file_says_so():
    for page in pages():
        words = page.extract_text() + "".join(c["text"] for c in page.chars if not c["upright"])
        assert "corrected for a printer that prints 97 % across and 98 % up" in words


def test_a_true_file_says_nothing_of_corrections():
    pages = pypdfium2.PdfDocument(corrected(A4))
    said = [pages[index].get_textpage().get_text_bounded() for index in (0, 1, len(pages) - 1)]
    assert all(said) and not any("corrected" in words for words in said)


@pytest.mark.slow
@pytest.mark.parametrize(
    "scale", [PrinterScale(0.9, 0.9), PrinterScale(1.05, 1.05), PrinterScale(1.02, 1.04)]
)
@pytest.mark.parametrize("name", ["a4", "letter"])
def test_a_corrected_print_keeps_9_mm_off_the_real_edge_wherever_the_printer_puts_it(name, scale):
    paper = PAPERS[name]
    target = io.BytesIO()
    write_sheets(samples.pattern(), tiled(samples.pattern(), paper.corrected(scale)), target)
    dots = 3
    size = np.array([paper.width, paper.height])
    spare = size * (1 - np.array([scale.across, scale.up]))
    for page in list(pypdfium2.PdfDocument(target.getvalue()))[:6]:
        fed = np.asarray(page.render(scale=dots * MM, grayscale=True).to_pil())
        dark = np.argwhere((fed.T if fed.shape[1] > fed.shape[0] else fed) < 200)  # paper is fed upright
        lowest, highest = dark.min(axis=0)[::-1] / dots, dark.max(axis=0)[::-1] / dots
        first, last = lowest * [scale.across, scale.up], highest * [scale.across, scale.up]
        for share in (0.0, 0.5, 1.0):  # laid at one corner, in the middle, at the other corner
            assert (first + share * spare > 9.0).all()
            assert (last + share * spare < size - 9.0).all()


@pytest.mark.slow
def test_a_single_page_and_a_roll_are_corrected_too():
    pattern, roll = samples.pattern(), Roll("roll 36 in", 914.4)
    laid = [single_page(pattern, Typeface(), UNEVEN), laid_on_roll(pattern, roll, UNEVEN, Typeface())]
    for page in laid:
        assert isinstance(page, SinglePage)
        target = io.BytesIO()
        write_page(pattern, page, target)
        (read,) = pdfplumber.open(target).pages
        expected = [-101.6 / 0.98, -100 / 0.98, 100 / 0.97, 101.6 / 0.97]
        assert sorted(bars(read)) == pytest.approx(expected, abs=0.01)
        assert "Corrected for a printer that prints 97 % across" in read.extract_text()
    assert float(read.width) * MM == pytest.approx(914.4, abs=0.001)
