"""The people of a class, one by one: a folder of measurements files, or a table with a row for each."""

from __future__ import annotations

import difflib
import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed_words import LONGEST_GUESS, did_you_mean, in_one_line
from drafting.body.corrections import CORRECTIONS
from drafting.body.measurement_table import MEASUREMENTS
from outputs.files.table import Row, table_rows
from outputs.files.text_file import read_file
from outputs.reading.cloth_entries import CLOTH_ENTRIES
from outputs.reading.entries import MEASURED
from outputs.reading.fitting_entries import TABLE as FITTING
from outputs.reading.length_tables import TABLES
from outputs.reading.measurements_file import MeasurementFile, read_entries, read_measurements

_TOP = ("wearer", "taken_on", "unit", "waist_taken_at", "estimate_like")


@dataclass(frozen=True)
class Person:
    """One of a class.

    Attributes:
        place: where the measurements stand, "class.csv, row 3" or "class/ada.toml".
        name: what the person is called, as far as that can be read.
        row: of a table, as a spreadsheet counts it; None for a file.
        read: the measurements, or why they are refused.
    """

    place: str
    name: str
    read: MeasurementFile | DraftRefused
    row: int | None = None


@dataclass(frozen=True)
class People:
    """A class, read person by person as often as it is gone through.

    Attributes:
        path: the folder or table.
        count: how many people there are.
        files: the measurements files of a folder, in the order of their names; none for a table.
        text: of a table.
    """

    path: Path
    count: int
    files: tuple[Path, ...] = ()
    text: str = ""

    def __iter__(self) -> Iterator[Person]:
        """Yield each person; those that are refused, too."""
        return map(_of_file, self.files) if self.files else _rows(self.path, self.text)


def find_people(path: Path) -> People:
    """Return the people of a folder with measurements files, or of a table in CSV.

    The first row of a table names the columns as a measurements file does: `wearer`, `taken_on`, `unit`,
    `waist_taken_at`, `estimate_like`, `hip_girth`, `left.thigh_girth`, `cloth.stretch`, `fitting.full_seat`.
    Cells are separated by commas, semicolons or tabs; an empty cell is not given, an empty row is nobody.

    Raises:
        DraftRefused: when there is nobody, or the table has columns that mean nothing, all told at once.
    """
    if os.path.isdir(path):  # that of Path raises for a name that no disk takes
        files = tuple(sorted(path.glob("*.toml")))
        if not files:
            raise _refused(path, "There is no measurements file in this folder; their names end in .toml.")
        return People(path, len(files), files)
    if path.suffix.lower() == ".toml":
        message = "This is one measurements file; name the folder that it is in, or draft it alone."
        raise _refused(path, message)
    text = read_file(path).text
    if problems := _wrong_columns(_header(text)):
        raise DraftRefused(problems, f"{path}, row 1")
    count = sum(1 for _ in _filled(text))
    if not count:
        raise _refused(path, "There is nobody below the first row.")
    return People(path, count, text=text)


def _refused(path: Path, message: str) -> DraftRefused:
    return DraftRefused([Problem("", message, Severity.REFUSAL)], str(path))


def _of_file(path: Path) -> Person:
    try:
        read = read_measurements(path)
    except DraftRefused as refusal:
        return Person(str(path), path.stem, refusal)
    return Person(str(path), read.wearer, read)


def _header(text: str) -> list[str]:
    """Return the names of the columns, in the spelling of a measurements file."""
    first = next(table_rows(text), Row(1, ()))
    names = ["_".join(cell.lower().split()) for cell in first.cells or ()]
    while names and not names[-1]:
        names.pop()
    return names


def _filled(text: str) -> Iterator[Row]:
    """Yield each row below the first that holds anything."""
    return (row for row in table_rows(text) if row.number > 1 and not row.empty)


def _known_columns() -> list[str]:
    lengths = [
        key if table == MEASURED else f"{table}.{key}"
        for table, sides in TABLES.items()
        for key, spec in MEASUREMENTS.items()
        if spec.sides in sides
    ]
    return [
        *_TOP,
        *lengths,
        *(f"cloth.{key}" for key in CLOTH_ENTRIES),
        *(f"{FITTING}.{key}" for key in CORRECTIONS),
    ]


def _wrong_columns(names: list[str]) -> list[Problem]:
    known = _known_columns()
    if not set(names) & set(known):
        message = (
            "The first row should name the measurements: wearer, unit, waist_girth, hip_girth and so on."
        )
        return [Problem("", message, Severity.REFUSAL)]
    problems: list[Problem] = []
    for number, name in enumerate(names, start=1):
        if len(problems) > len(known):
            message = (
                f"Column {number}: this and what follows was not looked at; it is no table of this kind."
            )
            return [*problems, Problem("", message, Severity.REFUSAL)]
        if name not in known:
            guess = difflib.get_close_matches(name[:LONGEST_GUESS], known, 1)
            message = f"Column {number}: no measurement has this name.{did_you_mean(guess)}"
            problems.append(Problem(in_one_line(name), message, Severity.REFUSAL))
        elif name in names[: number - 1]:
            message = f"Column {number}: this stands in the table twice; keep one of the two."
            problems.append(Problem(name, message, Severity.REFUSAL))
    return problems


def _rows(path: Path, text: str) -> Iterator[Person]:
    names = _header(text)
    for row in _filled(text):
        place, cells = f"{path}, row {row.number}", row.cells
        if cells is None:
            message = (
                "A quotation mark in this row does not close, or something follows it in its cell; what it "
                'spans was not read. An inch sign in quotes is doubled: "38""".'
            )
            refusal = DraftRefused([Problem("", message, Severity.REFUSAL)], place)
            yield Person(place, f"row {row.number}", refusal, row.number)
            continue
        typed = {name: cell.strip() for name, cell in zip(names, cells, strict=False)}
        wearer = in_one_line(typed.get("wearer", "")) or f"row {row.number}"
        read = _of_row(typed, cells[len(names) :], place, f"row {row.number}")
        yield Person(place, wearer, read, row.number)


def _of_row(
    typed: dict[str, str], beyond: Sequence[str], place: str, name: str
) -> MeasurementFile | DraftRefused:
    entries: dict[str, object] = {}
    tables: dict[str, dict[str, str]] = {}
    for column, cell in typed.items():
        table, _, key = column.rpartition(".")
        if column not in _TOP:
            tables.setdefault(table or MEASURED, {})[key] = cell
        elif cell:
            entries[column] = cell
    slips = []
    if any(cell.strip() for cell in beyond):
        message = (
            "The row has more cells than the first row; where commas separate the cells, a number like 97,5 "
            "needs quotes or a point."
        )
        slips.append(Problem("", message, Severity.REFUSAL, in_one_line(", ".join(beyond))))
    try:
        return read_entries({**entries, **tables}, source=place, name=name, slips=slips)
    except DraftRefused as refusal:
        return refusal
