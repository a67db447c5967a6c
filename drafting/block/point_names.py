"""What the steps of a draft draw: points, lines and levels; and, apart from that, what these are called."""

from __future__ import annotations

import re
from enum import StrEnum


class Drawn(StrEnum):
    """A point, a line or a level of one panel; the values are the keys of `Construction.points` and `lines`.

    Of what a panel has several, the key has their number behind the first word: "dart 2 tip".
    """

    WAIST_LEVEL = "waist level"
    HIP_LEVEL = "hip level"
    CROTCH_LEVEL = "crotch level"
    KNEE_LEVEL = "knee level"
    HEM_LEVEL = "hem level"

    HIP_POINT = "hip point"
    CROTCH_CORNER = "crotch corner"
    HIP_AT_SIDE = "hip at the side"
    OWN_HIP_AT_SIDE = "own hip at the side"
    CENTRE_PLUMB = "centre plumb"
    CENTRE_AT_WAIST = "centre at the waist"
    FORK_LEVEL = "fork level"
    FORK = "fork"
    CREASE = "crease"
    CREASE_AT_KNEE = "crease at the knee"
    CREASE_AT_HEM = "crease at the hem"
    PLUMB_AT_HEM = "plumb at the hem"
    KNEE_AT_INSEAM = "knee at the inseam"
    KNEE_AT_SIDE = "knee at the side"
    HEM_AT_INSEAM = "hem at the inseam"
    HEM_AT_SIDE = "hem at the side"
    CURVE_START = "curve start"
    SIDE_PLUMB = "side plumb"
    SIDE_AT_WAIST = "side at the waist"
    DART_MIDDLE = "dart middle"
    DART_TIP = "dart tip"
    DART_INNER_LEG = "dart inner leg"
    DART_OUTER_LEG = "dart outer leg"

    INSEAM = "inseam"
    CROTCH_SEAM = "crotch seam"
    SIDE_SEAM = "side seam"
    WHOLE_SIDE_SEAM = "whole side seam"
    """The side seam above the hip, drawn once front and back are equally long."""
    HEM = "hem"
    WAIST = "waist"
    DART = "dart"


_NUMBER = re.compile(r" (\d+)")


def drawn(key: str) -> tuple[Drawn, int]:
    """Return what a key of a construction stands for, and which of several, 0 where there is but one.

    >>> drawn("dart 2 tip")
    (<Drawn.DART_TIP: 'dart tip'>, 2)

    Raises:
        ValueError: nothing has this key.
    """
    found = _NUMBER.search(key)
    return Drawn(_NUMBER.sub("", key)), int(found[1]) if found else 0


DRAWN: dict[Drawn, str] = {it: it.value for it in Drawn} | {
    Drawn.DART_MIDDLE: "dart {number} middle",
    Drawn.DART_TIP: "dart {number} tip",
    Drawn.DART_INNER_LEG: "dart {number} inner leg",
    Drawn.DART_OUTER_LEG: "dart {number} outer leg",
    Drawn.DART: "dart {number}",
    Drawn.WAIST: "waist {number}",
}
"""`{number}` stands where a panel has several."""


def drawn_name(it: Drawn, number: int = 0) -> str:
    """Return what a point, line or level is called in print, with its number where there are several."""
    return DRAWN[it].format(number=number)
