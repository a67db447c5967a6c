"""The big area split into sheets of paper, and how the sheets join.

Every sheet shows a window of the area. On a sheet, from left to right: the border without ink, a strip for
lettering, a little of the neighbour's drawing, the window, a little of the next neighbour's, the border;
the same from bottom to top. The right and top edges of a sheet are cut off along the window and laid on the
strip of the next, so two sides at most are trimmed, and lettering and bars lie where no pattern line runs.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum
from functools import cached_property

import shapely
from shapely.geometry import box

from drafting.geometry.points import Point
from drafting.pieces.pattern import Pattern
from outputs.packing.layout import Layout, standing
from outputs.packing.sheet_packing import packed, packed_on_fewer
from outputs.paper.paper import Orientation, Paper
from outputs.paper.printer_scale import BAR

STRIP = 5.0
"""Width of the lettering strip at the left and at the bottom, mm."""
UNDER = 3.0
"""How far the drawing goes on beyond the left and bottom joins, mm: the neighbour's cut edge must meet it."""
OVER = 2.0
"""How far it goes on beyond the right and top joins, mm: a cut a hair outside still shows the line."""
CHECK = 50.0
"""Length of the check bars on a sheet printed at home, mm; on a large one they are as long as BAR."""
CROSS_ARM = 3.0
"""Half the size of a cross on a join, mm."""
INK = 0.5
"""A sheet is needed when the cut line comes this close to its window, mm: the width of the printed line."""
SLACK = 1e-6
"""What rounding may take from a window that is as large as the layout, mm."""
ROW_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""No I and no O, which read as digits (as on the grid of ISO 5457 drawing sheets)."""


class SheetSide(Enum):
    """A side of a sheet, as the step (rows down, columns right) to the neighbour there."""

    LEFT = (0, -1)
    RIGHT = (0, 1)
    ABOVE = (-1, 0)
    BELOW = (1, 0)


@dataclass(frozen=True)
class Tile:
    """One sheet's place in the grid; row 0 is at the top, column 0 at the left."""

    row: int
    column: int

    @property
    def row_name(self) -> str:
        """Letters from A at the top; after Z comes AA."""
        rest, letter = divmod(self.row, len(ROW_LETTERS))
        return (ROW_LETTERS[rest - 1] if rest else "") + ROW_LETTERS[letter]

    @property
    def name(self) -> str:
        """Short name such as B3."""
        return f"{self.row_name}{self.column + 1}"

    @property
    def words(self) -> str:
        """The same in words."""
        return f"row {self.row_name}, column {self.column + 1}"


@dataclass(frozen=True)
class TileFormat:
    """Where the window lies on a sheet of paper; sheet coordinates in mm from its lower left corner."""

    paper: Paper

    @property
    def check(self) -> float:
        """Length of the check bars, mm."""
        return BAR if self.paper.is_large else CHECK

    @property
    def left(self) -> float:
        """The left join, and by symmetry of the design the bottom join: distance from the sheet's edge."""
        return self.paper.margin + STRIP + UNDER

    @property
    def right(self) -> float:
        """The right join."""
        return self.paper.width - self.paper.margin - OVER

    @property
    def bottom(self) -> float:
        """The bottom join."""
        return self.left

    @property
    def top(self) -> float:
        """The top join."""
        return self.paper.height - self.paper.margin - OVER

    @property
    def width(self) -> float:
        """Width of the window: from one column to the next."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Height of the window: from one row to the next."""
        return self.top - self.bottom


@dataclass(frozen=True, eq=False)
class Tiling:
    """The area of a layout cut into rows and columns of sheets.

    Attributes:
        layout: What lies on the area, which starts at the lower left of the last row's first window.
        format: The window on a sheet.
    """

    layout: Layout
    format: TileFormat

    @property
    def rows(self) -> int:
        """Number of rows."""
        return math.ceil(self.layout.height / self.format.height)

    @property
    def columns(self) -> int:
        """Number of columns."""
        return math.ceil(self.layout.width / self.format.width)

    def window(self, tile: Tile) -> tuple[float, float, float, float]:
        """Return left, bottom, right, top of the tile's part of the area in mm."""
        left = tile.column * self.format.width
        bottom = (self.rows - 1 - tile.row) * self.format.height
        return left, bottom, left + self.format.width, bottom + self.format.height

    @property
    def places(self) -> Iterable[Tile]:
        """All places, empty ones too, in reading order."""
        return (Tile(row, column) for row in range(self.rows) for column in range(self.columns))

    @cached_property
    def tiles(self) -> tuple[Tile, ...]:
        """The sheets that any part of a piece touches, in reading order: the order of printing and taping."""
        shapes = shapely.union_all([shape.buffer(INK) for shape in self.layout.shapes])
        shapely.prepare(shapes)
        return tuple(tile for tile in self.places if shapes.intersects(box(*self.window(tile))))

    def neighbour(self, tile: Tile, side: SheetSide) -> Tile | None:
        """Return the sheet printed on that side, None when there is none or it is empty."""
        down, right = side.value
        other = Tile(tile.row + down, tile.column + right)
        return other if other in self._printed else None

    @cached_property
    def _printed(self) -> frozenset[Tile]:
        return frozenset(self.tiles)

    def joins(self) -> shapely.Geometry:
        """Return the joins between printed sheets as lines on the area."""
        ends = (self.join(tile, side) for tile in self.tiles for side in (SheetSide.RIGHT, SheetSide.ABOVE))
        return shapely.MultiLineString([[tuple(p) for p in pair] for pair in ends if pair])

    @property
    def tears_pieces(self) -> bool:
        """Whether any piece lies over a join."""
        joins = self.joins()
        return any(shape.buffer(INK).intersects(joins) for shape in self.layout.shapes)

    def join(self, tile: Tile, side: SheetSide) -> tuple[Point, Point] | None:
        """Return both ends of the join on one side of a tile, on the area; None when nothing joins there."""
        if self.neighbour(tile, side) is None:
            return None
        left, bottom, right, top = self.window(tile)
        if side in (SheetSide.LEFT, SheetSide.RIGHT):
            x = left if side is SheetSide.LEFT else right
            return Point(x, bottom), Point(x, top)
        y = bottom if side is SheetSide.BELOW else top
        return Point(left, y), Point(right, y)


def sheet_round(layout: Layout) -> Tiling:
    """Return the layout on one sheet that holds all of it."""
    border = TileFormat(Paper("", 0, 0))
    paper = Paper("one page", layout.width - border.width + SLACK, layout.height - border.height + SLACK)
    return Tiling(layout, TileFormat(paper))


def tiled(pattern: Pattern, paper: Paper, orientation: Orientation = Orientation.FEWEST) -> Tiling:
    """Return the pattern's pieces packed on few sheets of paper, given upright."""
    pieces = standing(pattern)
    first, *others = (TileFormat(way) for way in orientation.of(paper))
    best = Tiling(packed(pieces, width=first.width, height=first.height, whole=paper.is_large), first)
    for form in others:
        layout = packed_on_fewer(
            pieces, len(best.tiles), width=form.width, height=form.height, whole=paper.is_large
        )
        best = Tiling(layout, form) if layout else best
    return best
