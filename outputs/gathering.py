"""Reads several things that a person wrote, and tells what is wrong with all of them at once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from drafting.errors import DraftRefused


def gather(*readers: Callable[[], Any]) -> tuple[Any, ...]:
    """Return what the readers return.

    Raises:
        DraftRefused: with the problems of every reader that refuses; one that several have is told once.
    """
    read, problems = [], []
    for reader in readers:
        try:
            read.append(reader())
        except DraftRefused as refusal:
            problems += [replace(p, source=p.source or refusal.source) for p in refusal.problems]
    if problems:
        raise DraftRefused(dict.fromkeys(problems))
    return tuple(read)
