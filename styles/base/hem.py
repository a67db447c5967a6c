"""The hem of a leg: its line, and a turn-up below it."""

from __future__ import annotations

import math
from collections.abc import Iterator

from drafting.base.errors import Severity
from drafting.base.findings import Finding
from drafting.base.tolerance import HEM_CORNER_DEG, JOIN
from drafting.block.block import Block
from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector
from drafting.geometry.solve import bisect
from drafting.pieces.kinds import EdgeKind, PlaceKind
from drafting.pieces.pieces import Edge, Finish, Mark, MarkKind
from styles.choice.style import Style

_STRAIGHT = math.radians(0.4 * HEM_CORNER_DEG)
"""A seam that leans no more than this leaves the hem straight, so that it turns up flat; two such seams
together stay within the tolerance (common practice)."""

_CLEAR_OF_CROTCH = 50.0
"""A turn-up ends this far below the fork, mm, or it would be in the way of the other (common practice)."""

_GIVES = 2.0
"""Cloth that has to give by less than this, mm, does so under the iron (common practice, no source)."""


def hem_line(side: Path, inseam: Path) -> Path:
    """Return the hem from the side seam, given downwards, to the inseam, given upwards.

    Where a seam leans more, in a flare or in shorts, the hem bends towards square with it, so that front and
    back make one line across the seam.
    """
    chord = inseam.start - side.end
    square_to_side = chord.angle_to(side.direction(side.length).left)
    square_to_inseam = chord.angle_to(-inseam.direction(0).left)
    leave, arrive = (chord.turned(_beyond(turn)) for turn in (square_to_side, square_to_inseam))
    if leave == arrive == chord:
        return Path((Cubic.line(side.end, inseam.start),))
    # Handles of a third keep the bend even, so that the hem's allowance fits however the two turns differ.
    third = 1 / 3
    return Path((Cubic(side.end, side.end + leave * third, inseam.start + arrive * -third, inseam.start),))


def _beyond(turn: float) -> float:
    return math.copysign(max(abs(turn) - _STRAIGHT, 0.0), turn)


def hem_edge(side: Path, inseam: Path, style: Style) -> tuple[Edge, tuple[Mark, ...]]:
    """Return the hem of a leg and the lines along which its turn-up is folded.

    Args:
        side: The side seam, downwards.
        inseam: The inseam, upwards.
        style: Its turn-up fits on the leg.
    """
    line, depth = hem_line(side, inseam), style.turn_up
    edge = Edge(EdgeKind.HEM, line, style.allowances.hem + 2 * depth, Finish.HEM, turn_up=depth)
    if not depth:
        return edge, ()
    along = (line.end - line.start).unit
    up = along.left
    ends = [_mirrored_at(path, line.start, up, depth) for path in (side.reversed(), inseam)]
    first, last = line.curves[0], line.curves[-1]
    fold = Cubic.bent(ends[0], first.direction(0), ends[1], last.direction(1), 2 / 3)
    lines = (
        (PlaceKind.TURN_UP_FOLD, Cubic.line(*ends) if first.straight else fold),
        (PlaceKind.TURN_UP_HEM, line.moved(lambda p: p + up * (-2 * depth)).curves[0]),
    )
    return edge, tuple(Mark(shows, MarkKind.LINE, Path((curve,))) for shows, curve in lines)


def _mirrored_at(upwards: Path, origin: Point, up: Vector, depth: float) -> Point:
    """Return the place of a seam that lies `depth` above the hem's chord, mirrored in that chord."""
    at = bisect(lambda at: (upwards.point(at) - origin).dot(up) >= depth, 0.0, upwards.length, within=JOIN)
    return upwards.point(at) + up * (-2 * depth)


def turn_up_on(block: Block, style: Style) -> float:
    """Return the depth of the turn-up, less than the style's where a leg is too short for it, mm."""
    panels = [panel for half in block.halves for panel in (half.front, half.back)]
    # Its upper edge stays below the fork.
    room = min(panel.lower.inseam.end.y - panel.lower.inseam.start.y for panel in panels) - _CLEAR_OF_CROTCH
    return max(min(style.turn_up, room), 0.0)


def check_turn_up(block: Block, asked: float, drawn: float) -> Iterator[Finding]:
    """Yield what there is to say about a turn-up: that it was made less deep, that a bent hem strains it.

    Args:
        block: The block.
        asked: The depth that was asked for, mm.
        drawn: The depth that is drawn.
    """
    if drawn < asked:
        text = "A turn-up of {0} was asked for; the inseam is so short that only {1} lies on the leg."
        yield Finding("turn-up-short", Severity.WARNING, "turn-up", text, (asked, drawn), drawn, asked)
    bends = (
        abs(line.direction(0).angle_to(line.direction(line.length)))
        for half in block.halves
        for panel in (half.front, half.back)
        for line in (hem_line(panel.side, panel.lower.inseam),)
    )
    gives = drawn * max(bends)
    if gives > _GIVES:
        text = (
            "The hem bends to run on across seams that lean, and a bent fold does not lie quite flat: the "
            "upper edge of the turn-up has to give by {0} on each of front and back. Steam it into shape, or "
            "make it less deep."
        )
        yield Finding("turn-up-bent", Severity.NOTE, "turn-up", text, (gives,), gives, _GIVES)
