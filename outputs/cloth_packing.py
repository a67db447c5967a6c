"""Cut pieces packed on a length of cloth, as short as a fixed number of trials finds.

Each trial lays the pieces in an order of its own, each where its lower end lies lowest. What came out best is
changed a little for the next: the place of a piece in the order, or the end that its hem points to. At last
every piece slides down the few millimetres that the cells kept from it.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import shapely

from outputs.cut_pieces import CutPiece, Lie
from outputs.laid_cloth import END, GAP, ClothOnTable, Laid, rounded
from outputs.packing import NO_PLACE, Bed, Costs, Placed, Stamp, place, stamp

CELL = 8.0
"""About the size of a cell in mm: finer ones cost time that more trials use better."""
TRIALS = 120
"""How many changes are tried: half a second to two, by the number of pieces."""
SEED = 1
"""Changes are drawn by chance, the same each time."""
STARTS = 60
"""How many of them change any number of pieces of the first order; the others go on from the best."""
FEW = 3
"""How many pieces they change at most."""
HEAVIER = (0.6, 1.6)
"""By how much a piece's weight in the order may change."""
EMPTY = 1.3
"""Length of the bed as a multiple of what the cells need, besides twice the longest piece."""
SLIDES = (4.0, 2.0, 1.0, 0.5, 0.2)
"""Steps in which a piece slides down, mm: none so wide that it could jump over another piece."""


def lay(pieces: Sequence[CutPiece], cloth: ClothOnTable) -> list[Laid]:
    """Return the pieces packed, in their order; the same each time.

    Args:
        pieces: None wider than the room of the cloth.
        cloth: What they are laid on.
    """
    table, chance = _Table(pieces, cloth), random.Random(SEED)
    order = _Order(tuple(piece.shape.area for piece in pieces), (None,) * len(pieces))
    best, start = table.fill(order), order
    for trial in range(TRIALS):
        other = start.changed(chance, len(pieces)) if trial < STARTS else order.changed(chance, FEW)
        filled = table.fill(other, within=_rows(best))
        if filled:
            order, best = other, filled
    return settled([table.laid(piece, placed) for piece, placed in zip(pieces, best, strict=True)])


@dataclass(frozen=True)
class _Order:
    """The order of the pieces, the heaviest first, and whether each is turned; None leaves it open."""

    weights: tuple[float, ...]
    turned: tuple[bool | None, ...]

    def changed(self, chance: random.Random, most: int) -> _Order:
        """Return the order with up to so many pieces earlier or later, and fixed to one end or none."""
        weights, turned = list(self.weights), list(self.turned)
        for index in chance.sample(range(len(weights)), chance.randint(1, min(most, len(weights)))):
            weights[index] *= chance.uniform(*HEAVIER)
            turned[index] = chance.choice((None, False, True))
        return replace(self, weights=tuple(weights), turned=tuple(turned))


class _Table:
    """The pieces as stamps, and the bed that they are laid on."""

    def __init__(self, pieces: Sequence[CutPiece], cloth: ClothOnTable) -> None:
        # Half the gap of a piece may reach over a selvedge; along the fold it keeps inside.
        self._left = cloth.left if cloth.folded else cloth.left - GAP / 2
        room = cloth.right + GAP / 2 - self._left
        self._columns = math.ceil(room / CELL)
        self._cell = room / self._columns, CELL
        stamps = {piece.key: self._stamps(piece, one_way=cloth.one_way) for piece in pieces}
        self._stamps_of = [stamps[piece.key] for piece in pieces]
        self._costs = [_on_fold if piece.lie is Lie.ON_FOLD else _lowest for piece in pieces]
        longest = max(each[0].rows for each in self._stamps_of)
        area = sum(each[0].area for each in self._stamps_of)
        self._rows = math.ceil(EMPTY * area / self._columns) + 2 * longest
        self._all_rows = sum(each[0].rows for each in self._stamps_of)

    def _stamps(self, piece: CutPiece, *, one_way: bool) -> tuple[Stamp, ...]:
        on_fold = piece.lie is Lie.ON_FOLD
        upright = stamp(piece.shape, cell=self._cell, gap=GAP, flush=on_fold)
        return (upright,) if one_way or on_fold else (upright, upright.upside_down)

    def fill(self, order: _Order, within: int | None = None) -> list[Placed]:
        """Return where the pieces lie, in their own order; nothing when they take more than `within` rows."""
        for rows in (within,) if within else (self._rows, self._all_rows):
            bed, placed = Bed(self._columns, rows), dict[int, Placed]()
            for index in sorted(range(len(order.weights)), key=lambda i: -order.weights[i]):
                stamps, turned = self._stamps_of[index], order.turned[index]
                one = [each for each in stamps if each.turned == turned]
                found = place(bed, one or stamps, self._costs[index])
                if found is None:
                    break
                placed[index] = found
            else:
                return [placed[index] for index in range(len(placed))]
        return []

    def laid(self, piece: CutPiece, placed: Placed) -> Laid:
        """Return a piece where its stamp lies."""
        x, y = placed.corner
        return Laid(piece, rounded(self._left + x), rounded(END - GAP / 2 + y), placed.stamp.turned)


def _rows(placed: Sequence[Placed]) -> int:
    """Return how many rows are used."""
    return max(each.top for each in placed)


def _lowest(_: Stamp, shape: tuple[int, ...]) -> Costs:
    """Cost less the lower a place lies, and of equally low ones the further to the left."""
    x, y = np.ogrid[: shape[0], : shape[1]]
    costs: Costs = y * (shape[0] + 1) + x
    return costs


def _on_fold(stamp: Stamp, shape: tuple[int, ...]) -> Costs:
    """Cost the same in the first column, beyond which the fold does not reach."""
    costs = _lowest(stamp, shape)
    costs[1:] = NO_PLACE
    return costs


def settled(laid: Sequence[Laid]) -> list[Laid]:
    """Return the pieces slid down, the lowest first, as far as the gap and the end of the cloth allow."""
    result = list(laid)
    for index in sorted(range(len(laid)), key=lambda i: (laid[i].y, laid[i].x)):
        others = shapely.MultiPolygon([each.shape for i, each in enumerate(result) if i != index])
        shapely.prepare(others)
        for step in SLIDES:
            while (lower := rounded(result[index].y - step)) >= END and not shapely.dwithin(
                others, replace(result[index], y=lower).shape, GAP
            ):
                result[index] = replace(result[index], y=lower)
    return result
