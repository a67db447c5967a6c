"""The shaped waistband, in parts that follow the closed yoke and the front, and what every waistband has.

The lapping front's band ends at the centre front; the other one reaches further, over the fly shield.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from drafting.base.tolerance import WAIST_CORNER_DEG
from drafting.block.block import Block
from drafting.body.measurements import Side
from drafting.geometry.paths import Path
from drafting.geometry.points import Vector
from drafting.pieces.kinds import CornerKind, EdgeKind, PieceId, PieceKind, PlaceKind, SeamKind
from drafting.pieces.pieces import Cutting, Edge, Finish, Mark, MarkKind, Notch, Piece
from drafting.pieces.seams import Corner, CornerPlace, Seam
from styles.base.edge_runs import walk
from styles.base.grain import plumb_grain
from styles.base.part import HalfToCut, Notion, NotionKind, Part
from styles.choice.style import Laps, Style
from styles.parts.fly_length import shield_width
from styles.top.back_dart import back_band
from styles.top.upper import front_band
from styles.top.yoke import Crown

CUT_OFF = {Side.LEFT: PlaceKind.CUT_OFF_ON_LEFT, Side.RIGHT: PlaceKind.CUT_OFF_ON_RIGHT}
"""The line along which the lapping side's band loses its underlap."""

HOLE_FROM_END, HOLE = 12.7, 19.0
"""The buttonhole starts 1/2 in from the end and is 3/4 in long (a hand drafter of selvedge jeans)."""

SHANK = 3.0
"""The button sits this far inside the buttonhole's outer end, half the width of its shank (common
practice)."""


@dataclass(frozen=True)
class WaistNotches:
    """Notches of one half of the waist seam; each distance is mm from the centre front or the centre back."""

    front: tuple[Notch, ...] = ()
    back: tuple[Notch, ...] = ()

    def __add__(self, other: WaistNotches) -> WaistNotches:
        """Return both together."""
        return WaistNotches(self.front + other.front, self.back + other.back)


def lapping_side(style: Style) -> Side:
    """Return the side of the body whose front lies on top."""
    return Side.LEFT if style.laps is Laps.LEFT_OVER_RIGHT else Side.RIGHT


def shaped_band(half: HalfToCut, style: Style, notches: WaistNotches | None = None) -> Part:
    """Return front and back of a shaped band for one half, each in two layers, with the seam between them.

    A front that serves both sides carries the underlap, and a line along which the lapping side is cut off. A
    back that serves both sides is laid on the fold at the centre back.

    Args:
        half: The half.
        style: A style with a shaped band.
        notches: What the waist seam is to be marked with.
    """
    notches = notches or WaistNotches()
    back = back_band(half.drafted.back, style)
    assert back is not None, "a style with a straight band has no shaped one"
    pieces = _front(half, style, notches.front), _back(half, style, back, notches.back)
    first, second = (walk(piece, EdgeKind.SIDE, away_from=EdgeKind.UPPER) for piece in pieces)
    seam = Seam(SeamKind.BAND_SIDE, (first,), (second,), side=half.side)
    on_front, on_back = pieces
    corners = tuple(
        Corner(
            kind,
            CornerPlace(on_front.id, (edge, EdgeKind.SIDE)),
            CornerPlace(on_back.id, (edge, EdgeKind.SIDE)),
            tolerance=WAIST_CORNER_DEG,
            side=half.side,
        )
        for kind, edge in (
            (CornerKind.BAND_TOP_ACROSS_SIDE, EdgeKind.UPPER),
            (CornerKind.BAND_SEAM_ACROSS_SIDE, EdgeKind.WAIST_SEAM),
        )
    )
    return Part(pieces, (seam,), corners)


def centre_back_of_band(block: Block, pieces: Mapping[PieceId, Piece]) -> tuple[Seam, ...]:
    """Return the seam of a shaped band at the centre back; none where it is laid on the fold."""
    if len(block.halves) == 1:
        return ()
    backs = (pieces[HalfToCut(half).id(PieceKind.BACK_BAND)] for half in block.halves)
    first, second = (walk(back, EdgeKind.CENTRE_BACK, away_from=EdgeKind.UPPER) for back in backs)
    return (Seam(SeamKind.BAND_CENTRE_BACK, (first,), (second,)),)


