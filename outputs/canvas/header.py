"""The head of a sheet: its title, which sheet it is, and a line of words below, over a rule."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry.points import Point
from outputs.canvas.canvas import Canvas, Role, line
from outputs.canvas.lettering import shortened
from outputs.paper.paper import Paper

APART = 6.0
"""Least room between the title and which sheet it is, mm."""


@dataclass(frozen=True, kw_only=True)
class Header:
    """How the heads of some sheets look: sizes of type, and how far below the upper border all stands, mm.

    Attributes:
        title: Size of the title, in bold.
        title_at: Where it stands.
        place: Size of what says which sheet it is, at the right end.
        place_at: Where that stands.
        words: Sizes of the line below, of which the first is taken at which it fits.
        words_at: Where it stands.
        rule_at: Where the rule lies; None without one.
        inset: How far all stays off the border, mm.
    """

    title: float
    title_at: float
    place: float = 0.0
    place_at: float = 0.0
    words: tuple[float, ...] = ()
    words_at: float = 0.0
    rule_at: float | None = None
    inset: float = 0.0

    def draw(self, canvas: Canvas, paper: Paper, title: str, *, place: str = "", words: str = "") -> None:
        """Draw all of it; what is too long is cut short."""
        self.write_title(canvas, paper, title, place)
        if place:
            self.write_place(canvas, paper, place)
        if words:
            self.write_words(canvas, paper, words)
        self.draw_rule(canvas, paper)

    def write_title(self, canvas: Canvas, paper: Paper, title: str, place: str) -> None:
        """Write the title as far as what says which sheet it is leaves room."""
        left, top = self._corner(paper)
        room = self._right(paper) - left
        if place:
            room -= canvas.text_width(place, self.place) + APART
        said = shortened(canvas, title, room, self.title, bold=True)
        canvas.text(said, Point(left, top - self.title_at), self.title, bold=True)

    def write_place(self, canvas: Canvas, paper: Paper, place: str) -> None:
        """Write which sheet it is."""
        start = self._right(paper) - canvas.text_width(place, self.place)
        canvas.text(place, Point(start, self._corner(paper).y - self.place_at), self.place)

    def write_words(self, canvas: Canvas, paper: Paper, words: str) -> None:
        """Write the line below."""
        left, top = self._corner(paper)
        write_fitting(canvas, words, Point(left, top - self.words_at), self._right(paper), self.words)

    def draw_rule(self, canvas: Canvas, paper: Paper) -> None:
        """Draw the rule, if there is one."""
        if self.rule_at is not None:
            left, top = self._corner(paper)
            y = top - self.rule_at
            canvas.stroke(line((left, y), (self._right(paper), y)), Role.FRAME)

    def _corner(self, paper: Paper) -> Point:
        return Point(paper.margin + self.inset, paper.height - paper.margin)

    def _right(self, paper: Paper) -> float:
        return paper.width - paper.margin - self.inset


def write_fitting(canvas: Canvas, words: str, at: Point, right: float, sizes: tuple[float, ...]) -> None:
    """Write words in the first of some sizes that reaches no further than `right`, cut short in the last."""
    room = right - at.x
    size = next((size for size in sizes if canvas.text_width(words, size) <= room), sizes[-1])
    canvas.text(shortened(canvas, words, room, size), at, size)
