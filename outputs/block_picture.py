"""A picture of the block: back and front side by side, levels, crease and darts, for screen or portfolio."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path as FilePath

from matplotlib.axes import Axes

from drafting.block import Block, Half
from drafting.paths import Path
from drafting.points import Point
from drafting.waist_line import BlockPanel
from outputs.picture import DASHES, DOTS, add_frame, picture, stroke, write, write_title

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
class _Pair:
    """The front and back of one half in their place in the picture; `left` and `right` bound them, mm.

    Attributes:
        half: The half.
        front: Brings its front to its place, and that of the toile.
        back: The same for the backs.
        toile: The half before the corrections of a fitting; None where there were none.
    """

    half: Half
    front: Move
    back: Move
    toile: Half | None = None

    def places(self) -> Iterator[Point]:
        """Yield the named points of both panels where they lie in the picture."""
        for half in (self.half, *((self.toile,) if self.toile else ())):
            yield from map(self.front, half.front.points().values())
            yield from map(self.back, half.back.points().values())

    @property
    def left(self) -> float:
        return min(p.x for p in self.places()) - _OVER

    @property
    def right(self) -> float:
        return max(p.x for p in self.places()) + _OVER


def draw_block_picture(block: Block, target: FilePath, *, wearer: str) -> None:
    """Write the block as a PNG 1500 pixels high; the same block gives the same bytes.

    It shows the right leg; of a body whose sides differ the left leg, too. After a fitting the outline of the
    toile lies under it, on the same floor and plumb lines.
    """
    pairs = _pairs(block)
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
            _draw_levels(axes, pair, label_left=pair is not pairs[-1])
            if pair.toile:
                for panel, move in ((pair.toile.front, pair.front), (pair.toile.back, pair.back)):
                    _draw_outline(axes, panel, move, width=0.7, style=DASHES)
            _draw_panel(axes, pair.half, pair.half.front, pair.front)
            _draw_panel(axes, pair.half, pair.half.back, pair.back)
        over = Point((left + right) / 2, high)
        write_title(axes, wearer, "jeans block", over, room=(right - left) * scale, above=18)
        seen = "right leg" if len(pairs) == 1 else "right and left leg"
        if block.toile:
            seen = f"thin dashes: the toile; {seen}"
        _draw_caption(axes, f"{seen} seen from outside", Point(left, low), Point(right, low), scale)


def _pairs(block: Block) -> list[_Pair]:
    """Return the right pair and, where the sides differ, the left one mirrored to the right of it."""
    toiles = block.toile.halves if block.toile else (None,) * len(block.halves)
    first, *others = (_beside(half, toile) for half, toile in zip(block.halves, toiles, strict=True))
    pairs = [first]
    for other in others:
        mirror = first.right + _GAP + other.right
        front, back = _mirrored(other.front, mirror), _mirrored(other.back, mirror)
        pairs.append(replace(other, front=front, back=back))
    return pairs


def _beside(half: Half, toile: Half | None) -> _Pair:
    """Return the front as drafted and the back, a left one, flipped, its side seam beside the front's."""
    halves = (half, toile) if toile else (half,)
    front = min(p.x for each in halves for p in each.front.points().values())
    back = min(p.x for each in halves for p in each.back.points().values())
    return _Pair(half, lambda p: p, lambda p: Point(front - _GAP + back - p.x, p.y), toile)


def _mirrored(move: Move, total: float) -> Move:
    def mirrored(p: Point) -> Point:
        moved = move(p)
        return Point(total - moved.x, moved.y)

    return mirrored


def _draw_panel(axes: Axes, half: Half, panel: BlockPanel, move: Move) -> None:
    points, levels = panel.points(), half.levels
    _draw_outline(axes, panel, move, width=1.6)
    for dart in panel.darts:
        stroke(axes, Path.through([dart.inner, dart.tip, dart.outer]).moved(move), width=1.0)
    crease = points["crease"].x
    top, foot = Point(crease, levels.hip.mm), Point(crease, levels.hem.mm)
    stroke(axes, Path.through([foot, top]).moved(move), width=0.8, style=DASHES)
    side = f"{half.side.value} " if half.side else ""
    write(axes, move(foot.towards(top, 0.3)), f"{side}{panel.name}".upper(), size=13, box=True)
    write(axes, move(foot.towards(top, 0.68)), "crease and grain", size=8, turn=90, box=True)


def _draw_outline(
    axes: Axes, panel: BlockPanel, move: Move, *, width: float, style: object = "solid"
) -> None:
    points = panel.points()
    hem = Path.through([points["hem at the side"], points["hem at the inseam"]])
    for path in (panel.side, panel.panel.inseam, panel.panel.crotch, *panel.waist, hem):
        stroke(axes, path.moved(move), width=width, style=style)


def _draw_levels(axes: Axes, pair: _Pair, *, label_left: bool) -> None:
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


def _draw_caption(axes: Axes, seen: str, left: Point, right: Point, scale: float) -> None:
    """Draw the scale bar on the left and what is seen on the right, below the hem."""
    under = -0.42 / scale
    start = Point(left.x, left.y + under)
    end = Point(start.x + _BAR, start.y)
    tick = 0.04 / scale
    for a, b in ((start, end), *((Point(p.x, p.y - tick), Point(p.x, p.y + tick)) for p in (start, end))):
        stroke(axes, Path.through([a, b]), width=1.0)
    write(axes, end, f"  {_BAR / 10:.0f} cm", size=8, across="left")
    at = Point(right.x, right.y + under)
    write(axes, at, f"{seen}, without seam allowance", size=8, across="right")
