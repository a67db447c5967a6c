"""The lengths that a student measured, read from TOML or CSV, and the form to type them into."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.units import LengthError, Unit, format_length, parse_length
from drafting.lesson.hand_draft import Instruction
from outputs.files.all_problems import by_line
from outputs.files.table import SEPARATORS, separator, table_rows
from outputs.files.text_file import TextFile
from outputs.files.toml_slips import MOST_LINES, TOO_LONG, read_toml
from outputs.lesson.words import line_ends

TABLE = "lengths"
_SEPARATOR = re.compile(f"[{SEPARATORS}]")


@dataclass(frozen=True)
class _Entry:
    label: str
    value: object
    line: int | None


def read_lengths(file: TextFile, steps: Iterable[Instruction], unit: Unit) -> dict[str, float]:
    """Return the measured lengths in mm by the number of their step; empty ones are left out.

    Args:
        file: TOML as `lengths_form` writes it, or lines "13, 6.9" where the name ends in .csv.
        steps: The steps of the draft.
        unit: Of a number without one.

    Raises:
        DraftRefused: with everything that cannot be read or meant.
    """
    known = {step.label: step for step in steps}
    longest = max(step.result for step in known.values())
    entries, problems, unit = (_csv if file.suffix == ".csv" else _toml)(file.text, unit)
    lengths: dict[str, float] = {}
    for entry in entries:
        problem = _refusal(entry, known, lengths, unit, longest)
        if problem:
            problems.append(problem)
    if not lengths and not problems:
        problems.append(Problem("", "No length is filled in.", Severity.REFUSAL))
    if problems:
        raise DraftRefused(by_line(problems), file.source)
    return lengths


def _refusal(
    entry: _Entry, known: dict[str, Instruction], lengths: dict[str, float], unit: Unit, longest: float
) -> Problem | None:
    """Read one entry into `lengths`, or return what is wrong with it."""
    shown = str(entry.value)[:40]
    if isinstance(entry.value, str) and not entry.value.strip():
        return None
    plausible = ""
    if entry.label not in known:
        numbers = [label for label in known if label.isdigit()]
        message, plausible = "No step of this draft has this number.", f"{numbers[0]} to {numbers[-1]}"
    elif entry.label in lengths:
        message = "This step is given twice; keep one of the two."
    else:
        try:
            value = entry.value if isinstance(entry.value, str | int | float) else str(entry.value)
            mm = parse_length(value, unit)
        except LengthError as error:
            message = f"The length cannot be read: {error}."
        else:
            if mm <= 2 * longest:
                lengths[entry.label] = mm
                return None
            message = "No line of this draft is nearly so long; lengths are full size."
            plausible = f"up to {format_length(longest, unit)}"
    return Problem(f"step {entry.label[:20]}", message, Severity.REFUSAL, shown, plausible, entry.line)


def _toml(text: str, unit: Unit) -> tuple[list[_Entry], list[Problem], Unit]:
    read = read_toml(text)
    problems = [replace(slip, key=slip.key.removeprefix(f"{TABLE}.")) for slip in read.slips]
    tables = read.tables or {}
    named = Unit.named(str(tables.get("unit", unit.value)))
    if named is None:
        words = " or ".join(u.value for u in Unit)
        line = read.lines.get("unit")
        problems.append(
            Problem("unit", "This is no unit.", Severity.REFUSAL, str(tables["unit"])[:40], words, line)
        )
    found = tables.get(TABLE, {})
    for name in tables:
        if name not in ("unit", TABLE):
            message = f"Only unit, and step numbers below the line [{TABLE}], stand in this file."
            problems.append(Problem(name[:40], message, Severity.REFUSAL, line=read.lines.get(name)))
    if not isinstance(found, dict):
        message = f"This should be a line [{TABLE}] with step numbers below it."
        return [], [*problems, Problem(TABLE, message, Severity.REFUSAL)], named or unit
    entries = [_Entry(label, value, read.lines.get(f"{TABLE}.{label}")) for label, value in found.items()]
    return entries, problems, named or unit


def _csv(text: str, unit: Unit) -> tuple[list[_Entry], list[Problem], Unit]:
    entries, problems = [], []
    if len(text.splitlines()) > MOST_LINES:
        return [], [Problem("", TOO_LONG, Severity.REFUSAL)], unit
    between = separator(text)
    for row in table_rows(text):
        if row.cells is None:
            message = "A quotation mark in this line does not close, or something follows it in its cell."
            problems.append(Problem("", message, Severity.REFUSAL, line=row.number))
            continue
        # Two cells, whatever parts them: what a decimal comma parts further on is one length.
        whole = between.join(row.cells)
        label, *length = (part.strip().strip("\"'") for part in _SEPARATOR.split(whole, 1))
        if row.empty or (row.number == 1 and not any(letter.isdigit() for letter in whole)):
            continue
        if length:
            entries.append(_Entry(label, length[0], row.number))
        else:
            message = 'A line is a step number, a comma and a length: "13, 6.9".'
            problems.append(Problem("", message, Severity.REFUSAL, whole.strip()[:40], line=row.number))
    return entries, problems, unit


def lengths_form(wearer: str, steps: Iterable[Instruction], unit: Unit) -> str:
    """Return an empty form for the lengths of some steps."""
    return "\n".join(_form(wearer, steps, unit)) + "\n"


def _form(wearer: str, steps: Iterable[Instruction], unit: Unit) -> Iterator[str]:
    yield f"# Lengths measured on a draft for {' '.join(wearer.split())}, full size: on a draft at 1:4,"
    yield "# four times what the ruler shows. Leave what was not drawn empty."
    yield f'unit = "{unit.value}"  # cm, mm or in'
    yield ""
    yield f"[{TABLE}]"
    for step in steps:
        yield f'{step.label} = ""  # {step.panel} {step.name}, {line_ends(step)}'
