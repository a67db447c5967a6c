"""One pattern piece drawn on a canvas: cut and sew line, notches, grain, marks, and its label."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import partial

import numpy as np
import shapely
from shapely.geometry import LineString, Polygon

from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Finish, Mark, MarkKind, Piece
from outputs.canvas.canvas import Align, Canvas, Polyline, Recording, Role, circle, line, text_box
from outputs.canvas.free_space import Room
from outputs.canvas.lettering import TextBlock
from outputs.packing.layout import Layout, StandingPiece
from outputs.print.piece_outlines import notch_lines, outlines
from outputs.print.piece_text import compact_label, full_label, number_label, short_label

CLEARANCE = 2.5
"""Least distance of lettering from any line, mm."""
ARROW = 6.0
"""Length of an arrow head, mm."""
DRILL_ARM = 4.0
"""Half the size of the cross at a point to mark, mm."""
ON_GRAIN = 0.3
"""A mark this near the grain line is not drawn over it, mm: two dashed lines in one would read as solid."""
CAPTIONS = (3.4, 2.8, 2.2)
"""Sizes of the words along a line that are tried, mm."""
SCALES = (1.0, 0.85, 0.7, 0.6, 0.5)
"""Sizes of the label that are tried, the largest first; the last sets 2 mm, the least that reads well."""
LABEL_WIDTHS = (110.0, 85.0, 60.0, 200.0, 150.0)
"""Widths of the label that are tried at full size, mm."""
COMPACT_WIDTHS = (110.0, 150.0, 180.0, 240.0)
"""The same of its few long lines on a narrow piece."""


def draw_layout(
    canvas: Canvas, layout: Layout, pattern: Pattern, *, joins: shapely.Geometry | None = None
) -> list[str]:
    """Draw all pieces in their places and return those whose label did not fit, with what it lacks.

    Labels keep off `joins` (the lines on the area along which sheets meet) where there is room elsewhere.
    """
    return [said for placed in layout.pieces for said in draw_piece(canvas, placed, pattern, joins=joins)]


def draw_piece(
    canvas: Canvas, placed: StandingPiece, pattern: Pattern, *, joins: shapely.Geometry | None = None
) -> list[str]:
    """Draw one piece with its label; return its name and what is missing if it had to be cut down."""
    drawing = Recording(canvas)
    piece = placed.piece
    for outline, role in outlines(piece, placed.line):
        drawing.stroke(outline, role)
    for edge in piece.edges:
        for notch in notch_lines(placed.line, edge):
            drawing.stroke(notch, Role.NOTCH)
    _draw_grain(drawing, piece)
    for mark in piece.marks:
        _draw_mark(drawing, mark, piece.grain)

    room = Room(piece.polygon, clearance=CLEARANCE)
    room.take(drawing.ink())
    rooms = [room]
    if any(edge.turn_up for edge in piece.edges):
        # Its folds lie below the hem line, outside what is sewn.
        below = Room(shapely.difference(placed.line.polygon, piece.polygon), clearance=CLEARANCE)
        below.take(drawing.ink())
        rooms.append(below)
    first, again = _captions(piece)
    lacks = [f"“{name}”" for name in _write_captions(drawing, piece, first, rooms, joins)]
    named = len(drawing.texts)
    label = _write_label(drawing, placed, pattern, room, joins)
    if written := [text.box for text in drawing.texts[named:]]:
        room.take(shapely.union_all(written))
    _write_captions(drawing, piece, again, rooms, joins)
    drawing.play(canvas)
    if label is None and not lacks:
        return []
    return [f"{piece.name}{label or ''}" + (f" ({', '.join(lacks)})" if lacks else "")]


def _draw_grain(canvas: Canvas, piece: Piece) -> None:
    canvas.stroke(piece.grain, Role.GRAIN)
    ends = (
        (piece.grain.end, piece.grain.direction(piece.grain.length)),
        (piece.grain.start, -piece.grain.direction(0)),
    )
    for tip, way in ends:
        barbs = [tip + way.turned(turn) * -ARROW for turn in (0.4, -0.4)]
        canvas.stroke(line(barbs[0], tip, barbs[1]), Role.ARROW)


def _draw_mark(canvas: Canvas, mark: Mark, grain: Path) -> None:
    if mark.kind is MarkKind.DRILL:
        draw_drill(canvas, mark.path.start)
        return
    whole = LineString(mark.path.flatten())
    beside_grain = whole.difference(LineString(grain.flatten()).buffer(ON_GRAIN))
    if beside_grain.length > whole.length - 10 * ON_GRAIN:  # at most crossed by the grain line
        canvas.stroke(mark.path, Role.MARK)
        return
    for part in shapely.get_parts(beside_grain):
        canvas.stroke(Polyline(np.asarray(part.coords)), Role.MARK)


def draw_drill(canvas: Canvas, at: Point) -> None:
    """Draw a ring with a cross, the middle of which is the point to mark."""
    for arm in (Vector(DRILL_ARM, 0), Vector(0, DRILL_ARM)):
        canvas.stroke(line(at + -arm, at + arm), Role.DRILL)
    canvas.stroke(circle(at, DRILL_ARM / 2), Role.DRILL)


def _captions(piece: Piece) -> tuple[list[tuple[str, Path]], list[tuple[str, Path]]]:
    """Return what is named beside which line, and the names that come again: they may go without."""
    named = [("grain", piece.grain)]
    named += [("place on the fold", edge.path) for edge in piece.edges if edge.finish is Finish.FOLD]
    named += [(mark.name, mark.path) for mark in piece.marks]
    words = [name for name, _ in named]
    first = [caption for place, caption in enumerate(named) if caption[0] not in words[:place]]
    return first, [caption for caption in named if caption not in first]


def _write_captions(
    drawing: Recording,
    piece: Piece,
    named: Iterable[tuple[str, Path]],
    rooms: Sequence[Room],
    joins: shapely.Geometry | None,
) -> list[str]:
    """Write the names beside their lines, off joins if possible; return the marks that found no room."""
    marked = {mark.name for mark in piece.marks}
    drills = {mark.path for mark in piece.marks if mark.kind is MarkKind.DRILL}
    unnamed = []
    for name, path in named:
        words = name.replace("_", " ")
        for size in CAPTIONS:
            width = drawing.text_width(words, size)
            places = list(_around(path.start, width, size) if path in drills else _beside(path, size))
            places.sort(key=partial(_lies_across, joins, width, size))
            if any(_write_at(drawing, room, words, width, size, places) for room in rooms):
                break
        else:
            unnamed += [name] if name in marked else []
    return unnamed


def _write_at(
    drawing: Recording,
    room: Room,
    words: str,
    width: float,
    size: float,
    places: Iterable[tuple[Point, float]],
) -> bool:
    """Write the words at the first place that is free and return whether there was one."""
    for at, angle in places:
        box = _centred((at, angle), width, size)
        if room.holds(box):
            drawing.text(words, at, size, angle=angle, align=Align.CENTRE)
            room.take(box)
            return True
    return False


def _centred(place: tuple[Point, float], width: float, size: float) -> Polygon:
    at, angle = place
    return text_box(at, width, size, angle=angle, align=Align.CENTRE)


def _lies_across(
    joins: shapely.Geometry | None, width: float, size: float, place: tuple[Point, float]
) -> bool:
    return joins is not None and bool(shapely.intersects(joins, _centred(place, width, size)))


def _beside(path: Path, size: float) -> Iterator[tuple[Point, float]]:
    """Yield places for words along a path, the middle of their baseline and the angle in degrees."""
    for share in (0.3, 0.7, 0.5, 0.15, 0.85):
        at, way = path.point(path.length * share), path.direction(path.length * share)
        if way.x < -0.01 or (abs(way.x) <= 0.01 and way.y < 0):
            way = -way  # words read from the left or from below
        angle = float(np.degrees(Vector(1, 0).angle_to(way)))
        gap = CLEARANCE + 0.2
        yield at + way.left * (gap + 0.24 * size), angle
        yield at + way.left * -(gap + 0.78 * size), angle


def _around(at: Point, width: float, size: float) -> Iterator[tuple[Point, float]]:
    """Yield places for words below, above and beside the sign of a point."""
    off = DRILL_ARM + CLEARANCE
    yield at + Vector(0, -off - size), 0.0
    yield at + Vector(0, off + 0.3 * size), 0.0
    yield at + Vector(off + width / 2 + 0.3, -0.3 * size), 0.0
    yield at + Vector(-off - width / 2 - 0.3, -0.3 * size), 0.0
    yield at + Vector(off + 0.8 * size, 0), 90.0
    yield at + Vector(-off - 0.3 * size, 0), 90.0


def _write_label(
    drawing: Recording, placed: StandingPiece, pattern: Pattern, room: Room, joins: shapely.Geometry | None
) -> str | None:
    """Write the label and return None, or "" if it is cut down and what to write where there is none."""
    number, piece = placed.number, placed.piece
    left, bottom, right, top = piece.polygon.bounds
    wish = Point((left + right) / 2, bottom + 0.62 * (top - bottom))

    def whole(scale: float) -> list[TextBlock]:
        return [
            full_label(drawing, number, piece, pattern, width=w * scale, scale=scale) for w in LABEL_WIDTHS
        ]

    def compact(scale: float) -> list[TextBlock]:
        return [
            compact_label(drawing, number, piece, pattern, width=w * scale, scale=scale)
            for w in COMPACT_WIDTHS
        ]

    def cut_down(scale: float) -> list[TextBlock]:
        return [short_label(drawing, number, piece, width=w * scale, scale=scale) for w in LABEL_WIDTHS]

    if joins is not None:
        off_joins = room.within(piece.polygon)
        off_joins.take(shapely.intersection(joins, piece.polygon.envelope))
        if _place_first(drawing, (whole(s) for s in SCALES[:-1]), off_joins, wish):
            return None
    if _place_first(drawing, (label(s) for label in (whole, compact) for s in SCALES), room, wish):
        return None
    if _place_first(drawing, (cut_down(s) for s in SCALES), room, wish):
        return ""
    if _place_first(drawing, ([number_label(drawing, number, scale=s)] for s in SCALES), room, wish):
        return f", number {number} alone"
    return f", write number {number} on it"


def _place_first(drawing: Recording, sizes: Iterable[list[TextBlock]], room: Room, wish: Point) -> bool:
    """Write the first block that finds room and return whether one did.

    Each size is given as blocks of different widths; an upright one is preferred to one that reads upwards.
    """
    for blocks in sizes:
        for turned in (False, True):
            for block in blocks:
                size = (block.height, block.width) if turned else (block.width, block.height)
                corner = room.corner_for(*size, wish=wish)
                if corner:
                    block.draw(drawing, corner, quarter_turn=turned)
                    return True
    return False
