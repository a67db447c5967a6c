"""A picture of the block: back and front side by side, levels, crease and darts, for screen or portfolio."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path as FilePath

import matplotlib
from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.patches import PathPatch
from matplotlib.path import Path as PlotPath

from drafting.block import Block, Half
from drafting.paths import Path
from drafting.points import Point
from drafting.waist_line import BlockPanel
from outputs.pdf_fonts import Typeface

_GAP = 60.0
"""Between the side seams of back and front, mm."""
_OVER = 30.0
"""The level lines reach this far beyond the forks, mm."""
_HEIGHT = 10.0
"""Of the picture, inches; its width follows from the block."""
_DPI = 150
_TITLE, _CAPTION, _LABELS, _LEFT = 0.55, 0.75, 1.05, 0.25
"""Room for text above, below, right and left of the block, inches."""
_TITLE_SIZE = 13.0
"""Points."""
_BAR = 100.0
"""Length of the scale bar, mm."""
_CREASE_DASHES = (0, (8, 3, 1, 3))
_DOTS = (0, (1, 3))

Move = Callable[[Point], Point]


class PlotPen:
    """Collects a path for matplotlib."""

    def __init__(self) -> None:
        """Start with nothing drawn."""
        self.vertices: list[tuple[float, float]] = []
        self.codes: list[int] = []

    def move_to(self, to: Point) -> None:
        """Start a new stroke at `to`."""
        self._add(int(PlotPath.MOVETO), to)

    def line_to(self, to: Point) -> None:
        """Draw straight to `to`."""
        self._add(int(PlotPath.LINETO), to)

    def curve_to(self, c1: Point, c2: Point, to: Point) -> None:
        """Draw a cubic Bézier to `to`."""
        self._add(int(PlotPath.CURVE4), c1, c2, to)

    def _add(self, code: int, *points: Point) -> None:
        self.vertices += [(point.x, point.y) for point in points]
        self.codes += [code] * len(points)


@dataclass(frozen=True)
class _Pair:
    """The front and back of one half in their place in the picture; `left` and `right` bound them, mm."""

    half: Half
    front: Move
    back: Move

    def places(self) -> Iterator[Point]:
        """Yield the named points of both panels where they lie in the picture."""
        yield from map(self.front, self.half.front.points().values())
        yield from map(self.back, self.half.back.points().values())

    @property
    def left(self) -> float:
        return min(p.x for p in self.places()) - _OVER

    @property
    def right(self) -> float:
        return max(p.x for p in self.places()) + _OVER


def draw_block_picture(block: Block, target: FilePath, *, wearer: str) -> None:
    """Write the block as a PNG 1500 pixels high; the same block gives the same bytes.

    It shows the right leg; of a body whose sides differ the left leg, too.
    """
    pairs = _pairs(block)
    left, right = pairs[0].left, pairs[-1].right
    heights = [p.y for pair in pairs for p in pair.places()]
    low, high = min(heights), max(heights)
    scale = (_HEIGHT - _TITLE - _CAPTION) / (high - low)
    before = _LABELS if len(pairs) > 1 else _LEFT
    # A reader's own plotting defaults would change the picture.
    with matplotlib.rc_context():
        matplotlib.rcdefaults()
        figure = Figure(figsize=(before + (right - left) * scale + _LABELS, _HEIGHT), dpi=_DPI)
        FigureCanvasAgg(figure)
        axes = figure.add_axes((0, 0, 1, 1))
        axes.set_axis_off()
        axes.set_xlim(left - before / scale, right + _LABELS / scale)
        axes.set_ylim(low - _CAPTION / scale, high + _TITLE / scale)
        for pair in pairs:
            _draw_levels(axes, pair, label_left=pair is not pairs[-1])
            _draw_panel(axes, pair.half, pair.half.front, pair.front)
            _draw_panel(axes, pair.half, pair.half.back, pair.back)
        _draw_title(axes, wearer, Point((left + right) / 2, high), room=(right - left) * scale)
        seen = "right leg" if len(pairs) == 1 else "right and left leg"
        _draw_caption(axes, f"{seen} seen from outside", Point(left, low), Point(right, low), scale)
        figure.savefig(target, format="png", metadata={"Software": None})


def _pairs(block: Block) -> list[_Pair]:
    """Return the right pair and, where the sides differ, the left one mirrored to the right of it."""
    first = _beside(block.halves[0])
    pairs = [first]
    for half in block.halves[1:]:
        other = _beside(half)
        mirror = first.right + _GAP + other.right
        pairs.append(_Pair(half, _mirrored(other.front, mirror), _mirrored(other.back, mirror)))
    return pairs


def _beside(half: Half) -> _Pair:
    """Return the front as drafted and the back, a left one, flipped, its side seam beside the front's."""
    front = min(p.x for p in half.front.points().values())
    back = min(p.x for p in half.back.points().values())
    return _Pair(half, lambda p: p, lambda p: Point(front - _GAP + back - p.x, p.y))


