"""The words for how the pattern fits the body, the same on the terminal and in the picture of the ease."""

from __future__ import annotations

from collections.abc import Iterable

from drafting.base.units import Unit, format_length
from drafting.body.body import Origin, Value
from drafting.report.ease_profile import EaseProfile, TightSpot
from drafting.report.fit import GirthLine
from drafting.report.levels import GirthLevel

UNIT_HEADS = {Unit.MM: "in mm", Unit.CM: "in cm", Unit.INCH: "in inches"}
"""What stands over a table of lengths."""


def bare(mm: float | None, unit: Unit) -> str:
    """Return a length without its unit, which stands at the head of the table; a dash for None."""
    return "–" if mm is None else format_length(mm, unit).removesuffix(f" {unit.value}")


def origin_mark(origin: Origin | None, spread: float, unit: Unit) -> str:
    """Return "measured", "worked out", "estimated ± 1.9" or, where nothing is known, "by construction"."""
    mark = (origin or Origin.CONSTRUCTION).value
    return f"{mark} ± {bare(spread, unit)}" if spread else mark


def mark_of(value: Value | None, unit: Unit) -> str:
    """Return the mark of a value of the body, None for one that it does not tell."""
    return origin_mark(value.origin, value.spread, unit) if value else origin_mark(None, 0.0, unit)


def level_name(line: GirthLine) -> str:
    """Return the name of a level; the hem is set beside the heel that must pass it."""
    return "hem over heel" if line.level is GirthLevel.HEM else line.name


def shortfall(line: GirthLine) -> float:
    """Return by how much the pattern misses body and least ease, mm; 0 where it is enough."""
    if line.enough or line.body is None:
        return 0.0
    return line.body + line.least_ease - line.pattern


def unnamed_spots(profile: EaseProfile) -> list[TightSpot]:
    """Return the tight spots in which no level lies that is itself short."""
    short = [line.height for line in profile.levels if shortfall(line)]
    return [spot for spot in profile.tight_spots() if not any(spot.low <= y <= spot.high for y in short)]


def said_shortfalls(profiles: Iterable[EaseProfile], unit: Unit) -> str:
    """Return one sentence naming every shortfall, or that there is none."""
    found = []
    for profile in profiles:
        found += [
            f"{level_name(line)} by {format_length(short, unit)}"
            for line in profile.levels
            if (short := shortfall(line))
        ]
        found += [
            f"the {profile.zone.value} by {format_length(spot.by, unit)}, "
            f"{format_length(spot.at.height, unit)} above the floor"
            for spot in unnamed_spots(profile)
        ]
    return f"Short: {'; '.join(found)}." if found else "Nothing is short where the body is known."


def described(profiles: Iterable[EaseProfile], unit: Unit) -> str:
    """Return the picture of the ease in words, level by level, for those who cannot see it."""
    profiles = tuple(profiles)
    levels = []
    for line in (line for profile in profiles for line in profile.levels):
        pattern = f"pattern {format_length(line.pattern, unit)}"
        if line.body is None or line.ease is None:
            levels.append(f"{level_name(line)}: {pattern}, body not known")
        else:
            mark = origin_mark(line.origin, line.spread, unit)
            levels.append(
                f"{level_name(line)}: body {format_length(line.body, unit)} {mark}, {pattern}, "
                f"ease {format_length(line.ease, unit)}"
            )
    return f"Ease from waist to hem. {'; '.join(levels)}. {said_shortfalls(profiles, unit)}"
