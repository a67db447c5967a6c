"""What `draft` writes: the pattern, the numbers and the pictures of one pair of jeans, in one folder."""

from __future__ import annotations

import json
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from drafting.base.units import format_length
from drafting.pieces.pattern import Pattern
from drafting.pieces.words import piece_name
from outputs.files.folder import Writer, write_folder
from outputs.fit.block_picture import draw_block_picture
from outputs.fit.ease_picture import draw_ease_picture
from outputs.fit.summary import summary_lines, wrapped
from outputs.paper.paper import Paper
from outputs.print.chosen_pieces import choose
from outputs.print.files import PatternPrint, sheet_counts
from outputs.print.formats import pattern_writers
from outputs.print.options import PrintOptions
from outputs.print.piece_text import some_pieces
from outputs.reading.inputs import INPUTS_FILE, Inputs
from outputs.reading.jeans_from_file import jeans_from, refuse_faults
from outputs.reading.measurements_file import MeasurementFile
from outputs.reading.readings import median_words, said_medians
from outputs.reading.style_options import StyleOptions
from outputs.words.progress import tell
from outputs.words.report import PrintReport
from styles.choice.style import Style
from styles.making.figures import jeans_figures
from styles.making.jeans import Jeans
from styles.making.toile import toile_pieces

TO_PRINT = "to print"
"""What begins the line that tells how much paper a pattern takes."""


def draft_into(
    target: Path,
    read: MeasurementFile,
    style: Style,
    options: StyleOptions,
    *,
    printing: PrintOptions,
    formats: Sequence[str] = ("pdf",),
    force: bool,
    anyway: bool = False,
) -> Iterator[str]:
    """Draft and write everything into the folder `target`; yield the lines to print.

    How much paper it takes comes first, before anything is written.

    Args:
        target: the folder; its own place must exist.
        read: the measurements.
        style: what to draft.
        options: what shall be otherwise; its cloth counts before the file's.
        printing: which pieces are printed, and how the PDF is.
        formats: of "pdf", "svg", "dxf" and "png".
        force: replace files that are already there.
        anyway: write a pattern that a check found faulty.

    Raises:
        DraftRefused: the measurements, a fault (without `anyway`), the folder (without `force`) or the disk
            do not allow it; the folder is as it was before.
    """
    tell(f"drafting {style.name}")
    inputs = Inputs.of(read, style, options)
    jeans = inputs.jeans()
    if not anyway:
        refuse_faults([jeans], read)
    pattern = pattern_to_print(jeans.pattern, printing)
    prints = PatternPrint(pattern, printing, lambda mm: format_length(mm, read.unit))
    if "pdf" in formats:
        yield f"{TO_PRINT}: {prints.said}"
    summary = [*said_readings(read), *summary_lines(jeans, read.unit, read.warnings), ""]
    reports: dict[str, PrintReport] = {}
    written = write_folder(
        target,
        {
            **pattern_writers(prints, formats, reports),
            **numbers_and_pictures(inputs, jeans, read, reports, printed_as(printing, formats)),
        },
        force=force,
    )
    yield from summary
    yield from said_of(reports.values())
    if pattern.printed:
        yield from wrapped(f"{some_pieces(pattern)} printed: {', '.join(map(piece_name, pattern.printed))}")
    yield from said_files(written, reports)


def count_for(
    read: MeasurementFile, styles: Sequence[Style], options: StyleOptions, printing: PrintOptions
) -> Iterator[str]:
    """Draft and yield how many sheets the pattern of each style takes on each paper; write nothing.

    Raises:
        DraftRefused: the measurements do not allow it, or no piece has a name that was asked for.
    """
    for style in styles:
        if len(styles) > 1:
            yield f"=== {style.name}"
        tell(f"laying {style.name} on every paper")
        pattern = pattern_to_print(jeans_from(read, style, options).pattern, printing)
        yield from sheet_counts(pattern, printing, lambda mm: format_length(mm, read.unit))


