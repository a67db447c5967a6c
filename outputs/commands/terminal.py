"""What a terminal shows: the answer on stdout, and while one waits a line on stderr that is gone then."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from threading import Event, Thread
from typing import TextIO

import click

_WAIT = "Looking for a shorter plan; Ctrl-C keeps the best so far"
_TICK = 0.2
"""How often the bar moves on, in seconds."""


class _Line:
    """The line; it is written over, without colours or control sequences, so that any terminal shows it."""

    def __init__(self, stream: TextIO) -> None:
        self._stream, self._length = stream, 0

    def show(self, text: str) -> None:
        # What was typed may hold signs that move the cursor.
        text = "".join(sign for sign in text if sign.isprintable())[: shutil.get_terminal_size().columns - 1]
        rest = " " * (self._length - len(text))
        self._stream.write(f"\r{text}{rest}" if text else f"\r{rest}\r" if rest else "")
        self._stream.flush()
        self._length = len(text)


_line: ContextVar[_Line | None] = ContextVar("line", default=None)


@contextmanager
def watched() -> Iterator[None]:
    """Let `tell` show what it is told within this, if stderr is a terminal; elsewhere it never does."""
    if not sys.stderr.isatty():
        yield
        return
    line = _Line(sys.stderr)
    before = _line.set(line)
    try:
        yield
    finally:
        line.show("")
        _line.reset(before)


def tell(doing: str) -> None:
    """Show what is done now, such as "drafting", in place of what was shown before."""
    if line := _line.get():
        line.show(f"{doing} ...")


def say(text: str = "") -> None:
    """Print a line of the answer on stdout; what was shown meanwhile is gone."""
    if line := _line.get():
        line.show("")
    click.echo(text)


def say_all(lines: Iterable[str]) -> None:
    """Print the lines of an answer, each as it comes."""
    for line in lines:
        say(line)


@contextmanager
def bar(seconds: int) -> Iterator[None]:
    """Show on stderr how much of a search for a shorter plan of the cloth is spent."""
    over = Event()

    def show() -> None:
        with click.progressbar(length=round(seconds / _TICK), label=_WAIT, file=sys.stderr) as shown:
            while not over.wait(_TICK):
                shown.update(1)

    thread = Thread(target=show, daemon=True)
    thread.start()
    try:
        yield
    finally:
        over.set()
        thread.join()
