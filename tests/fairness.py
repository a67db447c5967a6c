"""How a line runs to the eye: where it changes its bend, and how sharply its curves meet."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np

from drafting.base.tolerance import JOIN
from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path

FLAT_BEND = 1e-5
"""A bend below this (1/mm, a radius of 100 m) is straight to the eye: 0.3 mm over half a metre."""


def bend_changes(path: Path, tolerance: float = FLAT_BEND) -> list[float]:
    """Return the distances in mm along `path` at which it begins to bend the other way.

    Stretches whose curvature stays below `tolerance` (1/mm) bend neither way: an S with a straight in the
    middle changes once, where the straight ends. Corners between curves are no bends; see `largest_turn`.
    """
    changes, walked, side = list[float](), 0.0, 0.0
    for curve in path.curves:
        for t0, t1 in pairwise(_stretches(curve)):
            bends = curve.bends(np.linspace(t0, t1, 17))
            strongest = float(bends[np.abs(bends).argmax()])
            if abs(strongest) < tolerance:
                continue
            if strongest * side < 0:
                changes.append(walked + curve.length_to(t0))
            side = strongest
        walked += curve.length
    return changes


def largest_turn(path: Path) -> float:
    """Return the largest corner in degrees between consecutive curves of `path`, 0 for a single curve."""
    turns = (a.direction(1).angle_to(b.direction(0)) for a, b in pairwise(path.curves))
    return max((math.degrees(abs(turn)) for turn in turns), default=0.0)


def _stretches(curve: Cubic) -> list[float]:
    """Return the parameters 0, those of the inflections between, and 1.

    Velocity times acceleration of a cubic is a polynomial of degree two; it is fitted through three values,
    which is exact.
    """
    if curve.straight:
        return [0.0, 1.0]
    v = [curve.velocity(t) for t in (0.0, 0.5, 1.0)]
    first, last = v[0] * -3 + v[1] * 4 + -v[2], v[0] + v[1] * -4 + v[2] * 3
    y0, y1, y2 = v[0].cross(first), v[1].cross(v[2] + -v[0]), v[2].cross(last)
    roots = np.roots([2 * (y0 - 2 * y1 + y2), -3 * y0 + 4 * y1 - y2, y0])
    inside = sorted(float(r.real) for r in roots if abs(r.imag) < JOIN and JOIN < r.real < 1 - JOIN)
    return [0.0, *inside, 1.0]
