"""What every output draws on: strokes with a role, and text; millimetres, x to the right, y up.

A drawing is made once, on the `Canvas` protocol, and each output (PDF page, SVG, picture) decides how a role
looks on its own paper. `Recording` is a canvas that keeps what was drawn: to ask where there is still room,
to repeat it on another canvas, and to look at it in a test.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import Enum
from typing import Protocol

import numpy as np
from shapely.geometry import GeometryCollection, LineString, Polygon
from shapely.geometry.base import BaseGeometry

from drafting.base.tolerance import FLATTEN
from drafting.geometry.curves import Coordinates
from drafting.geometry.paths import Pen
from drafting.geometry.points import Point


class Role(Enum):
    """What a stroke means; an output gives each role its own pattern and weight, never a colour alone."""

    CUT = "cut line"
    SEW = "sew line"
    FOLD = "fold of the cloth"
    GRAIN = "grain line"
    ARROW = "arrow head"
    NOTCH = "notch"
    MARK = "line to transfer"
    DRILL = "point to mark"
    JOIN = "join of two sheets"
    CROSS = "cross on a join"
    RULER = "ruler"
    FRAME = "frame"
    PLAN = "piece on a map"
    BODY = "outline of a body"
    TAPE = "tape on the body"
    HIDDEN = "tape behind the body"
    DIMENSION = "measured straight"
    LEVEL = "level or crease behind a drawing"
    STYLE_1 = "first of several styles"
    STYLE_2 = "second"
    STYLE_3 = "third"
    STYLE_4 = "fourth"
    STYLE_5 = "fifth"
    STYLE_6 = "sixth"
    STYLE_7 = "seventh"
    STYLE_8 = "eighth"
    STYLE_9 = "ninth"
    STYLE_10 = "tenth"
    STYLE_11 = "eleventh"
    STYLE_12 = "twelfth"


@dataclass(frozen=True)
class LineStyle:
    """Width, and lengths of dash, gap, dash, gap ... in mm; no dash is a solid line.

    Ends are round; in a PDF they are cut off `square` where a line is measured or may end at the border
    without ink.
    """

    width: float
    dash: tuple[float, ...] = ()
    square: bool = False


# A line under 0.15 mm can vanish on a home printer, a cut line needs 0.35 mm (common practice, no source).
LINE_STYLES = {
    Role.CUT: LineStyle(0.5),
    Role.SEW: LineStyle(0.3, (4.0, 2.2)),
    Role.FOLD: LineStyle(0.5, (9.0, 2.0, 0.6, 2.0, 0.6, 2.0)),
    Role.GRAIN: LineStyle(0.4, (12.0, 2.2, 1.2, 2.2)),
    Role.ARROW: LineStyle(0.4),
    Role.NOTCH: LineStyle(0.5),
    Role.MARK: LineStyle(0.25, (1.6, 1.4)),
    Role.DRILL: LineStyle(0.25),
    Role.JOIN: LineStyle(0.2, (0.1, 1.3)),
    Role.CROSS: LineStyle(0.18),
    Role.RULER: LineStyle(0.15, square=True),
    Role.FRAME: LineStyle(0.2, square=True),
    Role.PLAN: LineStyle(0.35),
    Role.BODY: LineStyle(0.3),
    Role.TAPE: LineStyle(0.5, (1.5, 1.1)),
    Role.HIDDEN: LineStyle(0.2, (0.5, 0.9)),
    Role.DIMENSION: LineStyle(0.2),
    Role.LEVEL: LineStyle(0.15, (0.1, 1.4)),
    # Told apart in black and white; those that are most often drawn together differ most.
    Role.STYLE_1: LineStyle(0.5),
    Role.STYLE_2: LineStyle(0.4, (3.2, 1.4)),
    Role.STYLE_3: LineStyle(0.5, (0.1, 1.3)),
    Role.STYLE_4: LineStyle(0.4, (5.0, 1.3, 0.1, 1.3)),
    Role.STYLE_5: LineStyle(0.25),
    Role.STYLE_6: LineStyle(0.35, (1.2, 1.2)),
    Role.STYLE_7: LineStyle(0.4, (8.0, 1.6)),
    Role.STYLE_8: LineStyle(0.4, (4.0, 1.3, 0.1, 1.3, 0.1, 1.3)),
    Role.STYLE_9: LineStyle(0.25, (2.4, 1.2)),
    Role.STYLE_10: LineStyle(0.4, (7.0, 1.3, 1.6, 1.3)),
    Role.STYLE_11: LineStyle(0.3, (0.1, 0.8, 0.1, 2.0)),
    Role.STYLE_12: LineStyle(0.9, (0.1, 2.6)),
}

CAPITAL = 0.73
"""Height of capitals and digits as a share of the type size in DejaVu Sans."""

STYLE_ROLES = tuple(role for role in Role if role.name.startswith("STYLE_"))
"""By the place of a style among several."""


class Align(Enum):
    """Which part of a text's baseline stands at its point: 0 the left end, 1 the right end."""

    LEFT = 0.0
    CENTRE = 0.5
    RIGHT = 1.0


