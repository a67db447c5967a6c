"""The seams that join one part of the jeans to another, and the corners that must run on across them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from drafting.base.tolerance import ANGLE_DEG, HEM_CORNER_DEG, WAIST_CORNER_DEG
from drafting.block.block import Block
from drafting.body.measurements import Side
from drafting.pieces.pieces import Notch, Piece
from drafting.pieces.seams import Corner, CornerPlace, Run, Seam
from styles.base.edges import CENTRE_BACK, CROTCH, HEM, INSEAM, OUTER_WAIST, SIDE, WAIST
from styles.base.part import HalfOf
from styles.base.runs import walk
from styles.choice.style import Style
from styles.parts.back_leg import BACK_LEG, BACK_YOKE, FromHem
from styles.parts.front_leg import FRONT_LEG, open_front
from styles.parts.front_pocket import POCKET_FACING
from styles.parts.straight_band import segment
from styles.parts.waistband import BACK_BAND, FRONT_BAND, STRAIGHT_BAND, WAIST_SEAM, WaistNotches

Pieces = Mapping[str, Piece]


def front_side(of: HalfOf, pieces: Pieces, style: Style) -> tuple[Run, ...]:
    """Return the front's side seam from the hem to the band: the leg, then the facing above the opening."""
    facing = pieces[of.name(POCKET_FACING)]
    hidden = facing.edge(SIDE).length - open_front(of, style).depth
    return walk(pieces[of.name(FRONT_LEG)], SIDE, away_from=HEM), walk(
        facing, SIDE, towards=WAIST, start=hidden
    )


def front_waist(of: HalfOf, pieces: Pieces, style: Style) -> tuple[Run, ...]:
    """Return the front's waist from the centre to the side: the leg, then the facing above the opening."""
    facing = pieces[of.name(POCKET_FACING)]
    hidden = facing.edge(WAIST).length - open_front(of, style).width
    return walk(pieces[of.name(FRONT_LEG)], WAIST, away_from=CROTCH), walk(
        facing, WAIST, towards=SIDE, start=hidden
    )


def back_waist(of: HalfOf, pieces: Pieces) -> tuple[Run, ...]:
    """Return the back's waist from the centre to the side: the yoke's, or the leg's without its dart."""
    if yoke := pieces.get(of.name(BACK_YOKE)):
        return (walk(yoke, WAIST, away_from=CENTRE_BACK),)
    leg = pieces[of.name(BACK_LEG)]
    inner = walk(leg, WAIST, away_from=CROTCH)
    if _at_side(leg) == WAIST:
        return (inner,)
    return inner, walk(leg, OUTER_WAIST, towards=SIDE)


def _at_side(back: Piece) -> str:
    """Return the name of the waist's edge at the side of a yoke or of a leg that reaches up to the band."""
    return OUTER_WAIST if any(edge.name == OUTER_WAIST for edge in back.edges) else WAIST


def _centre_back(of: HalfOf, pieces: Pieces) -> tuple[Run, ...]:
    """Return the back's crotch seam from the fork to the band."""
    leg = walk(pieces[of.name(BACK_LEG)], CROTCH, away_from=INSEAM)
    yoke = pieces.get(of.name(BACK_YOKE))
    return (leg, walk(yoke, CENTRE_BACK, towards=WAIST)) if yoke else (leg,)


def notched(pieces: dict[str, Piece], runs: tuple[Run, ...], notches: tuple[Notch, ...]) -> None:
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


def mark_waist(block: Block, pieces: dict[str, Piece], style: Style, loops: Sequence[WaistNotches]) -> None:
    """Put the belt loops' notches on legs, facings and yokes; the band carries the same ones."""
    for half, notches in zip(block.halves, loops, strict=True):
        of = HalfOf(half)
        notched(pieces, front_waist(of, pieces, style), notches.front)
        notched(pieces, back_waist(of, pieces), notches.back)


