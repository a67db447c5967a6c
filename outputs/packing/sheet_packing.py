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
from numpy.lib.stride_tricks import sliding_window_view

from outputs.packing.cells import Bed, Costs, Placed, Stamp, place, stamp
from outputs.packing.layout import GAP, Layout, StandingPiece

CELL = 10.0
"""About the size of a cell in mm: 7 mm take twice the time and save a sheet in one pattern of four."""
MORE_ROWS = 1
"""How many rows of sheets more than the tallest piece needs are tried."""
AREA = 1.8
"""The area tried first, as a multiple of that of the pieces; it doubles until they all find a place."""
WAYS = ((1, 0), (0, 1))
"""What a cell to the right and a cell upwards cost: keep to the left, to the foot. Keeping to the corner
saved nothing more on 24 patterns."""

Touches = npt.NDArray[np.bool_]
"""Whether a stamp touches the sheet so far to the right of the one in which its lower left cell lies, and so
far above it, by that cell's place on its sheet: shape (sheets to the right, sheets above, columns, rows)."""


def packed(pieces: Sequence[StandingPiece], *, width: float, height: float, whole: bool = False) -> Layout:
    """Return the pieces on the fewest sheets found, and of these on the most compact area.

    Args:
        pieces: At least one.
        width: From one column of sheets to the next, mm.
        height: From one row of sheets to the next, mm.
        whole: Whether as few pieces as can be shall lie over a join, before the area counts.
    """
    factor = AREA
    while (layout := _packed(pieces, width, height, whole, factor)) is None:
        factor *= 2
    return layout


def packed_on_fewer(
    pieces: Sequence[StandingPiece], than: int, *, width: float, height: float, whole: bool = False
) -> Layout | None:
    """Return the same, or nothing where no way is found on fewer sheets `than` so many."""
    return _packed(pieces, width, height, whole, AREA, most=than - 1)


def _packed(
    pieces: Sequence[StandingPiece],
    width: float,
    height: float,
    whole: bool,
    factor: float,
    most: int | None = None,
) -> Layout | None:
    """Try all ways on an area `factor` times that of the pieces, and on `most` sheets."""
    across, up = round(width / CELL), round(height / CELL)
    cell = width / across, height / up
    blanks = [_Blank.of(stamp(piece.line.polygon, cell=cell, gap=GAP), across, up) for piece in pieces]
    widest = max(blank.upright.columns for blank in blanks)
    least = math.ceil(max(blank.upright.rows for blank in blanks) / up)
    area = factor * sum(blank.upright.area for blank in blanks) / (across * up)
    best: _Sheets | None = None
    heights = range(least, least + MORE_ROWS + 1)
    for turning, rows, order, way in product((False, True), heights, _orders(blanks), WAYS):
        columns = max(math.ceil(widest / across), math.ceil(area / rows))
        sheets = _Sheets(across, up, columns, rows, way, turning=turning, whole=whole)
        within = columns * rows if most is None else most
        if best:
            within = best.size[0] - (turning and not best.turning)
        if sheets.take(order, most=within):
            best = sheets if best is None else min(best, sheets, key=lambda s: s.size)
    if best is None:
        return None
    spots = [best.placed[blank] for blank in blanks]
    return Layout.round(
        (piece.upside_down if spot.stamp.turned else piece).at(*spot.corner)
        for piece, spot in zip(pieces, spots, strict=True)
    )


@dataclass(frozen=True, eq=False)
class _Blank:
    """A stamp, upright and turned, and what sheets each touches."""

    upright: Stamp
    turned: Stamp
    touches: Mapping[Stamp, Touches]

    @staticmethod
    def of(upright: Stamp, across: int, up: int) -> _Blank:
        """Return the stamp for sheets of so many cells across and upwards."""
        turned = upright.upside_down
        return _Blank(upright, turned, {each: _touches(each, across, up) for each in (upright, turned)})


def _touches(stamp: Stamp, across: int, up: int) -> Touches:
    """Return which sheets of so many cells a stamp touches, by where on a sheet its lower left cell lies."""
    columns, rows = stamp.cells.shape
    count = np.zeros((columns + 1, rows + 1), dtype=np.int64)
    count[1:, 1:] = stamp.cells.cumsum(0).cumsum(1)
    right, above = (columns + across - 2) // across + 1, (rows + up - 2) // up + 1
    # How far the sheet begins to the right of the lower left cell, and above it.
    x = (np.arange(right)[:, None] * across - np.arange(across)).ravel()
    y = (np.arange(above)[:, None] * up - np.arange(up)).ravel()
    left, end = np.clip(x, 0, columns), np.clip(x + across, 0, columns)
    foot, head = np.clip(y, 0, rows), np.clip(y + up, 0, rows)
    inside = count[np.ix_(end, head)] - count[np.ix_(left, head)]
    inside += count[np.ix_(left, foot)] - count[np.ix_(end, foot)]
    touches: Touches = (inside > 0).reshape(right, across, above, up).transpose(0, 2, 1, 3)
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
            (column, x), (row, y) = divmod(placed.column, self._across), divmod(placed.row, self._up)
            touches = blank.touches[placed.stamp][:, :, x, y]
            self._parts += self._whole * int(touches.sum())
            # Sheets beyond the last ones are never touched.
            near = self._touched[column : column + touches.shape[0], row : row + touches.shape[1]]
            near |= touches[: near.shape[0], : near.shape[1]]
            if self._touched.sum() > most:
                return False
        return True

    def _cost(self, touches: Mapping[Stamp, Touches], stamp: Stamp, shape: tuple[int, ...]) -> Costs:
        """Return what each place costs: first the sheets that nothing lay on, then the way to the corner.

        Between the two come the parts in which the piece is printed, if they count.
        """
        costs: Costs = self._corner[: shape[0], : shape[1]].astype(np.int64)
        costs += self._over(~self._touched, touches[stamp], shape) * self._sheet
        if self._whole:
            costs += self._over(np.ones_like(self._touched), touches[stamp], shape) * self._part
        return costs

    def _over(self, sheets: npt.NDArray[np.bool_], touches: Touches, shape: tuple[int, ...]) -> Costs:
        """Return for each place how many of the sheets are touched."""
        (columns, rows), (right, above) = sheets.shape, touches.shape[:2]
        padded = np.zeros((columns + right - 1, rows + above - 1), dtype=np.float32)
        padded[:columns, :rows] = sheets
        near = sliding_window_view(padded, (right, above)).reshape(columns * rows, right * above)
        count = near @ touches.reshape(right * above, -1)
        whole = count.reshape(columns, rows, self._across, self._up).transpose(0, 2, 1, 3)
        every: Costs = whole.reshape(columns * self._across, rows * self._up).astype(np.int64)
        return every[: shape[0], : shape[1]]
