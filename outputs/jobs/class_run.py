"""Drafts many people on all cores, each into a folder of its own; one that is refused stops nobody else."""

from __future__ import annotations

import json
import multiprocessing
import os
import signal
import threading
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import FIRST_COMPLETED, BrokenExecutor, Future, ProcessPoolExecutor, wait
from contextlib import contextmanager
from dataclasses import dataclass, replace
from enum import Enum
from pathlib import Path
from types import FrameType
from typing import Any

from drafting.base.errors import DraftRefused, Problem, Severity
from outputs.files.folder import refuse_link, safe_name
from outputs.jobs.ending import leave
from outputs.jobs.options import DraftOptions
from outputs.reading.measurements_file import MeasurementFile
from outputs.reading.people import Person
from styles.choice.style import Style

LEVELS = ("waist", "hip", "thigh", "knee", "hem")
"""The girths that are told of each pattern, by their names in `figures.json`."""

_TELLS_EVERY = 0.3
"""How soon an interruption is answered, seconds."""

_LAST_WORDS = 5.0
"""How long a worker whose parent is gone may tidy up, seconds."""


class State(Enum):
    """What became of a person."""

    DRAFTED = "drafted"
    THERE = "there already"
    """The same draft lay in its folder; it was left as it is."""
    REFUSED = "refused"


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """What became of one person; small, so that many can be kept.

    Attributes:
        number: In the order of the class, from 1.
        place: Where the measurements stand.
        name: The person.
        folder: The name of the folder in the class's own.
        state: Whether it was drafted.
        girths: Of the pattern at `LEVELS`, mm.
        crotch: The crotch seam wanted and found, mm; None where the crotch length is not known.
        sheets: Of all PDFs.
        warnings: Of the measurements and of the pattern.
        problems: Why it was refused.
    """

    number: int
    place: str
    name: str
    folder: str
    state: State
    girths: tuple[float, ...] = ()
    crotch: tuple[float | None, float | None] = (None, None)
    sheets: int = 0
    warnings: int = 0
    problems: tuple[Problem, ...] = ()


@dataclass(frozen=True, kw_only=True)
class _Task:
    """One person to draft."""

    number: int
    place: str
    read: MeasurementFile
    target: Path
    style: Style
    asked: DraftOptions
    force: bool

    def outcome(self, state: State, **found: Any) -> Outcome:
        return Outcome(
            number=self.number,
            place=self.place,
            name=self.read.wearer,
            folder=self.target.name,
            state=state,
            **found,
        )


def draft_people(
    people: Iterable[Person],
    out: Path,
    style: Style,
    asked: DraftOptions,
    *,
    workers: int,
    force: bool,
    done: Callable[[Outcome], None],
    stopping: Callable[[int], None],
) -> bool:
    """Draft everybody; return whether all had their turn: False after Ctrl-C.

    People are read one by one as workers become free. After Ctrl-C those underway are finished, so that every
    folder is whole; after a second one the workers still finish, but nobody waits to tell.

    Args:
        people: The class.
        out: The folder for their folders; it exists.
        style: What is drafted.
        asked: How it is changed and written.
        workers: Processes.
        force: Draft anew what is there.
        done: Gets each outcome, in no particular order.
        stopping: Is told after Ctrl-C how many are underway.

    Raises:
        DraftRefused: a worker was ended from outside.
    """
    tasks = _tasks(people, out, style, asked, force, done)
    underway: set[Future[Outcome]] = set()
    spawning = multiprocessing.get_context("spawn")
    with (
        _interruption() as interrupted,
        ProcessPoolExecutor(workers, mp_context=spawning, initializer=_start_worker) as pool,
    ):
        told, more = False, True
        while more or underway:
            while more and len(underway) < workers and not interrupted.is_set():
                task = next(tasks, None)
                more = task is not None
                if task:
                    with _children_deaf():
                        underway.add(pool.submit(_draft, task))
            if interrupted.is_set() and not told:
                stopping(len(underway))
                told, more = True, False
            finished, underway = wait(underway, _TELLS_EVERY, FIRST_COMPLETED)
            for future in finished:
                done(_outcome(future))
        return not told


def _outcome(future: Future[Outcome]) -> Outcome:
    try:
        return future.result()
    except (BrokenExecutor, SystemExit) as error:
        message = (
            "A worker was ended from outside, perhaps for want of memory. The folders of those drafted are "
            "whole; run it again to go on, perhaps with fewer --workers."
        )
        raise DraftRefused([Problem("", message, Severity.REFUSAL)]) from error


