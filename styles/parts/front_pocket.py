"""The front pocket: facing, the two halves of its bag, and the watch pocket on the right facing."""

from __future__ import annotations

from drafting.body.measurements import Side
from drafting.geometry.paths import Path
from drafting.pieces.kinds import EdgeKind, PieceKind, PlaceKind, SeamKind
from drafting.pieces.pieces import Cutting, Edge, Finish, Mark, MarkKind, Material, Notch, Piece
from drafting.pieces.seams import Run, Seam
from styles.base.edge_runs import distance, walk
from styles.base.grain import plumb_grain
from styles.base.part import HalfToCut, Notion, NotionKind, Part
from styles.choice.style import Allowances, Style
from styles.parts.pocket_plan import PocketPlan, plan_pocket

_WATCH_HEM = 20.0
"""Allowance of the watch pocket's upper edge, turned twice, mm (common practice)."""


def front_pocket(half: HalfToCut, style: Style, leg: Piece) -> Part:
    """Return the pocket of one half, sewn to itself and to its front leg, with its rivets.

    Args:
        half: The half.
        style: The style.
        leg: The front leg of this half.
    """
    plan, allowances = plan_pocket(half, style), style.allowances
    with_watch = style.front_pocket.watch and half.side is not Side.LEFT
    facing = half.of_front(_facing(half, plan, allowances, watch=with_watch))
    back = half.of_front(_bag_back(half, plan, allowances))
    # The bag's front is sewn face to face to the leg and turned, so its own face shows the mirror image.
    front = half.of_front(_bag_front(half, plan, allowances)).mirrored()
    rivets = (2 if half.side else 4) + (2 if with_watch else 0)
    watch = (_watch_pocket(plan, allowances),) if with_watch else ()
    seams = _seams(leg, facing, back, front)
    return Part((facing, back, front, *watch), seams, notions=(Notion(NotionKind.RIVET, rivets),))


def _seams(leg: Piece, facing: Piece, back: Piece, front: Piece) -> tuple[Seam, ...]:
    waist, side, opening, bag = EdgeKind.WAIST, EdgeKind.SIDE, EdgeKind.OPENING, EdgeKind.BAG

    def seam(kind: SeamKind, first: Run, second: Run) -> Seam:
        return Seam(kind, (first,), (second,), side=leg.side)

    def length(piece: Piece, edge: EdgeKind) -> float:
        return piece.edge(edge).length

    on_leg = walk(leg, opening, away_from=waist)
    end = distance(back, walk(back, side, away_from=waist), PlaceKind.POCKET_END)
    return (
        seam(SeamKind.OPENING, on_leg, walk(front, opening, away_from=waist)),
        seam(SeamKind.OPENING_OVER_FACING, on_leg, Run(facing.id, opening)),
        seam(SeamKind.BAG, walk(back, bag, away_from=side), walk(front, bag, away_from=side)),
        seam(
            SeamKind.FACING_AT_WAIST,
            walk(facing, waist, away_from=side),
            walk(back, waist, away_from=side, end=length(facing, waist)),
        ),
        seam(
            SeamKind.FACING_AT_SIDE,
            walk(facing, side, away_from=waist),
            walk(back, side, away_from=waist, end=length(facing, side)),
        ),
        seam(
            SeamKind.BAG_FRONT_AT_WAIST,
            walk(front, waist, away_from=opening),
            walk(leg, waist, away_from=opening, end=length(front, waist)),
        ),
        seam(
            SeamKind.BAG_FRONT_AT_SIDE,
            walk(front, side, away_from=opening),
            walk(leg, side, away_from=opening, end=length(front, side)),
        ),
        seam(
            SeamKind.BAG_BACK_AT_SIDE,
            walk(back, side, away_from=waist, start=end),
            walk(leg, side, away_from=opening, end=length(back, side) - end),
        ),
    )


