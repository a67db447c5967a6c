"""The shaped waistband, in parts that follow the closed yoke and the front, and what every waistband has.

The lapping front's band ends at the centre front; the other one reaches further, over the fly shield.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.base.tolerance import WAIST_CORNER_DEG
from drafting.block.block import Block
from drafting.body.measurements import Side
from drafting.geometry.paths import Path
from drafting.geometry.points import Vector
from drafting.pieces.pieces import Cutting, Edge, Finish, Mark, MarkKind, Notch, Piece
from drafting.pieces.seams import Corner, CornerPlace, Seam
from styles.base.edges import CENTRE_BACK, SIDE
from styles.base.grain import plumb_grain
from styles.base.part import HalfOf, Notion, Part
from styles.base.runs import walk
from styles.choice.style import Laps, Style
from styles.parts.fly_length import shield_width
from styles.top.back_dart import back_band
from styles.top.crown import Crown
from styles.top.upper import front_band

FRONT_BAND, BACK_BAND, STRAIGHT_BAND = "front waistband", "back waistband", "waistband"

WAIST_SEAM, UPPER, SHIELD_SEAM, FRONT_END = "waist seam", "upper edge", "shield seam", "front end"
UPPER_UNDERLAP = "upper edge of the underlap"
CUT_OFF = "cut off here on the"
"""How the line is called along which the lapping side's band loses its underlap; its side follows."""

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


def shaped_band(half_of: HalfOf, style: Style, notches: WaistNotches | None = None) -> Part:
    """Return front and back of a shaped band for one half, each in two layers, with the seam between them.

    A front that serves both sides carries the underlap, and a line along which the lapping side is cut off. A
    back that serves both sides is laid on the fold at the centre back.

    Args:
        half_of: The half.
        style: A style with a shaped band.
        notches: What the waist seam is to be marked with.
    """
    notches = notches or WaistNotches()
    back = back_band(half_of.half.back, style)
    assert back is not None, "a style with a straight band has no shaped one"
    pieces = _front(half_of, style, notches.front), _back(half_of, style, back, notches.back)
    front_name, back_name = (piece.name for piece in pieces)
    first, second = (walk(piece, SIDE, away_from=UPPER) for piece in pieces)
    seam = Seam(half_of.name("side of the waistband"), (first,), (second,))
    corners = tuple(
        Corner(
            half_of.name(f"{edge} of the waistband across its side"),
            CornerPlace(front_name, (edge, SIDE)),
            CornerPlace(back_name, (edge, SIDE)),
            tolerance=WAIST_CORNER_DEG,
        )
        for edge in (UPPER, WAIST_SEAM)
    )
    return Part(pieces, (seam,), corners)


def centre_back_of_band(block: Block, pieces: dict[str, Piece]) -> tuple[Seam, ...]:
    """Return the seam of a shaped band at the centre back; none where it is laid on the fold."""
    if len(block.halves) == 1:
        return ()
    backs = (pieces[HalfOf(half).name(BACK_BAND)] for half in block.halves)
    first, second = (walk(back, CENTRE_BACK, away_from=UPPER) for back in backs)
    return (Seam("centre back of the waistband", (first,), (second,)),)


def band_notions() -> tuple[Notion, ...]:
    """Return what closes a waistband."""
    return (Notion("jeans button, 17 mm (5/8 in)", 1),)


def _front(half_of: HalfOf, style: Style, notches: tuple[Notch, ...]) -> Piece:
    crown = _upright(front_band(half_of.half.front, style.below_waist, style.band_height))
    room, side = style.allowances, half_of.half.side
    laps, lies_below = side in (None, lapping_side(style)), side != lapping_side(style)
    out = -crown.centre.direction(0).left
    body = (
        Edge(UPPER, crown.waist, room.small),
        Edge(SIDE, crown.side, room.small),
        Edge(WAIST_SEAM, crown.lower, room.waist, notches=from_the_end(notches, crown.lower.length)),
    )
    marks: list[Mark] = []
    if lies_below:
        end = crown.centre.moved(lambda p: p + out * shield_width(style))
        edges: tuple[Edge, ...] = (
            Edge(UPPER_UNDERLAP, Path.through([end.end, crown.centre.end]), room.small),
            *body,
            Edge(SHIELD_SEAM, Path.through([crown.centre.start, end.start]), room.waist),
            Edge(FRONT_END, end, room.small),
        )
        if laps:
            # First, as its name is the longest and the room beside it the smallest.
            cut = crown.centre.moved(lambda p: p + out * room.small) if room.small else crown.centre
            marks.append(Mark(f"{CUT_OFF} {lapping_side(style).value}", MarkKind.LINE, cut))
        marks += [Mark("centre front", MarkKind.LINE, crown.centre), _button(crown, out)]
    else:
        edges = (*body, Edge(FRONT_END, crown.centre, room.small))
    if laps:
        marks.append(_buttonhole(crown, out))
    layers = Cutting(2 if side else 4, pairs=True)
    return half_of.of_front(Piece(half_of.name(FRONT_BAND), edges, plumb_grain(edges), layers, tuple(marks)))


def _back(half_of: HalfOf, style: Style, crown: Crown, notches: tuple[Notch, ...]) -> Piece:
    crown, room, folded = _upright(crown), style.allowances, half_of.half.side is None
    finish = Finish.FOLD if folded else Finish.SEAM
    edges = (
        Edge(UPPER, crown.waist, room.small),
        Edge(SIDE, crown.side, room.small),
        Edge(WAIST_SEAM, crown.lower, room.waist, notches=from_the_end(notches, crown.lower.length)),
        Edge(CENTRE_BACK, crown.centre, 0.0 if folded else room.small, finish),
    )
    layers = Cutting(2, pairs=not folded)
    return half_of.of_back(Piece(half_of.name(BACK_BAND), edges, plumb_grain(edges), layers))


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
    return Mark("button", MarkKind.DRILL, Path.through([at, at + out]))


def _buttonhole(crown: Crown, out: Vector) -> Mark:
    middle = crown.centre.point(crown.centre.length / 2)
    ends = [middle + out * -HOLE_FROM_END, middle + out * -(HOLE_FROM_END + HOLE)]
    return Mark("buttonhole", MarkKind.LINE, Path.through(ends))
