"""Where the jeans end at the top: the block cut at the seam of the waistband, the back again at the yoke.

A depth is measured from the block's waist down along each seam, the same on centre lines and side seams, so
that a change of rise keeps every seam in step. A depth below zero lies above the block's waist: the seams run
on straight.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.base.tolerance import JOIN
from drafting.block.waist_line import BlockPanel
from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector
from styles.choice.style import Band, Style
from styles.top.worn_level import WIDER_ABOVE
from styles.top.yoke import Back, Crown, sweep, yoked


@dataclass(frozen=True)
class Front:
    """The front down from a level.

    Attributes:
        waist: From the centre to the side.
        side: From the level to the hem.
        crotch: From the fork up to the level.
    """

    waist: Path
    side: Path
    crotch: Path


def front_at(panel: BlockPanel, depth: float) -> Front:
    """Return the front ending `depth` mm below the block's waist."""
    crotch, side = _ends(panel, depth)
    return Front(Path((_level(crotch, side),)), side, crotch)


def front_band(panel: BlockPanel, depth: float, height: float) -> Crown:
    """Return the strip of the front from `depth` mm below the block's waist, `height` mm high."""
    top, seam = front_at(panel, depth), front_at(panel, depth + height)
    side, centre = top.side.split(height)[0], top.crotch.split(top.crotch.length - height)[1]
    return Crown(top.waist, side, seam.waist.reversed(), centre)


def back_at(panel: BlockPanel, depth: float, least: float = 0.0) -> Back:
    """Return the back ending `depth` mm below the block's waist, its darts gathered into one.

    Gathering changes the closed waist by up to a millimetre; at the block's own waist it must measure what
    was asked for, above it what the body widens besides, and anywhere `least` mm.
    """
    crotch, side = _ends(panel, depth)
    sewn = panel.waist_length + _widened(panel, depth) if depth <= JOIN else None
    whole = Path((_level(crotch, side),))
    middle = whole.length / 2
    open_width = sum(dart.opening(whole.point(middle).y) for dart in panel.darts)
    if open_width < _LEAST_DART:
        return Back(whole, None, side, crotch, sewn, least)
    inner, _ = whole.split(middle - open_width / 2)
    _, outer = whole.split(middle + open_width / 2)
    return Back(inner, outer, side, crotch, sewn, least)


_WIDENS = {"front": 0.3, "back": 0.7}
"""Shares of front and back in what a half of the body widens above the waist; the back has the seat line's
lean to make good already, and takes more in its stride (common practice, no source)."""

_INTO_LEAN = 8.0
"""The side seam turns into its lean above the waist over so many mm, or its allowance would not fit; longer,
and the band would be short of the body there (common practice, no source)."""

_LEAST_DART = 1.0
"""A dart that is open by less than this, mm, is left to the seams (common practice)."""


def _ends(panel: BlockPanel, depth: float) -> tuple[Path, Path]:
    """Return crotch seam and side seam cut `depth` mm below the block's waist, or run on above it.

    Above the waist the centre line goes on straight and the side seam leans outwards: by what the centre line
    leans in, and by this seam's share of what the body widens.
    """
    centre, side = panel.lower.crotch.reversed(), panel.side
    if abs(depth) <= JOIN:
        return centre.reversed(), side
    if depth > 0:
        return centre.split(depth)[1].reversed(), side.split(depth)[1]
    down = centre.direction(0)
    out = Vector(-(abs(down.x / down.y) + _widened(panel, -1.0)), 1).unit
    raised = Path((Cubic.line(centre.start + down * depth, centre.start),)) + centre
    return raised.reversed(), _leaning(side.start, -side.direction(0), out, -depth).reversed() + side


def _widened(panel: BlockPanel, depth: float) -> float:
    """Return by how much this panel's half of the body is wider than its waist at a depth above it, mm."""
    return WIDER_ABOVE / 2 * _WIDENS[panel.name] * max(-depth, 0.0)


