"""Styles by their name in the catalogue or in a person's own file, and a style written out to be changed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.units import Unit
from outputs.files.all_problems import by_line, gather_all
from outputs.files.text_file import TextFile, read_file
from outputs.files.toml_slips import read_toml
from outputs.words.file_names import safe_name
from styles.choice.catalogue import catalogue_names, catalogue_style, style_of
from styles.choice.setting_values import plausible, show_value
from styles.choice.settings import SETTINGS, SettingKind, value_of
from styles.choice.style import Style

MOST_STYLES = 12
"""In one run: more could not be told apart on one drawing."""


def find_style(asked: str, *, option: str = "--style") -> Style:
    """Return a style by its name in the catalogue, or from a person's own file, known by its ending .toml.

    Args:
        asked: As typed.
        option: Where it was typed, for the message.

    Raises:
        DraftRefused: when there is no such style, or its file is wrong, with all problems at once.
    """
    if asked.lower().endswith(".toml"):
        return read_style(read_file(Path(asked)))
    return catalogue_style(asked, key=option, besides=", or a file of your own that ends in .toml")


def find_styles(asked: Sequence[str], *, all_styles: bool = False) -> tuple[Style, ...]:
    """Return styles in the order asked for, those of the catalogue first when all are wanted; each once.

    Raises:
        DraftRefused: with the problems of every style, see `find_style`; or two would have the same files, or
            there are more than MOST_STYLES.
    """
    names = [*(catalogue_names() if all_styles else ()), *asked]
    styles = tuple(dict.fromkeys(gather_all(partial(find_style, name) for name in names)))
    _refuse_unlike(styles)
    return styles


def _refuse_unlike(styles: Sequence[Style]) -> None:
    problems = []
    names = [safe_name(style.name) for style in styles]
    for name in dict.fromkeys(name for name in names if names.count(name) > 1):
        message = "Several styles have this name, so that their files would, too; change it in one of them."
        problems.append(Problem("--style", message, Severity.REFUSAL, name))
    if len(styles) > MOST_STYLES:
        message = "So many styles cannot be told apart on one drawing; draft some in a run of their own."
        problems.append(
            Problem("--style", message, Severity.REFUSAL, str(len(styles)), f"up to {MOST_STYLES}")
        )
    if problems:
        raise DraftRefused(problems)


def read_style(file: TextFile) -> Style:
    """Return the style of a file; what the file does not say is as in the style that it is like.

    Raises:
        DraftRefused: when it is no TOML or a setting is wrong, with all problems at once.
    """
    text = read_toml(file.text)
    if text.tables is None:
        raise DraftRefused(text.slips, file.source)
    style, wrong = style_of(text.tables, file.stem)
    problems = [*text.slips, *wrong]
    if problems:
        placed = (p if p.line else replace(p, line=text.lines.get(p.key)) for p in problems)
        raise DraftRefused(by_line(placed), file.source)
    return style


def style_text(style: Style, unit: Unit) -> str:
    """Return a style file with every setting of a style, its meaning and its range, to change lines in.

    Read back it gives the style within what a length is rounded to.
    """
    lines = [
        "# A style of jeans. Change what you like; a line that is left out is as in a straight cut.",
        '# Lengths are texts like "4 cm" or "1 1/2 in", shares are texts like "42 %".',
        "",
        f"name = {_quoted(style.name)}",
        f"says = {_quoted(style.says)}",
    ]
    group = ""
    for key, setting in SETTINGS.items():
        table, _, name = key.rpartition(".")
        if table != group:
            lines += ["", f"[{table}]"]
            group = table
        value = value_of(style, key)
        if key == "below_waist" and style.rise is not None:
            value = None
        shown = show_value(key, value, unit)
        word = shown if setting.kind is SettingKind.YES_OR_NO else f'"{shown}"'
        word = {"yes": "true", "no": "false"}.get(word, word)
        lines.append(f"{name} = {word}  # {setting.says} ({plausible(setting, unit)})")
    return "\n".join(lines) + "\n"


def _quoted(text: str) -> str:
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
