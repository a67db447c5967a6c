"""The pieces of the fly: its facing, its shield, and the template of its topstitching.

The facing goes behind the front that laps over, the shield behind the other; both fronts stay one pair. For
buttons there is a second facing in two layers, which carries the buttonholes so that they do not show.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from drafting.block.block import Block, Half
from drafting.body.measurements import Side
from drafting.geometry.curves import QUARTER_ROUND, Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector
from drafting.pieces.kinds import EdgeKind, PieceId, PieceKind, PlaceKind, SeamKind
from drafting.pieces.pieces import Cutting, Edge, Finish, Mark, MarkKind, Material, Notch, Piece
from drafting.pieces.seams import Seam
from styles.base.edge_runs import walk
from styles.base.grain import plumb_grain
from styles.base.part import HalfToCut, Notion, NotionKind, Part
from styles.choice.style import Laps, Style
from styles.parts.fly_length import FlyLength, facing_width, fly_length, shield_width
from styles.parts.shaped_band import HOLE_FROM_END, SHANK
from styles.top.upper import Front, front_at, seam_depth

_HOLE = 16.0
"""A buttonhole is 2 mm longer than its button is wide (common practice)."""

_BESIDE_HOLES = 5.0
"""The grain line of their facing keeps this far from the buttonholes, mm (common practice)."""

_STITCHING_BELOW, _FACING_BELOW, _SHIELD_BELOW = 5.0, 15.0, 25.0
"""How far below its stop the topstitching, the facing and the shield end, mm (common practice)."""

_J_HEIGHT, _J_SHARE = 1.25, 0.6
"""The J turns in over this many of its widths, but over no larger share of the fly's length
(common practice)."""


def fly(block: Block, style: Style, fronts: Mapping[PieceId, Piece]) -> Part:
    """Return facing, shield and topstitching template, sewn to the front legs, and the zip or the buttons.

    Args:
        block: The block.
        style: The style; its `laps` decides which front gets the facing.
        fronts: The front legs.
    """
    length = fly_length(block, style)
    over, under = (Side.LEFT, Side.RIGHT) if style.laps is Laps.LEFT_OVER_RIGHT else (Side.RIGHT, Side.LEFT)
    lapping, covered = _half(block, over), _half(block, under)
    front = front_at(lapping.front, seam_depth(style))
    facing, shield = _facing(over, front, style, length), _shield(under, style, length)
    template = _template(over, front, style, length)
    # All are drawn with a right front. A facing lies with its face to the body, so its own face shows the
    # mirror image of its front; the shield faces outwards, and the template lies on the front's face.
    holes = _buttonhole_facing(facing, style, length)
    if over is Side.LEFT:
        template = template.mirrored()
    else:
        facing, shield, holes = facing.mirrored(), shield.mirrored(), holes.mirrored()

    on_top, below = (fronts[HalfToCut(half).id(PieceKind.FRONT_LEG)] for half in (lapping, covered))
    seams: tuple[Seam, ...] = (
        _along_centre(facing, on_top, facing.edge(EdgeKind.CENTRE_FRONT).length),
        _along_centre(shield, below, length.opening),
        _along_centre(template, on_top, template.edge(EdgeKind.CENTRE_FRONT).length),
    )
    if length.zip:
        return Part((facing, shield, template), seams, notions=(Notion(NotionKind.ZIP, 1, length.zip),))
    behind = Seam(
        SeamKind.BEHIND_FACING,
        (walk(facing, EdgeKind.INNER, away_from=EdgeKind.WAIST),),
        (walk(holes, EdgeKind.INNER, away_from=EdgeKind.WAIST),),
        piece=holes.id,
    )
    seams = (*seams, behind, _along_centre(holes, on_top, holes.edge(EdgeKind.CENTRE_FRONT).length))
    return Part(
        (facing, holes, shield, template),
        seams,
        notions=(Notion(NotionKind.FLY_BUTTON, len(length.buttons)),),
    )


def _half(block: Block, side: Side) -> Half:
    """Return the half of one side of the body."""
    return next(half for half in block.halves if half.side in (side, None))


def _along_centre(piece: Piece, front: Piece, end: float) -> Seam:
    """Return the seam of a piece with its front, from the waist down."""
    runs = (
        (walk(front, EdgeKind.CROTCH, away_from=EdgeKind.WAIST, end=end),),
        (walk(piece, EdgeKind.CENTRE_FRONT, away_from=EdgeKind.WAIST, end=end),),
    )
    return Seam(SeamKind.AT_CENTRE_FRONT, *runs, piece=piece.id)


def _facing(over: Side, front: Front, style: Style, length: FlyLength) -> Piece:
    allowances = style.allowances
    waist, inner, centre = _j_shape(front, facing_width(style), length.opening + _FACING_BELOW)
    edges = (
        Edge(EdgeKind.WAIST, waist, allowances.waist),
        Edge(EdgeKind.INNER, inner, allowances.small),
        Edge(EdgeKind.CENTRE_FRONT, centre, allowances.crotch_seam, notches=(_stop(centre, length),)),
    )
    return Piece(PieceKind.FLY_FACING, edges, plumb_grain(edges), Cutting(), side=over)


def _buttonhole_facing(facing: Piece, style: Style, length: FlyLength) -> Piece:
    """Return a copy of the facing, cut as a pair that is sewn together, with the buttonholes marked."""
    centre = facing.edge(EdgeKind.CENTRE_FRONT).path
    start = _hole_from_centre(style)

    def hole(below: float) -> Path:
        place = centre.length - below
        at, inwards = centre.point(place), centre.direction(place).left
        return Path.through([at + inwards * start, at + inwards * (start + _HOLE)])

    marks = tuple(Mark(PlaceKind.BUTTONHOLE, MarkKind.LINE, hole(below)) for below in length.buttons)
    # Beside the buttonholes, above the turn of the J.
    grain = facing.grain.between(_J_SHARE * facing.grain.length / 2, facing.grain.length)
    inwards = centre.direction(centre.length).left
    clear = start + _HOLE + _BESIDE_HOLES - (grain.end - centre.end).dot(inwards)
    grain = grain.moved(lambda p: p + inwards * clear)
    kind, cutting = PieceKind.BUTTONHOLE_FACING, Cutting(2, pairs=True)
    return replace(facing, kind=kind, grain=grain, cutting=cutting, marks=marks)


def _hole_from_centre(style: Style) -> float:
    """Return how far from the centre front the buttonholes start: as the band's, nearer on a narrow fly."""
    return min(HOLE_FROM_END, (style.fly_width - _HOLE) / 2)


