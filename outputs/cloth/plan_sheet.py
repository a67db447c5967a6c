"""The cloth plan to look at: a page for each cloth, drawn to scale, with every piece named."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import BinaryIO

import numpy as np
import shapely
from shapely.affinity import scale as scaled
from shapely.affinity import translate
from shapely.geometry import LineString, Polygon, box

from drafting.base.units import Unit, format_length, length_to_buy
from drafting.geometry.points import Point, Vector
from outputs.canvas.canvas import Align, Canvas, Polyline, Role, line
from outputs.canvas.free_space import Room
from outputs.canvas.header import Header
from outputs.canvas.lettering import Column, Line, TextBlock
from outputs.canvas.pdf_canvas import PdfCanvas
from outputs.canvas.typeface import Typeface
from outputs.cloth.cut_pieces import Laying
from outputs.cloth.laid_cloth import END, GAP, SELVEDGE, Laid, LaidCloth
from outputs.cloth.plan import ClothPlan
from outputs.paper.paper import PAPERS
from outputs.sheets.tile_sheet import draw_bar
from outputs.words.print_report import PrintReport

PAPER = PAPERS["either"]
"""One page that prints whole on A4 and on Letter."""
SCALES = (5, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100)
"""How many times smaller the cloth is drawn; the largest drawing that fits is taken."""
WORDS = 58.0
"""Width of the column with the words, mm."""
GUTTER = 8.0
"""Between drawing and words, mm."""
HEAD_LINES = Header(title=6.5, title_at=6, words=(3.6,), words_at=12, rule_at=15)
HEADER = 17.0
"""Height of the title, mm."""
WORDS_BELOW = 80.0
"""Height of the words where they stand below a wide cloth, mm."""
RULER = 12.0
"""Width of the ruler along the cloth and of the words beside it, mm."""
BORDER = 5.0
"""Room for the words along selvedge and ends, mm."""
BAR = 50.0
"""Length of the bar to check the print by, mm."""
BODY, HEADING = 2.6, 3.4
"""Type sizes in mm."""
LABELS = (2.6, 2.2, 1.8)
"""Type sizes of a piece's label that are tried, mm."""
NUMBERS = (1.8, 1.5)
"""Type sizes of a number alone; where none fits it stands beside the piece, mm."""
CLEAR = 0.3
"""Distance of a label from the lines, mm."""
HEAD = 1.6
"""Length of an arrow head, mm."""
ARROW = 0.55
"""Length of the arrow as a share of the grain line."""

LIES = {
    Laying.FLIPPED: "flipped (f): lay the pattern face down",
    Laying.UNFOLDED: "unfolded (u): draw round it, flip it over along its fold, draw the other half",
    Laying.PAIR: "both layers (b): cut through both, which gives a pair",
    Laying.ON_FOLD: "on the fold (o): lay its fold on the fold of the cloth, cut through both layers",
    Laying.LOWER: "lower layer (l): keep the piece of the layer whose right side is up; the other is spare",
}
"""What the words on the pieces mean, and their first letters behind the number of a small one."""


def write_plan_pdf(plan: ClothPlan, target: BinaryIO, *, unit: Unit) -> PrintReport:
    """Write a page for each cloth.

    Args:
        plan: What is drawn.
        target: Open binary file; the same plan gives the same bytes.
        unit: Unit of every length.
    """
    typeface = Typeface()
    wearers = ", ".join(pattern.wearer for pattern in plan.patterns)
    canvas = PdfCanvas(target, typeface, title=f"{wearers}, cloth plan")
    for laid in plan.cloths:
        with canvas.page(PAPER.width, PAPER.height):
            _draw_page(canvas, plan, laid, unit)
    canvas.save()
    return PrintReport(len(plan.cloths), (), tuple(typeface.warnings()))


def _draw_page(canvas: Canvas, plan: ClothPlan, laid: LaidCloth, unit: Unit) -> None:
    left, right, top = PAPER.margin, PAPER.width - PAPER.margin, PAPER.height - PAPER.margin
    title = f"Cloth plan: {laid.material.value}"
    wearers = ", ".join(pattern.wearer for pattern in plan.patterns)
    HEAD_LINES.draw(canvas, PAPER, title, words=f"{wearers}  ·  {plan.patterns[0].style}")
    top -= HEADER + BORDER
    wide, high = right - left - RULER - BORDER, top - PAPER.margin - BORDER
    beside = _scale(laid, wide - GUTTER - WORDS, high)
    below = _scale(laid, wide, high - WORDS_BELOW)
    drawing = _Drawing(canvas, plan, laid, unit, Point(left + RULER, top), min(beside, below))
    drawing.draw()
    if beside <= below:
        words = [
            Column(canvas, left=right - WORDS, top=top + BORDER - 1, width=WORDS, bottom=PAPER.margin)
        ] * 2
    else:
        half = (right - left - GUTTER) / 2
        words = [
            Column(canvas, left=x, top=drawing.bottom - BORDER, width=half, bottom=PAPER.margin)
            for x in (left, left + half + GUTTER)
        ]
    _write_words(words[0], words[1], plan, laid, unit, drawing.scale)


