"""The straight waistband: one strip, folded along its upper edge, that stands above the waist seam."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import accumulate

from drafting.body.measurements import Side
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.kinds import EdgeKind, PieceKind, PlaceKind, SeamKind
from drafting.pieces.pieces import Cutting, Edge, Mark, MarkKind, Notch, Piece
from drafting.pieces.seams import Run, Seam
from styles.base.part import Part
from styles.choice.style import Style
from styles.parts.fly_length import shield_width
from styles.parts.shaped_band import HOLE, HOLE_FROM_END, SHANK, WaistNotches, from_the_end, lapping_side

_CLEAR = 5.0
"""A grain line across the strip keeps this far from its edges, mm (common practice)."""


@dataclass(frozen=True)
class HalfWaist:
    """The waist seam of one half as the pieces have it, pockets and yoke sewn, mm."""

    front: float
    back: float
    notches: WaistNotches = field(default_factory=WaistNotches)


SEWN_TO_FRONT = {Side.LEFT: EdgeKind.LEFT_FRONT_WAIST, Side.RIGHT: EdgeKind.RIGHT_FRONT_WAIST}
SEWN_TO_BACK = {Side.LEFT: EdgeKind.LEFT_BACK_WAIST, Side.RIGHT: EdgeKind.RIGHT_BACK_WAIST}
"""The edges of a straight band that are sewn to the front and to the back of one side."""


def straight_band(halves: Sequence[HalfWaist], style: Style, *, along: bool = True) -> Part:
    """Return a straight band: one strip as long as the waist seam and the underlap, folded along its middle.

    Seen from outside it runs from the left front's end over the back to the right front's, the waist seam
    below.

    Args:
        halves: One for both sides, or the right and the left half.
        style: The style.
        along: Whether the warp runs along the strip, as is usual; across, the strip shrinks as the waist
            seam does.
    """
    right, left = halves[0], halves[-1]
    spans = [
        _Span(SEWN_TO_FRONT[Side.LEFT], left.front, left.notches.front),
        _Span(SEWN_TO_BACK[Side.LEFT], left.back, from_the_end(left.notches.back, left.back)),
        _Span(SEWN_TO_BACK[Side.RIGHT], right.back, right.notches.back),
        _Span(SEWN_TO_FRONT[Side.RIGHT], right.front, from_the_end(right.notches.front, right.front)),
    ]
    shield = _Span(EdgeKind.SHIELD_SEAM, shield_width(style))
    left_laps = lapping_side(style) is Side.LEFT
    spans = [*spans, shield] if left_laps else [shield, *spans]
    allowances, height = style.allowances, 2 * style.band_height
    ends = list(accumulate((span.length for span in spans), initial=0.0))
    strip = ends[-1]
    edges = (
        *(
            Edge(span.edge, _level(a, b, 0.0), allowances.waist, notches=span.notches)
            for span, a, b in zip(spans, ends, ends[1:], strict=False)
        ),
        Edge(EdgeKind.RIGHT_FRONT_END, _plumb(strip, 0.0, height), allowances.small),
        Edge(EdgeKind.INNER, _level(strip, 0.0, height), allowances.waist),
        Edge(EdgeKind.LEFT_FRONT_END, _plumb(0.0, height, 0.0), allowances.small),
    )
    middle, quarter = strip / 2, height / 4
    first = 0 if left_laps else 1
    met = (PlaceKind.LEFT_SIDE_SEAM, PlaceKind.CENTRE_BACK, PlaceKind.RIGHT_SIDE_SEAM)
    seams = zip(met, ends[first + 1 : first + 4], strict=True)
    centre, inwards = (ends[4], -1) if left_laps else (ends[1], 1)
    lapped = 0.0 if left_laps else strip
    hole = [lapped - inwards * HOLE_FROM_END, lapped - inwards * (HOLE_FROM_END + HOLE)]
    at = Point(centre - inwards * (HOLE_FROM_END + SHANK), quarter)
    marks = (
        Mark(PlaceKind.FOLD, MarkKind.LINE, _level(0.0, strip, height / 2)),
        *(Mark(seam, MarkKind.LINE, _plumb(x, 0.0, height)) for seam, x in seams),
        Mark(PlaceKind.CENTRE_FRONT, MarkKind.LINE, _plumb(centre, 0.0, height)),
        Mark(PlaceKind.BUTTONHOLE, MarkKind.LINE, _level(hole[0], hole[1], quarter)),
        Mark(PlaceKind.BUTTON, MarkKind.DRILL, _level(at.x, at.x + 1, quarter)),
    )
    grain = (
        _level(middle - strip / 4, middle + strip / 4, 3 * quarter)
        if along
        else _plumb(middle + 2 * _CLEAR, _CLEAR, height - _CLEAR)
    )
    band = Piece(PieceKind.STRAIGHT_BAND, edges, grain, Cutting(), marks)
    outside = tuple(Run(band.id, span.edge) for span in spans)
    inside = Seam(SeamKind.BAND_INSIDE, (Run(band.id, EdgeKind.INNER, backwards=True),), outside)
    return Part((band,), (inside,))


@dataclass(frozen=True)
class _Span:
    """A stretch of the straight band's lower edge; notches from its left end."""

    edge: EdgeKind
    length: float
    notches: tuple[Notch, ...] = ()


def _level(a: float, b: float, y: float) -> Path:
    return Path.through([Point(a, y), Point(b, y)])


def _plumb(x: float, a: float, b: float) -> Path:
    return Path.through([Point(x, a), Point(x, b)])
