"""How long and how wide the fly is: the zip that suits the rise, and what lies behind it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.block import Block
from drafting.paths import Path
from styles.style import Style
from styles.upper import front_at, seam_depth

ZIP_STOP = "zip stop"
"""The notch at which the opening ends and the centre seam begins."""

_RISE_LESS_ZIP = 130.0
"""A zip is this much shorter than the front rise with its band, mm (4 1/2 to 5 1/2 in in published ranges of
rises and their zips)."""

_MOST_TURN = math.radians(15)
"""The fly ends where the crotch seam has turned this far off the centre line, as a zip lies flat no further
(common practice, no source)."""

_ABOVE_STOP = 10.0
"""The opening is this much longer than the zip, mm: half for the slider below the band, half below the stop
(common practice)."""

_LEAST_ZIP, _LONGEST_ZIP = 40.0, 200.0
"""Shorter zips open nothing (1 to 2 in belong to the lowest published rises); longer ones are not sold for
jeans (from memory), mm."""

_FACING_WIDER, _SHIELD_WIDER = 6.0, 7.0
"""How much wider than the topstitching facing and finished shield are, mm, so that it catches the one and the
other covers the zip (common practice)."""


@dataclass(frozen=True)
class FlyLength:
    """How long the fly is, mm.

    Attributes:
        zip: The zip, as sold in whole centimetres.
        opening: From the waistband seam down the centre front to the notch at the zip's stop.
    """

    zip: float
    opening: float


def fly_length(block: Block, style: Style) -> FlyLength:
    """Return the zip that suits the rise, and its opening; the same for both halves.

    The zip measures 40 to 200 mm; where the centre front has no room for that, the opening runs on
    into the curve of the crotch seam.
    """
    zips = []
    for half in block.halves:
        centre = front_at(half.front, seam_depth(style)).crotch.reversed()
        rise = centre.length + style.band_height
        zips.append(min(rise - _RISE_LESS_ZIP, _flat(centre) - _ABOVE_STOP))
    whole_cm = min(max(math.floor(min(zips) / 10) * 10.0, _LEAST_ZIP), _LONGEST_ZIP)
    return FlyLength(whole_cm, whole_cm + _ABOVE_STOP)


def facing_width(style: Style) -> float:
    """Return the width of the fly facing, mm."""
    return style.fly_width + _FACING_WIDER


def shield_width(style: Style) -> float:
    """Return the finished width of the fly shield, mm; the waistband's underlap covers it."""
    return style.fly_width + _SHIELD_WIDER


def _flat(centre: Path) -> float:
    """Return how far down the centre front its seam has turned no more than a zip follows, mm."""
    plumb, walked = centre.direction(0), 0.0
    for curve in centre.curves:
        if abs(plumb.angle_to(curve.direction(1))) > _MOST_TURN:
            low, high = 0.0, 1.0
            for _ in range(30):
                middle = (low + high) / 2
                if abs(plumb.angle_to(curve.direction(middle))) > _MOST_TURN:
                    high = middle
                else:
                    low = middle
            return walked + curve.length_to(low)
        walked += curve.length
    return walked
