"""A canvas on a page of a PDF file. The one place where millimetres become points."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import BinaryIO

from reportlab.pdfgen.pathobject import PDFPathObject

from drafting.geometry.points import Point
from outputs.canvas.canvas import LINE_STYLES, Align, Outline, Role
from outputs.canvas.layered_document import LayeredDocument
from outputs.canvas.layers import Layer
from outputs.canvas.typeface import BOLD, REGULAR, Typeface
from outputs.paper.printer_scale import PrinterScale

POINTS_PER_MM = 72 / 25.4
"""A PDF point is 1/72 inch."""
LONGEST_PAGE = 14_400 / POINTS_PER_MM
"""Longest side of a page that every reader shows, in mm: 14,400 points = 5080 mm (ISO 32000, annex C)."""


class PdfCanvas:
    """Pages in millimetres.

    Nothing in the file depends on the clock or the machine: the same drawing gives the same bytes.
    """

    def __init__(
        self, target: BinaryIO, typeface: Typeface, *, title: str, scale: PrinterScale | None = None
    ) -> None:
        """Start a document that asks to be printed at its true size (readers may ignore that).

        Millimetres are those of the print: for a printer whose `scale` is not true, the file has them larger
        or smaller.
        """
        self._typeface = typeface
        self._scale = scale or PrinterScale()
        self._document = LayeredDocument(
            target,
            layers=[layer.value for layer in Layer],
            initialFontName=REGULAR,
            invariant=1,
            pageCompression=1,
        )
        self._document.setTitle(title)
        self._document.setAuthor("jeansblock")
        self._document.setCreator("jeansblock")
        self._document.setProducer("jeansblock")
        self._document.setViewerPreference("PrintScaling", "None")

    @contextmanager
    def page(self, width: float, height: float, *, landscape: bool = False) -> Iterator[None]:
        """Draw one page of `width` by `height` mm; the origin is its lower left corner.

        A printer turns a page in `landscape` by a quarter: what it does across goes up the page.
        """
        across, up = POINTS_PER_MM / self._scale.across, POINTS_PER_MM / self._scale.up
        if landscape:
            across, up = up, across
        self._document.setPageSize((width * across, height * up))
        self._document.scale(across, up)
        self._document.setLineJoin(1)
        yield
        self._document.showPage()

    @contextmanager
    def moved(self, x: float, y: float) -> Iterator[None]:
        """Draw with the origin moved by `x` and `y` mm."""
        self._document.saveState()
        self._document.translate(x, y)
        yield
        self._document.restoreState()

    @contextmanager
    def layer(self, layer: Layer) -> Iterator[None]:
        """Put what is drawn on the page meanwhile on a layer of its own."""
        with self._document.layer(layer.value):
            yield

    @contextmanager
    def picture(self, name: str, *, left: float, bottom: float, right: float, top: float) -> Iterator[None]:
        """Keep what is drawn as a picture for `show`, with its own origin; the four are its bounds in mm."""
        self._document.beginForm(name, left, bottom, right, top)
        self._document.setLineJoin(1)
        yield
        self._document.endForm()

    def show(self, name: str, *, at: Point, left: float, bottom: float, right: float, top: float) -> None:
        """Show a picture with its origin at `at`; only what falls between the four sides (mm) appears."""
        self._document.saveState()
        window = self._document.beginPath()
        window.rect(left, bottom, right - left, top - bottom)
        self._document.clipPath(window, stroke=0, fill=0)
        self._document.translate(at.x, at.y)
        self._document.doForm(name)
        self._document.restoreState()

    def save(self) -> None:
        """Write the document."""
        self._document.save()

    def stroke(self, outline: Outline, role: Role) -> None:
        """Draw the outline in the style of its role."""
        style = LINE_STYLES[role]
        self._document.setLineWidth(style.width)
        self._document.setDash(list(style.dash))
        self._document.setLineCap(0 if style.square else 1)
        path = self._document.beginPath()
        outline.draw(_PathPen(path))
        self._document.drawPath(path, stroke=1, fill=0)

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
        back = align.value * self.text_width(string, size, bold=bold) if align is not Align.LEFT else 0.0
        self._document.saveState()
        self._document.translate(at.x, at.y)
        self._document.rotate(angle)
        self._document.setFont(BOLD if bold else REGULAR, size)
        self._document.drawString(-back, 0, self._typeface.printable(string))
        self._document.restoreState()


class _PathPen:
    """Draws an outline into a PDF path, closing it where it comes back to its start."""

    def __init__(self, path: PDFPathObject) -> None:
        self._path = path
        self._start = Point(0, 0)

    def move_to(self, to: Point) -> None:
        self._start = to
        self._path.moveTo(to.x, to.y)

    def line_to(self, to: Point) -> None:
        if to == self._start:
            self._path.close()
        else:
            self._path.lineTo(to.x, to.y)

    def curve_to(self, c1: Point, c2: Point, to: Point) -> None:
        self._path.curveTo(c1.x, c1.y, c2.x, c2.y, to.x, to.y)
        if to == self._start:
            self._path.close()