def _template(over: Side, front: Front, style: Style, length: FlyLength) -> Piece:
    waist, stitching, centre = _j_shape(front, style.fly_width, length.opening + _STITCHING_BELOW)
    edges = (
        Edge(EdgeKind.WAIST, waist),
        Edge(EdgeKind.TOPSTITCHING, stitching),
        Edge(EdgeKind.CENTRE_FRONT, centre, notches=(_stop(centre, length),)),
    )
    # Beside the centre front, which leaves room for words on a piece as narrow as this.
    grain, cutting = plumb_grain(edges, across=0.6), Cutting(material=Material.TEMPLATE)
    return Piece(PieceKind.FLY_TEMPLATE, edges, grain, cutting, side=over)


def _shield(under: Side, style: Style, length: FlyLength) -> Piece:
    """Return the shield: straight, doubled along its outer edge."""
    allowances, width, high = style.allowances, shield_width(style), length.opening + _SHIELD_BELOW
    top_left, low_left = Point(0, high), Point(0, 0)
    low_right, top_right = Point(width, 0), Point(width, high)
    centre = Path.through([low_right, top_right])
    edges = (
        Edge(EdgeKind.WAIST, Path.through([top_right, top_left]), allowances.waist),
        Edge(EdgeKind.FOLD, Path.through([top_left, low_left]), finish=Finish.FOLD),
        Edge(EdgeKind.LOWER_END, Path.through([low_left, low_right]), allowances.small),
        Edge(EdgeKind.CENTRE_FRONT, centre, allowances.crotch_seam, notches=(_stop(centre, length),)),
    )
    inset = width - _hole_from_centre(style) - SHANK
    places = [Point(inset, high - below) for below in length.buttons]
    marks = tuple(
        Mark(PlaceKind.BUTTON, MarkKind.DRILL, Path.through([at, at + Vector(1, 0)])) for at in places
    )
    return Piece(PieceKind.FLY_SHIELD, edges, plumb_grain(edges), Cutting(), marks, side=under)


def _j_shape(front: Front, width: float, length: float) -> tuple[Path, Path, Path]:
    """Return waist, inner edge and centre edge of a strip along the centre front that ends in a J."""
    _, centre = front.crotch.split(front.crotch.length - length)
    waist, _ = front.waist.split(width)
    down, end = -centre.direction(centre.length), centre.start
    straight = length - min(_J_HEIGHT * width, _J_SHARE * length)
    turn = waist.end + down * straight
    into_seam = -centre.direction(0).left
    curve = Cubic.bent(turn, down, end, into_seam, QUARTER_ROUND)
    return waist, Path((Cubic.line(waist.end, turn), curve)), centre


def _stop(centre: Path, length: FlyLength) -> Notch:
    return Notch(length.stop, centre.length - length.opening)
