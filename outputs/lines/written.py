"""The files that were written, in lines: where each is, how many sheets it has, and what it lacks."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from pathlib import Path

from outputs.files.writers import Written
from outputs.lines.wrapped import wrapped
from outputs.words.print_report import PrintReport


def lacking(reports: Collection[PrintReport]) -> Iterator[str]:
    """Yield what the pattern files lack; what several of them lack is told once."""
    shortened = dict.fromkeys(piece for report in reports for piece in report.shortened)
    if shortened:
        listed = any(report.sheets > 1 for report in reports)  # one big page and drawings have no list
        where = "; the piece list has them whole" if listed else ""
        yield from wrapped(f"labels shortened on: {'; '.join(shortened)}{where}")
    yield from warned(warning for report in reports for warning in report.warnings)


def warned(warnings: Iterable[object]) -> Iterator[str]:
    """Yield warnings, each once."""
    for warning in dict.fromkeys(map(str, warnings)):
        yield from wrapped(f"warning: {warning}")


def written_files(written: Written) -> Iterator[str]:
    """Yield every file, a PDF with its sheets, then what lay in the folder before."""
    for path, report in written.files.items():
        pages = "1 page" if report.sheets == 1 else f"{report.sheets} sheets"
        yield f"{path}: {pages}" if report.sheets and path.suffix == ".pdf" else str(path)
    if written.before:
        yield from wrapped(f"left there from before: {', '.join(written.before)}")


def written_sheets(target: Path, report: PrintReport) -> str:
    """Return where a PDF is and how many sheets it has."""
    return f"{target}: {'1 sheet' if report.sheets == 1 else f'{report.sheets} sheets'}"
