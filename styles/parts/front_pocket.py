"""The front pocket: facing, the two halves of its bag, and the watch pocket on the right facing."""

from __future__ import annotations

from drafting.body.measurements import Side
from drafting.geometry.paths import Path
from drafting.pieces.pieces import Cutting, Edge, Finish, Mark, MarkKind, Material, Notch, Piece
from drafting.pieces.seams import Run, Seam
from styles.base.edges import OPENING, SIDE, WAIST
from styles.base.grain import plumb_grain
from styles.base.part import HalfOf, Notion, Part
from styles.base.runs import distance, walk
from styles.choice.style import Allowances, Style
from styles.parts.pocket_plan import PocketPlan, plan_pocket

POCKET_FACING, BAG_BACK, BAG_FRONT = "pocket facing", "pocket bag back", "pocket bag front"
WATCH_POCKET = "watch pocket"
INNER, BAG = "inner edge", "bag edge"
POCKET_CORNER, POCKET_END = "pocket corner", "pocket end"

_WATCH_HEM = 20.0
"""Allowance of the watch pocket's upper edge, turned twice, mm (common practice)."""


def front_pocket(half_of: HalfOf, style: Style, leg: Piece) -> Part:
    """Return the pocket of one half, sewn to itself and to its front leg, with its rivets.

    Args:
        half_of: The half.
        style: The style.
        leg: The front leg of this half.
    """
    plan, room = plan_pocket(half_of, style), style.allowances
    with_watch = style.front_pocket.watch and half_of.half.side is not Side.LEFT
    facing = half_of.of_front(_facing(half_of, plan, room, watch=with_watch))
    back = half_of.of_front(_bag_back(half_of, plan, room))
    # The bag's front is sewn face to face to the leg and turned, so its own face shows the mirror image.
    front = half_of.of_front(_bag_front(half_of, plan, room)).mirrored()
    rivets = (2 if half_of.half.side else 4) + (2 if with_watch else 0)
    watch = (_watch_pocket(plan, room),) if with_watch else ()
    seams = _seams(half_of, leg, facing, back, front)
    return Part((facing, back, front, *watch), seams, notions=(Notion("rivet", rivets),))


def _seams(half_of: HalfOf, leg: Piece, facing: Piece, back: Piece, front: Piece) -> tuple[Seam, ...]:
    def seam(name: str, first: Run, second: Run) -> Seam:
        return Seam(half_of.name(name), (first,), (second,))

    def length(piece: Piece, edge: str) -> float:
        return piece.edge(edge).length

    opening = distance(back, walk(back, SIDE, away_from=WAIST), POCKET_END)
    return (
        seam("pocket opening", walk(leg, OPENING, away_from=WAIST), walk(front, OPENING, away_from=WAIST)),
        seam(
            "pocket opening over its facing",
            walk(leg, OPENING, away_from=WAIST),
            Run(facing.name, OPENING),
        ),
        seam("pocket bag", walk(back, BAG, away_from=SIDE), walk(front, BAG, away_from=SIDE)),
        seam(
            "pocket facing to bag at the waist",
            walk(facing, WAIST, away_from=SIDE),
            walk(back, WAIST, away_from=SIDE, end=length(facing, WAIST)),
        ),
        seam(
            "pocket facing to bag at the side",
            walk(facing, SIDE, away_from=WAIST),
            walk(back, SIDE, away_from=WAIST, end=length(facing, SIDE)),
        ),
        seam(
            "pocket bag front at the waist",
            walk(front, WAIST, away_from=OPENING),
            walk(leg, WAIST, away_from=OPENING, end=length(front, WAIST)),
        ),
        seam(
            "pocket bag front at the side",
            walk(front, SIDE, away_from=OPENING),
            walk(leg, SIDE, away_from=OPENING, end=length(front, SIDE)),
        ),
        seam(
            "pocket bag back at the side",
            walk(back, SIDE, away_from=WAIST, start=opening),
            walk(leg, SIDE, away_from=OPENING, end=length(back, SIDE) - opening),
        ),
    )


