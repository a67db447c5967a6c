"""Reads the corrections that a wearer writes under [fitting] after trying on the toile."""

from __future__ import annotations

import difflib
import json
from collections.abc import Callable, Mapping

from drafting.base.errors import Problem, Severity
from drafting.base.typed_words import did_you_mean, plain_name
from drafting.base.units import LengthError, NegativeLength, TypedLength, Unit, read_length
from drafting.body.correction_checks import check_corrections
from drafting.body.corrections import CORRECTIONS
from outputs.words.file_wording import FileWording

TABLE = "fitting"
ONE_SIDE = (
    "A correction is made on both sides alike. What was seen on one side goes below [left] and [right]: a "
    "higher or fuller hip as hip_height and half_hip_arc, a longer side as outside_leg_length, a longer leg "
    "as inside_leg_height."
)
_SIDED = ("left", "right", "side", "uneven")


def read_fitting(
    entries: Mapping[str, object], default_unit: Unit | None, *, unit: Unit, typed: Callable[[object], str]
) -> tuple[dict[str, float], list[Problem]]:
    """Return the corrections in mm by key of `CORRECTIONS`, and what is wrong with them; no line is set yet.

    Args:
        entries: What stands under [fitting]; anything at all. An empty text is not filled in.
        default_unit: Unit of an amount without one; None when none was stated.
        unit: Unit to speak in.
        typed: Writes a value as it stands in the file.
    """
    problems: list[Problem] = []
    lengths: dict[str, TypedLength] = {}
    for name, value in entries.items():
        if name not in CORRECTIONS:
            problems.append(_unknown(name, typed(value)))
        elif not (isinstance(value, str) and not value.strip()):
            try:
                lengths[name] = read_length(value, default_unit)
            except LengthError as error:
                problems.append(_unreadable(name, error, typed(value), unit))
    texts = {f"{TABLE}.{name}": typed(entries[name]) for name in lengths}
    wording = FileWording(unit, {f"{TABLE}.{name}": length for name, length in lengths.items()}, texts)
    amounts = {name: length.mm for name, length in lengths.items()}
    return amounts, problems + check_corrections(amounts, wording=wording, prefix=f"{TABLE}.")


def _unreadable(name: str, error: LengthError, typed: str, unit: Unit) -> Problem:
    advice = " What goes the other way has a name of its own." if isinstance(error, NegativeLength) else ""
    plausible = FileWording(unit, {}, {}).show_range(CORRECTIONS[name].usual)
    message = f"The amount cannot be read: {error}.{advice}"
    return Problem(f"{TABLE}.{name}", message, Severity.REFUSAL, typed, plausible)


def _unknown(name: str, typed: str) -> Problem:
    plain = plain_name(name)
    # A name in quotes may hold anything, line breaks too.
    key = f"{TABLE}.{json.dumps(name, ensure_ascii=False)[1:-1]}"
    if any(word in plain.split("_") for word in _SIDED):
        return Problem(key, ONE_SIDE, Severity.REFUSAL, typed)
    guess = difflib.get_close_matches(plain, CORRECTIONS, 1)
    listed = "" if guess else " `jeansblock fitting-guide` lists them."
    return Problem(key, f"No correction has this name.{did_you_mean(guess)}{listed}", Severity.REFUSAL, typed)
