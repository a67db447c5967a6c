"""How a measurement is marked on a drawing of the body: tapes round it and along it, heights, numbers."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from drafting.body.measurement_table import MEASUREMENTS, Need
from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector
from outputs.canvas.canvas import Align, Canvas, Outline, Polyline, Role, circle, line

NUMBERS = {key: number for number, key in enumerate(MEASUREMENTS, start=1)}
"""The number of each measurement on the sheet."""
SIZE = 2.9
"""Type size of the numbers, mm."""
RING = 2.5
"""Radius of the ring round the number of a needed measurement, mm."""
FLATNESS = 0.11
"""Height of a girth seen nearly edge-on, as a share of its width."""
BARB = Vector(0.55, 1.7)
"""Half width and length of an arrow head, mm."""
CLEAR = 0.9
"""Gap between a body and the line that leads from it, mm."""


@dataclass(frozen=True)
class Figure:
    """A body drawn on paper.

    Attributes:
        canvas: The paper.
        foot: Where the body's x = 0 stands on the floor, on paper.
        scale: Millimetres on paper of one of the body.
    """

    canvas: Canvas
    foot: Point
    scale: float

    def at(self, x: float, y: float) -> Point:
        """Return where a place of the body lies on paper."""
        return Point(self.foot.x + x * self.scale, self.foot.y + y * self.scale)

    def stroke(self, path: Path, role: Role = Role.BODY) -> None:
        """Draw a path of the body."""
        self.canvas.stroke(path.moved(lambda p: self.at(p.x, p.y)), role)

    def leader(self, *points: Point) -> None:
        """Draw a thin line through places on paper."""
        self.canvas.stroke(line(*(tuple(point) for point in points)), Role.DIMENSION)

    def number(self, key: str, middle: Point) -> None:
        """Write a measurement's number about a place on paper, in a ring when the draft needs it."""
        write_number(self.canvas, key, middle)

    def girth(self, key: str, left: Point, right: Point, number: Point) -> None:
        """Draw a girth about the chord between two places of the paper, its number at the end of a leader.

        The leader starts at the nearer end of the girth.
        """
        chord = right - left
        up = chord.left * FLATNESS
        for side, role in ((up * -1, Role.TAPE), (up, Role.HIDDEN)):
            self.canvas.stroke(_half_ellipse(left, right, side), role)
        near = min(left, right, key=lambda end: (number - end).length)
        way = (number - near).unit
        self.leader(near + way * CLEAR, number + way * -_reach(key))
        self.number(key, number)

    def height(
        self, key: str, x: float, low: float, high: float, *, at: float = 0.5, open_end: bool = False
    ) -> None:
        """Draw an upright dimension line at `x` on paper between two heights of paper.

        Args:
            key: The measurement.
            x: Where the line stands.
            low: Height of its foot.
            high: Height of its head.
            at: Where the number interrupts it, as a share from its foot.
            open_end: Whether it runs on beyond the drawing.
        """
        middle = low + (high - low) * at
        reach = RING + CLEAR
        self.leader(Point(x, low), Point(x, middle - reach))
        self.leader(Point(x, middle + reach), Point(x, high))
        _arrow(self.canvas, Point(x, low), Vector(0, -1))
        _arrow(self.canvas, Point(x, high), Vector(0, 1))
        if open_end:
            self.canvas.stroke(line((x, high), (x, high + 3)), Role.HIDDEN)
        self.number(key, Point(x, middle))

    def tape(self, path: Outline) -> None:
        """Draw a tape that lies along a path on paper."""
        self.canvas.stroke(path, Role.TAPE)

    def beside(self, contour: Path, low: float, high: float, off: float) -> Polyline:
        """Return, on paper, the part of a contour of the body between two levels, moved `off` mm in x."""
        found = [contour.crossing(y) for y in np.linspace(low, high, 25)]
        return line(*((self.at(p.x, p.y).x + off, self.at(p.x, p.y).y) for p in found if p))


def write_number(canvas: Canvas, key: str, middle: Point, *, ring: bool = True) -> None:
    """Write a measurement's number about a place, with `ring` in a ring when the draft needs it."""
    canvas.text(
        str(NUMBERS[key]), Point(middle.x, middle.y - 0.36 * SIZE), SIZE, bold=True, align=Align.CENTRE
    )
    if ring and is_needed(key):
        canvas.stroke(circle(middle, RING), Role.DIMENSION)


def is_needed(key: str) -> bool:
    """Return whether a draft needs the measurement, or it and one other in its place."""
    return MEASUREMENTS[key].need in (Need.NEEDED, Need.ONE_OF)


def _reach(key: str) -> float:
    """Return how far a leader keeps off the middle of a number, mm."""
    return RING if is_needed(key) else RING + 0.2


def _half_ellipse(left: Point, right: Point, bulge: Vector) -> Path:
    """Return half an ellipse over the chord, `bulge` being the way from its middle to its crown."""
    along = right - left
    crown = left.towards(right, 0.5) + bulge
    return Path(
        (Cubic.bent(left, bulge, crown, along, 0.5523), Cubic.bent(crown, along, right, -bulge, 0.5523))
    )


def _arrow(canvas: Canvas, tip: Point, way: Vector) -> None:
    across = way.left * BARB.x
    foot = tip + way * -BARB.y
    canvas.stroke(line(tuple(foot + across), tuple(tip), tuple(foot + -across)), Role.DIMENSION)


def arc(middle: Point, across: float, along: float, start: float, end: float) -> Polyline:
    """Return a part of an upright ellipse; half axes in mm, angles in degrees from the right, to the left."""
    angles = np.radians(np.linspace(start, end, math.ceil(abs(end - start) / 6) + 1))
    return Polyline(np.column_stack([middle.x + across * np.cos(angles), middle.y + along * np.sin(angles)]))
