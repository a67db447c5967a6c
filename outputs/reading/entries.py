"""What stands in a measurements file: entries by name, with their lines and what is wrong with them."""

from __future__ import annotations

import difflib
import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from enum import Enum
from typing import Generic, TypeVar

from drafting.base.errors import Problem, Severity
from drafting.base.typed_words import LONGEST_GUESS, did_you_mean, doubt_about_text
from drafting.base.units import Unit
from drafting.body.checks import Wording

MEASURED = "measurements"
"""The table of the whole body; its entries are known by their bare names."""

_Value = TypeVar("_Value", covariant=True)
_Choice = TypeVar("_Choice", bound=Enum)


@dataclass(frozen=True)
class Found(Generic[_Value]):
    """What could be read of something, and what is wrong with it."""

    value: _Value
    problems: tuple[Problem, ...] = ()


@dataclass(frozen=True)
class Entries:
    """The entries of a measurements file, wherever they were typed.

    Attributes:
        given: Texts and tables by name.
        lines: The line of each entry, from 1, by its full name: "unit", "measurements.hip_girth".
        slipped: The keys of entries that could not even be read.
    """

    given: Mapping[str, object]
    lines: Mapping[str, int]
    slipped: frozenset[str]

    def refusal(self, name: str, message: str, value: object = None, plausible: str = "") -> Problem:
        """Return a refusal of an entry, by its full name, with its line and its value as it stands there."""
        # A name in quotes may hold anything, line breaks too.
        key = json.dumps(key_of(name), ensure_ascii=False)[1:-1]
        typed = "" if value is None else shortly(value)
        return Problem(key, message, Severity.REFUSAL, typed, plausible, self.lines.get(name))

    def placed(self, problems: Iterable[Problem]) -> tuple[Problem, ...]:
        """Return problems of measurements, cloth and fitting with their lines."""
        return tuple(replace(p, line=self.lines.get(full_name(p.key))) for p in problems)

    def typed(self, key: str) -> str:
        """Return the value of a measurement as it stands in the file."""
        table, _, name = full_name(key).rpartition(".")
        entries = self.given[table]
        assert isinstance(entries, Mapping)
        return shortly(entries[name])

    def table(self, name: str, holds: str) -> Found[Mapping[str, object]]:
        """Return the entries of a table, none where it is none; `holds` says what should stand below it."""
        entries = self.given.get(name, {})
        if isinstance(entries, dict):
            return Found(entries)
        message = f"This should be a line [{name}] with {holds} below it."
        return Found({}, (self.refusal(name, message, entries),))

    def text(self, key: str) -> Found[str]:
        """Return a text or a date; empty where there is none."""
        value = self.given.get(key, "")
        if isinstance(value, date):
            return Found(value.isoformat())
        if not isinstance(value, str):
            return Found("", (self.refusal(key, 'This should be a text in quotes: "...".', value),))
        doubt = doubt_about_text(value)
        return Found(value.strip(), (self.refusal(key, doubt, value),) if doubt else ())

    def choice(self, key: str, choices: type[_Choice]) -> Found[_Choice | None]:
        """Return the choice that the file makes; None where it makes none, or one that does not exist."""
        value = self.given.get(key, "")
        if value == "":
            return Found(None)
        by_word = {str(choice.value): choice for choice in choices}
        word = value.strip().lower()[:LONGEST_GUESS] if isinstance(value, str) else ""
        if word in by_word:
            return Found(by_word[word])
        meant = Unit.named(word) if choices is Unit else None
        guess = [meant.value] if meant else difflib.get_close_matches(word, by_word, 1)
        message = f"This is none of the choices.{did_you_mean(guess)}"
        return Found(None, (self.refusal(key, message, value, " or ".join(by_word)),))


def full_name(key: str) -> str:
    """Return the full name of what stands in a table by its key: "measurements.hip_girth" by "hip_girth"."""
    return key if "." in key else f"{MEASURED}.{key}"


def key_of(name: str) -> str:
    """Return the key by a full name."""
    return name.removeprefix(f"{MEASURED}.")


def not_filled_in(value: object) -> bool:
    """Return whether an entry was left empty."""
    return isinstance(value, str) and not value.strip()


def shortly(value: object) -> str:
    """Return a value as it stands in the file, in one line, cut short when it is endless."""
    text = f"[{', '.join(map(_word, value))}]" if isinstance(value, list) else _word(value)
    return text if len(text) <= 60 else f"{text[:57]}..."


def _word(value: object) -> str:
    return json.dumps(value, ensure_ascii=False) if isinstance(value, str) else Wording().typed("", value)
