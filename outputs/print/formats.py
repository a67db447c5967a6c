"""The pattern in every format that was asked for, as files to be written."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import BinaryIO

from drafting.pieces.pattern import Pattern
from outputs.files.folder import Writer
from outputs.print.dxf import write_dxf
from outputs.print.files import PatternPrint
from outputs.print.pieces_picture import write_pieces_picture
from outputs.print.svg import write_svg
from outputs.words.report import PrintReport


def pattern_writers(
    prints: PatternPrint, formats: Iterable[str], reports: dict[str, PrintReport]
) -> dict[str, Writer]:
    """Return a writer for each file, by its name.

    Args:
        prints: What is drawn, and how the PDF is printed.
        formats: Of "pdf", "svg", "dxf" and "png"; one asked for twice is written once.
        reports: Gets the report of every file once it is written, by its name.
    """
    name = "-".join(filter(None, ("pattern", prints.options.some)))
    drawn = {"svg": write_svg, "dxf": write_dxf, "png": write_pieces_picture}
    writers: dict[str, Writer] = {}
    for each in formats:
        if each == "pdf":
            writers |= prints.writers(reports)
        else:
            writers[f"{name}.{each}"] = _writer(prints.pattern, f"{name}.{each}", drawn[each], reports)
    return writers


def _writer(
    pattern: Pattern,
    name: str,
    draw: Callable[[Pattern, BinaryIO], PrintReport],
    reports: dict[str, PrintReport],
) -> Writer:
    def write(path: Path) -> None:
        with path.open("wb") as stream:
            reports[name] = draw(pattern, stream)

    return write
