"""The patch pocket on the back: its size from the hip, its shape, and where it is sewn on."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector
from drafting.pieces.kinds import EdgeKind, PieceKind, PlaceKind
from drafting.pieces.pieces import Cutting, Edge, Finish, Mark, MarkKind, Piece
from styles import back_pockets
from styles.back_pockets import PocketOutline, PocketSize
from styles.base.part import Part
from styles.choice.kinds import of_kind
from styles.choice.style import Style

_HEM = 22.0
"""Depth of the hem along the opening: 7/8 in (a hand drafter of selvedge jeans)."""

_CLEAR_OF_SIDE = 25.0
"""Least distance of the outer corner from the side seam, mm; 2 1/2 in, seam allowance included, on a large
pair (a hand drafter of selvedge jeans)."""

_NEAREST_YOKE = 15.0
"""A pocket that has to move up stays this far below the yoke seam, clear of its stitching (common
practice)."""

_SQUATTEST = 0.6
"""Its sides are never shorter than this share of its opening: a hand still has to go in (common practice)."""

_HIDDEN = 4.0
"""Drill holes lie this far inside the pocket's corners, mm, and are covered by it (common practice)."""


def pocket_size(style: Style, hip: float, seams: Sequence[Path], *, crotch: float) -> PocketSize:
    """Return the one pocket that fits every back leg.

    Where a back is too narrow for it, opening and distance from the centre shrink alike. Where the seat is
    too short for it to end above crotch level, it moves up towards the yoke first and then gets shorter
    (common practice).

    Args:
        style: The style.
        hip: Hip girth, mm.
        seams: The upper edges of the back legs.
        crotch: Height of crotch level, mm.
    """
    asked = style.back_pocket
    room = max(min(seam.length for seam in seams) - _CLEAR_OF_SIDE, 0.0)
    share = min(1.0, room / (asked.from_centre + asked.opening * hip))
    opening, point = asked.opening * hip * share, asked.point * share
    drop = min(seam.point(seam.length / 2).y for seam in seams) - crotch - point
    wanted = asked.height * opening
    below_yoke = min(asked.below_yoke, max(drop - wanted, _NEAREST_YOKE))
    height = max(min(wanted, drop - below_yoke), _SQUATTEST * opening)
    taper, from_centre = asked.taper * share, asked.from_centre * share
    return PocketSize(opening, height, taper, point, from_centre, below_yoke, asked.shape)


def outline_of(size: PocketSize) -> PocketOutline:
    """Return the outline of a pocket in its shape."""
    outline: PocketOutline = of_kind(back_pockets, size.shape, "outline")(size)
    return outline


def back_pocket(style: Style, size: PocketSize) -> Part:
    """Return the pocket, alike for left and right."""
    outline, allowances = outline_of(size), style.allowances
    opening = Path.through([outline.right.end, outline.left.start])
    edges = (
        Edge(EdgeKind.POCKET_LEFT, outline.left, allowances.small),
        Edge(EdgeKind.POCKET_BOTTOM, outline.bottom, allowances.small),
        Edge(EdgeKind.POCKET_RIGHT, outline.right, allowances.small),
        Edge(EdgeKind.POCKET_OPENING, opening, _HEM if allowances.hem else 0.0, Finish.HEM),
    )
    grain = Path.through([Point(0, -0.85 * size.height), Point(0, -0.15 * size.height)])
    return Part((Piece(PieceKind.BACK_POCKET, edges, grain, Cutting(2, pairs=True)),))


def placing(seam: Path, size: PocketSize) -> tuple[Mark, ...]:
    """Return the pocket's outline on the back leg, and two points to mark through the cloth beneath it.

    Args:
        seam: Upper edge of the back leg, from the centre to the side, the leg to its left.
        size: From `pocket_size`; the pocket's top edge lies parallel to the seam.
    """
    inner, outer = (seam.point(size.from_centre + far) for far in (0.0, size.opening))
    along = (outer - inner).unit
    down = along.left
    middle = inner + along * (size.opening / 2) + down * size.below_yoke

    def placed(p: Point) -> Point:
        return middle + along * -p.x + down * -p.y

    hidden = Vector(size.opening / 2 - _HIDDEN, -_HIDDEN)
    drills = (placed(Point(x, hidden.y)) for x in (-hidden.x, hidden.x))
    return (
        Mark(PlaceKind.BACK_POCKET, MarkKind.LINE, outline_of(size).ring.moved(placed)),
        *(Mark(PlaceKind.POCKET_CORNER, MarkKind.DRILL, Path.through([at, at + down])) for at in drills),
    )
