"""What lies behind the front pocket's opening: facing, bag and watch pocket, drawn on the whole front."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.base.tolerance import JOIN
from drafting.geometry.curves import QUARTER_ROUND, Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector, meeting
from drafting.geometry.solve import bisect
from styles.base.part import HalfToCut
from styles.choice.style import Style
from styles.parts.front_leg import BAG_OVERLAP, FACING_OVERLAP, OpenFront, bag_room, open_front

_DOWN, _RIGHT, _UP = Vector(0, -1), Vector(1, 0), Vector(0, 1)

_BAG_SHARE = 0.63
"""The bag reaches over this share of the front's waist at least (6 1/2 in on a work-pant sheet)."""

_BAG_DEPTH, _BELOW_CROTCH = 240.0, 30.0
"""The bag hangs this deep, mm, but ends no further than this below crotch level. A work-pant sheet has
10 in for a front rise of 10 1/2 in without band, measured along its curve, which is about as far below."""

_BAG_ROUND, _BAG_ROUND_SHARE, _BOTTOM_SHARE = 50.0, 0.35, 0.45
"""Radius of the bag's lower corners, mm, and the largest shares of the bag's reach and of its bottom that one
takes (common practice)."""

_PAST_END, _LEAST_PAST_END = 30.0, 15.0
"""The facing runs on down the side this far past the opening, mm; in a shallow bag at least the lesser amount
(common practice)."""

_FACING_ROUND, _ROUND_SHARE = 38.0, 0.5
"""Radius of the facing's inner corner, mm, and its largest share of the inner edge (common practice)."""

_WATCH_WIDTH, _WATCH_HEIGHT, _WATCH_SHARE = 78.0, 88.0, 0.78
"""Watch pocket, mm, and its largest share of the opening's width (common practice, no source)."""

_WATCH_IN, _WATCH_DOWN, _WATCH_CLEAR, _WATCH_TAPER = 12.0, 20.0, 12.0, 3.0
"""Its distance from side seam, waist seam and lower edge of the facing, and how much each side runs in, mm
(common practice)."""


@dataclass(frozen=True)
class PocketPlan:
    """The lines of one front pocket, drawn on the right front.

    Attributes:
        opened: The front with its opening.
        facing: Waist, side and inner edge of the facing, a ring.
        bag: Waist, side and lower edge of the whole bag, a ring.
        watch: Corners of the watch pocket: upper at the side, lower at the side, lower and upper inside.
    """

    opened: OpenFront
    facing: tuple[Path, Path, Path]
    bag: tuple[Path, Path, Path]
    watch: tuple[Point, Point, Point, Point]


def plan_pocket(half: HalfToCut, style: Style) -> PocketPlan:
    """Return the lines of the pocket; bag and facing get smaller with rise and waist, never the other way."""
    opened = open_front(half, style)
    bag = _bag(opened, style, half.drafted.levels.crotch.mm)
    wanted = opened.depth + _PAST_END
    if style.front_pocket.watch:
        wanted = max(wanted, _WATCH_DOWN + _WATCH_HEIGHT + _WATCH_CLEAR)
    waist = opened.from_side(opened.width + FACING_OVERLAP)
    side = opened.whole.side.split(min(wanted, bag[1].length))[0]
    # Parallel to the waist's chord below, plumb inside: whole on every body, however its waist slopes.
    along = (waist.start - waist.end).unit
    corner = meeting(side.end, along, waist.start, _UP)
    facing = waist, side, _inner_edge(side.end, corner, waist.start)
    return PocketPlan(opened, facing, bag, _watch(waist, side, corner, opened.width))


def _bag(opened: OpenFront, style: Style, crotch: float) -> tuple[Path, Path, Path]:
    """Return the bag: along waist and side, round a level bottom and plumb up again."""
    front = opened.whole
    room = bag_room(front, style)
    reach = min(max(_BAG_SHARE * front.waist.length, opened.width + BAG_OVERLAP), room)
    waist = opened.from_side(reach)
    radius = min(_BAG_ROUND, _BAG_ROUND_SHARE * reach)
    bottom = max(front.side.start.y - _BAG_DEPTH, crotch - _BELOW_CROTCH)
    side = _down_to(front.side, bottom + radius, opened.depth + _LEAST_PAST_END)
    bottom = min(bottom, side.end.y - radius)
    down, inner = side.direction(side.length), waist.start
    corner = meeting(side.end, down, Point(0, bottom), _RIGHT)
    # A side that leans in leaves a narrow bottom.
    across = min(radius, _BOTTOM_SHARE * (inner.x - corner.x))
    first = Cubic.bent(side.end, down, corner + _RIGHT * across, _RIGHT, QUARTER_ROUND)
    turn, rise = Point(inner.x - across, bottom), Point(inner.x, bottom + radius)
    second = Cubic.bent(turn, _RIGHT, rise, _UP, QUARTER_ROUND)
    edge = Path((first, Cubic.line(first.end, turn), second, Cubic.line(rise, inner)))
    return waist, side, edge


def _down_to(side: Path, y: float, shortest: float) -> Path:
    """Return the side seam from its upper end to the height `y`, and at least `shortest` mm long."""
    reached = bisect(lambda at: side.point(at).y <= y, 0.0, side.length, within=JOIN)
    return side.split(max(reached, shortest))[0]


def _inner_edge(side: Point, corner: Point, waist: Point) -> Path:
    """Return the facing's inner edge from side to waist, its corner rounded."""
    along, up = (corner - side).unit, (waist - corner).unit
    radius = min(_FACING_ROUND, _ROUND_SHARE * (waist - corner).length)
    before, after = corner + along * -radius, corner + up * radius
    bend = Cubic.bent(before, along, after, up, QUARTER_ROUND)
    return Path((Cubic.line(side, before), bend, Cubic.line(after, waist)))


def _watch(waist: Path, side: Path, corner: Point, opening: float) -> tuple[Point, Point, Point, Point]:
    """Return the watch pocket's corners, parallel to the waist's chord, smaller where the facing is."""
    along = (waist.start - waist.end).unit
    down, way = -along.left, side.end - side.start
    low = way.dot(down) - _WATCH_CLEAR
    # Where the side leans in, the lower corner decides how far the pocket keeps from it.
    inset = _WATCH_IN + max(0.0, way.dot(along) * low / way.dot(down))
    reach = min((waist.start - side.start).dot(along), (corner - side.start).dot(along))
    width = min(_WATCH_WIDTH, _WATCH_SHARE * opening, reach - _WATCH_CLEAR - inset)
    top, bottom = side.start + down * _WATCH_DOWN, side.start + down * min(low, _WATCH_DOWN + _WATCH_HEIGHT)
    taper = along * _WATCH_TAPER
    inner = along * (inset + width)
    outer = along * inset
    return top + outer, bottom + outer + taper, bottom + inner + -taper, top + inner
