"""The pattern in every format that was asked for, as files to be written."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import BinaryIO

from drafting.findings import Show
from drafting.pattern import Pattern
from outputs.dxf import write_dxf
from outputs.folder import Writer
from outputs.pieces_picture import write_pieces_picture
from outputs.print_files import pdf_writers
from outputs.print_options import PrintOptions
from outputs.print_report import PrintReport
from outputs.svg import write_svg


def pattern_writers(
    pattern: Pattern,
    formats: Iterable[str],
    reports: dict[str, PrintReport],
    *,
    printing: PrintOptions,
    show: Show,
) -> dict[str, Writer]:
    """Return a writer for each file, by its name.

    Args:
        pattern: What is drawn.
        formats: Of "pdf", "svg", "dxf" and "png"; one asked for twice is written once.
        reports: Gets the report of every file once it is written, by its name.
        printing: How the PDF is printed.
        show: Writes lengths in the PDF, in the wearer's unit.
    """
    name = "-".join(filter(None, ("pattern", printing.some)))
    drawn = {"svg": write_svg, "dxf": write_dxf, "png": write_pieces_picture}
    writers: dict[str, Writer] = {}
    for each in formats:
        if each == "pdf":
            writers |= pdf_writers(pattern, printing, show, reports)
        else:
            writers[f"{name}.{each}"] = _writer(pattern, f"{name}.{each}", drawn[each], reports)
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
