"""What a person typed: shown in one line, read as a percentage, and what an unknown name may have meant."""

from __future__ import annotations

import math
import re
import unicodedata
from collections.abc import Iterable

LONGEST_GUESS = 60
"""Names longer than this resemble none of ours; comparing them would only take time."""

LONGEST_TEXT = 80
"""Letters that a name or a date may have: more would not fit on the label of a piece."""

_PERCENT = re.compile(r"(?P<minus>[-−–]\s*)?(?P<number>[0-9]{1,6}(?:[.,][0-9]{1,9})?)\s*%?")
PERCENT_LIKE = 'A percentage is written like "-3", "-2,5" or "-3 %".'


def plain_name(typed: str) -> str:
    """Return a name in the spelling of ours: small letters, underscores, no longer than LONGEST_GUESS."""
    return typed.lower().replace("-", "_").replace(" ", "_")[:LONGEST_GUESS]


def did_you_mean(guesses: Iterable[str]) -> str:
    """Return the question after each guess, with a space before it; empty without any."""
    return "".join(f' Did you mean "{guess}"?' for guess in guesses)


def percentage(typed: object) -> float:
    """Return what was typed as a percentage; NaN for what is none."""
    found = _PERCENT.fullmatch(str(typed).strip()) if not isinstance(typed, bool) else None
    if not found:
        return math.nan
    number = float(found["number"].replace(",", "."))
    return -number if found["minus"] and number else number


def in_one_line(typed: object) -> str:
    """Return what was typed in one line, cut short when it is endless."""
    text = " ".join("".join(letter if letter.isprintable() else " " for letter in str(typed)[:200]).split())
    return text if len(text) <= 60 else f"{text[:57]}..."


def doubt_about_text(text: str) -> str:
    """Return why a text cannot stand in one printed line; empty when it can."""
    if len(text) > LONGEST_TEXT:
        return f"The text is longer than {LONGEST_TEXT} letters."
    if any(unicodedata.category(letter) in ("Cc", "Cs", "Zl", "Zp") for letter in text):
        return "The text holds signs that cannot be printed, such as a line break."
    return ""
