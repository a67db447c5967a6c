"""Pieces packed so that they touch few sheets of paper.

Large pieces go first, each where it touches the fewest sheets that nothing lies on yet; small ones find their
place on sheets that are printed anyhow. Several orders, heights and corners to keep to are tried. Every piece
stands with its hem down, as its label reads, unless turning some by half a turn saves a sheet.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import product

import numpy as np
import numpy.typing as npt

from outputs.layout import GAP, Layout, StandingPiece
from outputs.packing import Bed, Costs, Placed, Stamp, place, stamp

CELL = 10.0
"""About the size of a cell in mm: 7 mm take twice the time and save a sheet in one pattern of four."""
MORE_ROWS = 1
"""How many rows of sheets more than the tallest piece needs are tried."""
AREA = 1.8
"""The area tried first, as a multiple of that of the pieces; it doubles until they all find a place."""
WAYS = ((1, 0), (0, 1), (1, 1))
"""What a cell to the right and a cell upwards cost: keep to the left, to the foot, to the corner."""

Touches = npt.NDArray[np.bool_]
"""Whether a sheet is touched, by where the lower left cell of a stamp lies, shape (columns, rows)."""


def packed(pieces: Sequence[StandingPiece], *, width: float, height: float, whole: bool = False) -> Layout:
    """Return the pieces on the fewest sheets found, and of these on the most compact area.

    Args:
        pieces: At least one.
        width: From one column of sheets to the next, mm.
        height: From one row of sheets to the next, mm.
        whole: Whether as few pieces as can be shall lie over a join, before the area counts.
    """
    across, up = round(width / CELL), round(height / CELL)
    cell = width / across, height / up
    blanks = [_Blank.of(stamp(piece.line.polygon, cell=cell, gap=GAP), across, up) for piece in pieces]
    widest = max(blank.upright.columns for blank in blanks)
    tallest = max(blank.upright.rows for blank in blanks)
    least, area = math.ceil(tallest / up), sum(blank.upright.area for blank in blanks) / (across * up)
    best: _Sheets | None = None
    factor = AREA
    while best is None:
        heights = range(least, least + MORE_ROWS + 1)
        for turning, rows, order, way in product((False, True), heights, _orders(blanks), WAYS):
            columns = max(math.ceil(widest / across), math.ceil(factor * area / rows))
            sheets = _Sheets(across, up, columns, rows, way, turning=turning, whole=whole)
            most = best.size[0] - (turning and not best.turning) if best else columns * rows
            if sheets.take(order, most=most):
                best = sheets if best is None else min(best, sheets, key=lambda s: s.size)
        factor *= 2
    spots = [best.placed[blank] for blank in blanks]
    return Layout.round(
        (piece.upside_down if spot.stamp.turned else piece).at(*spot.corner)
        for piece, spot in zip(pieces, spots, strict=True)
    )


@dataclass(frozen=True, eq=False)
class _Blank:
    """A stamp, upright and turned, and whether each touches a sheet by where its lower left cell lies.

    The first value of `touches` is for the stamp whose upper right cell is the sheet's lower left one.
    """

    upright: Stamp
    turned: Stamp
    touches: Mapping[Stamp, Touches]

    @staticmethod
    def of(upright: Stamp, across: int, up: int) -> _Blank:
        """Return the stamp for sheets of so many cells across and upwards."""
        turned = upright.upside_down
        return _Blank(upright, turned, {each: _touches(each, across, up) for each in (upright, turned)})


def _touches(stamp: Stamp, across: int, up: int) -> Touches:
    """Return whether a stamp touches a sheet of so many cells, by where it lies from the sheet."""
    columns, rows = stamp.cells.shape
    count = np.zeros((columns + 1, rows + 1), dtype=np.int64)
    count[1:, 1:] = stamp.cells.cumsum(0).cumsum(1)
    x, y = np.arange(1 - columns, across), np.arange(1 - rows, up)
    left, right = np.clip(-x, 0, columns), np.clip(across - x, 0, columns)
    foot, head = np.clip(-y, 0, rows), np.clip(up - y, 0, rows)
    inside = count[np.ix_(right, head)] - count[np.ix_(left, head)]
    inside += count[np.ix_(left, foot)] - count[np.ix_(right, foot)]
    touches: Touches = inside > 0
    return touches


def _orders(blanks: Sequence[_Blank]) -> Iterator[list[_Blank]]:
    """Yield what is placed first: the largest area, the largest box, the tallest; equals in given order."""
    yield sorted(blanks, key=lambda blank: -blank.upright.area)
    yield sorted(blanks, key=lambda blank: -blank.upright.cells.size)
    yield sorted(blanks, key=lambda blank: -blank.upright.rows)


class _Sheets:
    """A field of sheets, each of `across` by `up` cells, and what lies on it."""

    def __init__(
        self,
        across: int,
        up: int,
        columns: int,
        rows: int,
        way: tuple[int, int],
        *,
        turning: bool,
        whole: bool,
    ) -> None:
        """Start with nothing on the sheets; `turning` if pieces may be turned, `whole` as in `packed`."""
        self.turning, self._whole, self._parts = turning, whole, 0
        self.placed: dict[_Blank, Placed] = {}
        self._across, self._up = across, up
        self._bed = Bed(columns * across, rows * up)
        self._touched = np.zeros((columns, rows), dtype=np.bool_)
        x, y = np.ogrid[: columns * across, : rows * up]
        self._corner = (way[0] * x + way[1] * y) * (columns * across + rows * up) + x + y
        self._part = int(self._corner.max()) + 1
        self._sheet = self._part * (columns * rows + 1)

    @property
    def size(self) -> tuple[int, int, int]:
        """Number of sheets that are touched, of parts of pieces if it counts, of places in the box round."""
        columns, rows = np.nonzero(self._touched)
        return len(columns), self._parts, int((np.ptp(columns) + 1) * (np.ptp(rows) + 1))

    def take(self, blanks: Sequence[_Blank], *, most: int) -> bool:
        """Place all, and return whether they found room on `most` sheets."""
        for blank in blanks:
            stamps = (blank.upright, blank.turned) if self.turning else (blank.upright,)
            placed = place(self._bed, stamps, partial(self._cost, blank.touches))
            if placed is None:
                return False
            self.placed[blank] = placed
            touches = blank.touches[placed.stamp]
            for sheet in np.ndindex(*self._touched.shape):
                left, bottom = self._first(placed.stamp, *sheet)
                x, y = placed.column - left, placed.row - bottom
                touched = 0 <= x < touches.shape[0] and 0 <= y < touches.shape[1] and bool(touches[x, y])
                self._touched[sheet] |= touched
                self._parts += self._whole and touched
            if self._touched.sum() > most:
                return False
        return True

    def _first(self, stamp: Stamp, column: int, row: int) -> tuple[int, int]:
        """Return the place on the bed at which a stamp's `touches` of one sheet begin."""
        return column * self._across + 1 - stamp.columns, row * self._up + 1 - stamp.rows

    def _cost(self, touches: Mapping[Stamp, Touches], stamp: Stamp, shape: tuple[int, ...]) -> Costs:
        """Return what each place costs: first the sheets that nothing lay on, then the way to the corner.

        Between the two come the parts in which the piece is printed, if they count.
        """
        costs: Costs = self._corner[: shape[0], : shape[1]].astype(np.int64)
        costs += self._over(~self._touched, touches[stamp], stamp, shape) * self._sheet
        if self._whole:
            costs += self._over(np.ones_like(self._touched), touches[stamp], stamp, shape) * self._part
        return costs

    def _over(
        self, sheets: npt.NDArray[np.bool_], touches: Touches, stamp: Stamp, shape: tuple[int, ...]
    ) -> Costs:
        """Return for each place how many of the sheets are touched."""
        count = np.zeros(shape, dtype=np.int64)
        for column, row in np.argwhere(sheets).tolist():
            left, bottom = self._first(stamp, column, row)
            part = touches[
                max(0, -left) : max(0, shape[0] - left), max(0, -bottom) : max(0, shape[1] - bottom)
            ]
            x, y = max(0, left), max(0, bottom)
            count[x : x + part.shape[0], y : y + part.shape[1]] += part
        return count
