"""Belt loops: one strip to cut them from, and where they stand on the waist seam."""

from __future__ import annotations

from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.kinds import EdgeKind, PieceKind, PlaceKind
from drafting.pieces.pieces import Cutting, Edge, Mark, MarkKind, Notch, NotchKind, Piece
from styles.base.part import Part
from styles.choice.style import Style
from styles.parts.shaped_band import WaistNotches

WIDTH = 14.0
"""Finished width, mm; 5/8 in on a work-pant sheet, 1/2 in on lighter jeans (from memory)."""

_SHORTEST = 100.0
"""Each loop is cut 4 in long (a sewing blog's jeans series, 2013)."""

_TURNED = 50.0
"""What a loop needs beyond the height of the band: ends turned in and room for a belt (common practice)."""

_USUAL, _MANY = 5, 7
"""Five loops are usual, seven are put on some western makes (a denim magazine, 2012)."""

_LARGE_WAIST = 1000.0
"""From this girth on, mm, five would stand too far apart: some 200 (common practice, no source)."""

_CLEAR_OF_SEAM = 12.0
"""A loop keeps its middle this far from the side seam, mm, where the cloth is thick (common practice)."""


def loop_count(waist: float) -> int:
    """Return how many loops a waist of so many mm of full girth needs."""
    return _MANY if waist >= _LARGE_WAIST else _USUAL


def loop_length(style: Style) -> float:
    """Return how long each loop is cut, mm."""
    return max(_SHORTEST, style.band_height + _TURNED)


def belt_loops(style: Style, waist: float) -> Part:
    """Return the strip for the loops of a waist of so many mm, marked where it is cut.

    Its long edges are folded in behind, one over the other, so that the strip is three layers thick.
    """
    length = loop_length(style)
    whole = length * loop_count(waist)
    corners = [Point(0, 0), Point(whole, 0), Point(whole, WIDTH), Point(0, WIDTH)]
    turned_in = (
        (EdgeKind.STRIP_LOWER, WIDTH),
        (EdgeKind.STRIP_FAR_END, 0.0),
        (EdgeKind.STRIP_UPPER, WIDTH),
        (EdgeKind.STRIP_NEAR_END, 0.0),
    )
    edges = tuple(
        Edge(kind, Path.through([a, b]), width)
        for (kind, width), a, b in zip(turned_in, corners, [*corners[1:], corners[0]], strict=True)
    )
    cuts = tuple(
        Mark(PlaceKind.CUT, MarkKind.LINE, Path.through([Point(x, 0), Point(x, WIDTH)]))
        for x in (length * number for number in range(1, loop_count(waist)))
    )
    grain = Path.through([Point(length * 0.1, WIDTH / 2), Point(length * 0.9, WIDTH / 2)])
    return Part((Piece(PieceKind.BELT_LOOPS, edges, grain, Cutting(), cuts),))


def loop_places(front: float, back: float, count: int) -> WaistNotches:
    """Return where loops stand on one half of the waist seam, evenly all round from one at the centre back.

    Args:
        front: Length of the front's waist seam from the centre to the side, mm.
        back: The same of the back.
        count: An odd number of loops on the whole waist; the one at the centre back stands on its seam or
            fold and gets no notch.
    """
    apart = 2 * (front + back) / count
    on_front, on_back = [], []
    for number in range(1, count // 2 + 1):
        place = number * apart
        if abs(place - back) < _CLEAR_OF_SEAM:
            place = back - _CLEAR_OF_SEAM
        if place < back:
            on_back.append(Notch(PlaceKind.LOOP, place, NotchKind.DOUBLE, number))
        else:
            on_front.append(Notch(PlaceKind.LOOP, front + back - place, NotchKind.SINGLE, number))
    return WaistNotches(tuple(reversed(on_front)), tuple(on_back))
