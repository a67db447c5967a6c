"""The draft drawn stage by stage, smaller than life: places on paper, windows, lines and numbered points."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry import LineString, Polygon, box
from shapely.geometry.base import BaseGeometry

from drafting.block.point_names import Drawn
from drafting.block.step_record import Stage
from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.lesson.hand_draft import HandDraft, How, Instruction
from drafting.lesson.words import LEVELS
from outputs.canvas.canvas import Align, Canvas, Polyline, Role, circle, line, text_box
from outputs.canvas.free_space import Room
from outputs.canvas.lettering import Line, TextBlock
from outputs.canvas.point_labels import PointLabel, draw_point_labels
from outputs.canvas.text_flow import Area

GAP = 45.0
"""Between front and back on the paper of the draft, mm."""
SIDE_ROOM, RIGHT_ROOM, TOP_ROOM = 14.0, 6.0, 6.0
"""Room on the sheet for words left of what is drawn, right of it, above and below, mm."""
OVERLAP = 10.0
"""What two windows of one drawing show both, mm on the sheet."""
NEW, OLD = 2.9, 2.2
"""Type size of the labels of new and of older points, mm."""
SAID = 48.0
"""Width of what is said of a finished panel, mm."""
NAME = 4.0
"""Type size of the names of the panels, mm."""
RING, ARM = 0.55, 0.6
ONE_PLACE = 0.7
"""Points nearer than this on the sheet share one label, mm."""


@dataclass(frozen=True)
class Window:
    """A part of the draft on the sheet.

    Attributes:
        frame: Which part.
        scale: Millimetres of the draft on one of the sheet.
        corner: Where the part's upper left corner lies on the sheet.
    """

    frame: Area
    scale: float
    corner: Point

    def place(self, p: Point) -> Point:
        """Return where a place of the draft lies on the sheet."""
        return Point(
            self.corner.x + (p.x - self.frame.left) / self.scale,
            self.corner.y - (self.frame.top - p.y) / self.scale,
        )

    @property
    def sheet(self) -> Polygon:
        """The window on the sheet."""
        low, high = (
            self.place(Point(self.frame.left, self.frame.bottom)),
            self.place(Point(self.frame.right, self.frame.top)),
        )
        return box(low.x, low.y, high.x, high.y)

    def line(self, curve: Cubic) -> Path:
        """Return a line of the draft on the sheet."""
        return Path((curve.moved(self.place),))


@dataclass(frozen=True)
class Scene:
    """Front and back beside each other, both with the fork to the right as they are drafted.

    Attributes:
        draft: The instructions.
        back: How far the back lies to the right of where it is drafted, mm.
    """

    draft: HandDraft
    back: float

    @staticmethod
    def of(draft: HandDraft, scale: float) -> Scene:
        """Return the two panels with a gap that holds labels at this scale."""
        front = max(p.x for p in draft.half.front.points().values())
        back = min(p.x for p in draft.half.back.points().values())
        return Scene(draft, front - back + GAP * max(scale / 4, 0.5))

    def at(self, panel: str, p: Point) -> Point:
        """Return a place of a panel on the common paper."""
        return Point(p.x + self.back, p.y) if panel == "back" else p

    def curve(self, step: Instruction) -> Cubic:
        """Return the line of a step on the common paper."""
        assert step.curve is not None
        return step.curve.moved(lambda p: self.at(step.panel, p))

    def points(self) -> dict[str, Point]:
        """Return every labelled point on the common paper."""
        return {i.label: self.at(i.panel, i.at) for i in self.draft.instructions if i.at}

    def bounds(self, steps: Iterable[Instruction]) -> Area:
        """Return the rectangle round what some steps draw."""
        places = [self.at(i.panel, i.at) for i in steps if i.at]
        for step in steps:
            if step.curve:
                places += [Point(x, y) for x, y in Path((self.curve(step),)).flatten(1.0)]
        xs, ys = [p.x for p in places], [p.y for p in places]
        return Area(min(xs), min(ys), max(xs), max(ys))


def windows(frame: Area, scale: float, area: Area) -> list[Window]:
    """Return the windows, upper ones first, that show `frame` at `scale` in `area` of a sheet each.

    There are none where `frame` is too wide for the area.
    """
    top = TOP_ROOM * scale
    wide = Area(
        frame.left - SIDE_ROOM * scale, frame.bottom - top, frame.right + RIGHT_ROOM * scale, frame.top + top
    )
    if wide.width > area.width * scale:
        return []
    reach, overlap = area.height * scale, OVERLAP * scale
    count = max(1, math.ceil((wide.height - overlap) / (reach - overlap)))
    step = (wide.height - reach) / (count - 1) if count > 1 else 0.0
    left = area.left + (area.width - wide.width / scale) / 2
    result = []
    for index in range(count):
        top = wide.top - index * step
        part = Area(wide.left, max(top - reach, wide.bottom), wide.right, top)
        result.append(Window(part, scale, Point(left, area.top)))
    return result


@dataclass
class StagePicture:
    """What is drawn in one window, in the order of drawing.

    Attributes:
        scene: The whole draft.
        window: What of it is shown.
        canvas: The sheet.
        old: What stands already.
        new: What is drawn now, heavier.
        bare: Leave away what points were set out by.
        said: What stands under the name of each panel, as far as there is room.
    """

    scene: Scene
    window: Window
    canvas: Canvas
    old: Sequence[Instruction]
    new: Sequence[Instruction]
    bare: bool = False
    said: Sequence[Line] = ()

    def draw(self) -> int:
        """Draw lines, points and labels; return how many labels stand on a line for want of room."""
        self.ink: list[BaseGeometry] = []
        self._levels()
        for step in self.old:
            self._line(step, new=False)
        for step in self.new:
            self._line(step, new=True)
        self._names()
        labels = [*self._points(self.new, new=True), *self._points(self.old, new=False)]
        return draw_point_labels(self.canvas, labels, self.ink, within=self.window.sheet)

    def stroke(self, points: Iterable[Sequence[float]], role: Role) -> None:
        """Draw a run of places of the sheet, cut off at the window."""
        shown = LineString(list(points)).intersection(self.window.sheet)
        for part in getattr(shown, "geoms", [shown]):
            if isinstance(part, LineString) and not part.is_empty:
                self.canvas.stroke(Polyline(np.array(part.coords)), role)
                self.ink.append(part)

    def _levels(self) -> None:
        frame = self.window.frame
        for step in (*self.old, *self.new):
            if step.how is not How.LEVEL or not frame.bottom <= step.result <= frame.top:
                continue
            room = SIDE_ROOM * self.window.scale
            ends = [
                self.window.place(Point(x, step.result)) for x in (frame.left + room, frame.right - room / 9)
            ]
            self.stroke([tuple(end) for end in ends], Role.MARK)
            words = (step.label, LEVELS[step.draws])
            for index, word in enumerate(words):
                at = Point(ends[0].x - SIDE_ROOM + 0.5, ends[0].y - 0.8 - 2.6 * index + 1.3)
                bold = step in self.new
                self.canvas.text(word, at, 2.2, bold=bold)
                width = self.canvas.text_width(word, 2.2, bold=bold)
                self.ink.append(text_box(at, width, 2.2, angle=0, align=Align.LEFT))

    def _names(self) -> None:
        """Write front and back into the panels, near the middle of the part that shows."""
        frame = self.window.frame
        for panel in ("front", "back"):
            places = [self.scene.at(panel, i.at) for i in (*self.new, *self.old) if i.panel == panel and i.at]
            shown = [p for p in places if frame.bottom < p.y < frame.top]
            if not shown:
                continue
            xs, ys = [p.x for p in shown], [p.y for p in shown]
            middle = self.window.place(Point((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2))
            room = Room(self._inside(panel), clearance=1.0, step=3.0)
            room.take(shapely.union_all(self.ink))
            name = Line(panel.upper(), NAME, bold=True)
            for lines in ([name, *self.said], [name]):
                block = TextBlock.set(self.canvas, lines, SAID)
                corner = room.corner_for(block.width, block.height, wish=middle)
                if corner:
                    block.draw(self.canvas, corner)
                    low, right = corner.y - block.height, corner.x + block.width
                    self.ink.append(box(corner.x, low, right, corner.y))
                    break

    def _inside(self, panel: str) -> BaseGeometry:
        """Return the part of a panel that shows, or the window where its outline is not closed yet."""
        lines = [self.window.line(self.scene.curve(i)) for i in self.new if i.panel == panel and i.curve]
        # Places are rounded so that lines that end in one point meet there.
        drawn = shapely.union_all([LineString(line.flatten(0.1)) for line in lines], grid_size=0.001)
        whole = shapely.polygonize([drawn])
        return self.window.sheet if whole.is_empty else shapely.intersection(whole, self.window.sheet)

    def _line(self, step: Instruction, *, new: bool) -> None:
        if step.curve:
            sag = 0.01 * self.window.scale
            places = [
                tuple(self.window.place(Point(x, y))) for x, y in Path((self.scene.curve(step),)).flatten(sag)
            ]
            self.stroke(places, Role.PLAN if new else Role.FRAME)
            if new and step.how is How.CURVE:
                points = self.scene.points()
                first, last, one, two = (self.window.place(points[label]) for label in step.start)
                self.stroke([tuple(first), tuple(one)], Role.JOIN)
                self.stroke([tuple(last), tuple(two)], Role.JOIN)
        elif step.how is How.RULED and step.at and step.start[0] in self.scene.points():
            start, end = self.scene.points()[step.start[0]], self.scene.at(step.panel, step.at)
            grain = step.draws in (Drawn.CREASE_AT_KNEE, Drawn.CREASE_AT_HEM)
            if (end - start).length > 0.5 and (grain or not self.bare):
                ends = [tuple(self.window.place(p)) for p in (start, end)]
                self.stroke(ends, Role.GRAIN if grain else Role.RULER)

    def _points(self, steps: Sequence[Instruction], *, new: bool) -> Iterator[PointLabel]:
        """Draw the points of some steps and yield their labels, those in one place together."""
        together: dict[str, tuple[Point, list[str]]] = {}
        for step in steps:
            guide = step.label[-1].isalpha()
            if not step.at or (guide and not new):
                continue
            at = self.window.place(self.scene.at(step.panel, step.at))
            if not self.window.sheet.buffer(-1).contains(_dot(at)):
                continue
            self._mark(at, guide=guide)
            for place, names in together.values():
                if (place - at).length < ONE_PLACE:
                    names.append(step.label)
                    break
            else:
                together[step.label] = (at, [step.label])
        for place, names in together.values():
            yield PointLabel(", ".join(names), place, NEW if new else OLD, bold=new)

    def _mark(self, at: Point, *, guide: bool) -> None:
        if guide:
            for dx, dy in ((ARM, ARM), (ARM, -ARM)):
                self.canvas.stroke(line((at.x - dx, at.y - dy), (at.x + dx, at.y + dy)), Role.RULER)
        else:
            self.canvas.stroke(circle(at, RING), Role.FRAME)
        self.ink.append(_dot(at).buffer(RING))


def _dot(at: Point) -> BaseGeometry:
    return shapely.Point(at.x, at.y)


def until(
    draft: HandDraft, stage: Stage, panels: tuple[str, ...]
) -> tuple[list[Instruction], list[Instruction]]:
    """Return what stands before a stage and what is new in it, of some panels and the levels."""
    order = list(Stage)
    mine = [i for i in draft.instructions if i.panel in ("", *panels)]
    old = [i for i in mine if order.index(i.stage) < order.index(stage)]
    return old, [i for i in mine if i.stage is stage]
