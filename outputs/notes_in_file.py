"""Finds what is filled in behind a # of a measurements file, where it would go unused without a word."""

from __future__ import annotations

import re
from dataclasses import dataclass

from drafting.corrections import CORRECTIONS
from drafting.errors import Problem, Severity
from drafting.measurement_table import MEASUREMENTS
from outputs.cloth_entries import CLOTH_ENTRIES
from outputs.fitting_entries import TABLE as FITTING

_NOTED = re.compile(r"\s*#[#\s]*")
_HEADING = re.compile(r"\[\s*(?P<name>left|right|cloth|fitting)\s*\]\s*(#.*)?$")
_ENTRY = re.compile(r"(?P<name>[A-Za-z_]+)\s*=\s*(?P<value>[^#]*[^#\s])")
_EMPTY = ('""', "''", "[]")
_OF_TABLE = {
    "left": MEASUREMENTS,
    "right": MEASUREMENTS,
    "cloth": CLOTH_ENTRIES,
    FITTING: CORRECTIONS,
}
_ENTRIES = {*MEASUREMENTS, *CLOTH_ENTRIES, *CORRECTIONS}
"""What stands behind a # in the blank file."""


@dataclass(frozen=True)
class Notes:
    """What was found.

    Attributes:
        text: The text with empty lines for what stands below a heading that is still a note.
        problems: A refusal for each of those lines, and a warning for each value behind a #.
    """

    text: str
    problems: tuple[Problem, ...]


def read_notes(text: str) -> Notes:
    """Return what is filled in behind a #, and below a heading behind one; never raises.

    A value behind a # is passed over where the same name has one that counts: it may be kept from before.
    """
    rows = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    refused: list[Problem] = []
    noted: dict[str, Problem] = {}
    counting = set()
    table, heading_line = "", 0
    for number, row in enumerate(rows, start=1):
        start = _NOTED.match(row)
        bare = row[start.end() :] if start else row.strip()
        if heading := _HEADING.match(bare):
            table, heading_line = heading["name"], number if start else 0
        elif bare.startswith("[") and not start:
            table, heading_line = "", 0
        entry = _ENTRY.match(bare)
        if not entry or entry["value"] in _EMPTY or entry["name"] not in _OF_TABLE.get(table, _ENTRIES):
            continue
        key = f"{table}.{entry['name']}".lstrip(".")
        if not start and heading_line:
            message = (
                f"The heading [{table}] above it, line {heading_line}, stands behind a #. Take it away too."
            )
            refused.append(Problem(key, message, Severity.REFUSAL, entry["value"], line=number))
            rows[number - 1] = ""
        elif not start:
            counting.add(key)
        elif re.search("[0-9]", entry["value"]):
            message = "This stands behind a # and is not used. Take the # away if it shall count."
            noted[key] = Problem(key, message, Severity.WARNING, entry["value"], line=number)
    warnings = (problem for key, problem in noted.items() if key not in counting)
    return Notes("\n".join(rows), (*refused, *warnings))
