"""The strip round the top of back or front with its dart closed: a yoke, a shaped band, or both in one."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from shapely.geometry import LineString

from drafting.base.tolerance import LENGTH
from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector, meeting
from drafting.geometry.solve import secant


@dataclass(frozen=True)
class Back:
    """The back down from a level, its dart still open.

    Attributes:
        inner: The waist from the centre to the dart, or to the side where there is none.
        outer: The waist from the dart to the side; None without a dart.
        side: From the level to the hem.
        crotch: From the fork up to the level.
        sewn: What the waist must measure with the dart closed, mm; None leaves it as the closing makes it.
        least: What it must measure at least, mm.
    """

    inner: Path
    outer: Path | None
    side: Path
    crotch: Path
    sewn: float | None = None
    least: float = 0.0

    def wanted(self, closed: float) -> float | None:
        """Return what a waist must measure that closing the dart has made `closed` mm long; None as it is."""
        as_it_is = closed if self.sewn is None else self.sewn
        return self.least if as_it_is < self.least else self.sewn

    @property
    def dart(self) -> tuple[Point, Point] | None:
        """The two points that closing the dart brings together; None without a dart."""
        return (self.inner.end, self.outer.start) if self.outer else None

    @property
    def waist_middle(self) -> Point:
        """The middle between the legs of the dart, or of the waist where there is none."""
        if self.dart:
            return self.dart[0].towards(self.dart[1], 0.5)
        return self.inner.point(self.inner.length / 2)


@dataclass(frozen=True)
class Crown:
    """A strip round the top of the back or the front, the dart closed: a yoke, a shaped band, or both in one.

    Its four edges run round it counter-clockwise.

    Attributes:
        waist: Its upper edge from the centre to the side.
        side: Its side edge, downwards.
        lower: Its lower edge from the side to the centre.
        centre: Its centre edge, upwards.
    """

    waist: Path
    side: Path
    lower: Path
    centre: Path

    def cut(self, depth: float) -> tuple[Crown, Crown]:
        """Return the parts above and below a line `depth` mm down both seams and square to them.

        On a short and strongly curved crown such a line would cut through the lower edge; there it runs
        between the directions of upper and lower edge instead.
        """
        below, above = self.centre.split(self.centre.length - depth)
        upper_side, lower_side = self.side.split(depth)
        leave, arrive = above.direction(0).left, -lower_side.direction(0).left
        line = sweep(above.start, leave, lower_side.start, arrive)
        if LineString(Path((line,)).flatten()).crosses(LineString(self.lower.flatten())):
            share, upper, lower = depth / self.side.length, self.waist, self.lower.reversed()
            leave = _between(upper.direction(0), lower.direction(0), share)
            arrive = _between(upper.direction(upper.length), lower.direction(lower.length), share)
            line = sweep(above.start, leave, lower_side.start, arrive)
        edge = Path((line,))
        return Crown(self.waist, upper_side, edge.reversed(), above), Crown(
            edge, lower_side, self.lower, below
        )


@dataclass(frozen=True)
class Yoked:
    """The closed top of the back, and the seam it leaves on the back leg.

    Attributes:
        crown: The top down to the yoke seam.
        seam: The upper edge of the back leg, from the centre to the side, as long as the crown's lower edge.
    """

    crown: Crown
    seam: Path


def yoked(back: Back, *, centre_depth: float, side_depth: float) -> Yoked:
    """Return the top of a back cut off at the yoke seam, so many mm deep along centre and side.

    The dart is cut down to the yoke seam and closed about its end there; then every edge is drawn anew as one
    curve, the side moved out until the lower edge measures what the back leg's does, and the dart closed a
    little more or less until the waist measures what it must.
    """
    centre, _ = back.crotch.reversed().split(centre_depth)
    side, _ = back.side.split(side_depth)
    seam = Path.through([centre.end, side.end])
    middle, tip, angle = back.waist_middle, seam.point(seam.length / 2), 0.0
    if back.dart:
        inner, outer = back.dart
        tip = meeting(centre.end, side.end - centre.end, middle, (outer - inner).left)
        angle = (outer - tip).angle_to(inner - tip)
    first = _closed(centre, side, tip, angle)
    wanted = back.wanted(first.waist.length)
    if wanted is None:
        return Yoked(first, seam)
    aim, tried = wanted, {angle: first}

    def miss(angle: float) -> float:
        if angle not in tried:
            tried[angle] = _closed(centre, side, tip, angle)
        return tried[angle].waist.length - aim

    secant(miss, angle, (middle - tip).length, enough=LENGTH, rounds=_ROUNDS)
    return Yoked(min(tried.values(), key=lambda crown: _off(aim, crown.waist.length)), seam)


def _off(wanted: float, length: float) -> float:
    """Return how far a waist is off, mm; one too short counts double, as it does not close."""
    return max(length - wanted, 2 * (wanted - length))


def _closed(centre: Path, side: Path, tip: Point, angle: float) -> Crown:
    """Return the crown between centre and side, both given downwards, the side turned about the tip."""
    length = (side.end - centre.end).length
    side = side.moved(partial(Point.turned, about=tip, angle=angle))
    along, leave = (side.end - tip).unit, (tip - centre.end).unit
    lower = sweep(centre.end, leave, side.end, along)
    # Drawn as one curve the lower edge is a little short; the side moves out by it, and so does the waist.
    for _ in range(_ROUNDS):
        short = length - lower.length
        if abs(short) < LENGTH:
            break
        side = _shifted(side, along * short)
        lower = sweep(centre.end, leave, side.end, along)
    return Crown(Path((waist_to(centre, side),)), side, Path((lower,)).reversed(), centre.reversed())


def _shifted(path: Path, by: Vector) -> Path:
    return path.moved(lambda p: p + by)


def waist_to(centre: Path, side: Path) -> Cubic:
    """Return the upper edge, square to the centre and to the side, both given downwards."""
    return sweep(centre.start, -centre.direction(0).left, side.start, -side.direction(0).left)


_ROUNDS = 4
"""Each round leaves less than a tenth of the miss, but for a millimetre or three where a fullness changes."""

_FULLNESS = (0.5, 0.6, 2 / 3, 0.75, 0.85)
"""Handles tried for an edge of the crown, as shares of the way to its corner; 2/3 is a parabola."""


_LEAST_RADIUS = 12.5
"""No edge of the crown turns more sharply than this, mm, or its allowance would not fit (common practice)."""


def _between(first: Vector, second: Vector, share: float) -> Vector:
    return first.turned(first.angle_to(second) * share)


def sweep(start: Point, leave: Vector, end: Point, arrive: Vector) -> Cubic:
    """Return the flattest curve of one bend between two directions, so that an allowance fits outside it.

    Where the chord all but runs along one direction, the whole turn would lie at the other end: that end
    gives up squareness, a tenth of its turn at a time, until the curve is no longer pointed.
    """
    chord = end - start
    first, last = leave.angle_to(chord), chord.angle_to(arrive)
    for tenths in range(10):
        kept = 1 - tenths / 10
        curve = min(
            (
                Cubic.bent(
                    start,
                    chord.turned(-first * (kept if abs(first) > abs(last) else 1.0)),
                    end,
                    chord.turned(last * (kept if abs(last) >= abs(first) else 1.0)),
                    share,
                )
                for share in _FULLNESS
            ),
            key=Cubic.sharpest_bend,
        )
        if curve.sharpest_bend() * _LEAST_RADIUS <= 1:
            return curve
    return Cubic.line(start, end)
