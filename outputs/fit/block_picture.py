"""A picture of the block: back and front side by side, levels, crease and darts, for screen or portfolio."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import BinaryIO

from matplotlib.axes import Axes

from drafting.block.block import Block, Half
from drafting.block.point_names import Drawn
from drafting.block.waist_line import BlockPanel
from drafting.body.words import of_side
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from outputs.canvas.picture import DASHES, DOTS, add_frame, picture, stroke, write, write_title
from outputs.words.print_report import PrintReport

_GAP = 60.0
"""Between the side seams of back and front, mm."""
_OVER = 30.0
"""The level lines reach this far beyond the forks, mm."""
_HEIGHT = 10.0
"""Of the picture, inches; its width follows from the block."""
_TITLE, _CAPTION, _LABELS, _LEFT = 0.55, 0.75, 1.05, 0.25
"""Room for text above, below, right and left of the block, inches."""
_BAR = 100.0
"""Length of the scale bar, mm."""

Move = Callable[[Point], Point]


@dataclass(frozen=True)
class Pair:
    """Where front and back of one half lie in the picture; of several versions of it over each other.

    Attributes:
        halves: The versions of the half, one or more.
        front: Moves a point of any front to its place, mm.
        back: Moves a point of any back.
        over: How far the level lines reach beyond the forks, mm.
    """

    halves: tuple[Half, ...]
    front: Move
    back: Move
    over: float

    @property
    def half(self) -> Half:
        """The last version."""
        return self.halves[-1]

    def places(self) -> Iterator[Point]:
        """Yield the named points of all panels where they lie in the picture."""
        for half in self.halves:
            yield from map(self.front, half.front.points().values())
            yield from map(self.back, half.back.points().values())

    @property
    def left(self) -> float:
        """The left end of its level lines, mm."""
        return min(p.x for p in self.places()) - self.over

    @property
    def right(self) -> float:
        """The right end of its level lines, mm."""
        return max(p.x for p in self.places()) + self.over


def write_block_picture(block: Block, target: BinaryIO, *, wearer: str) -> PrintReport:
    """Write the block as a PNG 1500 pixels high; the same block gives the same bytes.

    It shows the right leg; of a body whose sides differ the left leg, too. After a fitting the outline of the
    toile lies under it, on the same floor and plumb lines.
    """
    versions = [block.toile.halves, block.halves] if block.toile else [block.halves]
    pairs = place_pairs(versions, gap=_GAP, over=_OVER)
    left, right = pairs[0].left, pairs[-1].right
    heights = [p.y for pair in pairs for p in pair.places()]
    low, high = min(heights), max(heights)
    scale = (_HEIGHT - _TITLE - _CAPTION) / (high - low)
    before = _LABELS if len(pairs) > 1 else _LEFT
    width = before + (right - left) * scale + _LABELS
    with picture(target, width=width, height=_HEIGHT) as figure:
        axes = add_frame(
            figure,
            x=(left - before / scale, right + _LABELS / scale),
            y=(low - _CAPTION / scale, high + _TITLE / scale),
        )
        for pair in pairs:
            draw_levels(axes, pair, label_left=pair is not pairs[-1])
            for toile in pair.halves[:-1]:
                for panel, move in ((toile.front, pair.front), (toile.back, pair.back)):
                    draw_outline(axes, panel, move, width=0.7, style=DASHES)
            _draw_panel(axes, pair.half, pair.half.front, pair.front)
            _draw_panel(axes, pair.half, pair.half.back, pair.back)
        over = Point((left + right) / 2, high)
        write_title(axes, wearer, "jeans block", over, room=(right - left) * scale, above=18)
        seen = "right leg" if len(pairs) == 1 else "right and left leg"
        if block.toile:
            seen = f"thin dashes: the toile; {seen}"
        draw_caption(
            axes,
            f"{seen} seen from outside, without seam allowance",
            Point(left, low),
            Point(right, low),
            scale,
        )
    return PrintReport()


def place_pairs(versions: Sequence[tuple[Half, ...]], *, gap: float, over: float) -> list[Pair]:
    """Return the right pair and, where the sides differ, the left one mirrored to the right of it.

    Args:
        versions: The halves of each version, as many in each.
        gap: Between the side seams of back and front, mm.
        over: How far the level lines reach beyond the forks, mm.
    """
    first, *others = (_beside(halves, gap, over) for halves in zip(*versions, strict=True))
    pairs = [first]
    for other in others:
        mirror = first.right + gap + other.right
        pairs.append(Pair(other.halves, _mirrored(other.front, mirror), _mirrored(other.back, mirror), over))
    return pairs


def _beside(halves: tuple[Half, ...], gap: float, over: float) -> Pair:
    """Return the front as drafted and the back, a left one, flipped, its side seam beside the front's."""
    front = min(p.x for half in halves for p in half.front.points().values())
    back = min(p.x for half in halves for p in half.back.points().values())
    return Pair(halves, lambda p: p, lambda p: Point(front - gap + back - p.x, p.y), over)


