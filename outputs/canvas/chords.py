"""Curves as few straight chords, for files that know no curves."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from drafting.base.tolerance import FLATTEN, JOIN
from drafting.geometry.curves import Coordinates

GAP = 0.05
"""A chord strays at most this far from its curve, mm: every line then holds to a tenth of a millimetre with
room to spare, and the area of a small piece to a thousandth, which chords of 0.1 mm lose (measured)."""
CORNER = math.radians(15)
"""A line that turns more than this in one point of a fine polyline has a corner there (own trial): at 0.01 mm
of gap a curve would need a radius of 1 mm to turn as much."""


def few_chords(fine: Coordinates, *, gap: float = GAP) -> tuple[Coordinates, NDArray[np.bool_]]:
    """Return as few of the points as hold the line within `gap` mm, and which of them are corners.

    Ends and corners stay; between two of them every chord is as long as it can be.

    Args:
        fine: A line, shape (n, 2), within FLATTEN of its curves, n at least 2; a ring repeats its first
            point.
        gap: More than FLATTEN.
    """
    fine = without_repeats(fine)
    corners = turning(fine) > CORNER
    kept = [0]
    while kept[-1] < len(fine) - 1:
        kept.append(_furthest(fine, kept[-1], corners, gap - FLATTEN))
    return fine[kept], corners[kept]


def without_repeats(line: Coordinates) -> Coordinates:
    """Return a line, shape (n, 2), without points that lie on the one before."""
    ahead = np.diff(line, axis=0)
    kept: Coordinates = line[np.append(True, np.hypot(ahead[:, 0], ahead[:, 1]) > JOIN)]
    return kept


def turning(line: Coordinates) -> NDArray[np.float64]:
    """Return by how much the line turns at every point, in radians; an end counts as half a turn."""
    way = np.diff(line, axis=0)
    cross = way[:-1, 0] * way[1:, 1] - way[:-1, 1] * way[1:, 0]
    turns = np.abs(np.arctan2(cross, (way[:-1] * way[1:]).sum(axis=1)))
    return np.concatenate([[np.pi], turns, [np.pi]])


def _furthest(line: Coordinates, start: int, corners: NDArray[np.bool_], gap: float) -> int:
    """Return the last point up to which a chord from `start` holds; it does not pass a corner."""
    end = start + 1
    while not corners[end] and _strays(line[start : end + 2]) <= gap:
        end += 1
    return end


def _strays(stretch: Coordinates) -> float:
    """Return how far the points between its ends lie from the chord, mm."""
    inner, chord = stretch[1:-1] - stretch[0], stretch[-1] - stretch[0]
    share = np.clip(inner @ chord / max(float(chord @ chord), JOIN), 0, 1)
    off = inner - share[:, None] * chord
    return float(np.hypot(off[:, 0], off[:, 1]).max())
