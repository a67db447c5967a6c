"""The front leg: the front below the waistband with the pocket opening cut out of its upper corner."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from drafting.curves import Cubic
from drafting.paths import Path
from drafting.pieces import Edge, Finish, Mark, MarkKind, Notch, NotchKind, Piece
from drafting.points import Point
from styles.back_leg import FromHem
from styles.edges import CROTCH, HEM, INSEAM, OPENING, SIDE, WAIST
from styles.fly_length import ZIP_STOP, FlyLength, facing_width
from styles.hem import hem_line
from styles.parts import HalfOf, Part
from styles.style import Style
from styles.upper import Front, front_at, seam_depth

FRONT_LEG = "front leg"

FACING_OVERLAP, BAG_OVERLAP = 30.0, 40.0
"""How far the facing and the bag reach in beyond the pocket corner at least, mm (common practice)."""

_WIDEST = 0.45
"""The opening takes no larger share of the front's waist (common practice, no source)."""

_FLATTEST = 2.0
"""It is at most this many times as wide as deep; a flatter scoop bends too tightly to be turned (common
practice)."""

_ABOVE_HIP = 10.0
"""The opening ends this far above hip level at least, mm, so that the hip notch stays on the front leg."""

_LEAST_DEPTH = 40.0
"""An opening less deep takes no hand, mm (common practice); where the hip is so near it passes it."""

_FLY_CLEAR = 5.0
"""The bag keeps this far from the fly facing at the waist, mm."""

_FULL_BEND = 0.5
"""From this scoop on the opening is square to waist and side; below it flattens towards a straight slant."""

_QUARTER_ROUND, _DEEPEST, _ROUNDEST = 0.55, 0.75, 0.9
"""Handles of the opening as shares of the way to its corner: a quarter ellipse, the deepest scoop, and the
shorter handle of a very flat one."""

_CLEAR = 50.0
"""The grain line keeps this far from the hem so that its arrow stays inside, mm."""


@dataclass(frozen=True)
class OpenFront:
    """The front from the waistband seam down, with its pocket opening; drawn as a right front.

    Attributes:
        whole: The front before the opening is cut.
        width: How far the opening reaches from the side along the waist, mm.
        depth: How far it reaches down the side seam, mm.
        curve: The opening from the pocket corner at the waist to the pocket end at the side.
        hip: Distance of the hip notch from the waist along the side seam, mm; negative above the waist.
    """

    whole: Front
    width: float
    depth: float
    curve: Path
    hip: float

    @cached_property
    def waist(self) -> Path:
        """The waist left on the leg: from the centre to the pocket corner."""
        return self.whole.waist.split(self.whole.waist.length - self.width)[0]

    @cached_property
    def side(self) -> Path:
        """The side seam left on the leg: from the pocket end to the hem."""
        return self.whole.side.split(self.depth)[1]

    def from_side(self, reach: float) -> Path:
        """Return the last `reach` mm of the whole waist, up to the side."""
        return self.whole.waist.split(self.whole.waist.length - reach)[1]


def open_front(half_of: HalfOf, style: Style) -> OpenFront:
    """Return the front with the opening of the style, made smaller where the body leaves it less room.

    It takes at most 45 % of the waist and twice its depth, leaves room for the bag beside the fly, and ends
    above hip level wherever that leaves it 40 mm.
    """
    panel = half_of.half.front
    front = front_at(panel, seam_depth(style))
    waist, side = front.waist, front.side
    hip = side.length - FromHem.of(half_of).hip
    depth = min(style.front_pocket.depth, max(hip - _ABOVE_HIP, _LEAST_DEPTH))
    most = min(_WIDEST * waist.length, bag_room(front, style) - BAG_OVERLAP, _FLATTEST * depth)
    width = min(style.front_pocket.width, most)
    curve = _opening(front, width, depth, style.front_pocket.scoop)
    return OpenFront(front, width, depth, Path((curve,)), hip)


def bag_room(front: Front, style: Style) -> float:
    """Return how much of the waist, from the side, lies clear of the fly facing, mm."""
    return front.waist.length - facing_width(style) - _FLY_CLEAR


def front_leg(half_of: HalfOf, style: Style, fly: FlyLength) -> Part:
    """Return the front leg of one half, notched at hip and knee and at the stop of the zip.

    Args:
        half_of: The half.
        style: The style.
        fly: How far down the fly opens, the same for both halves.
    """
    opened, panel, room = open_front(half_of, style), half_of.half.front, style.allowances
    at, side, inseam, crotch = FromHem.of(half_of), opened.side, panel.panel.inseam, opened.whole.crotch
    edges = (
        Edge(WAIST, opened.waist, room.waist),
        Edge(OPENING, opened.curve, room.small),
        Edge(SIDE, side, room.side_seam, notches=at.along(side, NotchKind.SINGLE)),
        Edge(HEM, hem_line(side, inseam), room.hem, Finish.HEM),
        Edge(INSEAM, inseam, room.folded_in(room.inseam), notches=at.at_knee(NotchKind.SINGLE)),
        Edge(CROTCH, crotch, room.crotch_seam, notches=(Notch(ZIP_STOP, crotch.length - fly.opening),)),
    )
    points, levels = panel.points(), panel.panel.levels
    crease = points["crease"].x
    grain = Path.through([Point(crease, levels.hem.mm + _CLEAR), Point(crease, levels.crotch.mm)])
    line = Mark("crease", MarkKind.LINE, Path.through([points["crease at the hem"], points["crease"]]))
    piece = Piece(half_of.name(FRONT_LEG), edges, grain, half_of.cutting(), (line,))
    return Part((half_of.of_front(piece),))


def _opening(front: Front, width: float, depth: float, scoop: float) -> Cubic:
    """Return the opening: a straight slant for a scoop of 0, square to waist and side from a half on."""
    at_waist, at_side = front.waist.length - width, depth
    corner, end = front.waist.point(at_waist), front.side.point(at_side)
    if scoop <= 0:
        return Cubic.line(corner, end)
    chord = end - corner
    down, out = front.waist.direction(at_waist).left, -front.side.direction(at_side).left
    bend = min(scoop / _FULL_BEND, 1.0)
    leave, arrive = (chord.turned(bend * chord.angle_to(way)) for way in (down, out))
    fullness = min(max(scoop - _FULL_BEND, 0.0) / (1 - _FULL_BEND), 1.0)
    share = _QUARTER_ROUND + (_DEEPEST - _QUARTER_ROUND) * fullness
    return _eased(Cubic.bent(corner, leave, end, arrive, share), share)


def _eased(curve: Cubic, share: float) -> Cubic:
    """Return a curve whose shorter handle is drawn out, so that a flat opening has no tight bend."""
    first, second = (curve.c1 - curve.start).length, (curve.c2 - curve.end).length

    def drawn_out(own: float, other: float) -> float:
        return 1 + (_ROUNDEST / share - 1) * max(0.0, 1 - own / other)

    c1 = curve.start.towards(curve.c1, drawn_out(first, second))
    return Cubic(curve.start, c1, curve.end.towards(curve.c2, drawn_out(second, first)), curve.end)
