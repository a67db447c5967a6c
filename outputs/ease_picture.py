"""A picture of the ease: girth of body and pattern from waist to hem, the room between them hatched.

Read without colour: the pattern is a thick line, the body a thin one with dots, ease is hatched one way and what is
short both ways, with its amount in words. Each level stands in a table beside the drawing.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path as FilePath

from matplotlib.axes import Axes

from drafting.block import Block
from drafting.body import Origin
from drafting.ease_profile import EaseProfile, GirthPoint, Zone, ease_profiles
from drafting.fit_report import GirthLine
from drafting.paths import Path
from drafting.points import Point, Vector
from outputs.ease_words import bare, described, origin_mark, shortfall, shortfalls
from outputs.picture import DASHES, DOTS, add_frame, hatch, picture, stroke, write, write_title
from outputs.units import Unit, format_length

# Everything is laid out in inches from the lower left corner of the sheet.
_WIDTH, _HEIGHT = 10.5, 10.0
_TOP, _FOOT = 1.15, 1.75
"""Room for title and heads above, for the key and words below."""
_BETWEEN = 0.85
"""Between trunk and leg: the trunk's scale and the leg's head."""
_PAD = 0.12
"""The levels lie this far inside the zone's frame."""
_LEFT, _RIGHT = 1.55, 5.95
"""Edges of the drawing."""
_NAME, _BODY, _EASE, _PATTERN, _NOTE = 0.3, 6.8, 7.55, 8.3, 8.45
"""Columns of the table; those of numbers end here."""
_ROW = 0.29
"""Least distance of two rows."""
_TEXT, _SMALL = 8.5, 7.5
"""Points."""
_LINE_LETTERS = 132
"""Letters in a line of the words below."""
_BESIDE = 40.0
"""Room for the lines on either side of the largest and smallest girth, mm."""

_TICKS = {Unit.MM: 100.0, Unit.CM: 100.0, Unit.INCH: 4 * 25.4}
_SHADE = 0.45
_EASE_HATCH, _SHORT_HATCH = "////", "xxxxxx"


@dataclass(frozen=True)
class _Chart:
    """One zone in its place: inches from girth and height in mm.

    Attributes:
        profile: What is drawn.
        foot: Where the zone's lowest height lies, inches.
        up: Inches for a millimetre of height.
        across: Inches for a millimetre of girth.
        start: Girth at the left edge, mm.
    """

    profile: EaseProfile
    foot: float
    up: float
    across: float
    start: float

    @property
    def low(self) -> float:
        """The lowest height, mm."""
        return _span(self.profile)[0]

    @property
    def head(self) -> float:
        """Where its greatest height lies, inches."""
        return self.foot + (_span(self.profile)[1] - self.low) * self.up

    def y(self, height: float) -> float:
        """Return the place of a height."""
        return self.foot + (height - self.low) * self.up

    def at(self, point: GirthPoint) -> Point:
        """Return the place of a girth at its height."""
        return Point(_LEFT + (point.girth - self.start) * self.across, self.y(point.height))


def draw_ease_picture(block: Block, target: FilePath, *, wearer: str, unit: Unit) -> None:
    """Write the ease as a PNG of 1575 by 1500 pixels; the same block gives the same bytes.

    Args:
        block: The block.
        target: The file.
        wearer: Whose it is, as typed.
        unit: What every length is written in.
    """
    profiles = ease_profiles(block)
    with picture(target, width=_WIDTH, height=_HEIGHT, description=described(profiles, unit)) as figure:
        axes = add_frame(figure, x=(0, _WIDTH), y=(0, _HEIGHT))
        over = Point(_WIDTH / 2, _HEIGHT - 0.35)
        write_title(axes, wearer, "ease from waist to hem", over, room=_WIDTH - 1)
        trunk, leg = _charts(profiles)
        tighter = ", the tighter" if len(block.halves) > 1 else ""
        for chart, name in ((trunk, "trunk, whole girth"), (leg, f"one leg{tighter}, girth")):
            _draw_frame(axes, chart, name, unit)
            _draw_ease(axes, chart)
            _draw_lines(axes, chart)
            _draw_rows(axes, chart, unit)
            _draw_shortfalls(axes, chart, unit)
        _draw_key(axes, profiles)
        _write_words(axes, profiles, unit)


