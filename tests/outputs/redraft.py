"""Drafts again from the printed worksheet alone: reads its tables, reckons its formulas, sets its points.

Nothing of the engine is imported. Lengths are in mm; every panel has its own plumb line at x = 0.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
import pdfplumber

Place = tuple[float, float]
UNITS = {"millimetres": 1.0, "centimetres": 10.0, "inches": 25.4}
WAYS = {"up": (0.0, 1.0), "down": (0.0, -1.0), "left": (-1.0, 0.0), "right": (1.0, 0.0)}


def number(text: str) -> float:
    """Return a printed number, also "-5/16", "10 3/4"."""
    text = text.replace("−", "-").strip()
    sign = -1.0 if text.startswith("-") else 1.0
    return sign * sum(
        float(part.partition("/")[0]) / float(part.partition("/")[2] or 1) for part in text.strip("-").split()
    )


class Formula:
    """Reckons an expression such as "(hip girth + hip ease) ÷ 4 − 1"; the sign binds as in arithmetic."""

    def __init__(self, text: str, named: dict[str, float]) -> None:
        self.rest, self.named = text, sorted(named.items(), key=lambda entry: -len(entry[0]))

    def value(self) -> float:
        result = self._sum()
        assert not self.rest.strip(), f"left over: {self.rest}"
        return result

    def _take(self, *signs: str) -> str:
        self.rest = self.rest.lstrip()
        for sign in signs:
            if self.rest.startswith(sign):
                self.rest = self.rest[len(sign) :]
                return sign
        return ""

    def _sum(self) -> float:
        if self._take("the largest of"):
            values = [self._plain_sum()]
            while self._take(","):
                values.append(self._plain_sum())
            return max(values)
        return self._plain_sum()

    def _plain_sum(self) -> float:
        result = self._product()
        while sign := self._take("+", "−"):
            result += self._product() * (1 if sign == "+" else -1)
        return result

    def _product(self) -> float:
        result = self._atom()
        while sign := self._take("×", "÷"):
            if sign == "×" and self._take("tan"):
                result *= math.tan(math.radians(self._atom()))
                self._take("°")
            else:
                other = self._atom()
                result = result * other if sign == "×" else result / other
        return result

    def _atom(self) -> float:
        if self._take("("):
            result = self._sum()
            assert self._take(")")
            return result
        if self._take("−"):
            return -self._atom()
        for name, value in self.named:
            if self._take(name):
                return value
        self.rest = self.rest.lstrip()
        found = re.match(r"[0-9]+(\.[0-9]+)?", self.rest)
        assert found, f"no number and no name: {self.rest}"
        self.rest = self.rest[found.end() :]
        return float(found[0])


@dataclass
class Row:
    """One printed step."""

    label: str
    draws: str
    start: list[str]
    way: str
    formula: str
    numbers: str
    result: str
    exact: float
    """mm."""
    named: dict[str, float]
    """Every number that stands above it in print under a name."""

    @property
    def panel(self) -> str:
        word = self.draws.split()[0]
        return word if word in ("front", "back") else ""

    @property
    def name(self) -> str:
        return self.draws.partition(" = ")[0].removeprefix(self.panel).strip()


@dataclass
class Sheet:
    """What is printed: named numbers in the printed unit, and steps."""

    unit: float
    named: dict[str, float] = field(default_factory=dict)
    rows: list[Row] = field(default_factory=list)


def read_sheet(path: Path) -> Sheet:
    """Return the tables of a worksheet."""
    with pdfplumber.open(path) as document:
        words = re.search(r"Every length is full size, in (\w+);", document.pages[0].extract_text())
        assert words
        sheet = Sheet(UNITS[words[1]])
        for page in document.pages:
            if page.curves:
                break  # the drawings begin
            for table in page.extract_tables():
                _take_table(sheet, [[" ".join((cell or "").split()) for cell in row] for row in table])
    return sheet


def _take_table(sheet: Sheet, table: list[list[str]]) -> None:
    head, *rows = table
    for row in rows:
        if head[0] in ("measurement", "further numbers"):
            sheet.named[row[0]] = number(row[2])
        elif head[0] == "no." and row[1]:
            label, draws, start, way, formula, numbers, result, exact = row
            mm, named = number(exact) * sheet.unit, dict(sheet.named)
            sheet.rows.append(Row(label, draws, start.split("–"), way, formula, numbers, result, mm, named))
            if " = " in draws:
                sheet.named[draws.partition(" = ")[2]] = number(exact)


@dataclass
class Redraft:
    """Points and lines as drawn again, per panel; mm."""

    points: dict[str, Place] = field(default_factory=dict)
    panels: dict[str, str] = field(default_factory=dict)
    names: dict[tuple[str, str], str] = field(default_factory=dict)
    lines: dict[str, list[np.ndarray]] = field(default_factory=lambda: {"front": [], "back": []})


def redraft(sheet: Sheet) -> Redraft:
    """Carry the steps out in order; a step that starts from what does not stand yet raises KeyError."""
    drawn = Redraft()
    drawn.points["floor"] = (0.0, 0.0)
    for row in sheet.rows:
        starts = [drawn.points[label] for label in row.start]
        if row.way.startswith(("straight", "curve")):
            drawn.lines[row.panel].append(_line(row, starts, drawn))
            continue
        drawn.points[row.label] = _point(row, starts, drawn, sheet)
        drawn.names[row.panel, row.name] = row.label
    return drawn


def _point(row: Row, starts: list[Place], drawn: Redraft, sheet: Sheet) -> Place:
    x, y = starts[0]
    offset = re.fullmatch(r"(left|right) ([0-9.]+), (up|down) ([0-9.]+)", row.way)
    if offset:
        across, along = WAYS[offset[1]][0], WAYS[offset[3]][1]
        return x + across * float(offset[2]) * sheet.unit, y + along * float(offset[4]) * sheet.unit
    length = Formula(row.formula, row.named).value() * sheet.unit
    if high := re.fullmatch(r"on this line, so high above (\w+)", row.way):
        (x1, y1), level = starts[1], drawn.points[high[1]][1] + length
        return x + (x1 - x) * (level - y) / (y1 - y), level
    if towards := re.match(r"towards (\w+)", row.way):
        dx, dy = _way((x, y), drawn.points[towards[1]])
    elif square := re.match(r"square (up|down) from the line (\w+)–(\w+)", row.way):
        ux, uy = _way(drawn.points[square[2]], drawn.points[square[3]])
        dx, dy = (-uy, ux) if (ux > 0) == (square[1] == "up") else (uy, -ux)
    else:
        dx, dy = WAYS[row.way.removeprefix("plumb ").partition(";")[0]]
    return x + dx * length, y + dy * length


def _way(start: Place, end: Place) -> Place:
    length = math.dist(start, end)
    return (end[0] - start[0]) / length, (end[1] - start[1]) / length


def _line(row: Row, ends: list[Place], drawn: Redraft) -> np.ndarray:
    if row.way.startswith("straight"):
        return np.array(ends)
    guides = re.match(r"curve, guides (\w+) and (\w+)", row.way)
    assert guides
    return _halved([ends[0], drawn.points[guides[1]], drawn.points[guides[2]], ends[1]], 6)


def _halved(four: list[Place], times: int) -> np.ndarray:
    """Return places of a curve by halving its guide lines over and over, as the sheet says."""
    p = np.array(four)
    if not times:
        return p[[0, 3]]
    one = (p[:-1] + p[1:]) / 2
    two = (one[:-1] + one[1:]) / 2
    middle = (two[0] + two[1]) / 2
    first = _halved([tuple(q) for q in (p[0], one[0], two[0], middle)], times - 1)
    second = _halved([tuple(q) for q in (middle, two[1], one[2], p[3])], times - 1)
    return np.vstack([first, second[1:]])
