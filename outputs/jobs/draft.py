"""One pair of jeans drafted: the pattern, the numbers and the pictures."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import partial

from drafting.base.errors import Problem, Severity
from drafting.base.findings import Finding, literal
from drafting.base.units import format_length
from drafting.pieces.pattern import Pattern
from drafting.report.block_figures import finding_figures
from outputs.files.writers import Writer, late_writer, text_writer
from outputs.fit.block_picture import write_block_picture
from outputs.fit.ease_picture import write_ease_picture
from outputs.jobs.options import DraftOptions
from outputs.jobs.result import Result
from outputs.print.chosen_pieces import choose
from outputs.print.formats import pattern_writers
from outputs.print.options import PrintOptions
from outputs.print.pattern_print import PaperUse, PatternPrint, uses
from outputs.reading.draft_record import INPUTS_FILE, Inputs
from outputs.reading.jeans_from_file import jeans_from, refuse_faults
from outputs.reading.measurements_file import MeasurementFile
from outputs.reading.tape_readings import median_words
from outputs.words.progress import Progress, silent
from styles.choice.style import Style
from styles.making.jeans import Jeans
from styles.making.jeans_figures import jeans_figures
from styles.making.toile import toile_pieces


@dataclass(frozen=True, kw_only=True, eq=False)
class Drafted(Result):
    """A pair of jeans, drafted and laid out.

    Attributes:
        read: The measurements file.
        jeans: What was drafted: pieces, seams, and the block that they were cut from.
        prints: The pattern with the pieces that are printed, on its paper; None where none is printed.
        formats: In which the pattern is written.
    """

    read: MeasurementFile
    jeans: Jeans
    prints: PatternPrint | None
    formats: tuple[str, ...]

    @property
    def paper(self) -> PaperUse | None:
        """How much paper the PDF takes; None where none is written."""
        return self.prints.use if self.prints and "pdf" in self.formats else None

    @property
    def sheets(self) -> dict[str, int]:
        """How many sheets each PDF has, by its name."""
        return self.prints.sheets if self.prints and "pdf" in self.formats else {}

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What there is to say: of the measurements first, each with its key, then of the draft."""
        return (*map(_unusual, self.warnings), *self.jeans.pattern.findings)


def draft(
    read: MeasurementFile, style: Style, asked: DraftOptions, *, progress: Progress = silent
) -> Drafted:
    """Draft and lay out the jeans of a measurements file.

    Raises:
        DraftRefused: the measurements, a fault (unless drafted `anyway`) or the names of the pieces to print
            do not allow it.
    """
    progress(f"drafting {style.name}")
    inputs = Inputs.of(read, style, asked.changes)
    jeans = inputs.jeans()
    if not asked.anyway:
        refuse_faults([jeans], read)
    return laid_out(read, inputs, jeans, pattern_to_print(jeans.pattern, asked.printing), asked)


def laid_out(
    read: MeasurementFile, inputs: Inputs, jeans: Jeans, pattern: Pattern | None, asked: DraftOptions
) -> Drafted:
    """Return jeans with their files.

    Args:
        read: The measurements file.
        inputs: What the jeans were made from.
        jeans: The jeans.
        pattern: What of their pattern is printed; None for nothing.
        asked: How it is printed.
    """
    show = partial(format_length, unit=read.unit)
    prints = PatternPrint(pattern, asked.printing, show) if pattern else None
    drafted = Drafted(warnings=read.warnings, read=read, jeans=jeans, prints=prints, formats=asked.formats)
    block, wearer = jeans.block, read.wearer
    files: dict[str, Writer] = {
        **(pattern_writers(prints, asked.formats) if prints else {}),
        "figures.json": late_writer(lambda: _figures_text(drafted)),
        INPUTS_FILE: text_writer(inputs.text(printed_as(asked.printing, asked.formats))),
        "block.png": lambda stream: write_block_picture(block, stream, wearer=wearer),
        "ease.png": lambda stream: write_ease_picture(block, stream, wearer=wearer, unit=read.unit),
    }
    return replace(drafted, files=files)


def count_sheets(
    read: MeasurementFile, style: Style, asked: DraftOptions, *, progress: Progress = silent
) -> Mapping[str, PaperUse]:
    """Return how much of each paper the pattern takes, by the paper's name.

    Raises:
        DraftRefused: the measurements do not allow it, or no piece has a name that was asked for.
    """
    progress(f"laying {style.name} on every paper")
    pattern = pattern_to_print(jeans_from(read, style, asked.changes).pattern, asked.printing)
    return uses(pattern, asked.printing, partial(format_length, unit=read.unit))


def printed_as(printing: PrintOptions, formats: Iterable[str]) -> dict[str, object]:
    """Return what is recorded of the print."""
    return {
        "paper": printing.name,
        "orientation": printing.orientation.value,
        "only": list(printing.only),
        "apart": printing.apart,
        "formats": sorted(set(formats)),
    }


def pattern_to_print(pattern: Pattern, options: PrintOptions) -> Pattern:
    """Return the pattern with the pieces that are to be printed.

    Raises:
        DraftRefused: no piece has such a name.
    """
    if options.toile:
        return replace(pattern, printed=toile_pieces(pattern))
    return choose(pattern, options.only) if options.only else pattern


def _unusual(problem: Problem) -> Finding:
    return Finding("measurement", Severity.WARNING, problem.key, literal(str(problem)))


def _figures_text(drafted: Drafted) -> str:
    figures = jeans_figures(drafted.jeans)
    for key, count in drafted.read.readings.items():
        # A side's own reading is no value of the whole body.
        if key in figures["body"]:
            figures["body"][key]["source"] = median_words(count)
    figures["findings"] = [finding_figures(finding) for finding in drafted.findings]
    figures["sheets"] = drafted.sheets
    return json.dumps(figures, ensure_ascii=False, indent=2, allow_nan=False) + "\n"
