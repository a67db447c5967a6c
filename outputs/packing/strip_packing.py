"""Outlines packed on a strip of fixed width, as short as a fixed number of trials finds.

Each trial lays the outlines in an order of its own, each where its lower end lies lowest. What came out best
is changed a little for the next: the place of an outline in the order, or the end that its foot points to. At
last every outline slides down the few millimetres that the cells kept from it.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import shapely
from shapely.affinity import translate
from shapely.geometry import Polygon

from outputs.packing.cells import SLACK, Bed, Cost, Costs, Placed, Stamp, place

CELL = 8.0
"""About the size of a cell in mm: finer ones cost time that more trials use better."""
TRIALS = 120
"""How many changes are tried: half a second to two, by the number of outlines."""
SEED = 1
"""Changes are drawn by chance, the same each time."""
STARTS = 60
"""How many of them change any number of outlines of the first order; the others go on from the best."""
FEW = 3
"""How many outlines they change at most."""
HEAVIER = (0.6, 1.6)
"""By how much an outline's weight in the order may change."""
EMPTY = 1.3
"""Length of the bed as a multiple of what the cells need, besides twice the longest outline."""
SLIDES = (4.0, 2.0, 1.0, 0.5, 0.2)
"""Steps in which an outline slides down, mm: none so wide that it could jump over another."""


def lowest(_: Stamp, shape: tuple[int, ...]) -> Costs:
    """Cost less the lower a place lies, and of equally low ones the further to the left."""
    x, y = np.ogrid[: shape[0], : shape[1]]
    costs: Costs = y * (shape[0] + 1) + x
    return costs


@dataclass(frozen=True, eq=False)
class Blank:
    """An outline to lay.

    Attributes:
        stamps: As it may lie: upright alone, or turned by half a turn too.
        weight: The heaviest are laid first.
        cost: What places cost it.
    """

    stamps: tuple[Stamp, ...]
    weight: float
    cost: Cost = lowest


def cells_across(room: float) -> tuple[int, tuple[float, float]]:
    """Return how many columns a strip of `room` mm has, and width and height of its cells in mm."""
    columns = math.ceil(room / CELL)
    return columns, (room / columns, CELL)


def shortest(blanks: Sequence[Blank], columns: int) -> list[Placed]:
    """Return where the outlines lie, in their order; the same each time.

    Args:
        blanks: None wider than the strip.
        columns: Of cells across the strip.
    """
    strip, chance = _Strip(blanks, columns), random.Random(SEED)
    order = _Order(tuple(blank.weight for blank in blanks), (None,) * len(blanks))
    best, start = strip.fill(order), order
    for trial in range(TRIALS):
        other = start.changed(chance, len(blanks)) if trial < STARTS else order.changed(chance, FEW)
        filled = strip.fill(other, within=max(placed.top for placed in best))
        if filled:
            order, best = other, filled
    return best


@dataclass(frozen=True)
class _Order:
    """The order of the outlines, the heaviest first, and whether each is turned; None leaves it open."""

    weights: tuple[float, ...]
    turned: tuple[bool | None, ...]

    def changed(self, chance: random.Random, most: int) -> _Order:
        """Return the order with up to so many outlines earlier or later, and fixed to one end or none."""
        weights, turned = list(self.weights), list(self.turned)
        for index in chance.sample(range(len(weights)), chance.randint(1, min(most, len(weights)))):
            weights[index] *= chance.uniform(*HEAVIER)
            turned[index] = chance.choice((None, False, True))
        return replace(self, weights=tuple(weights), turned=tuple(turned))


class _Strip:
    """The outlines, and the length that is offered to them."""

    def __init__(self, blanks: Sequence[Blank], columns: int) -> None:
        self._blanks, self._columns = blanks, columns
        rows = [blank.stamps[0].rows for blank in blanks]
        area = sum(blank.stamps[0].area for blank in blanks)
        self._rows = math.ceil(EMPTY * area / columns) + 2 * max(rows)
        self._all_rows = sum(rows)

    def fill(self, order: _Order, within: int | None = None) -> list[Placed]:
        """Return where the outlines lie; nothing when they take more than `within` rows."""
        for rows in (within,) if within else (self._rows, self._all_rows):
            bed, placed = Bed(self._columns, rows), dict[int, Placed]()
            for index in sorted(range(len(order.weights)), key=lambda i: -order.weights[i]):
                blank, turned = self._blanks[index], order.turned[index]
                one = [each for each in blank.stamps if each.turned == turned]
                found = place(bed, one or blank.stamps, blank.cost)
                if found is None:
                    break
                placed[index] = found
            else:
                return [placed[index] for index in range(len(placed))]
        return []


def slides(shapes: Sequence[Polygon], *, end: float, gap: float) -> list[float]:
    """Return how far each outline slides down, mm: the lowest first, as far as the others allow.

    Args:
        shapes: In their places, a gap apart.
        end: What none slides below, mm.
        gap: Least distance of two outlines, mm.
    """
    slid, ways = list(shapes), [0.0] * len(shapes)
    for index in sorted(range(len(shapes)), key=lambda i: (shapes[i].bounds[1], shapes[i].bounds[0])):
        others = shapely.MultiPolygon([shape for i, shape in enumerate(slid) if i != index])
        shapely.prepare(others)
        for step in SLIDES:
            while True:
                lower = translate(slid[index], 0, -step)
                if lower.bounds[1] < end - SLACK or shapely.dwithin(others, lower, gap):
                    break
                slid[index] = lower
                ways[index] += step
    return ways
