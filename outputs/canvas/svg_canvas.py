"""A canvas that makes an SVG drawing in millimetres: pieces as named groups, curves as cubic Béziers."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from xml.etree import ElementTree

from drafting.base.tolerance import JOIN
from drafting.geometry.points import Point
from outputs.canvas.canvas import LINE_STYLES, Align, Outline, Polyline, Role, Ruler
from outputs.canvas.fair_curves import fair_curves

LAYERS = {
    Role.CUT: "cut-line",
    Role.SEW: "sew-line",
    Role.FOLD: "fold",
    Role.GRAIN: "grain",
    Role.ARROW: "grain",
    Role.NOTCH: "notches",
    Role.MARK: "marks",
    Role.DRILL: "marks",
}
"""The group of a piece that a stroke goes into; what is no part of a piece goes into OTHER."""
OTHER = "lines"
TEXT = "text"
FONTS = "'DejaVu Sans', Verdana, sans-serif"
"""The font that labels are measured in; Verdana sets nearly as wide."""
ANCHORS = {Align.LEFT: "start", Align.CENTRE: "middle", Align.RIGHT: "end"}


class SvgCanvas:
    """One drawing of `width` by `height` mm; its origin is at `origin`, from the lower left corner.

    One unit of the file is a millimetre. Its y runs downwards, so every y is turned over here; the drawing
    is the same way round as on every other canvas.
    """

    def __init__(
        self,
        ruler: Ruler,
        *,
        width: float,
        height: float,
        origin: Point,
        title: str,
        description: str,
        white: bool = False,
    ) -> None:
        """Start an empty drawing.

        Title and description say in words what is drawn. On `white`, black lines show on a dark screen too; a
        cutter gets no such sheet.
        """
        self._ruler = ruler
        self._left, self._base = origin.x, height - origin.y
        self._root = ElementTree.Element(
            "svg",
            {
                "xmlns": "http://www.w3.org/2000/svg",
                "version": "1.1",
                "width": f"{_number(width)}mm",
                "height": f"{_number(height)}mm",
                "viewBox": f"0 0 {_number(width)} {_number(height)}",
                "role": "img",
                "aria-labelledby": "title description",
            },
        )
        self._group, self._name = self._root, "drawing"
        self._layers: dict[str, ElementTree.Element] = {}
        _describe(self._root, title, description, names=("title", "description"))
        if white:
            ElementTree.SubElement(self._root, "rect", {"width": "100%", "height": "100%", "fill": "white"})

    @contextmanager
    def group(self, name: str, *, title: str, description: str) -> Iterator[None]:
        """Draw into a group of its own.

        Args:
            name: Its id, of letters, digits and hyphens and unique; the groups within begin with it.
            title: What it is.
            description: What is to know of it.
        """
        outer = self._group, self._name, self._layers
        self._group = ElementTree.SubElement(self._root, "g", {"id": name})
        self._name, self._layers = name, {}
        _describe(self._group, title, description)
        yield
        self._group, self._name, self._layers = outer

    def svg(self) -> bytes:
        """Return the file; the same drawing gives the same bytes."""
        ElementTree.indent(self._root)
        written: bytes = ElementTree.tostring(self._root, encoding="utf-8", xml_declaration=True)
        return written + b"\n"

    def stroke(self, outline: Outline, role: Role) -> None:
        """Draw the outline in the style of its role; a cut line in few smooth curves, not in fine points."""
        pen = _PathPen(self._at)
        smooth = role is Role.CUT and isinstance(outline, Polyline)
        (fair_curves(outline.flatten()) if smooth else outline).draw(pen)
        style = LINE_STYLES[role]
        attributes = {"d": " ".join(pen.steps), "stroke-width": _number(style.width)}
        if style.dash:
            attributes["stroke-dasharray"] = " ".join(map(_number, style.dash))
        ElementTree.SubElement(self._layer(LAYERS.get(role, OTHER)), "path", attributes)

    def text_width(self, string: str, size: float, *, bold: bool = False) -> float:
        """Return the width that the ruler gives."""
        return self._ruler.text_width(string, size, bold=bold)

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
        """Write one line of text, as typed."""
        x, y = map(_number, self._at(at))
        attributes = {"x": x, "y": y, "font-size": _number(size)}
        if angle:
            attributes["transform"] = f"rotate({_number(-angle)} {x} {y})"
        if bold:
            attributes["font-weight"] = "bold"
        if align is not Align.LEFT:
            attributes["text-anchor"] = ANCHORS[align]
        ElementTree.SubElement(self._layer(TEXT), "text", attributes).text = _allowed(string)

    def _at(self, place: Point) -> Point:
        return Point(self._left + place.x, self._base - place.y)

    def _layer(self, layer: str) -> ElementTree.Element:
        if layer not in self._layers:
            look = (
                {"font-family": FONTS, "fill": "black"}
                if layer == TEXT
                else {
                    "fill": "none",
                    "stroke": "black",
                    "stroke-linecap": "round",
                    "stroke-linejoin": "round",
                }
            )
            attributes = {"id": f"{self._name}-{layer}", **look}
            self._layers[layer] = ElementTree.SubElement(self._group, "g", attributes)
        return self._layers[layer]


class _PathPen:
    """Collects the steps of a path, closing it where it comes back to its start."""

    def __init__(self, at: Callable[[Point], Point]) -> None:
        self._at = at
        self._start = Point(0, 0)
        self.steps: list[str] = []

    def move_to(self, to: Point) -> None:
        self._start = to
        self._step("M", to)

    def line_to(self, to: Point) -> None:
        if self._is_start(to):
            self.steps.append("Z")
        else:
            self._step("L", to)

    def curve_to(self, c1: Point, c2: Point, to: Point) -> None:
        self._step("C", c1, c2, to)
        if self._is_start(to):
            self.steps.append("Z")

    def _is_start(self, place: Point) -> bool:
        return (place - self._start).length < JOIN

    def _step(self, letter: str, *places: Point) -> None:
        self.steps.append(letter + " ".join(_number(value) for place in places for value in self._at(place)))


def _describe(
    group: ElementTree.Element, title: str, description: str, names: tuple[str, str] | None = None
) -> None:
    for tag, text, name in zip(("title", "desc"), (title, description), names or ("", ""), strict=True):
        ElementTree.SubElement(group, tag, {"id": name} if name else {}).text = _allowed(text)


def _number(value: float) -> str:
    """Return a length to a thousandth of a millimetre, no digit more than needed."""
    written = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if written == "-0" else written


def _allowed(text: str) -> str:
    """Return the text without the characters that no XML file may hold."""
    return "".join(
        " " if unicodedata.category(ch) == "Cc" else "\N{REPLACEMENT CHARACTER}" if _is_banned(ch) else ch
        for ch in text
    )


def _is_banned(letter: str) -> bool:
    return unicodedata.category(letter) == "Cs" or letter in "\ufffe\uffff"
