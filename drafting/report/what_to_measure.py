"""Which further measurement would narrow the fit most, and by how much."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from drafting.base.errors import Severity
from drafting.base.findings import Finding
from drafting.block.block import Block
from drafting.body.body import Origin
from drafting.body.measurement_table import MEASUREMENTS
from drafting.report.fit import girth_lines
from drafting.report.levels import GirthLevel


@dataclass(frozen=True)
class Doubt:
    """What not knowing a measurement leaves open.

    Attributes:
        key: The measurement.
        by: How far the pattern misses the body for want of it, mm (root mean square over many people).
        why: Where that figure comes from.
    """

    key: str
    by: float
    why: str


# Root mean square miss of the draft's own construction on every fifteenth person of the 2012 US Army survey
# (Natick TR-15/007), this draft measured against them: crotch seam mean -1 sd 29, knee level -14 sd 12, hip
# level 8 sd 21.
_BY_CONSTRUCTION = {"total_crotch_length": 29.0, "hip_height": 23.0, "knee_height": 18.0}

_GIRTHS = {
    GirthLevel.THIGH: "thigh_girth",
    GirthLevel.KNEE: "knee_girth",
    GirthLevel.CALF: "calf_girth",
    GirthLevel.HEM: "heel_girth",
}

_OF_HIP = {
    "thigh_girth": (0.610, 21.5),
    "knee_girth": (0.375, 18.7),
    "heel_girth": (0.327, 25.7),
}
"""A girth that is always reported, measured or not: its mean as a share of the hip girth and the spread of
single persons about that, mm (2012 US Army survey, Natick TR-15/007; the knee of Heinz et al. 2003)."""

_FELT = 2.0
"""Less missing at a girth is not worth asking for a measurement, mm (common practice, no source)."""


def doubts(block: Block) -> tuple[Doubt, ...]:
    """Return what is left open for want of a measurement, the largest first; empty when all is measured."""
    found = [*_lengths(block), *_girths(block)]
    return tuple(sorted(found, key=lambda doubt: -doubt.by))


def _lengths(block: Block) -> Iterator[Doubt]:
    for key, miss in _BY_CONSTRUCTION.items():
        value = block.body.values.get(key)
        guess = block.body.crotch_guess if key == "total_crotch_length" else None
        if value is None and guess:
            miss = math.hypot(block.crotch_length - guess.mean - block.ease.crotch, guess.spread)
        if value is None or value.origin is Origin.CONSTRUCTION:
            yield Doubt(key, miss, "it follows from the proportions of the draft")
        elif value.origin is Origin.ESTIMATED:
            yield Doubt(key, value.spread, f"it is estimated from the {value.source}")


def _girths(block: Block) -> Iterator[Doubt]:
    """A girth that is not measured is in doubt as far as the pattern is short for such people."""
    lines = {line.level: line for line in girth_lines(block) if line.side is None}
    for level, key in _GIRTHS.items():
        line = lines.get(level)
        if line is None:
            continue
        if line.body is None:
            share, spread = _OF_HIP[key]
            body, why = share * block.body["hip_girth"].mm, "it is not known"
        elif line.origin is Origin.ESTIMATED:
            body, spread, why = line.body, line.spread, "it is estimated"
        else:
            continue
        by = mean_shortage(line.pattern - line.least_ease - body, spread)
        if by >= _FELT:
            yield Doubt(key, by, f"{why}, and a larger body would find the pattern short")


def mean_shortage(room: float, spread: float) -> float:
    """Return the root mean square of what bodies lack, the mean of which has `room` mm left.

    Bodies are normally distributed by `spread`, mm; who has room lacks nothing. A negative room is a lack.
    """
    at = room / spread
    beyond = math.erfc(at / math.sqrt(2)) / 2
    density = math.exp(-at * at / 2) / math.sqrt(2 * math.pi)
    return spread * math.sqrt(max((1 + at * at) * beyond - at * density, 0.0))


def advice(block: Block) -> tuple[Finding, ...]:
    """Return the one measurement to take next as a note; nothing when all that matters is measured."""
    open_ones = doubts(block)
    if not open_ones:
        return ()
    worst = open_ones[0]
    term = MEASUREMENTS[worst.key].term
    text = f"To narrow the fit most, measure the {term} next: {worst.why}, and may be off by {{0}}."
    return (Finding("measure-next", Severity.NOTE, term, text, (worst.by,), worst.by, 0.0),)