def _scale(laid: LaidCloth, width: float, height: float) -> int:
    """Return how many times smaller the cloth must be drawn to fit."""
    needed = max(laid.cloth.lying / width, laid.length / height)
    return next((times for times in SCALES if times >= needed), SCALES[-1])


class _Drawing:
    """The cloth at its scale.

    Args:
        canvas: The page.
        plan: Whose pieces are laid.
        laid: What is drawn.
        unit: Unit of the ruler.
        corner: Upper left corner of the cloth on the page.
        scale: How many times smaller it is drawn.
    """

    def __init__(
        self, canvas: Canvas, plan: ClothPlan, laid: LaidCloth, unit: Unit, corner: Point, scale: int
    ) -> None:
        """Start with nothing drawn."""
        self.scale, self.bottom = scale, corner.y - laid.length / scale
        self._canvas, self._laid, self._unit = canvas, laid, unit
        self._lettered = len(plan.patterns) > 1
        self._left = corner.x
        self._frame = self._small(box(0, 0, laid.cloth.lying, laid.length))
        self._room = Room(self._frame, clearance=CLEAR, step=1.0)
        self._between = Room(self._frame, clearance=CLEAR, step=1.0)

    def draw(self) -> None:
        """Draw the cloth, its ruler, and all pieces with their labels."""
        self._draw_cloth()
        self._draw_ruler()
        shapes = [self._small(each.shape) for each in self._laid.laid]
        for each, shape in zip(self._laid.laid, shapes, strict=True):
            self._canvas.stroke(Polyline(np.asarray(shape.exterior.coords)[:-1], closed=True), Role.PLAN)
            self._room.take(shape.exterior)
            self._between.take(shape)
            self._draw_arrow(each)
        small_first = sorted(zip(self._laid.laid, shapes, strict=True), key=lambda pair: pair[1].area)
        for each, shape in small_first:
            self._write_label(each, shape)

    def _small(self, shape: Polygon) -> Polygon:
        small = scaled(shape, 1 / self.scale, 1 / self.scale, origin=(0, 0))
        return Polygon(shapely.get_coordinates(translate(small.simplify(0.02), self._left, self.bottom)))

    def _point(self, x: float, y: float) -> Point:
        return Point(self._left + x / self.scale, self.bottom + y / self.scale)

    def _draw_cloth(self) -> None:
        cloth, length = self._laid.cloth, self._laid.length
        low, high = self._point(0, 0), self._point(cloth.lying, length)
        for y in (low.y, high.y):
            self._canvas.stroke(line((low.x, y), (high.x, y)), Role.FRAME)
        middle, inset = (low.y + high.y) / 2, SELVEDGE / self.scale
        words = ("fold", "selvedges") if cloth.folded else ("selvedge", "selvedge")
        for x, said, inwards in ((low.x, words[0], 1), (high.x, words[1], -1)):
            fold = cloth.folded and inwards > 0
            self._canvas.stroke(line((x, low.y), (x, high.y)), Role.FOLD if fold else Role.FRAME)
            if not fold:
                border = line((x + inwards * inset, low.y), (x + inwards * inset, high.y))
                self._canvas.stroke(border, Role.JOIN)
            at = Point(x - 1.4 if inwards > 0 else x + 1.4 + 0.8 * BODY, middle)
            self._canvas.text(said, at, BODY, angle=90, align=Align.CENTRE)

    def _draw_ruler(self) -> None:
        """Draw ticks along the lower left: every 10 cm, named every 50, or every 6 in, named every 24."""
        step, named = (6 * self._unit.mm, 4) if self._unit is Unit.INCH else (100.0, 5)
        shown = Unit.INCH if self._unit is Unit.INCH else Unit.CM
        for tick in range(int(self._laid.length / step) + 1):
            at = self._point(0, tick * step) + Vector(-RULER + 5, 0)
            long = tick % named == 0
            self._canvas.stroke(line(at, at + Vector(1.6 if long else 0.8, 0)), Role.RULER)
            if long:
                words = f"{tick * step / shown.mm:g}"
                self._canvas.text(words, at + Vector(-0.6, -0.36 * LABELS[-1]), LABELS[-1], align=Align.RIGHT)

    def _draw_arrow(self, laid: Laid) -> None:
        """Draw the grain with a head towards the waist."""
        points = [self._point(x, y) for x, y in (laid.grain.coords[0], laid.grain.coords[-1])]
        foot = points[0].towards(points[1], (1 - ARROW) / 2)
        tip = points[0].towards(points[1], (1 + ARROW) / 2)
        if (tip - foot).length < HEAD:
            foot, tip = points
        way = (tip - foot) * (1 / (tip - foot).length)
        head = [tip + way.turned(turn) * -HEAD for turn in (0.35, -0.35)]
        self._canvas.stroke(line(foot, tip), Role.FRAME)
        self._canvas.stroke(line(head[0], tip, head[1]), Role.FRAME)
        self._room.take(LineString([tuple(foot), tuple(tip)]))
        self._room.take(LineString([tuple(head[0]), tuple(tip), tuple(head[1])]))

    def _write_label(self, laid: Laid, shape: Polygon) -> None:
        """Write number, name and how it lies into the piece, or the number alone, beside it if need be."""
        number = f"{_letter(laid.piece.wearer) if self._lettered else ''}{laid.piece.number}"
        name, lies = laid.piece.name_in_its_cloth, laid.piece.lie.words
        how = [lies] if lies else []
        inside, wish = self._room.within(shape), Point(*shape.centroid.coords[0])
        tries = [(inside, [f"{number} {name}", *how], size) for size in LABELS]
        tries += [(inside, [number, *how], LABELS[-1])]
        short = f"{number}{lies[:1]}"
        tries += [(room, [short], size) for room in (inside, self._between) for size in NUMBERS]
        for room, words, size in tries:
            for turned in (False, True):
                for width in (40.0, 22.0, 14.0):
                    lines = [Line(text, size, bold=index == 0) for index, text in enumerate(words)]
                    block = TextBlock.set(self._canvas, lines, width)
                    sides = (block.height, block.width) if turned else (block.width, block.height)
                    corner = room.corner_for(*sides, wish=wish)
                    if corner:
                        block.draw(self._canvas, corner, quarter_turn=turned)
                        taken = box(corner.x, corner.y - sides[1], corner.x + sides[0], corner.y)
                        self._room.take(taken)
                        self._between.take(taken)
                        return


