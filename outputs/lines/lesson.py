"""Sheets of a lesson and the marks of a student's lengths, in lines."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from drafting.base.units import Unit, format_length
from drafting.lesson.marking import Judgement, Marked
from outputs.jobs.lesson import MarkedDraft
from outputs.jobs.result import Result
from outputs.lesson.words import Writing, line_ends, start_text, way_text
from outputs.lines.wrapped import wrapped
from outputs.lines.written import written_sheets
from outputs.words.print_report import PrintReport


def sheet_lines(result: Result, target: Path, report: PrintReport) -> Iterator[str]:
    """Yield what is unusual, and the sheet that was written."""
    for warning in (*result.warnings, *report.warnings):
        yield from wrapped(f"warning: {warning}")
    yield written_sheets(target, report)


def marked_lines(draft: MarkedDraft, unit: Unit, *, scale: str) -> Iterator[str]:
    """Yield the verdict on a student's lengths, the first mistake before the others."""
    yield f"{draft.right} of {len(draft.marked)} lengths are right, for a draft at {scale}"
    first = draft.first_mistake
    if first:
        yield ""
        yield from _explained(first, unit)
    others = [m for m in draft.marked if m.mark is not Judgement.RIGHT and m is not first]
    if others:
        yield ""
    for other in others:
        yield from wrapped(_said(other, unit))
    if draft.missing:
        yield ""
        yield from wrapped(f"not given: {', '.join(step.label for step in draft.missing)}")


def _said(marked: Marked, unit: Unit) -> str:
    longer = "long" if marked.miss > 0 else "short"
    step, writing = marked.step, Writing(unit)
    words = (
        f"step {step.label}, {step.panel} {step.name}, {line_ends(step)}: "
        f"{format_length(marked.length, unit)} instead of {format_length(step.result, unit)}, "
        f"{format_length(abs(marked.miss), unit)} too {longer}"
    )
    if marked.because:
        return f"{words}; it follows from step {marked.because}"
    if marked.slip:
        done, part = marked.slip
        return f"{words}; it is what comes out with “{part.name or part.formula(writing.exact)}” {done}"
    return words


def _explained(marked: Marked, unit: Unit) -> Iterator[str]:
    """Yield the first wrong step with how it is done."""
    step, writing = marked.step, Writing(unit)
    yield from wrapped(f"First mistake: {_said(marked, unit)}.")
    yield from wrapped(f"  How it is drawn: from {start_text(step)}, {way_text(step, writing)}.")
    if step.length:
        yield from wrapped(
            f"  {step.length.formula(writing.exact)} = {step.length.numbers(writing.exact)} = "
            f"{format_length(step.result, unit)}."
        )
