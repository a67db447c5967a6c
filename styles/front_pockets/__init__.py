"""Kinds of front pocket, one module each: its function `edge` takes a `Mouth`, gives the edge of the opening.

A module that is put here is offered under its own name as `front_pocket.kind`; facing, bag and watch pocket
follow from the edge's two ends.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry.points import Point, Vector


@dataclass(frozen=True)
class Mouth:
    """Where the pocket of a right front opens. Its edge is a path from `corner` to `end`.

    It stays between the corner's plumb line and the level of the end, so that facing and bag lie behind it,
    and bends nowhere more tightly than a seam allowance can be turned.

    Attributes:
        corner: Its upper end, on the waist.
        down: The way into the front there, square to the waist; a unit vector.
        end: Its lower end, on the side seam.
        out: The way out of the front there, square to the side seam; a unit vector.
        scoop: 0 for a straight slant, up to 1 for a deep scoop.
    """

    corner: Point
    down: Vector
    end: Point
    out: Vector
    scoop: float
