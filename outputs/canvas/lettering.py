"""Lines of text fitted to a width: wrapped, shortened, and set one under the other."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.geometry.points import Point
from outputs.canvas.canvas import Canvas, Ruler

LEADING = 1.35
"""Distance of two baselines as a multiple of the type size."""


def wrapped(ruler: Ruler, string: str, width: float, size: float, *, bold: bool = False) -> list[str]:
    """Return the text in lines of at most `width` mm, broken between words, or inside one that is longer."""
    lines: list[str] = []
    current = ""
    for word in _short_words(ruler, string, width, size, bold):
        longer = f"{current} {word}" if current else word
        if current and ruler.text_width(longer, size, bold=bold) > width:
            lines.append(current)
            current = word
        else:
            current = longer
    return [*lines, current] if current else lines


def _short_words(ruler: Ruler, string: str, width: float, size: float, bold: bool) -> Iterator[str]:
    for word in string.split():
        while len(word) > 1 and ruler.text_width(word, size, bold=bold) > width:
            fits = next(
                n for n in range(len(word) - 1, 0, -1) if n == 1 or _fits(ruler, word[:n], width, size, bold)
            )
            yield word[:fits]
            word = word[fits:]
        yield word


def _fits(ruler: Ruler, string: str, width: float, size: float, bold: bool) -> bool:
    return ruler.text_width(string, size, bold=bold) <= width


def shortened(ruler: Ruler, string: str, width: float, size: float, *, bold: bool = False) -> str:
    """Return the text, or as much of it as fits into `width` mm with an ellipsis behind."""
    if _fits(ruler, string, width, size, bold):
        return string
    for length in range(len(string) - 1, 0, -1):
        short = string[:length].rstrip() + "…"
        if _fits(ruler, short, width, size, bold):
            return short
    return ""


@dataclass(frozen=True)
class Line:
    """One line of a block of text."""

    string: str
    size: float
    bold: bool = False


@dataclass(frozen=True)
class TextBlock:
    """Lines set one under the other, flush left.

    Attributes:
        lines: From top to bottom.
        width: Width of the widest line in mm.
    """

    lines: tuple[Line, ...]
    width: float

    @staticmethod
    def set(ruler: Ruler, paragraphs: list[Line], width: float) -> TextBlock:
        """Return the paragraphs wrapped to at most `width` mm."""
        lines = tuple(
            Line(string, p.size, p.bold)
            for p in paragraphs
            for string in wrapped(ruler, p.string, width, p.size, bold=p.bold)
        )
        widest = max((ruler.text_width(x.string, x.size, bold=x.bold) for x in lines), default=0.0)
        return TextBlock(lines, widest)

    @property
    def height(self) -> float:
        """From the top of the first line to the foot of the last, mm."""
        return sum(line.size * LEADING for line in self.lines)

    def draw(self, canvas: Canvas, corner: Point, *, quarter_turn: bool = False) -> None:
        """Write the block with its upper left corner at `corner`.

        Turned, it reads upwards and covers `height` by `width` instead.
        """
        down = 0.0
        for line in self.lines:
            down += line.size * LEADING
            foot = down - line.size * 0.3
            at = (
                Point(corner.x + foot, corner.y - self.width)
                if quarter_turn
                else Point(corner.x, corner.y - foot)
            )
            canvas.text(line.string, at, line.size, angle=90 if quarter_turn else 0, bold=line.bold)


class Column:
    """A column of text being filled from the top.

    Attributes:
        left: Left edge in mm.
        y: Where the next line's top goes.
        width: Width in mm.
        bottom: Where the column ends.
    """

    def __init__(self, canvas: Canvas, *, left: float, top: float, width: float, bottom: float) -> None:
        """Start an empty column."""
        self.canvas = canvas
        self.left, self.y, self.width, self.bottom = left, top, width, bottom

    def write(self, *paragraphs: Line, gap: float = 0.8) -> None:
        """Set the paragraphs, each followed by `gap` mm."""
        for paragraph in paragraphs:
            block = TextBlock.set(self.canvas, [paragraph], self.width)
            block.draw(self.canvas, Point(self.left, self.y))
            self.y -= block.height + gap

    def height(self, *paragraphs: Line, gap: float = 0.8) -> float:
        """Return how much of the column the paragraphs would take, mm."""
        return sum(TextBlock.set(self.canvas, [p], self.width).height + gap for p in paragraphs)