def _letter(wearer: int) -> str:
    return chr(ord("A") + wearer - 1)


def _write_words(
    column: Column, last: Column, plan: ClothPlan, laid: LaidCloth, unit: Unit, scale: int
) -> None:
    """Write what to buy and how the cloth lies; in the last column what is laid, and the bar to check by."""

    def show(mm: float) -> str:
        return format_length(mm, unit)

    cloth = laid.cloth
    turns = "All hems lie to the lower end." if cloth.one_way else "Hems lie to either end."
    lies = "folded lengthwise, right sides together" if cloth.folded else "open, right side up"
    column.write(
        Line(f"Buy {length_to_buy(laid.length, unit)}", 1.5 * HEADING, bold=True),
        Line(f"of {laid.material.value} {show(cloth.width)} wide; the plan needs {show(laid.length)}.", BODY),
        Line(_washing(plan, laid), BODY),
    )
    column.y -= 2
    column.write(
        Line("How it lies", HEADING, bold=True),
        Line(f"The cloth lies {lies}. {turns} Arrows point to the waist.", BODY),
        Line(
            f"Pieces lie at least {show(GAP)} apart, {show(SELVEDGE)} off the selvedges and {show(END)} off "
            "the ends.",
            BODY,
        ),
        Line(f"{laid.share_used:.0%} of the cloth becomes pieces.", BODY),
        Line(
            f"No plan can be shorter than {show(laid.least_by_area)} by the area of the pieces, or than "
            f"{show(laid.least_by_longest)} by the longest.",
            BODY,
        ),
    )
    said = [LIES[lie] for lie in LIES if any(each.piece.lie is lie for each in laid.laid)]
    column.write(*(Line(words, BODY) for words in said))
    column = last
    column.y -= 2
    column.write(Line("What is laid", HEADING, bold=True), *_pieces(plan, laid))
    column.y -= 2
    column.write(
        Line(f"Scale 1 : {scale}", HEADING, bold=True),
        Line(f"This bar measures {BAR:g} mm on a true print and is {show(BAR * scale)} of cloth:", BODY),
    )
    draw_bar(column.canvas, Point(column.left + 1, column.y - 3), BAR, upright=False)


def _pieces(plan: ClothPlan, laid: LaidCloth) -> Iterator[Line]:
    """Yield the pieces of each wearer with how many outlines are laid."""
    for wearer, of_wearer in groupby((each.piece for each in laid.laid), key=lambda piece: piece.wearer):
        if len(plan.patterns) > 1:
            yield Line(f"{_letter(wearer)}: {plan.patterns[wearer - 1].wearer}", BODY, bold=True)
        names = [
            f"{number} {next(pieces).name_in_its_cloth}"
            for number, pieces in groupby(of_wearer, key=lambda piece: piece.number)
        ]
        yield Line(f"{', '.join(names)}.", BODY)


def _washing(plan: ClothPlan, laid: LaidCloth) -> str:
    cut = {(each.piece.wearer, each.piece.number) for each in laid.laid}
    larger = any(
        plan.patterns[wearer - 1].pieces[number - 1].drawn_larger != (1.0, 1.0) for wearer, number in cut
    )
    if larger:
        return (
            "This is before washing: the pieces are drawn larger for what it takes. Cut the cloth unwashed."
        )
    return "This is cloth as it is cut. If you wash it first, buy more by what it shrinks."
