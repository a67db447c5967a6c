"""What a slip of the tape does to the block: each measurement a little more and a little less."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
import shapely
from shapely.geometry import LinearRing

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.block.block import Block, draft_block
from drafting.block.waist_line import BlockPanel
from drafting.body.checks import Wording, refuse_meaningless
from drafting.body.measurements import Measurements
from drafting.report.moves import Amounts, BlockLength, block_lengths, halves_of

SLIP = 10.0
"""How far two careful readings of one length may well lie apart, mm (common practice, no source)."""

LEAST = 0.05
"""A smaller change is none, mm: it vanishes in tenths of a millimetre."""

_SAG, _STEP = 0.05, 10.0
"""Outlines are compared by points at most _STEP mm apart on chords within _SAG mm of them."""


@dataclass(frozen=True)
class Effect:
    """What becomes of the block when one measurement is changed.

    Attributes:
        by: Added to the measurement, mm; negative when it is less.
        outline: How far a point of the outline of front or back comes to lie from the old outline at most,
            mm; both stand on the same floor and plumb line.
        lengths: What is added to each length of the block, mm; where the sides differ, on the
            side that changes more.
        refusals: Why there is no such block; then `outline` is 0 and `lengths` is empty.
    """

    by: float
    outline: float
    lengths: Mapping[BlockLength, float]
    refusals: tuple[Problem, ...] = ()


@dataclass(frozen=True)
class TapeError:
    """What one measurement does, a little more and a little less; `key` may be "left.thigh_girth"."""

    key: str
    more: Effect
    less: Effect

    @property
    def idle(self) -> bool:
        """Whether neither moves anything by as much as a line's edge, and neither is refused."""
        return not any(
            effect.refusals or max(effect.outline, *map(abs, effect.lengths.values())) >= LEAST
            for effect in (self.more, self.less)
        )

    @property
    def outline(self) -> float:
        """The larger of the two moves of the outline, mm."""
        return max(self.more.outline, self.less.outline)


def tape_errors(
    measurements: Measurements,
    *,
    draft: Callable[[Measurements], Block] = draft_block,
    slip: float = SLIP,
    wording: Wording | None = None,
) -> tuple[TapeError, ...]:
    """Return what each given measurement does to the block, the one that moves it most first.

    Args:
        measurements: In millimetres.
        draft: Drafts the block; `draft_block` with ease, proportions and cut of the leg as they shall stay.
        slip: What is added and taken away, mm.
        wording: How refusals speak of lengths; in millimetres when None.

    Raises:
        DraftRefused: there is no draft of the measurements as they are.
    """
    block = draft(measurements)

    def effect(key: str, by: float) -> Effect:
        changed = _changed(measurements, key, by)
        try:
            refuse_meaningless(changed, wording=wording)
            return _effect(block, draft(changed), by)
        except DraftRefused as refused:
            reasons = (problem for problem in refused.problems if problem.severity is Severity.REFUSAL)
            return Effect(by, 0.0, {}, tuple(reasons))

    found = [TapeError(key, effect(key, slip), effect(key, -slip)) for key in measurements.given()]
    return tuple(sorted(found, key=lambda error: -error.outline))


def _effect(block: Block, other: Block, by: float) -> Effect:
    old, new = block_lengths(block), block_lengths(other)
    return Effect(by, max(_moves(block, other)), {name: _largest(new[name] - old[name]) for name in old})


def _changed(measurements: Measurements, key: str, by: float) -> Measurements:
    side, _, name = key.rpartition(".")
    holder = getattr(measurements, side) if side else measurements
    change: dict[str, Any] = {name: getattr(holder, name) + by}
    if side:
        change = {side: replace(holder, **change)}
    return replace(measurements, **change)


def _largest(changes: Amounts) -> float:
    return float(changes[np.abs(changes).argmax()])


def _moves(block: Block, other: Block) -> Iterator[float]:
    """Yield how far each panel's outline moves; one mirrored pair stands for both sides."""
    count = max(len(block.halves), len(other.halves))
    for old, new in zip(halves_of(block, count), halves_of(other, count), strict=True):
        for panel in ("front", "back"):
            yield float(
                shapely.hausdorff_distance(_outline(getattr(old, panel)), _outline(getattr(new, panel)))
            )


def _outline(panel: BlockPanel) -> LinearRing:
    """Return the panel's outline, straight over the mouths of the darts."""
    edges = (panel.lower.crotch, *panel.waist, panel.side, panel.lower.inseam)
    ring = LinearRing(np.vstack([edge.flatten(_SAG) for edge in edges]))
    return shapely.segmentize(ring, _STEP)
