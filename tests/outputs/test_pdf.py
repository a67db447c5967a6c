"""The printed page is true: every file is read back by readers that know nothing of how it was written."""

import io
import re
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from itertools import pairwise

import numpy as np
import pdfplumber
import pypdfium2
import pytest
import shapely
from pdfplumber.page import Page
from shapely.geometry import LineString

from drafting.base.units import Unit, format_length
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Cutting, Edge, Piece
from outputs.canvas.canvas import LINE_STYLES, Recording, Role, line
from outputs.canvas.pdf_canvas import PdfCanvas
from outputs.canvas.typeface import Typeface
from outputs.packing.layout import standing
from outputs.paper.paper import A4, LETTER, PAPERS, Orientation, Paper
from outputs.paper.printer_scale import LEAST, MOST, PrinterScale
from outputs.print.cover_sheet import draw_cover
from outputs.print.notes_sheet import draw_notes
from outputs.print.pdf import (
    PageTooLarge,
    write_sheets,
    write_sheets_with_notes,
    write_single_page_pdf,
    write_tiled_pdf,
)
from outputs.print.piece_drawing import draw_layout
from outputs.sheets.scale_bars import passes, usual_causes
from outputs.sheets.sheet_map import BARE, RINGED
from outputs.sheets.tiling import Tiling, tiled
from tests.outputs import samples
from tests.outputs.reassembly import HOME, MM, Sheet, assembled, bars, flat, places, tiles_among

NAMES = ["Żaneta Łęcka", "Iğdır Şükrü", "Ελένη Παπαδοπούλου", "Наталья Щукина", "Zoë Müller"]
DOTS = 5
"""Pixels to the millimetre of every raster, so that A4 and the borders fall on whole pixels."""


LARGE = {name: paper for name, paper in PAPERS.items() if paper.is_large}
CORRECTED = PAPERS["a4"].corrected(PrinterScale(0.97, 0.98))
"""A4 of a printer that prints 97 % across and 98 % up."""
ANY = {
    **PAPERS,
    "a4 landscape": A4.turned,
    "letter landscape": LETTER.turned,
    "corrected": CORRECTED,
    "corrected landscape": CORRECTED.turned,
}
"""Everything that a pattern is tiled on."""
TAPED = {name: paper for name, paper in ANY.items() if "corrected" not in name}


@cache
def source(paper: Paper) -> Pattern:
    """Return what is printed: for a large sheet, pieces enough to need several."""
    pattern = samples.pattern()
    if not paper.is_large:
        return pattern
    again = tuple(replace(piece, kind=f"second {piece.kind}") for piece in pattern.pieces)
    return replace(pattern, pieces=pattern.pieces + again)


@cache
def tiling_of(paper: Paper) -> Tiling:
    """Return the sheets, lying as the paper does."""
    way = Orientation.LANDSCAPE if paper.landscape else Orientation.PORTRAIT
    return tiled(source(paper), paper.upright, way)


@cache
def tiled_pdf(paper: Paper) -> bytes:
    target = io.BytesIO()
    write = write_sheets if paper.is_large else write_sheets_with_notes
    write(source(paper), tiling_of(paper), target)
    return target.getvalue()


@cache
def pages_of(paper: Paper) -> list[Page]:
    """Return the pages as read back; reading takes longer than writing, and is done once."""
    return pdfplumber.open(io.BytesIO(tiled_pdf(paper))).pages


@cache
def single_page_pdf() -> bytes:
    target = io.BytesIO()
    write_single_page_pdf(samples.pattern(), target)
    return target.getvalue()


@cache
def tiles_of(paper: Paper) -> list[Sheet]:
    return tiles_among(pages_of(paper))


