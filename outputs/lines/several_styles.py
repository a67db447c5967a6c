"""Several styles in lines: their numbers side by side, what there is to say of them, and what was written."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.base.errors import Severity
from drafting.base.units import Unit, format_length
from outputs.compare.comparison import HEADS, Compared, cells, said_shared
from outputs.files.writers import Written
from outputs.fit.fit_words import UNIT_HEADS
from outputs.jobs.several_styles import SeveralDrafted
from outputs.lines.draft import medians
from outputs.lines.wrapped import WIDTH, wrapped
from outputs.lines.written import lacking, written_files
from styles.making.jeans import Jeans

_LENGTHS = 6
"""So many columns of the comparison are lengths."""


def several_lines(several: SeveralDrafted, written: Written) -> Iterator[str]:
    """Yield the comparison of styles that were written, what there is to say of them, and their files."""
    unit = several.read.unit
    yield from medians(several.read)
    yield from _table(several.compared, unit)
    for problem in several.warnings:
        yield from wrapped(f"warning: {problem}")
    yield from _findings([each.jeans for each in several.drafted], unit)
    yield ""
    for compared, drafted in zip(several.compared, several.drafted, strict=True):
        if compared.shared:
            yield from wrapped(f"{compared.style}: {said_shared(compared)}")
        if drafted.prints is None:
            yield from wrapped(f"{compared.style}: no pattern of its own is written")
    yield from lacking(written.files.values())
    yield from written_files(written)


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
    styles: dict[tuple[Severity, str], list[str]] = {}
    for jeans in made:
        for finding in jeans.pattern.findings:
            said = f"{finding.where}: {finding.say(lambda mm: format_length(mm, unit))}"
            styles.setdefault((finding.severity, said), []).append(jeans.style.name)
    for (level, said), names in styles.items():
        if len(names) == len(made):
            yield from wrapped(f"{level.value}: {said}")
        elif level is not Severity.NOTE:
            yield from wrapped(f"{level.value} ({', '.join(names)}): {said}")
