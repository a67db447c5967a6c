"""The worksheet's tables as text: measurements, further numbers, and the steps, in the wearer's unit."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.base.formula import Reason
from drafting.base.units import Unit, exact
from drafting.block.block import Block
from drafting.block.step_record import Stage
from drafting.body.body import Origin
from drafting.body.measurements import MEASUREMENTS
from drafting.lesson.hand_draft import AXES, HandDraft, How, Instruction
from outputs.fit.fit_words import bare, mark_of

GROUNDS: dict[Reason, str] = {
    Reason.CROTCH_SEAM: "by trial: the crotch seam is the crotch length and its ease",
    Reason.USUAL_RANGE: "so that it stays what a cutter usually draws for this hip",
    Reason.CROTCH_AND_THIGH: "by trial: the crotch seam is the crotch length and its ease, and the thigh has "
    "its ease",
    Reason.FRONT_WAIST: "drop of the front and the fit, so that the waist line bends one way",
    Reason.BACK_WAIST: "raise of the back and the fit, so that the waist line bends one way",
    Reason.INSEAM: "by trial: the back inseam is as much shorter as it is stretched on",
    Reason.SIDE_SEAM: "by trial: front and back side seam are equally long",
    Reason.CALF: "by trial: the straight leg clears the calf",
    Reason.SUPPRESSION: "by trial: the sewn waist is the waist girth and its ease",
    Reason.TOILE: "as the cutter's move gives it for what was seen on the toile",
    Reason.SIDE_OF_BODY: "what this side of the body has more than the whole body's measurement",
    Reason.EASE: "chosen: room for the body",
}
STRAIGHT_WAY = "measured on the drawing, between two points that stand"


@dataclass(frozen=True)
class Writing:
    """How lengths are written for one wearer."""

    unit: Unit

    def rounded(self, mm: float) -> str:
        """Return a length to 1 mm or 1/16 in, without its unit."""
        return bare(mm, self.unit).replace("-", "−")

    @property
    def unit_in_words(self) -> str:
        """The unit as a sentence has it: "in in" is hard to read."""
        return {Unit.MM: "millimetres", Unit.CM: "centimetres", Unit.INCH: "inches"}[self.unit]

    def exact(self, mm: float) -> str:
        """Return a length to 0.01 mm, without its unit."""
        return exact(mm, self.unit)


def measurement_rows(block: Block, writing: Writing, *, blank: bool) -> Iterator[tuple[str, ...]]:
    """Yield name, value, exact value, origin, formula and numbers of every length of the body."""
    for key, value in block.body.values.items():
        length = value.length
        spec = MEASUREMENTS.get(key)
        name = length.name or (spec.term if spec else key.replace("_", " "))
        given = not length.parts
        shown = given or not blank
        mark = mark_of(value, writing.unit)
        if value.origin is Origin.MEASURED and length.parts:
            mark = Origin.DERIVED.value
        yield (
            name,
            writing.rounded(length.mm) if shown else "",
            writing.exact(length.mm) if shown else "",
            mark,
            "" if given else length.formula(writing.exact),
            "" if given or blank else length.numbers(writing.exact),
        )


def further_rows(
    block: Block, draft: HandDraft, writing: Writing, *, blank: bool
) -> Iterator[tuple[str, ...]]:
    """Yield name, value, exact value and ground of every other number that the formulas name."""
    # Told already is what stands in print under the same name.
    known = {value.length.name for value in block.body.values.values()}
    lengths = [i.length for i in draft.instructions if i.length]
    known |= {length.name for length in lengths if length.parts}
    told: set[tuple[str, str]] = set()
    for length in (leaf for top in lengths for leaf in top.inner() if leaf.name):
        entry = length.name, writing.exact(length.mm)
        if length.name in known or entry in told:
            continue
        told.add(entry)
        if length.parts:
            ground, shown = length.formula(writing.exact), not blank
        else:
            ground, shown = GROUNDS[length.reason] if length.reason else STRAIGHT_WAY, True
        yield (
            length.name,
            writing.rounded(length.mm) if shown else "",
            entry[1] if shown else "",
            ground,
        )


def stage_title(stage: Stage, panel: str) -> str:
    """Return the heading over the steps of a stage."""
    if stage is Stage.PANEL:
        return f"The {panel}: points"
    return {
        Stage.FRAME: "Frame and levels",
        Stage.LEG: "The legs",
        Stage.CURVE: "The curves",
        Stage.WAIST: "Waist and dart",
    }[stage]


def step_rows(draft: HandDraft, block: Block, writing: Writing, *, blank: bool) -> Iterator[tuple[str, ...]]:
    """Yield the rows of the steps, each stage under its heading."""
    body = {value.length.name for value in block.body.values.values()}
    heading = ""
    for step in draft.instructions:
        title = stage_title(step.stage, step.panel)
        if title != heading:
            heading = title
            yield (title,)
        yield (
            step.label,
            _draws(step, body),
            start_text(step),
            way_text(step, writing),
            _formula(step, writing),
            "" if blank or not step.length else step.length.numbers(writing.exact),
            "" if blank else writing.rounded(step.result),
            "" if blank else writing.exact(step.result),
        )


def _draws(step: Instruction, body: set[str]) -> str:
    name = f"{step.panel} {step.name}" if step.panel else step.name
    length = step.length
    if length and length.parts and length.name and length.name not in body:
        return f"{name} = {length.name}"
    return name


def start_text(step: Instruction) -> str:
    """Return the labels that the step starts from: a point, or both ends of a line as "12–6"."""
    line = step.how in (How.HEIGHT, How.STRAIGHT, How.CURVE)
    return "–".join(step.start[: 2 if line else 1])


def line_ends(step: Instruction) -> str:
    """Return the labels between which the length of a step is measured."""
    if step.how is How.HEIGHT:
        return f"{step.start[2]} up to {step.label}"
    return "–".join(step.start[:2] if step.curve else (step.start[0], step.label))


def way_text(step: Instruction, writing: Writing) -> str:
    """Return the direction first, then why; the offsets of a point with their numbers."""
    if step.how is How.STRAIGHT:
        return "straight"
    if step.how is How.CURVE:
        return f"curve, guides {step.start[2]} and {step.start[3]}; {step.way}"
    if step.how is How.HEIGHT:
        return f"on this line, so high above {step.start[2]}"
    if step.offset:
        across = "right" if step.offset.x >= 0 else "left"
        along = "up" if step.offset.y >= 0 else "down"
        sizes = writing.exact(abs(step.offset.x)), writing.exact(abs(step.offset.y))
        return f"{across} {sizes[0]}, {along} {sizes[1]}"
    if step.direction is None:
        return f"up; {step.way}"
    axis = AXES.get(step.direction)
    if axis:
        return step.way if step.way == f"plumb {axis}" else f"{axis}; {step.way}"
    if len(step.start) == 2:
        return f"towards {step.start[1]}; {step.way}"
    return f"square {'up' if step.direction.y > 0 else 'down'} from the line {'–'.join(step.start[1:])}"


def _formula(step: Instruction, writing: Writing) -> str:
    if step.length:
        return step.length.formula(writing.exact)
    if step.share:
        return f"{step.share:.2f} of the way to the corner of the curve"
    return step.way if step.how is How.OFFSET else ""
