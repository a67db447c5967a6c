"""Legs of several styles laid over each other by crease and floor: back on the left, front on the right.

The side seams face each other. Between them stand the styles' names, each with a thin line to its hem on
either side, so that a leg is known by its pattern of line and by its name.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from drafting.geometry.points import Point
from outputs.canvas.canvas import Align, Canvas, Role, Ruler, line
from outputs.canvas.lettering import shortened
from outputs.compare.leg_lines import LegLines, PanelOutline

SCALES = (5, 6, 7, 8, 9, 10, 12, 15, 20)
"""How many times larger the jeans are than the drawing: those tried until one fits."""
SIZE, SMALL = 2.8, 2.2
"""Of names and of levels, mm."""
ROW = 3.7
"""From one name to the next, mm."""
NEAR = 60.0
"""Hems that lie no further apart, mm of the jeans, have their names under the lowest of them."""
LEAST_GAP, MOST_GAP = 20.0, 36.0
"""Between the side seams, mm: room for the names."""
CLEAR = 1.5
"""Between a name and its line, mm."""
OVER = 3.0
"""How far levels reach beyond the forks, mm."""
HEAD = 6.0
"""Room for "BACK" and "FRONT" above, mm."""


@dataclass(frozen=True)
class LegsDrawing:
    """The drawing at one scale; lengths in mm on the page.

    Attributes:
        legs: What is drawn.
        scale: How many times larger the jeans are.
        gap: Between the side seams of back and front.
    """

    legs: Sequence[LegLines]
    scale: float
    gap: float

    @staticmethod
    def fitting(ruler: Ruler, legs: Sequence[LegLines], width: float, height: float) -> LegsDrawing:
        """Return the largest drawing that fits; the smallest there is where none does."""
        names = max(ruler.text_width(leg.style, SIZE) for leg in legs) + 2 * CLEAR + 4
        gap = min(max(names, LEAST_GAP), MOST_GAP)
        drawings = [LegsDrawing(legs, scale, gap) for scale in SCALES]
        fit = (each for each in drawings if each.width <= width and each.height <= height)
        return next(fit, drawings[-1])

    @property
    def width(self) -> float:
        """Its whole width, the names of the levels on the left included."""
        return (sum(self._reach("back")) + sum(self._reach("front"))) / self.scale + self.gap + 2 * OVER

    @property
    def height(self) -> float:
        """Its whole height, the names under the hems included."""
        return self._above + self._below

    @property
    def _above(self) -> float:
        """From the floor up."""
        return max(panel.top for leg in self.legs for panel in (leg.front, leg.back)) / self.scale + HEAD

    @property
    def _below(self) -> float:
        """From the floor down."""
        return max(0.0, SIZE - min(row for _, row in self._rows()))

    def _reach(self, panel: str) -> tuple[float, float]:
        reaches = [getattr(leg, panel).reach for leg in self.legs]
        return max(side for side, _ in reaches), max(fork for _, fork in reaches)

    def draw(self, canvas: Canvas, corner: Point) -> None:
        """Draw with the upper left corner of the whole at `corner`."""
        floor = corner.y - self._above
        side, fork = self._reach("back")
        left, back = corner.x, corner.x + OVER + fork / self.scale
        middle = back + side / self.scale + self.gap / 2
        front = middle + self.gap / 2 + self._reach("front")[0] / self.scale
        right = corner.x + self.width
        ends = (left, middle - self.gap / 2), (middle + self.gap / 2, right)
        self._draw_levels(canvas, floor, ends, (back, front))
        for name, x in (("BACK", back), ("FRONT", front)):
            canvas.text(name, Point(x, corner.y - SIZE), SIZE, bold=True, align=Align.CENTRE)
        for leg in self.legs:
            for panel, x, sign in ((leg.back, back, -1), (leg.front, front, 1)):
                canvas.stroke(panel.outline.moved(self._place(x, floor, sign)), leg.role)
        self._write_names(canvas, floor, middle, (back, front))

    def _place(self, x: float, floor: float, sign: int) -> Callable[[Point], Point]:
        return lambda p: Point(x + sign * p.x / self.scale, floor + p.y / self.scale)

    def _draw_levels(
        self,
        canvas: Canvas,
        floor: float,
        ends: tuple[tuple[float, float], tuple[float, float]],
        creases: tuple[float, float],
    ) -> None:
        levels = self.legs[0].levels
        for name, height in (
            ("hip", levels.hip.mm),
            ("crotch", levels.crotch.mm),
            ("knee", levels.knee.mm),
            ("floor", 0.0),
        ):
            y = floor + height / self.scale
            for start, end in ends:
                canvas.stroke(line((start, y), (end, y)), Role.LEVEL)
            canvas.text(name, Point(sum(ends[0][1:] + ends[1][:1]) / 2, y - 0.35 * SMALL), SMALL,
                        align=Align.CENTRE)  # fmt: skip
        for x in creases:
            canvas.stroke(line((x, floor), (x, floor + levels.hip.mm / self.scale)), Role.LEVEL)

    def _rows(self) -> Iterator[tuple[LegLines, float]]:
        """Yield every leg with the height of its name over the floor, from top to bottom.

        Of hems that lie near each other the widest comes first, so that no line to a name crosses another.
        """
        ceiling = float("inf")
        for group in _near(self.legs):
            start = min(leg.front.hem.y for leg in group) / self.scale
            if len(group) > 1 or start < ROW:
                start -= ROW
            for leg in sorted(group, key=lambda leg: leg.front.hem.x):
                ceiling = min(start, ceiling - ROW)
                start = ceiling - ROW
                yield leg, ceiling

    def _write_names(self, canvas: Canvas, floor: float, middle: float, creases: tuple[float, float]) -> None:
        for leg, row in self._rows():
            y = floor + row
            name = shortened(canvas, leg.style, self.gap - 2 * CLEAR, SIZE)
            half = canvas.text_width(name, SIZE) / 2 + CLEAR
            canvas.text(name, Point(middle, y - 0.35 * SIZE), SIZE, align=Align.CENTRE)
            sides: tuple[tuple[PanelOutline, float, int], ...] = (
                (leg.back, creases[0], -1),
                (leg.front, creases[1], 1),
            )
            for panel, x, sign in sides:
                corner = self._place(x, floor, sign)(panel.hem)
                canvas.stroke(line(corner, (corner.x, y), (middle + sign * half, y)), Role.RULER)


def _near(legs: Sequence[LegLines]) -> list[list[LegLines]]:
    """Return the legs in groups whose hems lie near each other, the highest first."""
    groups: list[list[LegLines]] = []
    for leg in sorted(legs, key=lambda leg: -leg.front.hem.y):
        if groups and groups[-1][-1].front.hem.y - leg.front.hem.y <= NEAR:
            groups[-1].append(leg)
        else:
            groups.append([leg])
    return groups