@cache
def raster(data: bytes) -> list[np.ndarray]:
    """Return all pages as arrays of grey, 0 black to 255 white."""
    pages = pypdfium2.PdfDocument(data)
    scale = DOTS * MM * (1 - 1e-6)  # a page that is a hair too high would gain a row of pixels
    return [np.asarray(page.render(scale=scale, grayscale=True).to_pil()) for page in pages]


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_an_independent_reader_finds_the_50_mm_square_on_sheet_1(paper: Paper):
    squares = [(r["width"] * MM, r["height"] * MM) for r in pages_of(paper)[0].rects]
    assert any(size == pytest.approx((50, 50), abs=0.01) for size in squares)


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_sheet_1_has_a_100_mm_and_a_4_in_bar_in_both_directions(paper: Paper):
    assert sorted(bars(pages_of(paper)[0])) == pytest.approx([-101.6, -100, 100, 101.6], abs=0.01)


@pytest.mark.slow
@pytest.mark.parametrize("paper", [A4, LETTER, LETTER.turned])
def test_every_tile_has_a_50_mm_bar_in_both_directions(paper: Paper):
    for page in pages_of(paper)[2:]:
        assert sorted(bars(page)) == pytest.approx([-50, 50], abs=0.01)


def test_a_line_of_100_mm_is_283_465_points_long():
    target = io.BytesIO()
    canvas = PdfCanvas(target, Typeface(), title="line")
    with canvas.page(210, 297):
        canvas.stroke(line((20, 20), (120, 20)), Role.CUT)
    canvas.save()
    with pdfplumber.open(target) as pdf:
        assert pdf.pages[0].lines[0]["width"] == pytest.approx(283.465, abs=0.001)


@pytest.mark.slow
@pytest.mark.parametrize("name", ANY)
def test_pages_are_exactly_as_large_as_the_paper_and_what_is_read_first_stands_upright(name: str):
    true = PAPERS.get(name) or (LETTER if "letter" in name else A4)
    for number, page in enumerate(pypdfium2.PdfDocument(tiled_pdf(ANY[name]))):
        paper = true.turned if "landscape" in name and number >= 2 else true
        assert page.get_mediabox() == pytest.approx((0, 0, paper.width / MM, paper.height / MM), abs=1e-3)
        assert page.get_cropbox() == page.get_mediabox()


@pytest.mark.slow
@pytest.mark.parametrize("paper", TAPED.values(), ids=TAPED)
@pytest.mark.parametrize("kind", ["cut", "sew"])
def test_tiles_taped_together_give_the_source_outline_within_a_tenth_of_a_millimetre(paper: Paper, kind: str):
    taped = assembled(tiles_of(paper), kind)
    assert len(tiles_of(paper)) > 1
    drawing = Recording(Typeface())
    draw_layout(drawing, tiling_of(paper).layout, source(paper))
    role = Role.CUT if kind == "cut" else Role.SEW
    drawn = shapely.union_all([LineString(s.outline.flatten()) for s in drawing.strokes if s.role is role])
    way = np.array(drawn.bounds[:2]) - np.array(taped.bounds[:2])
    taped = shapely.affinity.translate(taped, *way)
    assert shapely.hausdorff_distance(taped, drawn) < 0.1
    assert taped.length == pytest.approx(drawn.length, rel=1e-4)


@pytest.mark.slow
@pytest.mark.parametrize("paper", [A4, LETTER])
def test_the_check_length_that_sheet_1_tells_is_that_of_the_grain_line_on_the_tiles(paper: Paper):
    said = re.findall(r"leg: (\d+) mm ± ", pages_of(paper)[0].extract_text())
    dash = list(LINE_STYLES[Role.GRAIN].dash)
    grains = [
        one["height"] * MM for page in pages_of(paper)[2:] for one in page.lines if one["dash"][0] == dash
    ]
    assert said == ["900", "900"]  # the front's, then the back's
    assert max(grains) == pytest.approx(900, abs=0.01)


@pytest.mark.slow
@pytest.mark.parametrize("paper", LARGE.values(), ids=LARGE)
def test_a_large_sheet_has_100_mm_bars_in_both_directions_and_says_so(paper: Paper):
    for sheet, page in enumerate(pages_of(paper), start=1):
        assert sorted(bars(page)) == pytest.approx([-100, 100], abs=0.01)
        assert f"100 mm {tiling_of(paper).tiles[sheet - 1].name} sheet {sheet} of" in page.extract_text()


