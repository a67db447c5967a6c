"""Single values out of a file that the program kept, and that somebody may have changed since."""

from __future__ import annotations

import math


def number(value: object) -> float:
    """Return a finite number as it is.

    Raises:
        TypeError: this is none.
    """
    if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
        raise TypeError("not a number")
    return value


def word(value: object) -> str:
    """Return a text as it is.

    Raises:
        TypeError: this is none.
    """
    if not isinstance(value, str):
        raise TypeError("not a text")
    return value


def yes(value: object) -> bool:
    """Return an answer as it is.

    Raises:
        TypeError: this is none.
    """
    if not isinstance(value, bool):
        raise TypeError("neither yes nor no")
    return value
