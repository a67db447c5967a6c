"""A sheet to print and fill in: where the tape goes, and boxes for what it reads."""

from __future__ import annotations

from typing import BinaryIO

from drafting.base.units import Unit, format_length
from drafting.body.measurement_table import MEASUREMENTS, Need, Sides
from drafting.geometry.points import Point
from outputs.canvas.canvas import Canvas, Recording, Role, line, rectangle
from outputs.canvas.header import Header
from outputs.canvas.lettering import Column, Line, shortened
from outputs.canvas.pdf_canvas import PdfCanvas
from outputs.canvas.typeface import Typeface
from outputs.measuring.body_figures import draw_figures
from outputs.measuring.measuring_table import MeasuringTable, draw_sides
from outputs.measuring.tape_marks import NUMBERS
from outputs.paper.paper import Paper
from outputs.paper.printer_scale import BAR
from outputs.reading.measurement_template import HOW_TO_MEASURE
from outputs.reading.tape_readings import ENDS_APART
from outputs.sheets.tile_sheet import draw_bar
from outputs.words.print_report import PrintReport

TITLE = "Measuring sheet for jeans"
HEADING, BODY = 3.4, 2.6
HEADER = 20.0
"""Height of the title and what is filled in below it, mm."""
LINE = 0.5
"""Width of the heaviest line, mm."""
HEAD_LINES = Header(title=5.4, title_at=5, place=BODY, place_at=5, inset=LINE / 2)
FOOT = 7.0
"""Height of the check bar at the foot of a sheet, mm."""
READINGS_ADVICE = (
    "Take each three times, putting the tape on anew; if readings lie more than {0} apart, take it again. "
    "The draft uses the middle one."
)
KEY = (
    "Number in a ring: needed ({0}, better both). Dashed: the tape on the body. Arrows: straight, plumb. "
    "Two thin lines at the waist: the elastic."
)
SIDES = "Only for a body whose two sides differ: these for each side"
FOLLOW = "Then type all readings into the file that “jeansblock measure” writes, as it says there."
WAIST = ("waist taken", "where the body is narrowest or folds sideways", "where the jeans shall sit")
TRUE_BAR = "mm if printed at true size; lay the tape on it: is it true too?"


def write_measuring_sheet(target: BinaryIO, *, wearer: str, paper: Paper, unit: Unit) -> PrintReport:
    """Write two pages.

    Args:
        target: Open binary file; the same words give the same bytes.
        wearer: Printed at the top; empty leaves a line to write on.
        paper: What the sheets are.
        unit: Written over the boxes.
    """
    typeface = Typeface()
    canvas = PdfCanvas(target, typeface, title=f"{TITLE}, {wearer}" if wearer else TITLE)
    pages = draw_sheets(typeface, wearer=wearer, paper=paper, unit=unit)
    for page in pages:
        with canvas.page(paper.width, paper.height):
            page.play(canvas)
    canvas.save()
    return PrintReport(len(pages), (), tuple(typeface.warnings()))


def draw_sheets(typeface: Typeface, *, wearer: str, paper: Paper, unit: Unit) -> tuple[Recording, Recording]:
    """Return both pages as recordings: the figures with what helps most, then all other measurements."""
    specs = [spec for spec in MEASUREMENTS.values() if spec.sides is not Sides.EACH]
    first = [spec for spec in specs if spec.need is not Need.HELPS]
    sided = [spec for spec in MEASUREMENTS.values() if spec.sides is not Sides.BODY]
    left, right = _edges(paper)
    bottom = paper.margin + FOOT

    front = Recording(typeface)
    top = _draw_header(front, paper, wearer, page=1)
    either = [str(NUMBERS[spec.key]) for spec in specs if spec.need is Need.ONE_OF]
    key = KEY.format(" or ".join(either))
    apart = READINGS_ADVICE.format(format_length(ENDS_APART, unit))
    advice = Column(front, left=left, top=top, width=right - left, bottom=bottom)
    advice.write(Line(HOW_TO_MEASURE, BODY), Line(apart, BODY), Line(key, BODY), gap=0.3)
    _draw_waist_choice(front, left, advice.y - BODY * 1.4)
    table = MeasuringTable.set(front, first, left=left, right=right, unit=unit)
    draw_figures(front, left=left, right=right, top=advice.y - 8, bottom=bottom + table.height + 1)
    table.draw(front, bottom + table.height, unit.value)
    _draw_foot(front, paper)

    back = Recording(typeface)
    top = _draw_header(back, paper, wearer, page=2)
    helps = [spec for spec in specs if spec.need is Need.HELPS]
    rest = MeasuringTable.set(back, helps, left=left, right=right, unit=unit)
    foot = rest.draw(back, top, unit.value)
    column = Column(back, left=left, top=foot - 3, width=right - left, bottom=bottom)
    column.write(Line(f"{SIDES}.", HEADING, bold=True))
    each = next(spec for spec in sided if spec.sides is Sides.EACH)
    column.write(Line(f"{each.term.capitalize()}: {each.how[0].lower()}{each.how[1:]}", BODY), gap=0)
    column.y = draw_sides(back, sided, left=left, right=right, top=column.y - 3, unit=unit.value) - 3
    column.write(Line(FOLLOW, BODY))
    _draw_foot(back, paper)
    return front, back


def _edges(paper: Paper) -> tuple[float, float]:
    """Return where lines may begin and end, so that their own width stays off the border."""
    return paper.margin + LINE / 2, paper.width - paper.margin - LINE / 2


def _draw_header(canvas: Canvas, paper: Paper, wearer: str, *, page: int) -> float:
    """Draw title, name and date, and return the height of their foot."""
    (left, right), top = _edges(paper), paper.height - paper.margin
    HEAD_LINES.draw(canvas, paper, TITLE, place=f"page {page} of 2  ·  {paper.label}")
    y = top - 14
    x = left
    for words, width, filled in (("name", 84.0, wearer), ("taken on", 34.0, ""), ("by", right - left, "")):
        canvas.text(words, Point(x, y), BODY)
        x += canvas.text_width(words, BODY) + 2
        end = min(x + width, right)
        if filled:
            canvas.text(shortened(canvas, filled, end - x, 3.6, bold=True), Point(x, y), 3.6, bold=True)
        canvas.stroke(line((x, y - 1.2), (end, y - 1.2)), Role.FRAME)
        x = end + 4
    return top - HEADER + 2


def _draw_waist_choice(canvas: Canvas, left: float, y: float) -> None:
    """Draw two small boxes to tick: at which of the two levels the waist was taken."""
    lead, *choices = WAIST
    canvas.text(lead, Point(left, y), BODY, bold=True)
    x = left + canvas.text_width(lead, BODY, bold=True) + 4
    for words in choices:
        canvas.stroke(rectangle(x, y - 0.4, x + BODY, y - 0.4 + BODY), Role.FRAME)
        canvas.text(words, Point(x + BODY + 1.5, y), BODY)
        x += BODY + canvas.text_width(words, BODY) + 7


def _draw_foot(canvas: Canvas, paper: Paper) -> None:
    foot = paper.margin + 1.6
    start = Point(_edges(paper)[0], foot)
    draw_bar(canvas, start, BAR, upright=False)
    canvas.text(f"{BAR:g} {TRUE_BAR}", Point(start.x + BAR + 3, foot - 0.35 * BODY), BODY * 0.9)
