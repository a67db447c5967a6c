"""A draft in lines: how much paper it takes, its numbers and findings, and what was written."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import partial

from drafting.base.units import format_length
from drafting.pieces.words import piece_name
from outputs.files.writers import Written
from outputs.jobs.draft import Drafted
from outputs.lines.summary import summary_lines
from outputs.lines.wrapped import wrapped
from outputs.lines.written import lacking, written_files
from outputs.paper.paper import Paper
from outputs.print.options import PrintOptions
from outputs.print.pattern_print import PaperUse
from outputs.print.piece_text import some_pieces
from outputs.reading.measurements_file import MeasurementFile
from outputs.reading.tape_readings import said_medians


def paper_lines(drafted: Drafted, *, named: bool = False) -> Iterator[str]:
    """Yield how much paper the PDF takes, if one is written; `named` with the style."""
    if use := drafted.paper:
        style = f", {drafted.jeans.style.name}" if named else ""
        yield f"to print{style}: {use.say(partial(format_length, unit=drafted.read.unit))}"


def draft_lines(drafted: Drafted, written: Written) -> Iterator[str]:
    """Yield the numbers of a draft that was written, what there is to say of it, and its files."""
    yield from medians(drafted.read)
    yield from summary_lines(drafted.jeans, drafted.read.unit, drafted.warnings)
    yield ""
    yield from lacking(written.files.values())
    if drafted.prints and drafted.prints.pattern.printed:
        pattern = drafted.prints.pattern
        yield from wrapped(f"{some_pieces(pattern)} printed: {', '.join(map(piece_name, pattern.printed))}")
    yield from written_files(written)


def count_lines(uses: Mapping[str, PaperUse], read: MeasurementFile) -> Iterator[str]:
    """Yield a line for every paper: how many sheets a pattern takes on it."""
    for paper, use in uses.items():
        yield f"{paper}: {use.say(partial(format_length, unit=read.unit))}"


def medians(read: MeasurementFile) -> list[str]:
    """Return lines that tell the medians of what was measured several times."""
    said = said_medians(read.readings, read.measurements.given(), read.unit)
    return wrapped(f"taken several times: {said}") if said else []


def advice_on_printing(printing: PrintOptions, formats: tuple[str, ...]) -> Iterator[str]:
    """Yield what to do before all the sheets of a printer at home are printed."""
    at_home = isinstance(printing.paper, Paper) and not printing.paper.is_large
    if "pdf" in formats and at_home and not printing.apart:
        yield "Print sheet 1 alone at 100 % and measure its bars before you print the rest."
