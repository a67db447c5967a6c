"""The back leg below the yoke, and the yoke with the dart closed; or the leg with a dart in its place."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.pieces import Edge, Mark, MarkKind, Notch, NotchKind, Piece
from drafting.pieces.seams import Corner, CornerPlace, Run, Seam
from styles.base.edges import CENTRE_BACK, CROTCH, INSEAM, SIDE, WAIST, YOKE
from styles.base.hem import hem_edge
from styles.base.part import HalfOf, Part
from styles.choice.style import BackCut, Style
from styles.top.back_dart import dart_marks, dart_seams, darted, upper_edges
from styles.top.upper import BackTop, back_top

BACK_LEG, BACK_YOKE = "back leg", "back yoke"

_CLEAR = 50.0
"""The grain line keeps this far from the hem so that its arrow stays inside, mm (common practice)."""


@dataclass(frozen=True)
class FromHem:
    """Where front and back are matched, mm along their seams from the hem; no knee on shorts."""

    knee: float | None
    hip: float

    @staticmethod
    def of(half_of: HalfOf) -> FromHem:
        """Return the distances as the front has them; the back is marked at the same ones."""
        front = half_of.half.front
        below_knee = front.panel.inseam.curves[:-1]
        return FromHem(
            Path(below_knee).length if below_knee else None, front.side.length - front.side.curves[0].length
        )

    def at_knee(self, kind: NotchKind) -> tuple[Notch, ...]:
        """Return the knee notch of a seam that starts at the hem."""
        return () if self.knee is None else (Notch("knee", self.knee, kind),)

    def along(self, side: Path, kind: NotchKind, above: float = 0.0) -> tuple[Notch, ...]:
        """Return the notches that lie on a stretch of the side seam which ends `above` mm above the hem."""
        places = (("hip", self.hip), ("knee", self.knee))
        found = ((name, side.length + above - up) for name, up in places if up is not None)
        return tuple(Notch(name, at, kind) for name, at in found if 0 < at < side.length)


def back_leg(half_of: HalfOf, style: Style, marks: tuple[Mark, ...] = ()) -> Part:
    """Return back leg and yoke of one half, with the seam between them; or the leg with its dart.

    Args:
        half_of: The half.
        style: The style.
        marks: Marks for the back leg, in the block's drawing, such as the placing of the pocket.
    """
    if style.back is BackCut.DART:
        return _darted_leg(half_of, style, marks)
    top = back_top(half_of.half.back, style)
    leg, yoke = half_of.name(BACK_LEG), half_of.name(BACK_YOKE)
    pieces = _leg(half_of, style, top, marks), _yoke(half_of, style, top)
    backwards = pieces[0].edges[0].name == YOKE
    seam = Seam(
        leg + " to yoke", (Run(leg, YOKE, backwards=not backwards),), (Run(yoke, YOKE, backwards=backwards),)
    )
    corners = tuple(
        Corner(f"{yoke} across the {name}", CornerPlace(leg, (YOKE, below)), CornerPlace(yoke, (YOKE, above)))
        for name, below, above in (("side seam", SIDE, SIDE), ("centre back", CROTCH, CENTRE_BACK))
    )
    return Part(pieces, (seam,), corners)


def _darted_leg(half_of: HalfOf, style: Style, marks: tuple[Mark, ...]) -> Part:
    back = darted(half_of.half.back, style)
    upper = upper_edges(back, style.allowances)
    leg = _below(half_of, style, upper, back.side, back.crotch, (*dart_marks(back), *marks))
    return Part((leg,), dart_seams(half_of, leg.name, back))


def _leg(half_of: HalfOf, style: Style, top: BackTop, marks: tuple[Mark, ...]) -> Piece:
    notch = Notch("yoke", top.seam.length / 2, NotchKind.DOUBLE)
    room = style.allowances
    seam = Edge(YOKE, top.seam, room.folded_over(room.yoke), notches=(notch,))
    return _below(half_of, style, (seam,), top.side, top.crotch, marks)


def _below(
    half_of: HalfOf,
    style: Style,
    upper: tuple[Edge, ...],
    side: Path,
    crotch: Path,
    marks: tuple[Mark, ...],
) -> Piece:
    """Return the back leg below its upper edges."""
    panel, room = half_of.half.back, style.allowances
    at, kind = FromHem.of(half_of), NotchKind.DOUBLE
    inseam, points, levels = panel.panel.inseam, panel.points(), panel.panel.levels
    hem, folds = hem_edge(side, inseam, style)
    edges = (
        *upper,
        Edge(SIDE, side, room.side_seam, notches=at.along(side, kind)),
        hem,
        Edge(INSEAM, inseam, room.folded_over(room.inseam), notches=at.at_knee(kind)),
        Edge(CROTCH, crotch, room.crotch_seam),
    )
    crease = points["crease"].x
    grain = Path.through([Point(crease, levels.hem.mm + _CLEAR), Point(crease, levels.crotch.mm)])
    lines = Mark("crease", MarkKind.LINE, panel.panel.crease)
    piece = Piece(half_of.name(BACK_LEG), edges, grain, half_of.cutting(), (lines, *folds, *marks))
    return half_of.of_back(piece)


def _yoke(half_of: HalfOf, style: Style, top: BackTop) -> Piece:
    crown, room = top.yoke, style.allowances
    hip = FromHem.of(half_of).along(crown.side, NotchKind.DOUBLE, top.side.length)
    edges = (
        Edge(WAIST, crown.waist, room.waist),
        # A hip that lies high comes to lie on the yoke.
        Edge(SIDE, crown.side, room.side_seam, notches=hip),
        Edge(
            YOKE,
            crown.lower,
            room.folded_in(room.yoke),
            notches=(Notch("yoke", crown.lower.length / 2, NotchKind.DOUBLE),),
        ),
        Edge(CENTRE_BACK, crown.centre, room.crotch_seam),
    )
    low, high = crown.lower.point(crown.lower.length / 2), crown.waist.point(crown.waist.length / 2)
    grain = Path.through([low.towards(high, 0.15), low.towards(high, 0.85)])
    return half_of.of_back(Piece(half_of.name(BACK_YOKE), edges, grain, half_of.cutting()))
