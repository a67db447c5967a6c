"""What a tile's sheet carries besides the drawing: joins and crosses, check bars, and where it belongs."""

from __future__ import annotations

from dataclasses import dataclass

import shapely
from shapely.affinity import translate
from shapely.geometry import box

from drafting.geometry.points import Point
from outputs.canvas.canvas import Canvas, Role, line
from outputs.canvas.free_space import Room
from outputs.canvas.lettering import Line, TextBlock, shortened
from outputs.sheets.tiling import CROSS_ARM, OVER, UNDER, SheetSide, Tile, TileFormat, Tiling

SMALL = 2.6
"""Type size in the strips, mm."""
TICK = 1.4
"""Half the length of the ticks at a bar's ends, mm."""
DOT = 0.2
"""How far inside the border without ink the drawing ends, mm: round ends reach further, and readers show
whole dots at an edge, of 0.17 mm on a printer of 150 dots to the inch."""
INSET = 2.0
"""Distance from the border without ink to the middle of a bar, mm."""

CUT_OFF = "cut off here ✂"
NAME_FITS = ((3.0, 9.0, 1.0), (3.0, 3.0, 1.0), (2.0, 2.0, 0.75), (1.2, 1.2, 0.6))
"""Distances of the tile's name from any line and from other words in mm, and its size, in the order they are
tried: close by a piece's label it would be read as part of it."""


@dataclass(frozen=True)
class SheetWords:
    """What is said about the whole on every sheet."""

    title: str
    sheets: int


def draw_tile_sheet(
    canvas: Canvas, tiling: Tiling, tile: Tile, words: SheetWords, *, sheet: int, ink: shapely.Geometry
) -> None:
    """Draw everything but the pattern on one tile's sheet, in sheet coordinates.

    Args:
        canvas: The sheet.
        tiling: All the sheets.
        tile: Which one.
        words: Title and number of sheets.
        sheet: The number of this sheet in the file.
        ink: The pattern as drawn on the area, lines and boxes of words; the tile's name keeps off it.
    """
    form = tiling.format
    _draw_joins(canvas, tiling, tile)
    _draw_bars(canvas, form)
    _write_strips(canvas, tiling, tile, words, sheet)
    _write_name(canvas, tiling, tile, ink)


def shift(tiling: Tiling, tile: Tile) -> Point:
    """Return where the area's origin lies on the tile's sheet."""
    left, bottom, _, _ = tiling.window(tile)
    return Point(tiling.format.left - left, tiling.format.bottom - bottom)


def clip(form: TileFormat) -> dict[str, float]:
    """Return the sides of the part of a sheet in which the drawing shows."""
    return {
        "left": form.left - UNDER,
        "bottom": form.bottom - UNDER,
        "right": form.right + OVER - DOT,
        "top": form.top + OVER - DOT,
    }


def _draw_joins(canvas: Canvas, tiling: Tiling, tile: Tile) -> None:
    """Draw a dotted line on every side that is joined, with crosses at its ends and its middle."""
    form = tiling.format
    way = shift(tiling, tile) - Point(0, 0)
    sides = clip(form)
    crosses: set[Point] = set()
    for side in SheetSide:
        ends = tiling.join(tile, side)
        if ends is None:
            continue
        start, end = (place + way for place in ends)
        if side in (SheetSide.LEFT, SheetSide.RIGHT):
            canvas.stroke(line((start.x, sides["bottom"]), (start.x, sides["top"])), Role.JOIN)
        else:
            canvas.stroke(line((sides["left"], start.y), (sides["right"], start.y)), Role.JOIN)
        crosses |= {start, start.towards(end, 0.5), end}
    for x, y in sorted(crosses, key=tuple):
        left, right = max(x - CROSS_ARM, sides["left"]), min(x + CROSS_ARM, sides["right"])
        bottom, top = max(y - CROSS_ARM, sides["bottom"]), min(y + CROSS_ARM, sides["top"])
        canvas.stroke(line((left, y), (right, y)), Role.CROSS)
        canvas.stroke(line((x, bottom), (x, top)), Role.CROSS)


