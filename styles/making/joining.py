"""The seams that join one part of the jeans to another, and the corners that must run on across them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from drafting.base.tolerance import ANGLE_DEG, HEM_CORNER_DEG, WAIST_CORNER_DEG
from drafting.block.block import Block
from drafting.body.measurements import Side
from drafting.pieces.kinds import CornerKind, EdgeKind, PieceId, PieceKind, SeamKind
from drafting.pieces.pieces import Notch, Piece
from drafting.pieces.seams import Corner, CornerPlace, Run, Seam
from styles.base.edge_runs import walk
from styles.base.part import HalfToCut
from styles.choice.style import Style
from styles.parts.back_leg import FromHem
from styles.parts.front_leg import open_front
from styles.parts.shaped_band import WaistNotches
from styles.parts.straight_band import SEWN_TO_BACK, SEWN_TO_FRONT

Pieces = Mapping[PieceId, Piece]


def front_side(half: HalfToCut, pieces: Pieces, style: Style) -> tuple[Run, ...]:
    """Return the front's side seam from the hem to the band: the leg, then the facing above the opening."""
    facing = pieces[half.id(PieceKind.POCKET_FACING)]
    hidden = facing.edge(EdgeKind.SIDE).length - open_front(half, style).depth
    return walk(pieces[half.id(PieceKind.FRONT_LEG)], EdgeKind.SIDE, away_from=EdgeKind.HEM), walk(
        facing, EdgeKind.SIDE, towards=EdgeKind.WAIST, start=hidden
    )


def front_waist(half: HalfToCut, pieces: Pieces, style: Style) -> tuple[Run, ...]:
    """Return the front's waist from the centre to the side: the leg, then the facing above the opening."""
    facing = pieces[half.id(PieceKind.POCKET_FACING)]
    hidden = facing.edge(EdgeKind.WAIST).length - open_front(half, style).width
    return walk(pieces[half.id(PieceKind.FRONT_LEG)], EdgeKind.WAIST, away_from=EdgeKind.CROTCH), walk(
        facing, EdgeKind.WAIST, towards=EdgeKind.SIDE, start=hidden
    )


def back_waist(half: HalfToCut, pieces: Pieces) -> tuple[Run, ...]:
    """Return the back's waist from the centre to the side: the yoke's, or the leg's without its dart."""
    if yoke := pieces.get(half.id(PieceKind.BACK_YOKE)):
        return (walk(yoke, EdgeKind.WAIST, away_from=EdgeKind.CENTRE_BACK),)
    leg = pieces[half.id(PieceKind.BACK_LEG)]
    inner = walk(leg, EdgeKind.WAIST, away_from=EdgeKind.CROTCH)
    if _at_side(leg) == EdgeKind.WAIST:
        return (inner,)
    return inner, walk(leg, EdgeKind.OUTER_WAIST, towards=EdgeKind.SIDE)


def _at_side(back: Piece) -> EdgeKind:
    """Return which edge is the waist at the side of a yoke or of a leg that reaches up to the band."""
    return EdgeKind.OUTER_WAIST if back.has(EdgeKind.OUTER_WAIST) else EdgeKind.WAIST


def _centre_back(half: HalfToCut, pieces: Pieces) -> tuple[Run, ...]:
    """Return the back's crotch seam from the fork to the band."""
    leg = walk(pieces[half.id(PieceKind.BACK_LEG)], EdgeKind.CROTCH, away_from=EdgeKind.INSEAM)
    yoke = pieces.get(half.id(PieceKind.BACK_YOKE))
    return (leg, walk(yoke, EdgeKind.CENTRE_BACK, towards=EdgeKind.WAIST)) if yoke else (leg,)


def notched(pieces: dict[PieceId, Piece], runs: tuple[Run, ...], notches: tuple[Notch, ...]) -> None:
    """Put notches, given by their distance along the runs, on the edges they fall on."""
    for notch in notches:
        walked = 0.0
        for run in runs:
            piece = pieces[run.piece]
            edge = piece.edge(run.edge)
            length = edge.length - run.start
            if notch.distance <= walked + length or run is runs[-1]:
                along = run.start + notch.distance - walked
                place = edge.length - along if run.backwards else along
                marked = replace(edge, notches=(*edge.notches, replace(notch, distance=place)))
                pieces[run.piece] = piece.with_edges(marked)
                break
            walked += length


def mark_waist(
    block: Block, pieces: dict[PieceId, Piece], style: Style, loops: Sequence[WaistNotches]
) -> None:
    """Put the belt loops' notches on legs, facings and yokes; the band carries the same ones."""
    for half, notches in zip(map(HalfToCut, block.halves), loops, strict=True):
        notched(pieces, front_waist(half, pieces, style), notches.front)
        notched(pieces, back_waist(half, pieces), notches.back)


