"""The block as it comes out of the needle: outlines, sewn corners and bends, measured apart from the engine.

Girths are measured on the outline (a polygon cut by a level line), angles on the ends of the paths, so
that a number of the engine is never compared with itself.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from shapely.geometry import LineString, Polygon

from drafting.block.block import Block
from drafting.block.waist_line import BlockPanel
from drafting.geometry.paths import Path
from drafting.geometry.points import Vector
from tests.fairness import bend_changes, largest_turn

SAG = 0.02
"""Chords of the outlines stay this close to the curves, mm: a width is then right to 0.04 mm."""


def outline(panel: BlockPanel) -> Polygon:
    """Return the sew line of a panel, open darts cut straight across."""
    *inner, last = (part.flatten(SAG) for part in panel.waist)
    side, inseam, crotch = (
        path.flatten(SAG) for path in (panel.side, panel.lower.inseam, panel.lower.crotch)
    )
    # Where two edges meet, one point is left out; across a dart and along the hem both ends stay.
    return Polygon(np.vstack([*inner, last[:-1], side, inseam[:-1], crotch[:-1]]))


def width_at(shape: Polygon, y: float) -> float:
    """Return how wide a shape is at the level `y`."""
    return float(shape.intersection(LineString([(-2000, y), (2000, y)])).length)


def leg_girth(block: Block, y: float) -> float:
    """Return the girth of one leg at the level `y`, on the outlines; above the floor and below the forks."""
    return sum(width_at(outline(panel), y) for panel in (block.front, block.back))


def corner(before: Path, after: Path) -> float:
    """Return the angle in degrees between two edges that leave and meet one corner, each given away from
    it."""
    return math.degrees(abs(before.direction(0).angle_to(after.direction(0))))


@dataclass(frozen=True)
class Joins:
    """How far the sewn corners are from what they should be, degrees, each as an amount above zero."""

    crotch: float
    centre_front: float
    centre_back: float
    side_waist: float
    dart: float

    def within(self) -> bool:
        """Return whether a sewer sees smooth lines: 3 degrees, 5 at the side of the waist (common
        practice).
        """
        return max(self.crotch, self.centre_front, self.centre_back, self.dart) <= 3 and self.side_waist <= 5


def joins(block: Block) -> Joins:
    """Return the misses of the sewn corners."""
    front, back = block.front, block.back
    forks, centres, sides = [], [], []
    for panel in (front, back):
        forks.append(corner(panel.lower.crotch, panel.lower.inseam.reversed()))
        centres.append(corner(panel.waist[0], panel.lower.crotch.reversed()))
        sides.append(corner(panel.waist[-1].reversed(), panel.side))
    return Joins(
        crotch=abs(sum(forks) - 180),
        centre_front=abs(centres[0] - 90),
        centre_back=abs(centres[1] - 90),
        side_waist=abs(sum(sides) - 180),
        dart=largest_turn(back.closed_waist),
    )


def unfair_lines(block: Block) -> list[str]:
    """Return the lines that bend back where a cutter would draw one sweep."""
    unfair = []
    for panel in (block.front, block.back):
        swept = {
            "crotch seam": panel.lower.crotch,
            "waist": panel.closed_waist,
            "inseam": panel.lower.inseam,
        }
        unfair += [f"{panel.name} {name}" for name, path in swept.items() if bend_changes(path)]
        if len(bend_changes(Path(panel.side.curves[1:]))) > 1:
            unfair.append(f"{panel.name} side seam below the hip")
    if _bend(block.front.lower.crotch) * _bend(block.back.lower.crotch) < 0:
        unfair.append("crotch seam across the inseam")
    return unfair


def _bend(path: Path) -> float:
    """Return how far the path turns from end to end, radians, left positive."""
    turn, before = 0.0, path.direction(0)
    for distance in np.linspace(0, path.length, 40)[1:]:
        after: Vector = path.direction(float(distance))
        turn, before = turn + before.angle_to(after), after
    return turn
