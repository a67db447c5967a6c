"""What `draft` writes: the pattern, the numbers and the pictures of one pair of jeans, in one folder."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

from drafting.errors import DraftRefused, Problem, Severity
from outputs.block_picture import draw_block_picture
from outputs.ease_picture import draw_ease_picture
from outputs.folder import write_folder
from outputs.measurement_file import MeasurementFile
from outputs.paper import PAPERS
from outputs.pdf import PageTooLarge, PrintReport, write_single_page_pdf, write_tiled_pdf
from outputs.readings import median_words, said_medians
from outputs.style_options import StyleOptions
from outputs.summary import summary_lines, wrapped
from outputs.units import Unit, format_length
from styles.cloth import Cloth
from styles.figures import jeans_figures
from styles.jeans import Jeans, make_jeans
from styles.room import block_for
from styles.style import Style


def draft_into(
    target: Path,
    read: MeasurementFile,
    style: Style,
    options: StyleOptions,
    *,
    paper: str,
    force: bool,
    anyway: bool = False,
) -> Iterator[str]:
    """Draft and write everything into the folder `target`; yield the lines to print.

    Args:
        target: the folder; its own place must exist.
        read: the measurements.
        style: what to draft.
        options: what shall be otherwise; its cloth counts before the file's.
        paper: a name of `outputs.paper.PAPERS`, or "single" for one big page.
        force: replace files that are already there.
        anyway: write a pattern that a check found faulty.

    Raises:
        DraftRefused: the measurements, a fault (without `anyway`), the folder (without `force`) or the disk
            do not allow it; the folder is as it was before.
    """
    cloth = Cloth(**{**read.cloth, **options.cloth})
    style = options.style(style, read.measurements.waist_taken_at)
    jeans = make_jeans(
        block_for(read.measurements, style, cloth),
        style,
        wearer=read.wearer,
        date=read.taken_on,
        cloth=cloth,
    )
    if jeans.faults and not anyway:
        raise _faulty(jeans, read)
    said = said_medians(read.readings, read.measurements.given(), read.unit)
    medians = wrapped(f"taken several times: {said}") if said else []
    summary = [*medians, *summary_lines(jeans, read.unit, read.warnings), ""]
    reports: list[PrintReport] = []
    pdf, *others = write_folder(
        target,
        {
            f"pattern-{paper}.pdf": lambda path: reports.append(_write_pdf(jeans, path, paper, read.unit)),
            "figures.json": lambda path: _write_figures(jeans, path, read),
            "block.png": lambda path: draw_block_picture(jeans.block, path, wearer=read.wearer),
            "ease.png": lambda path: draw_ease_picture(jeans.block, path, wearer=read.wearer, unit=read.unit),
        },
        force=force,
    )
    yield from summary
    for report in reports:
        if report.shortened:
            yield from wrapped(
                f"labels shortened on: {'; '.join(report.shortened)}; the piece list has them whole"
            )
        for warning in report.warnings:
            yield from wrapped(f"warning: {warning}")
        sheets = "1 page" if report.sheets == 1 else f"{report.sheets} sheets"
        yield f"{pdf}: {sheets}"
    yield from map(str, others)


def _faulty(jeans: Jeans, read: MeasurementFile) -> DraftRefused:
    problems = [
        Problem(fault.where, fault.say(lambda mm: format_length(mm, read.unit)), Severity.REFUSAL)
        for fault in jeans.faults
    ]
    advice = "The draft would not sew together; nothing was written. Give --anyway to see it nevertheless."
    return DraftRefused([*problems, Problem("", advice, Severity.REFUSAL)])


def _write_pdf(jeans: Jeans, path: Path, paper: str, unit: Unit) -> PrintReport:
    with path.open("wb") as stream:
        if paper != "single":
            form = PAPERS[paper]
            return write_tiled_pdf(jeans.pattern, stream, paper=form, show=lambda mm: format_length(mm, unit))
        try:
            return write_single_page_pdf(jeans.pattern, stream)
        except PageTooLarge as error:
            message = f"{str(error)[0].upper()}{str(error)[1:]}."
            raise DraftRefused([Problem("--paper single", message, Severity.REFUSAL)]) from error


def _write_figures(jeans: Jeans, path: Path, read: MeasurementFile) -> None:
    figures = jeans_figures(jeans)
    for key, count in read.readings.items():
        # A side's own reading is no value of the whole body.
        if key in figures["body"]:
            figures["body"][key]["source"] = median_words(count)
    text = json.dumps(figures, ensure_ascii=False, indent=2, allow_nan=False)
    path.write_text(text + "\n", encoding="utf-8", newline="\n")
