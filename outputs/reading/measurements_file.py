"""Reads a wearer's measurements file and says, in one go, everything that is wrong with it."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from os import PathLike
from pathlib import Path

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed_words import LONGEST_GUESS, did_you_mean, in_one_line, plain_name
from drafting.base.units import TypedLength, Unit
from drafting.body.checks import check_length, check_measurements
from drafting.body.corrections import CORRECTIONS
from drafting.body.measurements import (
    MEASUREMENTS,
    Measurements,
    Need,
    Population,
    SideMeasurements,
    Sides,
    WaistLevel,
)
from outputs.files.all_problems import by_line
from outputs.files.text_file import TextFile, read_file
from outputs.files.toml_slips import TomlText, read_toml
from outputs.reading.cloth_entries import CLOTH_ENTRIES, read_cloth
from outputs.reading.entries import MEASURED, Entries, Found, shortly
from outputs.reading.fitting_entries import TABLE as FITTING
from outputs.reading.fitting_entries import read_fitting
from outputs.reading.length_tables import TABLES, LengthTables, Units, read_length_tables
from outputs.words.file_wording import FileWording

__all__ = ["MeasurementFile", "measurements_of", "read_entries", "read_measurements"]

_ENTRIES = ("wearer", "taken_on", "unit", "waist_taken_at", "estimate_like", *TABLES, "cloth", FITTING)
_HOMES = {
    **dict.fromkeys(_ENTRIES, "to the top of the file, above the line [{0}]"),
    **dict.fromkeys(CLOTH_ENTRIES, "below the line [cloth]"),
    **dict.fromkeys(CORRECTIONS, f"below the line [{FITTING}]"),
}
"""Where what is no measurement belongs, if it stands in the table {0}."""


@dataclass(frozen=True, kw_only=True)
class MeasurementFile:
    """A measurements file, read and found fit for a draft.

    Attributes:
        wearer: name as typed; the file's own name where none is given.
        taken_on: date as typed; empty where none is given.
        unit: the file's unit, to show lengths in; centimetres where the file states none.
        measurements: in millimetres.
        readings: how often a measurement was taken, by key, where the file lists its readings.
        cloth: percentages by names of `outputs.reading.cloth_entries.CLOTH_ENTRIES`, as far as given.
        corrections: what was seen on the toile, mm by key of `drafting.body.corrections.CORRECTIONS`.
        warnings: what is unusual but possible.
    """

    wearer: str
    taken_on: str
    unit: Unit
    measurements: Measurements
    readings: Mapping[str, int]
    cloth: Mapping[str, float]
    corrections: Mapping[str, float]
    warnings: tuple[Problem, ...]


def read_measurements(path: str | PathLike[str]) -> MeasurementFile:
    """Return the measurements of a file.

    Args:
        path: a TOML file in UTF-8, as `write_template` lays it out and a person has filled it in.

    Raises:
        DraftRefused: when it cannot be read or no draft could be made from it, with all problems at once,
            warnings included.
    """
    return measurements_of(read_file(Path(path)))


def measurements_of(file: TextFile) -> MeasurementFile:
    """Return the measurements of a file that was read already.

    Raises:
        DraftRefused: when no draft could be made from it, with all problems at once, warnings included.
    """
    text = read_toml(file.text)
    if text.slips and _is_another_kind(file.text, text):
        message = "This is no measurements file. `jeansblock measure NAME` writes one to fill in."
        raise DraftRefused([Problem("", message, Severity.REFUSAL)], file.source)
    slips = [replace(slip, key=slip.key.removeprefix("measurements.")) for slip in text.slips]
    if text.tables is None:
        raise DraftRefused(slips, file.source)
    return read_entries(text.tables, source=file.source, name=file.stem, lines=text.lines, slips=slips)


def _is_another_kind(typed: str, text: TomlText) -> bool:
    """Return whether what cannot be read as a measurements file was never meant as one."""
    names = {*(text.tables or {}), *(slip.key.rpartition(".")[2] for slip in text.slips)}
    return typed.lstrip().startswith("{") or not names & {*_ENTRIES, *MEASUREMENTS}


def read_entries(
    entries: Mapping[str, object],
    *,
    source: str,
    name: str,
    lines: Mapping[str, int] | None = None,
    slips: Iterable[Problem] = (),
) -> MeasurementFile:
    """Return the measurements of entries as they stand in a file, wherever they were typed.

    Args:
        entries: "wearer", "unit" and so on, and the tables "measurements", "left", "right" and "cloth".
        source: where they stand, for the messages.
        name: the wearer's where none is given.
        lines: line of each entry, from 1, by its full name.
        slips: what could not even be read, with the full name of the entry where there is one.

    Raises:
        DraftRefused: when no draft could be made from it, with all problems at once, warnings included.
    """
    slips = tuple(slips)
    typed = Entries(
        entries,
        lines or {},
        frozenset(slip.key for slip in slips),
    )
    unit = typed.choice("unit", Unit)
    misspelt = unit.value is None and ("unit" in typed.slipped or bool(unit.problems))
    units = Units(unit.value, misspelt)
    unknown = _unknown_entries(typed)
    wearer, taken_on = typed.text("wearer"), typed.text("taken_on")
    tables = read_length_tables(typed, units, _HOMES)
    cloth, corrections = _cloth(typed), _corrections(typed, units)
    waist = typed.choice("waist_taken_at", WaistLevel)
    like = typed.choice("estimate_like", Population)
    lengths = tables.value.lengths
    measurements = Measurements(
        **_of_table(lengths, ""),
        waist_taken_at=waist.value or WaistLevel.NATURAL,
        estimate_like=like.value or Population.NOBODY,
        left=_side(lengths, "left."),
        right=_side(lengths, "right."),
    )
    seen = typed.slipped | unknown.value | tables.value.seen
    problems = [
        *slips, *unit.problems, *unknown.problems, *wearer.problems, *taken_on.problems, *tables.problems,
        *cloth.problems, *corrections.problems, *waist.problems, *like.problems,
        *_checked(typed, measurements, tables.value, units.shown, seen),
    ]  # fmt: skip
    if any(problem.severity is Severity.REFUSAL for problem in problems):
        raise DraftRefused(by_line(problems), source)
    return MeasurementFile(
        wearer=wearer.value or in_one_line(name),
        taken_on=taken_on.value,
        unit=units.shown,
        measurements=measurements,
        readings={key: len(readings.lengths) for key, readings in tables.value.readings.items()},
        cloth=cloth.value,
        corrections=corrections.value,
        warnings=tuple(problems),
    )


def _unknown_entries(typed: Entries) -> Found[frozenset[str]]:
    """Return the names above all tables that mean nothing there, and what they stand for."""
    names: set[str] = set()
    problems: list[Problem] = []
    for name in (name for name in typed.given if name not in _ENTRIES):
        names.add(name)
        if name in MEASUREMENTS:
            table = "[left] or [right]" if MEASUREMENTS[name].sides is Sides.EACH else f"[{MEASURED}]"
            message = f"This belongs below the line {table}."
            problems.append(typed.refusal(name, message, typed.given[name]))
            continue
        guess = difflib.get_close_matches(name.lower()[:LONGEST_GUESS], _ENTRIES, 1)
        if guess == [MEASURED]:
            names |= MEASUREMENTS.keys()
        what = "table" if isinstance(typed.given[name], dict) else "name"
        problems.append(typed.refusal(name, f"There is no {what} of this name.{did_you_mean(guess)}"))
    return Found(frozenset(names), tuple(problems))


def _cloth(typed: Entries) -> Found[dict[str, float]]:
    """Return the percentages of the cloth, less what is not filled in."""
    table = typed.table("cloth", "percentages")
    problems = list(table.problems)
    for name in (name for name in table.value if name not in CLOTH_ENTRIES):
        guess = difflib.get_close_matches(plain_name(name), CLOTH_ENTRIES, 1)
        message = f"Nothing about the cloth has this name.{did_you_mean(guess)}"
        problems.append(typed.refusal(f"cloth.{name}", message, table.value[name]))
    filled = {name: table.value[name] for name in CLOTH_ENTRIES if table.value.get(name, "") != ""}
    found, wrong = read_cloth(filled)
    problems += (
        typed.refusal(f"cloth.{problem.key}", problem.message, filled[problem.key], problem.plausible)
        for problem in wrong
    )
    return Found(found, tuple(problems))


def _corrections(typed: Entries, units: Units) -> Found[dict[str, float]]:
    """Return the corrections of the fitting, mm, less what is not filled in."""
    table = typed.table(FITTING, "what was seen")
    found, problems = read_fitting(table.value, units.default, unit=units.shown, typed=shortly)
    if units.misspelt:
        # What could be read may be of another size than it seems.
        problems = [p for p in problems if p.key.removeprefix(f"{FITTING}.") not in found]
    return Found(found, (*table.problems, *typed.placed(problems)))


def _checked(
    typed: Entries, measurements: Measurements, tables: LengthTables, unit: Unit, seen: frozenset[str]
) -> tuple[Problem, ...]:
    """Return what is unusual or impossible, less what was said already of readings and of missing ones."""
    lengths = tables.lengths
    wording = FileWording(unit, lengths, {key: typed.typed(key) for key in lengths})
    # A median is as unusual as its readings, which are remarked upon one by one.
    said = [check_length(key, lengths[key].mm, wording) for key in tables.readings]
    either = {key for key, spec in MEASUREMENTS.items() if spec.need is Need.ONE_OF}
    present = seen | (either if seen & either else set())
    return typed.placed(
        problem
        for problem in check_measurements(measurements, wording=wording)
        if problem not in said and (problem.value or problem.key not in present)
    )


def _of_table(lengths: Mapping[str, TypedLength], prefix: str) -> dict[str, float]:
    """Return millimetres by bare name of the keys that have just this prefix."""
    return {
        key.removeprefix(prefix): length.mm
        for key, length in lengths.items()
        if key.rpartition(".")[0] == prefix.rstrip(".")
    }


def _side(lengths: Mapping[str, TypedLength], prefix: str) -> SideMeasurements | None:
    found = _of_table(lengths, prefix)
    return SideMeasurements(**found) if found else None
