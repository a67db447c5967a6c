"""Reads several things that a person wrote, and tells what is wrong with all of them at once."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from math import inf
from typing import TypeVar, overload

from drafting.base.errors import DraftRefused, Problem, Severity

_MOST_PROBLEMS = 60
"""Every measurement may be wrong twice over; a file with more problems than that is another kind of file."""

_A = TypeVar("_A")
_B = TypeVar("_B")
_C = TypeVar("_C")
_D = TypeVar("_D")


def by_line(problems: Iterable[Problem]) -> list[Problem]:
    """Return the problems of one file as its lines come, warnings last; of a great many the first."""
    ordered = sorted(problems, key=lambda p: (p.severity is Severity.WARNING, p.line or inf))
    more = len(ordered) - _MOST_PROBLEMS
    if more <= 0:
        return ordered
    rest = Problem("", f"There are {more} further problems.", Severity.REFUSAL)
    return [*ordered[:_MOST_PROBLEMS], rest]


@overload
def gather(first: Callable[[], _A], second: Callable[[], _B], /) -> tuple[_A, _B]: ...
@overload
def gather(
    first: Callable[[], _A], second: Callable[[], _B], third: Callable[[], _C], /
) -> tuple[_A, _B, _C]: ...
@overload
def gather(
    first: Callable[[], _A], second: Callable[[], _B], third: Callable[[], _C], fourth: Callable[[], _D], /
) -> tuple[_A, _B, _C, _D]: ...
def gather(*readers: Callable[[], object]) -> tuple[object, ...]:
    """Return what two, three or four readers return, each of its own type.

    Raises:
        DraftRefused: with the problems of every reader that refuses; one that several have is told once.
    """
    return gather_all(readers)


def gather_all(readers: Iterable[Callable[[], _A]]) -> tuple[_A, ...]:
    """Return what any number of readers of one kind return.

    Raises:
        DraftRefused: with the problems of every reader that refuses; one that several have is told once.
    """
    read: list[_A] = []
    problems: list[Problem] = []
    for reader in readers:
        try:
            read.append(reader())
        except DraftRefused as refusal:
            problems += [replace(p, source=p.source or refusal.source) for p in refusal.problems]
    if problems:
        raise DraftRefused(dict.fromkeys(problems))
    return tuple(read)
