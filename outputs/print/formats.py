"""The pattern in every format that was asked for, as files to be written."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial

from outputs.files.writers import Writer
from outputs.print.dxf import write_dxf
from outputs.print.pattern_print import PatternPrint
from outputs.print.pieces_picture import write_pieces_picture
from outputs.print.svg import write_svg


def pattern_writers(prints: PatternPrint, formats: Iterable[str]) -> dict[str, Writer]:
    """Return a writer for each file, by its name.

    Args:
        prints: What is drawn, and how the PDF is printed.
        formats: Of "pdf", "svg", "dxf" and "png"; one asked for twice is written once.
    """
    name = "-".join(filter(None, ("pattern", prints.options.some)))
    drawn = {"svg": write_svg, "dxf": write_dxf, "png": write_pieces_picture}
    writers: dict[str, Writer] = {}
    for each in formats:
        if each == "pdf":
            writers |= prints.writers()
        else:
            writers[f"{name}.{each}"] = partial(drawn[each], prints.pattern)
    return writers
