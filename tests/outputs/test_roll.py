"""Paper from a roll: as wide as the roll, as long as needed, and never longer than a reader shows."""

import io
from dataclasses import replace

import numpy as np
import pdfplumber
import pypdfium2
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely.affinity import translate

from drafting.pieces.pattern import Pattern
from outputs.canvas.typeface import Typeface
from outputs.packing.layout import EDGE, GAP, standing
from outputs.paper.paper import Roll
from outputs.paper.printer_scale import PrinterScale
from outputs.print.pdf import write_page, write_sheets
from outputs.print.roll import laid_on_roll
from outputs.print.single_page import SinglePage
from outputs.sheets.tiling import Tiling
from tests.outputs import samples
from tests.outputs.reassembly import MM, assembled, tiles_among
from tests.strategies import examples

TRUE = PrinterScale()
LONGEST = 14_400
"""Points: the longest side of a page that every reader shows (ISO 32000-1, annex C)."""


def many() -> Pattern:
    """Return a pattern that takes more than 5 m of a narrow roll."""
    pattern = samples.pattern()
    pieces = tuple(replace(p, kind=f"{p.kind} {i}") for i in range(4) for p in pattern.pieces)
    return replace(pattern, pieces=pieces)


def written(pattern: Pattern, width: float) -> tuple[SinglePage | Tiling, io.BytesIO]:
    laid = laid_on_roll(pattern, Roll("roll", width), TRUE, Typeface())
    target = io.BytesIO()
    if isinstance(laid, SinglePage):
        write_page(pattern, laid, target)
    else:
        write_sheets(pattern, laid, target)
    return laid, target


@pytest.mark.slow
@pytest.mark.parametrize("width", [600.0, 609.6, 841.0, 914.4, 1118.0])
def test_one_page_is_exactly_as_wide_as_the_roll_and_holds_every_piece(width: float):
    laid, target = written(samples.pattern(), width)
    assert isinstance(laid, SinglePage)
    (page,) = pypdfium2.PdfDocument(target.getvalue())
    assert page.get_width() * MM == pytest.approx(width, abs=0.001)
    assert page.get_height() <= LONGEST
    with pdfplumber.open(target) as pdf:
        heavy = [c for c in pdf.pages[0].curves if abs(c["linewidth"] * MM - 0.5) < 0.01 and not c["dash"][0]]
        assert all(c["x0"] * MM >= 10 and c["x1"] * MM <= width - 10 for c in heavy)
        heights = sorted((c["height"] * MM for c in heavy), reverse=True)
    legs = sorted((p.height for p in standing(samples.pattern())), reverse=True)[:2]
    assert heights[:2] == pytest.approx(legs, abs=0.01)


@pytest.mark.slow
@pytest.mark.parametrize(
    ("pattern", "width"), [(samples.pattern(), 300.0), (many(), 420.0)], ids=["too narrow", "too long"]
)
def test_what_does_not_fit_on_one_page_is_joined_from_several(pattern: Pattern, width: float):
    laid, target = written(pattern, width)
    assert isinstance(laid, Tiling)
    pages = pdfplumber.open(target).pages
    assert len(pages) > 1
    assert all(float(page.width) * MM == pytest.approx(width, abs=0.001) for page in pages)
    assert all(float(page.height) <= LONGEST for page in pages)
    taped = assembled(tiles_among(pages), "cut")
    true = shapely.union_all([shape.exterior for shape in laid.layout.shapes])
    way = np.array(true.bounds[:2]) - np.array(taped.bounds[:2])
    assert translate(taped, *way).difference(true.buffer(0.1)).length < 0.01
    folds = true.difference(translate(taped, *way).buffer(0.1)).length  # 160 mm a pocket bag, no cut line
    bags = sum(piece.name.startswith("pocket bag") for piece in pattern.pieces)
    assert folds == pytest.approx(160 * bags, abs=0.5 * bags)


@given(st.floats(275, 2300))
@examples(8)
def test_on_a_roll_of_any_width_pieces_lie_apart_and_inside(width: float):
    laid = laid_on_roll(samples.pattern(), Roll("roll", width), TRUE, Typeface())
    layout = laid.layout
    for index, shape in enumerate(layout.shapes):
        left, bottom, right, top = shape.bounds
        assert min(left, bottom) >= EDGE - 1e-6
        assert right <= layout.width - EDGE + 1e-6 and top <= layout.height - EDGE + 1e-6
        assert all(shape.distance(other) >= GAP - 1e-6 for other in layout.shapes[:index])