@pytest.mark.slow
@pytest.mark.parametrize("paper", [A4, LETTER, A4.turned])
def test_crosses_meet_those_of_the_neighbour(paper: Paper):
    tiles = tiles_of(paper)
    where = places(tiles)
    centres = {}
    for sheet, page in zip(tiles, pages_of(paper)[2:], strict=True):
        fine = [one for one in page.lines if abs(one["linewidth"] * MM - 0.18) < 0.005]
        across = [(one["x0"], one["x1"], one["y0"]) for one in fine if one["width"] > one["height"]]
        up = [(one["x0"], one["y0"], one["y1"]) for one in fine if one["height"] > one["width"]]
        crossings = {
            (
                round(x * MM + where[sheet.row, sheet.column][0], 2),
                round(y * MM + where[sheet.row, sheet.column][1], 2),
            )
            for x0, x1, y in across
            for x, y0, y1 in up
            if x0 <= x <= x1 and y0 <= y <= y1
        }
        centres[sheet.row, sheet.column] = np.array(sorted(crossings))
    rows = sorted({sheet.row for sheet in tiles})
    grid = {(rows.index(sheet.row), sheet.column): sheet for sheet in tiles}
    beside = [(grid[r, c], grid[r, c + 1]) for r, c in grid if (r, c + 1) in grid]
    below = [(grid[r, c], grid[r + 1, c]) for r, c in grid if (r + 1, c) in grid]
    assert beside and below
    for a, b in [*beside, *below]:
        one, other = centres[a.row, a.column], centres[b.row, b.column]
        gaps = np.linalg.norm(one[:, None] - other[None], axis=2).min(axis=1)
        assert (gaps < 0.03).sum() == 3


@pytest.mark.slow
@pytest.mark.parametrize("paper", [A4, A4.turned], ids=["portrait", "landscape"])
def test_a_raster_of_the_tiles_stitched_together_shows_no_gap(paper: Paper):
    tiling = tiling_of(paper)
    form = tiling.format
    tiles = tiles_of(paper)
    where = places(tiles)
    origin = np.min(list(where.values()), axis=0)
    width, height = tiling.columns * form.width, tiling.rows * form.height
    stitched = np.full((round(height * DOTS), round(width * DOTS)), 255, np.uint8)
    for sheet, page in zip(tiles, raster(tiled_pdf(paper))[2:], strict=True):
        rows = slice(round((paper.height - form.top) * DOTS), round((paper.height - form.bottom) * DOTS))
        seen = page[rows, round(form.left * DOTS) : round(form.right * DOTS)]
        right, up = where[sheet.row, sheet.column] - origin
        top, left = round((height - up - form.height) * DOTS), round(right * DOTS)
        stitched[top : top + seen.shape[0], left : left + seen.shape[1]] = seen

    target = io.BytesIO()
    canvas = PdfCanvas(target, Typeface(), title="whole")
    drawing = Recording(canvas)
    draw_layout(drawing, tiling.layout, samples.pattern(), joins=tiling.joins())
    with canvas.page(width, height):
        for stroke in drawing.strokes:  # letters are moved to whole pixels, lines are not
            canvas.stroke(stroke.outline, stroke.role)
    canvas.save()
    (whole,) = raster(target.getvalue())
    dark = whole[: stitched.shape[0], : stitched.shape[1]] < 128
    assert dark.sum() > 20_000
    assert not (dark & (stitched >= 160)).any()


@pytest.mark.slow
@pytest.mark.parametrize("paper", ANY.values(), ids=ANY)
def test_there_is_no_ink_in_the_outer_10_mm_of_any_sheet(paper: Paper):
    border = 10 * DOTS
    for page in raster(tiled_pdf(paper)):
        inner = np.zeros(page.shape, bool)
        inner[border:-border, border:-border] = True
        assert page[inner].min() < 128
        assert page[~inner].min() > 230  # the edge of a letter may touch a dot by a hundredth of a millimetre


