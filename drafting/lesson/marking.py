"""Marks the lengths that a student measured on a draft: which are right, and where the first mistake lies.

A length is compared with the one that the step gives, then with what the step's formula gives with the
student's own earlier lengths put in: what is right by those follows from an earlier mistake.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import Enum

from drafting.base.formula import Length
from drafting.lesson.hand_draft import FLOOR, HandDraft, How, Instruction

COUNT = 20
"""How many lines a marking sheet asks for."""
LINES = (
    "hip at the side", "fork level", "centre plumb", "centre at the waist", "crease", "knee at the inseam",
    "hem at the inseam", "fork", "dart 1 tip", "crotch seam, curved part", "inseam, curved part",
    "curve start", "side plumb", "side at the waist", "crease at the knee", "hem", "waist",
)  # fmt: skip
"""The steps whose lengths tell most of a draft, the most telling first; taken of front and back in turn."""
TOO_SHORT = 6.0
"""A line shorter than this is not worth measuring, mm (common practice, no source)."""
DRAWN, READ, CURVED = 1.0, 0.5, 2.0
"""Full size, a line is drawn to 1 mm and a ruler read to 0.5 mm on the paper; a tape held along a curve
misses twice as much (common practice, no source)."""


class Mark(Enum):
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
    mark: Mark
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
    for name in LINES:
        chosen += [s for s in steps if s.name.rstrip(" 123456789") == name and s.result >= TOO_SHORT]
    first = {step.label for step in chosen[:COUNT]}
    return tuple(step for step in steps if step.label in first)


def mark_lengths(
    drafts: Iterable[HandDraft], lengths: Mapping[str, float], scale: float
) -> tuple[Marked, ...]:
    """Return the verdict on each measured length (mm, by label), in the order of the draft.

    Raises:
        KeyError: a label that no step has.
    """
    steps = {step.label: step for draft in drafts for step in draft.instructions}
    sources = _Sources(steps)
    given: dict[str, float] = {}
    for label, mm in lengths.items():
        reckoned = steps[label].length
        if reckoned and reckoned.name:
            given[reckoned.name] = mm
    marked: dict[str, Marked] = {}
    for label, step in steps.items():
        if label not in lengths:
            continue
        length, allowed = lengths[label], tolerance(step, scale)
        if abs(length - step.result) <= allowed:
            marked[label] = Marked(step, length, allowed, Mark.RIGHT)
            continue
        earlier = [
            m for m in marked.values() if m.step.label in sources.of(label) and m.mark is not Mark.RIGHT
        ]
        own = {name: mm for name, mm in given.items() if not step.length or name != step.length.name}
        by_own = _reckoned(step.length, own) if step.length else None
        if earlier and (by_own is None or abs(length - by_own) <= allowed):
            first = next((m for m in earlier if m.mark is Mark.WRONG), earlier[0])
            marked[label] = Marked(step, length, allowed, Mark.FOLLOWS, first.step.label)
        else:
            slip = _slip(step.length, length, allowed) if step.length else None
            marked[label] = Marked(step, length, allowed, Mark.WRONG, slip=slip)
    return tuple(marked.values())


class _Sources:
    """Which steps a length depends on."""

    def __init__(self, steps: Mapping[str, Instruction]) -> None:
        self._steps = steps
        self._by_name = {
            s.length.name: label
            for label, s in steps.items()
            if s.length and s.length.name and s.length.parts
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
        for name in step.length.names() if step.length else ():
            source = self._by_name.get(name)
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


def _reckoned(length: Length, given: Mapping[str, float]) -> float:
    """Return a length with some of its named parts replaced, mm."""
    if length.name in given:
        return given[length.name]
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
