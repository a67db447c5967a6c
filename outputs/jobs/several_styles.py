"""Several styles drafted for one wearer: the files of each, and how they compare."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial

from drafting.base.findings import Sentence, literal
from drafting.pieces.pattern import Pattern, Section
from outputs.compare.comparison import Compared, compare, said_shared
from outputs.compare.comparison_sheet import ComparisonSheet
from outputs.files.all_problems import gather_all
from outputs.files.writers import Writer
from outputs.jobs.draft import Drafted, laid_out, pattern_to_print
from outputs.jobs.options import DraftOptions
from outputs.jobs.result import Result
from outputs.paper.paper import A4, LETTER, PAPERS, Paper, Roll
from outputs.reading.draft_record import Inputs
from outputs.reading.jeans_from_file import refuse_faults
from outputs.reading.measurements_file import MeasurementFile
from outputs.words.file_names import safe_name
from outputs.words.progress import Progress, silent
from styles.choice.style import Style
from styles.making.jeans import Jeans


@dataclass(frozen=True, kw_only=True, eq=False)
class SeveralDrafted(Result):
    """Several styles of one wearer.

    Attributes:
        read: The measurements file.
        compared: The styles beside each other.
        drafted: Each with its own files, without the style's name before theirs.
    """

    read: MeasurementFile
    compared: tuple[Compared, ...]
    drafted: tuple[Drafted, ...]


def draft_several(
    read: MeasurementFile,
    styles: Sequence[Style],
    asked: DraftOptions,
    *,
    shared_once: bool,
    progress: Progress = silent,
) -> SeveralDrafted:
    """Draft all styles and compare them.

    The files of a style begin with its name: "straight-pattern-a4.pdf", "straight-figures.json".

    Args:
        read: The measurements.
        styles: What to draft, their names apart.
        asked: The same for every style.
        shared_once: Print pieces that several styles share with the first of them alone.
        progress: Is told what is drafted.

    Raises:
        DraftRefused: with what is wrong in any of the styles; see `outputs.jobs.draft.draft`.
    """
    inputs = [Inputs.of(read, style, asked.changes) for style in styles]
    made = gather_all(partial(_jeans, each, progress) for each in inputs)
    if not asked.anyway:
        refuse_faults(made, read)
    several = compare(made)
    patterns = gather_all(partial(_printed, each, asked, shared_once=shared_once) for each in several)
    drafted = tuple(
        laid_out(read, given, compared.jeans, pattern, asked)
        for given, compared, pattern in zip(inputs, several, patterns, strict=True)
    )
    sheet = ComparisonSheet.of(several, paper=_page_for(asked.printing.paper), unit=read.unit)
    files: dict[str, Writer] = {
        f"{safe_name(each.jeans.style.name)}-{name}": write
        for each in drafted
        for name, write in each.files.items()
    }
    files |= {"comparison.pdf": sheet.write_pdf, "comparison.png": sheet.write_png}
    return SeveralDrafted(files=files, warnings=read.warnings, read=read, compared=several, drafted=drafted)


def _jeans(inputs: Inputs, progress: Progress) -> Jeans:
    progress(f"drafting {inputs.style.name}")
    return inputs.jeans()


def _printed(compared: Compared, asked: DraftOptions, *, shared_once: bool) -> Pattern | None:
    """Return the pattern as it is printed: without the shared pieces, if wanted, which is told instead.

    None where no piece is left.
    """
    pattern = pattern_to_print(compared.jeans.pattern, asked.printing)
    if not (shared_once and compared.shared):
        return pattern
    own = tuple(piece.id for _, piece in pattern.numbered if piece.id not in compared.shared)
    elsewhere = Section("Printed with another style", (Sentence(f"{literal(said_shared(compared))}."),))
    return replace(pattern, printed=own, sections=(elsewhere, *pattern.sections)) if own else None


def _page_for(paper: Paper | Roll | None) -> Paper:
    """Return the sheet of the comparison: A4, or Letter where the pattern is on American paper."""
    same = {PAPERS["either"]: PAPERS["either"], LETTER: LETTER, PAPERS["legal"]: LETTER}
    return same.get(paper, A4) if isinstance(paper, Paper) else A4