def _span(profile: EaseProfile) -> tuple[float, float]:
    """Return the lowest and the greatest height that is drawn, mm."""
    heights = [point.height for point in (*profile.pattern, *profile.body)]
    return min(heights), max(heights)


def _girths(profile: EaseProfile) -> tuple[float, float]:
    """Return the smallest and the largest girth that is drawn, mm."""
    girths = [point.girth for point in (*profile.pattern, *profile.body)]
    for line in profile.levels:
        if line.body is not None:
            girths += [line.body - line.spread, line.body + line.spread, line.body + line.least_ease]
    return min(girths), max(girths)


def _charts(profiles: tuple[EaseProfile, EaseProfile]) -> tuple[_Chart, _Chart]:
    """Return trunk and leg, one above the other, heights and girths to one scale each."""
    spans = [high - low for low, high in map(_span, profiles)]
    up = (_HEIGHT - _TOP - _FOOT - _BETWEEN - 4 * _PAD) / sum(spans)
    widths = [high - low + 2 * _BESIDE for low, high in map(_girths, profiles)]
    across = (_RIGHT - _LEFT) / max(widths)
    feet = (_HEIGHT - _TOP - _PAD - spans[0] * up, _FOOT + _PAD)
    trunk, leg = (
        # in the middle of its frame
        _Chart(profile, foot, up, across, sum(_girths(profile)) / 2 - max(widths) / 2)
        for profile, foot in zip(profiles, feet, strict=True)
    )
    return trunk, leg


def _line(*points: Point) -> Path:
    return Path.through(points)


