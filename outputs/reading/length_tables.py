"""Reads the tables of lengths in a measurements file: of the whole body, and of each side."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from drafting.base.errors import Problem
from drafting.base.typed_words import did_you_mean, plain_name
from drafting.base.units import LengthError, TypedLength, Unit, UnitMissing, read_length
from drafting.body.measurements import MEASUREMENTS, Sides, term_of
from outputs.reading.entries import MEASURED, Entries, Found, key_of, not_filled_in, shortly
from outputs.reading.tape_readings import Readings, read_readings
from outputs.words.file_wording import FileWording

TABLES: Mapping[str, tuple[Sides, ...]] = {
    MEASURED: (Sides.BODY, Sides.EITHER),
    "left": (Sides.EITHER, Sides.EACH),
    "right": (Sides.EITHER, Sides.EACH),
}
"""The tables, and what may stand in each: of the whole body, or of one side."""


@dataclass(frozen=True)
class Units:
    """The unit of a file.

    Attributes:
        stated: The file's own; None where it states none.
        misspelt: Whether it tries to state one, so that the numbers without a unit are not to blame.
    """

    stated: Unit | None
    misspelt: bool

    @property
    def shown(self) -> Unit:
        """The unit to speak in."""
        return self.stated or Unit.CM

    @property
    def default(self) -> Unit | None:
        """The unit of a length without one; None where that has to be asked for."""
        return Unit.CM if self.misspelt else self.stated


@dataclass(frozen=True)
class LengthTables:
    """What the tables give.

    Attributes:
        lengths: As typed, by full key, "left.thigh_girth"; of a list of readings their median.
        readings: Those lists, by key.
        seen: Measurements that stand there or are meant, whether or not they could be read: none is missing.
    """

    lengths: Mapping[str, TypedLength]
    readings: Mapping[str, Readings]
    seen: frozenset[str]


@dataclass(frozen=True)
class _Measured:
    """One entry of a table: where it stands, and its value."""

    table: str
    name: str
    value: object

    @property
    def full_name(self) -> str:
        return f"{self.table}.{self.name}"

    @property
    def key(self) -> str:
        return key_of(self.full_name)

    @property
    def known(self) -> bool:
        return self.name in MEASUREMENTS and MEASUREMENTS[self.name].sides in TABLES[self.table]


def read_length_tables(entries: Entries, units: Units, homes: Mapping[str, str]) -> Found[LengthTables]:
    """Return the lengths that are filled in, and what is wrong with the others.

    Args:
        entries: The file.
        units: Its unit.
        homes: Where a name that is no measurement belongs, in words.
    """
    lengths: dict[str, TypedLength] = {}
    readings: dict[str, Readings] = {}
    seen: set[str] = set()
    problems: list[Problem] = []
    for table in TABLES:
        holds = entries.table(table, "measurements")
        problems += holds.problems
        for each in (_Measured(table, name, value) for name, value in holds.value.items()):
            if not each.known:
                meant = _measurement_like(each) if each.name not in {*MEASUREMENTS, *homes} else []
                # The one that was meant is misspelt, which is said here; that it is missing need not be too.
                seen.update(meant)
                problems.append(_unknown(entries, each, homes, meant))
            elif not not_filled_in(each.value):
                seen.add(each.key)
                found = _read(entries, each, units)
                problems += found.problems
                if found.value:
                    lengths[each.key] = found.value.median
                    if isinstance(each.value, list):
                        readings[each.key] = found.value
    return Found(LengthTables(lengths, readings, frozenset(seen)), tuple(problems))


def _read(entries: Entries, each: _Measured, units: Units) -> Found[Readings | None]:
    """Return one or several readings; None where one is refused, or its unit is in doubt."""
    if isinstance(each.value, list):
        if units.misspelt:
            return Found(None)
        readings, problems = read_readings(
            each.key, each.value, units.stated, unit=units.shown, typed=shortly
        )
        return Found(readings, entries.placed(problems))
    try:
        length = read_length(each.value, units.default)
    except LengthError as error:
        plausible = FileWording(units.shown, {}, {}).show_range(MEASUREMENTS[each.name].usual)
        for_all = ', or state one for all: unit = "cm"' if isinstance(error, UnitMissing) else ""
        message = f"The {term_of(each.key)} cannot be read: {error}{for_all}."
        return Found(None, (entries.refusal(each.full_name, message, each.value, plausible),))
    return Found(Readings((length,)) if length.own_unit or not units.misspelt else None)


def _unknown(entries: Entries, each: _Measured, homes: Mapping[str, str], meant: list[str]) -> Problem:
    """Return why an entry does not belong into its table."""
    if each.name in MEASUREMENTS:
        other = "below [left] and [right]" if each.table == MEASURED else "once, below [measurements]"
        message = f"The {MEASUREMENTS[each.name].term} is given {other}."
    elif each.name in homes:
        message = f"This belongs {homes[each.name].format(each.table)}."
    else:
        message = f"No measurement has this name.{did_you_mean(meant)}"
    return entries.refusal(each.full_name, message, each.value)


def _measurement_like(each: _Measured) -> list[str]:
    """Return the one measurement whose name, its shorter name or another name of it is most like this one."""
    names: dict[str, str] = {}
    for text, key in _names(TABLES[each.table]):
        names.setdefault(text.replace(" ", "_"), key)
    return [names[found] for found in difflib.get_close_matches(plain_name(each.name), names, 1)]


def _names(sides: tuple[Sides, ...]) -> Iterator[tuple[str, str]]:
    for key, spec in MEASUREMENTS.items():
        if spec.sides in sides:
            yield from ((text, key) for text in (key, key.rpartition("_")[0], *spec.also))
