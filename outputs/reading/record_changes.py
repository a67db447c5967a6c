"""The inputs in which two drafts differ, each of which can be put into the older one alone."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, fields, replace
from typing import Any

from drafting.base.units import Unit, format_length
from drafting.body.corrections import CORRECTIONS
from drafting.body.measurements import MEASUREMENTS, Measurements, SideMeasurements, term_of
from outputs.reading.draft_record import Inputs
from styles.choice.setting_values import show_value
from styles.choice.settings import SETTINGS, value_of, with_settings
from styles.choice.style import Style
from styles.cloth.shrinkage_and_stretch import Cloth


@dataclass(frozen=True)
class Change:
    """One input that differs.

    Attributes:
        what: What it is called.
        old: What it was, in words.
        new: What it is now.
        put: Puts what is now into inputs, all else left as it is.
    """

    what: str
    old: str
    new: str
    put: Callable[[Inputs], Inputs]


def changes(old: Inputs, new: Inputs) -> tuple[Change, ...]:
    """Return what differs and can move a line: measurements, style, cloth, corrections, fit; in order."""
    return (
        *_measured(old, new),
        *_settings(old, new),
        *_cloth(old, new),
        *_corrections(old, new),
        *_fit(old, new),
    )


def _measured(old: Inputs, new: Inputs) -> Iterator[Change]:
    before, after = old.measurements.given(), new.measurements.given()
    for key in sorted(before.keys() | after.keys(), key=_place):
        if before.get(key) != after.get(key):
            yield Change(
                term_of(key),
                _length(before.get(key), new.unit),
                _length(after.get(key), new.unit),
                _putting_length(key, after.get(key)),
            )
    for key, what in (("waist_taken_at", "waist taken at"), ("estimate_like", "estimated like")):
        was, now = getattr(old.measurements, key), getattr(new.measurements, key)
        if was is not now:
            yield Change(what, was.value, now.value, _putting_choice(key, now))


def _place(key: str) -> tuple[str, int]:
    side, _, name = key.rpartition(".")
    return side, list(MEASUREMENTS).index(name)


def _length(mm: float | None, unit: Unit) -> str:
    return "not given" if mm is None else format_length(mm, unit)


def _putting_length(key: str, mm: float | None) -> Callable[[Inputs], Inputs]:
    side, _, name = key.rpartition(".")

    def put(inputs: Inputs) -> Inputs:
        measured = inputs.measurements
        if not side:
            return replace(inputs, measurements=replace(measured, **_one(name, mm)))
        holder = replace(getattr(measured, side) or SideMeasurements(), **_one(name, mm))
        # A side of which nothing is known is no side that differs.
        known = any(getattr(holder, field.name) is not None for field in fields(holder))
        return replace(inputs, measurements=replace(measured, **_one(side, holder if known else None)))

    return put


def _putting_choice(key: str, choice: Any) -> Callable[[Inputs], Inputs]:
    def put(inputs: Inputs) -> Inputs:
        measurements: Measurements = replace(inputs.measurements, **_one(key, choice))
        return replace(inputs, measurements=measurements)

    return put


def _settings(old: Inputs, new: Inputs) -> Iterator[Change]:
    if _worn(old.style) != _worn(new.style):
        # The length counts only where no rise is set, so that the two are one input.
        kept = {"below_waist": new.style.below_waist, "rise": new.style.rise}
        was, now = (_said_worn(style, new.unit) for style in (old.style, new.style))
        yield Change("where the jeans sit", was, now, _putting_settings(kept))
    for key in SETTINGS:
        if key in ("rise", "below_waist"):
            continue
        before, after = value_of(old.style, key), value_of(new.style, key)
        if before != after:
            was, now = (show_value(key, value, new.unit) or "no limit" for value in (before, after))
            yield Change(key, was, now, _putting_settings({key: after}))


def _worn(style: Style) -> object:
    return style.below_waist if style.rise is None else style.rise


def _said_worn(style: Style, unit: Unit) -> str:
    return (
        f"{style.rise.value} rise" if style.rise else f"{format_length(style.below_waist, unit)} below waist"
    )


def _putting_settings(values: dict[str, Any]) -> Callable[[Inputs], Inputs]:
    return lambda inputs: replace(inputs, style=with_settings(inputs.style, values))


def _cloth(old: Inputs, new: Inputs) -> Iterator[Change]:
    for field in fields(Cloth):
        before, after = getattr(old.cloth, field.name), getattr(new.cloth, field.name)
        if before != after:
            what = field.name.replace("_", " ")
            yield Change(f"cloth, {what}", f"{before:g} %", f"{after:g} %", _putting_cloth(field.name, after))


def _putting_cloth(key: str, percent: float) -> Callable[[Inputs], Inputs]:
    return lambda inputs: replace(inputs, cloth=replace(inputs.cloth, **_one(key, percent)))


def _corrections(old: Inputs, new: Inputs) -> Iterator[Change]:
    for key, correction in CORRECTIONS.items():
        before, after = old.corrections.get(key), new.corrections.get(key)
        if before != after:
            was, now = _length(before, new.unit), _length(after, new.unit)
            yield Change(f"fitting, {correction.term}", was, now, _putting_correction(key, after))


def _putting_correction(key: str, mm: float | None) -> Callable[[Inputs], Inputs]:
    def put(inputs: Inputs) -> Inputs:
        others = {name: amount for name, amount in inputs.corrections.items() if name != key}
        return replace(inputs, corrections=others if mm is None else {**others, key: mm})

    return put


def _fit(old: Inputs, new: Inputs) -> Iterator[Change]:
    if old.fitted is not new.fitted:
        was, now = ("fitted" if inputs.fitted else "proportions alone" for inputs in (old, new))
        yield Change("fit", was, now, lambda inputs: replace(inputs, fitted=new.fitted))


def _one(key: str, value: Any) -> dict[str, Any]:
    return {key: value}
