"""Reads a wearer's measurements file and says, in one go, everything that is wrong with it."""

import difflib
import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from enum import Enum
from os import PathLike
from pathlib import Path
from typing import Any, TypeVar

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed import LONGEST_GUESS, did_you_mean, doubt_about_text, in_one_line, plain_name
from drafting.base.units import LengthError, TypedLength, Unit, UnitMissing, read_length
from drafting.body.checks import Wording, check_length, check_measurements
from drafting.body.corrections import CORRECTIONS
from drafting.body.measurements import (
    MEASUREMENTS,
    Measurements,
    Need,
    Population,
    SideMeasurements,
    Sides,
    WaistLevel,
    term_of,
)
from outputs.files.gathering import by_line
from outputs.files.text_file import TextFile, read_file
from outputs.files.toml_slips import TomlText, read_toml
from outputs.reading.cloth_entries import CLOTH_ENTRIES, read_cloth
from outputs.reading.fitting_entries import TABLE as FITTING
from outputs.reading.fitting_entries import read_fitting
from outputs.reading.measurement_template import write_template as write_template
from outputs.reading.readings import Readings, read_readings
from outputs.words.file_wording import FileWording

__all__ = ["MeasurementFile", "read_entries", "read_measurements", "write_template"]

TABLES: Mapping[str, tuple[Sides, ...]] = {
    "measurements": (Sides.BODY, Sides.EITHER),
    "left": (Sides.EITHER, Sides.EACH),
    "right": (Sides.EITHER, Sides.EACH),
}
"""The tables of lengths, and what may stand in each: of the whole body, or of one side."""

