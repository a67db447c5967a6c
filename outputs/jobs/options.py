"""What a person asks of a job, already read."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

from outputs.print.options import PrintOptions
from outputs.reading.style_options import StyleOptions
from outputs.words.file_names import safe_name

FORMATS = ("pdf", "svg", "dxf", "png")
"""What `outputs.print.formats` can write."""


@dataclass(frozen=True, kw_only=True)
class DraftOptions:
    """What was asked for, all but the style.

    Attributes:
        changes: What shall be otherwise; its cloth counts before the measurements file's.
        printing: Which pieces are printed, and how the PDF is.
        formats: Of `FORMATS`.
        anyway: Write a pattern that a check found faulty.
    """

    changes: StyleOptions = field(default_factory=StyleOptions)
    printing: PrintOptions = field(default_factory=PrintOptions)
    formats: tuple[str, ...] = ("pdf",)
    anyway: bool = False


class Sheet(Enum):
    """A PDF for one wearer that is no pattern; the value stands in its name."""

    WORKSHEET = "worksheet"
    BLANK = "worksheet-blank"
    """The worksheet without its answers."""
    MARKING = "marking"
    SYSTEMS = "systems"
    MEASURING = "measuring-sheet"

    def file_name(self, wearer: str) -> str:
        """Return the name of the file; that of the sheet alone without a wearer."""
        return f"{safe_name(wearer, self.value)}.pdf"