def test_sheet_1_and_the_notes_carry_no_pattern():
    for page in pages_of(A4)[:2]:
        drawn = [*page.curves, *page.lines, *page.rects]
        assert max(max(one["width"], one["height"]) for one in drawn) * MM < 200
        assert not re.search(r"row [A-Z]+, column", page.extract_text())


@pytest.mark.slow
@pytest.mark.parametrize("paper", HOME.values(), ids=HOME)
def test_sheet_1_says_how_to_print_and_tape(paper: Paper):
    cover = pages_of(paper)[0]
    beside_map = cover.crop((cover.width / 2, 0, cover.width, cover.height))
    text = " ".join(f"{cover.extract_text()} {beside_map.extract_text()}".split())
    count = len(pages_of(paper))
    for wanted in (
        "Ada Example (invented)",
        "straight leg",
        "measured 2025-03-01",
        f"sheet 1 of {count}",
        paper.label,
        "actual size",
        "must read 99.5",
        "97 97.0% 97.0 cm",
        "1. front leg: 900 mm ± 4 mm",
        "Denim: 1 front leg ×2, 2 back leg ×2, 4 belt loop ×5. Pocketing: 3 pocket bag ×1.",
    ):
        assert wanted in text


def test_every_piece_has_its_number_on_the_map_or_below_it():
    strips = tuple(replace(samples.loop(), kind=f"strip {number}") for number in range(3))
    pattern = replace(samples.pattern(), pieces=samples.pattern().pieces + strips)
    cover = Recording(Typeface())
    draw_cover(cover, A4, tiled(pattern, A4), pattern, first=3, sheets=9)
    sizes = {*RINGED, *BARE}
    drawn = [int(t.string) for t in cover.texts if t.bold and t.size in sizes and t.string.isdigit()]
    (left_out,) = [t.string for t in cover.texts if t.string.startswith("Too small here")]
    told: list[int] = []
    for first, last in re.findall(r"(\d+)(?:–(\d+))?", left_out):
        told += range(int(first), int(last or first) + 1)
    assert drawn and told and sorted(drawn + told) == list(range(1, 8))


def test_the_notes_say_what_the_drafting_found_and_warn_before_cutting():
    left = pages_of(A4)[1].crop((0, 0, 105 / MM, pages_of(A4)[1].height)).extract_text()
    said = " ".join(left.split())
    assert "Warning, crotch seam: The crotch seam is 64.2 cm, 0.6 cm shorter" in said
    assert "Sew a toile from cheap cloth first" in said and "Wash and iron the cloth before" in said


def test_what_the_drafting_found_is_told_in_the_wearers_unit():
    target = io.BytesIO()
    write_tiled_pdf(samples.pattern(), target, paper=A4, show=lambda mm: format_length(mm, Unit.INCH))
    with pdfplumber.open(target) as pdf:
        left = pdf.pages[1].crop((0, 0, 105 / MM, pdf.pages[1].height)).extract_text()
    # 642 mm = 25.28 in, 6 mm = 0.24 in, to the next sixteenth
    assert "The crotch seam is 25 1/4 in, 1/4 in shorter" in " ".join(left.split())


@pytest.mark.slow
@pytest.mark.parametrize("write", [write_single_page_pdf, lambda p, f: write_tiled_pdf(p, f, paper=A4)])
def test_without_a_date_nothing_is_said_of_when_the_measurements_were_taken(write):
    target = io.BytesIO()
    write(replace(samples.pattern(), date=""), target)
    with pdfplumber.open(target) as pdf:
        text = "\n".join(page.extract_text() for page in pdf.pages)
    assert "straight leg\n" in text and "for Ada Example (invented)\n" in text
    assert not re.search(r"measured *$|· *$|, *$", text, re.MULTILINE)


@pytest.mark.slow
@pytest.mark.parametrize(("paper", "name"), [(LETTER, "US Letter"), (LETTER.turned, "US Letter, landscape")])
def test_every_tile_names_its_place_its_paper_and_its_pattern(paper: Paper, name: str):
    count = len(pages_of(paper))
    for sheet, page in enumerate(pages_of(paper)[2:], start=3):
        text = page.extract_text()
        row, column = re.search(r"row ([A-Z]+), column (\d+)", text).groups()
        assert (
            f"50 mm {row}{column} sheet {sheet} of {count} {name} Ada Example (invented), straight leg"
            in text
        )


