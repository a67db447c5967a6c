"""What `draft` writes: the pattern, the numbers and the pictures of one pair of jeans, in one folder."""

from __future__ import annotations

import json
from collections.abc import Collection, Iterator, Sequence
from pathlib import Path

from outputs.block_picture import draw_block_picture
from outputs.ease_picture import draw_ease_picture
from outputs.folder import write_folder
from outputs.jeans_from_file import jeans_from, refuse_faults
from outputs.measurement_file import MeasurementFile
from outputs.pattern_files import pattern_writers
from outputs.piece_text import some_pieces
from outputs.print_files import pattern_to_print, sheet_counts
from outputs.print_options import PrintOptions
from outputs.print_report import PrintReport
from outputs.readings import median_words, said_medians
from outputs.style_options import StyleOptions
from outputs.summary import summary_lines, wrapped
from outputs.units import format_length
from styles.figures import jeans_figures
from styles.jeans import Jeans
from styles.style import Style


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

    Args:
        target: the folder; its own place must exist.
        read: the measurements.
        style: what to draft.
        options: what shall be otherwise; its cloth counts before the file's.
        printing: which pieces are printed, and how the PDF is.
        formats: of "pdf", "svg" and "dxf".
        force: replace files that are already there.
        anyway: write a pattern that a check found faulty.

    Raises:
        DraftRefused: the measurements, a fault (without `anyway`), the folder (without `force`) or the disk
            do not allow it; the folder is as it was before.
    """
    jeans = jeans_from(read, style, options)
    if not anyway:
        refuse_faults(jeans, read)
    pattern = pattern_to_print(jeans.pattern, printing)
    said = said_medians(read.readings, read.measurements.given(), read.unit)
    medians = wrapped(f"taken several times: {said}") if said else []
    summary = [*medians, *summary_lines(jeans, read.unit, read.warnings), ""]
    reports: dict[str, PrintReport] = {}
    written = write_folder(
        target,
        {
            **pattern_writers(
                pattern, formats, reports, printing=printing, show=lambda mm: format_length(mm, read.unit)
            ),
            "figures.json": lambda path: _write_figures(jeans, path, read),
            "block.png": lambda path: draw_block_picture(jeans.block, path, wearer=read.wearer),
            "ease.png": lambda path: draw_ease_picture(jeans.block, path, wearer=read.wearer, unit=read.unit),
        },
        force=force,
    )
    yield from summary
    yield from _said_of(reports.values())
    if pattern.printed:
        yield from wrapped(f"{some_pieces(pattern)} printed: {', '.join(pattern.printed)}")
    for path in written:
        yield f"{path}: {_pages(reports[path.name])}" if path.suffix == ".pdf" else str(path)


def count_for(
    read: MeasurementFile, style: Style, options: StyleOptions, printing: PrintOptions
) -> Iterator[str]:
    """Draft and yield how many sheets the pattern takes on each paper; write nothing.

    Raises:
        DraftRefused: the measurements do not allow it, or no piece has a name that was asked for.
    """
    pattern = pattern_to_print(jeans_from(read, style, options).pattern, printing)
    return sheet_counts(pattern, printing, lambda mm: format_length(mm, read.unit))


def _said_of(reports: Collection[PrintReport]) -> Iterator[str]:
    """Yield what the pattern files lack; what several of them lack is told once."""
    shortened = dict.fromkeys(piece for report in reports for piece in report.shortened)
    if shortened:
        listed = any(report.sheets > 1 for report in reports)  # one big page and drawings have no list
        where = "; the piece list has them whole" if listed else ""
        yield from wrapped(f"labels shortened on: {'; '.join(shortened)}{where}")
    for warning in dict.fromkeys(warning for report in reports for warning in report.warnings):
        yield from wrapped(f"warning: {warning}")


def _pages(report: PrintReport) -> str:
    return "1 page" if report.sheets == 1 else f"{report.sheets} sheets"


def _write_figures(jeans: Jeans, path: Path, read: MeasurementFile) -> None:
    figures = jeans_figures(jeans)
    for key, count in read.readings.items():
        # A side's own reading is no value of the whole body.
        if key in figures["body"]:
            figures["body"][key]["source"] = median_words(count)
    text = json.dumps(figures, ensure_ascii=False, indent=2, allow_nan=False)
    path.write_text(text + "\n", encoding="utf-8", newline="\n")
