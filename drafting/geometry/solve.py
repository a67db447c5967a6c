"""Solving for one number, by halving, by Newton or by secant, and for a few within bounds (Broyden, clipped).

The residuals of a draft are smooth and nearly linear in what a cutter changes, so three to eight drafts
suffice.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

Numbers = NDArray[np.float64]

_HALVINGS = 60
"""Between 0 and 1 nothing is left to halve after so many."""

_IDLE = 0.05
"""A step that promises to shorten the residuals by less than this share of what is enough leads nowhere: the
bounds hold x fast."""


def bisect(beyond: Callable[[float], bool], low: float, high: float, *, within: float) -> float:
    """Return the last place from `low` to `high` that is not `beyond` yet, at most `within` short of it.

    Args:
        beyond: Taken to be false at `low` and true at `high`, and to change once between them.
        low: One end.
        high: The other end.
        within: How near to come; not less than rounding, which is 1e-13 for a metre in mm.
    """
    while high - low > within:
        middle = (low + high) / 2
        low, high = (low, middle) if beyond(middle) else (middle, high)
    return low


def newton(
    miss: Callable[[float], float], slope: Callable[[float], float], start: float, *, enough: float
) -> float:
    """Return where a value that only rises from 0 to 1 vanishes: Newton's step, or a halving where it strays.

    Args:
        miss: The value.
        slope: Its slope; where it is 0 the stretch is halved.
        start: First guess, 0 to 1.
        enough: Done when the value is smaller than this.
    """
    t, low, high = start, 0.0, 1.0
    for _ in range(_HALVINGS):
        off = miss(t)
        if abs(off) < enough:
            break
        low, high = (low, t) if off > 0 else (t, high)
        steep = slope(t)
        step = t - off / steep if steep else low
        t = step if low < step < high else (low + high) / 2
    return t


def secant(
    miss: Callable[[float], float],
    start: float,
    slope: float,
    *,
    enough: float,
    rounds: int,
    slopes: tuple[float, float] | None = None,
) -> float:
    """Return the number for which `miss` vanishes, or how far it came.

    Args:
        miss: Nearly linear.
        start: First guess.
        slope: Its slope there, not 0.
        enough: Done when the miss is smaller than this.
        rounds: Most steps.
        slopes: Least and largest slope that is believed of two places, not 0; None keeps to `slope`.
    """
    x, off = start, miss(start)
    for _ in range(rounds):
        if abs(off) < enough:
            break
        moved = x - off / slope
        before, off = off, miss(moved)
        if slopes and moved != x:
            slope = min(max((off - before) / (moved - x), slopes[0]), slopes[1])
        x = moved
    return x


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
