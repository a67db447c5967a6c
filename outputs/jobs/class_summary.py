"""The table of a class: what became of everybody, on the terminal and as a table to open in a spreadsheet."""

from __future__ import annotations

import csv
import os
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from io import StringIO
from pathlib import Path

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.units import Unit
from outputs.jobs.class_run import LEVELS, Outcome, State

SUMMARY_FILE = "summary.csv"
"""Its name in the folder of the class."""

_STARTS = "number,person,state,folder"
_ROW = "{:<22}" + "{:>7}" * len(LEVELS) + "{:>7}{:>7}{:>7}"
_NAME = 21
"""Letters of a name that the terminal's table has room for."""


def refuse_foreign_summary(out: Path) -> None:
    """Refuse a folder with a table of the same name that is not one of ours.

    Raises:
        DraftRefused: with what to do instead.
    """
    path = out / SUMMARY_FILE
    if os.path.lexists(path) and not _starts_like_ours(path):
        message = "This is not the table of a class, and would be overwritten; give --out for another place."
        raise DraftRefused([Problem("", message, Severity.REFUSAL)], str(path))


def _starts_like_ours(path: Path) -> bool:
    # That of a large class is longer than what a person types, which `read_text` is for.
    if not path.is_file():
        return False
    with path.open("rb") as table:
        return table.read(100).decode("utf-8-sig", "replace").startswith(_STARTS)


def summary_csv(outcomes: Iterable[Outcome], unit: Unit) -> bytes:
    """Return the table as CSV, lengths in `unit` to two places; in UTF-8, marked as such for spreadsheets.

    Girths are those of the pattern; the crotch seam is that wanted and that found.
    """
    text = StringIO()
    table = csv.writer(text, lineterminator="\n")
    lengths = [*LEVELS, "crotch_target", "crotch_found"]
    names = [f"{name}_{unit.value}" for name in lengths]
    table.writerow([*_STARTS.split(","), *names, "sheets", "warnings", "place", "refused"])
    for outcome in outcomes:
        drafted = outcome.state is not State.REFUSED
        table.writerow(
            [
                outcome.number, outcome.name, outcome.state.value, outcome.folder,
                *(_number(mm, unit) for mm in _lengths(outcome)),
                *([outcome.sheets, outcome.warnings] if drafted else ["", ""]),
                outcome.place, " ".join(str(problem) for problem in _refusals(outcome)),
            ]
        )  # fmt: skip
    # The name of a file need not be text.
    return text.getvalue().encode("utf-8-sig", "backslashreplace")


def summary_table(outcomes: Sequence[Outcome], unit: Unit) -> Iterator[str]:
    """Yield the table in lines of 80 letters, lengths to a tenth of the unit."""
    yield _ROW.format(f"pattern, {unit.value}", *LEVELS, "crotch", "found", "sheets").rstrip()
    for outcome in outcomes:
        name = outcome.name if len(outcome.name) <= _NAME else f"{outcome.name[: _NAME - 1]}…"
        if outcome.state is State.REFUSED:
            yield f"{name:<22}refused"
        else:
            mark = " *" if outcome.warnings else ""
            lengths = ["–" if mm is None else f"{mm / unit.mm:.1f}" for mm in _lengths(outcome)]
            yield _ROW.format(name, *lengths, outcome.sheets) + mark
    if any(outcome.warnings for outcome in outcomes):
        yield f"* has warnings; {SUMMARY_FILE} counts them"


def counted(outcomes: Iterable[Outcome]) -> str:
    """Return "198 drafted, 1 there already, 1 refused"."""
    counts = Counter(outcome.state for outcome in outcomes)
    return ", ".join(f"{counts[state]} {state.value}" for state in State if counts[state]) or "nobody drafted"


def refusal_lines(outcome: Outcome) -> str:
    """Return why somebody was refused, each problem behind the place where the measurements stand."""
    told = [
        replace(p, source="", message=f"{p.source}: {p.message}" if p.source else p.message)
        for p in outcome.problems
    ]
    return str(DraftRefused(told, f"{outcome.place}: {outcome.name}"))


def _refusals(outcome: Outcome) -> Iterator[Problem]:
    return (problem for problem in outcome.problems if problem.severity is Severity.REFUSAL)


def _lengths(outcome: Outcome) -> tuple[float | None, ...]:
    """Return girths and crotch seam, mm; None where there is none."""
    return (*(outcome.girths or (None,) * len(LEVELS)), *outcome.crotch)


def _number(mm: float | None, unit: Unit) -> str:
    return "" if mm is None else f"{mm / unit.mm:.2f}"