def leg_seams(block: Block, pieces: Pieces, style: Style) -> Iterator[Seam]:
    """Yield inseams and side seams of every half, and the crotch seams of a body whose sides differ."""
    for half in block.halves:
        of = HalfOf(half)
        front, back = (pieces[of.name(name)] for name in (FRONT_LEG, BACK_LEG))
        yoke = pieces.get(of.name(BACK_YOKE))
        knee, fork = FromHem.of(of).knee or 0.0, half.front.panel.inseam.length
        inseams = (walk(front, INSEAM, away_from=HEM),), (walk(back, INSEAM, away_from=HEM),)
        yield Seam(of.name(INSEAM), *inseams, ease=block.proportions.inseam_ease, eased=(knee, fork))
        backs = walk(back, SIDE, away_from=HEM), *((walk(yoke, SIDE, towards=WAIST),) if yoke else ())
        yield Seam(of.name(SIDE), front_side(of, pieces, style), backs)
    if len(block.halves) == 2:
        names = [HalfOf(half).name for half in block.halves]
        first, second = ((walk(pieces[n(FRONT_LEG)], CROTCH, away_from=INSEAM),) for n in names)
        yield Seam("front crotch seam", first, second)
        right, left = (_centre_back(HalfOf(half), pieces) for half in block.halves)
        yield Seam("back crotch seam", right, left)


def band_seams(block: Block, pieces: Pieces, style: Style) -> Iterator[Seam]:
    """Yield the waist seam between each pair of marks of the band: centre fronts, side seams, centre back."""
    straight = pieces.get(STRAIGHT_BAND)
    sides = (Side.RIGHT, Side.LEFT)
    for side, half in zip(sides, block.halves * (2 // len(block.halves)), strict=True):
        of = HalfOf(half)
        front, back = front_waist(of, pieces, style), back_waist(of, pieces)
        if straight:
            # The strip runs from the left front over the back to the right; each run leads from its centre.
            runs = (
                Run(straight.name, segment(side, "front"), backwards=side is Side.RIGHT),
                Run(straight.name, segment(side, "back"), backwards=side is Side.LEFT),
            )
            name = f"{side.value} {{}} to the waistband"
        elif side is Side.RIGHT or half.side:
            runs = (
                walk(pieces[of.name(FRONT_BAND)], WAIST_SEAM, towards=SIDE),
                walk(pieces[of.name(BACK_BAND)], WAIST_SEAM, towards=SIDE),
            )
            name = of.name("{} to the waistband")
        else:
            continue
        yield Seam(name.format("front"), front, (runs[0],))
        yield Seam(name.format("back"), back, (runs[1],))


def leg_corners(block: Block, pieces: Pieces) -> tuple[Corner, ...]:
    """Return the corners that must run on smoothly when legs, yoke and facing are sewn together."""
    return tuple(corner for half in block.halves for corner in _corners(HalfOf(half), pieces))


def _corners(of: HalfOf, pieces: Pieces) -> tuple[Corner, ...]:
    yoke = of.name(BACK_YOKE) in pieces
    upper, middle = (BACK_YOKE, CENTRE_BACK) if yoke else (BACK_LEG, CROTCH)
    at_side = _at_side(pieces[of.name(upper)])

    def across(
        name: str, first: str, second: str, edge: str, seam: str, tolerance: float = ANGLE_DEG
    ) -> Corner:
        on_back = at_side if edge == WAIST else edge
        places = CornerPlace(of.name(first), (edge, seam)), CornerPlace(of.name(second), (on_back, seam))
        return Corner(of.name(name), *places, tolerance=tolerance)

    def centre(name: str, piece: str, seam: str) -> Corner:
        place = CornerPlace(of.name(piece), (WAIST, seam))
        return Corner(of.name(f"waist at the centre {name}"), place, place)

    return (
        across("crotch across the inseam", FRONT_LEG, BACK_LEG, CROTCH, INSEAM),
        across("waist across the side seam", POCKET_FACING, upper, WAIST, SIDE, WAIST_CORNER_DEG),
        across("hem across the side seam", FRONT_LEG, BACK_LEG, HEM, SIDE, HEM_CORNER_DEG),
        across("hem across the inseam", FRONT_LEG, BACK_LEG, HEM, INSEAM, HEM_CORNER_DEG),
        centre("front", FRONT_LEG, CROTCH),
        centre("back", upper, middle),
    )
