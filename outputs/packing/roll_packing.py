"""Pieces packed on paper of a fixed width as short as found, some of them turned by half a turn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from shapely.affinity import affine_transform, rotate, translate
from shapely.geometry import Polygon

from outputs.packing.cells import reach, stamp
from outputs.packing.layout import EDGE, GAP, Layout, StandingPiece
from outputs.packing.strip_packing import Blank, cells_across, shortest, slides

EXCHANGED = (0, 1, 1, 0, 0, 0)
"""Makes x of y and y of x: shapes that are packed short that way lie narrow."""


@dataclass(frozen=True)
class Spot:
    """Where a shape lies: the lower left corner of its box in mm, and whether it is turned by half a turn."""

    left: float
    bottom: float
    turned: bool


def packed_short(shapes: Sequence[Polygon], *, width: float) -> list[Spot]:
    """Return where shapes, none wider than that less twice EDGE, lie on a strip of `width` mm."""
    room = width - 2 * EDGE
    columns, cell = cells_across(room + 2 * reach(GAP))
    stamps = [stamp(shape, cell=cell, gap=GAP) for shape in shapes]
    blanks = [Blank((one, one.upside_down), shape.area) for one, shape in zip(stamps, shapes, strict=True)]
    places, laid = shortest(blanks, columns), []
    for shape, place in zip(shapes, places, strict=True):
        lying = rotate(shape, 180) if place.stamp.turned else shape
        x, y = (EDGE - reach(GAP) + corner for corner in place.corner)
        laid.append(translate(lying, x - lying.bounds[0], y - lying.bounds[1]))
    ways = slides(laid, end=EDGE, gap=GAP)
    return [
        Spot(shape.bounds[0], shape.bounds[1] - way, place.stamp.turned)
        for shape, way, place in zip(laid, ways, places, strict=True)
    ]


def packed_narrow(shapes: Sequence[Polygon], *, height: float) -> list[Spot]:
    """Return where shapes, none higher than that less twice EDGE, lie on an area `height` mm high."""
    spots = packed_short([affine_transform(shape, EXCHANGED) for shape in shapes], width=height)
    return [Spot(spot.bottom, spot.left, spot.turned) for spot in spots]


def laid(pieces: Sequence[StandingPiece], spots: Sequence[Spot]) -> Layout:
    """Return the pieces in their places, on the area that they need."""
    return Layout.round(
        (piece.upside_down if spot.turned else piece).at(spot.left, spot.bottom)
        for piece, spot in zip(pieces, spots, strict=True)
    )
