"""Marks the lengths that a student measured on a draft: which are right, and where the first mistake lies.

A length is compared with the one that the step gives, then with what the step's formula gives with the
student's own earlier lengths put in: what is right by those follows from an earlier mistake.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from enum import Enum

from drafting.base.formula import Length
from drafting.block.point_names import Drawn
from drafting.lesson.hand_draft import FLOOR, HandDraft, How, Instruction
from drafting.lesson.words import Portion

COUNT = 20
"""How many lines a marking sheet asks for."""
LINES: tuple[tuple[Drawn, Portion], ...] = (
    (Drawn.HIP_AT_SIDE, Portion.WHOLE),
    (Drawn.FORK_LEVEL, Portion.WHOLE),
    (Drawn.CENTRE_PLUMB, Portion.WHOLE),
    (Drawn.CENTRE_AT_WAIST, Portion.WHOLE),
    (Drawn.CREASE, Portion.WHOLE),
    (Drawn.KNEE_AT_INSEAM, Portion.WHOLE),
    (Drawn.HEM_AT_INSEAM, Portion.WHOLE),
    (Drawn.FORK, Portion.WHOLE),
    (Drawn.DART_TIP, Portion.WHOLE),
    (Drawn.CROTCH_SEAM, Portion.CURVED),
    (Drawn.INSEAM, Portion.CURVED),
    (Drawn.CURVE_START, Portion.WHOLE),
    (Drawn.SIDE_PLUMB, Portion.WHOLE),
    (Drawn.SIDE_AT_WAIST, Portion.WHOLE),
    (Drawn.CREASE_AT_KNEE, Portion.WHOLE),
    (Drawn.HEM, Portion.WHOLE),
    (Drawn.WAIST, Portion.WHOLE),
)
"""The steps whose lengths tell most of a draft, the most telling first; taken of front and back in turn."""
ONE_OF_SEVERAL = frozenset({Drawn.DART_TIP})
"""Where a panel has several, the first alone is asked for."""
TOO_SHORT = 6.0
"""A line shorter than this is not worth measuring, mm (common practice, no source)."""
DRAWN, READ, CURVED = 1.0, 0.5, 2.0
"""Full size, a line is drawn to 1 mm and a ruler read to 0.5 mm on the paper; a tape held along a curve
misses twice as much (common practice, no source)."""


class Judgement(Enum):
    """What a measured length is."""

    RIGHT = "right"
    FOLLOWS = "follows from an earlier mistake"
    WRONG = "wrong"


@dataclass(frozen=True)
class Marked:
    """One measured length.

    Attributes:
        step: The step that draws the line.
        length: What the student measured, mm.
        tolerance: What it may miss, mm.
        mark: The verdict.
        because: Of a length that follows, the label of the earliest wrong step it depends on.
        slip: What may have been done instead of the formula; empty where nothing plain gives this length.
    """

    step: Instruction
    length: float
    tolerance: float
    mark: Judgement
    because: str = ""
    slip: tuple[str, Length] | None = None

    @property
    def miss(self) -> float:
        """How much too long it is, mm."""
        return self.length - self.step.result


def tolerance(step: Instruction, scale: float) -> float:
    """Return what a length may miss, mm full size, on a draft of which 1 mm stands for `scale` mm."""
    return (DRAWN + READ * scale) * (CURVED if step.how is How.CURVE else 1.0)


def asked_for(drafts: Iterable[HandDraft]) -> tuple[Instruction, ...]:
    """Return the twenty lines to be measured, in the order of the draft; fewer where too few are long."""
    steps = [step for draft in drafts for step in draft.instructions]
    chosen: list[Instruction] = []
    for line in LINES:
        chosen += [step for step in steps if _is(step, line) and step.result >= TOO_SHORT]
    first = {step.label for step in chosen[:COUNT]}
    return tuple(step for step in steps if step.label in first)


def _is(step: Instruction, line: tuple[Drawn, Portion]) -> bool:
    about = step.about
    if (about.it, about.portion) != line:
        return False
    return about.it not in ONE_OF_SEVERAL or about.number == 1


def mark_lengths(
    drafts: Iterable[HandDraft], lengths: Mapping[str, float], scale: float
) -> tuple[Marked, ...]:
    """Return the verdict on each measured length (mm, by label), in the order of the draft.

    Raises:
        KeyError: a label that no step has.
    """
    steps = {step.label: step for draft in drafts for step in draft.instructions}
    measured = {steps[label].label: mm for label, mm in lengths.items()}
    marker = _Marker(_Sources(steps), _own_numbers(steps, measured), scale)
    for label, step in steps.items():
        if label in measured:
            marker.mark(step, measured[label])
    return tuple(marker.marked)


def _own_numbers(steps: Mapping[str, Instruction], measured: Mapping[str, float]) -> dict[Length, float]:
    """Return what a student measured of the lengths that later formulas go by."""
    drawn = ((steps[label].length, mm) for label, mm in measured.items())
    return {length: mm for length, mm in drawn if length and length.name}


@dataclass
class _Marker:
    """Marks a draft step by step.

    Attributes:
        sources: Which steps a length depends on.
        own: The student's own numbers, mm.
        scale: How many mm full size 1 mm of the paper stands for.
        marked: The verdicts so far, in the order of the draft.
    """

    sources: _Sources
    own: Mapping[Length, float]
    scale: float
    marked: list[Marked] = field(default_factory=list)

    def mark(self, step: Instruction, length: float) -> None:
        """Add the verdict on a length of `length` mm."""
        self.marked.append(self._verdict(step, length, tolerance(step, self.scale)))

    def _verdict(self, step: Instruction, length: float, allowed: float) -> Marked:
        if abs(length - step.result) <= allowed:
            return Marked(step, length, allowed, Judgement.RIGHT)
        before = self._mistake_before(step)
        if before and self._right_by_own(step, length, allowed):
            return Marked(step, length, allowed, Judgement.FOLLOWS, because=before.step.label)
        slip = _slip(step.length, length, allowed) if step.length else None
        return Marked(step, length, allowed, Judgement.WRONG, slip=slip)

    def _mistake_before(self, step: Instruction) -> Marked | None:
        """Return the earliest mistake that a step depends on, or what follows from one."""
        sources = self.sources.of(step.label)
        off = [m for m in self.marked if m.step.label in sources and m.mark is not Judgement.RIGHT]
        return next((m for m in off if m.mark is Judgement.WRONG), off[0] if off else None)

    def _right_by_own(self, step: Instruction, length: float, allowed: float) -> bool:
        """Return whether a length is that of the student's own numbers, as far as a formula tells."""
        if step.length is None:
            return True
        earlier = {other: mm for other, mm in self.own.items() if other is not step.length}
        return abs(length - _reckoned(step.length, earlier)) <= allowed