def numbers_and_pictures(
    inputs: Inputs,
    jeans: Jeans,
    read: MeasurementFile,
    reports: Mapping[str, PrintReport],
    printed: Mapping[str, object],
) -> dict[str, Writer]:
    """Return the writers of all that is no pattern, by file name.

    Args:
        inputs: What the jeans were made from.
        jeans: The jeans.
        read: The measurements file.
        reports: Of the patterns, which are written first.
        printed: What is recorded of the print.
    """
    block, wearer = jeans.block, read.wearer
    return {
        "figures.json": lambda path: _write_figures(jeans, path, read, reports),
        INPUTS_FILE: lambda path: _write_text(path, inputs.text(printed)),
        "block.png": lambda path: draw_block_picture(block, path, wearer=wearer),
        "ease.png": lambda path: draw_ease_picture(block, path, wearer=wearer, unit=read.unit),
    }


def said_readings(read: MeasurementFile) -> list[str]:
    """Return lines that tell the medians of what was measured several times."""
    said = said_medians(read.readings, read.measurements.given(), read.unit)
    return wrapped(f"taken several times: {said}") if said else []


def printed_as(printing: PrintOptions, formats: Sequence[str]) -> dict[str, object]:
    """Return what is recorded of the print."""
    return {
        "paper": printing.name,
        "orientation": printing.orientation.value,
        "only": list(printing.only),
        "apart": printing.apart,
        "formats": sorted(set(formats)),
    }


def said_of(reports: Collection[PrintReport]) -> Iterator[str]:
    """Yield what the pattern files lack; what several of them lack is told once."""
    shortened = dict.fromkeys(piece for report in reports for piece in report.shortened)
    if shortened:
        listed = any(report.sheets > 1 for report in reports)  # one big page and drawings have no list
        where = "; the piece list has them whole" if listed else ""
        yield from wrapped(f"labels shortened on: {'; '.join(shortened)}{where}")
    for warning in dict.fromkeys(warning for report in reports for warning in report.warnings):
        yield from wrapped(f"warning: {warning}")


def said_files(written: Collection[Path], reports: dict[str, PrintReport]) -> Iterator[str]:
    """Yield every file, a pattern with its sheets."""
    for path in written:
        report = reports.get(path.name) if path.suffix == ".pdf" else None
        yield f"{path}: {_pages(report)}" if report else str(path)
    for folder in {path.parent for path in written}:
        others = sorted(path.name for path in folder.iterdir() if path not in written)
        if others:
            yield from wrapped(f"left there from before: {', '.join(others)}")


def advice_on_printing(printing: PrintOptions, formats: Sequence[str]) -> Iterator[str]:
    """Yield what to do before all the sheets of a printer at home are printed."""
    at_home = isinstance(printing.paper, Paper) and not printing.paper.is_large
    if "pdf" in formats and at_home and not printing.apart:
        yield "Print sheet 1 alone at 100 % and measure its bars before you print the rest."


def _pages(report: PrintReport) -> str:
    return "1 page" if report.sheets == 1 else f"{report.sheets} sheets"


def _write_figures(
    jeans: Jeans, path: Path, read: MeasurementFile, reports: Mapping[str, PrintReport]
) -> None:
    figures = jeans_figures(jeans)
    for key, count in read.readings.items():
        # A side's own reading is no value of the whole body.
        if key in figures["body"]:
            figures["body"][key]["source"] = median_words(count)
    unusual = [
        {"code": "measurement", "level": problem.severity.value, "where": problem.key, "text": str(problem)}
        for problem in read.warnings
    ]
    figures["findings"] = [*unusual, *figures["findings"]]
    figures["sheets"] = {name: report.sheets for name, report in reports.items() if name.endswith(".pdf")}
    _write_text(path, json.dumps(figures, ensure_ascii=False, indent=2, allow_nan=False) + "\n")


def _write_text(path: Path, text: str) -> None:
    path.write_text(text, encoding="utf-8", newline="\n")


def pattern_to_print(pattern: Pattern, options: PrintOptions) -> Pattern:
    """Return the pattern with the pieces that are to be printed.

    Raises:
        DraftRefused: no piece has such a name.
    """
    if options.toile:
        return replace(pattern, printed=toile_pieces(pattern))
    return choose(pattern, options.only) if options.only else pattern
