"""The draft as instructions for ruler, square and pencil: numbered, each from what already stands there.

Levels first, then front and back, legs, curves, waist and dart. A curve is given by its ends and one guide
point for each: it leaves an end towards its guide, and its middle is found by halving: the three lines end,
guide, guide, end are halved, the two lines between those halves are halved, and the line between these too.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import Enum
from string import ascii_lowercase

from drafting.base.formula import Length
from drafting.base.tolerance import JOIN
from drafting.block.block import Half
from drafting.block.point_names import Drawn
from drafting.block.step_record import DOWN, LEFT, RIGHT, UP, Stage, Step
from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector, meeting
from drafting.lesson.words import About, Portion

FLOOR = "floor"
AXES = {UP: "up", DOWN: "down", LEFT: "left", RIGHT: "right"}
"""Directions along the edges of the paper, in words."""


class How(Enum):
    """How an instruction is carried out, from the labels in its `start`."""

    LEVEL = "a level line, `length` above the floor"
    RULED = "the point `length` along `direction` from the first"
    HEIGHT = "the point on the line from the first to the second, `length` above the third"
    OFFSET = "the point that lies `offset` across and up from the first"
    STRAIGHT = "the straight line from the first to the second"
    CURVE = "the curve between the first two, its guides the third and fourth"


@dataclass(frozen=True, kw_only=True)
class Instruction:
    """One step as a person carries it out; lengths in mm.

    Attributes:
        label: Number of the step and of its point; a guide has the number of its curve and a letter.
        stage: What it is part of.
        panel: "front" or "back", empty for the levels that both share.
        about: What it draws, or which portion of that.
        how: How, see `How`.
        start: Labels of the points and levels that it uses.
        way: Why it goes there, in words.
        result: The length that a ruler finds: from the first point to the new one, along a line, or a height.
        length: The length with its formula, None for lines and offsets.
        direction: Of a ruled point, a unit vector.
        offset: Of an offset, to the right and up.
        at: The new point, None for levels and lines.
        curve: The new line.
        share: How far a guide lies on the way to the corner of its curve's end directions, None without one.
    """

    label: str
    stage: Stage
    panel: str
    about: About
    how: How
    start: tuple[str, ...]
    way: str
    result: float
    length: Length | None = None
    direction: Vector | None = None
    offset: Vector | None = None
    at: Point | None = None
    curve: Cubic | None = None
    share: float | None = None

    @property
    def draws(self) -> Drawn:
        """What it draws, or is a portion of."""
        return self.about.it

    @property
    def name(self) -> str:
        """What it is called in print."""
        return self.about.name


@dataclass(frozen=True)
class HandDraft:
    """Instructions for one half of the body, in order."""

    half: Half
    instructions: tuple[Instruction, ...]


def hand_draft(half: Half, *, first: int = 1) -> HandDraft:
    """Return the instructions of a half, numbered from `first`."""
    writer = _Writer(first)
    at = half.levels
    for level, length in (
        (Drawn.WAIST_LEVEL, at.waist),
        (Drawn.HIP_LEVEL, at.hip),
        (Drawn.CROTCH_LEVEL, at.crotch),
        (Drawn.KNEE_LEVEL, at.knee),
        (Drawn.HEM_LEVEL, at.hem),
    ):
        writer.level(level, length)
    for step in _in_stages((*half.front.steps, *half.back.steps)):
        writer.step(step)
    return HandDraft(half, tuple(writer.written))


def _in_stages(steps: tuple[Step, ...]) -> list[Step]:
    """Return the steps stage by stage; a step that starts from a later stage's point joins that stage."""
    order = list(Stage)
    stages: dict[tuple[str, str], int] = {}
    placed: list[tuple[int, bool, Step]] = []
    for step in steps:
        used = (stages.get((step.panel, name), 0) for name in step.start)
        stage = max(order.index(step.stage), *used)
        stages[step.panel, step.name] = stage
        placed.append((stage, step.panel == "back", replace(step, stage=order[stage])))
    return [step for _, _, step in sorted(placed, key=lambda entry: entry[:2])]


