"""Lines as wide as every terminal shows them."""

from __future__ import annotations

import textwrap

WIDTH = 80
"""Letters in a line: what every terminal shows and every mail keeps."""


def wrapped(text: str, *, indent: int = 0) -> list[str]:
    """Return a message as lines of at most 80 letters, the first set in by `indent`, others by 2 more."""
    first = " " * indent
    return textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent=f"{first}  ", break_on_hyphens=False
    )
