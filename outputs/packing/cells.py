"""Outlines packed on an area of small cells, each where it costs least and never over another.

An outline, half the gap round it included, takes every cell that it touches. So two outlines whose cells
differ lie a whole gap apart, and a place is free when no cell is taken twice. Nothing is turned but by half
a turn, which leaves the grain upright.

The cells of an area are the bits of one whole number, column after column from the foot up. Shifting it asks
about all places at once.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry import Polygon

Cells = npt.NDArray[np.bool_]
"""One value a cell, shape (columns, rows), the first at the lower left."""
Costs = npt.NDArray[np.int64]
"""What each place for the lower left cell of a stamp costs, shape (columns, rows)."""

NO_PLACE = int(np.iinfo(np.int64).max)
"""What a place costs that may not be taken."""
SLACK = 1e-6
"""A box that is this much too long in mm, by rounding alone, still fits its whole number of cells."""


@dataclass(frozen=True)
class _Run:
    """Cells one above the other: their column, the lowest row, and how many."""

    column: int
    row: int
    length: int


@dataclass(frozen=True, eq=False)
class Stamp:
    """The cells that an outline takes.

    Attributes:
        cells: The smallest box of whole cells, True where one is taken.
        cell: Width and height of a cell in mm.
        margins: From the left and lower side of the cells to the outline, and from it to the right and upper
            side, mm.
        turned: Whether the outline is turned by half a turn.
    """

    cells: Cells
    cell: tuple[float, float]
    margins: tuple[float, float, float, float]
    turned: bool = False

    @property
    def columns(self) -> int:
        """Width in cells."""
        return len(self.cells)

    @property
    def rows(self) -> int:
        """Height in cells."""
        return len(self.cells[0])

    @cached_property
    def area(self) -> int:
        """Number of cells taken."""
        return sum(run.length for run in self.runs)

    @property
    def upside_down(self) -> Stamp:
        """The same, turned by half a turn."""
        left, bottom, right, top = self.margins
        return Stamp(self.cells[::-1, ::-1], self.cell, (right, top, left, bottom), not self.turned)

    @cached_property
    def runs(self) -> tuple[_Run, ...]:
        """The cells in upright runs."""
        step = np.diff(self.cells.astype(np.int8), axis=1, prepend=0, append=0)
        starts, ends = np.argwhere(step == 1), np.argwhere(step == -1)
        return tuple(
            _Run(column, row, end - row)
            for (column, row), end in zip(starts.tolist(), ends[:, 1].tolist(), strict=True)
        )


def reach(gap: float) -> float:
    """Return how far the cells of a stamp reach round its outline, mm: half the gap, and a hair.

    Round corners are drawn with 16 sides; so far out that even their middles keep the gap.
    """
    return gap / 2 / math.cos(math.pi / 16)


def stamp(outline: Polygon, *, cell: tuple[float, float], gap: float, flush: bool = False) -> Stamp:
    """Return the cells that an outline takes with half the gap round it.

    Args:
        outline: In mm, anywhere.
        cell: Width and height of a cell in mm.
        gap: In mm.
        flush: Whether the left side of the outline lies on the left side of the cells, without a gap.
    """
    grown = outline.buffer(reach(gap), quad_segs=4)
    left, bottom, right, top = grown.bounds
    if flush:
        left = outline.bounds[0]
    columns = math.ceil((right - left - SLACK) / cell[0])
    rows = math.ceil((top - bottom - SLACK) / cell[1])
    if not flush:
        left = (left + right - columns * cell[0]) / 2
    bottom = (bottom + top - rows * cell[1]) / 2
    shapely.prepare(grown)
    x, y = np.meshgrid(left + np.arange(columns) * cell[0], bottom + np.arange(rows) * cell[1], indexing="ij")
    cells = shapely.intersects(grown, shapely.box(x, y, x + cell[0], y + cell[1]))
    low_x, low_y, high_x, high_y = outline.bounds
    beyond = left + columns * cell[0] - high_x, bottom + rows * cell[1] - high_y
    return Stamp(cells, cell, (low_x - left, low_y - bottom, *beyond))


@dataclass(frozen=True, eq=False)
class Placed:
    """A stamp in its place: the column and row of its lower left cell."""

    stamp: Stamp
    column: int
    row: int

    @property
    def corner(self) -> tuple[float, float]:
        """Lower left corner of the outline's box in mm."""
        (across, up), (left, bottom, _, _) = self.stamp.cell, self.stamp.margins
        return self.column * across + left, self.row * up + bottom

    @property
    def top(self) -> int:
        """The first row above it."""
        return self.row + self.stamp.rows


class Bed:
    """An area of cells that is being filled.

    Args:
        columns: Number of cells across.
        rows: Number of cells upwards.
    """

    def __init__(self, columns: int, rows: int) -> None:
        """Start empty."""
        self.columns, self.rows = columns, rows
        self._taken = 0
        self._above: list[int] = []

    def free(self, stamp: Stamp) -> Cells:
        """Return at which places the stamp's lower left cell may lie; of no size where it is too large."""
        columns, rows = self.columns - stamp.columns + 1, self.rows - stamp.rows + 1
        if columns < 1 or rows < 1:
            return np.zeros((0, 0), dtype=np.bool_)
        hits = 0
        for run in stamp.runs:
            hits |= self._taken_above(run.length) >> (run.column * self.rows + run.row)
        size = columns * self.rows
        every = (hits & ((1 << size) - 1)).to_bytes(-(-size // 8), "little")
        bits = np.unpackbits(np.frombuffer(every, dtype=np.uint8), count=size, bitorder="little")
        free: Cells = bits.reshape(columns, self.rows)[:, :rows] == 0
        return free

    def put(self, placed: Placed) -> None:
        """Take the cells of a stamp."""
        for run in placed.stamp.runs:
            first = (placed.column + run.column) * self.rows + placed.row + run.row
            self._taken |= ((1 << run.length) - 1) << first
        self._above = []

    def _taken_above(self, length: int) -> int:
        """Return for every cell whether it or one of the `length` - 1 above it is taken.

        A run that is cut off at the head of a column goes on at the foot of the next; nobody asks for those.
        """
        if not self._above:
            self._above = [self._taken]
        half = length.bit_length() - 1
        while len(self._above) <= half:
            last = self._above[-1]
            self._above.append(last | last >> (1 << len(self._above) - 1))
        return self._above[half] | self._above[half] >> (length - (1 << half))


Cost = Callable[[Stamp, tuple[int, ...]], Costs]
"""Returns what each place, in an array of the shape given, costs a stamp; the least of all is taken."""


def place(bed: Bed, stamps: Iterable[Stamp], cost: Cost) -> Placed | None:
    """Put one of the stamps on the bed, where it costs least; None when there is no room for any.

    Args:
        bed: It takes the cells.
        stamps: To choose from; the first of equals is taken.
        cost: What places cost.
    """
    best: tuple[int, Placed] | None = None
    for each in stamps:
        free = bed.free(each)
        if not free.size:
            continue
        costs = np.where(free, cost(each, free.shape), NO_PLACE)
        first = int(costs.argmin())
        least = int(costs.flat[first])
        if least < NO_PLACE and (best is None or least < best[0]):
            best = least, Placed(each, *divmod(first, free.shape[1]))
    if best is None:
        return None
    bed.put(best[1])
    return best[1]
