"""The record of a draft: each point and line in the order of drawing, from what, which way, how far."""

from __future__ import annotations

from dataclasses import dataclass, field

from drafting.formula import Length
from drafting.paths import Path
from drafting.points import Point, Vector


@dataclass(frozen=True)
class Step:
    """One step of the draft.

    Attributes:
        panel: "front" or "back".
        name: What the step draws.
        start: Names of the points or lines it starts from.
        way: The direction or the manner of the curve, in words.
        length: How far, with its formula; None for a curve or a point where lines meet.
        direction: Unit vector of the direction, None for a curve.
        drawn: The new point, or the new line.
    """

    panel: str
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
    points: dict[str, Point] = field(default_factory=dict)
    lines: dict[str, Path] = field(default_factory=dict)
    steps: list[Step] = field(default_factory=list)

    def __getitem__(self, name: str) -> Point:
        """Return a point by its name; raises KeyError before it is drawn."""
        return self.points[name]

    def origin(self, name: str, at: Point, length: Length, way: str) -> Point:
        """Start the drawing with a first point, `length` above the floor."""
        return self._point(Step(self.panel, name, ("floor",), way, length, UP, at))

    def go(self, name: str, start: str, direction: Vector, length: Length, way: str) -> Point:
        """Draw the point `length` from `start` along the unit vector `direction`."""
        to = self.points[start] + direction * length.mm
        return self._point(Step(self.panel, name, (start,), way, length, direction, to))

    def meet(self, name: str, start: tuple[str, ...], at: Point, way: str) -> Point:
        """Draw the point where two lines meet."""
        return self._point(Step(self.panel, name, start, way, None, None, at))

    def line(self, name: str, start: tuple[str, ...], path: Path, way: str) -> Path:
        """Draw a line or curve."""
        self.lines[name] = path
        self.steps.append(Step(self.panel, name, start, way, None, None, path))
        return path

    def _point(self, step: Step) -> Point:
        assert isinstance(step.drawn, Point)
        self.points[step.name] = step.drawn
        self.steps.append(step)
        return step.drawn