def _mirrored(move: Move, total: float) -> Move:
    def mirrored(p: Point) -> Point:
        moved = move(p)
        return Point(total - moved.x, moved.y)

    return mirrored


def _draw_panel(axes: Axes, half: Half, panel: BlockPanel, move: Move) -> None:
    points, levels = panel.points(), half.levels
    draw_outline(axes, panel, move, width=1.6)
    for dart in panel.darts:
        stroke(axes, Path.through([dart.inner, dart.tip, dart.outer]).moved(move), width=1.0)
    crease = points[Drawn.CREASE].x
    top, foot = Point(crease, levels.hip.mm), Point(crease, levels.hem.mm)
    stroke(axes, Path.through([foot, top]).moved(move), width=0.8, style=DASHES)
    write(axes, move(foot.towards(top, 0.3)), of_side(panel.name, half.side).upper(), size=13, box=True)
    write(axes, move(foot.towards(top, 0.68)), "crease and grain", size=8, turn=90, box=True)


def draw_outline(axes: Axes, panel: BlockPanel, move: Move, *, width: float, style: object = "solid") -> None:
    """Draw the edges of a panel, open where its darts are."""
    points = panel.points()
    hem = Path.through([points[Drawn.HEM_AT_SIDE], points[Drawn.HEM_AT_INSEAM]])
    for path in (panel.side, panel.lower.inseam, panel.lower.crotch, *panel.waist, hem):
        stroke(axes, path.moved(move), width=width, style=style)


def draw_levels(axes: Axes, pair: Pair, *, label_left: bool) -> None:
    """Draw the level lines of a pair and name them on one side."""
    levels = pair.half.levels
    for name, height in (
        ("waist", levels.waist),
        ("hip", levels.hip),
        ("crotch", levels.crotch),
        ("knee", levels.knee),
        ("hem", levels.hem),
    ):
        ends = Point(pair.left, height.mm), Point(pair.right, height.mm)
        stroke(axes, Path.through(ends), width=0.5, style=DOTS)
        if label_left:
            write(axes, ends[0], f"{name} level  ", size=8, across="right")
        else:
            write(axes, ends[1], f"  {name} level", size=8, across="left")


def draw_caption(axes: Axes, seen: str, left: Point, right: Point, scale: float) -> None:
    """Draw the scale bar on the left and what is seen on the right, below the hem."""
    under = -0.42 / scale
    start = Point(left.x, left.y + under)
    end = Point(start.x + _BAR, start.y)
    tick = 0.04 / scale
    for a, b in ((start, end), *((Point(p.x, p.y - tick), Point(p.x, p.y + tick)) for p in (start, end))):
        stroke(axes, Path.through([a, b]), width=1.0)
    write(axes, end, f"  {_BAR / 10:.0f} cm", size=8, across="left")
    at = Point(right.x, right.y + under)
    write(axes, at, seen, size=8, across="right")
