"""The scooped opening of most jeans, from a straight slant to a deep scoop."""

from __future__ import annotations

from drafting.geometry.curves import QUARTER_ROUND, Cubic
from drafting.geometry.paths import Path
from styles.front_pockets import Mouth

_FULL_BEND = 0.5
"""From this scoop on the opening is square to waist and side; below it flattens towards a straight slant (own
trial)."""

_DEEPEST, _ROUNDEST = 0.75, 0.9
"""Handles of the opening as shares of the way to its corner: the deepest scoop, and the shorter handle of a
very flat one; less deep it is a quarter ellipse (common practice)."""

_LEAST_RADIUS = 12.5
"""A tighter bend leaves no room for a seam allowance of 10 mm, clipped and turned (common practice), mm."""

_FLATTENED = (1.0, 0.8, 0.6, 0.4, 0.2)
"""Shares of the scoop that are tried."""


def edge(mouth: Mouth) -> Path:
    """Return the edge: a straight slant for a scoop of 0, square to waist and side from a half on.

    Where it would bend too tightly to be turned, in a small or flat opening, it is scooped less.
    """
    scoops = (mouth.scoop * share for share in _FLATTENED)
    curves = (_scooped(mouth, scoop) for scoop in scoops if scoop > 0)
    fair = (curve for curve in curves if curve.sharpest_bend() <= 1 / _LEAST_RADIUS)
    return Path((next(fair, Cubic.line(mouth.corner, mouth.end)),))


def _scooped(mouth: Mouth, scoop: float) -> Cubic:
    chord = mouth.end - mouth.corner
    bend = min(scoop / _FULL_BEND, 1.0)
    leave, arrive = (chord.turned(bend * chord.angle_to(way)) for way in (mouth.down, mouth.out))
    fullness = min(max(scoop - _FULL_BEND, 0.0) / (1 - _FULL_BEND), 1.0)
    share = QUARTER_ROUND + (_DEEPEST - QUARTER_ROUND) * fullness
    return _eased(Cubic.bent(mouth.corner, leave, mouth.end, arrive, share), share)


def _eased(curve: Cubic, share: float) -> Cubic:
    """Return a curve whose shorter handle is drawn out, so that a flat opening has no tight bend."""
    first, second = (curve.c1 - curve.start).length, (curve.c2 - curve.end).length

    def drawn_out(own: float, other: float) -> float:
        return 1 + (_ROUNDEST / share - 1) * max(0.0, 1 - own / other)

    c1 = curve.start.towards(curve.c1, drawn_out(first, second))
    return Cubic(curve.start, c1, curve.end.towards(curve.c2, drawn_out(second, first)), curve.end)