def _mirrored(move: Move, total: float) -> Move:
    def mirrored(p: Point) -> Point:
        moved = move(p)
        return Point(total - moved.x, moved.y)

    return mirrored


def _draw_panel(axes: Axes, half: Half, panel: BlockPanel, move: Move) -> None:
    points, levels = panel.points(), half.levels
    hem = Path.through([points["hem at the side"], points["hem at the inseam"]])
    for path in (panel.side, panel.panel.inseam, panel.panel.crotch, *panel.waist, hem):
        _stroke(axes, path.moved(move), width=1.6)
    for dart in panel.darts:
        _stroke(axes, Path.through([dart.inner, dart.tip, dart.outer]).moved(move), width=1.0)
    crease = points["crease"].x
    top, foot = Point(crease, levels.hip.mm), Point(crease, levels.hem.mm)
    _stroke(axes, Path.through([foot, top]).moved(move), width=0.8, style=_CREASE_DASHES)
    side = f"{half.side.value} " if half.side else ""
    _text(axes, move(foot.towards(top, 0.3)), f"{side}{panel.name}".upper(), size=13, box=True)
    _text(axes, move(foot.towards(top, 0.68)), "crease and grain", size=8, turn=90, box=True)


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
        _stroke(axes, Path.through(ends), width=0.5, style=_DOTS)
        if label_left:
            _text(axes, ends[0], f"{name} level  ", size=8, across="right")
        else:
            _text(axes, ends[1], f"  {name} level", size=8, across="left")


def _draw_title(axes: Axes, wearer: str, at: Point, *, room: float) -> None:
    """Write whose block it is over `at`, smaller where the name is too long for `room` inches."""
    typeface = Typeface()
    title = " – ".join(part for part in (typeface.printable(wearer), "jeans block") if part)
    size = min(_TITLE_SIZE, room * 72 / typeface.text_width(title, 1))
    _text(axes, at, title, size=size, above=18)


def _draw_caption(axes: Axes, seen: str, left: Point, right: Point, scale: float) -> None:
    """Draw the scale bar on the left and what is seen on the right, below the hem."""
    under = -0.42 / scale
    start = Point(left.x, left.y + under)
    end = Point(start.x + _BAR, start.y)
    tick = 0.04 / scale
    for a, b in ((start, end), *((Point(p.x, p.y - tick), Point(p.x, p.y + tick)) for p in (start, end))):
        _stroke(axes, Path.through([a, b]), width=1.0)
    _text(axes, end, f"  {_BAR / 10:.0f} cm", size=8, across="left")
    at = Point(right.x, right.y + under)
    _text(axes, at, f"{seen}, without seam allowance", size=8, across="right")


def _text(
    axes: Axes,
    at: Point,
    text: str,
    *,
    size: float,
    across: str = "center",
    above: float = 0,
    turn: float = 0,
    box: bool = False,
) -> None:
    """Write `text` at a place, `above` points over it; `box` clears the ground behind it."""
    ground = {"facecolor": "white", "edgecolor": "none", "pad": 3} if box else None
    axes.annotate(
        text, (at.x, at.y), (0, above), textcoords="offset points", ha=across, va="center",
        fontsize=size, rotation=turn, bbox=ground, parse_math=False,
    )  # fmt: skip


def _stroke(axes: Axes, path: Path, *, width: float, style: object = "solid") -> None:
    pen = PlotPen()
    path.draw(pen)
    patch = PathPatch(
        PlotPath(pen.vertices, pen.codes), fill=False, linewidth=width, linestyle=style, capstyle="round"
    )
    axes.add_patch(patch)
