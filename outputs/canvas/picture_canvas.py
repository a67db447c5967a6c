"""A canvas that makes a PNG: what is drawn for a page, to look at on a screen."""

from __future__ import annotations

from typing import BinaryIO

from matplotlib.figure import Figure
from matplotlib.patches import PathPatch
from matplotlib.path import Path as PlotPath

from drafting.geometry.points import Point
from outputs.canvas.canvas import LINE_STYLES, Align, Outline, Recording, Role
from outputs.canvas.picture import PlotPen, add_frame, picture
from outputs.canvas.typeface import Typeface

_POINTS_PER_MM = 72 / 25.4
_ANCHORS = {Align.LEFT: "left", Align.CENTRE: "center", Align.RIGHT: "right"}


class PictureCanvas:
    """A white sheet of `width` by `height` mm, the origin in its lower left corner."""

    def __init__(self, figure: Figure, typeface: Typeface, *, width: float, height: float) -> None:
        """Draw on a figure of that size."""
        self._typeface = typeface
        self._axes = add_frame(figure, x=(0, width), y=(0, height))

    def stroke(self, outline: Outline, role: Role) -> None:
        """Draw the outline in the style of its role."""
        pen, style = PlotPen(), LINE_STYLES[role]
        outline.draw(pen)
        # A dash is counted in widths of the line.
        dashes = (0, [length / style.width for length in style.dash]) if style.dash else "solid"
        self._axes.add_patch(
            PathPatch(
                PlotPath(pen.vertices, pen.codes), fill=False, linewidth=style.width * _POINTS_PER_MM,
                linestyle=dashes, capstyle="round", joinstyle="round",
            )
        )  # fmt: skip

    def text_width(self, string: str, size: float, *, bold: bool = False) -> float:
        """Return the width of `string` in millimetres."""
        return self._typeface.text_width(string, size, bold=bold)

    def text(
        self,
        string: str,
        at: Point,
        size: float,
        *,
        angle: float = 0.0,
        bold: bool = False,
        align: Align = Align.LEFT,
    ) -> None:
        """Write one line of text."""
        self._axes.text(
            at.x, at.y, self._typeface.printable(string), fontsize=size * _POINTS_PER_MM, rotation=angle,
            rotation_mode="anchor", ha=_ANCHORS[align], va="baseline", parse_math=False,
            fontweight="bold" if bold else "normal",
        )  # fmt: skip


def write_picture(
    page: Recording,
    target: BinaryIO,
    typeface: Typeface,
    *,
    width: float,
    height: float,
    description: str,
) -> None:
    """Write what was recorded as a PNG of `width` by `height` mm that says in words what is seen."""
    size = {"width": width / 25.4, "height": height / 25.4}
    with picture(target, **size, description=description) as figure:
        page.play(PictureCanvas(figure, typeface, width=width, height=height))
