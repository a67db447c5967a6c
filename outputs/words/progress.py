"""What is told to somebody who waits: words that are handed to a callback, whoever shows them."""

from __future__ import annotations

from collections.abc import Callable

Progress = Callable[[str], None]
"""Is told what is done now, such as "drafting straight", each time in place of what was told before."""


def silent(doing: str) -> None:
    """Tell nobody."""
