"""What every picture is drawn with: a white sheet, strokes, hatching and words; the same bytes each time."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from io import BytesIO
from typing import BinaryIO

import matplotlib
from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.patches import PathPatch, Polygon
from matplotlib.path import Path as PlotPath
from matplotlib.transforms import ScaledTranslation
from PIL import Image
from PIL.PngImagePlugin import PngInfo

from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from outputs.canvas.typeface import Typeface

_DPI = 150
_TITLE_SIZE = 13.0
"""Points."""
DASHES = (0, (8, 3, 1, 3))
DOTS = (0, (1, 3))


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


@contextmanager
def picture(target: BinaryIO, *, width: float, height: float, description: str = "") -> Iterator[Figure]:
    """Give a white sheet of so many inches to draw on, then write it as a PNG.

    Args:
        target: Open binary file.
        width: In inches of 150 pixels.
        height: Likewise.
        description: What is seen, in words, kept in the file for those who cannot see it.
    """
    # A reader's own plotting defaults would change the picture.
    with matplotlib.rc_context():
        matplotlib.rcdefaults()
        matplotlib.rcParams["hatch.linewidth"] = 0.6
        figure = Figure(figsize=(width, height), dpi=_DPI)
        canvas, pixels = FigureCanvasAgg(figure), BytesIO()
        yield figure
        figure.savefig(pixels, format="raw")
    words = PngInfo()
    if description:
        words.add_text("Description", description)
    # All is black, white and grey: one value a pixel is written four times as fast as red, green, blue and
    # transparency, and prints the same.
    image = Image.frombytes("RGBA", canvas.get_width_height(), pixels.getvalue()).convert("L")
    image.save(target, "PNG", dpi=(_DPI, _DPI), pnginfo=words)


def add_frame(figure: Figure, *, x: tuple[float, float], y: tuple[float, float]) -> Axes:
    """Return axes over the whole sheet, with no lines of their own; `x` and `y` lie at its edges."""
    axes = figure.add_axes((0, 0, 1, 1))
    axes.set_axis_off()
    axes.set_xlim(*x)
    axes.set_ylim(*y)
    return axes


def write_title(axes: Axes, wearer: str, subject: str, at: Point, *, room: float, above: float = 0) -> None:
    """Write whose it is and what over `at`, smaller where the name is too long for `room` inches."""
    typeface = Typeface()
    title = " – ".join(part for part in (typeface.printable(wearer), subject) if part)
    size = min(_TITLE_SIZE, room * 72 / typeface.text_width(title, 1))
    write(axes, at, title, size=size, above=above)


def write(
    axes: Axes,
    at: Point,
    text: str,
    *,
    size: float,
    across: str = "center",
    above: float = 0,
    turn: float = 0,
    box: bool = False,
    bold: bool = False,
) -> None:
    """Write `text` at a place, `above` points over it; `box` clears the ground behind it."""
    ground = {"facecolor": "white", "edgecolor": "none", "pad": 3} if box else None
    lifted = axes.transData + ScaledTranslation(0, above / 72, axes.figure.dpi_scale_trans)
    axes.text(
        at.x, at.y, text, transform=lifted, ha=across, va="center", fontsize=size, rotation=turn,
        bbox=ground, parse_math=False, fontweight="bold" if bold else "normal",
    )  # fmt: skip


def stroke(axes: Axes, path: Path, *, width: float, style: object = "solid") -> None:
    """Draw a path `width` points wide."""
    pen = PlotPen()
    path.draw(pen)
    patch = PathPatch(
        PlotPath(pen.vertices, pen.codes), fill=False, linewidth=width, linestyle=style, capstyle="round"
    )
    axes.add_patch(patch)


def lines(axes: Axes, *through: Point, width: float, style: object = "solid") -> None:
    """Draw straight from point to point, `width` points wide."""
    stroke(axes, Path.through(through), width=width, style=style)


def spot(axes: Axes, at: Point, shape: str, *, filled: bool) -> None:
    """Draw a small mark, "o" or "D", over all lines; white inside unless `filled`."""
    inside = "black" if filled else "white"
    axes.plot([at.x], [at.y], shape, markersize=5, markerfacecolor=inside, markeredgecolor="black", zorder=3)


def hatch(axes: Axes, outline: Sequence[Point], pattern: str, *, grey: float = 0.0) -> None:
    """Hatch the inside of an outline; `grey` is the lines' shade from black (0) to white (1)."""
    corners = [(point.x, point.y) for point in outline]
    axes.add_patch(Polygon(corners, fill=False, hatch=pattern, edgecolor=str(grey), linewidth=0))