def leg_seams(block: Block, pieces: Pieces, style: Style) -> Iterator[Seam]:
    """Yield inseams and side seams of every half, and the crotch seams of a body whose sides differ."""
    halves = [HalfToCut(half) for half in block.halves]
    for half in halves:
        front, back = (pieces[half.id(kind)] for kind in (PieceKind.FRONT_LEG, PieceKind.BACK_LEG))
        yoke = pieces.get(half.id(PieceKind.BACK_YOKE))
        knee, fork = FromHem.of(half).knee or 0.0, half.drafted.front.lower.inseam.length
        on_front, on_back = (walk(leg, EdgeKind.INSEAM, away_from=EdgeKind.HEM) for leg in (front, back))
        ease = block.proportions.inseam_ease
        yield Seam(SeamKind.INSEAM, (on_front,), (on_back,), ease, (knee, fork), half.side)
        backs = [walk(back, EdgeKind.SIDE, away_from=EdgeKind.HEM)]
        if yoke:
            backs.append(walk(yoke, EdgeKind.SIDE, towards=EdgeKind.WAIST))
        yield Seam(SeamKind.SIDE, front_side(half, pieces, style), tuple(backs), side=half.side)
    if len(halves) == 2:
        fronts = (pieces[half.id(PieceKind.FRONT_LEG)] for half in halves)
        first, second = ((walk(leg, EdgeKind.CROTCH, away_from=EdgeKind.INSEAM),) for leg in fronts)
        yield Seam(SeamKind.FRONT_CROTCH, first, second)
        right, left = (_centre_back(half, pieces) for half in halves)
        yield Seam(SeamKind.BACK_CROTCH, right, left)


def band_seams(block: Block, pieces: Pieces, style: Style) -> Iterator[Seam]:
    """Yield the waist seam between each pair of marks of the band: centre fronts, side seams, centre back."""
    straight = pieces.get(PieceId(PieceKind.STRAIGHT_BAND))
    sides = (Side.RIGHT, Side.LEFT)
    for side, drafted in zip(sides, block.halves * (2 // len(block.halves)), strict=True):
        half = HalfToCut(drafted)
        if straight:
            # The strip runs from the left front over the back to the right; each run leads from its centre.
            runs = (
                Run(straight.id, SEWN_TO_FRONT[side], backwards=side is Side.RIGHT),
                Run(straight.id, SEWN_TO_BACK[side], backwards=side is Side.LEFT),
            )
            told: Side | None = side
        elif side is Side.RIGHT or half.side:
            bands = (pieces[half.id(kind)] for kind in (PieceKind.FRONT_BAND, PieceKind.BACK_BAND))
            on_front, on_back = (walk(band, EdgeKind.WAIST_SEAM, towards=EdgeKind.SIDE) for band in bands)
            runs, told = (on_front, on_back), half.side
        else:
            continue
        yield Seam(SeamKind.FRONT_TO_BAND, front_waist(half, pieces, style), (runs[0],), side=told)
        yield Seam(SeamKind.BACK_TO_BAND, back_waist(half, pieces), (runs[1],), side=told)


def leg_corners(block: Block, pieces: Pieces) -> tuple[Corner, ...]:
    """Return the corners that must run on smoothly when legs, yoke and facing are sewn together."""
    return tuple(corner for half in block.halves for corner in _corners(HalfToCut(half), pieces))


def _corners(half: HalfToCut, pieces: Pieces) -> tuple[Corner, ...]:
    leg, facing, front = PieceKind.BACK_LEG, PieceKind.POCKET_FACING, PieceKind.FRONT_LEG
    crotch, inseam, hem = EdgeKind.CROTCH, EdgeKind.INSEAM, EdgeKind.HEM
    yoke = half.id(PieceKind.BACK_YOKE) in pieces
    upper, middle = (PieceKind.BACK_YOKE, EdgeKind.CENTRE_BACK) if yoke else (leg, crotch)
    at_side = _at_side(pieces[half.id(upper)])

    def across(
        kind: CornerKind,
        on_front: tuple[PieceKind, EdgeKind],
        on_back: tuple[PieceKind, EdgeKind],
        seam: EdgeKind,
        tolerance: float = ANGLE_DEG,
    ) -> Corner:
        first, second = (CornerPlace(half.id(piece), (edge, seam)) for piece, edge in (on_front, on_back))
        return Corner(kind, first, second, tolerance=tolerance, side=half.side)

    def centre(kind: CornerKind, piece: PieceKind, seam: EdgeKind) -> Corner:
        place = CornerPlace(half.id(piece), (EdgeKind.WAIST, seam))
        return Corner(kind, place, place, side=half.side)

    side, waist = EdgeKind.SIDE, (facing, EdgeKind.WAIST)
    return (
        across(CornerKind.CROTCH_ACROSS_INSEAM, (front, crotch), (leg, crotch), inseam),
        across(CornerKind.WAIST_ACROSS_SIDE, waist, (upper, at_side), side, WAIST_CORNER_DEG),
        across(CornerKind.HEM_ACROSS_SIDE, (front, hem), (leg, hem), side, HEM_CORNER_DEG),
        across(CornerKind.HEM_ACROSS_INSEAM, (front, hem), (leg, hem), inseam, HEM_CORNER_DEG),
        centre(CornerKind.WAIST_AT_CENTRE_FRONT, front, crotch),
        centre(CornerKind.WAIST_AT_CENTRE_BACK, upper, middle),
    )
