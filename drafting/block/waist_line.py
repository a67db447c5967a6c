"""The waist line of a panel: drawn with the darts closed, square to both seams, then opened again.

Closing a dart swings everything outside it about its tip. The closed waist is one curve, so the sewn waist is
smooth across the dart; cutting it along the dart legs and swinging the outer part back gives the pattern.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from drafting.base.formula import Length, Reason, named
from drafting.base.tolerance import ANGLE_DEG, LENGTH, WAIST_CORNER_DEG
from drafting.block.darts import Dart, Fold, close_darts, folds_between, open_darts, swung_shut
from drafting.block.panel import Panel, side_x
from drafting.block.step_record import Construction, Stage, Step
from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector
from drafting.geometry.solve import Numbers, solve_within

_MOST_EXTRA_TURN = math.radians(10)
"""The side seam's bow adds no more than this at the waist, however steep its chord (common practice)."""


_ROUNDS = 80
"""Drafts of the waist line at most; ordinary bodies take four."""

_SIDE_FIRST = 20.0
"""Where waist and side seam cannot both be had, a miss of the side seam, to be sewn, weighs so much more
(common practice)."""

_FARTHEST = 0.75
"""Trueing moves the side's end no further than this share of the way from hip to waist (common practice)."""

_ACROSS = 0.4
"""And no further to either side than this share of it (common practice)."""

_STRAIGHT = math.radians(1.2)
"""A waist line whose ends turn less than this off its chord is drawn straight: it stays square to the eye
(common practice)."""


_SLACK_AT_CENTRE, _SLACK_AT_SIDE = math.radians(ANGLE_DEG) / 2.1, math.radians(WAIST_CORNER_DEG) / 2.1
"""What a waist line may miss squareness by: both halves of the body, and front and back, together stay within
the tolerance. What the front leaves unused at the side the back may have."""

_EVEN = 0.25
"""Turn at the end that gives way, as a share of the turn at the other: enough to bend visibly one way
(common practice)."""

_LEAST_EVEN = 0.05
"""Less than this share is no bend but a corner, a twentieth of the waist line from the seam (own trial)."""


_SQUARED = 40.0
"""A waist line that must bend both ways is squared to a seam over about so much of it, mm (own trial: as
short as a shaped band, drawn some 4 cm below it, still follows smoothly)."""


@dataclass(frozen=True)
class BlockPanel:
    """A finished panel of the block.

    Attributes:
        lower: The panel below the waist line, with its plan and levels.
        side: The whole side seam from waist to hem.
        waist: The sewn stretches of the waist line from the centre to the side, one more than there are
            darts.
        darts: From the centre to the side.
        steps: Every step of the draft, in order.
    """

    lower: Panel
    side: Path
    waist: tuple[Path, ...]
    darts: tuple[Dart, ...]
    steps: tuple[Step, ...]

    @property
    def name(self) -> str:
        """Return "front" or "back"."""
        return self.lower.plan.name

    @property
    def waist_length(self) -> float:
        """The sewn waist, darts closed, mm."""
        return sum(part.length for part in self.waist)

    @cached_property
    def closed_waist(self) -> Path:
        """The waist line with the darts closed, from the centre to the side."""
        return close_darts(self.waist, self.darts)

    def trunk_width(self, y: float) -> float:
        """Return the width from centre line to side seam less the open darts, mm, from hip level to waist."""
        points = self.points()
        top, low = points["centre at the waist"], points["hip point"]
        centre = low.towards(top, (y - low.y) / (top.y - low.y)).x
        return centre - side_x(self.side, y) - sum(dart.opening(y) for dart in self.darts)

    @property
    def slack_left(self) -> float:
        """What the other panel may miss squareness by at the side, radians."""
        waist = self.waist[-1]
        off = waist.direction(waist.length).angle_to(-self.side.direction(0).left)
        return 2 * _SLACK_AT_SIDE - abs(off)

    def points(self) -> dict[str, Point]:
        """Return the named points of the draft."""
        return self.lower.construction.points


