"""The catalogue of styles, one file each, and what the tables of any style file mean."""

from __future__ import annotations

import difflib
import tomllib
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed_words import LONGEST_GUESS, did_you_mean, doubt_about_text, in_one_line
from drafting.base.units import Unit
from styles.choice.setting_values import read_settings
from styles.choice.style import Style

CATALOGUE = Path(__file__).parents[1] / "catalogue"
"""One file a style; a file that is put here is offered under its own name."""

_TEXTS = ("name", "says", "like", "unit")


def catalogue_names() -> tuple[str, ...]:
    """Return the names of the catalogue's styles, in alphabetical order."""
    return tuple(sorted(path.stem for path in CATALOGUE.glob("*.toml")))


def catalogue_style(name: str, *, key: str = "style", besides: str = "") -> Style:
    """Return a style of the catalogue.

    Args:
        name: As typed.
        key: Where it was typed, for the message.
        besides: What else could have been typed there, for the message.

    Raises:
        DraftRefused: there is no such style, or its file is wrong, with all problems at once.
    """
    names = catalogue_names()
    if name not in names:
        guess = difflib.get_close_matches(name.lower()[:LONGEST_GUESS], names, 1)
        message = f"There is no style of this name.{did_you_mean(guess)}"
        choices = f"{', '.join(names)}{besides}"
        raise DraftRefused([Problem(key, message, Severity.REFUSAL, in_one_line(name), choices)])
    path = CATALOGUE / f"{name}.toml"
    style, problems = style_of(tomllib.loads(path.read_text(encoding="utf-8")), name)
    if problems:
        raise DraftRefused(problems, path.name)
    return style


def style_of(tables: Mapping[str, Any], stem: str) -> tuple[Style, list[Problem]]:
    """Return the style that a file's tables mean, and what is wrong with those that mean nothing.

    What the tables do not say is as in the style that they are like, or as in a straight cut.

    Args:
        tables: Of the file.
        stem: The file's name without its ending: that of the style unless the file gives another.
    """
    problems: list[Problem] = []
    texts = _texts(tables, problems)
    base = Style(name=stem)
    if like := texts.get("like"):
        if like == stem or like not in catalogue_names():
            problems.append(
                _wrong("like", "No other style that `jeansblock styles` lists has this name.", like)
            )
        else:
            base = catalogue_style(like)
    unit = Unit.named(texts["unit"]) if texts.get("unit") else None
    if texts.get("unit") and unit is None:
        problems.append(_wrong("unit", "This is none of the choices.", texts["unit"], "cm or mm or in"))
    named = replace(base, name=texts.get("name") or in_one_line(stem), says=texts.get("says") or base.says)
    style, wrong = read_settings(_settings(tables), named, unit)
    return style, problems + wrong


def _texts(tables: Mapping[str, Any], problems: list[Problem]) -> dict[str, str]:
    found = {}
    for key in _TEXTS:
        value = tables.get(key, "")
        if not isinstance(value, str):
            problems.append(_wrong(key, 'This should be a text in quotes: "...".', value))
        elif doubt := doubt_about_text(value):
            problems.append(_wrong(key, doubt, value))
        else:
            found[key] = value.strip()
    return found


def _settings(tables: Mapping[str, Any]) -> dict[str, object]:
    """Return what is set, by full name, less what is left empty."""
    found: dict[str, object] = {}
    for key, value in tables.items():
        if isinstance(value, dict):
            found |= {f"{key}.{name}": inner for name, inner in value.items()}
        elif key not in _TEXTS:
            found[key] = value
    return {key: value for key, value in found.items() if value != ""}


def _wrong(key: str, message: str, value: object, choices: str = "") -> Problem:
    return Problem(key, message, Severity.REFUSAL, in_one_line(value), choices)
