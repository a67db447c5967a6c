"""Solving a few unknowns within their bounds (Broyden's method, clipped).

The residuals of a draft are smooth and nearly linear in what a cutter changes, so three to eight drafts
suffice.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

Numbers = NDArray[np.float64]

_IDLE = 0.05
"""A step that promises to shorten the residuals by less than this share of what is enough leads nowhere: the
bounds hold x fast."""


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
        if np.linalg.norm(r) - np.linalg.norm(r + jacobian @ step) < enough * _IDLE:
            break
        r_new = residual(moved)
        jacobian += np.outer(r_new - r - jacobian @ step, step) / float(step @ step)
        x, r = moved, r_new
        norm = float(np.linalg.norm(r))
        if norm < best_norm:
            best, best_norm = x, norm
    return best


def _clipped_step(x: Numbers, r: Numbers, jacobian: Numbers, low: Numbers, high: Numbers) -> Numbers:
    """Return the next x: a full step, the unknown that would leave its bounds by most held there in turn."""
    step = _least_squares(jacobian, -r)
    held = np.zeros(len(x), dtype=bool)
    while True:
        beyond = np.where(held, 0.0, np.maximum(low - x - step, x + step - high) / (high - low))
        worst = int(beyond.argmax())
        if beyond[worst] <= 0:
            break
        held[worst] = True
        step[worst] = np.clip(x[worst] + step[worst], low[worst], high[worst]) - x[worst]
        if held.all():
            break
        step[~held] = _least_squares(jacobian[:, ~held], -r - jacobian[:, held] @ step[held])
    return np.asarray(np.clip(x + step, low, high), dtype=np.float64)


def _least_squares(matrix: Numbers, wanted: Numbers) -> Numbers:
    """Return the x that brings `matrix @ x` closest to `wanted`; the shortest where there are several."""
    return np.asarray(np.linalg.lstsq(matrix, wanted, rcond=None)[0], dtype=np.float64)
