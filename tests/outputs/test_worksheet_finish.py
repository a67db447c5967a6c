"""The last sheet of the worksheet: what its lists say is what was drawn, and there is room for remarks."""

from __future__ import annotations

from itertools import pairwise

import pytest

from drafting import draft_block
from drafting.base.units import Unit
from drafting.body.measurements import SideMeasurements
from drafting.lesson.hand_draft import hand_draft
from outputs.canvas.canvas import Recording, Role
from outputs.canvas.typeface import Typeface
from outputs.demo import DEMO_FILES
from outputs.lesson.finish import SIGNS, carried, finish_sheet
from outputs.lesson.sheet import SheetSet, lying
from outputs.lesson.stages import stage_sheets
from outputs.lesson.words import Writing
from outputs.lesson.worksheet import hand_drafts
from outputs.paper.paper import PAPERS
from outputs.reading.measurements_file import read_measurements
from tests.wearers import wearer

CM = Writing(Unit.CM)


def finished(drawn_stages: int) -> tuple[Recording, list[Recording]]:
    """Return the last sheet for so many stages of Żaneta's draft, and these."""
    read = read_measurements(next(path for path in DEMO_FILES if path.stem == "zaneta"))
    block = draft_block(read.measurements)
    sheets = SheetSet(read, block, lying(PAPERS["a4"]), "Worksheet")
    typeface = Typeface()
    [draft] = hand_drafts(block)
    drawn = list(stage_sheets(typeface, sheets, draft, 4, ""))[:drawn_stages]
    return finish_sheet(typeface, sheets, (draft,), drawn), drawn


@pytest.mark.slow
@pytest.mark.parametrize("stages", [1, 2, 99])
def test_the_key_has_the_signs_that_are_drawn_and_no_other(stages: int) -> None:
    sheet, drawn = finished(stages)
    used = {stroke.role for recording in drawn for stroke in recording.strokes}
    column = min(text.at.x for text in sheet.texts if text.string == "Remarks")
    shown = {stroke.role for stroke in sheet.strokes if stroke.outline.flatten()[0, 0] < column - 1}
    assert shown == used & {role for role, _ in SIGNS}
    assert (Role.JOIN in shown) == (stages > 2)  # guides of curves come with the curves


def test_there_is_room_for_a_page_of_remarks() -> None:
    sheet, _ = finished(1)
    left = next(text.at.x for text in sheet.texts if text.string == "Remarks")
    heights = sorted(
        float(points[0, 1])
        for stroke in sheet.strokes
        if (points := stroke.outline.flatten())[0, 0] == pytest.approx(left)
    )
    # lines as far apart as in an exercise book for adults: 8 mm and more (common practice)
    assert len(heights) >= 15
    assert all(high - low >= 8 for low, high in pairwise(heights))


@pytest.mark.parametrize(("waist", "hip", "darts"), [(760, 980, 1), (660, 1060, 2), (1040, 1040, 0)])
def test_a_pattern_must_carry_the_darts_seams_grain_and_notches_that_are_drawn(
    waist: float, hip: float, darts: int
) -> None:
    """Told: marks were lost for symbols that a finished pattern did not carry."""
    block = draft_block(wearer(waist_girth=waist, hip_girth=hip))
    draft = hand_draft(block.halves[0])
    at = {step.label: step.at for step in draft.instructions if step.at}
    for panel in (block.front, block.back):
        said = list(carried(draft, panel.name, CM))
        told = [line for line in said if line.startswith("dart ")]
        assert len(told) == len(panel.darts) == (darts if panel is block.back else 0)
        for line, dart in zip(told, panel.darts, strict=True):
            inner, tip, outer = (at[label] for label in line.split()[1].rstrip(",").split("–"))
            for found, right in ((inner, dart.inner), (tip, dart.tip), (outer, dart.outer)):
                assert tuple(found) == pytest.approx(tuple(right), abs=0.01)
            assert f"{dart.width / 10:.1f} wide" in line
        assert said[0] == "cut 2, one the mirror of the other"
        [seams] = [line for line in said if line.startswith("seam lines: ")]
        edges = {"inseam", "side seam", "hem", "crotch seam", "waist"}
        assert all(edge in seams for edge in edges)
        # Every line of the outline is named by its two ends.
        named = {
            tuple(pair.split("–"))
            for pair in seams.replace(",", " ").replace(";", " ").split()
            if "–" in pair
        }
        drawn = {i.start[:2] for i in draft.instructions if i.curve and i.panel == panel.name}
        legs = {i.start[:2] for i in draft.instructions if i.curve and i.name.startswith("dart")}
        assert named == drawn - legs
        assert sum("grain line" in line for line in said) == 1
        assert [line.split()[2] for line in said if line.startswith("notches at")] == ["hip", "knee"]


@pytest.mark.parametrize("paper", ["a4", "letter", "either"])
def test_the_lists_of_both_halves_end_on_the_sheet(paper: str) -> None:
    read = read_measurements(next(path for path in DEMO_FILES if path.stem == "zaneta"))
    left, right = (SideMeasurements(half_hip_arc=arc) for arc in (510, 490))
    block = draft_block(wearer(hip_girth=1000, waist_girth=660, left=left, right=right))
    assert len(block.back.darts) == 2
    sheets = SheetSet(read, block, lying(PAPERS[paper]), "Worksheet")
    sheet = finish_sheet(Typeface(), sheets, hand_drafts(block), [])
    for text in sheet.texts:
        left_edge, foot, right_edge, top = text.box.bounds
        assert foot >= sheets.area.bottom - 0.01 and top <= sheets.area.top + 0.01, text.string
        assert left_edge >= sheets.area.left and right_edge <= sheets.area.right + 0.01, text.string
        assert text.size >= 2.0


def test_of_a_body_whose_sides_differ_each_half_is_cut_once() -> None:
    left, right = (SideMeasurements(half_hip_arc=arc) for arc in (510, 490))
    block = draft_block(wearer(hip_girth=1000, left=left, right=right))
    for draft in hand_drafts(block):
        assert next(carried(draft, "front", CM)) == "cut 1"
