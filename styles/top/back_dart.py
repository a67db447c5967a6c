"""The back with a dart in place of the yoke: it reaches up to the band, and its waist is drawn closed."""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.block.waist_line import BlockPanel
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector, meeting
from drafting.geometry.solve import bisect, secant
from drafting.pieces.kinds import EdgeKind, PlaceKind, SeamKind
from drafting.pieces.pieces import Edge, Mark, MarkKind, Notch, NotchKind, Piece
from drafting.pieces.seams import Run, Seam
from styles.choice.style import Allowances, BackCut, Style
from styles.top.upper import back_at, back_top, seam_depth
from styles.top.yoke import Back, Crown, waist_to

_LEAST_LENGTH = 60.0
"""A dart runs down so far below the waistband seam at least, mm (common practice, no source)."""

_SHORT_OF_TIP = 10.0
"""The hole is drilled this far short of the tip, mm, so that the stitching hides it (common practice)."""

_ROUNDS = 8
"""Each round leaves less than a fifth of the miss."""


@dataclass(frozen=True)
class DartedBack:
    """The back from the worn level down, with one dart.

    Attributes:
        band: The back of a shaped band; None for a straight one.
        inner: The upper edge of the leg from the centre to the dart, or to the side where there is none.
        outer: From the dart to the side; None without a dart.
        tip: Where the dart ends; the same distance from both its legs' upper ends.
        side: From the upper edge to the hem.
        crotch: From the fork to the upper edge.
    """

    band: Crown | None
    inner: Path
    outer: Path | None
    tip: Point
    side: Path
    crotch: Path

    @property
    def dart_roof(self) -> Path:
        """The upper edge between the dart's legs: folded towards the centre it lies along the waist."""
        assert self.outer is not None, "there is no dart"
        first, last = self.inner.end, self.outer.start
        leg, back = (first - self.tip).unit, -self.inner.direction(self.inner.length)
        folded = leg * (2 * leg.dot(back)) + -back
        ridge = meeting(first, folded, self.tip, first.towards(last, 0.5) - self.tip)
        return Path.through([first, ridge, last])


def darted(panel: BlockPanel, style: Style) -> DartedBack:
    """Return the back with its darts gathered into one, the waist smooth and square when it is closed."""
    back = back_at(panel, style.below_waist, style.back_waist_least)
    band = seam_depth(style) - style.below_waist
    centre, side = back.crotch.reversed(), back.side
    tip, angle = _dart(panel, back, band)

    def closed(p: Point) -> Point:
        return p.turned(tip, angle)

    waist = Path((waist_to(centre, side.moved(closed)),))
    wanted = back.wanted(waist.length)
    if angle and wanted is not None:
        aim, reach = wanted, abs((side.start - tip).dot(_up(back)))

        def miss(tried: float) -> float:
            closing = side.moved(lambda p: p.turned(tip, tried))
            return waist_to(centre, closing).length - aim

        # Wider or narrower by what the waist is too long or too short.
        slope = -math.copysign(reach, angle)
        angle = secant(miss, angle, slope, enough=0.0, rounds=_ROUNDS)
        waist = Path((waist_to(centre, side.moved(closed)),))
    crown = None
    if band:
        above, centre = centre.split(band)
        side_above, side = side.split(band)
        upper, waist = waist, Path((waist_to(centre, side.moved(closed)),))
        crown = Crown(upper, side_above.moved(closed), waist.reversed(), above.reversed())
    if not angle:
        return DartedBack(crown, waist, None, tip, side, centre.reversed())
    place = _crossing(waist, tip, _up(back).turned(angle / 2))
    inner, outer = waist.split(place)
    outer = outer.moved(lambda p: p.turned(tip, -angle))
    return DartedBack(crown, inner, outer, tip, side, centre.reversed())


def back_band(panel: BlockPanel, style: Style) -> Crown | None:
    """Return the back of a shaped band, None for a straight one."""
    return darted(panel, style).band if style.back is BackCut.DART else back_top(panel, style).band


def _up(back: Back) -> Vector:
    """Return the direction of the dart's middle, upwards."""
    assert back.dart is not None, "there is no dart"
    inner, outer = back.dart
    return -(outer - inner).left.unit


def _dart(panel: BlockPanel, back: Back, band: float) -> tuple[Point, float]:
    """Return tip and angle of the gathered dart; an angle of 0 where there is none."""
    if back.dart is None:
        return back.side.start, 0.0
    inner, outer = back.dart
    middle = inner.towards(outer, 0.5)
    tips = [dart.tip.y for dart in panel.darts]
    tip = middle + _up(back) * -max(middle.y - sum(tips) / len(tips), band + _LEAST_LENGTH)
    return tip, (outer - tip).angle_to(inner - tip)


def _crossing(waist: Path, tip: Point, way: Vector) -> float:
    """Return where the waist, from the centre to the side, crosses the ray from the tip, mm along it."""
    return bisect(lambda at: way.cross(waist.point(at) - tip) > 0, 0.0, waist.length, within=1e-9)


def upper_edges(back: DartedBack, allowances: Allowances) -> tuple[Edge, ...]:
    """Return the leg's upper edge from the centre to the side."""
    if back.outer is None:
        return (Edge(EdgeKind.WAIST, back.inner, allowances.waist),)
    roof = back.dart_roof
    ends = ((PlaceKind.INNER_DART_LEG, 0.0), (PlaceKind.OUTER_DART_LEG, roof.length))
    notches = tuple(Notch(leg, at, NotchKind.SINGLE) for leg, at in ends)
    return (
        Edge(EdgeKind.WAIST, back.inner, allowances.waist),
        Edge(EdgeKind.DART, roof, allowances.waist, notches=notches),
        Edge(EdgeKind.OUTER_WAIST, back.outer, allowances.waist),
    )


def dart_marks(back: DartedBack) -> tuple[Mark, ...]:
    """Return the dart's legs, from the tip up, and the hole to drill."""
    if back.outer is None:
        return ()
    inner, outer = back.inner.end, back.outer.start
    up = (inner.towards(outer, 0.5) - back.tip).unit
    hole = back.tip + up * _SHORT_OF_TIP
    return (
        Mark(PlaceKind.INNER_DART_LEG, MarkKind.LINE, Path.through([back.tip, inner])),
        Mark(PlaceKind.OUTER_DART_LEG, MarkKind.LINE, Path.through([back.tip, outer])),
        Mark(PlaceKind.DART_TIP, MarkKind.DRILL, Path.through([hole, hole + up])),
    )


def dart_seams(leg: Piece, back: DartedBack) -> tuple[Seam, ...]:
    """Return the seam of the dart, leg to leg, on the back leg."""
    if back.outer is None:
        return ()
    inner, outer = Run(leg.id, EdgeKind.INNER_DART_LEG), Run(leg.id, EdgeKind.OUTER_DART_LEG)
    return (Seam(SeamKind.BACK_DART, (inner,), (outer,), side=leg.side),)
