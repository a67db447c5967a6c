"""The record of a draft: each point and line in the order of drawing, from what, which way, how far."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

from drafting.base.formula import Length
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector


class Stage(Enum):
    """What a step is part of; a panel is drawn in this order, but for what a later stage needs earlier."""

    FRAME = "frame and levels"
    PANEL = "front or back"
    LEG = "leg"
    CURVE = "curves"
    WAIST = "waist and dart"


@dataclass(frozen=True)
class Step:
    """One step of the draft.

    Attributes:
        panel: "front" or "back".
        stage: What it is part of.
        name: What the step draws.
        start: Names of the points or lines it starts from; behind the first, those that give the direction.
        way: The direction or the manner of the curve, in words.
        length: How far, with its formula; how high where two lines meet at a height; None for a line.
        direction: Unit vector of the direction, None for a line and where lines meet.
        drawn: The new point, or the new line.
    """

    panel: str
    stage: Stage
    name: str
    start: tuple[str, ...]
    way: str
    length: Length | None
    direction: Vector | None
    drawn: Point | Path


LEFT, RIGHT, UP, DOWN = Vector(-1, 0), Vector(1, 0), Vector(0, 1), Vector(0, -1)


@dataclass
class Construction:
    """The points and lines of one panel while it is being drawn."""

    panel: str
    stage: Stage = Stage.FRAME
    points: dict[str, Point] = field(default_factory=dict)
    lines: dict[str, Path] = field(default_factory=dict)
    steps: list[Step] = field(default_factory=list)

    def __getitem__(self, name: str) -> Point:
        """Return a point by its name; raises KeyError before it is drawn."""
        return self.points[name]

    def origin(self, name: str, at: Point, length: Length, way: str) -> Point:
        """Start the drawing with a first point, `length` above the floor."""
        return self._point(Step(self.panel, self.stage, name, ("floor",), way, length, UP, at))

    def go(
        self, name: str, start: str, direction: Vector, length: Length, way: str, by: tuple[str, ...] = ()
    ) -> Point:
        """Draw the point `length` from `start` along the unit vector `direction`.

        A direction that is neither level nor plumb is given `by` drawn points: towards the one, or square to
        the line through the two.
        """
        to = self.points[start] + direction * length.mm
        return self._point(Step(self.panel, self.stage, name, (start, *by), way, length, direction, to))

    def meet(
        self, name: str, start: tuple[str, ...], at: Point, way: str, length: Length | None = None
    ) -> Point:
        """Draw the point where two lines meet, with `length` its height above the last point of `start`."""
        return self._point(Step(self.panel, self.stage, name, start, way, length, None, at))

    def line(self, name: str, start: tuple[str, ...], path: Path, way: str) -> Path:
        """Draw a line or curve."""
        self.lines[name] = path
        self.steps.append(Step(self.panel, self.stage, name, start, way, None, None, path))
        return path

    def _point(self, step: Step) -> Point:
        assert isinstance(step.drawn, Point)
        self.points[step.name] = step.drawn
        self.steps.append(step)
        return step.drawn
