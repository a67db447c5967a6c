"""One zone of the picture of the ease: pattern and body as lines, the room between them hatched.

Read without colour: the pattern is a thick line, the body a thin one with dots, ease is hatched one way and
what is short both ways, bracketed with its amount in words. Places are in inches on the sheet.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby, pairwise

from matplotlib.axes import Axes

from drafting.base.units import Unit, format_length
from drafting.body.body import Origin
from drafting.geometry.points import Point, Vector
from drafting.report.ease_profile import EaseProfile, GirthPoint
from drafting.report.fit import GirthLine
from drafting.report.levels import GirthLevel
from outputs.canvas.picture import DOTS, hatch, lines, spot, write
from outputs.fit.fit_words import shortfall, unnamed_spots

TEXT = 8.5
"""Points."""
THICK, THIN = 2.4, 0.9
GUESSED = (0, (4, 3))
"""How the body is drawn where it is estimated."""
EASE, SHORT = "////", "xxxxx"
SHADE = 0.45
"""Of the hatching of the ease: lighter than the lines."""
_LABEL, _CLEAR = 1.05, 0.12
"""Width of a label, and its distance from what it names, inches."""


def span(profile: EaseProfile) -> tuple[float, float]:
    """Return the lowest and the greatest height that is drawn, mm."""
    heights = [point.height for point in (*profile.pattern, *profile.body)]
    return min(heights), max(heights)


def girth_range(profile: EaseProfile) -> tuple[float, float]:
    """Return the smallest and the largest girth that is drawn, mm."""
    girths = [point.girth for point in (*profile.pattern, *profile.body)]
    for line in profile.levels:
        if line.body is not None:
            girths += [line.body - line.spread, line.body + line.spread, line.body + line.least_ease]
    return min(girths), max(girths)


@dataclass(frozen=True)
class EaseChart:
    """A zone in its place.

    Attributes:
        profile: What is drawn.
        left: Left edge, inches, where the girth is `start`.
        right: Right edge.
        foot: Where the lowest height lies, inches.
        up: Inches for a millimetre of height.
        across: Inches for a millimetre of girth.
        start: In mm.
    """

    profile: EaseProfile
    left: float
    right: float
    foot: float
    up: float
    across: float
    start: float

    @property
    def head(self) -> float:
        """Where the greatest height lies, inches."""
        return self.y(span(self.profile)[1])

    def y(self, height: float) -> float:
        """Return the place of a height."""
        return self.foot + (height - span(self.profile)[0]) * self.up

    def x(self, girth: float) -> float:
        """Return the place of a girth."""
        return self.left + (girth - self.start) * self.across

    def at(self, point: GirthPoint) -> Point:
        """Return the place of a girth at its height."""
        return Point(self.x(point.girth), self.y(point.height))

    def draw(self, axes: Axes, unit: Unit) -> None:
        """Draw ease, levels, body and pattern, and last what is short."""
        self._hatch_ease(axes)
        for line in self.profile.levels:
            y = self.y(line.height)
            lines(axes, Point(self.left, y), Point(self.right, y), width=0.5, style=DOTS)
        self._draw_body(axes)
        lines(axes, *map(self.at, self.profile.pattern), width=THICK)
        for line in self.profile.levels:
            self._mark_body(axes, line)
        self._bracket_shortfalls(axes, unit)

    def _hatch_ease(self, axes: Axes) -> None:
        pairs = self.profile.side_by_side()
        room = [pattern.girth - body.girth for pattern, body in pairs]
        above = [point for point in self.profile.body if pairs and point.height > pairs[-1][1].height]
        tight = [here + next_up < 0 for here, next_up in pairwise(room)]
        for is_short, strips in groupby(range(len(tight)), tight.__getitem__):
            first, *rest = strips
            end = (rest[-1] if rest else first) + 2
            beyond = above if end == len(pairs) else []
            pattern, body = zip(*pairs[first:end], strict=True)
            kind, shade = (SHORT, 0.0) if is_short else (EASE, SHADE)
            hatch(axes, [self.at(p) for p in (*pattern, *reversed([*body, *beyond]))], kind, grey=shade)

    def _draw_body(self, axes: Axes) -> None:
        profile = self.profile
        estimated = {profile.body_point(line) for line in profile.levels if line.origin is Origin.ESTIMATED}
        for below, above in pairwise(profile.body):
            style: object = "solid" if estimated.isdisjoint((below, above)) else GUESSED
            lines(axes, self.at(below), self.at(above), width=THIN, style=style)

    def _mark_body(self, axes: Axes, line: GirthLine) -> None:
        """Mark the body's girth, joined to the pattern's by a thin line."""
        known = self.profile.body_point(line)
        if known is None:
            return
        lines(axes, self.at(known), self.at(GirthPoint(line.height, line.pattern)), width=0.7)
        draw_body_mark(
            axes, self.at(known), line.origin, line.spread * self.across, heel=line.level is GirthLevel.HEM
        )

    def _bracket_shortfalls(self, axes: Axes, unit: Unit) -> None:
        missing = [
            (GirthPoint(line.height, line.pattern), short)
            for line in self.profile.levels
            if (short := shortfall(line))
        ]
        missing += [(tight.at, tight.by) for tight in unnamed_spots(self.profile)]
        for point, short in missing:
            start = self.at(point)
            end = Point(self.x(point.girth + short), start.y)
            draw_bracket(axes, start, end)
            right = end.x + _LABEL < self.right
            label = end + Vector(_CLEAR, 0) if right else start + Vector(-_CLEAR, -0.14)
            words = f"short {format_length(short, unit)}"
            write(axes, label, words, size=TEXT, across="left" if right else "right", box=True, bold=True)


def draw_body_mark(axes: Axes, at: Point, origin: Origin | None, spread: float, *, heel: bool) -> None:
    """Draw a dot for a girth of the body, a ring between ticks `spread` inches apart from it for an estimate.

    The heel, which passes the hem and does not stay in it, is a lozenge.
    """
    if spread:
        ends = at + Vector(-spread, 0), at + Vector(spread, 0)
        draw_bracket(axes, *ends, width=1.2, half=0.05)
    spot(axes, at, "D" if heel else "o", filled=origin is not Origin.ESTIMATED)


def draw_bracket(axes: Axes, start: Point, end: Point, *, width: float = 1.6, half: float = 0.07) -> None:
    """Draw a level line between two ticks."""
    lines(axes, start, end, width=width)
    for place in (start, end):
        lines(axes, place + Vector(0, -half), place + Vector(0, half), width=width)
