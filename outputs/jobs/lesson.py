"""What `worksheet` and `mark` write and print."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from io import BytesIO
from pathlib import Path

from drafting.base.units import format_length
from drafting.block.block import Block, draft_block
from drafting.lesson.marking import Judgement, Marked, asked_for, mark_lengths
from outputs.files.folder import write_file
from outputs.fit.summary import wrapped
from outputs.lesson.lengths import lengths_form, read_lengths
from outputs.lesson.marking_sheet import write_marking_sheet
from outputs.lesson.sheet import SCALES
from outputs.lesson.systems_sheet import write_systems
from outputs.lesson.words import Writing, line_ends, start_text, way_text
from outputs.lesson.worksheet import hand_drafts, write_worksheet
from outputs.paper.paper import PAPERS
from outputs.reading.measurements_file import MeasurementFile
from outputs.words.report import PrintReport
from styles.choice.style import Style
from styles.cloth.block_for_style import block_for
from styles.cloth.cloth import Cloth


def write_worksheet_file(
    target: Path, read: MeasurementFile, style: Style, *, paper: str, scale: str, blank: bool, force: bool
) -> Iterator[str]:
    """Write the worksheet and yield what to print.

    Raises:
        DraftRefused: the file may not be written; nothing is.
    """
    draw = partial(write_worksheet, blank=blank, scale=SCALES[scale], style=style.name)
    yield from _written(target, read, _block(read, style), draw, paper=paper, force=force)


def write_marking_file(
    target: Path, read: MeasurementFile, style: Style, *, paper: str, scale: str, force: bool
) -> Iterator[str]:
    """Write the teacher's sheet and yield what to print.

    Raises:
        DraftRefused: the file may not be written; nothing is.
    """
    draw = partial(write_marking_sheet, scale=SCALES[scale], style=style.name)
    yield from _written(target, read, _block(read, style), draw, paper=paper, force=force)


def write_systems_file(target: Path, read: MeasurementFile, *, paper: str, force: bool) -> Iterator[str]:
    """Write the comparison of drafting systems and yield what to print.

    Raises:
        DraftRefused: the file may not be written; nothing is.
    """
    block = draft_block(read.measurements, fitted=False)
    yield from _written(target, read, block, write_systems, paper=paper, force=force)


def _block(read: MeasurementFile, style: Style) -> Block:
    return block_for(read.measurements, style, Cloth(**read.cloth), read.corrections)


def _written(
    target: Path,
    read: MeasurementFile,
    block: Block,
    draw: Callable[..., PrintReport],
    *,
    paper: str,
    force: bool,
) -> Iterator[str]:
    """Write what `draw` draws of a block, whole or not at all, and yield what to print."""
    stream = BytesIO()
    report = draw(read, block, stream, paper=PAPERS[paper])
    write_file(target, stream.getvalue(), force=force)
    yield from _said(target, read, report)


def write_form(target: Path, read: MeasurementFile, style: Style, *, force: bool) -> Iterator[str]:
    """Write the empty form for a student's lengths and yield what to print."""
    drafts = hand_drafts(_block(read, style))
    text = lengths_form(read.wearer, asked_for(drafts), read.unit)
    write_file(target, text.encode(), force=force)
    yield f"Fill in {target}, then run the same line without --form"


def marked_lines(read: MeasurementFile, path: Path, style: Style, *, scale: str) -> Iterator[str]:
    """Yield the verdict on a student's lengths, in lines of 80 letters.

    Raises:
        DraftRefused: the lengths cannot be read.
    """
    drafts = hand_drafts(_block(read, style))
    steps = [step for draft in drafts for step in draft.instructions]
    lengths = read_lengths(path, steps, read.unit)
    marked = mark_lengths(drafts, lengths, SCALES[scale])
    right = sum(m.mark is Judgement.RIGHT for m in marked)
    yield f"{right} of {len(marked)} lengths are right, for a draft at {scale}"
    first = next((m for m in marked if m.mark is Judgement.WRONG), None)
    if first:
        yield ""
        yield from _explained(first, read)
    others = [m for m in marked if m.mark is not Judgement.RIGHT and m is not first]
    if others:
        yield ""
    for other in others:
        yield from wrapped(_said_of(other, read))
    missing = [step.label for step in asked_for(drafts) if step.label not in lengths]
    if missing:
        yield ""
        yield from wrapped(f"not given: {', '.join(missing)}")


def _said_of(marked: Marked, read: MeasurementFile) -> str:
    longer = "long" if marked.miss > 0 else "short"
    step, writing = marked.step, Writing(read.unit)
    words = (
        f"step {step.label}, {step.panel} {step.name}, {line_ends(step)}: "
        f"{format_length(marked.length, read.unit)} instead of {format_length(step.result, read.unit)}, "
        f"{format_length(abs(marked.miss), read.unit)} too {longer}"
    )
    if marked.because:
        return f"{words}; it follows from step {marked.because}"
    if marked.slip:
        done, part = marked.slip
        return f"{words}; it is what comes out with “{part.name or part.formula(writing.exact)}” {done}"
    return words


def _explained(marked: Marked, read: MeasurementFile) -> Iterator[str]:
    """Yield the first wrong step with how it is done."""
    step, writing = marked.step, Writing(read.unit)
    yield from wrapped(f"First mistake: {_said_of(marked, read)}.")
    yield from wrapped(f"  How it is drawn: from {start_text(step)}, {way_text(step, writing)}.")
    if step.length:
        yield from wrapped(
            f"  {step.length.formula(writing.exact)} = {step.length.numbers(writing.exact)} = "
            f"{format_length(step.result, read.unit)}."
        )


def _said(target: Path, read: MeasurementFile, written: PrintReport) -> Iterator[str]:
    for problem in read.warnings:
        yield from wrapped(f"warning: {problem}")
    for warning in written.warnings:
        yield from wrapped(f"warning: {warning}")
    yield f"{target}: {'1 sheet' if written.sheets == 1 else f'{written.sheets} sheets'}"
