"""The map of the sheets: which tile lies where, with the pieces drawn small."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import shapely
from shapely.geometry import LineString, Polygon, box
from shapely.geometry.base import BaseGeometry

from drafting.geometry.points import Point, Vector
from outputs.canvas.canvas import CAPITAL, Align, Canvas, Polyline, Role, circle, line
from outputs.canvas.free_space import Room
from outputs.sheets.tiling import Tile, Tiling

LEAST_CLEAR = 0.6
"""Distance of a number on the map from the lines, mm."""
THIN = 0.05
"""How far a drawn outline may stray on the map, mm."""
STEP = 0.8
"""Distance of the places tried for numbers, mm."""
RINGED, BARE = (3.6, 2.6, 2.0), (2.6, 2.0, 1.6)
"""Sizes of a piece's number that are tried, mm; a piece too small for any gets it close by or not at all."""
NEAR = 6.0
"""How far a number beside its piece reaches at most, mm; further off it would seem to be another's."""
SHEET_SIZES = (2.6, 2.0, 1.6)
"""Sizes of a sheet's number that are tried, mm."""
HEAD = 5.0
"""Width of the frame with the names of rows and columns, mm."""
HEAD_SIZE = 3.4


class SheetMap:
    """The map at its scale.

    Args:
        canvas: The sheet.
        tiling: What is mapped.
        left: Left edge in mm.
        top: Upper edge in mm.
        width: Greatest width in mm.
        height: Greatest height in mm.
    """

    def __init__(
        self, canvas: Canvas, tiling: Tiling, *, left: float, top: float, width: float, height: float
    ) -> None:
        """Choose the largest scale that fits."""
        form = tiling.format
        across, up = tiling.columns * form.width, tiling.rows * form.height
        self._canvas, self._tiling = canvas, tiling
        self._scale = min((width - HEAD) / across, (height - HEAD) / up)
        self._left, self._bottom = left + HEAD, top - HEAD - up * self._scale
        self._frame = self._small(box(0, 0, across, up))
        self._room = Room(self._frame, clearance=LEAST_CLEAR, step=STEP)

    @property
    def bottom(self) -> float:
        """Lower edge in mm."""
        return self._bottom

    def draw(self, *, first: int) -> list[int]:
        """Draw the map and return the pieces without room for their number.

        Args:
            first: The sheet number of the first tile.
        """
        drawn: list[BaseGeometry] = self._draw_grid()
        layout = self._tiling.layout
        shapes = [self._small(shape) for shape in layout.shapes]
        for shape in shapes:
            self._canvas.stroke(Polyline(np.asarray(shape.exterior.coords)[:-1], closed=True), Role.PLAN)
            drawn.append(shape.exterior)
        printed = {tile: sheet for sheet, tile in enumerate(self._tiling.tiles, start=first)}
        for place in self._tiling.places:
            if place not in printed:
                drawn += self._cross_out(place)
        self._room.take(*drawn)
        if len(printed) > 1:
            for place, sheet in printed.items():
                self._write_sheet(place, sheet)
        between = self._frame.difference(shapely.union_all(shapes))
        return [
            piece.number
            for piece, shape in zip(layout.pieces, shapes, strict=True)
            if not self._write_number(piece.number, shape, between)
        ]

    def _small(self, shape: Polygon) -> Polygon:
        """Return a shape on the area as it lies on the map, within THIN."""
        outline = np.asarray(shape.exterior.simplify(THIN / self._scale).coords)
        return Polygon(outline * self._scale + np.array([self._left, self._bottom]))

    def _window(self, tile: Tile) -> Polygon:
        return self._small(box(*self._tiling.window(tile)))

    def _draw_grid(self) -> list[BaseGeometry]:
        left, bottom, right, top = self._frame.bounds
        xs = np.linspace(left, right, self._tiling.columns + 1).tolist()
        ys = np.linspace(top, bottom, self._tiling.rows + 1).tolist()
        ruled = [line((x, bottom), (x, top)) for x in xs] + [line((left, y), (right, y)) for y in ys]
        for each in ruled:
            self._canvas.stroke(each, Role.FRAME)
        if self._tiling.columns * self._tiling.rows > 1:
            self._name_rows_and_columns(xs, ys)
        return [LineString(each.flatten()) for each in ruled]

    def _name_rows_and_columns(self, xs: list[float], ys: list[float]) -> None:
        last = str(self._tiling.columns)
        widest = self._canvas.text_width(last, HEAD_SIZE, bold=True)
        # The names of many columns would run into each other.
        size = HEAD_SIZE * min(1.0, 0.8 * (xs[1] - xs[0]) / widest)
        foot = Vector(0, -CAPITAL / 2 * size)
        left, top = xs[0], ys[0]
        for column in range(self._tiling.columns):
            at = Point((xs[column] + xs[column + 1]) / 2, top + HEAD / 2) + foot
            self._canvas.text(str(column + 1), at, size, bold=True, align=Align.CENTRE)
        for row in range(self._tiling.rows):
            at = Point(left - HEAD / 2, (ys[row] + ys[row + 1]) / 2) + foot
            self._canvas.text(Tile(row, 0).row_name, at, size, bold=True, align=Align.CENTRE)

    def _write_number(self, number: int, shape: Polygon, between: BaseGeometry) -> bool:
        """Write a piece's number, ringed, into its small shape, bare where it is thin, or else beside it.

        Return whether there was room.
        """
        middle = Point(*shape.centroid.coords[0])
        for room, size, ringed in self._tries(shape, between):
            width, height = self._canvas.text_width(str(number), size, bold=True), CAPITAL * size
            if ringed:
                width = height = max(width, size) + 0.45 * size
            corner = room.corner_for(width, height, wish=middle)
            if corner:
                centre = corner + Vector(width / 2, -height / 2)
                foot = centre + Vector(0, -CAPITAL / 2 * size)
                self._canvas.text(str(number), foot, size, bold=True, align=Align.CENTRE)
                if ringed:
                    self._canvas.stroke(circle(centre, width / 2), Role.FRAME)
                self._room.take(box(corner.x, corner.y - height, corner.x + width, corner.y))
                return True
        return False

    def _tries(self, shape: Polygon, between: BaseGeometry) -> Iterator[tuple[Room, float, bool]]:
        """Yield where a piece's number may stand, in which size, and whether ringed."""
        inside = self._room.within(shape)
        yield from ((inside, size, True) for size in RINGED)
        yield from ((inside, size, False) for size in BARE)
        yield self._room.within(between & shape.buffer(NEAR)), RINGED[-1], True

    def _write_sheet(self, tile: Tile, sheet: int) -> None:
        """Write a sheet's number into its window, off all lines, near the upper left corner."""
        window = self._window(tile)
        left, _, _, top = window.bounds
        inside = self._room.within(window)
        for size in SHEET_SIZES:
            width = self._canvas.text_width(str(sheet), size)
            corner = inside.corner_for(width, size, wish=Point(left, top))
            if corner:
                self._canvas.text(str(sheet), corner + Vector(0, -0.86 * size), size)
                self._room.take(box(corner.x, corner.y - size, corner.x + width, corner.y))
                return

    def _cross_out(self, tile: Tile) -> list[BaseGeometry]:
        left, bottom, right, top = self._window(tile).bounds
        cross = line((left, bottom), (right, top)), line((left, top), (right, bottom))
        for stroke in cross:
            self._canvas.stroke(stroke, Role.JOIN)
        return [LineString(stroke.flatten()) for stroke in cross]
