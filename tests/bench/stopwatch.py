"""Timing two things side by side, so that a busy machine slows both alike."""

from __future__ import annotations

import re
import statistics
from collections.abc import Callable
from time import perf_counter

_LINE = re.compile(r"(?P<name>.{44}) .* (?P<ratio>\d+\.\d\d)x$")


def side_by_side(*things: Callable[[], object], rounds: int) -> list[list[float]]:
    """Return the seconds of each thing, `rounds` times in turns after one turn that does not count."""
    taken: list[list[float]] = [[] for _ in things]
    for number in range(rounds + 1):
        for thing, seconds in zip(things, taken, strict=True):
            start = perf_counter()
            thing()
            if number:
                seconds.append(perf_counter() - start)
    return taken


def table(names: list[str], taken: list[list[float]], *, unit: str = "ms", factor: float = 1000) -> str:
    """Return one line for each thing: median, least, and the median of its ratios to the last, the floor."""
    floor = taken[-1]
    lines = [f"{'':44s} {'median':>9s} {'least':>9s} {'to floor':>9s}"]
    for name, seconds in zip(names, taken, strict=True):
        ratio = statistics.median(a / b for a, b in zip(seconds, floor, strict=True))
        middle, least = statistics.median(seconds) * factor, min(seconds) * factor
        lines.append(f"{name:44s} {middle:6.1f} {unit:2s} {least:6.1f} {unit:2s} {ratio:8.2f}x")
    return "\n".join(lines)


def read_table(text: str) -> list[tuple[str, float]]:
    """Return name and ratio of every line that `table` wrote into a text; the floors are those with 1."""
    found = filter(None, map(_LINE.match, text.splitlines()))
    return [(line["name"].strip(), float(line["ratio"])) for line in found]
