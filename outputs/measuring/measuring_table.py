"""The table of the measuring sheet: number, name, how to take it, and boxes for three readings."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from drafting.base.units import Unit
from drafting.body.measurement_table import MeasurementSpec
from drafting.geometry.points import Point
from outputs.canvas.canvas import Align, Canvas, Role, line, rectangle
from outputs.canvas.lettering import Line, TextBlock
from outputs.measuring.tape_marks import write_number

READINGS = 3
"""Boxes of a measurement: three readings show a slip, and their median forgives it (common practice)."""
BOX_WIDTH, BOX_HEIGHT = 17.0, 7.4
"""Of one box, mm: room for "102.5" in a hand's writing."""
BODY, SMALL = 2.5, 2.2
NUMBER, NAME, GAP = 8.0, 46.0, 3.0
"""Widths of the columns of numbers and names, and between columns, mm."""
PADDING = 1.1
"""Above and below the text of a row, mm."""
HEAD = 6.0
"""Height of the head, mm."""


@dataclass(frozen=True)
class Row:
    """A row as set; `name` and `how` are its two cells of text, `height` is in mm."""

    spec: MeasurementSpec
    name: TextBlock
    how: TextBlock

    @property
    def height(self) -> float:
        """The height of the row with its boxes."""
        return max(self.name.height, self.how.height, BOX_HEIGHT - 0.2) + 2 * PADDING


@dataclass(frozen=True)
class MeasuringTable:
    """Rows between two edges of a sheet, in mm."""

    rows: tuple[Row, ...]
    left: float
    right: float

    @staticmethod
    def set(
        canvas: Canvas, specs: Sequence[MeasurementSpec], *, left: float, right: float, unit: Unit
    ) -> MeasuringTable:
        """Return a row for each measurement, with what is usual in `unit`."""
        wide = right - left - NUMBER - NAME - 2 * GAP - READINGS * BOX_WIDTH
        return MeasuringTable(
            tuple(
                Row(
                    spec,
                    TextBlock.set(canvas, _name(spec), NAME),
                    TextBlock.set(canvas, [Line(f"{spec.how} {_usual(spec, unit)}", BODY)], wide),
                )
                for spec in specs
            ),
            left,
            right,
        )

    @property
    def height(self) -> float:
        """The height with the head, mm."""
        return HEAD + sum(row.height for row in self.rows)

    def draw(self, canvas: Canvas, top: float, unit: str) -> float:
        """Draw the table from `top` downwards, for readings in `unit`; return the height of its foot."""
        boxes = self.right - READINGS * BOX_WIDTH
        for column, words in (
            (self.left + NUMBER, "measurement"),
            (self.left + NUMBER + NAME + GAP, "how to take it"),
        ):
            canvas.text(words, Point(column, top - HEAD + 2), BODY, bold=True)
        write_heads(canvas, boxes, top, unit)
        y = top - HEAD
        for row in self.rows:
            canvas.stroke(line((self.left, y), (boxes - GAP, y)), Role.DIMENSION)
            write_number(canvas, row.spec.key, Point(self.left + 3, y - row.height / 2))
            row.name.draw(canvas, Point(self.left + NUMBER, y - (row.height - row.name.height) / 2))
            row.how.draw(
                canvas, Point(self.left + NUMBER + NAME + GAP, y - (row.height - row.how.height) / 2)
            )
            draw_boxes(canvas, boxes, y - row.height / 2)
            y -= row.height
        return y


def write_heads(canvas: Canvas, left: float, top: float, unit: str) -> None:
    """Write "1st", "2nd", "3rd" over three boxes, the first with the unit."""
    for index, words in enumerate((f"1st, {unit}", "2nd", "3rd")):
        middle = Point(left + (index + 0.5) * BOX_WIDTH, top - HEAD + 2)
        canvas.text(words, middle, BODY, bold=True, align=Align.CENTRE)


def draw_boxes(canvas: Canvas, left: float, middle: float) -> None:
    """Draw three boxes side by side about a height."""
    for index in range(READINGS):
        x = left + index * BOX_WIDTH
        canvas.stroke(
            rectangle(x, middle - BOX_HEIGHT / 2, x + BOX_WIDTH, middle + BOX_HEIGHT / 2), Role.FRAME
        )


def draw_sides(
    canvas: Canvas, specs: Sequence[MeasurementSpec], *, left: float, right: float, top: float, unit: str
) -> float:
    """Draw rows with three boxes for either side of the body; return the height of their foot."""
    starts = {"left": right - 2 * READINGS * BOX_WIDTH - 2 * GAP, "right": right - READINGS * BOX_WIDTH}
    for side, start in starts.items():
        canvas.text(f"{side} side", Point(start, top - 3), BODY, bold=True)
        write_heads(canvas, start, top - 3, unit)
    y = top - 3 - HEAD
    room = starts["left"] - left - NUMBER - GAP
    for spec in specs:
        block = TextBlock.set(canvas, [Line(spec.term, BODY, bold=True), Line(_aid(spec), SMALL)], room)
        height = max(BOX_HEIGHT, block.height) + 2.0
        write_number(canvas, spec.key, Point(left + 3, y - height / 2), ring=False)
        block.draw(canvas, Point(left + NUMBER, y - (height - block.height) / 2))
        for start in starts.values():
            draw_boxes(canvas, start, y - height / 2)
        y -= height
    return y


def _name(spec: MeasurementSpec) -> list[Line]:
    """Return the name, what else it is called, whether it is needed, and who or what it takes."""
    also = ", ".join(word for word in spec.also if word not in spec.term)
    remarks = ", ".join(filter(None, (spec.need.value, _aid(spec))))
    words = (f"also: {also}" if also else "", remarks)
    return [Line(spec.term, BODY, bold=True), *(Line(word, SMALL) for word in words if word)]


def _usual(spec: MeasurementSpec, unit: Unit) -> str:
    """Return what adults commonly measure, in whole units: the rest is more often a slip than a body."""
    low, high = (mm / unit.mm for mm in spec.usual)
    return f"Usual: {math.floor(low)}–{math.ceil(high)} {unit.value}."


def _aid(spec: MeasurementSpec) -> str:
    return "with a helper" if spec.helper else "with a mirror if alone" if spec.mirror else ""
