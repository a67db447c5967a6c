"""Pieces on one big area, grain upright; laid side by side where there is no need to save paper.

That placing is plain: the tallest first, each in the first column that still has room, else in a new one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property, partial

import numpy as np
from shapely.geometry import Polygon

from drafting.base.tolerance import JOIN
from drafting.geometry.curves import Coordinates
from drafting.geometry.points import Point, Vector
from drafting.pieces.allowance import CutLine, CutSide, cut_line
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Piece

GAP = 8.0
"""Least distance between the cut lines of two pieces in mm: room for the shears (common practice)."""
EDGE = 2.0
"""Distance from the area's border to the nearest cut line in mm: no line falls on the border itself."""
UP = Vector(0.0, 1.0)


@dataclass(frozen=True, eq=False)
class StandingPiece:
    """A piece with its grain upright and its cut line, wherever it was drafted.

    Attributes:
        number: Its number in the pattern, from 1.
        piece: The piece, turned.
        line: Where it is cut.
    """

    number: int
    piece: Piece
    line: CutLine

    @property
    def cut(self) -> Coordinates:
        """The cut line, shape (n, 2), mm, the first point not repeated."""
        return self.line.outline

    @property
    def width(self) -> float:
        """Width of the cut shape in mm."""
        return float(self.cut[:, 0].max() - self.cut[:, 0].min())

    @property
    def height(self) -> float:
        """Height of the cut shape in mm."""
        return float(self.cut[:, 1].max() - self.cut[:, 1].min())

    @property
    def upside_down(self) -> StandingPiece:
        """The piece turned by half a turn round the origin."""
        piece = self.piece.moved(lambda p: Point(-p.x, -p.y))
        return StandingPiece(self.number, piece, self._line_of(piece, lambda points: -points))

    def at(self, left: float, bottom: float) -> StandingPiece:
        """Return the piece moved so that the box of its cut line starts at `left`, `bottom`."""
        way = Vector(left - float(self.cut[:, 0].min()), bottom - float(self.cut[:, 1].min()))
        piece = self.piece.moved(lambda p: p + way)
        return StandingPiece(
            self.number, piece, self._line_of(piece, lambda points: points + np.array([way.x, way.y]))
        )

    def _line_of(self, piece: Piece, move: Callable[[Coordinates], Coordinates]) -> CutLine:
        sides = zip(piece.edges, self.line.sides, strict=True)
        return CutLine(tuple(CutSide(edge, move(side.points)) for edge, side in sides))


@dataclass(frozen=True, eq=False)
class Layout:
    """Pieces in their places.

    Attributes:
        pieces: In the order of their numbers.
        width: Width of the area in mm, from 0.
        height: Height of the area in mm, from 0.
    """

    pieces: tuple[StandingPiece, ...]
    width: float
    height: float

    @staticmethod
    def round(pieces: Iterable[StandingPiece]) -> Layout:
        """Return pieces that lie in their places on the area that they need, EDGE beyond them included."""
        placed = tuple(pieces)
        right, top = np.max([piece.cut.max(axis=0) for piece in placed], axis=0) + EDGE
        return Layout(placed, float(right), float(top))

    @cached_property
    def shapes(self) -> tuple[Polygon, ...]:
        """The cut shapes in their places."""
        return tuple(piece.line.polygon for piece in self.pieces)


def standing(pattern: Pattern) -> tuple[StandingPiece, ...]:
    """Return every piece to be printed, turned so that its grain points up."""
    result = []
    for number, piece in pattern.numbered:
        angle = (piece.grain.end - piece.grain.start).angle_to(UP)
        upright = piece
        if abs(angle) > JOIN:
            upright = piece.moved(partial(Point.turned, about=Point(0, 0), angle=angle))
        result.append(StandingPiece(number, upright, cut_line(upright)))
    return tuple(result)


def side_by_side(pieces: Iterable[StandingPiece], *, height: float) -> Layout:
    """Return the pieces in columns of at most `height` mm; a taller piece gets a column of its own."""
    columns: list[list[StandingPiece]] = []
    for piece in sorted(pieces, key=lambda p: -p.height):
        for column in columns:
            if piece.width <= column[0].width and _stack(column) + GAP + piece.height <= height - 2 * EDGE:
                column.append(piece)
                break
        else:
            columns.append([piece])
    placed, left = [], EDGE
    for column in columns:
        bottom = EDGE
        for piece in column:
            placed.append(piece.at(left, bottom))
            bottom += piece.height + GAP
        left += max(piece.width for piece in column) + GAP
    placed.sort(key=lambda p: p.number)
    return Layout(tuple(placed), left - GAP + EDGE, max(map(_stack, columns)) + 2 * EDGE)


def _stack(column: list[StandingPiece]) -> float:
    return sum(piece.height for piece in column) + GAP * (len(column) - 1)
