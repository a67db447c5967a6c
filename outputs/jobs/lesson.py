"""The draft as a lesson: worksheet, teacher's sheet, a student's lengths marked, systems compared."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

from drafting.block.block import Block, draft_block
from drafting.lesson.hand_draft import Instruction
from drafting.lesson.marking import Judgement, Marked, asked_for, mark_lengths
from outputs.files.text_file import TextFile
from outputs.files.writers import Writer, text_writer
from outputs.jobs.options import Sheet
from outputs.jobs.result import Result
from outputs.lesson.lengths import lengths_form, read_lengths
from outputs.lesson.marking_sheet import write_marking_sheet
from outputs.lesson.systems_sheet import write_systems
from outputs.lesson.worksheet import hand_drafts, write_worksheet
from outputs.paper.paper import Paper
from outputs.reading.measurements_file import MeasurementFile
from styles.choice.style import Style
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth


@dataclass(frozen=True, kw_only=True, eq=False)
class OfABlock(Result):
    """A sheet about a block.

    Attributes:
        block: The block.
    """

    block: Block


@dataclass(frozen=True, kw_only=True, eq=False)
class MarkedDraft(Result):
    """The verdict on a student's lengths.

    Attributes:
        marked: Every length that was given, in the order of the draft.
        missing: The steps that are asked for and have no length.
    """

    marked: tuple[Marked, ...]
    missing: tuple[Instruction, ...]

    @property
    def right(self) -> int:
        """How many lengths are right."""
        return sum(m.mark is Judgement.RIGHT for m in self.marked)

    @property
    def first_mistake(self) -> Marked | None:
        """The first length that is wrong by itself; None where all are right or follow from one not given."""
        return next((m for m in self.marked if m.mark is Judgement.WRONG), None)


def worksheet(
    read: MeasurementFile, style: Style, *, paper: Paper, scale: float, blank: bool, fitted: bool = True
) -> OfABlock:
    """Draft the block of a style, to be drawn step by step.

    Args:
        read: The measurements.
        style: Whose leg the block has.
        paper: The sheets, upright.
        scale: Millimetres of the draft on one of paper: one of `outputs.lesson.sheet.SCALES`.
        blank: Leave the answers away.
        fitted: False leaves crotch seam and thigh as the proportions give them.

    Raises:
        DraftRefused: the measurements do not allow it.
    """
    block = _block(read, style, fitted=fitted)
    write = partial(write_worksheet, read, block, paper=paper, scale=scale, blank=blank, style=style.name)
    return _sheet(Sheet.BLANK if blank else Sheet.WORKSHEET, read, block, write)


def marking_sheet(
    read: MeasurementFile, style: Style, *, paper: Paper, scale: float, fitted: bool = True
) -> OfABlock:
    """Draft the block of a style, its right lengths to be printed for the teacher; see `worksheet`.

    Raises:
        DraftRefused: the measurements do not allow it.
    """
    block = _block(read, style, fitted=fitted)
    write = partial(write_marking_sheet, read, block, paper=paper, scale=scale, style=style.name)
    return _sheet(Sheet.MARKING, read, block, write)


def systems(read: MeasurementFile, *, paper: Paper) -> OfABlock:
    """Draft by our proportions alone, to be laid under published drafts.

    Raises:
        DraftRefused: the measurements do not allow it.
    """
    block = draft_block(read.measurements, fitted=False)
    return _sheet(Sheet.SYSTEMS, read, block, partial(write_systems, read, block, paper=paper))


def form(read: MeasurementFile, style: Style, *, name: str = "lengths.toml", fitted: bool = True) -> Result:
    """Return an empty form for the lengths of a student, to be kept under `name`.

    Raises:
        DraftRefused: the measurements do not allow a draft.
    """
    steps = asked_for(hand_drafts(_block(read, style, fitted=fitted)))
    return Result(files={name: text_writer(lengths_form(read.wearer, steps, read.unit))})


def mark(
    read: MeasurementFile, style: Style, lengths: TextFile, *, scale: float, fitted: bool = True
) -> MarkedDraft:
    """Mark the lengths that a student measured on a draft of which 1 mm stands for `scale` mm.

    Raises:
        DraftRefused: the measurements do not allow a draft, or the lengths cannot be read.
    """
    drafts = hand_drafts(_block(read, style, fitted=fitted))
    steps = [step for draft in drafts for step in draft.instructions]
    given = read_lengths(lengths, steps, read.unit)
    missing: Sequence[Instruction] = [step for step in asked_for(drafts) if step.label not in given]
    return MarkedDraft(marked=mark_lengths(drafts, given, scale), missing=tuple(missing))


def _block(read: MeasurementFile, style: Style, *, fitted: bool) -> Block:
    return block_for(read.measurements, style, Cloth(**read.cloth), read.corrections, fitted=fitted)


def _sheet(sheet: Sheet, read: MeasurementFile, block: Block, write: Writer) -> OfABlock:
    return OfABlock(files={sheet.file_name(read.wearer): write}, warnings=read.warnings, block=block)
