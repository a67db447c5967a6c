"""Some pieces of a pattern, chosen by their names."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.pieces.kinds import PieceId
from drafting.pieces.pattern import Pattern


def choose(pattern: Pattern, words: Sequence[str]) -> Pattern:
    """Return the pattern of which only the pieces with one of the words in their names are printed.

    A word that is a whole name means that piece alone. What stands in brackets, "(left front)", is a remark
    and counts only where the whole name is given.

    Raises:
        DraftRefused: with all the words that no piece has in its name, and the names that there are.
    """
    chosen: list[PieceId] = []
    unknown: list[str] = []
    for word in map(_plain, words):
        whole = [piece.id for piece in pattern.pieces if _plain(piece.name) == word]
        part = [
            piece.id
            for piece in pattern.pieces
            if word and word in _plain(re.sub(r"\(.*?\)", "", piece.name))
        ]
        chosen += whole or part
        if not whole and not part:
            unknown.append(word or '""')
    if unknown:
        there = ", ".join(piece.name for piece in pattern.pieces)
        message = f"No piece has this in its name. The pieces are: {there}."
        raise DraftRefused([Problem("--only", message, Severity.REFUSAL, ", ".join(unknown)[:60])])
    return replace(pattern, printed=tuple(dict.fromkeys(chosen)))


def _plain(words: str) -> str:
    return " ".join(words.casefold().replace("_", " ").replace("-", " ").split())
