"""A plain line drawing of a lower body from front, side and seated, to show where a tape runs.

Millimetres of an adult body: y above the floor; in front view x from the middle, to the right of the paper,
in side view from front to back, the body facing left. The figure stands for nobody: its heights and
widths are those of an ordinary adult (from memory), rounded.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector

WAIST, TOP_HIP, HIP, CROTCH, MID_THIGH, KNEE, CALF, ANKLE = 1030, 935, 845, 765, 615, 465, 335, 110
"""Levels of the standing figure above the floor."""
TORSO = 1085
"""Where the drawing breaks off above the waist."""
SEAT, SEATED_WAIST, SEATED_TORSO = 440, 695, 750
"""Level of the chair, and of waist and break of the seated figure."""
HALF_WIDTH, TOES, SEAT_POINT = 181, -184, 137
"""How far the standing figure reaches: in front view to either side, in side view forwards and backwards."""
SEATED_TOES, CHAIR_END = -574, 170
"""How far the seated figure with its chair reaches forwards and backwards."""

Places = Sequence[tuple[float, float]]

_OUTER_LEG: Places = (
    (139, TORSO), (136, WAIST), (156, TOP_HIP), (176, HIP), (HALF_WIDTH, CROTCH), (168, MID_THIGH),
    (148, 520), (139, KNEE), (147, 400), (150, CALF), (130, 220), (115, ANKLE), (119, 70), (133, 30),
)  # fmt: skip
_FOOT: Places = ((133, 30), (141, 15), (130, 5), (105, 3), (80, 4), (63, 13), (66, 32))
_INNER_LEG: Places = (
    (66, 32), (67, 70), (64, ANKLE), (49, 220), (40, CALF), (43, 400), (47, KNEE), (40, 520), (27, MID_THIGH),
    (15, 700), (7, 748), (0, CROTCH),
)  # fmt: skip

_FRONT_SIDE: Places = (
    (-104, TORSO), (-102, WAIST), (-116, TOP_HIP), (-112, HIP), (-114, CROTCH), (-106, MID_THIGH), (-86, 530),
    (-74, KNEE), (-62, 410), (-55, CALF), (-43, 220), (-41, ANKLE), (-56, 82), (-110, 48), (-170, 26),
)  # fmt: skip
_SOLE: Places = (
    (-170, 26),
    (TOES, 14),
    (-172, 5),
    (-140, 3),
    (-110, 4),
    (-60, 8),
    (0, 5),
    (40, 4),
    (60, 16),
    (58, 40),
)
_BACK_SIDE: Places = (
    (58, 40), (44, 80), (43, ANKLE), (60, 220), (82, CALF), (72, 400), (56, KNEE), (66, 530), (86, MID_THIGH),
    (108, 740), (134, 800), (SEAT_POINT, HIP), (114, TOP_HIP), (88, WAIST), (90, TORSO),
)  # fmt: skip

_LAP: Places = (
    (-112, SEATED_TORSO), (-112, SEATED_WAIST), (-126, 640), (-118, 600), (-100, 583),
)  # fmt: skip
_THIGH: Places = ((-100, 583), (-240, 590), (-380, 572), (-450, 545), (-476, 500), (-470, 440))
_SHIN: Places = (
    (-470, 440), (-452, 330), (-436, 220), (-430, ANKLE), (-446, 82), (-500, 48), (-560, 26),
)  # fmt: skip
_SEATED_SOLE: Places = (
    (-560, 26), (SEATED_TOES, 14), (-562, 5), (-530, 3), (-500, 4), (-450, 8), (-390, 5), (-350, 4),
    (-330, 16), (-332, 40),
)  # fmt: skip
_SEATED_CALF: Places = ((-332, 40), (-346, 80), (-347, ANKLE), (-328, 220), (-310, 330), (-330, 415))
_SEAT_LINE: Places = ((-330, 415), (-316, 432), (-280, SEAT), (-150, SEAT), (60, SEAT))
_SEATED_BACK: Places = (
    (60, SEAT), (118, 458), (140, 530), (122, 610), (96, SEATED_WAIST), (96, SEATED_TORSO),
)  # fmt: skip

_UNDER_SEAT = 412
_SLAB: Places = (
    (-285, _UNDER_SEAT), (CHAIR_END, _UNDER_SEAT), (CHAIR_END, SEAT), (-285, SEAT), (-285, _UNDER_SEAT)
)  # fmt: skip


def smooth(places: Places) -> Path:
    """Return the curve through the places, at each along the parabola through it and its neighbours."""
    points = [Point(x, y) for x, y in places]
    chords = [after - before for before, after in pairwise(points)]
    inner = [before.unit * after.length + after.unit * before.length for before, after in pairwise(chords)]
    ways = [way.unit for way in (chords[0], *inner, chords[-1])]
    return Path(tuple(map(_piece, points, points[1:], ways, ways[1:])))


def _piece(start: Point, end: Point, leave: Vector, arrive: Vector) -> Cubic:
    reach = (end - start).length / 3
    return Cubic(start, start + leave * reach, end + arrive * -reach, end)


def mirrored(path: Path) -> Path:
    """Return the path on the other side of x = 0."""
    return path.moved(lambda p: Point(-p.x, p.y))


OUTER_LEG, INNER_LEG = smooth(_OUTER_LEG), smooth(_INNER_LEG)
"""In front view, to the right on paper: from the torso down to the foot, from the foot up to the crotch."""
_LEG = OUTER_LEG + smooth(_FOOT) + INNER_LEG
KNEECAP = smooth(((-115, 484), (-108, 456), (-93, 447), (-78, 456), (-71, 484)))
FRONT_VIEW = (_LEG, mirrored(_LEG))

FRONT_CONTOUR = smooth(_FRONT_SIDE)
"""In side view from the torso down to the toes."""
BACK_CONTOUR = smooth(_BACK_SIDE)
"""In side view from the heel up to the torso."""
SIDE_VIEW = (FRONT_CONTOUR + smooth(_SOLE) + BACK_CONTOUR,)

LAP, SEATED_BACK = smooth(_LAP), smooth(_SEAT_LINE) + smooth(_SEATED_BACK)
"""Seated: from the torso down to the lap, and from the back of the knee along the seat up to the torso."""
SEATED_VIEW = (
    LAP,
    smooth(_THIGH) + smooth(_SHIN) + smooth(_SEATED_SOLE) + smooth(_SEATED_CALF),
    SEATED_BACK,
)
CHAIR = (
    Path.through([Point(x, y) for x, y in _SLAB]),
    *(Path.through([Point(x, 0), Point(x, _UNDER_SEAT)]) for x in (-265, 150)),
)
