"""Where the jeans end at the top: the block cut at the seam of the waistband, the back again at the yoke.

A depth is measured from the block's waist down along each seam, the same on centre lines and side seams, so
that a change of rise keeps every seam in step. A depth below zero lies above the block's waist: the seams run
on straight.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from shapely.geometry import LineString

from drafting.curves import Cubic
from drafting.paths import Path
from drafting.points import Point, Vector, meeting
from drafting.tolerance import JOIN, LENGTH
from drafting.waist_line import BlockPanel
from styles.style import Band, Style
from styles.worn_level import WIDER_ABOVE


@dataclass(frozen=True)
class Front:
    """The front down from a level.

    Attributes:
        waist: From the centre to the side.
        side: From the level to the hem.
        crotch: From the fork up to the level.
    """

    waist: Path
    side: Path
    crotch: Path


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


def front_at(panel: BlockPanel, depth: float) -> Front:
    """Return the front ending `depth` mm below the block's waist."""
    crotch, side = _ends(panel, depth)
    return Front(Path((_level(crotch, side),)), side, crotch)


def front_band(panel: BlockPanel, depth: float, height: float) -> Crown:
    """Return the strip of the front from `depth` mm below the block's waist, `height` mm high."""
    top, seam = front_at(panel, depth), front_at(panel, depth + height)
    side, centre = top.side.split(height)[0], top.crotch.split(top.crotch.length - height)[1]
    return Crown(top.waist, side, seam.waist.reversed(), centre)


def back_at(panel: BlockPanel, depth: float, least: float = 0.0) -> Back:
    """Return the back ending `depth` mm below the block's waist, its darts gathered into one.

    Gathering changes the closed waist by up to a millimetre; at the block's own waist it must measure what
    was asked for, above it what the body widens besides, and anywhere `least` mm.
    """
    crotch, side = _ends(panel, depth)
    sewn = panel.waist_length + _widened(panel, depth) if depth <= JOIN else None
    whole = Path((_level(crotch, side),))
    middle = whole.length / 2
    open_width = sum(dart.opening(whole.point(middle).y) for dart in panel.darts)
    if open_width < _LEAST_DART:
        return Back(whole, None, side, crotch, sewn, least)
    inner, _ = whole.split(middle - open_width / 2)
    _, outer = whole.split(middle + open_width / 2)
    return Back(inner, outer, side, crotch, sewn, least)


_WIDENS = {"front": 0.3, "back": 0.7}
"""Shares of front and back in what a half of the body widens above the waist; the back has the seat line's
lean to make good already, and takes more in its stride (common practice, no source)."""

_INTO_LEAN = 8.0
"""The side seam turns into its lean above the waist over so many mm, or its allowance would not fit; longer,
and the band would be short of the body there (common practice, no source)."""

_LEAST_DART = 1.0
"""A dart that is open by less than this, mm, is left to the seams (common practice)."""


def _ends(panel: BlockPanel, depth: float) -> tuple[Path, Path]:
    """Return crotch seam and side seam cut `depth` mm below the block's waist, or run on above it.

    Above the waist the centre line goes on straight and the side seam leans outwards: by what the centre line
    leans in, and by this seam's share of what the body widens.
    """
    centre, side = panel.panel.crotch.reversed(), panel.side
    if abs(depth) <= JOIN:
        return centre.reversed(), side
    if depth > 0:
        return centre.split(depth)[1].reversed(), side.split(depth)[1]
    down = centre.direction(0)
    out = Vector(-(abs(down.x / down.y) + _widened(panel, -1.0)), 1).unit
    raised = Path((Cubic.line(centre.start + down * depth, centre.start),)) + centre
    return raised.reversed(), _leaning(side.start, -side.direction(0), out, -depth).reversed() + side


def _widened(panel: BlockPanel, depth: float) -> float:
    """Return by how much this panel's half of the body is wider than its waist at a depth above it, mm."""
    return WIDER_ABOVE / 2 * _WIDENS[panel.name] * max(-depth, 0.0)


def _leaning(start: Point, along: Vector, out: Vector, length: float) -> Path:
    """Return a line of that length that leaves along one direction and turns into another without a kink."""
    end = start + (along + out).unit * _INTO_LEAN
    arc = Cubic.bent(start, along, end, out, 2 / 3)
    return Path((arc, Cubic.line(end, end + out * length))).split(length)[0]


def _level(crotch: Path, side: Path) -> Cubic:
    """Return the line from the centre to the side, square to both."""
    centre = crotch.direction(crotch.length)
    return _sweep(crotch.end, centre.left, side.start, -side.direction(0).left)


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
        line = _sweep(above.start, leave, lower_side.start, arrive)
        if LineString(Path((line,)).flatten()).crosses(LineString(self.lower.flatten())):
            share, upper, lower = depth / self.side.length, self.waist, self.lower.reversed()
            leave = _between(upper.direction(0), lower.direction(0), share)
            arrive = _between(upper.direction(upper.length), lower.direction(lower.length), share)
            line = _sweep(above.start, leave, lower_side.start, arrive)
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
    tried = [_closed(centre, side, tip, angle)]
    wanted = back.wanted(tried[0].waist.length)
    if wanted is None:
        return Yoked(tried[0], seam)
    for _ in range(_ROUNDS):
        short = wanted - tried[-1].waist.length
        if abs(short) < LENGTH:
            break
        angle += short / (middle - tip).length
        tried.append(_closed(centre, side, tip, angle))
    return Yoked(min(tried, key=lambda crown: _off(wanted, crown.waist.length)), seam)