def _tasks(
    people: Iterable[Person],
    out: Path,
    style: Style,
    asked: DraftOptions,
    force: bool,
    done: Callable[[Outcome], None],
) -> Iterator[_Task]:
    """Yield who can be drafted; the others are done. A name that was there before gets a number."""
    taken: set[str] = set()
    for number, person in enumerate(people, start=1):
        folder = safe_name(person.name, style.name)
        count = 1
        while folder in taken:
            count += 1
            folder = safe_name(person.name, style.name, str(count))
        taken.add(folder)
        if isinstance(person.read, DraftRefused):
            done(
                Outcome(
                    number=number,
                    place=person.place,
                    name=person.name,
                    folder="",
                    state=State.REFUSED,
                    problems=person.read.problems,
                )
            )
        else:
            yield _Task(
                number=number,
                place=person.place,
                read=person.read,
                target=out / folder,
                style=style,
                asked=asked,
                force=force,
            )


def _draft(task: _Task) -> Outcome:
    """Draft one person in a worker."""
    from outputs.jobs.draft import draft_into, printed_as
    from outputs.reading.inputs import Inputs, holds

    asked, state = task.asked, State.DRAFTED
    try:
        refuse_link(task.target)
        if os.path.lexists(task.target) and not task.force:
            inputs = Inputs.of(task.read, task.style, asked.changes)
            if not holds(task.target, inputs.text(printed_as(asked.printing, asked.formats))):
                raise _another_draft(task.target)
            state = State.THERE
        else:
            for _ in draft_into(
                task.target, task.read, task.style, asked.changes,
                printing=asked.printing, formats=asked.formats, force=task.force, anyway=asked.anyway,
            ):  # fmt: skip
                pass
        return task.outcome(state, **_found(task))
    except DraftRefused as refusal:
        problems = tuple(replace(p, source=p.source or refusal.source) for p in refusal.problems)
    except Exception as error:
        # The others of the class shall not wait for this to be mended.
        message = f"The draft failed for a reason that is not yours: {type(error).__name__}: {error}"
        problems = (Problem("", " ".join(message.split())[:300], Severity.REFUSAL),)
    return task.outcome(State.REFUSED, problems=problems)


def _another_draft(target: Path) -> DraftRefused:
    message = (
        "Something else lies there, perhaps a draft of other measurements or options; nothing was changed. "
        "Give --force to replace it, or --out for another place."
    )
    return DraftRefused([Problem("", message, Severity.REFUSAL)], str(target))


def _found(task: _Task) -> dict[str, Any]:
    """Return what is told of a draft, from the figures beside it."""
    figures = json.loads((task.target / "figures.json").read_text(encoding="utf-8"))
    target, found = figures["crotch"]["target"], figures["crotch"]["total"]
    warnings = sum(finding["level"] == "warning" for finding in figures["findings"])
    return {
        "girths": tuple(figures["girths"][level]["pattern"] * 10 for level in LEVELS),
        "crotch": (None if target is None else target * 10, found * 10),
        "sheets": sum(figures["sheets"].values()),
        "warnings": warnings,
    }


def _start_worker() -> None:
    """Leave Ctrl-C to the one who hands out the work, and go when that one is gone or asks for it."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, leave)
    threading.Thread(target=_leave_with_parent, daemon=True).start()


def _leave_with_parent() -> None:
    parent = multiprocessing.parent_process()
    if parent:
        parent.join()
        os.kill(os.getpid(), signal.SIGTERM)  # so that nothing half-written stays
        threading.main_thread().join(_LAST_WORDS)
        os._exit(1)


@contextmanager
def _interruption() -> Iterator[threading.Event]:
    """Give what is set by the first Ctrl-C; the second is raised as ever."""
    interrupted = threading.Event()

    def interrupt(number: int, frame: FrameType | None) -> None:
        signal.signal(signal.SIGINT, before)
        interrupted.set()

    before = signal.signal(signal.SIGINT, interrupt)
    try:
        yield interrupted
    finally:
        signal.signal(signal.SIGINT, before)


@contextmanager
def _children_deaf() -> Iterator[None]:
    """Hold Ctrl-C back while a worker may be started, which would die of it before it can ignore it."""
    if not hasattr(signal, "pthread_sigmask"):  # Windows; a worker started just then may complain
        yield
        return
    signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_UNBLOCK, {signal.SIGINT})