class _Sources:
    """Which steps a length depends on."""

    def __init__(self, steps: Mapping[str, Instruction]) -> None:
        self._steps = steps
        self._by_length = {
            step.length: label
            for label, step in steps.items()
            if step.length and step.length.name and step.length.parts
        }
        self._known: dict[str, frozenset[str]] = {}

    def of(self, label: str) -> frozenset[str]:
        """Return the labels of all steps that move the length of this one."""
        if label not in self._known:
            self._known[label] = frozenset(self._find(self._steps[label]))
        return self._known[label]

    def _find(self, step: Instruction) -> Iterator[str]:
        if step.how in (How.STRAIGHT, How.CURVE):
            for start in step.start:
                yield from self._place(start)
        for length in step.length.inner() if step.length else ():
            source = self._by_length.get(length)
            if source and source != step.label:
                yield source
                yield from self.of(source)

    def _place(self, label: str) -> Iterator[str]:
        """Yield the steps that move a point."""
        if label == FLOOR:
            return
        yield label
        yield from self.of(label)
        step = self._steps[label]
        if step.how not in (How.STRAIGHT, How.CURVE):
            for start in step.start:
                yield from self._place(start)


def _reckoned(length: Length, given: Mapping[Length, float]) -> float:
    """Return a length with some of its parts replaced, mm."""
    if length in given:
        return given[length]
    if not length.sign:
        return length.mm
    values = [_reckoned(part, given) for part in length.parts if isinstance(part, Length)]
    if length.sign == "largest":
        return max(values)
    if len(values) == 2:
        return values[0] + values[1] if length.sign == "+" else values[0] - values[1]
    before = length.parts[0]
    assert isinstance(before, Length)
    return values[0] * (length.mm / before.mm) if before.mm else length.mm


def _slip(length: Length, found: float, allowed: float) -> tuple[str, Length] | None:
    """Return the plainest slip that gives the length that was found: what was done, and with what part."""
    fits = [
        (abs(mm - found), words, part) for words, part, mm in _slips(length) if abs(mm - found) <= allowed
    ]
    if not fits or math.isclose(length.mm, 0):
        return None
    _, words, part = min(fits, key=lambda fit: fit[0])
    return words, part


def _slips(length: Length) -> Iterator[tuple[str, Length, float]]:
    """Yield slips of the pencil: what was done, the part it was done to, and what comes out, mm."""
    if length.sign in ("+", "−"):
        first, second = length.parts
        assert isinstance(first, Length) and isinstance(second, Length)
        turn = 1 if length.sign == "+" else -1
        yield "left out", second, first.mm
        yield (
            ("taken away instead of added" if turn > 0 else "added instead of taken away"),
            second,
            (first.mm - turn * second.mm),
        )
        for words, part, mm in _slips(first):
            yield words, part, mm + turn * second.mm
    elif length.sign in ("×", "÷"):
        first = length.parts[0]
        assert isinstance(first, Length)
        yield "not divided" if length.sign == "÷" else "not multiplied", first, first.mm
        ratio = length.mm / first.mm if first.mm else 0.0
        yield "divided or multiplied twice", first, length.mm * ratio
        for words, part, mm in _slips(first):
            yield words, part, mm * ratio
