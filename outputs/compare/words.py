"""Words for what moved between two versions: the letter of a change, and how far something moved."""

from __future__ import annotations

from string import ascii_uppercase

from drafting.base.units import Unit, format_length
from outputs.compare.versions import Move

LEAST_MOVE = {Unit.MM: 0.5, Unit.CM: 0.5, Unit.INCH: 25.4 / 32}
"""A smaller move is none, mm: a pencil line's width, or what vanishes in sixteenths of an inch (common
practice, no source)."""


def letter(index: int) -> str:
    """Return the letter of a change: A to Z, then A2 to Z2 and so on."""
    turn, place = divmod(index, len(ascii_uppercase))
    return ascii_uppercase[place] + (str(turn + 1) if turn else "")


def moved_enough(move: Move, unit: Unit) -> bool:
    """Return whether a move would be seen on paper."""
    return move.far >= LEAST_MOVE[unit]


def far_words(mm: float, unit: Unit) -> str:
    """Return how far something moved: "18 mm", "5/16 in"."""
    return format_length(mm, Unit.INCH if unit is Unit.INCH else Unit.MM)
