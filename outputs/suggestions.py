"""What a person may have meant by a name that does not exist."""

from __future__ import annotations

from collections.abc import Iterable

LONGEST_GUESS = 60
"""Names longer than this resemble none of ours; comparing them would only take time."""


def plain_name(typed: str) -> str:
    """Return a name in the spelling of ours: small letters, underscores, no longer than LONGEST_GUESS."""
    return typed.lower().replace("-", "_").replace(" ", "_")[:LONGEST_GUESS]


def did_you_mean(guesses: Iterable[str]) -> str:
    """Return the question after each guess, with a space before it; empty without any."""
    return "".join(f' Did you mean "{guess}"?' for guess in guesses)
