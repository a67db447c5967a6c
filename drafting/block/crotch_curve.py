"""The curve of the crotch seam from the centre line to the fork: one bend, without a point."""

from __future__ import annotations

from drafting.geometry.curves import Cubic
from drafting.geometry.points import Point, Vector

_LEAST_RADIUS = 18.0
"""A crotch curve that turns more sharply than this radius, mm, is drawn with other handles (common
practice)."""

_HANDLES = (0.5, 0.55, 0.6, 0.65, 0.7, 0.75)
"""Handles that are tried for it, as shares of the way to the corner: a quarter ellipse's and fuller ones."""

_BEND_AT_FORK = 0.2
"""The curve turns off its chord at the fork by this share of its turn at the centre line, or more: less is a
point there, and nothing a bend both ways (own trial)."""


def crotch_curve(start: Point, down: Vector, fork: Point, arrive: Vector, *, handle: float) -> Cubic:
    """Return the curve; where its handles would give it a point, with those that round it most.

    Args:
        start: Where it leaves the centre line.
        down: The way of the centre line there.
        fork: Where it ends.
        arrive: The way in which it reaches the fork.
        handle: How far its handles reach to the corner, as a share.
    """
    curve = Cubic.bent(start, down, fork, arrive, handle)
    if curve.sharpest_bend() * _LEAST_RADIUS <= 1:
        return curve
    fuller = [Cubic.bent(start, down, fork, arrive, handle) for handle in _HANDLES]
    return min([*fuller, Cubic.squared(start, down, fork, arrive)], key=Cubic.sharpest_bend)


def missing_turn(curve: Cubic) -> float:
    """Return by how much more a crotch curve should turn on its way to the fork, radians, to bend one way.

    A wide fork under a short trunk lies so flat that a curve which arrives square to its inseam has no bend
    left there. 0 where it has.
    """
    chord = curve.end - curve.start
    at_centre, at_fork = curve.direction(0).angle_to(chord), chord.angle_to(curve.direction(1))
    return max(_BEND_AT_FORK * at_centre - at_fork, 0.0)
