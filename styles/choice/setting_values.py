"""Reads what a person types for a setting of a style, and writes it back."""

from __future__ import annotations

import difflib
import math
from collections.abc import Mapping
from typing import Any

from drafting.base.errors import Problem, Severity
from drafting.base.typed_words import PERCENT_LIKE, did_you_mean, in_one_line, percentage, plain_name
from drafting.base.units import LengthError, Unit, format_length, parse_length
from styles.choice.settings import SETTINGS, Setting, SettingKind, fighting, with_settings
from styles.choice.style import Style

_YES_OR_NO = {"true": True, "yes": True, "false": False, "no": False}


def read_settings(typed: Mapping[str, object], base: Style, unit: Unit | None) -> tuple[Style, list[Problem]]:
    """Return the style with the settings that can be meant, and what is wrong with the others.

    Args:
        typed: What was typed by name of the setting; a name that does not exist is a problem, too.
        base: The style that they change.
        unit: Of a length without its own; None where none was stated.
    """
    values: dict[str, Any] = {}
    problems = []
    for key, value in typed.items():
        setting = SETTINGS.get(key)
        if setting is None:
            problems.append(_unknown(key, value))
            continue
        try:
            values[key] = _read(setting, value, unit)
        except ValueError as error:
            problems.append(
                Problem(
                    key, str(error), Severity.REFUSAL, in_one_line(value), plausible(setting, unit or Unit.CM)
                )
            )
    style = with_settings(base, values)
    problems += [
        Problem(key, message, Severity.REFUSAL, in_one_line(typed[key]) if key in typed else "")
        for key, message in fighting(values, style)
    ]
    return style, problems


def _read(setting: Setting, typed: object, unit: Unit | None) -> Any:
    """Return the value as held; the error's text says what is wrong with it."""
    word = str(typed).strip().lower()
    if setting.kind is SettingKind.YES_OR_NO:
        if word not in _YES_OR_NO:
            raise ValueError("This is answered by yes or no.")
        return _YES_OR_NO[word]
    if setting.kind is SettingKind.CHOICE:
        by_word = setting.choices()
        if word not in by_word:
            raise ValueError(f"This is none of the choices.{_meant(word, by_word)}")
        return by_word[word]
    value = _length(typed, unit) if setting.kind is SettingKind.LENGTH else percentage(typed)
    if math.isnan(value):
        raise ValueError(PERCENT_LIKE)
    if setting.kind is SettingKind.SHARE:
        value = round(value / 100, 9)
    if not setting.least <= value <= setting.most:
        raise ValueError(f"No jeans are made like that: {setting.says}.")
    return value


def _length(typed: object, unit: Unit | None) -> float:
    """Return mm of a length that may carry a minus."""
    try:
        return parse_length(typed, unit, signed=True)
    except LengthError as error:
        raise ValueError(f"The length cannot be read: {error}.") from error


def _unknown(key: str, value: object) -> Problem:
    meant = _meant(key, SETTINGS) or " `jeansblock styles straight` lists them."
    message = f"No setting has this name.{meant}"
    return Problem(in_one_line(key), message, Severity.REFUSAL, in_one_line(value))


def _meant(word: str, known: Mapping[str, object]) -> str:
    plain = plain_name(word)
    by_last = {name.rpartition(".")[2]: name for name in known}
    guess = difflib.get_close_matches(plain, known, 1) or [
        by_last[last] for last in difflib.get_close_matches(plain.rpartition(".")[2], by_last, 1)
    ]
    return did_you_mean(guess)


def plausible(setting: Setting, unit: Unit) -> str:
    """Return the range of a setting in words."""
    if setting.kind is SettingKind.YES_OR_NO:
        return "yes or no"
    if setting.kind is SettingKind.CHOICE:
        return " or ".join(setting.choices())
    least = _shown(setting, setting.least, unit)
    if math.isinf(setting.most):
        return f"at least {least}"
    return f"between {least} and {_shown(setting, setting.most, unit)}"


def show_value(key: str, value: Any, unit: Unit) -> str:
    """Return the value of a setting as a person would type it; empty where it is not set."""
    setting = SETTINGS[key]
    if value is None or value == math.inf:
        return ""
    if setting.kind is SettingKind.CHOICE:
        return next(word for word, held in setting.choices().items() if held == value)
    if setting.kind is SettingKind.YES_OR_NO:
        return "yes" if value else "no"
    return _shown(setting, value, unit)


def _shown(setting: Setting, value: float, unit: Unit) -> str:
    if setting.kind is SettingKind.LENGTH:
        return format_length(value, unit)
    return f"{value * 100 if setting.kind is SettingKind.SHARE else value:.6g} %"