class _Writer:
    """Turns steps into instructions, giving each its number."""

    def __init__(self, first: int) -> None:
        self.written: list[Instruction] = []
        self._number = first
        self._labels: dict[tuple[str, str], str] = {("", FLOOR): FLOOR}
        self._points: dict[str, dict[str, Point]] = {"front": {}, "back": {}}
        self._drawn: set[Cubic] = set()

    def level(self, level: Drawn, length: Length) -> None:
        self._labels["", level] = label = self._next()
        self._write(
            label, None, About(level), How.LEVEL, (FLOOR,), "level, right across", length.mm, length=length
        )

    def step(self, step: Step) -> None:
        if isinstance(step.drawn, Path):
            self._line(step, step.drawn)
        else:
            self._point(step, step.drawn)

    def _point(self, step: Step, at: Point) -> None:
        start = tuple(self._label(step.panel, name) for name in step.start)
        label = self._next()
        if step.length and step.direction:
            self._write(
                label, step, About.of(step), How.RULED, start, step.way, step.length.mm,
                length=step.length, direction=step.direction, at=at,
            )  # fmt: skip
        elif step.length:
            self._write(
                label, step, About.of(step), How.HEIGHT, start, step.way, step.length.mm,
                length=step.length, at=at,
            )  # fmt: skip
        else:
            self._offset(label, step, About.of(step), start[0], at, step.way)
        self._labels[step.panel, step.name] = label
        self._points[step.panel][label] = at

    def _offset(
        self,
        label: str,
        step: Step,
        about: About,
        start: str,
        at: Point,
        way: str,
        share: float | None = None,
    ) -> None:
        offset = at - self._points[step.panel][start]
        self._write(
            label, step, about, How.OFFSET, (start,), way, offset.length, offset=offset, at=at, share=share
        )

    def _line(self, step: Step, path: Path) -> None:
        new = [curve for curve in path.curves if curve not in self._drawn]
        self._drawn.update(new)
        for curve in new:
            ends = tuple(self._end(step, end) for end in (curve.start, curve.end))
            label = self._next()
            about = _part(step, curve, path, new)
            if curve.straight:
                self._write(label, step, about, How.STRAIGHT, ends, step.way, curve.length, curve=curve)
                continue
            guides = []
            share = _share(curve)
            for letter, end, at in zip(ascii_lowercase, ends, (curve.c1, curve.c2), strict=False):
                guides.append(f"{label}{letter}")
                self._offset(guides[-1], step, About.of(step, Portion.GUIDE), end, at, "", share)
                self._points[step.panel][guides[-1]] = at
            start = (*ends, *guides)
            self._write(label, step, about, How.CURVE, start, step.way, curve.length, curve=curve)

    def _end(self, step: Step, at: Point) -> str:
        """Return the label of a drawn point at a line's end; one that does not stand yet is set first."""
        points = self._points[step.panel]
        for label, point in reversed(points.items()):
            if (point - at).length <= JOIN:
                return label
        nearest = min(points, key=lambda label: (points[label] - at).length)
        label = self._next()
        self._offset(
            label, step, About.of(step, Portion.JOINT), nearest, at, "where two parts of the line meet"
        )
        points[label] = at
        return label

    def _next(self) -> str:
        self._number += 1
        return str(self._number - 1)

    def _label(self, panel: str, name: str) -> str:
        return self._labels.get((panel, name)) or self._labels["", name]

    def _write(
        self, label: str, step: Step | None, about: About, how: How, start: tuple[str, ...], way: str,
        result: float, *, length: Length | None = None, direction: Vector | None = None,
        offset: Vector | None = None, at: Point | None = None, curve: Cubic | None = None,
        share: float | None = None,
    ) -> None:  # fmt: skip
        self.written.append(
            Instruction(
                label=label, stage=step.stage if step else Stage.FRAME, panel=step.panel if step else "",
                about=about, how=how, start=start, way=way, result=result, length=length, direction=direction,
                offset=offset, at=at, curve=curve, share=share,
            )
        )  # fmt: skip


def _part(step: Step, curve: Cubic, path: Path, new: list[Cubic]) -> About:
    """Return which part of its line a curve is."""
    if len(path.curves) == 1:
        return About.of(step)
    alike = [other for other in new if other.straight == curve.straight]
    part = alike.index(curve) + 1 if len(alike) > 1 else 0
    return About.of(step, Portion.STRAIGHT if curve.straight else Portion.CURVED, part)


def _share(curve: Cubic) -> float | None:
    """Return how far both guides lie on the way to the corner where the end directions meet, if alike."""
    leave, arrive = curve.c1 - curve.start, curve.end - curve.c2
    if min(leave.length, arrive.length) < JOIN or abs(leave.unit.cross(arrive.unit)) < JOIN:
        return None
    corner = meeting(curve.start, leave, curve.end, arrive)
    first, second = (
        guide.length / (corner - end).length for guide, end in ((leave, curve.start), (arrive, curve.end))
    )
    return first if abs(first - second) < 1e-4 and first < 1 else None
