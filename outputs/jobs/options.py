"""What a person asks of a draft besides its style, already read."""

from __future__ import annotations

from dataclasses import dataclass

from outputs.print.options import PrintOptions
from outputs.reading.style_options import StyleOptions

FORMATS = ("pdf", "svg", "dxf", "png")
"""What `outputs.print.formats` can write."""


@dataclass(frozen=True, kw_only=True)
class DraftOptions:
    """What was asked for, all but the style.

    Attributes:
        changes: What shall be otherwise.
        printing: Which pieces are printed, and how the PDF is.
        formats: Of `FORMATS`.
        anyway: Write a pattern that a check found faulty.
    """

    changes: StyleOptions
    printing: PrintOptions
    formats: tuple[str, ...]
    anyway: bool
