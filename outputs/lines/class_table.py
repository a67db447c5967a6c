"""A class in lines: what became of everybody."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from drafting.base.errors import DraftRefused
from drafting.base.units import Unit
from outputs.jobs.class_table import LEVELS, SUMMARY_FILE, Outcome, State

_ROW = "{:<22}" + "{:>7}" * len(LEVELS) + "{:>7}{:>7}{:>7}"
_NAME = 21
"""Letters of a name that the table has room for."""


def summary_table(outcomes: Sequence[Outcome], unit: Unit) -> Iterator[str]:
    """Yield the table in lines of 80 letters, lengths to a tenth of the unit."""
    yield _ROW.format(f"pattern, {unit.value}", *LEVELS, "crotch", "found", "sheets").rstrip()
    for outcome in outcomes:
        name = outcome.name if len(outcome.name) <= _NAME else f"{outcome.name[: _NAME - 1]}…"
        if outcome.numbers is None:
            yield f"{name:<22}refused"
        else:
            mark = " *" if outcome.numbers.warnings else ""
            lengths = ["–" if mm is None else f"{mm / unit.mm:.1f}" for mm in outcome.lengths]
            yield _ROW.format(name, *lengths, outcome.numbers.sheets) + mark
    if any(outcome.numbers and outcome.numbers.warnings for outcome in outcomes):
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