_Choice = TypeVar("_Choice", bound=Enum)
_HOMES = {**dict.fromkeys(CLOTH_ENTRIES, "cloth"), **dict.fromkeys(CORRECTIONS, FITTING)}
"""The tables of what is no measurement."""
_ENTRIES = ("wearer", "taken_on", "unit", "waist_taken_at", "estimate_like", *TABLES, "cloth", FITTING)


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
        lines: line of each entry in the file, from 1, by key.
    """

    wearer: str
    taken_on: str
    unit: Unit
    measurements: Measurements
    readings: Mapping[str, int]
    cloth: Mapping[str, float]
    corrections: Mapping[str, float]
    warnings: tuple[Problem, ...]
    lines: Mapping[str, int]


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
    entries: Mapping[str, Any],
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
    reading = _Reading(entries, lines or {}, {slip.key for slip in slips})
    file = reading.file(name)
    problems = [*slips, *reading.problems]
    if any(problem.severity is Severity.REFUSAL for problem in problems):
        raise DraftRefused(by_line(problems), source)
    return replace(file, warnings=tuple(problems))


class _Reading:
    """One pass over a file's entries, gathering problems."""

    def __init__(self, entries: Mapping[str, Any], lines: Mapping[str, int], slipped: set[str]) -> None:
        self.entries = entries
        self.lines = {name.removeprefix("measurements."): line for name, line in lines.items()}
        self.problems: list[Problem] = []
        self.readings: dict[str, Readings] = {}
        # Measurements that stand in the file, whether or not they could be read: they are not missing.
        self.seen = slipped
        self.unit = self._choice("unit", Unit)
        # Where the unit itself is misspelt, the numbers without one are not to blame.
        self.unit_misspelt = self.unit is None and ("unit" in slipped or bool(self.problems))

    def file(self, stem: str) -> MeasurementFile:
        for name in self.entries:
            if name not in _ENTRIES:
                self._refuse_unknown_entry(name)
        wearer = self._text("wearer")
        taken_on = self._text("taken_on")
        lengths: dict[str, TypedLength] = {}
        for table in TABLES:
            lengths |= self._lengths(table)
        cloth, corrections = self._cloth(), self._corrections()
        measurements = Measurements(
            **_of_table(lengths, ""),
            waist_taken_at=self._choice("waist_taken_at", WaistLevel) or WaistLevel.NATURAL,
            estimate_like=self._choice("estimate_like", Population) or Population.NOBODY,
            left=_side(lengths, "left."),
            right=_side(lengths, "right."),
        )
        unit = self.unit or Unit.CM
        wording = FileWording(unit, lengths, {key: self._typed(key) for key in lengths})
        either = {key for key, spec in MEASUREMENTS.items() if spec.need is Need.ONE_OF}
        # A median is as unusual as its readings, which are remarked upon one by one.
        said = [check_length(key, lengths[key].mm, wording) for key in self.readings]
        present = self.seen | (either if self.seen & either else set())
        for problem in check_measurements(measurements, wording=wording):
            if problem not in said and (problem.value or problem.key not in present):
                self.problems.append(replace(problem, line=self.lines.get(problem.key)))
        return MeasurementFile(
            wearer=wearer or in_one_line(stem),
            taken_on=taken_on,
            unit=unit,
            measurements=measurements,
            readings={key: len(readings.lengths) for key, readings in self.readings.items()},
            cloth=cloth,
            corrections=corrections,
            warnings=(),
            lines=self.lines,
        )

    def _refuse(self, key: str, message: str, value: object = None, plausible: str = "") -> None:
        typed = "" if value is None else _shortly(value)
        line = self.lines.get(key)
        # A name in quotes may hold anything, line breaks too.
        name = json.dumps(key, ensure_ascii=False)[1:-1]
        self.problems.append(Problem(name, message, Severity.REFUSAL, typed, plausible, line))

    def _typed(self, key: str) -> str:
        table, _, name = key.rpartition(".")
        return _shortly(self.entries[table or "measurements"][name])

    def _text(self, key: str) -> str:
        value = self.entries.get(key, "")
        if isinstance(value, date):
            return value.isoformat()
        if not isinstance(value, str):
            self._refuse(key, 'This should be a text in quotes: "...".', value)
            return ""
        if doubt := doubt_about_text(value):
            self._refuse(key, doubt, value)
        return value.strip()

    def _choice(self, key: str, choices: type[_Choice]) -> _Choice | None:
        """Return the choice that the file makes; None where it makes none, or one that does not exist."""
        value = self.entries.get(key, "")
        if value == "":
            return None
        by_word = {str(choice.value): choice for choice in choices}
        word = value.strip().lower()[:LONGEST_GUESS] if isinstance(value, str) else ""
        if word not in by_word:
            meant = Unit.named(word) if choices is Unit else None
            guess = [meant.value] if meant else difflib.get_close_matches(word, by_word, 1)
            message = f"This is none of the choices.{did_you_mean(guess)}"
            self._refuse(key, message, value, " or ".join(by_word))
        return by_word.get(word)

    def _refuse_unknown_entry(self, name: str) -> None:
        self.seen.add(name)
        if name in MEASUREMENTS:
            table = "[left] or [right]" if MEASUREMENTS[name].sides is Sides.EACH else "[measurements]"
            self._refuse(name, f"This belongs below the line {table}.", self.entries[name])
        else:
            guess = difflib.get_close_matches(name.lower()[:LONGEST_GUESS], _ENTRIES, 1)
            if guess == ["measurements"]:
                self.seen.update(MEASUREMENTS)
            what = "table" if isinstance(self.entries[name], dict) else "name"
            self._refuse(name, f"There is no {what} of this name.{did_you_mean(guess)}")

    def _lengths(self, table: str) -> dict[str, TypedLength]:
        """Return the lengths of a table by full key, "left.thigh_girth", less what is not filled in."""
        entries = self.entries.get(table, {})
        if not isinstance(entries, dict):
            self._refuse(table, f"This should be a line [{table}] with measurements below it.", entries)
            return {}
        found = {}
        for name, value in entries.items():
            key = name if table == "measurements" else f"{table}.{name}"
            if name not in MEASUREMENTS or MEASUREMENTS[name].sides not in TABLES[table]:
                self._refuse_unknown_measurement(table, key, name, value)
            elif not (isinstance(value, str) and not value.strip()):
                self.seen.add(key)
                length = self._median(key, value) if isinstance(value, list) else self._length(key, value)
                if length and (length.own_unit or not self.unit_misspelt):
                    found[key] = length
        return found

    def _length(self, key: str, value: Any) -> TypedLength | None:
        """Return a length as typed, None when it is none."""
        try:
            return read_length(value, Unit.CM if self.unit_misspelt else self.unit)
        except LengthError as error:
            usual = MEASUREMENTS[key.rpartition(".")[2]].usual
            plausible = FileWording(self.unit or Unit.CM, {}, {}).show_range(usual)
            for_all = ', or state one for all: unit = "cm"' if isinstance(error, UnitMissing) else ""
            self._refuse(key, f"The {term_of(key)} cannot be read: {error}{for_all}.", value, plausible)
            return None

    def _median(self, key: str, values: list[Any]) -> TypedLength | None:
        """Return the median of a list of readings, None when one of them is refused."""
        if self.unit_misspelt:
            return None
        unit = self.unit or Unit.CM
        readings, problems = read_readings(key, values, self.unit, unit=unit, typed=_shortly)
        self.problems += [replace(problem, line=self.lines.get(key)) for problem in problems]
        if readings:
            self.readings[key] = readings
        return readings.median if readings else None

    def _cloth(self) -> dict[str, float]:
        """Return the percentages of the cloth, less what is not filled in."""
        entries = self.entries.get("cloth", {})
        if not isinstance(entries, dict):
            self._refuse("cloth", "This should be a line [cloth] with percentages below it.", entries)
            return {}
        for name in entries:
            if name not in CLOTH_ENTRIES:
                guess = difflib.get_close_matches(plain_name(name), CLOTH_ENTRIES, 1)
                message = f"Nothing about the cloth has this name.{did_you_mean(guess)}"
                self._refuse(f"cloth.{name}", message, entries[name])
        typed = {name: entries[name] for name in CLOTH_ENTRIES if entries.get(name, "") != ""}
        found, problems = read_cloth(typed)
        for problem in problems:
            key = f"cloth.{problem.key}"
            self._refuse(key, problem.message, typed[problem.key], problem.plausible)
        return found

    def _corrections(self) -> dict[str, float]:
        """Return the corrections of the fitting, mm, less what is not filled in."""
        entries = self.entries.get(FITTING, {})
        if not isinstance(entries, dict):
            self._refuse(FITTING, f"This should be a line [{FITTING}] with what was seen below it.", entries)
            return {}
        default = Unit.CM if self.unit_misspelt else self.unit
        found, problems = read_fitting(entries, default, unit=self.unit or Unit.CM, typed=_shortly)
        if self.unit_misspelt:
            # What could be read may be of another size than it seems.
            problems = [p for p in problems if p.key.removeprefix(f"{FITTING}.") not in found]
        self.problems += [replace(problem, line=self.lines.get(problem.key)) for problem in problems]
        return found

    def _refuse_unknown_measurement(self, table: str, key: str, name: str, value: object) -> None:
        if name in MEASUREMENTS:
            other = "below [left] and [right]" if table == "measurements" else "once, below [measurements]"
            self._refuse(key, f"The {MEASUREMENTS[name].term} is given {other}.", value)
        elif name in _ENTRIES:
            self._refuse(key, f"This belongs to the top of the file, above the line [{table}].", value)
        elif name in _HOMES:
            self._refuse(key, f"This belongs below the line [{_HOMES[name]}].", value)
        else:
            guess = _measurement_like(name, TABLES[table])
            # The one that was meant is misspelt, which is said here; that it is missing need not be said too.
            self.seen.update(guess)
            self._refuse(key, f"No measurement has this name.{did_you_mean(guess)}", value)


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


def _measurement_like(name: str, sides: tuple[Sides, ...]) -> list[str]:
    """Return the one measurement whose name, its shorter name or another name of it is most like this one."""
    names: dict[str, str] = {}
    for key, spec in MEASUREMENTS.items():
        if spec.sides in sides:
            for text in (key, key.rpartition("_")[0], *spec.also):
                names.setdefault(text.replace(" ", "_"), key)
    return [names[found] for found in difflib.get_close_matches(plain_name(name), names, 1)]


def _shortly(value: object) -> str:
    """Return a value as it stands in the file, in one line, cut short when it is endless."""
    text = f"[{', '.join(map(_word, value))}]" if isinstance(value, list) else _word(value)
    return text if len(text) <= 60 else f"{text[:57]}..."


def _word(value: object) -> str:
    return json.dumps(value, ensure_ascii=False) if isinstance(value, str) else Wording().typed("", value)