def band_notions() -> tuple[Notion, ...]:
    """Return what closes a waistband."""
    return (Notion(NotionKind.BAND_BUTTON, 1),)


def _front(half: HalfToCut, style: Style, notches: tuple[Notch, ...]) -> Piece:
    crown = _upright(front_band(half.drafted.front, style.below_waist, style.band_height))
    allowances, side = style.allowances, half.side
    laps, lies_below = side in (None, lapping_side(style)), side != lapping_side(style)
    out = -crown.centre.direction(0).left
    body = (
        Edge(EdgeKind.UPPER, crown.waist, allowances.small),
        Edge(EdgeKind.SIDE, crown.side, allowances.small),
        Edge(
            EdgeKind.WAIST_SEAM,
            crown.lower,
            allowances.waist,
            notches=from_the_end(notches, crown.lower.length),
        ),
    )
    marks: list[Mark] = []
    if lies_below:
        end = crown.centre.moved(lambda p: p + out * shield_width(style))
        edges: tuple[Edge, ...] = (
            Edge(EdgeKind.UPPER_UNDERLAP, Path.through([end.end, crown.centre.end]), allowances.small),
            *body,
            Edge(EdgeKind.SHIELD_SEAM, Path.through([crown.centre.start, end.start]), allowances.waist),
            Edge(EdgeKind.FRONT_END, end, allowances.small),
        )
        if laps:
            # First, as its name is the longest and the place beside it the smallest.
            cut = (
                crown.centre.moved(lambda p: p + out * allowances.small) if allowances.small else crown.centre
            )
            marks.append(Mark(CUT_OFF[lapping_side(style)], MarkKind.LINE, cut))
        marks += [Mark(PlaceKind.CENTRE_FRONT, MarkKind.LINE, crown.centre), _button(crown, out)]
    else:
        edges = (*body, Edge(EdgeKind.FRONT_END, crown.centre, allowances.small))
    if laps:
        marks.append(_buttonhole(crown, out))
    layers = Cutting(2 if side else 4, pairs=True)
    grain = plumb_grain(edges)
    return half.of_front(Piece(PieceKind.FRONT_BAND, edges, grain, layers, tuple(marks), side=side))


def _back(half: HalfToCut, style: Style, crown: Crown, notches: tuple[Notch, ...]) -> Piece:
    crown, allowances, folded = _upright(crown), style.allowances, half.side is None
    finish = Finish.FOLD if folded else Finish.SEAM
    edges = (
        Edge(EdgeKind.UPPER, crown.waist, allowances.small),
        Edge(EdgeKind.SIDE, crown.side, allowances.small),
        Edge(
            EdgeKind.WAIST_SEAM,
            crown.lower,
            allowances.waist,
            notches=from_the_end(notches, crown.lower.length),
        ),
        Edge(EdgeKind.CENTRE_BACK, crown.centre, 0.0 if folded else allowances.small, finish),
    )
    layers = Cutting(2, pairs=not folded)
    return half.of_back(Piece(PieceKind.BACK_BAND, edges, plumb_grain(edges), layers, side=half.side))


def from_the_end(notches: tuple[Notch, ...], length: float) -> tuple[Notch, ...]:
    """Return notches given from the centre as distances along an edge that runs towards it."""
    return tuple(replace(notch, distance=length - notch.distance) for notch in reversed(notches))


def _upright(crown: Crown) -> Crown:
    """Return the strip turned so that its centre edge stands plumb, as it lies on the grain or the fold."""
    foot = crown.centre.start
    angle = (crown.centre.end - foot).angle_to(Vector(0, 1))

    def turn(path: Path) -> Path:
        return path.moved(lambda p: p.turned(foot, angle))

    return Crown(turn(crown.waist), turn(crown.side), turn(crown.lower), turn(crown.centre))


def _button(crown: Crown, out: Vector) -> Mark:
    at = crown.centre.point(crown.centre.length / 2) + out * (HOLE_FROM_END + SHANK)
    return Mark(PlaceKind.BUTTON, MarkKind.DRILL, Path.through([at, at + out]))


def _buttonhole(crown: Crown, out: Vector) -> Mark:
    middle = crown.centre.point(crown.centre.length / 2)
    ends = [middle + out * -HOLE_FROM_END, middle + out * -(HOLE_FROM_END + HOLE)]
    return Mark(PlaceKind.BUTTONHOLE, MarkKind.LINE, Path.through(ends))
