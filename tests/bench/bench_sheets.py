"""What the PDF costs beside bare reportlab: python tests/bench/bench_sheets.py [rounds].

Writes all pieces of the first demo wearer, laid out beforehand, on A4; beside it bare reportlab writes the
same strokes and the same texts on as many pages: once the plain way, everything again on every page under a
clip, and once in a form that every page shows. Then the memory that writing takes at its peak, for the pieces
once and four times.
"""

from __future__ import annotations

import io
import sys
import tracemalloc
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from reportlab.pdfgen.canvas import Canvas

from drafting.geometry.points import Point
from drafting.pieces.pattern import Pattern
from outputs.canvas.canvas import Recording
from outputs.canvas.pdf_canvas import POINTS_PER_MM
from outputs.canvas.typeface import BOLD, REGULAR, Typeface
from outputs.demo import DEMO_FILES
from outputs.paper.paper import A4
from outputs.print.pdf import write_sheets
from outputs.print.piece_drawing import draw_layout
from outputs.reading.measurements_file import read_measurements
from outputs.sheets.tile_sheet import shift
from outputs.sheets.tiling import Tiling, tiled
from styles.choice.style import STRAIGHT
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth
from styles.making.jeans import make_jeans
from tests.bench.stopwatch import side_by_side, table


class Pen:
    """Draws an outline into a reportlab path and no more."""

    def __init__(self, path: object) -> None:
        self.path = path

    def move_to(self, to: Point) -> None:
        self.path.moveTo(to.x, to.y)

    def line_to(self, to: Point) -> None:
        self.path.lineTo(to.x, to.y)

    def curve_to(self, c1: Point, c2: Point, to: Point) -> None:
        self.path.curveTo(c1.x, c1.y, c2.x, c2.y, to.x, to.y)


def demo_pattern() -> Pattern:
    read = read_measurements(DEMO_FILES[0])
    block = block_for(read.measurements, STRAIGHT, Cloth())
    return make_jeans(block, STRAIGHT, wearer=read.wearer, date=read.taken_on, cloth=Cloth()).pattern


def bare(drawing: Recording, tiling: Tiling, *, form: bool) -> bytes:
    """Return a file of the same pages, with nothing but the strokes and texts of the pieces."""
    target = io.BytesIO()
    canvas = Canvas(target, initialFontName=REGULAR, invariant=1, pageCompression=1)

    def draw() -> None:
        for stroke in drawing.strokes:
            path = canvas.beginPath()
            stroke.outline.draw(Pen(path))
            canvas.drawPath(path)
        for text in drawing.texts:
            canvas.setFont(BOLD if text.bold else REGULAR, text.size)
            canvas.drawString(text.at.x, text.at.y, text.string)

    if form:
        canvas.beginForm("all", 0, 0, tiling.layout.width, tiling.layout.height)
        draw()
        canvas.endForm()
    paper = tiling.format.paper
    for tile in tiling.tiles:
        canvas.setPageSize((paper.width * POINTS_PER_MM, paper.height * POINTS_PER_MM))
        canvas.scale(POINTS_PER_MM, POINTS_PER_MM)
        window = canvas.beginPath()
        window.rect(10, 10, paper.width - 20, paper.height - 20)
        canvas.clipPath(window, stroke=0)
        canvas.translate(*shift(tiling, tile))
        if form:
            canvas.doForm("all")
        else:
            draw()
        canvas.showPage()
    canvas.save()
    return target.getvalue()


def ours(pattern: Pattern, tiling: Tiling) -> bytes:
    target = io.BytesIO()
    write_sheets(pattern, tiling, target)
    return target.getvalue()


def peak(pattern: Pattern) -> tuple[int, int, float]:
    """Return the sheets, the bytes of the file and the memory at its peak while it is written, MB."""
    tiling = tiled(pattern, A4)
    tracemalloc.start()
    size = len(ours(pattern, tiling))
    _, most = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    return len(tiling.tiles), size, most / 1e6


def main() -> None:
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    pattern = demo_pattern()
    tiling = tiled(pattern, A4)
    drawing = Recording(Typeface())
    draw_layout(drawing, tiling.layout, pattern, joins=tiling.joins())
    taken = side_by_side(
        lambda: ours(pattern, tiling),
        lambda: draw_layout(Recording(Typeface()), tiling.layout, pattern, joins=tiling.joins()),
        lambda: bare(drawing, tiling, form=True),
        lambda: bare(drawing, tiling, form=False),
        rounds=rounds,
    )
    print(f"{len(tiling.tiles)} sheets, {len(drawing.strokes)} strokes, {len(drawing.texts)} texts")
    names = [
        "sheets with layers, joins, bars and names",
        "of that, drawing the pieces and placing words",
        "bare reportlab, one form",
        "bare reportlab, all of it on every page",
    ]
    print(table(names, taken))
    sizes = (
        len(ours(pattern, tiling)),
        len(bare(drawing, tiling, form=True)),
        len(bare(drawing, tiling, form=False)),
    )
    print("kB: " + ", ".join(f"{size / 1000:.0f}" for size in sizes))
    for times in (1, 2, 4):
        pieces = [replace(p, kind=f"{p.kind} {i}") for i in range(times) for p in pattern.pieces]
        sheets, size, most = peak(replace(pattern, pieces=tuple(pieces)))
        print(f"{times} times the pieces: {sheets} sheets, {size / 1000:.0f} kB, {most:.1f} MB at the peak")


if __name__ == "__main__":
    main()
