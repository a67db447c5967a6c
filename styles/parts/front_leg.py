"""The front leg: the front below the waistband with the pocket opening cut out of its upper corner."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from drafting.block.point_names import Drawn
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.kinds import EdgeKind, PieceKind, PlaceKind
from drafting.pieces.pieces import Edge, Mark, MarkKind, Notch, NotchKind, Piece
from styles import front_pockets
from styles.base.hem import hem_edge
from styles.base.part import HalfToCut, Part
from styles.choice.kinds import of_kind
from styles.choice.style import FrontPocket, Style
from styles.front_pockets import Mouth
from styles.parts.back_leg import FromHem
from styles.parts.fly_length import FlyLength, facing_width
from styles.top.upper import Front, front_at, seam_depth

FACING_OVERLAP, BAG_OVERLAP = 30.0, 40.0
"""How far the facing and the bag reach in beyond the pocket corner at least, mm (common practice)."""

_WIDEST = 0.45
"""The opening takes no larger share of the front's waist (common practice, no source)."""

_FLATTEST = 2.0
"""It is at most this many times as wide as deep; a flatter scoop bends too tightly to be turned (common
practice)."""

_ABOVE_HIP = 10.0
"""The opening ends this far above hip level at least, mm, so that the hip notch stays on the front leg
(common practice)."""

_LEAST_DEPTH = 40.0
"""An opening less deep takes no hand, mm (common practice); where the hip is so near it passes it."""

_FLY_CLEAR = 5.0
"""The bag keeps this far from the fly facing at the waist, mm (common practice)."""

_CLEAR = 50.0
"""The grain line keeps this far from the hem so that its arrow stays inside, mm (common practice)."""


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


def open_front(half: HalfToCut, style: Style) -> OpenFront:
    """Return the front with the opening of the style, made smaller where the body leaves it less room.

    It takes at most 45 % of the waist and twice its depth, leaves room for the bag beside the fly, and ends
    above hip level wherever that leaves it 40 mm.
    """
    panel = half.drafted.front
    front = front_at(panel, seam_depth(style))
    waist, side = front.waist, front.side
    hip = side.length - FromHem.of(half).hip
    depth = min(style.front_pocket.depth, max(hip - _ABOVE_HIP, _LEAST_DEPTH))
    most = min(_WIDEST * waist.length, bag_room(front, style) - BAG_OVERLAP, _FLATTEST * depth)
    width = min(style.front_pocket.width, most)
    return OpenFront(front, width, depth, _opening(front, width, depth, style.front_pocket), hip)


def bag_room(front: Front, style: Style) -> float:
    """Return how much of the waist, from the side, lies clear of the fly facing, mm."""
    return front.waist.length - facing_width(style) - _FLY_CLEAR


def front_leg(half: HalfToCut, style: Style, fly: FlyLength) -> Part:
    """Return the front leg of one half, notched at hip and knee and where the fly ends.

    Args:
        half: The half.
        style: The style.
        fly: How far down the fly opens, the same for both halves.
    """
    opened, panel, allowances = open_front(half, style), half.drafted.front, style.allowances
    at, side, inseam, crotch = FromHem.of(half), opened.side, panel.lower.inseam, opened.whole.crotch
    hem, folds = hem_edge(side, inseam, style)
    stop = Notch(fly.stop, crotch.length - fly.opening)
    edges = (
        Edge(EdgeKind.WAIST, opened.waist, allowances.waist),
        Edge(EdgeKind.OPENING, opened.curve, allowances.small),
        Edge(EdgeKind.SIDE, side, allowances.side_seam, notches=at.along(side, NotchKind.SINGLE)),
        hem,
        Edge(
            EdgeKind.INSEAM,
            inseam,
            allowances.folded_in(allowances.inseam),
            notches=at.at_knee(NotchKind.SINGLE),
        ),
        Edge(EdgeKind.CROTCH, crotch, allowances.crotch_seam, notches=(stop,)),
    )
    points, levels = panel.points(), panel.lower.levels
    crease = points[Drawn.CREASE].x
    grain = Path.through([Point(crease, levels.hem.mm + _CLEAR), Point(crease, levels.crotch.mm)])
    line = Mark(PlaceKind.CREASE, MarkKind.LINE, panel.lower.crease)
    piece = Piece(PieceKind.FRONT_LEG, edges, grain, half.cutting(), (line, *folds), side=half.side)
    return Part((half.of_front(piece),))


def _opening(front: Front, width: float, depth: float, pocket: FrontPocket) -> Path:
    """Return the edge of the opening from the waist to the side."""
    at_waist = front.waist.length - width
    down, out = front.waist.direction(at_waist).left, -front.side.direction(depth).left
    mouth = Mouth(front.waist.point(at_waist), down, front.side.point(depth), out, pocket.scoop)
    edge: Path = of_kind(front_pockets, pocket.kind, "edge")(mouth)
    return edge
