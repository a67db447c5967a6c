"""The drawings of the worksheet: the draft as it grows, a sheet or more for each stage, values beside it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from drafting.block.point_names import Drawn
from drafting.block.step_record import Stage
from drafting.geometry.points import Point
from drafting.lesson.hand_draft import HandDraft, How, Instruction
from outputs.canvas.canvas import Recording, Ruler
from outputs.canvas.lettering import LEADING, Line, TextBlock, shortened
from outputs.canvas.text_flow import Area
from outputs.lesson.drawing import TOP_ROOM, Scene, StagePicture, Window, until, windows
from outputs.lesson.finish import CREASE
from outputs.lesson.sheet import FOOT, SMALL, SheetSet, scale_words
from outputs.lesson.words import Writing, stage_title

KEY_WIDTH = 60.0
"""Of the list of values beside a drawing, mm."""
FRAME_SCALES = (1.0, 2.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0)
"""Scales at which the frame is tried, so that all levels stand on one sheet."""
BOTH = ("front", "back")
STAGES = (
    (Stage.FRAME, BOTH),
    (Stage.PANEL, ("front",)),
    (Stage.PANEL, ("back",)),
    (Stage.LEG, BOTH),
    (Stage.CURVE, BOTH),
    (Stage.WAIST, BOTH),
)
SMALLER = 1.25
"""How many times smaller a panel is drawn that is too wide for the paper."""
LEAST_SCALE = 4.0
"""The growing draft is not drawn larger than this: larger scales show the finished draft alone."""


@dataclass(frozen=True)
class Drawing:
    """One drawing of the draft.

    Attributes:
        name: What it is called.
        stage: Which stage it shows; None for the finished draft.
        panels: The panels that it shows.
        old: What stands already.
        new: What is new.
        frame: The part of the draft that it shows.
    """

    name: str
    stage: Stage | None
    panels: tuple[str, ...]
    old: Sequence[Instruction]
    new: Sequence[Instruction]
    frame: Area

    @property
    def finished(self) -> bool:
        """Whether it shows the outlines alone, and carries whose they are."""
        return self.stage is None


@dataclass(frozen=True)
class _Sheet:
    """What one sheet shows.

    Attributes:
        name: What it is called.
        drawing: Whose values stand beside it.
        scale: At which it is drawn.
        shown: Drawings, each in its window.
    """

    name: str
    drawing: Drawing
    scale: float
    shown: tuple[tuple[Drawing, Window], ...]


def stage_sheets(
    ruler: Ruler, sheets: SheetSet, draft: HandDraft, scale: float, side: str
) -> Iterator[Recording]:
    """Yield the sheets of all stages and of the finished draft, without their headers.

    Args:
        ruler: Measures the lettering.
        sheets: The paper and whose draft it is.
        draft: The instructions of one half.
        scale: At which it is drawn; the frame, and what is too wide for the paper, smaller.
        side: "right ", "left " or nothing, for the titles.
    """
    small, room = max(scale, LEAST_SCALE), _room(sheets)
    for drawing in (*_stages(draft, small), finished_draft(draft, small)):
        for sheet in _sheets_of(draft, drawing, small, room):
            yield _drawn(ruler, sheets, draft, sheet, side)


def _stages(draft: HandDraft, scale: float) -> Iterator[Drawing]:
    scene = Scene.of(draft, scale)
    for stage, panels in STAGES:
        old, new = until(draft, stage, panels)
        if not any(i.panel for i in new):
            continue
        name = stage_title(stage, panels[0])
        if stage is Stage.PANEL:
            name = f"The {panels[0]}"
        frame = scene.bounds(i for i in (*new, *old) if i.at or i.curve)
        if stage in (Stage.CURVE, Stage.WAIST):
            part = scene.bounds(i for i in new if i.panel)
            frame = Area(frame.left, part.bottom - 25, frame.right, frame.top)
        if stage is Stage.FRAME:
            waist = next(i.result for i in new if i.draws is Drawn.WAIST_LEVEL)
            hem = next(i.result for i in new if i.draws is Drawn.HEM_LEVEL)
            frame = Area(frame.left - 300, hem, frame.right + 150, waist)
        yield Drawing(name, stage, panels, old, new, frame)


def finished_draft(draft: HandDraft, scale: float) -> Drawing:
    """Return the finished draft: its outlines, darts, creases and levels, without what they were drawn by."""
    lines = [i for i in draft.instructions if i.curve]
    used = {label for i in lines for label in i.start[:2]}
    creases = [i for i in draft.instructions if i.draws in CREASE]
    shown = [i for i in draft.instructions if i.label in used and i not in creases]
    levels = [i for i in draft.instructions if i.how is How.LEVEL]
    frame = Scene.of(draft, scale).bounds(lines)
    standing = [*levels, *shown, *creases]
    return Drawing("The finished draft", None, BOTH, standing, _without_guides(lines), frame)


def _without_guides(lines: Sequence[Instruction]) -> list[Instruction]:
    return [replace(i, how=How.STRAIGHT) for i in lines]


def _sheets_of(draft: HandDraft, drawing: Drawing, scale: float, room: Area) -> list[_Sheet]:
    """Return the sheets of a drawing, in parts where it is too high for one.

    The frame is drawn so small that all its levels stand on one sheet. Of what is too wide the panels stand
    one under the other, or each on sheets of its own, and one that is too wide alone is drawn smaller.
    """
    scales = [s for s in FRAME_SCALES if s >= scale] if drawing.stage is Stage.FRAME else [scale]
    tried = [(s, found) for s in scales if (found := windows(drawing.frame, s, room))]
    if tried:
        scale, found = next((each for each in tried if len(each[1]) == 1), tried[-1])
        return [
            _Sheet(f"{drawing.name}{_part(number, len(found))}", drawing, scale, ((drawing, window),))
            for number, window in enumerate(found, start=1)
        ]
    if len(drawing.panels) == 1:
        return _sheets_of(draft, drawing, scale * SMALLER, room)
    panels = [_of_panel(draft, drawing, panel, scale) for panel in drawing.panels]
    placed = _stacked([part.frame for part in panels], scale, room)
    if placed:
        return [_Sheet(drawing.name, drawing, scale, tuple(zip(panels, placed, strict=True)))]
    return [sheet for part in panels for sheet in _sheets_of(draft, part, scale, room)]


def _part(number: int, count: int) -> str:
    return f", part {number} of {count}" if count > 1 else ""


def _of_panel(draft: HandDraft, drawing: Drawing, panel: str, scale: float) -> Drawing:
    """Return what a drawing shows of one panel."""
    old, new = ([i for i in some if i.panel in ("", panel)] for some in (drawing.old, drawing.new))
    mine = Scene.of(draft, scale).bounds(i for i in (*old, *new) if i.at or i.curve)
    frame = Area(mine.left, drawing.frame.bottom, mine.right, drawing.frame.top)
    return Drawing(f"{drawing.name}, {panel}", drawing.stage, (panel,), old, new, frame)


def _drawn(ruler: Ruler, sheets: SheetSet, draft: HandDraft, sheet: _Sheet, side: str) -> Recording:
    """Return a sheet with its drawings, the values beside them, and its foot."""
    page, scene = Recording(ruler), Scene.of(draft, sheet.scale)
    bare = sheet.drawing.finished
    said = sheets.said(sheet.scale) if bare else ()
    for drawing, window in sheet.shown:
        StagePicture(scene, window, page, drawing.old, drawing.new, bare=bare, said=said).draw()
    title = f"{side}{sheet.name}"
    _write_key(page, sheets, sheet.drawing, Writing(sheets.read.unit), title, sheet.scale)
    sheets.draw_foot(page, title, sheet.scale)
    return page


def _stacked(frames: Sequence[Area], scale: float, room: Area) -> list[Window]:
    """Return windows that show the frames one under the other, none where they do not fit one sheet."""
    placed: list[Window] = []
    top = room.top
    for frame in frames:
        found = windows(frame, scale, replace(room, top=top))
        if len(found) != 1:  # too wide, or too high
            return []
        placed += found
        top -= found[0].frame.height / scale + TOP_ROOM
    return placed


def _room(sheets: SheetSet) -> Area:
    """Return what the list of values and the foot leave to a drawing."""
    area = sheets.area
    return Area(area.left, area.bottom + FOOT + 2, area.right - KEY_WIDTH, area.top)


def _write_key(
    sheet: Recording, sheets: SheetSet, drawing: Drawing, writing: Writing, title: str, scale: float
) -> None:
    """Write the new steps with their full-size values into the column beside the drawing."""
    area = sheets.area
    left, right, y = area.right - KEY_WIDTH + 3, area.right, area.top - 4
    heading = TextBlock.set(sheet, [Line(title, 3.2, bold=True)], right - left)
    heading.draw(sheet, Point(left, y + 3.2))
    y -= heading.height
    sheet.text(scale_words(scale), Point(left, y), SMALL, bold=True)
    y -= 4
    sheet.text(f"Values: full size, {writing.unit.value}", Point(left, y), SMALL)
    y -= 4.5
    rows = [i for i in drawing.new if not i.label[-1].isalpha()]
    size = min(SMALL, (y - area.bottom - FOOT) / (len(rows) * LEADING)) if rows else SMALL
    for step in rows:
        value = writing.rounded(step.result)
        room = right - left - sheet.text_width(value, size) - 9
        panel = f"{step.panel} " if len(drawing.panels) > 1 and step.panel else ""
        sheet.text(step.label, Point(left, y), size, bold=True)
        name = f"{panel}{step.about.of_its_edge.name}"
        sheet.text(shortened(sheet, name, room, size), Point(left + 7, y), size)
        sheet.text(value, Point(right - sheet.text_width(value, size), y), size)
        y -= size * LEADING
