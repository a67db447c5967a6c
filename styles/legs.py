"""The leg pieces: the block's panels with edges, allowances, notches and marks."""

from __future__ import annotations

from drafting.block import Block
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
"""The grain line keeps this far from hem and waist so that its arrows stay inside, mm."""


def leg_pieces(block: Block, allowances: Allowances) -> tuple[Piece, Piece]:
    """Return the front and back leg of the right side, seen from the right side of the cloth."""
    knee = block.front.panel.inseam.curves[0].length
    hip = block.front.side.length - block.front.side.curves[0].length
    front = _leg(FRONT, block.front, allowances, NotchKind.SINGLE, knee, hip)
    back = _leg(BACK, block.back, allowances, NotchKind.DOUBLE, knee, hip)
    return front, back.mirrored()


def leg_seams(block: Block) -> tuple[Seam, ...]:
    """Return how the legs are sewn together, every seam walked from the hem."""
    knee, fork = block.front.panel.inseam.curves[0].length, block.front.panel.inseam.length
    return (
        Seam(
            INSEAM,
            (Run(FRONT, INSEAM),),
            (Run(BACK, INSEAM, backwards=True),),
            ease=block.proportions.inseam_ease,
            eased=(knee, fork),
        ),
        Seam(SIDE, (Run(FRONT, SIDE, backwards=True),), (Run(BACK, SIDE),)),
    )


def leg_corners() -> tuple[Corner, ...]:
    """Return the corners that must run on smoothly when the legs are sewn together."""

    def across(name: str, edge: str, seam: str, tolerance: float = ANGLE_DEG) -> Corner:
        return Corner(
            name, CornerPlace(FRONT, (edge, seam)), CornerPlace(BACK, (edge, seam)), tolerance=tolerance
        )

    return (
        across("crotch across the inseam", CROTCH, INSEAM),
        across("waist across the side seam", WAIST, SIDE, WAIST_CORNER_DEG),
        across("hem across the side seam", HEM, SIDE, HEM_CORNER_DEG),
        across("hem across the inseam", HEM, INSEAM, HEM_CORNER_DEG),
        *(
            Corner(f"waist at the centre {name}", place, place)
            for name, place in (
                ("front", CornerPlace(FRONT, (WAIST, CROTCH))),
                ("back", CornerPlace(BACK, (WAIST, CROTCH))),
            )
        ),
    )


def _leg(
    name: str, panel: BlockPanel, allowances: Allowances, kind: NotchKind, knee: float, hip: float
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
    grain = Path.through([Point(crease, levels.hem.mm + _CLEAR), Point(crease, levels.hip.mm)])
    marks = (
        Mark("crease", MarkKind.LINE, Path.through([points["crease at the hem"], points["crease"]])),
        *(mark for dart in panel.darts for mark in (
            Mark("dart", MarkKind.LINE, Path.through([dart.inner, dart.tip, dart.outer])),
            Mark("dart tip", MarkKind.DRILL, Path.through([dart.tip, dart.inner])),
        )),
    )  # fmt: skip
    return Piece(name, edges, grain, Cutting(quantity=2, pairs=True), marks)


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
