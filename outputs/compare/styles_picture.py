"""A picture of styles: their legs laid over each other, and beside that each front by itself."""

from __future__ import annotations

from collections.abc import Sequence
from typing import BinaryIO

from drafting.geometry.points import Point
from outputs.canvas.canvas import Align, Canvas, Recording, Role, line
from outputs.canvas.lettering import shortened
from outputs.canvas.picture_canvas import write_picture
from outputs.canvas.svg_canvas import SvgCanvas
from outputs.canvas.typeface import Typeface
from outputs.compare.leg_lines import LegLines
from outputs.compare.legs_drawing import LegsDrawing
from outputs.words.print_report import PrintReport

BORDER = 8.0
TITLE, NAME = 4.4, 2.8
"""Sizes of type, mm."""
HEAD = 10.0
"""Height of the title, mm."""
OVER_WIDTH, OVER_HEIGHT = 160.0, 190.0
"""Room for the legs over each other, mm."""
ROWS = 2
BETWEEN = 6.0
"""Between the legs that stand by themselves, mm."""


def write_styles_picture(target: BinaryIO, legs: Sequence[LegLines], *, svg: bool, title: str) -> PrintReport:
    """Write the picture as PNG or SVG; the same styles give the same bytes.

    Args:
        target: Open binary file.
        legs: Those of one body, from `outputs.compare.leg_lines`.
        svg: Whether it shall be an SVG.
        title: Written at the top.
    """
    typeface = Typeface()
    page, width, height = _draw(typeface, legs, title)
    names = ", ".join(leg.style for leg in legs)
    words = f"Back and front of {len(legs)} styles laid over each other, and each front alone: {names}."
    if svg:
        canvas = SvgCanvas(
            typeface,
            width=width,
            height=height,
            origin=Point(0, 0),
            title=title,
            description=words,
            white=True,
        )
        page.play(canvas)
        target.write(canvas.svg())
    else:
        write_picture(page, target, typeface, width=width, height=height, description=words)
    return PrintReport()


def _draw(typeface: Typeface, legs: Sequence[LegLines], title: str) -> tuple[Recording, float, float]:
    """Return the picture with its width and height in mm."""
    page = Recording(typeface)
    over = LegsDrawing.fitting(page, legs, OVER_WIDTH, OVER_HEIGHT)
    columns, row = -(-len(legs) // ROWS), over.height / ROWS
    scale = max(leg.front.top for leg in legs) / (row - 3 * NAME)
    side, fork = (max(leg.front.reach[end] for leg in legs) / scale for end in (0, 1))
    width = 2 * BORDER + over.width + columns * (BETWEEN + side + fork)
    height = 2 * BORDER + HEAD + over.height
    top = height - BORDER - HEAD
    words = shortened(page, title, width - 2 * BORDER, TITLE, bold=True)
    page.text(words, Point(BORDER, height - BORDER - TITLE), TITLE, bold=True)
    over.draw(page, Point(BORDER, top))
    for number, leg in enumerate(legs):
        down, along = divmod(number, columns)
        left = BORDER + over.width + BETWEEN + along * (BETWEEN + side + fork)
        floor = top - (down + 1) * row + 2 * NAME
        _draw_front(page, leg, Point(left + side, floor), scale, (left, left + side + fork))
    return page, width, height


def _draw_front(canvas: Canvas, leg: LegLines, foot: Point, scale: float, ends: tuple[float, float]) -> None:
    """Draw one front with its crease over `foot`, on the floor, its name below."""
    for height in (0.0, leg.levels.knee.mm, leg.levels.crotch.mm):
        y = foot.y + height / scale
        canvas.stroke(line((ends[0], y), (ends[1], y)), Role.LEVEL)
    canvas.stroke(
        leg.front.outline.moved(lambda p: Point(foot.x + p.x / scale, foot.y + p.y / scale)), leg.role
    )
    name = shortened(canvas, leg.style, ends[1] - ends[0] + BETWEEN / 2, NAME)
    canvas.text(name, Point(sum(ends) / 2, foot.y - 1.6 * NAME), NAME, align=Align.CENTRE)