def draw_waist(
    panel: Panel,
    *,
    side_in: float,
    waist: float,
    take_up: float = 0.0,
    darts: int = 0,
    dart_length: Length | None = None,
    side_length: float | None = None,
    slack: float = _SLACK_AT_SIDE,
) -> BlockPanel:
    """Return the panel with its waist line and the upper side seam.

    Args:
        panel: The panel below the waist line.
        side_in: First guess of how far the side seam leans in from hip to waist, mm.
        waist: Wanted length of the sewn waist, darts closed, mm.
        take_up: Width of all darts together, mm.
        darts: How many darts share it; 0 for none.
        dart_length: Length of each dart, needed when there are any.
        side_length: Wanted length of the whole side seam; None ends it at the side's waist level.
        slack: What the waist line may miss squareness by at the side seam, radians.
    """
    trial = _Trial(panel, darts, take_up, dart_length.mm if dart_length else 0.0, slack)
    across, up = _side_point(trial, side_in, waist, side_length)
    drawn = trial.at(across, up)
    stretches, cut = open_darts(drawn.closed, drawn.folds)
    c = replace(
        panel.construction,
        points=dict(panel.construction.points),
        lines=dict(panel.construction.lines),
        steps=list(panel.construction.steps),
    )
    _record(c, drawn.side, trial.hip, stretches, cut, dart_length)
    c.stage = Stage.CURVE
    side = Path((drawn.upper, *panel.side.curves))
    c.line(
        "whole side seam", ("side at the waist", "hip at the side"), side, "bowed out, running on at the hip"
    )
    return BlockPanel(replace(panel, construction=c), side, stretches, cut, tuple(c.steps))


@dataclass(frozen=True)
class _Drawn:
    """A waist line on trial: where the side seam ends, its upper part, the darts, the line, darts closed."""

    side: Point
    upper: Cubic
    folds: tuple[Fold, ...]
    closed: Cubic


@dataclass(frozen=True)
class _Trial:
    """What a waist line is drawn from but for the place where the side seam ends.

    Attributes:
        panel: The panel below the waist line.
        darts: How many there are.
        take_up: Width of all darts together, mm.
        reach: Length of each, mm.
        slack: What the line may miss squareness by at the side seam, radians.
    """

    panel: Panel
    darts: int
    take_up: float
    reach: float
    slack: float

    @property
    def hip(self) -> Point:
        """Where the side seam crosses hip level."""
        return self.panel.side.start

    def at(self, across: float, up: float) -> _Drawn:
        """Return the waist line whose side seam ends so many mm inwards of the hip and above it."""
        top = self.panel.construction["centre at the waist"]
        lean = (top - self.panel.construction["hip point"]).unit
        angle = 2 * math.asin(self.take_up / self.darts / 2 / self.reach) if self.darts else 0.0
        side = Point(self.hip.x + across, self.hip.y + up)
        upper = _upper_side(side, self.hip, self.panel.side.direction(0), self.panel.plan.side_turn)
        folds = folds_between(top, side, self.darts, angle, self.reach)
        return _Drawn(side, upper, folds, _closed_waist(top, lean.left, side, upper, folds, self.slack))


def _side_point(
    trial: _Trial, side_in: float, waist: float, side_length: float | None
) -> tuple[float, float]:
    """Return how far inwards of the hip and above it the side seam ends, mm, for the lengths wanted."""
    side_height = trial.panel.levels.side_waist.mm - trial.hip.y

    def misses(x: Numbers) -> Numbers:
        drawn = trial.at(float(x[0]), float(x[1]))
        whole = drawn.upper.length + trial.panel.side.length
        side = x[1] - side_height if side_length is None else whole - side_length
        return np.array([drawn.closed.length - waist, _SIDE_FIRST * side])

    start = np.array([side_in, side_height])
    room = np.array([_ACROSS, _FARTHEST]) * side_height
    bounds = start - room, start + room
    slopes = np.array([[-1.0, 0.0], [0.0, _SIDE_FIRST]])
    solved = solve_within(misses, start, slopes, bounds, enough=LENGTH, rounds=_ROUNDS)
    # A body whose waist cannot be had stops the search early; its side seams are trued all the same.
    across, far = float(solved[0]), np.array([_FARTHEST * side_height])

    def side_miss(height: Numbers) -> Numbers:
        return misses(np.array([across, height[0]]))[1:] / _SIDE_FIRST

    height = solve_within(
        side_miss, solved[1:], np.eye(1), (solved[1:] - far, solved[1:] + far), enough=LENGTH, rounds=_ROUNDS
    )
    return across, float(height[0])


