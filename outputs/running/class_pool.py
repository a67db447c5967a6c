"""Drafts many people on all cores, each into a folder of its own; one that is refused stops nobody else."""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import FIRST_COMPLETED, BrokenExecutor, Future, ProcessPoolExecutor, wait
from contextlib import contextmanager
from pathlib import Path
from types import FrameType

from drafting.base.errors import DraftRefused, Problem, Severity
from outputs.jobs.class_table import STARTS, SUMMARY_FILE, Outcome, State
from outputs.jobs.options import DraftOptions
from outputs.reading.class_file import Person
from outputs.running.ending import leave
from outputs.running.task import Task
from outputs.words.file_names import safe_name
from styles.choice.style import Style

_TELLS_EVERY = 0.3
"""How soon an interruption is answered, seconds."""

_LAST_WORDS = 5.0
"""How long a worker whose parent is gone may tidy up, seconds."""


def refuse_foreign_summary(home: Path) -> None:
    """Refuse the folder of a class with a table of the same name that is not one of ours.

    Raises:
        DraftRefused: with what to do instead.
    """
    path = home / SUMMARY_FILE
    if os.path.lexists(path) and not _starts_like_ours(path):
        message = "This is not the table of a class, and would be overwritten; give --out for another place."
        raise DraftRefused([Problem("", message, Severity.REFUSAL)], str(path))


def _starts_like_ours(path: Path) -> bool:
    # That of a large class is longer than what a person types, which `read_file` is for.
    if not path.is_file():
        return False
    with path.open("rb") as table:
        return table.read(100).decode("utf-8-sig", "replace").startswith(",".join(STARTS))


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
) -> Iterator[Task]:
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
            yield Task(
                number=number,
                place=person.place,
                read=person.read,
                target=out / folder,
                style=style,
                asked=asked,
                force=force,
            )


def _draft(task: Task) -> Outcome:
    """Draft one person in a worker; what draws loads there alone."""
    from outputs.running.class_folder import draft_person

    return draft_person(task)


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