def _draw_frame(axes: Axes, chart: _Chart, name: str, unit: Unit) -> None:
    """Draw the frame of a zone with the scale of its girths below and the heads of its table above."""
    top, bottom = chart.head + _PAD, chart.foot - _PAD
    corners = [Point(_LEFT, bottom), Point(_RIGHT, bottom), Point(_RIGHT, top), Point(_LEFT, top)]
    stroke(axes, _line(*corners, corners[0]), width=0.6)
    tick = _TICKS[unit]
    number = int(chart.start // tick) + 1
    while (place := chart.at(GirthPoint(chart.low, number * tick))).x <= _RIGHT:
        stroke(axes, _line(Point(place.x, bottom), Point(place.x, bottom - 0.06)), width=0.6)
        write(axes, Point(place.x, bottom - 0.16), f"{number * tick / unit.mm:.0f}", size=_SMALL)
        number += 1
    head = top + 0.15
    write(axes, Point((_LEFT + _RIGHT) / 2, head), f"{name} in {unit.value}", size=_TEXT, bold=True)
    write(axes, Point(_NAME, head), "level", size=_TEXT, across="left")
    for x, word in ((_BODY, "body"), (_EASE, "ease"), (_PATTERN, "pattern")):
        write(axes, Point(x, head), word, size=_TEXT, across="right")
    write(axes, Point(_NOTE, head), "the body's girth is", size=_TEXT, across="left")


def _draw_ease(axes: Axes, chart: _Chart) -> None:
    """Hatch the room between body and pattern, and both ways where the body needs more than there is."""
    profile, heights = chart.profile, chart.profile.shared_heights()
    sides = [
        [GirthPoint(y, girth) for y, girth in zip(heights, girths, strict=True)]
        for girths in (profile.pattern_at(heights), profile.body_at(heights))
    ]
    for (low, low_body), (high, high_body) in pairwise(zip(*sides, strict=True)):
        short = low_body.girth + high_body.girth > low.girth + high.girth
        outline = [chart.at(point) for point in (low, high, high_body, low_body)]
        if short:
            hatch(axes, outline, _SHORT_HATCH)
        else:
            hatch(axes, outline, _EASE_HATCH, grey=_SHADE)


def _draw_lines(axes: Axes, chart: _Chart) -> None:
    """Draw the pattern thick, the body thin, dashed where one of its ends is only estimated."""
    profile = chart.profile
    estimated = {
        profile.body_point(line) for line in profile.levels if line.origin is Origin.ESTIMATED
    }
    for below, above in pairwise(profile.body):
        guessed = not estimated.isdisjoint((below, above))
        style = (0, (4, 3)) if guessed else "solid"
        stroke(axes, _line(chart.at(below), chart.at(above)), width=0.9, style=style)
    stroke(axes, _line(*map(chart.at, profile.pattern)), width=2.4)


def _rows(chart: _Chart) -> Iterator[tuple[GirthLine, float]]:
    """Yield each level with the place of its row in the table, apart enough to read."""
    places = [chart.y(line.height) for line in chart.profile.levels]
    for index in range(1, len(places)):
        places[index] = min(places[index], places[index - 1] - _ROW)
    # Back up from the foot where that pushed rows below it.
    floor = chart.foot - _PAD / 2
    for index in reversed(range(len(places))):
        places[index] = max(places[index], floor)
        floor = places[index] + _ROW
    yield from zip(chart.profile.levels, places, strict=True)


def _draw_rows(axes: Axes, chart: _Chart, unit: Unit) -> None:
    """Draw each level's line and marks, and write its row."""
    for line, row in _rows(chart):
        place, pattern = chart.y(line.height), chart.at(GirthPoint(line.height, line.pattern))
        for edge, end in ((_LEFT, _LEFT - 0.12), (_RIGHT, _RIGHT + 0.12)):
            stroke(axes, _line(Point(edge, place), Point(end, row)), width=0.4)
        stroke(axes, _line(Point(_LEFT, place), Point(_RIGHT, place)), width=0.5, style=DOTS)
        if (known := chart.profile.body_point(line)) is not None:
            _draw_body_mark(axes, chart, line, known, pattern)
        write(axes, Point(_NAME, row + 0.06), line.level, size=_TEXT, across="left")
        high = f"{format_length(line.height, unit)} high"
        write(axes, Point(_NAME, row - 0.07), high, size=_SMALL - 1, across="left")
        for x, amount in ((_BODY, line.body), (_EASE, line.ease), (_PATTERN, line.pattern)):
            write(axes, Point(x, row), bare(amount, unit), size=_TEXT, across="right")
        short = shortfall(line)
        words = origin_mark(line, unit)
        write(axes, Point(_NOTE, row + (0.06 if short else 0)), words, size=_TEXT, across="left")
        if short:
            said = f"SHORT {format_length(short, unit)}"
            write(axes, Point(_NOTE, row - 0.08), said, size=_TEXT, across="left", bold=True)


def _draw_body_mark(axes: Axes, chart: _Chart, line: GirthLine, known: GirthPoint, pattern: Point) -> None:
    """Mark the body's girth: a dot, a ring with its spread where it is estimated; the heel a lozenge."""
    at = chart.at(known)
    stroke(axes, _line(at, pattern), width=0.7)
    if line.spread:
        ends = [at + Vector(sign * line.spread * chart.across, 0) for sign in (-1, 1)]
        bars = [(end + Vector(0, -0.05), end + Vector(0, 0.05)) for end in ends]
        for a, b in ((ends[0], ends[1]), *bars):
            stroke(axes, _line(a, b), width=1.2)
    _draw_dot(axes, at, line)


def _draw_dot(axes: Axes, at: Point, line: GirthLine) -> None:
    shape = "D" if line.level == "hem" else "o"
    filled = "white" if line.origin is Origin.ESTIMATED else "black"
    axes.plot([at.x], [at.y], shape, markersize=5, markerfacecolor=filled, markeredgecolor="black", zorder=3)