def _facing(half_of: HalfOf, plan: PocketPlan, room: Allowances, *, watch: bool) -> Piece:
    waist, side, inner = plan.facing
    edges = (_waist(plan, waist, room), _side(plan, side, room), Edge(INNER, inner, room.small))
    marks = (Mark(OPENING, MarkKind.LINE, plan.opened.curve), *(_watch_marks(half_of, plan) if watch else ()))
    return Piece(half_of.name(POCKET_FACING), edges, plumb_grain(edges), half_of.cutting(), marks)


def _watch_marks(half_of: HalfOf, plan: PocketPlan) -> tuple[Mark, ...]:
    name = WATCH_POCKET if half_of.half.side else f"{WATCH_POCKET}, right only"
    top_side, low_side, low_inner, top_inner = plan.watch
    return (
        Mark(name, MarkKind.LINE, Path.through([top_side, low_side, low_inner, top_inner])),
        Mark(name, MarkKind.DRILL, Path.through([top_side, top_inner])),
        Mark(name, MarkKind.DRILL, Path.through([top_inner, top_side])),
    )


def _bag_back(half_of: HalfOf, plan: PocketPlan, room: Allowances) -> Piece:
    waist, side, edge = plan.bag
    # The bag's own edge gets the side's allowance, so that the cut line runs on; enough for a French seam.
    edges = (_waist(plan, waist, room), _side(plan, side, room), Edge(BAG, edge, room.side_seam))
    marks = (Mark(POCKET_FACING, MarkKind.LINE, plan.facing[2]),)
    cutting = half_of.cutting(Material.POCKETING)
    return Piece(half_of.name(BAG_BACK), edges, plumb_grain(edges), cutting, marks)


def _bag_front(half_of: HalfOf, plan: PocketPlan, room: Allowances) -> Piece:
    waist, side, edge = plan.bag
    opened = plan.opened
    below = opened.hip - opened.depth
    lower = side.split(opened.depth)[1]
    notches = (Notch("hip", below),) if 0 < below < lower.length else ()
    edges = (
        Edge(WAIST, waist.split(waist.length - opened.width)[0], room.waist),
        Edge(OPENING, opened.curve, room.small),
        Edge(SIDE, lower, room.side_seam, notches=notches),
        Edge(BAG, edge, room.side_seam),
    )
    return Piece(half_of.name(BAG_FRONT), edges, plumb_grain(edges), half_of.cutting(Material.POCKETING))


def _waist(plan: PocketPlan, path: Path, room: Allowances) -> Edge:
    """Return the waist of facing or bag back, notched where the leg's pocket corner comes to lie."""
    return Edge(WAIST, path, room.waist, notches=(Notch(POCKET_CORNER, path.length - plan.opened.width),))


def _side(plan: PocketPlan, path: Path, room: Allowances) -> Edge:
    """Return the side of facing or bag back, notched at the pocket end and, where it reaches it, the hip."""
    places = ((POCKET_END, plan.opened.depth), ("hip", plan.opened.hip))
    notches = tuple(Notch(name, at) for name, at in places if 0 < at < path.length)
    return Edge(SIDE, path, room.side_seam, notches=notches)


def _watch_pocket(plan: PocketPlan, room: Allowances) -> Piece:
    top_side, low_side, low_inner, top_inner = plan.watch
    # 0 stays 0 for those who add their own.
    hem = _WATCH_HEM if room.small else 0.0
    edges = (
        Edge("upper edge", Path.through([top_inner, top_side]), hem, Finish.HEM),
        Edge("outer edge", Path.through([top_side, low_side]), room.small),
        Edge("lower edge", Path.through([low_side, low_inner]), room.small),
        Edge("inner edge", Path.through([low_inner, top_inner]), room.small),
    )
    return Piece(WATCH_POCKET, edges, plumb_grain(edges), Cutting())