def test_the_report_counts_the_sheets():
    target = io.BytesIO()
    report = write_tiled_pdf(samples.pattern(), target, paper=A4)
    assert report.sheets == len(pypdfium2.PdfDocument(target.getvalue()))
    assert report.sheets == 2 + len(tiled(samples.pattern(), A4).tiles)


def test_sheet_1_says_that_the_pattern_is_landscape_only_where_it_is():
    said = ["landscape" in pages_of(paper)[0].extract_text() for paper in (A4, A4.turned)]
    assert said == [False, True]


@pytest.mark.slow
@pytest.mark.parametrize("write", [write_single_page_pdf, lambda p, f: write_tiled_pdf(p, f, paper=A4)])
def test_the_same_pattern_gives_the_same_bytes(write):
    first, second = io.BytesIO(), io.BytesIO()
    write(samples.pattern(), first)
    write(samples.pattern("Żaneta Łęcka"), io.BytesIO())
    write(samples.pattern(), second)
    assert first.getvalue() == second.getvalue()


@pytest.mark.parametrize("made", [lambda: tiled_pdf(A4), single_page_pdf], ids=["tiled", "single"])
def test_the_file_asks_for_true_size_and_embeds_all_its_fonts(made: Callable[[], bytes]):
    data = made()
    assert data.startswith(b"%PDF-1.6")
    assert re.search(rb"/PrintScaling\s*/None", data)
    fonts = re.findall(rb"/BaseFont\s*/([\w+-]+)", data)
    assert {font.split(b"+")[-1] for font in fonts} == {b"DejaVuSans", b"DejaVuSans-Bold"}
    assert data.count(b"/FontFile2") == 2
    assert b"UserUnit" not in data


def test_the_document_carries_its_title():
    document = pypdfium2.PdfDocument(tiled_pdf(A4))
    assert document.get_metadata_value("Title") == "Ada Example (invented), straight leg"


@pytest.mark.slow
@pytest.mark.parametrize("name", NAMES)
def test_names_come_out_as_typed(name: str):
    target = io.BytesIO()
    report = write_tiled_pdf(samples.pattern(name), target, paper=A4)
    with pdfplumber.open(target) as pdf:
        assert pdf.pages[0].extract_text().startswith(name)
        assert f"for {name}, measured" in pdf.pages[5].extract_text()
    assert not any("font" in warning for warning in report.warnings)


def test_a_name_typed_with_loose_accents_is_composed():
    target = io.BytesIO()
    write_tiled_pdf(samples.pattern("Zoe\u0308"), target, paper=A4)
    with pdfplumber.open(target) as pdf:
        assert pdf.pages[0].extract_text().startswith("Zoë")


def test_a_character_that_the_font_lacks_is_named():
    target = io.BytesIO()
    report = write_tiled_pdf(samples.pattern("王 Example"), target, paper=A4)
    assert "not in the font and printed as '?': 王 (U+738B)" in report.warnings
    with pdfplumber.open(target) as pdf:
        assert pdf.pages[0].extract_text().startswith("? Example")


def test_text_from_right_to_left_is_reported():
    report = write_tiled_pdf(samples.pattern("נועה"), io.BytesIO(), paper=A4)
    assert any("right to left" in warning for warning in report.warnings)


def test_one_big_page_holds_every_piece_at_true_size():
    with pdfplumber.open(io.BytesIO(single_page_pdf())) as pdf:
        (page,) = pdf.pages
        heavy = [c for c in page.curves if abs(c["linewidth"] * MM - 0.5) < 0.01 and c["dash"][0] == []]
        heights = sorted((c["height"] * MM for c in heavy), reverse=True)
        squares = [(r["width"] * MM, r["height"] * MM) for r in page.rects]
        assert sorted(bars(page)) == pytest.approx([-101.6, -100, 100, 101.6], abs=0.01)
    legs = sorted((p.height for p in standing(samples.pattern())), reverse=True)[:2]
    assert heights[:2] == pytest.approx(legs, abs=0.01)
    assert any(size == pytest.approx((50, 50), abs=0.01) for size in squares)


