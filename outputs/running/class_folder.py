"""One person of a class, drafted into a folder; what goes wrong becomes an outcome and stops nobody else."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

from drafting.base.errors import DraftRefused, Problem, Severity
from outputs.files.folder import refuse_link, write_folder
from outputs.jobs.class_person import numbers_kept, numbers_of
from outputs.jobs.class_table import Numbers, Outcome, State
from outputs.jobs.draft import draft, printed_as
from outputs.reading.draft_record import Inputs, holds
from outputs.running.task import Task


def draft_person(task: Task) -> Outcome:
    """Draft one person, or tell why that cannot be."""
    try:
        state, numbers = _drafted(task)
    except DraftRefused as refusal:
        problems = tuple(replace(p, source=p.source or refusal.source) for p in refusal.problems)
    except Exception as error:
        # The others of the class shall not wait for this to be mended.
        message = f"The draft failed for a reason that is not yours: {type(error).__name__}: {error}"
        problems = (Problem("", " ".join(message.split())[:300], Severity.REFUSAL),)
    else:
        return _outcome(task, state, numbers=numbers)
    return _outcome(task, State.REFUSED, problems=problems)


def _drafted(task: Task) -> tuple[State, Numbers]:
    refuse_link(task.target)
    if os.path.lexists(task.target) and not task.force:
        inputs = Inputs.of(task.read, task.style, task.asked.changes)
        if not holds(task.target, inputs.text(printed_as(task.asked.printing, task.asked.formats))):
            raise _another_draft(task.target)
        figures = (task.target / "figures.json").read_text(encoding="utf-8")
        return State.THERE, numbers_kept(figures)
    drafted = draft(task.read, task.style, task.asked)
    write_folder(task.target, drafted.files, force=task.force)
    return State.DRAFTED, numbers_of(drafted)


def _outcome(
    task: Task, state: State, *, numbers: Numbers | None = None, problems: tuple[Problem, ...] = ()
) -> Outcome:
    return Outcome(
        number=task.number,
        place=task.place,
        name=task.read.wearer,
        folder=task.target.name,
        state=state,
        numbers=numbers,
        problems=problems,
    )


def _another_draft(target: Path) -> DraftRefused:
    message = (
        "Something else lies there, perhaps a draft of other measurements or options; nothing was changed. "
        "Give --force to replace it, or --out for another place."
    )
    return DraftRefused([Problem("", message, Severity.REFUSAL)], str(target))