def _facing(half: HalfToCut, plan: PocketPlan, allowances: Allowances, *, watch: bool) -> Piece:
    waist, side, inner = plan.facing
    edges = (
        _waist(plan, waist, allowances),
        _side(plan, side, allowances),
        Edge(EdgeKind.INNER, inner, allowances.small),
    )
    marks = (
        Mark(PlaceKind.POCKET_OPENING, MarkKind.LINE, plan.opened.curve),
        *(_watch_marks(half, plan) if watch else ()),
    )
    grain, cutting = plumb_grain(edges), half.cutting()
    return Piece(PieceKind.POCKET_FACING, edges, grain, cutting, marks, side=half.side)


def _watch_marks(half: HalfToCut, plan: PocketPlan) -> tuple[Mark, ...]:
    shows = PlaceKind.WATCH_POCKET if half.side else PlaceKind.WATCH_POCKET_ON_RIGHT
    top_side, low_side, low_inner, top_inner = plan.watch
    return (
        Mark(shows, MarkKind.LINE, Path.through([top_side, low_side, low_inner, top_inner])),
        Mark(shows, MarkKind.DRILL, Path.through([top_side, top_inner])),
        Mark(shows, MarkKind.DRILL, Path.through([top_inner, top_side])),
    )


def _bag_back(half: HalfToCut, plan: PocketPlan, allowances: Allowances) -> Piece:
    waist, side, edge = plan.bag
    # The bag's own edge gets the side's allowance, so that the cut line runs on; enough for a French seam.
    edges = (
        _waist(plan, waist, allowances),
        _side(plan, side, allowances),
        Edge(EdgeKind.BAG, edge, allowances.side_seam),
    )
    marks = (Mark(PlaceKind.POCKET_FACING, MarkKind.LINE, plan.facing[2]),)
    cutting = half.cutting(Material.POCKETING)
    return Piece(PieceKind.BAG_BACK, edges, plumb_grain(edges), cutting, marks, side=half.side)


def _bag_front(half: HalfToCut, plan: PocketPlan, allowances: Allowances) -> Piece:
    waist, side, edge = plan.bag
    opened = plan.opened
    below = opened.hip - opened.depth
    lower = side.split(opened.depth)[1]
    notches = (Notch(PlaceKind.HIP, below),) if 0 < below < lower.length else ()
    edges = (
        Edge(EdgeKind.WAIST, waist.split(waist.length - opened.width)[0], allowances.waist),
        Edge(EdgeKind.OPENING, opened.curve, allowances.small),
        Edge(EdgeKind.SIDE, lower, allowances.side_seam, notches=notches),
        Edge(EdgeKind.BAG, edge, allowances.side_seam),
    )
    cutting = half.cutting(Material.POCKETING)
    return Piece(PieceKind.BAG_FRONT, edges, plumb_grain(edges), cutting, side=half.side)


def _waist(plan: PocketPlan, path: Path, allowances: Allowances) -> Edge:
    """Return the waist of facing or bag back, notched where the leg's pocket corner comes to lie."""
    return Edge(
        EdgeKind.WAIST,
        path,
        allowances.waist,
        notches=(Notch(PlaceKind.POCKET_CORNER, path.length - plan.opened.width),),
    )


def _side(plan: PocketPlan, path: Path, allowances: Allowances) -> Edge:
    """Return the side of facing or bag back, notched at the pocket end and, where it reaches it, the hip."""
    places = ((PlaceKind.POCKET_END, plan.opened.depth), (PlaceKind.HIP, plan.opened.hip))
    notches = tuple(Notch(place, at) for place, at in places if 0 < at < path.length)
    return Edge(EdgeKind.SIDE, path, allowances.side_seam, notches=notches)


def _watch_pocket(plan: PocketPlan, allowances: Allowances) -> Piece:
    top_side, low_side, low_inner, top_inner = plan.watch
    # 0 stays 0 for those who add their own.
    hem = _WATCH_HEM if allowances.small else 0.0
    edges = (
        Edge(EdgeKind.UPPER, Path.through([top_inner, top_side]), hem, Finish.HEM),
        Edge(EdgeKind.OUTER, Path.through([top_side, low_side]), allowances.small),
        Edge(EdgeKind.LOWER, Path.through([low_side, low_inner]), allowances.small),
        Edge(EdgeKind.INNER, Path.through([low_inner, top_inner]), allowances.small),
    )
    return Piece(PieceKind.WATCH_POCKET, edges, plumb_grain(edges), Cutting())
