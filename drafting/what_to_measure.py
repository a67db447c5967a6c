"""Which further measurement would narrow the fit most, and by how much."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.block import Block
from drafting.body import Origin
from drafting.findings import Finding, Level
from drafting.fit_report import GirthLine, girth_lines
from drafting.measurement_table import MEASUREMENTS


@dataclass(frozen=True)
class Doubt:
    """What not knowing a measurement leaves open.

    Attributes:
        key: The measurement.
        by: How far the pattern may miss the body for want of it, mm (root mean square, or one standard
            deviation).
        why: Where that figure comes from.
    """

    key: str
    by: float
    why: str


# Root mean square miss of the draft's own construction on every tenth person of the 2012 US Army survey
# (Natick TR-15/007), this draft measured against them: crotch seam mean -43 sd 37, knee level -13 sd 12, hip
# level 8 sd 21.
_BY_CONSTRUCTION = {"total_crotch_length": 57.0, "hip_height": 23.0, "knee_height": 18.0}

_GIRTHS = {"thigh": "thigh_girth", "knee": "knee_girth", "calf": "calf_girth", "hem": "heel_girth"}


def doubts(block: Block) -> tuple[Doubt, ...]:
    """Return what is left open for want of a measurement, the largest first; empty when all is measured."""
    found = [*_lengths(block), *_girths(block)]
    return tuple(sorted(found, key=lambda doubt: -doubt.by))


def _lengths(block: Block) -> Iterator[Doubt]:
    for key, miss in _BY_CONSTRUCTION.items():
        value = block.body.values.get(key)
        if value is None or value.origin is Origin.CONSTRUCTION:
            yield Doubt(key, miss, "it follows from the proportions of the draft")
        elif value.origin is Origin.ESTIMATED:
            yield Doubt(key, value.spread, f"it is estimated from the {value.source}")


def _girths(block: Block) -> Iterator[Doubt]:
    """A girth is in doubt as far as a body one standard deviation larger would find the pattern short."""
    lines: dict[str, GirthLine] = {line.level: line for line in girth_lines(block)}
    for level, key in _GIRTHS.items():
        line = lines.get(level)
        if line is None or line.origin is not Origin.ESTIMATED or line.body is None:
            continue
        short = line.body + line.spread + line.least_ease - line.pattern
        if short > 0:
            yield Doubt(key, short, "it is estimated, and a larger body would find the pattern short")


def advice(block: Block) -> tuple[Finding, ...]:
    """Return the one measurement to take next as a note; nothing when all that matters is measured."""
    open_ones = doubts(block)
    if not open_ones:
        return ()
    worst = open_ones[0]
    term = MEASUREMENTS[worst.key].term
    text = f"To narrow the fit most, measure the {term} next: {worst.why}, and may be off by {{0}}."
    return (Finding("measure-next", Level.NOTE, term, text, (worst.by,), worst.by, 0.0),)
