"""What the corrections of a fitting did: lengths before and after, and a note for each of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.base.errors import Severity
from drafting.base.findings import Finding
from drafting.block.block import Block, Half
from drafting.body.corrections import CORRECTIONS
from drafting.body.words import of_side

CHANGED_LENGTHS = "corrected-lengths"
"""Code of the finding that tells all lengths at once."""

LEAST_CHANGE = 0.5
"""A smaller change is none, mm: the needle does not see it (own judgement)."""


@dataclass(frozen=True)
class LengthChange:
    """One length of the block on the toile and after the corrections, mm."""

    name: str
    before: float
    after: float

    @property
    def by(self) -> float:
        """What was added."""
        return self.after - self.before


def length_changes(block: Block) -> tuple[LengthChange, ...]:
    """Return every length that a cutter would lay the tape on, changed or not; nothing for a toile itself."""
    if block.toile is None:
        return ()
    before, after = dict(_lengths(block.toile)), dict(_lengths(block))
    return tuple(LengthChange(name, before[name], after[name]) for name in before)


def correction_findings(block: Block) -> Iterator[Finding]:
    """Yield what was corrected, how, and what became of the crotch seam's target."""
    for key, amount in block.corrections.items():
        correction = CORRECTIONS[key]
        text = f"{correction.term[0].upper()}{correction.term[1:]} by {{0}}: {correction.done}."
        yield Finding("corrected", Severity.NOTE, correction.term, text, (amount,), amount)
    changed = [change for change in length_changes(block) if abs(change.by) >= LEAST_CHANGE]
    if changed:
        words = [f"{c.name} {{{2 * n}}} → {{{2 * n + 1}}}" for n, c in enumerate(changed)]
        amounts = tuple(mm for c in changed for mm in (c.before, c.after))
        text = f"On the toile → now: {'; '.join(words)}."
        yield Finding(CHANGED_LENGTHS, Severity.NOTE, "fitting", text, amounts)
    if block.toile and block.body.get("total_crotch_length"):
        by = block.crotch_length - block.toile.crotch_length
        if abs(by) >= LEAST_CHANGE:
            text = (
                "The crotch seam is no longer held to the measured crotch length: it stays as fitted on the "
                f"toile, and what was seen makes it {{0}} {'longer' if by > 0 else 'shorter'}."
            )
            yield Finding("crotch-corrected", Severity.NOTE, "crotch seam", text, (abs(by),), by)
    if _below_the_hem(block):
        text = "What is let in or laid over at the knee and calf lies below the hem and changes nothing."
        yield Finding("correction-below-hem", Severity.WARNING, "fitting", text)


_BELOW_KNEE = {key for key, c in CORRECTIONS.items() if c.change in ("at_knee", "at_calf", "knees")}


def _below_the_hem(block: Block) -> bool:
    return block.leg.short and not _BELOW_KNEE.isdisjoint(block.corrections)


def _lengths(block: Block) -> Iterator[tuple[str, float]]:
    yield "waist", block.waist_girth
    yield "hip", block.hip_girth
    yield "thigh", block.thigh_girth
    yield "knee", block.leg_girth(max(block.leg.knee_height.mm, block.leg.hem_height.mm))
    yield "hem", block.leg_girth(block.leg.hem_height.mm)
    yield "front crotch seam", block.front.lower.crotch.length
    yield "back crotch seam", block.back.lower.crotch.length
    for half in block.halves:
        yield from _seams(half)


def _seams(half: Half) -> Iterator[tuple[str, float]]:
    yield of_side("front inseam", half.side), half.front.lower.inseam.length
    yield of_side("back inseam", half.side), half.back.lower.inseam.length
    yield of_side("front side seam", half.side), half.front.side.length
    yield of_side("back side seam", half.side), half.back.side.length
