"""What `draft` writes for several styles in one run: the files of each, and how they compare."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path

from drafting.base.findings import Level, Sentence, literal
from drafting.base.units import Unit, format_length
from drafting.pieces.pattern import Pattern, Section
from outputs.compare.comparison import HEADS, Compared, cells, compare, said_shared
from outputs.compare.comparison_sheet import ComparisonSheet
from outputs.files.folder import Writer, safe_name, write_folder
from outputs.files.gathering import gather
from outputs.fit.summary import UNIT_HEADS, WIDTH, wrapped
from outputs.jobs.draft import (
    TO_PRINT,
    numbers_and_pictures,
    pattern_to_print,
    printed_as,
    said_files,
    said_of,
    said_readings,
)
from outputs.paper.paper import A4, LETTER, PAPERS, Paper, Roll
from outputs.print.files import PatternPrint
from outputs.print.formats import pattern_writers
from outputs.print.options import PrintOptions
from outputs.reading.inputs import Inputs
from outputs.reading.jeans_from_file import refuse_faults
from outputs.reading.measurements_file import MeasurementFile
from outputs.reading.style_options import StyleOptions
from outputs.words.progress import tell
from outputs.words.report import PrintReport
from styles.choice.style import Style
from styles.making.jeans import Jeans

_LENGTHS = 6
"""So many columns of the comparison are lengths."""


def draft_several_into(
    target: Path,
    read: MeasurementFile,
    styles: Sequence[Style],
    options: StyleOptions,
    *,
    printing: PrintOptions,
    formats: Sequence[str],
    shared_once: bool,
    force: bool,
    anyway: bool,
) -> Iterator[str]:
    """Draft all styles and write everything into the folder `target`; yield the lines to print.

    The files of a style begin with its name: "straight-pattern-a4.pdf", "straight-figures.json".

    Args:
        target: the folder; its own place must exist.
        read: the measurements.
        styles: what to draft, their names apart.
        options: what shall be otherwise, in every style.
        printing: see `outputs.jobs.draft.draft_into`.
        formats: likewise.
        shared_once: print pieces that several styles share with the first of them alone.
        force: replace files that are already there.
        anyway: write patterns that a check found faulty.

    Raises:
        DraftRefused: with what is wrong in any of the styles; see `outputs.jobs.draft.draft_into`.
    """
    inputs = [Inputs.of(read, style, options) for style in styles]
    made = gather(*(partial(_drafted, each) for each in inputs))
    if not anyway:
        refuse_faults(made, read)
    several = compare(made)
    patterns = gather(*(partial(_printed, each, printing, shared_once=shared_once) for each in several))
    sheet = ComparisonSheet.of(several, paper=_page_for(printing.paper), unit=read.unit)
    reports: dict[str, PrintReport] = {}
    own: dict[str, dict[str, PrintReport]] = {}
    writers: dict[str, Writer] = {}
    printed = printed_as(printing, formats)
    for compared, given, pattern in zip(several, inputs, patterns, strict=True):
        style = f"{safe_name(compared.style)}-"
        told = own.setdefault(style, {})
        files = numbers_and_pictures(given, compared.jeans, read, told, printed)
        if pattern:
            prints = PatternPrint(pattern, printing, partial(format_length, unit=read.unit))
            if "pdf" in formats:
                yield f"{TO_PRINT}, {compared.style}: {prints.said}"
            files = {**pattern_writers(prints, formats, told), **files}
        writers |= {f"{style}{name}": write for name, write in files.items()}
    writers["comparison.pdf"] = lambda path: _write_pdf(sheet, path, reports)
    writers["comparison.png"] = sheet.write_png
    written = write_folder(target, writers, force=force)

    reports |= {style + name: report for style, told in own.items() for name, report in told.items()}
    yield from said_readings(read)
    yield from _table(several, read.unit)
    for problem in read.warnings:
        yield from wrapped(f"warning: {problem}")
    yield from _findings(made, read.unit)
    yield ""
    for compared, pattern in zip(several, patterns, strict=True):
        if compared.shared:
            yield from wrapped(f"{compared.style}: {said_shared(compared)}")
        if pattern is None:
            yield from wrapped(f"{compared.style}: no pattern of its own is written")
    yield from said_of(reports.values())
    yield from said_files(written, reports)


def _drafted(inputs: Inputs) -> Jeans:
    tell(f"drafting {inputs.style.name}")
    return inputs.jeans()


def _printed(compared: Compared, printing: PrintOptions, *, shared_once: bool) -> Pattern | None:
    """Return the pattern as it is printed: without the shared pieces, if wanted, which is told instead.

    None where no piece is left.
    """
    pattern = pattern_to_print(compared.jeans.pattern, printing)
    if not (shared_once and compared.shared):
        return pattern
    own = tuple(piece.id for _, piece in pattern.numbered if piece.id not in compared.shared)
    elsewhere = Section("Printed with another style", (Sentence(f"{literal(said_shared(compared))}."),))
    return replace(pattern, printed=own, sections=(elsewhere, *pattern.sections)) if own else None


def _page_for(paper: Paper | Roll | None) -> Paper:
    """Return the sheet of the comparison: A4, or Letter where the pattern is on American paper."""
    same = {PAPERS["either"]: PAPERS["either"], LETTER: LETTER, PAPERS["legal"]: LETTER}
    return same.get(paper, A4) if isinstance(paper, Paper) else A4


def _write_pdf(sheet: ComparisonSheet, path: Path, reports: dict[str, PrintReport]) -> None:
    with path.open("wb") as stream:
        reports[path.name] = sheet.write_pdf(stream)


def _table(several: Sequence[Compared], unit: Unit) -> Iterator[str]:
    """Yield the numbers of the comparison, in 80 letters a line; of the cloth the warnings tell."""
    lines = [*zip(*HEADS, strict=True), *(cells(compared, unit) for compared in several)]
    rows = [(*line[:_LENGTHS], line[-1]) for line in lines]
    wide = [1 + max(map(len, column)) for column in zip(*rows, strict=True)]
    room = WIDTH - sum(wide)
    names = (UNIT_HEADS[unit], "", *(compared.style for compared in several))
    for name, words in zip(names, rows, strict=True):
        columns = (f"{word:>{width}}" for word, width in zip(words, wide, strict=True))
        yield f"{name[: room - 1]:<{room}}{''.join(columns)}"


def _findings(made: Sequence[Jeans], unit: Unit) -> Iterator[str]:
    """Yield what there is to say, what styles have in common once; figures.json has notes of some alone."""
    styles: dict[tuple[Level, str], list[str]] = {}
    for jeans in made:
        for finding in jeans.pattern.findings:
            said = f"{finding.where}: {finding.say(lambda mm: format_length(mm, unit))}"
            styles.setdefault((finding.level, said), []).append(jeans.style.name)
    for (level, said), names in styles.items():
        if len(names) == len(made):
            yield from wrapped(f"{level.value}: {said}")
        elif level is not Level.NOTE:
            yield from wrapped(f"{level.value} ({', '.join(names)}): {said}")
