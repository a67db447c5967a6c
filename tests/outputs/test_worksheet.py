"""The worksheet read back from its PDF with pdfplumber, and drafted again from what is printed alone."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import numpy as np
import pdfplumber
import pypdfium2
import pytest
import shapely
from shapely.geometry import LineString, MultiLineString

from drafting import Block, draft_block
from drafting.base.units import Unit, format_length
from drafting.block.leg_shape import LegCut
from drafting.block.waist_line import BlockPanel
from drafting.geometry.paths import Path as Seam
from drafting.lesson.hand_draft import hand_draft
from outputs.canvas.canvas import Role
from outputs.canvas.typeface import Typeface
from outputs.demo import DEMO_FILES
from outputs.lesson import drawing as worksheet_drawing
from outputs.lesson.drawing import Scene
from outputs.lesson.sheet import SheetSet
from outputs.lesson.tiles import tiled_draft
from outputs.lesson.worksheet import hand_drafts, write_worksheet
from outputs.paper.paper import PAPERS
from outputs.reading.measurements_file import MeasurementFile, read_measurements
from tests.outputs import redraft as printed
from tests.outputs.typed_files import UNEVEN

MM = 72 / 25.4
DEMO = {path.stem: path for path in DEMO_FILES}


class Made:
    """A worksheet in a file, with what it was made from."""

    def __init__(
        self,
        read: MeasurementFile,
        path: Path,
        *,
        scale: float = 4,
        blank: bool = False,
        cut: LegCut | None = None,
    ) -> None:
        self.read, self.path = read, path
        self.block = draft_block(read.measurements, cut=cut)
        with path.open("wb") as stream:
            self.written = write_worksheet(
                read, self.block, stream, paper=PAPERS["a4"], scale=scale, blank=blank
            )


@pytest.fixture(scope="module")
def sheets(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Made]:
    folder = tmp_path_factory.mktemp("worksheet")
    inches = re.sub(
        r"= ([0-9]+)$", r'= "\1 cm"', UNEVEN.replace('unit = "cm"', 'unit = "in"'), flags=re.MULTILINE
    )
    (folder / "uneven.toml").write_text(inches, encoding="utf-8")

    @cache
    def make(name: str) -> Made:
        source = DEMO.get(name, folder / "uneven.toml")
        cut = LegCut(hem_of_hip=0.6) if name == "uneven" else None  # a flare
        return Made(read_measurements(source), folder / f"{name}.pdf", cut=cut)

    return make


@pytest.fixture(scope="module", params=["zaneta", "uneven"])
def made(request: pytest.FixtureRequest, sheets: Callable[[str], Made]) -> Made:
    return sheets(request.param)


@pytest.fixture(scope="module")
def sheet(made: Made) -> printed.Sheet:
    return printed.read_sheet(made.path)


@pytest.fixture(scope="module")
def again(sheet: printed.Sheet) -> printed.Redraft:
    return printed.redraft(sheet)


def halves(made: Made, sheet: printed.Sheet) -> list[tuple[dict[str, BlockPanel], list[printed.Row]]]:
    """Return the panels of each half with the printed rows of its steps."""
    result, rest = [], sheet.rows
    for draft in hand_drafts(made.block):
        count = len(draft.instructions)
        result.append(({"front": draft.half.front, "back": draft.half.back}, rest[:count]))
        rest = rest[count:]
    assert not rest
    return result


@pytest.mark.slow
def test_every_printed_result_is_the_length_on_the_pattern(made: Made, sheet: printed.Sheet) -> None:
    # 0.1 mm: a fifth of the finest line that is drawn
    for draft, (panels, rows) in zip(hand_drafts(made.block), halves(made, sheet), strict=True):
        assert [row.label for row in rows] == [step.label for step in draft.instructions]
        starts = {s.label: s for s in draft.instructions}
        for row, step in zip(rows, draft.instructions, strict=True):
            if step.curve:
                found = Seam((step.curve,)).length
            elif step.panel and row.start[0] in starts and len(row.start) == 1:
                points = panels[step.panel].points()
                start = starts[row.start[0]].at
                assert start is not None
                found = (points.get(step.name, step.at) - start).length
            else:
                found = step.result
            assert row.exact == pytest.approx(found, abs=0.1), row.draws
            shown = format_length(row.exact, made.read.unit).removesuffix(f" {made.read.unit.value}")
            half_step = 0.51 if made.read.unit is Unit.CM else 25.4 / 32 + 0.01
            assert printed.number(row.result) * sheet.unit == pytest.approx(row.exact, abs=half_step), shown


@pytest.mark.slow
def test_every_printed_formula_comes_to_its_result_in_names_and_in_numbers(sheet: printed.Sheet) -> None:
    reckoned = 0
    for row in sheet.rows:
        if row.numbers:
            for text, named in ((row.formula, row.named), (row.numbers, {})):
                value = printed.Formula(text, named).value() * sheet.unit
                # Numbers are printed to 0.01 mm, angles to 0.01 degrees: over 250 mm of height 0.03 mm.
                assert value == pytest.approx(row.exact, abs=0.06), f"{row.draws}: {text}"
            reckoned += 1
    assert reckoned >= 40


@pytest.mark.slow
def test_a_draft_from_the_print_alone_comes_to_the_same_points(
    made: Made, sheet: printed.Sheet, again: printed.Redraft
) -> None:
    # Four steps at most lie between a point and the plumb line, each printed to 0.01 mm.
    for panels, rows in halves(made, sheet):
        checked = 0
        for row in rows:
            if row.panel and row.name in (points := panels[row.panel].points()):
                assert math.dist(again.points[row.label], tuple(points[row.name])) < 0.1, row.draws
                checked += 1
        assert checked >= 35


@pytest.mark.slow
def test_a_draft_from_the_print_alone_has_the_same_outline(
    made: Made, sheet: printed.Sheet, again: printed.Redraft
) -> None:
    # A curve lies between its ends and guides, so it misses by no more than they do: below 0.1 mm. The
    # chords of 64 halvings stay within 0.03 mm of it; 0.5 mm is what a cutter's pencil draws.
    lines = {panel: list(some) for panel, some in again.lines.items()}
    for panels, rows in halves(made, sheet):
        for name, panel in panels.items():
            count = sum(row.panel == name and row.way.startswith(("straight", "curve")) for row in rows)
            mine, lines[name] = lines[name][:count], lines[name][count:]
            paths = [*panel.waist, panel.side, panel.lower.inseam, panel.lower.crotch]
            points = panel.points()
            paths.append(Seam.through([points["hem at the side"], points["hem at the inseam"]]))
            paths += [Seam.through([d.inner, d.tip, d.outer]) for d in panel.darts]
            engine = MultiLineString([path.flatten(0.01) for path in paths])
            drawn = MultiLineString([LineString(part) for part in mine])
            miss = max(
                max(engine.distance(dot) for dot in _dots(drawn)),
                max(drawn.distance(dot) for dot in _dots(engine)),
            )
            assert miss < 0.1, name


def _dots(lines: MultiLineString) -> list[shapely.Geometry]:
    return list(shapely.points(shapely.get_coordinates(lines.segmentize(10))))


@pytest.mark.slow
def test_no_step_uses_what_does_not_stand_yet(made: Made) -> None:
    for draft in hand_drafts(made.block):
        stands = {"floor"}
        for step in draft.instructions:
            assert set(step.start) <= stands, f"{step.label} {step.name}"
            assert step.label not in stands
            stands.add(step.label)


@pytest.mark.slow
def test_the_steps_have_all_stages_in_order(made: Made) -> None:
    for draft in hand_drafts(made.block):
        order = list(
            dict.fromkeys(
                (s.stage.name, s.panel if s.stage.name == "PANEL" else "") for s in draft.instructions
            )
        )
        assert order == [
            ("FRAME", ""), ("PANEL", "front"), ("PANEL", "back"), ("LEG", ""), ("CURVE", ""), ("WAIST", ""),
        ]  # fmt: skip


@pytest.fixture(scope="module")
def zaneta(sheets: Callable[[str], Made]) -> Made:
    return sheets("zaneta")


@dataclass(frozen=True)
class Drawn:
    """A sheet with a drawing, as a reader of another make finds it; mm."""

    text: str
    rings: np.ndarray
    bars: list[float]
    least_type: float
    least_line: float


def drawings(path: Path, most: int = 99) -> list[Drawn]:
    found = []
    with pdfplumber.open(path) as document:
        for page in document.pages[4:]:
            if not page.curves or len(found) == most:
                continue
            rings = [np.mean(c["pts"][:32], axis=0) / MM for c in page.curves if len(c["pts"]) >= 32]
            bars = [(ln["x1"] - ln["x0"]) / MM for ln in page.lines if abs(ln["x0"] / MM - 10) < 0.01]
            sizes, widths = {c["size"] / MM for c in page.chars}, {ln["linewidth"] for ln in page.lines}
            found.append(Drawn(page.extract_text(), np.array(rings), bars, min(sizes), min(widths)))
    return found


@pytest.fixture(scope="module")
def drawn(zaneta: Made) -> list[Drawn]:
    return drawings(zaneta.path)


@pytest.mark.slow
def test_the_drawn_points_are_those_of_the_pattern_at_the_scale(zaneta: Made, drawn: list[Drawn]) -> None:
    [rings] = [sheet.rings * (4, -4) for sheet in drawn if "The back, 1:4" in sheet.text]
    steps = [s for s in hand_draft(zaneta.block.halves[0]).instructions if s.at and s.panel == "back"]
    right = np.array([tuple(s.at) for s in steps if s.stage.name in ("FRAME", "PANEL")])
    assert len(rings) == len(right) >= 10
    rings, right = (some - some.mean(axis=0) for some in (rings, right))
    for point in right:
        assert np.hypot(*(rings - point).T).min() < 0.1  # mm full size


@pytest.mark.slow
def test_every_drawing_says_scale_and_whose_it_is_and_has_a_true_bar(drawn: list[Drawn]) -> None:
    assert len(drawn) >= 7
    for sheet in drawn:
        assert "not for cutting" in sheet.text and "1:" in sheet.text
        assert "waist girth 76.0 cm, hip girth 98.0 cm" in sheet.text and "measured 2026-03-14" in sheet.text
        assert any(bar == pytest.approx(50, abs=0.01) for bar in sheet.bars)


@pytest.mark.slow
def test_text_and_lines_keep_their_size_at_every_scale(
    zaneta: Made, drawn: list[Drawn], tmp_path: Path
) -> None:
    smaller = Made(zaneta.read, tmp_path / "small.pdf", scale=5)
    for sheet in (*drawn, *drawings(smaller.path, most=2)):
        assert sheet.least_type >= 2.0  # mm, the least that reads well
        assert sheet.least_line >= 0.15 - 1e-9  # mm: thinner lines can vanish on a home printer


def page_texts(path: Path) -> list[str]:
    with pypdfium2.PdfDocument(path) as document:
        return [page.get_textpage().get_text_bounded() for page in document]


@pytest.mark.slow
def test_no_text_is_printed_in_the_margin_or_over_a_line_of_the_header(sheets: Callable[[str], Made]) -> None:
    # Oksana's curve start stands at the very top of a window; printers leave 10 mm empty (common practice)
    oksana = sheets("oksana")
    small = Made(oksana.read, oksana.path.with_name("oksana-5.pdf"), scale=5)
    with pdfplumber.open(small.path) as document:
        for page in document.pages[8:11]:
            under_header = (10 + 11.2) * MM
            for char in page.chars:
                # Letters reach 0.78 of their size above the line that they stand on, and 0.24 below.
                base = page.height - char["matrix"][5]
                top, foot = base - 0.78 * char["size"], base + 0.24 * char["size"]
                assert foot <= page.height - 10 * MM + 0.01 and top >= 10 * MM - 0.01
                assert not top < under_header < foot, char["text"]


@pytest.mark.slow
def test_short_stages_of_a_wide_draft_share_a_sheet(sheets: Callable[[str], Made]) -> None:
    # At 1:4 Gülşah's two panels are wider than a sheet; waist and dart are a hand's breadth high.
    texts = [text for text in page_texts(sheets("gulsah").path) if "Waist and dart" in text]
    drawn = [text for text in texts if "1:4, not for cutting" in text]
    assert len(drawn) == 1 and "FRONT" in drawn[0] and "BACK" in drawn[0]


@pytest.mark.slow
def test_a_half_size_draft_is_tiled_and_every_tile_says_its_scale(zaneta: Made, tmp_path: Path) -> None:
    large = Made(zaneta.read, tmp_path / "large.pdf", scale=2)
    with pypdfium2.PdfDocument(large.path) as document:
        tiles = [page for page in document if page.get_height() > page.get_width()]
        assert len(tiles) >= 6
        assert all("1:2, not for cutting" in page.get_textpage().get_text_bounded() for page in tiles)
        assert len(document) == large.written.sheets


@pytest.mark.slow
@pytest.mark.parametrize("scale", [1, 2])
def test_a_tiled_draft_has_the_distances_of_its_scale_and_no_line_is_left_out(
    zaneta: Made, scale: float
) -> None:
    [draft] = hand_drafts(zaneta.block)
    tiling, drawing = tiled_draft(Typeface(), draft, scale, PAPERS["a4"])
    drawn = [stroke.outline.flatten() for stroke in drawing.strokes if stroke.role is Role.PLAN]
    ends = np.array([[points[0], points[-1]] for points in drawn]) * scale
    lines = [step.curve for step in draft.instructions if step.curve]
    assert len(ends) == len(lines)
    for (first, last), curve in zip(ends, lines, strict=True):
        assert math.dist(first, last) == pytest.approx((curve.end - curve.start).length, abs=0.05)
    windows = shapely.union_all([shapely.box(*tiling.window(tile)) for tile in tiling.tiles]).buffer(0.01)
    assert all(windows.covers(LineString(points)) for points in drawn)


@pytest.mark.slow
@pytest.mark.parametrize("scale", [1, 2])
def test_every_panel_of_a_tiled_draft_says_its_scale_and_whose_measurements_it_is(
    zaneta: Made, scale: float
) -> None:
    """Told: small patterns were handed out, and nobody knew of what scale and size they were."""
    [draft] = hand_drafts(zaneta.block)
    sheets = SheetSet(zaneta.read, zaneta.block, PAPERS["a4"], "")
    _, drawing = tiled_draft(Typeface(), draft, scale, PAPERS["a4"], sheets.said(scale))
    scene = Scene.of(draft, scale)
    lines = [text for text in drawing.texts if text.size in (2.0, 2.4)]
    for panel in ("front", "back"):
        steps = [step for step in draft.instructions if step.curve and step.panel == panel]
        ends = [scene.curve(step).point(t / 20) for step in steps for t in range(21)]
        left, right = min(p.x for p in ends) / scale, max(p.x for p in ends) / scale
        shift = min(
            stroke.outline.flatten()[:, 0].min() for stroke in drawing.strokes if stroke.role is Role.PLAN
        )
        first = (
            min(scene.curve(s).point(t / 20).x for s in draft.instructions if s.curve for t in range(21))
            / scale
        )
        mine = [t for t in lines if left < t.at.x - shift + first < right and t.string]
        said = " ".join(text.string for text in mine)
        assert f"1:{scale:g}" in said and "Żaneta Łęcka, measured 2026-03-14" in said
        assert "waist girth 76.0 cm, hip girth 98.0 cm" in said and "total crotch length 71.0 cm" in said


@pytest.mark.slow
def test_the_tables_are_full_size_at_every_scale(zaneta: Made, tmp_path: Path) -> None:
    texts = page_texts(Made(zaneta.read, tmp_path / "small.pdf", scale=5).path)
    # Under the header, which counts the sheets.
    tables = [
        [text.partition("Measurements")[2] or text.partition("total crotch length")[2] for text in some[:5]]
        for some in (texts, page_texts(zaneta.path))
    ]
    assert tables[0][1:] == tables[1][1:] and all(tables[0]) and "numbers put in" in tables[0][0]
    # 50 mm on a sheet of 1:5 are 25 cm of the draft; the frame is drawn smaller still.
    assert any("50 mm on this sheet = 25.0 cm of the draft" in text for text in texts)


@pytest.mark.slow
def test_a_blank_sheet_holds_the_formulas_and_no_answer(zaneta: Made, tmp_path: Path) -> None:
    blank = Made(zaneta.read, tmp_path / "blank.pdf", blank=True)
    with pdfplumber.open(blank.path) as document:
        tables = [table for page in document.pages for table in page.extract_tables()]
        assert not any(page.curves for page in document.pages)
    steps = [row for table in tables if table[0][:2] == ["no.", "draws"] for row in table[1:] if row[1]]
    assert len(steps) >= 60
    assert all(row[5:] == ["", "", ""] for row in steps)
    assert sum("hip girth ÷ 16" in " ".join(row[4].split()) for row in steps) == 1
    asked = [row for table in tables if table[0][:2] == ["no.", "line"] for row in table[1:]]
    assert len(asked) == 20 and all(row[3] == "" for row in asked)


@pytest.mark.slow
def test_the_same_measurements_give_the_same_bytes_and_no_label_stands_on_a_line(
    zaneta: Made, monkeypatch: pytest.MonkeyPatch
) -> None:
    crowded: list[int] = []
    place = worksheet_drawing.draw_point_labels

    def counted(*given: Any, **named: Any) -> int:
        crowded.append(place(*given, **named))
        return crowded[-1]

    monkeypatch.setattr(worksheet_drawing, "draw_point_labels", counted)
    stream = BytesIO()
    block: Block = draft_block(zaneta.read.measurements)
    write_worksheet(zaneta.read, block, stream, paper=PAPERS["a4"], scale=4, blank=False)
    assert stream.getvalue() == zaneta.path.read_bytes()
    assert len(crowded) >= 9 and not any(crowded)


@pytest.mark.slow
def test_every_measurement_says_where_it_comes_from(tmp_path: Path) -> None:
    source = tmp_path / "guess.toml"
    text = DEMO["gulsah"].read_text(encoding="utf-8").replace('"nobody"', '"women"')
    source.write_text(text, encoding="utf-8")
    guess = Made(read_measurements(source), tmp_path / "guess.pdf")
    with pdfplumber.open(guess.path) as document:
        rows = [row for table in document.pages[0].extract_tables() for row in table if row[0]]
    marks = {row[0]: row[3] for row in rows if len(row) == 6}
    assert marks["waist girth"] == "measured"
    assert marks["waist height"] == "worked out"
    assert any(mark.startswith("estimated ± ") for mark in marks.values())
    assert "by construction" in marks.values()
