"""Names for files and folders out of what a person typed."""

from __future__ import annotations

import re
import unicodedata

_LONGEST = 60
"""Letters of a name that go into a file name: at 4 bytes each they fit the 255 bytes of a file system."""

_DEVICES = re.compile("con|prn|aux|nul|(com|lpt)[0-9]")
"""Names that Windows keeps for devices, with any ending (Microsoft, "Naming Files, Paths")."""


def safe_name(first: str, *rest: str) -> str:
    """Return a name for a file or folder: lower-case letters and digits of any script, hyphens for all else.

    Args:
        first: any text; cut short when the name would be longer than 60 letters.
        rest: short words that follow it uncut.
    """
    end = "".join(f"-{_hyphened(word)}" for word in rest)
    name = f"{_hyphened(first)[: _LONGEST - len(end)].strip('-')}{end}".strip("-") or "jeans"
    return f"{name}-jeans" if _DEVICES.fullmatch(name) else name


def _hyphened(text: str) -> str:
    # Lower-casing İ leaves a dot that stands alone and would part the word.
    text = unicodedata.normalize("NFKC", text.replace("İ", "i")).lower()
    return "-".join("".join(ch if ch.isalnum() or _is_mark(ch) else " " for ch in text).split())


def _is_mark(letter: str) -> bool:
    """Return whether this is an accent or a vowel sign, a part of the letter before it."""
    return unicodedata.category(letter).startswith("M")
