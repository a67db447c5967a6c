"""Reads TOML typed by people who have never heard of it: every slip gets a line number and a plain hint."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Container, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

from drafting.base.errors import Problem, Severity

__all__ = ["TomlText", "read_toml"]

_HEADER = re.compile(r'\s*\[\s*"?(?P<name>[\w-]+)"?\s*\]')
_AT_LINE = re.compile(r"at line (\d+)")
_NAME = re.compile(r"[A-Za-z0-9_.-]+|\"[^\"]*\"|'[^']*'")
_INCH_SIGN = re.compile(r'\s*["″”]$')
_CURLY = "“”„‟‘’‚«»"
_QUOTES = _CURLY + "\"'"

# More slips than this mean that the file is something else; the rest is not worth reading out.
_MOST_SLIPS = 25
_LONGEST_LINE = 1000

MOST_LINES = 1000
"""Of a file that is typed: a blank measurements file, the longest of them, has some two hundred."""
TOO_LONG = f"The file has more than {MOST_LINES} lines, so it is no file of this kind."


class _Entry(NamedTuple):
    """A line of the form name = value, or nearly."""

    name: str
    sign: str
    value: str


@dataclass(frozen=True)
class TomlText:
    """What could be read of a text.

    Attributes:
        tables: the entries read; None when the text as a whole makes no sense.
        lines: line of each entry, from 1, by its full name: "unit", "measurements.waist_girth".
        slips: what could not be read, with the full name of the entry where there is one.
    """

    tables: dict[str, Any] | None
    lines: dict[str, int]
    slips: tuple[Problem, ...]


def read_toml(text: str) -> TomlText:
    """Return the entries of a text, less the lines that are not TOML, and what is wrong with each of those.

    Never raises, whatever the text.
    """
    rows = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    if len(rows) > MOST_LINES:
        return TomlText(None, {}, (Problem("", TOO_LONG, Severity.REFUSAL),))
    names = _names_by_line(rows)
    loaded, slips = _mended(rows)
    problems = [
        Problem(names.get(number, ""), slips[number], Severity.REFUSAL, line=number)
        for number in sorted(slips)
    ]
    if loaded.tables is None and not problems:
        problems.append(Problem("", f"The file cannot be read: {loaded.fault[:200]}.", Severity.REFUSAL))
    # Of a name that is given twice the first line counts.
    lines = {name: number for number, name in reversed(names.items())}
    return TomlText(loaded.tables, lines, tuple(problems))


@dataclass(frozen=True)
class _Loaded:
    """What the parser makes of some rows: tables, or its fault in its own words."""

    tables: dict[str, Any] | None
    fault: str = ""

    @property
    def line(self) -> int | None:
        """The line that the fault names."""
        found = _AT_LINE.search(self.fault)
        return int(found[1]) if found else None


def _mended(rows: Sequence[str]) -> tuple[_Loaded, dict[int, str]]:
    """Return what the rows give once the wrong ones are left away, and what is wrong with each, by line."""
    slips = {
        number: f"The line is longer than {_LONGEST_LINE} letters."
        for number, row in enumerate(rows, start=1)
        if len(row) > _LONGEST_LINE
    }
    loaded = _load(rows, slips)
    if loaded.tables is None:
        for number, row in enumerate(rows, start=1):
            if len(slips) < _MOST_SLIPS and number not in slips and _load([row]).tables is None:
                slips[number] = _hint(row)
        loaded = _load(rows, slips)
    # What is still wrong are lines that are sound alone and not together: names given twice.
    while loaded.tables is None and len(slips) < _MOST_SLIPS and loaded.line and loaded.line not in slips:
        slips[loaded.line] = "This stands in the file twice; keep one of the two."
        loaded = _load(rows, slips)
    return loaded, slips


def _load(rows: Sequence[str], without: Container[int] = ()) -> _Loaded:
    """Return what the rows give, those with some numbers left empty."""
    kept = ("" if number in without else row for number, row in enumerate(rows, start=1))
    try:
        return _Loaded(tomllib.loads("\n".join(kept)))
    # Nested brackets without end, and whole numbers of thousands of digits, fail in ways of their own.
    except (ValueError, RecursionError) as error:
        return _Loaded(None, str(error))


def _entry(row: str) -> _Entry | None:
    sign = re.search("[=:]", row)
    name = row[: sign.start()].strip() if sign else ""
    if not sign or not name or name[0] in "#[":
        return None
    return _Entry(name, sign[0], row[sign.end() :].strip())


def _names_by_line(rows: list[str]) -> dict[int, str]:
    names = {}
    table = ""
    for number, row in enumerate(rows, start=1):
        if header := _HEADER.match(row):
            table = f"{header['name']}."
            names[number] = header["name"]
        elif entry := _entry(row):
            names[number] = table + _as_name(entry.name.strip("\"'"))
    return names


def _as_name(text: str) -> str:
    return "_".join(text.split())


def _hint(row: str) -> str:
    """Return what is wrong with a line that is no TOML, for somebody who has never heard of TOML."""
    entry = _entry(row)
    if row.lstrip().startswith("["):
        return "A heading stands alone on its line, in square brackets: [measurements]."
    if not entry:
        return 'This is no line of the form name = "value".'
    bare = entry.value.split("#")[0].strip()[:60]
    meant = bare.strip(_QUOTES)
    if entry.sign == ":":
        return f'Write = instead of the colon: {entry.name} = "{meant}".'
    if not _NAME.fullmatch(entry.name):
        return f'A name has no spaces or signs in it: {_as_name(entry.name)} = "{meant}".'
    if not bare:
        return 'Nothing stands after the = sign; write "" for what was not measured.'
    if bare[0] == "[":
        return (
            'Readings are listed like [98, "98,5", "38 3/4 in"]: commas between them, straight quotes round'
            " all but plain numbers, and brackets that close."
        )
    if bare[0] in _CURLY:
        return f'Curly quotes: use straight ones, "{meant}".'
    if re.fullmatch(r'"[^"]+""', bare):
        return f'An inch sign inside straight quotes ends the text too early: write "{meant.strip()} in".'
    if bare[0] in "\"'":
        return f"The quotes do not close, or something follows them: {bare[0]}{meant}{bare[0]}."
    if re.fullmatch(r"-?[0-9]+,[0-9]+", bare):
        return f'A decimal comma needs quotes, "{bare}", or write a point, {bare.replace(",", ".")}.'
    if re.match(r"-?[0-9]", bare):
        return f'A number with a unit or a fraction needs quotes: "{re.sub(_INCH_SIGN, " in", bare)}".'
    return f'Text needs quotes: "{meant}".'
