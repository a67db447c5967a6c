"""A measurement taken several times: its readings, the median that counts, and how far they lie apart."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from statistics import median

from drafting.base.errors import Problem, Severity
from drafting.base.units import LengthError, TypedLength, Unit, format_length, read_length
from drafting.body.checks import check_length
from drafting.body.measurements import MEASUREMENTS, term_of
from outputs.words.file_wording import FileWording

__all__ = ["ENDS_APART", "Readings", "median_words", "read_readings", "said_medians"]

ENDS_APART = 10.0
"""Readings of one length further apart than this, mm, are worth taking again (common practice, no source)."""

_ROUNDING = 1e-6

_MOST = 50
"""Readings of one length; nobody takes so many (common practice, no source)."""


@dataclass(frozen=True)
class Readings:
    """One or more readings of one length, as typed."""

    lengths: tuple[TypedLength, ...]

    @property
    def median(self) -> TypedLength:
        """The middle reading, of an even number the mean of the middle two; in the unit of the first."""
        first = self.lengths[0]
        numbers = [length.in_unit(first.unit).number for length in self.lengths]
        return TypedLength(median(numbers), first.unit, first.own_unit)

    @property
    def ends(self) -> tuple[float, float]:
        """The smallest and the largest reading, mm."""
        all_mm = [length.mm for length in self.lengths]
        return min(all_mm), max(all_mm)


def read_readings(
    key: str,
    values: Sequence[object],
    default_unit: Unit | None,
    *,
    unit: Unit,
    typed: Callable[[object], str],
) -> tuple[Readings | None, list[Problem]]:
    """Return the readings of a list, and what is wrong with each and with all together; no line is set yet.

    When one is refused there are no readings: a median of the rest would hide it.

    Args:
        key: the measurement, "hip_girth" or "left.thigh_girth".
        values: what stands in the list; anything at all.
        default_unit: unit of a reading without one; None when none was stated.
        unit: unit to speak in.
        typed: writes a value as it stands in the file.
    """
    term = term_of(key)
    usual = MEASUREMENTS[key.rpartition(".")[2]].usual
    plausible = FileWording(unit, {}, {}).show_range(usual)
    if not values:
        message = f'The list of readings of the {term} is empty; write "" for what was not measured.'
        return None, [Problem(key, message, Severity.REFUSAL, "[]", plausible)]
    if len(values) > _MOST:
        message = f"These are {len(values)} readings of the {term}; up to {_MOST} are read."
        return None, [Problem(key, message, Severity.REFUSAL, typed(values), plausible)]
    lengths: list[TypedLength] = []
    problems: list[Problem] = []
    for number, value in enumerate(values, start=1):
        which = f"Reading {number} of {len(values)}: "
        try:
            length = read_length(value, default_unit)
        except LengthError as error:
            message = f"{which}The {term} cannot be read: {error}."
            problems.append(Problem(key, message, Severity.REFUSAL, typed(value), plausible))
            continue
        problem = check_length(key, length.mm, FileWording(unit, {key: length}, {key: typed(value)}))
        if problem:
            problems.append(replace(problem, message=which + problem.message))
        lengths.append(length)
    if any(problem.severity is Severity.REFUSAL for problem in problems):
        return None, problems
    readings = Readings(tuple(lengths))
    low, high = readings.ends
    if high - low > ENDS_APART + _ROUNDING:
        message = (
            f"The readings of the {term} lie {format_length(high - low, unit)} apart, from"
            f" {format_length(low, unit)} to {format_length(high, unit)}: take it again. Their median"
            f" {format_length(readings.median.mm, unit)} is used."
        )
        problems.append(Problem(key, message, Severity.WARNING, typed(values)))
    return readings, problems


def median_words(count: int) -> str:
    """Return where a value comes from that was taken several times."""
    return f"median of {count} readings"


def said_medians(counts: Mapping[str, int], given: Mapping[str, float], unit: Unit) -> str:
    """Return "hip girth 98.5 cm, median of 3 readings", one after the other; nothing where none was listed.

    Args:
        counts: readings by key.
        given: the lengths used, mm, by key.
        unit: unit to speak in.
    """
    return "; ".join(
        f"{term_of(key)} {format_length(given[key], unit)}, {median_words(count)}"
        for key, count in counts.items()
    )
