"""The back leg below the yoke, and the yoke with the dart closed; or the leg with a dart in its place."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.block.point_names import Drawn
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.kinds import CornerKind, EdgeKind, PieceKind, PlaceKind, SeamKind
from drafting.pieces.pieces import Edge, Mark, MarkKind, Notch, NotchKind, Piece
from drafting.pieces.seams import Corner, CornerPlace, Run, Seam
from styles.base.hem import hem_edge
from styles.base.part import HalfToCut, Part
from styles.choice.style import BackCut, Style
from styles.top.back_dart import dart_marks, dart_seams, darted, upper_edges
from styles.top.upper import BackTop, back_top

_CLEAR = 50.0
"""The grain line keeps this far from the hem so that its arrow stays inside, mm (common practice)."""


@dataclass(frozen=True)
class FromHem:
    """Where front and back are matched, mm along their seams from the hem; no knee on shorts."""

    knee: float | None
    hip: float

    @staticmethod
    def of(half: HalfToCut) -> FromHem:
        """Return the distances as the front has them; the back is marked at the same ones."""
        front = half.drafted.front
        below_knee = front.lower.inseam.curves[:-1]
        return FromHem(
            Path(below_knee).length if below_knee else None, front.side.length - front.side.curves[0].length
        )

    def at_knee(self, kind: NotchKind) -> tuple[Notch, ...]:
        """Return the knee notch of a seam that starts at the hem."""
        return () if self.knee is None else (Notch(PlaceKind.KNEE, self.knee, kind),)

    def along(self, side: Path, kind: NotchKind, above: float = 0.0) -> tuple[Notch, ...]:
        """Return the notches that lie on a stretch of the side seam which ends `above` mm above the hem."""
        places = ((PlaceKind.HIP, self.hip), (PlaceKind.KNEE, self.knee))
        found = ((place, side.length + above - up) for place, up in places if up is not None)
        return tuple(Notch(place, at, kind) for place, at in found if 0 < at < side.length)


def back_leg(half: HalfToCut, style: Style, marks: tuple[Mark, ...] = ()) -> Part:
    """Return back leg and yoke of one half, with the seam between them; or the leg with its dart.

    Args:
        half: The half.
        style: The style.
        marks: Marks for the back leg, in the block's drawing, such as the placing of the pocket.
    """
    if style.back is BackCut.DART:
        return _darted_leg(half, style, marks)
    top = back_top(half.drafted.back, style)
    leg, yoke = _leg(half, style, top, marks), _yoke(half, style, top)
    backwards = leg.edges[0].kind is EdgeKind.YOKE
    below, above = (
        Run(leg.id, EdgeKind.YOKE, backwards=not backwards),
        Run(yoke.id, EdgeKind.YOKE, backwards=backwards),
    )
    corners = tuple(
        Corner(
            kind,
            CornerPlace(leg.id, (EdgeKind.YOKE, lower)),
            CornerPlace(yoke.id, (EdgeKind.YOKE, upper)),
            piece=yoke.id,
        )
        for kind, lower, upper in (
            (CornerKind.YOKE_ACROSS_SIDE, EdgeKind.SIDE, EdgeKind.SIDE),
            (CornerKind.YOKE_ACROSS_CENTRE_BACK, EdgeKind.CROTCH, EdgeKind.CENTRE_BACK),
        )
    )
    return Part((leg, yoke), (Seam(SeamKind.YOKE, (below,), (above,), piece=leg.id),), corners)


def _darted_leg(half: HalfToCut, style: Style, marks: tuple[Mark, ...]) -> Part:
    back = darted(half.drafted.back, style)
    upper = upper_edges(back, style.allowances)
    leg = _below(half, style, upper, back.side, back.crotch, (*dart_marks(back), *marks))
    return Part((leg,), dart_seams(leg, back))


def _leg(half: HalfToCut, style: Style, top: BackTop, marks: tuple[Mark, ...]) -> Piece:
    notch = Notch(PlaceKind.YOKE, top.seam.length / 2, NotchKind.DOUBLE)
    allowances = style.allowances
    seam = Edge(EdgeKind.YOKE, top.seam, allowances.folded_over(allowances.yoke), notches=(notch,))
    return _below(half, style, (seam,), top.side, top.crotch, marks)


def _below(
    half: HalfToCut,
    style: Style,
    upper: tuple[Edge, ...],
    side: Path,
    crotch: Path,
    marks: tuple[Mark, ...],
) -> Piece:
    """Return the back leg below its upper edges."""
    panel, allowances = half.drafted.back, style.allowances
    at, kind = FromHem.of(half), NotchKind.DOUBLE
    inseam, points, levels = panel.lower.inseam, panel.points(), panel.lower.levels
    hem, folds = hem_edge(side, inseam, style)
    edges = (
        *upper,
        Edge(EdgeKind.SIDE, side, allowances.side_seam, notches=at.along(side, kind)),
        hem,
        Edge(EdgeKind.INSEAM, inseam, allowances.folded_over(allowances.inseam), notches=at.at_knee(kind)),
        Edge(EdgeKind.CROTCH, crotch, allowances.crotch_seam),
    )
    crease = points[Drawn.CREASE].x
    grain = Path.through([Point(crease, levels.hem.mm + _CLEAR), Point(crease, levels.crotch.mm)])
    lines = Mark(PlaceKind.CREASE, MarkKind.LINE, panel.lower.crease)
    marks = (lines, *folds, *marks)
    piece = Piece(PieceKind.BACK_LEG, edges, grain, half.cutting(), marks, side=half.side)
    return half.of_back(piece)


def _yoke(half: HalfToCut, style: Style, top: BackTop) -> Piece:
    crown, allowances = top.yoke, style.allowances
    hip = FromHem.of(half).along(crown.side, NotchKind.DOUBLE, top.side.length)
    edges = (
        Edge(EdgeKind.WAIST, crown.waist, allowances.waist),
        # A hip that lies high comes to lie on the yoke.
        Edge(EdgeKind.SIDE, crown.side, allowances.side_seam, notches=hip),
        Edge(
            EdgeKind.YOKE,
            crown.lower,
            allowances.folded_in(allowances.yoke),
            notches=(Notch(PlaceKind.YOKE, crown.lower.length / 2, NotchKind.DOUBLE),),
        ),
        Edge(EdgeKind.CENTRE_BACK, crown.centre, allowances.crotch_seam),
    )
    low, high = crown.lower.point(crown.lower.length / 2), crown.waist.point(crown.waist.length / 2)
    grain = Path.through([low.towards(high, 0.15), low.towards(high, 0.85)])
    return half.of_back(Piece(PieceKind.BACK_YOKE, edges, grain, half.cutting(), side=half.side))
