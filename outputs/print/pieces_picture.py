"""The pieces of one pattern as a picture, numbered and listed, for a screen or a portfolio."""

from __future__ import annotations

from collections.abc import Sequence
from typing import BinaryIO

import numpy as np
from shapely import union_all
from shapely.geometry import Polygon, box

from drafting.geometry.points import Point, Vector
from drafting.pieces.pattern import Pattern
from outputs.canvas.canvas import CAPITAL, Align, Canvas, Polyline, Recording, Role, line, text_box
from outputs.canvas.free_space import Room
from outputs.canvas.layers import LAYERS, Layer
from outputs.canvas.lettering import Line, TextBlock
from outputs.canvas.picture_canvas import write_picture
from outputs.canvas.typeface import Typeface
from outputs.packing.layout import Layout
from outputs.print.piece_drawing import draw_layout
from outputs.print.piece_text import sheet_title, some_pieces, title
from outputs.print.single_page import drawn_side_by_side
from outputs.words.print_report import PrintReport

WIDTH, BORDER, COLUMNS = 320.0, 8.0, 3
"""Of the sheet and its border, mm at 150 pixels an inch, and the columns of the list."""
HEAD, SIZE, NUMBERS, CLEAR = 5.0, 3.0, (6.0, 4.5, 3.4, 2.6), 0.6
"""Sizes of the heading, of the list and of the numbers on the pieces, and round these, mm."""
STEP = 1.0
"""Between the places tried for a number, mm."""
BAR = 100.0
"""The bar that shows how large the pieces are, mm of the pattern."""


def write_pieces_picture(pattern: Pattern, target: BinaryIO) -> PrintReport:
    """Write a PNG of the pieces to be printed with a list of them below; what is seen is told inside it.

    Args:
        pattern: At least one piece.
        target: Open binary file; the same pattern gives the same bytes.
    """
    typeface = Typeface()
    layout = drawn_side_by_side(pattern, typeface).layout
    scale = (WIDTH - 2 * BORDER) / layout.width
    names = _names(typeface, pattern)
    foot = 2 * BORDER + max(block.height for block in names)
    heading = TextBlock.set(
        typeface, [Line(_heading(pattern), HEAD, bold=True)], WIDTH - 3 * BORDER - BAR * scale
    )
    top = foot + layout.height * scale + BORDER
    height = top + heading.height + BORDER

    page = Recording(typeface)
    _draw_pieces(page, pattern, layout, scale, Point(BORDER, foot))
    heading.draw(page, Point(BORDER, height - BORDER))
    _draw_bar(page, scale, Point(WIDTH - BORDER, top + SIZE / 2))
    for column, block in enumerate(names):
        block.draw(page, Point(BORDER + column * (WIDTH - BORDER) / COLUMNS, foot - BORDER))
    write_picture(page, target, typeface, width=WIDTH, height=height, description=_in_words(pattern))
    return PrintReport(1, (), tuple(typeface.warnings()))


def _draw_pieces(page: Canvas, pattern: Pattern, layout: Layout, scale: float, corner: Point) -> None:
    """Draw the lines of all pieces smaller, `corner` below them on the left, and number each."""
    place = np.array(tuple(corner))
    drawing, small = Recording(page), Recording(page)
    draw_layout(drawing, layout, pattern)
    for stroke in drawing.strokes:
        if LAYERS[stroke.role] is not Layer.WORDS and stroke.role is not Role.DRILL:
            small.stroke(Polyline(stroke.outline.flatten() * scale + place), stroke.role)
    shapes = [Polygon(np.asarray(shape.exterior.coords) * scale + place) for shape in layout.shapes]
    around = Room(
        box(corner.x, corner.y, WIDTH - BORDER, corner.y + layout.height * scale), clearance=CLEAR, step=STEP
    )
    ink = small.ink()
    around.take(union_all([ink, *shapes]))
    for placed, shape in zip(layout.pieces, shapes, strict=True):
        inside, whole = (Room(shape, clearance=CLEAR, step=STEP) for _ in range(2))
        inside.take(ink)
        # Off its lines if it can be, then beside it; a narrow piece among others bears it on its lines.
        tries = [(inside, size) for size in NUMBERS] + [(around, NUMBERS[-1]), (whole, NUMBERS[-1])]
        _write_number(small, str(placed.number), tries, Point(*shape.centroid.coords[0]))
    small.play(page)


def _write_number(page: Canvas, number: str, tries: Sequence[tuple[Room, float]], wish: Point) -> None:
    for room, size in tries:
        width = page.text_width(number, size, bold=True)
        corner = room.corner_for(width, CAPITAL * size, wish=wish)
        if corner:
            foot = corner + Vector(0, -CAPITAL * size)
            page.text(number, foot, size, bold=True)
            room.take(text_box(foot, width, size, angle=0, align=Align.LEFT))
            return


def _draw_bar(page: Canvas, scale: float, end: Point) -> None:
    """Draw the bar that ends at a point, its length above it."""
    start = end + Vector(-BAR * scale, 0)
    page.stroke(line(start, end), Role.CUT)
    for tip in (start, end):
        page.stroke(line(tip + Vector(0, -1), tip + Vector(0, 1)), Role.CUT)
    above = Point((start.x + end.x) / 2, end.y + SIZE / 2)
    page.text(f"{BAR / 10:.0f} cm", above, SIZE, align=Align.CENTRE)


def _names(typeface: Typeface, pattern: Pattern) -> list[TextBlock]:
    """Return the list of the pieces in columns."""
    room = (WIDTH - BORDER) / COLUMNS - BORDER
    lines = [Line(f"{title(number, piece)}: {piece.cut_text}", SIZE) for number, piece in pattern.numbered]
    each = -(-len(lines) // COLUMNS)
    return [TextBlock.set(typeface, lines[n : n + each], room) for n in range(0, len(lines), each)]


def _heading(pattern: Pattern) -> str:
    return ", ".join(filter(None, (sheet_title(pattern), some_pieces(pattern), "a picture, not to cut from")))


def _in_words(pattern: Pattern) -> str:
    names = "; ".join(title(number, piece) for number, piece in pattern.numbered)
    return (
        f"{_heading(pattern)}. The pieces side by side, each seen from the right side of the cloth: {names}."
    )