def test_the_scale_test_of_the_big_page_lies_on_no_piece():
    (page,) = raster(single_page_pdf())
    with pdfplumber.open(io.BytesIO(single_page_pdf())) as pdf:
        square = next(r for r in pdf.pages[0].rects if abs(r["width"] * MM - 50) < 0.01)
        left, top = square["x0"] * MM - 18, square["y1"] * MM + 52
        test = shapely.box(left, top - 122, left + 120, top)
        for curve in pdf.pages[0].curves:
            piece = shapely.Polygon(flat(curve, float(pdf.pages[0].height) * MM))
            assert not piece.buffer(0).intersects(test)
    assert page[: 10 * DOTS - 1].min() == 255


def test_a_page_that_no_reader_shows_is_refused_before_anything_is_written():
    sides = [(0, 0), (5100, 0), (5100, 100), (0, 100), (0, 0)]
    edges = tuple(Edge(f"edge {i}", samples.straight(*pair)) for i, pair in enumerate(pairwise(sides)))
    band = Piece("band", edges, grain=samples.straight((50, 50), (5000, 50)), cutting=Cutting(1))
    target = io.BytesIO()
    with pytest.raises(PageTooLarge, match="at most 5080 mm"):
        write_single_page_pdf(replace(samples.pattern(), pieces=(band,)), target)
    assert target.getvalue() == b""


@pytest.mark.parametrize(
    ("reading", "good"), [(99.4, False), (99.5, True), (100.5, True), (100.6, False), (97, False)]
)
def test_half_a_millimetre_on_the_bar_passes_and_no_more(reading: float, good: bool):
    assert passes(reading) is good


# Plain divisions: 200/210, 204/210, the first twice, and 269.4/297 for A4 on US Letter.
def test_the_usual_wrong_readings_of_an_a4_print_are_told():
    assert [round(reading, 1) for reading, _ in usual_causes(A4)] == [90.7, 90.7, 95.2, 97.1]


def crowded() -> list[Recording]:
    """Return sheet 1 and the notes of a pattern with long names, many pieces and many findings."""
    pattern = samples.pattern(
        "Żaneta Łęcka-Παπαδοπούλου of a very long name that would run off every sheet of paper"
    )
    many = tuple(replace(samples.pocket(), kind=f"pocket bag {i} with a long name") for i in range(12))
    pattern = replace(pattern, pieces=pattern.pieces + many, findings=pattern.findings * 15)
    found = []
    least, most = PrinterScale(LEAST, LEAST), PrinterScale(MOST, MOST)
    corrected = [paper.corrected(scale) for paper in HOME.values() for scale in (least, most)]
    for paper in [*HOME.values(), *corrected]:
        typeface = Typeface()
        tiling = tiled(pattern, paper)
        cover = Recording(typeface)
        draw_cover(cover, paper, tiling, pattern, first=4, sheets=40)
        notes = draw_notes(typeface, paper, tiling.layout, pattern)
        found += [(paper, cover), *((paper, note) for note in notes)]
    return found


@pytest.mark.slow
def test_on_sheet_1_and_the_notes_no_words_overlap_words_or_lines_or_run_off():
    for paper, sheet in crowded():
        edge = paper.margin
        page = shapely.box(edge, edge, paper.width - edge, paper.height - edge)
        boxes = [text.box for text in sheet.texts]
        strokes = shapely.union_all([LineString(s.outline.flatten()) for s in sheet.strokes])
        tree = shapely.STRtree(boxes)
        for index, one in enumerate(boxes):
            inner = one.buffer(-0.1)
            assert page.covers(inner), sheet.texts[index]
            assert not inner.intersects(strokes), sheet.texts[index]
            assert list(tree.query(inner, predicate="intersects")) == [index], sheet.texts[index]
