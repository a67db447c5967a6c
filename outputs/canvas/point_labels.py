"""Labels beside points, off every line and off each other; one that must stand away gets a leader."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import shapely
from shapely.geometry import LineString
from shapely.geometry.base import BaseGeometry

from drafting.geometry.points import Point
from outputs.canvas.canvas import Align, Canvas, Role, line, text_box

REACHES = (1.3, 2.2, 3.6, 5.5, 8.0, 11.0)
"""Distances from the point that are tried, mm; from the third on a leader is drawn."""
LEADER_FROM = 3.0
DIRECTIONS = 16
PASSING = 0.6
"""A leader that comes this near another point seems to mean that one, mm."""
CLEAR = 0.35
"""Between a label and any line, mm."""


@dataclass(frozen=True)
class PointLabel:
    """What stands beside a point."""

    text: str
    at: Point
    size: float
    bold: bool = False


def draw_point_labels(
    canvas: Canvas,
    labels: Sequence[PointLabel],
    ink: Sequence[BaseGeometry],
    *,
    within: shapely.Polygon | None = None,
) -> int:
    """Write each label at the nearest free place and return how many found none and stand on a line.

    A label that stands nearer to another's point than to its own gets a leader.

    Args:
        canvas: What they are written on.
        labels: Those of places that coincide are better given as one.
        ink: What is drawn there already, mm on the canvas.
        within: Where labels may stand; anywhere when None.
    """
    taken: list[BaseGeometry] = [*ink]
    crowded = 0
    for label in labels:
        others = shapely.MultiPoint([tuple(o.at) for o in labels if o is not label])
        tree = shapely.STRtree(taken)
        best = None
        for reach, angle in _places():
            box, at = _box(canvas, label, reach, angle)
            hits = tree.query(box.buffer(CLEAR), predicate="intersects")
            leader = LineString([tuple(label.at), tuple(at)])
            crossed = [h for h in tree.query(leader, predicate="intersects") if h >= len(ink)]
            outside = within is not None and not within.covers(box)
            if reach < LEADER_FROM:
                own = shapely.Point(tuple(label.at)).distance(box)
                unclear = bool(others.distance(box) < own - 0.1)
            else:
                unclear = bool(others.distance(leader) < PASSING)
            # To be read comes before to be told apart.
            cost = len(hits) + 2 * len(crossed) + outside, unclear
            if best is None or cost < best[0]:
                best = (cost, box, at, reach)
            if not any(cost):
                break
        assert best is not None
        cost, box, at, reach = best
        crowded += cost[0] > 0
        if reach >= LEADER_FROM:
            near = label.at + (at - label.at).unit * 0.9
            canvas.stroke(line(near, at), Role.RULER)
            taken.append(LineString([tuple(near), tuple(at)]))
        left, bottom, _, _ = box.bounds
        canvas.text(
            label.text, Point(left, bottom + 0.24 * label.size), label.size, bold=label.bold, align=Align.LEFT
        )
        taken.append(box)
    return crowded


def _places() -> list[tuple[float, float]]:
    # up to the right first, as one writes; then round and outwards
    turns = sorted(range(DIRECTIONS), key=lambda k: min(abs(k - 2), DIRECTIONS - abs(k - 2)))
    return [(reach, 2 * math.pi * k / DIRECTIONS) for reach in REACHES for k in turns]


def _box(canvas: Canvas, label: PointLabel, reach: float, angle: float) -> tuple[shapely.Polygon, Point]:
    """Return the label's ground and the point of it that is nearest to its place."""
    width = canvas.text_width(label.text, label.size, bold=label.bold)
    height = 1.02 * label.size
    c, s = math.cos(angle), math.sin(angle)
    near = Point(label.at.x + reach * c, label.at.y + reach * s)
    middle = Point(near.x + c * width / 2, near.y + s * height / 2)
    at = Point(middle.x - width / 2, middle.y - height / 2 + 0.24 * label.size)
    return text_box(at, width, label.size, angle=0, align=Align.LEFT), near
