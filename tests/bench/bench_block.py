"""How long a block takes: python tests/bench/bench_block.py [rounds].

Each is set beside a floor: evaluating as many bare cubics as the block is drawn with, with numpy, and
measuring them.
"""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np

from drafting import Block, Measurements, draft_block
from drafting.report.block_figures import block_figures
from styles.choice.style import STRAIGHT
from styles.making.jeans import make_jeans
from tests.bench.stopwatch import side_by_side, table
from tests.wearers import wearer

BODIES = {
    "four measurements": wearer(),
    "and crotch length": wearer(total_crotch_length=700),
    "and front and back of it": wearer(front_crotch_length=315, back_crotch_length=385),
    "and thigh, widened": wearer(total_crotch_length=700, thigh_girth=640),
}
REPEATS = 20
"""Blocks in one reading, so that the clock is fine enough."""


def cubics(block: Block) -> int:
    """Return how many cubics the finished block has."""
    paths = [p for panel in (block.front, block.back)
             for p in (*panel.waist, panel.side, panel.lower.inseam, panel.lower.crotch)]  # fmt: skip
    return sum(len(path.curves) for path in paths)


def bare(count: int) -> None:
    """Evaluate and measure so many cubics at 25 parameters each."""
    t = np.linspace(0, 1, 25)[:, None]
    u = 1 - t
    weights = np.hstack([u**3, 3 * u * u * t, 3 * u * t * t, t**3])
    for _ in range(count):
        points = weights @ np.array([[0.0, 0.0], [10, 50], [90, 50], [100, 0]])
        np.hypot(*np.diff(points, axis=0).T).sum()


def main() -> None:
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 25
    count = cubics(draft_block(wearer()))

    def repeated(body: Measurements):  # type: ignore[no-untyped-def]
        return lambda: [draft_block(body) for _ in range(REPEATS)]

    full = draft_block(BODIES["and thigh, widened"])
    taken = side_by_side(
        *(repeated(body) for body in BODIES.values()),
        lambda: [block_figures(full) for _ in range(REPEATS)],
        lambda: [make_jeans(full, STRAIGHT) for _ in range(REPEATS)],
        lambda: [bare(count) for _ in range(REPEATS)],
        rounds=rounds,
    )
    names = [f"block: {name}" for name in BODIES]
    names += ["figures of a block", "pieces and seam check of a block", f"floor: {count} bare cubics"]
    print(table(names, taken, factor=1000 / REPEATS))


if __name__ == "__main__":
    main()