def _off(wanted: float, length: float) -> float:
    """Return how far a waist is off, mm; one too short counts double, as it does not close."""
    return max(length - wanted, 2 * (wanted - length))


def _closed(centre: Path, side: Path, tip: Point, angle: float) -> Crown:
    """Return the crown between centre and side, both given downwards, the side turned about the tip."""
    length = (side.end - centre.end).length
    side = side.moved(partial(Point.turned, about=tip, angle=angle))
    along, leave = (side.end - tip).unit, (tip - centre.end).unit
    lower = _sweep(centre.end, leave, side.end, along)
    # Drawn as one curve the lower edge is a little short; the side moves out by it, and so does the waist.
    for _ in range(_ROUNDS):
        short = length - lower.length
        if abs(short) < LENGTH:
            break
        side = _shifted(side, along * short)
        lower = _sweep(centre.end, leave, side.end, along)
    return Crown(Path((waist_to(centre, side),)), side, Path((lower,)).reversed(), centre.reversed())


def _shifted(path: Path, by: Vector) -> Path:
    return path.moved(lambda p: p + by)


def waist_to(centre: Path, side: Path) -> Cubic:
    """Return the upper edge, square to the centre and to the side, both given downwards."""
    return _sweep(centre.start, -centre.direction(0).left, side.start, -side.direction(0).left)


_ROUNDS = 4
"""Each round leaves less than a tenth of the miss, but for a millimetre or three where a fullness changes."""

_FULLNESS = (0.5, 0.6, 2 / 3, 0.75, 0.85)
"""Handles tried for an edge of the crown, as shares of the way to its corner; 2/3 is a parabola."""


_LEAST_RADIUS = 12.5
"""No edge of the crown turns more sharply than this, mm, or its allowance would not fit (common practice)."""


def _between(first: Vector, second: Vector, share: float) -> Vector:
    return first.turned(first.angle_to(second) * share)


def _sweep(start: Point, leave: Vector, end: Point, arrive: Vector) -> Cubic:
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


def seam_depth(style: Style) -> float:
    """Return how far below the block's waist the waistband is sewn on, mm.

    A shaped band lies below the worn level, a straight one stands above it.
    """
    return style.below_waist + (style.band_height if style.band is Band.SHAPED else 0.0)


@dataclass(frozen=True)
class BackTop:
    """The back from the worn level to the yoke seam.

    Attributes:
        band: The back of a shaped band; None for a straight one.
        yoke: The yoke.
        seam: The upper edge of the back leg, from the centre to the side.
        side: The side seam of the back leg, from the yoke seam to the hem.
        crotch: The crotch seam of the back leg, from the fork to the yoke seam.
    """

    band: Crown | None
    yoke: Crown
    seam: Path
    side: Path
    crotch: Path


_LEAST_YOKE = 20.0
"""A yoke is at least this deep along either seam, mm (common practice, no source)."""

_ABOVE_HIP = 0.85
"""On a short trunk the yoke reaches down its side by no more than this share of the way to hip level (common
practice, no source)."""

_OF_CURVE = 0.3
"""Along the centre back it reaches over no more than this share of the crotch curve (common practice)."""

_MOST_BENT, _DEEPER = 0.8, 5.0
"""How much longer band and yoke are below than above, as a share of their depth: where it would be more, the
yoke is made deeper, step by step, by so many mm, as nobody can sew a rainbow (own judgement)."""


def back_top(panel: BlockPanel, style: Style) -> BackTop:
    """Return the back's band, yoke and yoke seam, drawn in one so that each edge is shared."""
    band = seam_depth(style) - style.below_waist
    back = back_at(panel, style.below_waist, style.back_waist_least)
    at_centre, at_side = _depths(panel, style, back)
    top = yoked(back, centre_depth=at_centre, side_depth=at_side)
    above, yoke = top.crown.cut(band) if band else (None, top.crown)
    crotch = back.crotch.reversed().split(at_centre)[1].reversed()
    return BackTop(above, yoke, top.seam, back.side.split(at_side)[1], crotch)


def _depths(panel: BlockPanel, style: Style, back: Back) -> tuple[float, float]:
    """Return how deep band and yoke together reach along centre and side, mm, as trunk and waist ask."""
    band = seam_depth(style) - style.below_waist
    curve, line = (part.length for part in panel.panel.crotch.curves)
    upright = line + _OF_CURVE * curve - style.below_waist
    way = panel.panel.levels.waist.mm - panel.panel.levels.hip.mm - style.below_waist
    most = max(upright, band + _LEAST_YOKE), max(_ABOVE_HIP * way, band + _LEAST_YOKE)
    wanted = band + style.yoke_centre, band + style.yoke_side
    while True:
        depths = min(wanted[0], most[0]), min(wanted[1], most[1])
        if depths == most or _bent(back, *depths) <= _MOST_BENT:
            return depths
        wanted = wanted[0] + _DEEPER, wanted[1] + _DEEPER


def _bent(back: Back, at_centre: float, at_side: float) -> float:
    """Return how much longer a crown is below than above, as a share of its depth."""
    chord = back.side.point(at_side) - back.crotch.point(back.crotch.length - at_centre)
    waist = back.inner.length + (back.outer.length if back.outer else 0.0)
    return 2 * (chord.length - waist) / (at_centre + at_side)
