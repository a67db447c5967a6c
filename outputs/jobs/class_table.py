"""A class: what became of each person, and the table of all to open in a spreadsheet."""

from __future__ import annotations

import csv
from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum
from io import StringIO

from drafting.base.errors import Problem, Severity
from drafting.base.units import Unit
from outputs.files.writers import bytes_writer
from outputs.jobs.result import Result

LEVELS = ("waist", "hip", "thigh", "knee", "hem")
"""The girths that are told of each pattern, by their names in `figures.json`."""
SUMMARY_FILE = "summary.csv"
"""The name of the table."""
STARTS = ("number", "person", "state", "folder")
"""Its first columns, by which it is known."""


class State(Enum):
    """What became of a person."""

    DRAFTED = "drafted"
    THERE = "there already"
    """The same draft lay in its folder; it was left as it is."""
    REFUSED = "refused"


@dataclass(frozen=True, kw_only=True)
class Numbers:
    """What the table tells of a draft, as exact as `figures.json` has it.

    Attributes:
        girths: Of the pattern at `LEVELS`, mm.
        crotch: The crotch seam wanted and found, mm; None where the crotch length is not known.
        sheets: Of all PDFs.
        warnings: Of the measurements and of the pattern.
    """

    girths: tuple[float, ...]
    crotch: tuple[float | None, float]
    sheets: int
    warnings: int


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """What became of one person; small, so that many can be kept.

    Attributes:
        number: In the order of the class, from 1.
        place: Where the measurements stand.
        name: The person.
        folder: The name of the folder in the class's own.
        state: Whether it was drafted.
        numbers: Of the draft, None where there is none.
        problems: Why it was refused.
    """

    number: int
    place: str
    name: str
    folder: str
    state: State
    numbers: Numbers | None = None
    problems: tuple[Problem, ...] = ()

    @property
    def lengths(self) -> tuple[float | None, ...]:
        """Girths and crotch seam, mm; None where there is none."""
        if not self.numbers:
            return (None,) * (len(LEVELS) + 2)
        return (*self.numbers.girths, *self.numbers.crotch)


def class_table(outcomes: Iterable[Outcome], unit: Unit) -> Result:
    """Return the table as CSV, lengths in `unit` to two places; in UTF-8, marked as such for spreadsheets.

    Girths are those of the pattern; the crotch seam is that wanted and that found.
    """
    text = StringIO()
    table = csv.writer(text, lineterminator="\n")
    lengths = [*LEVELS, "crotch_target", "crotch_found"]
    names = [f"{name}_{unit.value}" for name in lengths]
    table.writerow([*STARTS, *names, "sheets", "warnings", "place", "refused"])
    for outcome in outcomes:
        numbers = outcome.numbers
        refusals = (p for p in outcome.problems if p.severity is Severity.REFUSAL)
        table.writerow(
            [
                outcome.number, outcome.name, outcome.state.value, outcome.folder,
                *("" if mm is None else f"{mm / unit.mm:.2f}" for mm in outcome.lengths),
                *([numbers.sheets, numbers.warnings] if numbers else ["", ""]),
                outcome.place, " ".join(map(str, refusals)),
            ]
        )  # fmt: skip
    # The name of a file need not be text.
    content = text.getvalue().encode("utf-8-sig", "backslashreplace")
    return Result(files={SUMMARY_FILE: bytes_writer(content)})
