"""The leg pieces: the block's panels with edges, allowances, notches and marks."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.block import Block, Half
from drafting.measurements import Side
from drafting.paths import Path
from drafting.pieces import Cutting, Edge, Finish, Mark, MarkKind, Notch, NotchKind, Piece
from drafting.points import Point
from drafting.seams import Corner, CornerPlace, Run, Seam
from drafting.tolerance import ANGLE_DEG, HEM_CORNER_DEG, WAIST_CORNER_DEG
from drafting.waist_line import BlockPanel
from styles.style import Allowances

WAIST, SIDE, HEM, INSEAM, CROTCH = "waist", "side seam", "hem", "inseam", "crotch seam"
FRONT, BACK = "front leg", "back leg"

_CLEAR = 50.0
"""The grain line keeps this far from the hem so that its arrow stays inside, mm."""


@dataclass(frozen=True)
class LegNames:
    """What the two legs of one half are called."""

    front: str
    back: str

    @staticmethod
    def of(half: Half) -> LegNames:
        """Return the names; those of a body whose sides differ say which side they are for."""
        prefix = f"{half.side.value} " if half.side else ""
        return LegNames(prefix + FRONT, prefix + BACK)


def leg_pieces(block: Block, allowances: Allowances) -> tuple[Piece, ...]:
    """Return the legs as seen from the right side of the cloth: the right pair, or both where the sides differ."""
    return tuple(piece for half in block.halves for piece in _pair(half, allowances))


def _pair(half: Half, allowances: Allowances) -> tuple[Piece, Piece]:
    names = LegNames.of(half)
    knee = half.front.panel.inseam.curves[0].length
    hip = half.front.side.length - half.front.side.curves[0].length
    front = _leg(names.front, half, half.front, allowances, NotchKind.SINGLE, knee, hip)
    back = _leg(names.back, half, half.back, allowances, NotchKind.DOUBLE, knee, hip)
    # The block draws a right front and a left back.
    return (front.mirrored(), back) if half.side is Side.LEFT else (front, back.mirrored())


def leg_seams(block: Block, pieces: tuple[Piece, ...]) -> tuple[Seam, ...]:
    """Return how the legs are sewn together: inseams and side seams from the hem, centre seams from the fork."""
    ring = {piece.name: [edge.name for edge in piece.edges] for piece in pieces}

    def from_hem(piece: str, edge: str) -> tuple[Run, ...]:
        return (Run(piece, edge, backwards=ring[piece].index(edge) < ring[piece].index(HEM)),)

    def from_fork(piece: str) -> tuple[Run, ...]:
        return (Run(piece, CROTCH, backwards=ring[piece].index(CROTCH) < ring[piece].index(INSEAM)),)

    seams = []
    for half in block.halves:
        names = LegNames.of(half)
        prefix = f"{half.side.value} " if half.side else ""
        knee, fork = half.front.panel.inseam.curves[0].length, half.front.panel.inseam.length
        ease = block.proportions.inseam_ease
        inseams = from_hem(names.front, INSEAM), from_hem(names.back, INSEAM)
        seams.append(Seam(prefix + INSEAM, *inseams, ease=ease, eased=(knee, fork)))
        seams.append(Seam(prefix + SIDE, from_hem(names.front, SIDE), from_hem(names.back, SIDE)))
    if len(block.halves) == 2:
        right, left = (LegNames.of(half) for half in block.halves)
        seams.append(Seam("front crotch seam", from_fork(right.front), from_fork(left.front)))
        seams.append(Seam("back crotch seam", from_fork(right.back), from_fork(left.back)))
    return tuple(seams)


def leg_corners(block: Block) -> tuple[Corner, ...]:
    """Return the corners that must run on smoothly when the legs are sewn together."""
    return tuple(corner for half in block.halves for corner in _corners(half))


def _corners(half: Half) -> tuple[Corner, ...]:
    names = LegNames.of(half)
    prefix = f"{half.side.value} " if half.side else ""

    def across(name: str, edge: str, seam: str, tolerance: float = ANGLE_DEG) -> Corner:
        places = CornerPlace(names.front, (edge, seam)), CornerPlace(names.back, (edge, seam))
        return Corner(prefix + name, *places, tolerance=tolerance)

    def centre(name: str, piece: str) -> Corner:
        place = CornerPlace(piece, (WAIST, CROTCH))
        return Corner(f"{prefix}waist at the centre {name}", place, place)

    return (
        across("crotch across the inseam", CROTCH, INSEAM),
        across("waist across the side seam", WAIST, SIDE, WAIST_CORNER_DEG),
        across("hem across the side seam", HEM, SIDE, HEM_CORNER_DEG),
        across("hem across the inseam", HEM, INSEAM, HEM_CORNER_DEG),
        centre("front", names.front),
        centre("back", names.back),
    )


def _leg(
    name: str, half: Half, panel: BlockPanel, allowances: Allowances, kind: NotchKind, knee: float, hip: float
) -> Piece:
    """Return one leg in the block's own handedness; `knee` and `hip` are distances from the hem, mm."""
    inseam, side = panel.panel.inseam, panel.side
    edges = (
        Edge(WAIST, _waist(panel), allowances.waist, notches=_dart_notches(panel, kind)),
        Edge(
            SIDE,
            side,
            allowances.side_seam,
            notches=(Notch("hip", side.length - hip, kind), Notch("knee", side.length - knee, kind)),
        ),
        Edge(HEM, Path.through([side.end, inseam.start]), allowances.hem, Finish.HEM),
        Edge(INSEAM, inseam, allowances.inseam, notches=(Notch("knee", knee, kind),)),
        Edge(CROTCH, panel.panel.crotch, allowances.crotch_seam),
    )
    points = panel.points()
    crease, levels = points["crease"].x, panel.panel.levels
    grain = Path.through([Point(crease, levels.hem.mm + _CLEAR), Point(crease, levels.crotch.mm)])
    marks = (
        Mark("crease", MarkKind.LINE, Path.through([points["crease at the hem"], points["crease"]])),
        *(mark for dart in panel.darts for mark in (
            Mark("dart", MarkKind.LINE, Path.through([dart.inner, dart.tip, dart.outer])),
            Mark("dart tip", MarkKind.DRILL, Path.through([dart.tip, dart.inner])),
        )),
    )  # fmt: skip
    cutting = Cutting() if half.side else Cutting(quantity=2, pairs=True)
    return Piece(name, edges, grain, cutting, marks)


def _waist(panel: BlockPanel) -> Path:
    """Return the waist edge from the centre to the side, straight across each open dart."""
    edge = panel.waist[0]
    for dart, part in zip(panel.darts, panel.waist[1:], strict=True):
        edge = edge + Path.through([dart.inner, dart.outer]) + part
    return edge


def _dart_notches(panel: BlockPanel, kind: NotchKind) -> tuple[Notch, ...]:
    """Return a notch at each dart leg."""
    notches, walked = [], 0.0
    for number, (dart, part) in enumerate(zip(panel.darts, panel.waist, strict=False), start=1):
        walked += part.length
        notches.append(Notch(f"dart {number} inner leg", walked, kind))
        walked += dart.width
        notches.append(Notch(f"dart {number} outer leg", walked, kind))
    return tuple(notches)
