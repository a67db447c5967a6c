"""How two neighbouring allowances meet: mitred, blunted, stepped, trimmed, or mirrored about a hem."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from drafting.base.tolerance import JOIN, MITRE
from drafting.geometry.curves import Coordinates
from drafting.geometry.points import Point, Vector
from drafting.pieces.parallels import Misfit, Parallel, at, crossings, extended, smooth
from drafting.pieces.pieces import Finish


@dataclass(frozen=True, eq=False)
class Joint:
    """The passage from one parallel's cut line to the next one's.

    Attributes:
        leave: Position, counted in points, where the first line is left.
        before: Corner points that belong to the first edge, shape (n, 2), n at least 1.
        after: Corner points that belong to the second edge; the first repeats the last of `before` unless the
            corner is squared off.
        enter: Position where the second line is entered.
    """

    leave: float
    before: Coordinates
    after: Coordinates
    enter: float


def join(first: Parallel, second: Parallel) -> Joint:
    """Return how the cut line goes from `first` to the `second`, which starts on the sew line where it ends.

    Raises:
        Misfit: the two lines do not meet.
    """
    if smooth(first, second):
        middle = 0.5 * (first.points[-1:] + second.points[:1])
        return Joint(len(first.points) - 1, middle, middle, 0)
    hems = [parallel.edge.finish is Finish.HEM and parallel.allowance > 0 for parallel in (first, second)]
    if hems == [False, True]:
        mirrored = _mirrored(first, second)
        if mirrored:
            return mirrored
    if hems == [True, False]:
        mirrored = _mirrored(second.reversed(), first.reversed())
        if mirrored:
            leave = len(first.points) - 1 - mirrored.enter
            enter = len(second.points) - 1 - mirrored.leave
            return Joint(leave, mirrored.after[::-1], mirrored.before, enter)
    turn = first.arriving.angle_to(second.leaving)
    narrow, wide = sorted((first.allowance, second.allowance))
    stepped = narrow < wide * math.cos(turn) - JOIN
    if turn > 0 and not stepped:
        return _mitred(first, second, turn)
    # Cut on beyond the line of a fold, the cloth would lie double there; a seam that runs on from it may.
    folded = Finish.FOLD in (first.edge.finish, second.edge.finish) and abs(turn) > math.pi / 4
    return _trimmed(first, second, stepped=stepped and not folded)


def _mitred(first: Parallel, second: Parallel, turn: float) -> Joint:
    """Return the corner where both lines run on straight, squared off when that lies too far out.

    A squared corner lies one allowance (the wider) beyond the corner of the sew line.
    """
    a, b = first.allowance, second.allowance
    wide = max(a, b)
    bulge = 2 * math.sin(turn / 2) ** 2
    run_on = (b - a + a * bulge) / math.sin(turn)
    run_up = (a - b + b * bulge) / math.sin(turn)
    if math.hypot(run_on, a) > MITRE * wide:
        far = math.hypot(run_on, a)
        run_on, run_up = (wide * far - a * a) / run_on, (wide * far - b * b) / run_up
    before = first.points[-1] + run_on * _array(first.arriving)
    after = second.points[0] - run_up * _array(second.leaving)
    return Joint(len(first.points), before[None], after[None], -1)


def _trimmed(first: Parallel, second: Parallel, *, stepped: bool) -> Joint:
    """Return the corner where the lines cross, one or both cut short by it.

    Where the sew line runs on but the allowance changes, crossing would leave a long slant: the wider
    allowance then ends in a step, square to its own edge.
    """
    reach = MITRE * max(first.allowance, second.allowance)
    corner = _array(first.end)[None]
    line_a = extended(first.points, first.arriving, reach)
    line_b = extended(second.points[::-1], -second.leaving, reach)[::-1]
    skipped = 0
    if stepped and first.allowance > second.allowance:
        skipped = len(first.points) - 1
        line_a = np.vstack([first.points[-1:], corner])
    elif stepped:
        line_b = np.vstack([corner, second.points[:1]])
    met = crossings(line_a, line_b)
    if not met:
        raise Misfit(first.edge.kind, second.edge.kind)
    leave, enter = min(met, key=lambda pair: math.dist(at(line_a, pair[0]), corner[0]))
    crossed = at(line_a, leave)[None]
    return Joint(skipped + leave, crossed, crossed, enter - 1)


def _mirrored(side: Parallel, hem: Parallel) -> Joint | None:
    """Return the end of a hem allowance: the side's cut line, reflected in the hem line to the hem's depth.

    With a turn-up it is reflected at every fold; those are parallel to the hem's chord, so that both ends of
    one hem are folded alike.

    None when the side runs so flat to the hem that its cut line meets the hem line beyond MITRE allowances.
    """
    turn_up = hem.edge.turn_up
    way = (hem.end - hem.start).unit if turn_up else hem.leaving
    origin, along = _array(hem.start), _array(way)
    reach = MITRE * max(side.allowance, hem.allowance)
    line = extended(side.points, side.arriving, reach)
    met = crossings(line, np.vstack([origin - reach * along, origin + reach * along]))
    if not met:
        return None
    leave = met[-1][0]
    upward = np.vstack([at(line, leave), line[: math.ceil(leave)][::-1]])
    if np.abs((upward - origin) @ _array(way.left)).max() < max(turn_up, hem.allowance - 2 * turn_up):
        upward = extended(upward, Vector(*(upward[-1] - upward[-2])).unit, 4 * hem.allowance)
    down = _folded(upward, origin, along, turn_up) if turn_up else _reflected(upward, origin, along)
    bottom = extended(hem.points[::-1], -hem.leaving, 2 * reach)[::-1]
    landed = crossings(down, bottom)
    if not landed:
        raise Misfit(hem.edge.kind, side.edge.kind)
    sunk, across = landed[0]
    after = np.vstack([down[: math.ceil(sunk)], at(down, sunk)])
    return Joint(leave, after[:1], after, across - 1)


def _reflected(points: Coordinates, origin: Coordinates, along: Coordinates) -> Coordinates:
    """Return points, shape (n, 2), reflected in the line through `origin` along the unit vector `along`."""
    gap = points - origin
    return np.asarray(origin + 2 * (gap @ along)[:, None] * along - gap)


def _folded(upward: Coordinates, origin: Coordinates, along: Coordinates, depth: float) -> Coordinates:
    """Return the end of a turn-up of that depth and of the hem below it, from the hem line down.

    The first strip lies before the leg and is its reflection; the second lies behind the first and is the leg
    moved down; the hem below lies behind the leg again.
    """
    heights = (upward - origin) @ np.array((-along[1], along[0]))
    up = np.array((-along[1], along[0])) * np.sign(heights[-1])
    heights = np.abs(heights)
    reach = int(np.argmax(heights >= depth))
    share = (depth - heights[reach - 1]) / (heights[reach] - heights[reach - 1])
    strip = np.vstack([upward[:reach], at(upward, reach - 1 + share)])
    behind = strip[::-1] - 2 * depth * up
    hem = _reflected(upward, origin, along) - 2 * depth * up
    return np.vstack([_reflected(strip, origin, along), behind[1:], hem[1:]])


def _array(place: Point | Vector) -> Coordinates:
    return np.array((place.x, place.y))
