"""Tables as spreadsheets write them: rows of cells between commas, semicolons or tabs."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from dataclasses import dataclass
from io import StringIO

SEPARATORS = ",;\t"
"""Between the cells; where commas part decimals spreadsheets write semicolons."""


@dataclass(frozen=True)
class Row:
    """One row.

    Attributes:
        number: As a spreadsheet counts it, from 1.
        cells: Its cells as typed; None where a quotation mark in it does not close, or something follows it
            in its cell.
    """

    number: int
    cells: tuple[str, ...] | None

    @property
    def empty(self) -> bool:
        """Whether nothing stands in it."""
        return self.cells is not None and not any(cell.strip() for cell in self.cells)


def separator(text: str) -> str:
    """Return what stands between the cells of a table.

    It is the commonest of all separators in the first line that has any; of several the one that comes first.
    """
    for line in text.splitlines():
        found = [sign for sign in line if sign in SEPARATORS]
        if found:
            return max(found, key=found.count)
    return SEPARATORS[0]


def table_rows(text: str) -> Iterator[Row]:
    """Yield every row of a table, empty ones too."""
    reader = csv.reader(StringIO(text, newline=""), delimiter=separator(text), strict=True)
    number = 0
    while True:
        number += 1
        try:
            yield Row(number, tuple(next(reader)))
        except StopIteration:
            return
        except csv.Error:
            yield Row(number, None)
