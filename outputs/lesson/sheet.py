"""A sheet of the worksheet: lying paper, its header, and the foot of a drawing with check bar and scale."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.base.units import Unit, format_length
from drafting.block.block import Block
from drafting.geometry.points import Point
from outputs.canvas.canvas import Canvas
from outputs.canvas.header import Header, write_fitting
from outputs.canvas.lettering import Line
from outputs.canvas.text_flow import Area
from outputs.paper.paper import Paper
from outputs.reading.measurements_file import MeasurementFile
from outputs.sheets.tile_sheet import draw_bar

HEADER = 13.0
FOOT = 9.0
TITLE, BODY, SMALL, LEAST = 5.0, 2.8, 2.4, 2.0
"""Type sizes, mm."""
HEAD_LINES = Header(
    title=TITLE, title_at=4.8, place=BODY, place_at=4.5, words=(BODY, SMALL, LEAST), words_at=9.4,
    rule_at=11.2,
)  # fmt: skip
BARS = {Unit.INCH: (50.8, "2 in")}
METRIC_BAR = (50.0, "50 mm")
SET = (
    "waist_girth", "hip_girth", "waist_height", "body_rise", "inside_leg_height", "total_crotch_length",
)  # fmt: skip
"""The measurements that tell one set from another, as far as they were taken."""
SCALES = {"1:1": 1.0, "1:2": 2.0, "1:4": 4.0, "1:5": 5.0}
"""Scales by the words that a person types."""


def lying(paper: Paper) -> Paper:
    """Return the paper with its long side across."""
    return replace(paper, width=paper.height, height=paper.width)


def scale_words(scale: float) -> str:
    """Return what a drawing of this scale says: full size, or a scale and that nobody must cut by it."""
    return "1:1, full size, no seam allowance" if scale == 1 else f"1:{scale:g}, not for cutting"


@dataclass(frozen=True)
class SheetSet:
    """What every sheet of one worksheet has in common."""

    read: MeasurementFile
    block: Block
    paper: Paper
    """Lying."""
    title: str

    @property
    def area(self) -> Area:
        """What is left under the header."""
        p = self.paper
        return Area(p.margin, p.margin, p.width - p.margin, p.height - p.margin - HEADER)

    @property
    def measured(self) -> str:
        """The wearer, the day, and the measurements that tell the set."""
        taken = f", measured {self.read.taken_on}" if self.read.taken_on else ""
        parts = [
            f"{key.replace('_', ' ')} {format_length(mm, self.read.unit)}"
            for key in SET
            if (mm := self.read.measurements.given().get(key)) is not None
        ]
        return f"{self.read.wearer}{taken}: {', '.join(parts)}"

    def said(self, scale: float) -> list[Line]:
        """Return what stands on every finished panel: at which scale and from whose measurements it is."""
        return [Line(scale_words(scale), SMALL, bold=True), Line(self.measured, LEAST)]

    def draw_header(self, canvas: Canvas, *, sheet: int, sheets: int) -> None:
        """Draw title, wearer and number of a sheet."""
        place = f"sheet {sheet} of {sheets}  ·  {self.paper.label}"
        HEAD_LINES.write_place(canvas, self.paper, place)
        HEAD_LINES.write_title(canvas, self.paper, self.title, place)
        HEAD_LINES.write_words(canvas, self.paper, self.measured)
        HEAD_LINES.draw_rule(canvas, self.paper)

    def draw_foot(self, canvas: Canvas, name: str, scale: float) -> None:
        """Draw the check bar of a drawing, its scale and whose it is."""
        area = self.area
        length, words = BARS.get(self.read.unit, METRIC_BAR)
        y, foot = area.bottom + 5.1, area.bottom + 0.24 * SMALL
        draw_bar(canvas, Point(area.left, y), length, upright=False)
        full = format_length(length * scale, self.read.unit)
        said = f"{words} on this sheet" + (f" = {full} of the draft" if scale != 1 else "")
        canvas.text(said, Point(area.left, foot), SMALL)
        at = Point(area.left + length + 12, y - 0.6)
        bold = f"{name}, {scale_words(scale)}"
        canvas.text(bold, at, 3.4, bold=True)
        write_fitting(canvas, self.measured, Point(at.x, foot), area.right, (SMALL, LEAST))
