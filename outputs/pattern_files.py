"""The pattern in every format that was asked for, as files to be written."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import BinaryIO

from drafting.errors import DraftRefused, Problem, Severity
from drafting.pattern import Pattern
from outputs.dxf import write_dxf
from outputs.folder import Writer
from outputs.paper import PAPERS
from outputs.pdf import PageTooLarge, write_single_page_pdf, write_tiled_pdf
from outputs.print_report import PrintReport
from outputs.svg import write_svg
from outputs.units import Unit, format_length


def pattern_writers(
    pattern: Pattern, formats: Iterable[str], reports: dict[str, PrintReport], *, paper: str, unit: Unit
) -> dict[str, Writer]:
    """Return a writer for each file, by its name.

    Args:
        pattern: What is drawn.
        formats: Of "pdf", "svg" and "dxf"; one asked for twice is written once.
        reports: Gets the report of every file once it is written, by its name.
        paper: A name of `outputs.paper.PAPERS`, or "single" for one big page; for the PDF alone.
        unit: In which the PDF tells lengths.
    """

    def write_pdf(pattern: Pattern, stream: BinaryIO) -> PrintReport:
        return _write_pdf(pattern, stream, paper, unit)

    drawn = {
        "pdf": (f"pattern-{paper}.pdf", write_pdf),
        "svg": ("pattern.svg", write_svg),
        "dxf": ("pattern.dxf", write_dxf),
    }
    return {name: _writer(pattern, name, draw, reports) for name, draw in (drawn[each] for each in formats)}


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


def _write_pdf(pattern: Pattern, stream: BinaryIO, paper: str, unit: Unit) -> PrintReport:
    if paper != "single":
        return write_tiled_pdf(pattern, stream, paper=PAPERS[paper], show=lambda mm: format_length(mm, unit))
    try:
        return write_single_page_pdf(pattern, stream)
    except PageTooLarge as error:
        message = f"{str(error)[0].upper()}{str(error)[1:]}."
        raise DraftRefused([Problem("--paper single", message, Severity.REFUSAL)]) from error