def _upper_side(waist: Point, hip: Point, leave_hip: Vector, side_turn: float) -> Cubic:
    """Return the side seam from waist to hip: running on at the hip, bowed outwards, straight at the top."""
    way = hip - waist
    turn = way.angle_to(leave_hip)
    bow = math.copysign(min(abs(turn) * (side_turn - 1), _MOST_EXTRA_TURN), turn)
    return Cubic.bent(waist, way.turned(-bow), hip, leave_hip, 2 / 3)


def _closed_waist(
    top: Point, leave: Vector, side: Point, upper: Cubic, folds: tuple[Fold, ...], slack: float
) -> Cubic:
    """Return the waist line with darts closed, square to the centre line and to the side seam."""
    turn = sum(fold.angle for fold in folds)
    arrive = (-upper.direction(0).left).turned(turn)
    end = swung_shut(side, folds)
    chord = end - top
    at_centre, at_side = leave.angle_to(chord), chord.angle_to(arrive)
    if max(abs(at_centre), abs(at_side)) < _STRAIGHT:
        return Cubic.line(top, end)
    if at_centre * at_side < 0:
        # Square to both seams it would bend both ways; one end gives up a little of its squareness instead,
        # or both do, and what is left is squared as a cutter does it: near the seam, and straight between.
        spare_at_centre, spare_at_side = _SLACK_AT_CENTRE - abs(at_centre), slack - abs(at_side)
        for enough in (_EVEN, _LEAST_EVEN):
            if spare_at_centre > enough * abs(at_side):
                leave = chord.turned(-_least(_EVEN * at_side, spare_at_centre))
                break
            if spare_at_side > enough * abs(at_centre):
                arrive = chord.turned(_least(_EVEN * at_centre, spare_at_side))
                break
        else:
            leave = leave.turned(_least(at_centre, _SLACK_AT_CENTRE))
            arrive = arrive.turned(-_least(at_side, slack))
            reach = min(_SQUARED, chord.length / 3)
            return Cubic(top, top + leave.unit * reach, end + arrive.unit * -reach, end)
    return Cubic.squared(top, leave, end, arrive)


def _least(turn: float, most: float) -> float:
    """Return a turn, or as much of it as `most` allows, radians."""
    return math.copysign(min(abs(turn), most), turn)


def _record(
    c: Construction,
    side: Point,
    hip: Point,
    stretches: tuple[Path, ...],
    darts: tuple[Dart, ...],
    dart_length: Length | None,
) -> None:
    """Write the steps of the waist into the construction."""
    own = "own hip at the side"
    c.stage = Stage.PANEL
    c.go(
        "side plumb",
        own if own in c.points else "hip at the side",
        Vector(0, 1),
        named(f"height that trues the {c.panel} side seam", side.y - hip.y, Reason.SIDE_SEAM),
        "plumb up",
    )
    inwards = Vector(1 if side.x >= hip.x else -1, 0)
    c.go(
        "side at the waist",
        "side plumb",
        inwards,
        named(f"{c.panel} side suppression", abs(side.x - hip.x), Reason.SUPPRESSION),
        "level",
    )
    c.stage = Stage.WAIST
    ends = ["centre at the waist", "side at the waist"]
    line = c[ends[1]] - c[ends[0]]
    whole = named(f"{c.panel} waist straight from centre to side", line.length)
    inside = ends[:1]
    for number, dart in enumerate(darts, start=1):
        assert dart_length is not None
        middle, tip, inner, outer = (
            f"dart {number} {part}" for part in ("middle", "tip", "inner leg", "outer leg")
        )
        share = whole * number / (len(darts) + 1) if number > 1 else whole / (len(darts) + 1)
        c.go(middle, ends[0], line.unit, share, "on the straight line to the side", (ends[1],))
        c.go(tip, middle, line.unit.left, dart_length, "square to that line", (ends[0], ends[1]))
        for name, at in ((inner, dart.inner), (outer, dart.outer)):
            c.meet(name, (tip,), at, "where the dart's leg ends, by trial")
        c.line(
            f"dart {number}",
            (inner, tip, outer),
            Path.through([dart.inner, dart.tip, dart.outer]),
            "straight",
        )
        inside += [inner, outer]
    inside.append(ends[1])
    for number, path in enumerate(stretches, start=1):
        pair = (inside[2 * number - 2], inside[2 * number - 1])
        c.line(f"waist {number}", pair, path, "square to both seams, darts closed")
