"""Text and ruled tables set one under the other, over as many sheets as they need."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from drafting.geometry.points import Point
from outputs.canvas.canvas import Align, Recording, Role, Ruler, line
from outputs.canvas.lettering import LEADING, Line, TextBlock, wrapped

SIZE = 2.5
"""Type size in tables, mm."""
PAD = 0.9
"""Between the text of a cell and its rules, mm."""


@dataclass(frozen=True)
class Area:
    """A rectangle of a sheet or of a draft, mm."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """Its width."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Its height."""
        return self.top - self.bottom


@dataclass(frozen=True)
class Heads:
    """The columns of a table.

    Attributes:
        words: Their heads.
        shares: Their widths, in parts of the whole.
        right: The columns whose numbers stand flush right, counted from 0.
    """

    words: tuple[str, ...]
    shares: tuple[float, ...]
    right: frozenset[int] = frozenset()


class Flow:
    """Fills sheets from the top; each is a recording in the coordinates of its sheet."""

    def __init__(self, ruler: Ruler, area: Area, *, size: float = SIZE) -> None:
        """Start without a sheet; tables are set in type of `size` mm."""
        self.ruler, self.area, self.size = ruler, area, size
        self.sheets: list[Recording] = []
        self.y = area.bottom

    def new_sheet(self) -> Recording:
        """Begin another sheet."""
        self.sheets.append(Recording(self.ruler))
        self.y = self.area.top
        return self.sheets[-1]

    def room(self, height: float) -> Recording:
        """Return the sheet that has `height` mm left, a new one where this one has not."""
        if not self.sheets or self.y - height < self.area.bottom:
            return self.new_sheet()
        return self.sheets[-1]

    def text(self, *lines: Line, width: float | None = None, keep: float = 0.0) -> None:
        """Set paragraphs, the whole on one sheet with `keep` mm of what follows."""
        block = TextBlock.set(self.ruler, list(lines), width or self.area.width)
        sheet = self.room(block.height + keep)
        block.draw(sheet, Point(self.area.left, self.y))
        self.y -= block.height + 1.2

    def table(self, heads: Heads, rows: Sequence[Sequence[str]], *, least: float = 0.0) -> None:
        """Set a table with a rule round every cell; the heads return on every sheet.

        Args:
            heads: The columns.
            rows: As many texts as there are columns; one text alone is a heading right across.
            least: Least height of a row, mm: room to write in.
        """
        stops = _stops(heads, self.area)
        head = self._lines(heads, stops, heads.words, bold=True)
        begun = False
        for row in rows:
            lines = self._lines(heads, stops, row, bold=len(row) == 1)
            height = max(self._height(lines), least if len(row) > 1 else 0)
            following = 12.0 if len(row) == 1 else 0.0  # a heading is not left alone at the foot
            if not begun or self.y - height - following < self.area.bottom:
                self.room(self._height(head) + height + following if not begun else self.area.height)
                self._row(heads, stops, head, self._height(head), bold=True)
                begun = True
            self._row(heads, stops, lines, height, bold=len(row) == 1)
        self.y -= 2.5

    def _lines(self, heads: Heads, stops: list[float], row: Sequence[str], *, bold: bool) -> list[list[str]]:
        if len(row) == 1:
            return [wrapped(self.ruler, row[0], self.area.width - 2 * PAD, self.size, bold=True)]
        widths = [b - a - 2 * PAD for a, b in pairwise(stops)]
        return [
            wrapped(self.ruler, text, width, self.size, bold=bold)
            for text, width in zip(row, widths, strict=True)
        ]

    def _height(self, lines: list[list[str]]) -> float:
        return max(len(texts) for texts in lines) * self.size * LEADING + 2 * PAD

    def _row(
        self, heads: Heads, stops: list[float], lines: list[list[str]], height: float, *, bold: bool
    ) -> None:
        sheet, top, foot = self.sheets[-1], self.y, self.y - height
        edges = stops if len(lines) > 1 else [stops[0], stops[-1]]
        for index, (left, texts) in enumerate(zip(edges, lines, strict=False)):
            y = top - PAD - self.size * 0.95
            for text in texts:
                if index in heads.right and len(lines) > 1:
                    sheet.text(
                        text, Point(edges[index + 1] - PAD, y), self.size, bold=bold, align=Align.RIGHT
                    )
                else:
                    sheet.text(text, Point(left + PAD, y), self.size, bold=bold)
                y -= self.size * LEADING
        for x in edges:
            sheet.stroke(line((x, top), (x, foot)), Role.RULER)
        for level in (top, foot):
            sheet.stroke(line((stops[0], level), (stops[-1], level)), Role.RULER)
        self.y = foot


def _stops(heads: Heads, area: Area) -> list[float]:
    whole, at, stops = sum(heads.shares), 0.0, [area.left]
    for share in heads.shares:
        at += share
        stops.append(area.left + area.width * at / whole)
    return stops
