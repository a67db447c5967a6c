"""Solving a few unknowns within their bounds (Broyden's method, clipped).

The residuals of a draft are smooth and nearly linear in what a cutter changes, so three to eight drafts
suffice.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

Numbers = NDArray[np.float64]


def solve_within(
    residual: Callable[[Numbers], Numbers],
    start: Numbers,
    slopes: Numbers,
    bounds: tuple[Numbers, Numbers],
    *,
    enough: float,
    rounds: int = 25,
) -> Numbers:
    """Return x, shape (n,), for which the residuals, shape (n,), vanish as far as the bounds allow.

    Args:
        residual: The n residuals at x.
        start: First x, inside the bounds.
        slopes: First guess of the matrix of slopes, shape (n, n), regular.
        bounds: Lowest and highest x.
        enough: Done when every residual is smaller than this.
        rounds: Most drafts; the best x seen is returned when they are used up or the bounds hold x fast.
    """
    low, high = bounds
    x, jacobian = start, slopes.copy()
    r = residual(x)
    best, best_norm = x, float(np.linalg.norm(r))
    for _ in range(rounds):
        if np.abs(r).max() < enough:
            break
        moved = _clipped_step(x, r, jacobian, low, high)
        step = moved - x
        if np.abs(step).max() < 1e-9:
            break
        r_new = residual(moved)
        jacobian += np.outer(r_new - r - jacobian @ step, step) / float(step @ step)
        x, r = moved, r_new
        norm = float(np.linalg.norm(r))
        if norm < best_norm:
            best, best_norm = x, norm
    return best


def _clipped_step(x: Numbers, r: Numbers, jacobian: Numbers, low: Numbers, high: Numbers) -> Numbers:
    """Return the next x: a full step, with unknowns that would leave their bounds held there."""
    free = np.ones(len(x), dtype=bool)
    step = np.zeros_like(x)
    for _ in range(len(x)):
        step[free] = np.linalg.lstsq(jacobian[:, free], -r - jacobian[:, ~free] @ step[~free], rcond=None)[0]
        out = free & ((x + step < low) | (x + step > high))
        if not out.any():
            break
        step[out] = np.clip(x[out] + step[out], low[out], high[out]) - x[out]
        free &= ~out
        if not free.any():
            break
    return np.clip(x + step, low, high)
