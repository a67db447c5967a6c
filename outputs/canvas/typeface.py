"""The type of the PDF: DejaVu Sans, embedded: Polish, Turkish, Greek and Cyrillic names print as typed."""

from __future__ import annotations

import unicodedata
from functools import cache
from importlib.util import find_spec
from pathlib import Path

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

REGULAR = "DejaVuSans"
BOLD = "DejaVuSans-Bold"
STAND_IN = "?"
"""What is printed for a character that the font lacks."""


def font_file(name: str) -> Path:
    """Return the file of a DejaVu font among matplotlib's data, without importing it (which takes 0.2 s).

    Raises:
        FileNotFoundError: matplotlib, or that font in it, is not installed.
    """
    spec = find_spec("matplotlib")
    if spec is None or spec.origin is None:
        raise FileNotFoundError("matplotlib is not installed; its DejaVu fonts are needed to write a PDF")
    path = Path(spec.origin).parent / "mpl-data" / "fonts" / "ttf" / f"{name}.ttf"
    if not path.is_file():
        raise FileNotFoundError(f"the font {name} is missing from the installed matplotlib: {path}")
    return path


@cache
def _glyphs(name: str) -> frozenset[int]:
    """Register the font once and return the code points it can draw."""
    font = TTFont(name, str(font_file(name)))
    pdfmetrics.registerFont(font)
    return frozenset(font.face.charToGlyph)


class Typeface:
    """The two fonts as one document uses them; it remembers what could not be set as typed."""

    def __init__(self) -> None:
        """Load both fonts."""
        self._known = _glyphs(REGULAR) & _glyphs(BOLD)
        self._missing: set[str] = set()
        self._right_to_left = False
        self._widths: dict[tuple[str, bool], float] = {}

    def printable(self, string: str) -> str:
        """Return the text as it is printed: letters composed, STAND_IN for what the font lacks."""
        if string.isascii() and string.isprintable():
            return string
        composed = unicodedata.normalize(
            "NFC", "".join(" " if unicodedata.category(c) == "Cc" else c for c in string)
        )
        for character in composed:
            if ord(character) not in self._known:
                self._missing.add(character)
            elif unicodedata.bidirectional(character) in ("R", "AL"):
                self._right_to_left = True
        return "".join(STAND_IN if character in self._missing else character for character in composed)

    def text_width(self, string: str, size: float, *, bold: bool = False) -> float:
        """Return the width of `string` in millimetres, set in a type of `size` millimetres."""
        # Labels are tried at many sizes; at size 1 a width is asked for once.
        width = self._widths.get((string, bold))
        if width is None:
            width = float(pdfmetrics.stringWidth(self.printable(string), BOLD if bold else REGULAR, 1))
            self._widths[string, bold] = width
        return width * size

    def warnings(self) -> list[str]:
        """Return a sentence naming the replaced characters, and one if letters stand in the wrong order."""
        said = []
        if self._missing:
            named = ", ".join(f"{character} (U+{ord(character):04X})" for character in sorted(self._missing))
            said.append(f"not in the font and printed as {STAND_IN!r}: {named}")
        if self._right_to_left:
            said.append("text that runs from right to left is printed letter by letter from left to right")
        return said
