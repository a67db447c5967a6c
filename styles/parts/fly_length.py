"""How long and how wide the fly is: the zip or the buttons that suit the rise, and what lies behind them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import partial

from drafting.block.block import Block
from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Vector
from drafting.geometry.solve import bisect
from drafting.pieces.kinds import PlaceKind
from styles.choice.style import Fly, Style
from styles.top.upper import front_at, seam_depth

_RISE_LESS_ZIP = 130.0
"""A zip is this much shorter than the front rise with its band, mm (4 1/2 to 5 1/2 in in published ranges of
rises and their zips)."""

_MOST_TURN = math.radians(15)
"""The fly ends where the crotch seam has turned this far off the centre line, as a zip lies flat no further
(common practice, no source)."""

_CLOSE = 2.0**-30
"""So near the parameter of that place is found: less than a millionth of a millimetre along the curve."""

_ABOVE_STOP = 10.0
"""The opening is this much longer than the zip, mm: half for the slider below the band, half below the stop
(common practice)."""

_LEAST_ZIP, _LONGEST_ZIP = 40.0, 200.0
"""Shorter zips open nothing (1 to 2 in belong to the lowest published rises); longer ones are not sold for
jeans (from memory), mm."""

_FACING_WIDER, _SHIELD_WIDER = 6.0, 7.0
"""How much wider than the topstitching facing and finished shield are, mm, so that it catches the one and the
other covers the zip (common practice)."""


_FIRST_BUTTON, _BUTTONS_APART = 25.4, 45.0
"""From the waistband seam to the first button, 1 in, and from each to the next, about 4.5 cm (trouser
draft of a theatre cutter, 2011), mm."""

_LAST_ABOVE_STOP, _LAST_ABOVE_AT_MOST = 19.0, 25.4
"""How far the last button lies above the notch, 3/4 to 1 in (the same theatre cutter), mm."""


@dataclass(frozen=True)
class FlyLength:
    """How long the fly is, mm.

    Attributes:
        opening: From the waistband seam down the centre front to the notch at which it ends.
        zip: The zip, as sold in whole centimetres; None where buttons close the fly.
        buttons: How far below the waistband seam each button lies; none where a zip does.
    """

    opening: float
    zip: float | None = None
    buttons: tuple[float, ...] = ()

    @property
    def stop(self) -> PlaceKind:
        """The name of the notch at its lower end."""
        return PlaceKind.FLY_STOP if self.buttons else PlaceKind.ZIP_STOP


def fly_length(block: Block, style: Style) -> FlyLength:
    """Return the zip or the buttons that suit the rise, and their opening; the same for both halves.

    The zip measures 40 to 200 mm; where the centre front has no room for that, the opening runs on
    into the curve of the crotch seam. Buttons take no longer an opening than the zip may: one on the lowest
    rises, four on the highest.
    """
    zips = []
    for half in block.halves:
        centre = front_at(half.front, seam_depth(style)).crotch.reversed()
        rise = centre.length + style.band_height
        zips.append(min(rise - _RISE_LESS_ZIP, _flat(centre) - _ABOVE_STOP))
    longest = min(max(min(zips), _LEAST_ZIP), _LONGEST_ZIP)
    if style.fly is Fly.BUTTONS:
        return _buttoned(longest + _ABOVE_STOP)
    whole_cm = math.floor(longest / 10) * 10.0
    return FlyLength(whole_cm + _ABOVE_STOP, zip=whole_cm)


def _buttoned(longest: float) -> FlyLength:
    """Return as many buttons as an opening of so many mm holds."""
    more = math.floor((longest - _FIRST_BUTTON - _LAST_ABOVE_STOP) / _BUTTONS_APART)
    buttons = tuple(_FIRST_BUTTON + _BUTTONS_APART * number for number in range(1 + more))
    return FlyLength(min(longest, buttons[-1] + _LAST_ABOVE_AT_MOST), buttons=buttons)


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
        if _turned(curve, plumb, 1):
            return walked + curve.length_to(bisect(partial(_turned, curve, plumb), 0.0, 1.0, within=_CLOSE))
        walked += curve.length
    return walked


def _turned(curve: Cubic, plumb: Vector, t: float) -> bool:
    """Return whether a curve has turned further off the plumb line than a zip follows."""
    return abs(plumb.angle_to(curve.direction(t))) > _MOST_TURN