def draw_bar(canvas: Canvas, start: Point, length: float, *, upright: bool, tick: float = TICK) -> None:
    """Draw a bar of exactly `length` mm between the middles of its two hairline ticks."""
    along, across = ((0.0, 1.0), (1.0, 0.0)) if upright else ((1.0, 0.0), (0.0, 1.0))
    ends = [(start.x + along[0] * s, start.y + along[1] * s) for s in (0.0, length)]
    canvas.stroke(line(*ends), Role.RULER)
    for x, y in ends:
        dx, dy = across[0] * tick, across[1] * tick
        canvas.stroke(line((x - dx, y - dy), (x + dx, y + dy)), Role.RULER)


def _draw_bars(canvas: Canvas, form: TileFormat) -> None:
    edge = form.paper.margin + INSET
    draw_bar(canvas, Point(form.left, edge), form.check, upright=False)
    draw_bar(canvas, Point(edge, form.bottom), form.check, upright=True)


def _write_strips(canvas: Canvas, tiling: Tiling, tile: Tile, words: SheetWords, sheet: int) -> None:
    form = tiling.format
    foot = form.paper.margin + INSET - 0.35 * SMALL
    start = form.left + form.check + 3
    end = form.right - 1.5 - canvas.text_width(CUT_OFF, SMALL)
    place = f"{form.check:g} mm    {tile.name}    sheet {sheet} of {words.sheets}    {form.paper.name}    "
    canvas.text(place, Point(start, foot), SMALL)
    start += canvas.text_width(place, SMALL)
    canvas.text(shortened(canvas, words.title, end - start - 4, SMALL), Point(start, foot), SMALL)
    if tiling.neighbour(tile, SheetSide.RIGHT):
        canvas.text(CUT_OFF, Point(end, foot), SMALL)

    across = form.paper.margin + INSET + 0.35 * SMALL
    start = form.bottom + form.check + 3
    end = form.top - 1.5 - canvas.text_width(CUT_OFF, SMALL)
    measure = f"{form.check:g} mm"
    if not form.paper.scale.is_true:
        measure += f"    {form.paper.scale.words}"
        whole = f"{measure}: there both bars measure {form.check:g} mm"
        measure = whole if canvas.text_width(whole, SMALL) <= end - start - 4 else measure
    canvas.text(shortened(canvas, measure, end - start - 4, SMALL), Point(across, start), SMALL, angle=90)
    if tiling.neighbour(tile, SheetSide.ABOVE):
        canvas.text(CUT_OFF, Point(across, end), SMALL, angle=90)


def _write_name(canvas: Canvas, tiling: Tiling, tile: Tile, ink: shapely.Geometry) -> None:
    """Write row and column into the window, off every line, where they can be read after taping."""
    form = tiling.format
    origin = shift(tiling, tile)
    here = translate(shapely.clip_by_rect(ink, *tiling.window(tile)), origin.x, origin.y)
    wish = Point(form.left + 25, form.bottom + 15)
    inside = box(form.left, form.bottom, form.right, form.top).buffer(-CROSS_ARM)
    parts = shapely.get_parts(here)
    lettering = shapely.union_all(parts[shapely.get_dimensions(parts) == 2])
    for clearance, apart, size in NAME_FITS:
        block = TextBlock.set(
            canvas, [Line(tile.name, 8.0 * size, bold=True), Line(tile.words, 3.4 * size)], form.width
        )
        room = Room(inside, clearance=clearance)
        room.take(here)
        room.take(lettering.buffer(apart - clearance))
        corner = room.corner_for(block.width, block.height, wish=wish)
        if corner:
            break
    block.draw(canvas, corner or Point(form.left + CROSS_ARM + 2, form.bottom + CROSS_ARM + 2 + block.height))