def _leaning(start: Point, along: Vector, out: Vector, length: float) -> Path:
    """Return a line of that length that leaves along one direction and turns into another without a kink."""
    end = start + (along + out).unit * _INTO_LEAN
    arc = Cubic.bent(start, along, end, out, 2 / 3)
    return Path((arc, Cubic.line(end, end + out * length))).split(length)[0]


def _level(crotch: Path, side: Path) -> Cubic:
    """Return the line from the centre to the side, square to both."""
    centre = crotch.direction(crotch.length)
    return sweep(crotch.end, centre.left, side.start, -side.direction(0).left)


def seam_depth(style: Style) -> float:
    """Return how far below the block's waist the waistband is sewn on, mm.

    A shaped band lies below the worn level, a straight one stands above it.
    """
    return style.below_waist + (style.band_height if style.band is Band.SHAPED else 0.0)


@dataclass(frozen=True)
class BackTop:
    """The back from the worn level to the yoke seam.

    Attributes:
        band: The back of a shaped band; None for a straight one.
        yoke: The yoke.
        seam: The upper edge of the back leg, from the centre to the side.
        side: The side seam of the back leg, from the yoke seam to the hem.
        crotch: The crotch seam of the back leg, from the fork to the yoke seam.
    """

    band: Crown | None
    yoke: Crown
    seam: Path
    side: Path
    crotch: Path


_LEAST_YOKE = 20.0
"""A yoke is at least this deep along either seam, mm (common practice, no source)."""

_ABOVE_HIP = 0.85
"""On a short trunk the yoke reaches down its side by no more than this share of the way to hip level (common
practice, no source)."""

_OF_CURVE = 0.3
"""Along the centre back it reaches over no more than this share of the crotch curve (common practice)."""

_MOST_BENT, _DEEPER = 0.8, 5.0
"""How much longer band and yoke are below than above, as a share of their depth: where it would be more, the
yoke is made deeper, step by step, by so many mm, as nobody can sew a rainbow (own judgement)."""


def back_top(panel: BlockPanel, style: Style) -> BackTop:
    """Return the back's band, yoke and yoke seam, drawn in one so that each edge is shared."""
    band = seam_depth(style) - style.below_waist
    back = back_at(panel, style.below_waist, style.back_waist_least)
    at_centre, at_side = _depths(panel, style, back)
    top = yoked(back, centre_depth=at_centre, side_depth=at_side)
    above, yoke = top.crown.cut(band) if band else (None, top.crown)
    crotch = back.crotch.reversed().split(at_centre)[1].reversed()
    return BackTop(above, yoke, top.seam, back.side.split(at_side)[1], crotch)


def _depths(panel: BlockPanel, style: Style, back: Back) -> tuple[float, float]:
    """Return how deep band and yoke together reach along centre and side, mm, as trunk and waist ask."""
    band = seam_depth(style) - style.below_waist
    curve, line = (part.length for part in panel.lower.crotch.curves)
    upright = line + _OF_CURVE * curve - style.below_waist
    way = panel.lower.levels.waist.mm - panel.lower.levels.hip.mm - style.below_waist
    most = max(upright, band + _LEAST_YOKE), max(_ABOVE_HIP * way, band + _LEAST_YOKE)
    wanted = band + style.yoke_centre, band + style.yoke_side
    while True:
        depths = min(wanted[0], most[0]), min(wanted[1], most[1])
        if depths == most or _bent(back, *depths) <= _MOST_BENT:
            return depths
        wanted = wanted[0] + _DEEPER, wanted[1] + _DEEPER


def _bent(back: Back, at_centre: float, at_side: float) -> float:
    """Return how much longer a crown is below than above, as a share of its depth."""
    chord = back.side.point(at_side) - back.crotch.point(back.crotch.length - at_centre)
    waist = back.inner.length + (back.outer.length if back.outer else 0.0)
    return 2 * (chord.length - waist) / (at_centre + at_side)
