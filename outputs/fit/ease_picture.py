"""A picture of the ease: girth of body and pattern, trunk above leg, each level in a table beside."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from typing import BinaryIO

from matplotlib.axes import Axes

from drafting.base.units import Unit, format_length
from drafting.block.block import Block
from drafting.body.body import Origin
from drafting.geometry.points import Point, Vector
from drafting.report.ease_profile import EaseProfile, ease_profiles
from drafting.report.fit import GirthLine
from outputs.canvas.picture import add_frame, hatch, lines, picture, write, write_title
from outputs.fit.ease_chart import (
    EASE,
    GUESSED,
    SHADE,
    SHORT,
    TEXT,
    THICK,
    THIN,
    EaseChart,
    draw_body_mark,
    draw_bracket,
    girth_range,
    span,
)
from outputs.fit.fit_words import bare, described, level_name, origin_mark, said_shortfalls, shortfall
from outputs.words.print_report import PrintReport

# Everything is laid out in inches from the lower left corner of the sheet.
_WIDTH, _HEIGHT = 10.5, 10.0
_TOP, _FOOT = 1.05, 2.1
"""Room for title and heads above, for scale, key and words below."""
_BETWEEN = 0.8
"""Between trunk and leg: the trunk's scale and the leg's heads."""
_PAD = 0.15
"""The levels lie this far inside the frame."""
_LEFT, _RIGHT = 1.5, 5.95
"""Edges of the drawing."""
_NAME, _BODY, _EASE, _PATTERN, _ORIGIN = 0.3, 6.75, 7.45, 8.2, 8.45
"""Columns of the table; those of numbers end here."""
_ROW = 0.3
"""Least distance of two rows."""
_SMALL = 7.0
"""Points."""
_LINE = 150
"""Letters in a line of the words below."""
_BESIDE = 40.0
"""Room beside the smallest and the largest girth, mm."""
_TICKS = {Unit.MM: 100.0, Unit.CM: 100.0, Unit.INCH: 4 * 25.4}
"""Between the marks of the scale of girths, mm."""
_KEY = ((0.3, 2.9, 6.4), (1.35, 1.08, 0.81))
"""Columns and rows of the key."""
_WORDS = 0.5


def write_ease_picture(block: Block, target: BinaryIO, *, wearer: str, unit: Unit) -> PrintReport:
    """Write the ease as a PNG of 1575 by 1500 pixels; the same block gives the same bytes.

    Args:
        block: The block.
        target: Open binary file.
        wearer: Whose it is, as typed.
        unit: What every length is written in.
    """
    profiles = ease_profiles(block)
    with picture(target, width=_WIDTH, height=_HEIGHT, description=described(profiles, unit)) as figure:
        axes = add_frame(figure, x=(0, _WIDTH), y=(0, _HEIGHT))
        over = Point(_WIDTH / 2, _HEIGHT - 0.35)
        write_title(axes, wearer, "ease from waist to hem", over, room=_WIDTH - 1)
        tighter = " (the tighter)" if len(block.halves) > 1 else ""
        names = "Trunk: whole girth", f"Leg: girth of one leg{tighter}"
        for chart, name in zip(_charts(profiles), names, strict=True):
            _draw_frame(axes, chart, name, unit)
            chart.draw(axes, unit)
            _draw_table(axes, chart, unit)
        _draw_key(axes)
        _write_words(axes, profiles, unit)
    return PrintReport()


def _charts(profiles: tuple[EaseProfile, EaseProfile]) -> tuple[EaseChart, EaseChart]:
    """Return trunk and leg, one above the other, heights to one scale and girths to one."""
    spans = [high - low for low, high in map(span, profiles)]
    up = (_HEIGHT - _TOP - _FOOT - _BETWEEN - 4 * _PAD) / sum(spans)
    width = max(high - low for low, high in map(girth_range, profiles)) + 2 * _BESIDE
    across = (_RIGHT - _LEFT) / width
    feet = (_HEIGHT - _TOP - _PAD - spans[0] * up, _FOOT + _PAD)
    trunk, leg = (
        EaseChart(profile, _LEFT, _RIGHT, foot, up, across, sum(girth_range(profile)) / 2 - width / 2)
        for profile, foot in zip(profiles, feet, strict=True)
    )
    return trunk, leg


def _draw_frame(axes: Axes, chart: EaseChart, name: str, unit: Unit) -> None:
    """Draw the frame of a zone, the scale of its girths below and the heads of its table above."""
    top, bottom = chart.head + _PAD, chart.foot - _PAD
    corners = [Point(_LEFT, bottom), Point(_RIGHT, bottom), Point(_RIGHT, top), Point(_LEFT, top)]
    lines(axes, *corners, corners[0], width=0.6)
    tick = _TICKS[unit]
    number = int(chart.start // tick) + 1
    while (x := chart.x(number * tick)) <= _RIGHT:
        lines(axes, Point(x, bottom), Point(x, bottom - 0.06), width=0.6)
        write(axes, Point(x, bottom - 0.16), f"{number * tick / unit.mm:.0f}", size=_SMALL)
        number += 1
    head = top + 0.15
    write(axes, Point((_LEFT + _RIGHT) / 2, head), f"{name}, {unit.value}", size=TEXT, bold=True)
    write(axes, Point(_NAME, head), "level", size=TEXT, across="left")
    for x, word in ((_BODY, "body"), (_EASE, "ease"), (_PATTERN, "pattern")):
        write(axes, Point(x, head), word, size=TEXT, across="right")
    write(axes, Point(_ORIGIN, head), "the body’s girth is", size=TEXT, across="left")


def _rows(chart: EaseChart) -> Iterator[tuple[GirthLine, float]]:
    """Yield each level with the place of its row in the table, apart enough to read."""
    places = [chart.y(line.height) for line in chart.profile.levels]
    for index in range(1, len(places)):
        places[index] = min(places[index], places[index - 1] - _ROW)
    # Back up from the foot where that pushed rows below it.
    floor = chart.foot
    for index in reversed(range(len(places))):
        places[index] = max(places[index], floor)
        floor = places[index] + _ROW
    yield from zip(chart.profile.levels, places, strict=True)


def _draw_table(axes: Axes, chart: EaseChart, unit: Unit) -> None:
    for line, row in _rows(chart):
        place = chart.y(line.height)
        for edge, out in ((_LEFT, -0.12), (_RIGHT, 0.12)):
            lines(axes, Point(edge, place), Point(edge + out, row), width=0.4)
        write(axes, Point(_NAME, row + 0.06), level_name(line), size=TEXT, across="left")
        high = f"{format_length(line.height, unit)} high"
        write(axes, Point(_NAME, row - 0.08), high, size=_SMALL, across="left")
        for x, amount in ((_BODY, line.body), (_EASE, line.ease), (_PATTERN, line.pattern)):
            write(axes, Point(x, row), bare(amount, unit), size=TEXT, across="right")
        origin = "not known" if line.origin is None else origin_mark(line.origin, line.spread, unit)
        short = shortfall(line)
        write(axes, Point(_ORIGIN, row + (0.07 if short else 0)), origin, size=TEXT, across="left")
        if short:
            said = f"SHORT {format_length(short, unit)}"
            write(axes, Point(_ORIGIN, row - 0.08), said, size=TEXT, across="left", bold=True)


def _draw_key(axes: Axes) -> None:
    """Explain lines, marks and hatching."""
    columns, rows = _KEY
    width, half = Vector(0.45, 0), Vector(0, 0.07)

    def sample(column: int, row: int, words: str) -> tuple[Point, Point]:
        """Write what a sample means and return the ends of the place for it."""
        left = Point(columns[column], rows[row])
        write(axes, left + width + Vector(0.1, 0), words, size=TEXT, across="left")
        return left, left + width

    lines(axes, *sample(0, 0, "finished pattern"), width=THICK)
    kinds = ((1, EASE, SHADE, "ease"), (2, SHORT, 0.0, "body larger than pattern"))
    for row, hatching, shade, words in kinds:
        left, right = sample(0, row, words)
        hatch(axes, [left + -half, right + -half, right + half, left + half], hatching, grey=shade)
    for row, origin, spread, words in (
        (0, Origin.MEASURED, 0.0, "body, measured or worked out"),
        (1, Origin.ESTIMATED, 0.15, "body, estimated ± one standard deviation"),
    ):
        left, right = sample(1, row, words)
        style: object = GUESSED if origin is Origin.ESTIMATED else "solid"
        lines(axes, left, right, width=THIN, style=style)
        draw_body_mark(axes, left.towards(right, 0.5), origin, spread, heel=False)
    left, right = sample(1, 2, "heel, which the hem must pass")
    draw_body_mark(axes, left.towards(right, 0.5), Origin.MEASURED, 0.0, heel=True)
    draw_bracket(axes, *sample(2, 0, "missing at this level, with the ease wanted there"))


def _write_words(axes: Axes, profiles: tuple[EaseProfile, EaseProfile], unit: Unit) -> None:
    """Write what is short, and how to read the drawing."""
    reading = (
        "Trunk and leg are drawn to one scale of girth, which does not begin at nothing. Between the levels "
        "that are known the body is drawn straight."
    )
    shorts = textwrap.wrap(said_shortfalls(profiles, unit), _LINE)
    for index, words in enumerate([*shorts, *textwrap.wrap(reading, _LINE)]):
        at = Point(_NAME, _WORDS - 0.15 * index)
        write(axes, at, words, size=TEXT - 0.5, across="left", bold=index < len(shorts))
