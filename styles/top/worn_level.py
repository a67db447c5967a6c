"""The body where the jeans end at the top: its girth, known or estimated, and whether the band goes round."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from drafting.base.errors import Severity
from drafting.base.findings import Finding
from drafting.base.tolerance import SEAM
from drafting.body.body import Body

_SPREAD_MIDWAY = 45.0
"""One standard deviation, mm, of a girth between waist and hip about the mean of the two: 51 in women, 37 in
men for the girth at the navel (507 bodies, Heinz et al., Journal of Statistics Education 11(2), 2003)."""

WIDER_ABOVE = 0.5
"""How much the girth grows, mm, for each mm above the waist; its spread is as much again (from memory)."""


@dataclass(frozen=True)
class WornGirth:
    """A girth of the body, mm, with one standard deviation of what was guessed; 0 where it was measured."""

    mm: float
    spread: float


def girth_at(body: Body, y: float) -> WornGirth:
    """Return the girth at the height `y` mm above the floor, from hip level to above the waist.

    Between two levels that are known it runs straight, and the spread is largest in their middle. Below hip
    level the hip girth is returned as it is.
    """
    waist = body["waist_height"].mm
    if y > waist:
        above = WIDER_ABOVE * (y - waist)
        return WornGirth(body["waist_girth"].mm + above, above)
    levels = [(waist, body["waist_girth"].mm)]
    if top_hip := body.get("top_hip_girth"):
        levels.append((body["top_hip_height"].mm, top_hip.mm))
    levels.append((body["hip_height"].mm, body["hip_girth"].mm))
    whole = levels[0][0] - levels[-1][0]
    for (high, upper), (low, lower) in pairwise(levels):
        if low <= y <= high:
            share = (high - y) / (high - low)
            spread = _SPREAD_MIDWAY * 4 * share * (1 - share) * (high - low) / whole
            return WornGirth(upper + (lower - upper) * share, spread)
    return WornGirth(levels[-1][1], 0.0)


def check_worn_girth(body: Body, y: float, band: float) -> tuple[Finding, ...]:
    """Return what there is to say about a waistband of the closed length `band` mm at the height `y`.

    A warning where it is shorter than the girth there; a note above the waist, where the girth is only
    guessed.
    """
    girth = girth_at(body, y)
    if band >= girth.mm - SEAM:
        if y <= body["waist_height"].mm:
            return ()
        text = (
            "The jeans end above the level where the waist was measured; the body is taken to measure {0} "
            "there, give or take {1}: measure it there."
        )
        return (Finding("worn-girth-guessed", Severity.NOTE, "waistband", text, (girth.mm, girth.spread)),)
    text = "The waistband closes at {0}, but the body measures {1} where it is worn"
    text += ", give or take {2}: measure it there." if girth.spread else "."
    amounts = (band, girth.mm, girth.spread)
    return (Finding("band-short", Severity.WARNING, "waistband", text, amounts, band, girth.mm),)
