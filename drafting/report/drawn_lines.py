"""The drawn lines of a block as numbers, for plotting, teaching and measuring."""

from __future__ import annotations

from typing import TypedDict

import numpy as np

from drafting.block.block import Block
from drafting.block.waist_line import BlockPanel
from drafting.geometry.curves import Coordinates
from drafting.geometry.points import Point

CLOSE = 0.02
"""Chords stay this near the curves, mm: less than half the width of the finest pencil line on paper."""

PanelLines = TypedDict(
    "PanelLines",
    {
        "crotch seam": Coordinates,
        "inseam": Coordinates,
        "side seam": Coordinates,
        "crease": Coordinates,
        "waist": list[Coordinates],
        "darts": list[Coordinates],
    },
)
"""The lines of one panel, each an (n, 2) array of points in mm."""


class BlockLines(TypedDict):
    """The lines of front and back, and the heights of the levels above the floor, mm."""

    front: PanelLines
    back: PanelLines
    levels: dict[str, float]


def block_lines(block: Block) -> BlockLines:
    """Return the drawn lines of the right half of a block.

    Arrays have the shape (n, 2): x and y in mm, chords within 0.02 mm of the curve. x counts from the plumb
    line through the point where the centre line crosses hip level, positive towards the fork, in front and
    back alike, so that the side seam has negative x; y is the height above the floor.

    Returns:
        "front" and "back" with "crotch seam" (top of the centre line to the fork), "inseam" (fork to hem),
        "side seam" (waist to hem), "crease" (waist level to hem), "waist" (one run between darts each, from
        the centre to the side) and "darts" (inner leg, tip, outer leg); "levels" with the heights of "waist",
        "hip", "crotch", "knee" and "hem".
    """
    levels = block.levels
    return {
        "front": _panel_lines(block.front),
        "back": _panel_lines(block.back),
        "levels": {
            name: float(level.mm)
            for name, level in (
                ("waist", levels.waist),
                ("hip", levels.hip),
                ("crotch", levels.crotch),
                ("knee", levels.knee),
                ("hem", levels.hem),
            )
        },
    }


def _panel_lines(panel: BlockPanel) -> PanelLines:
    lower = panel.lower
    crease = lower.crease.reversed()
    top = Point(crease.start.x, lower.levels.waist.mm)
    return {
        "crotch seam": lower.crotch.reversed().flatten(CLOSE),
        "inseam": lower.inseam.reversed().flatten(CLOSE),
        "side seam": panel.side.flatten(CLOSE),
        "crease": np.array([[p.x, p.y] for p in (top, crease.start, *(c.end for c in crease.curves))]),
        "waist": [run.flatten(CLOSE) for run in panel.waist],
        "darts": [np.array([[p.x, p.y] for p in (d.inner, d.tip, d.outer)]) for d in panel.darts],
    }