class Outline(Protocol):
    """Anything that can be stroked; `drafting.geometry.paths.Path` is one."""

    def draw(self, pen: Pen) -> None:
        """Draw the outline as one stroke."""

    def flatten(self, sag: float = ...) -> Coordinates:
        """Return points, shape (n, 2), whose chords stay within `sag` millimetres."""


@dataclass(frozen=True, eq=False)
class Polyline:
    """Straight strokes through points of shape (n, 2); a closed one returns to its first point."""

    points: Coordinates
    closed: bool = False

    def draw(self, pen: Pen) -> None:
        """Draw the points as one stroke."""
        first, *rest = (Point(x, y) for x, y in self.flatten().tolist())
        pen.move_to(first)
        for point in rest:
            pen.line_to(point)

    def flatten(self, sag: float = FLATTEN) -> Coordinates:
        """Return the points, the first repeated at the end when closed."""
        return np.vstack([self.points, self.points[:1]]) if self.closed else self.points


def line(*points: Iterable[float]) -> Polyline:
    """Return the open polyline through the points, each an x and a y."""
    return Polyline(np.array([tuple(point) for point in points]))


def rectangle(left: float, bottom: float, right: float, top: float) -> Polyline:
    """Return the closed rectangle between two corners."""
    return Polyline(np.array([(left, bottom), (right, bottom), (right, top), (left, top)]), closed=True)


def circle(middle: Point, radius: float) -> Polyline:
    """Return a circle as a closed polygon of 32 corners, for signs of a few millimetres."""
    angles = np.linspace(0, 2 * np.pi, 32, endpoint=False)
    return Polyline(
        np.array(tuple(middle)) + radius * np.column_stack([np.cos(angles), np.sin(angles)]), closed=True
    )


class Ruler(Protocol):
    """Whatever knows how wide a text comes out."""

    def text_width(self, string: str, size: float, *, bold: bool = False) -> float:
        """Return the width of `string` in millimetres, set in a type of `size` millimetres."""


class Canvas(Ruler, Protocol):
    """A surface in millimetres to draw on."""

    def stroke(self, outline: Outline, role: Role) -> None:
        """Draw the outline in the style of its role."""

    def text(
        self,
        string: str,
        at: Point,
        size: float,
        *,
        angle: float = 0.0,
        bold: bool = False,
        align: Align = Align.LEFT,
    ) -> None:
        """Write one line of `size` mm, its baseline through `at`, turned left by `angle` degrees."""


@dataclass(frozen=True)
class Stroke:
    """One recorded stroke."""

    outline: Outline
    role: Role


@dataclass(frozen=True)
class Lettering:
    """One recorded line of text; `width` is its length in millimetres."""

    string: str
    at: Point
    size: float
    angle: float
    bold: bool
    align: Align
    width: float

    @property
    def box(self) -> Polygon:
        """The ground the text stands on."""
        return text_box(self.at, self.width, self.size, angle=self.angle, align=self.align)


class Recording:
    """A canvas that keeps what is drawn on it, measuring text with another's ruler."""

    def __init__(self, ruler: Ruler) -> None:
        """Start empty."""
        self.ruler = ruler
        self.strokes: list[Stroke] = []
        self.texts: list[Lettering] = []

    def text_width(self, string: str, size: float, *, bold: bool = False) -> float:
        """Return the width that the ruler gives."""
        return self.ruler.text_width(string, size, bold=bold)

    def stroke(self, outline: Outline, role: Role) -> None:
        """Keep the stroke."""
        self.strokes.append(Stroke(outline, role))

    def text(
        self,
        string: str,
        at: Point,
        size: float,
        *,
        angle: float = 0.0,
        bold: bool = False,
        align: Align = Align.LEFT,
    ) -> None:
        """Keep the text."""
        width = self.text_width(string, size, bold=bold)
        self.texts.append(Lettering(string, at, size, angle, bold, align, width))

    def play(self, canvas: Canvas) -> None:
        """Draw everything again on another canvas, strokes first."""
        for stroke in self.strokes:
            canvas.stroke(stroke.outline, stroke.role)
        for t in self.texts:
            canvas.text(t.string, t.at, t.size, angle=t.angle, bold=t.bold, align=t.align)

    def ink(self, sag: float = 0.1) -> BaseGeometry:
        """Return all strokes as lines and all texts as boxes, in one collection."""
        lines = [LineString(stroke.outline.flatten(sag)).simplify(sag) for stroke in self.strokes]
        return GeometryCollection([*lines, *(text.box for text in self.texts)])


def text_box(at: Point, width: float, size: float, *, angle: float, align: Align) -> Polygon:
    """Return the rectangle that a line of text covers: 0.24 of its size below the baseline to 0.78 above.

    That is how far plain letters of DejaVu Sans reach.
    """
    left = -align.value * width
    corners: Sequence[tuple[float, float]] = [
        (left, -0.24 * size),
        (left + width, -0.24 * size),
        (left + width, 0.78 * size),
        (left, 0.78 * size),
    ]
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    return Polygon([(at.x + c * x - s * y, at.y + s * x + c * y) for x, y in corners])
