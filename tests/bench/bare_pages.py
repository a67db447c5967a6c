"""The floor of the draft command: the same libraries, the same number of pages, curves and figures, and
nothing else.

Run with the number of pages, of curves on each page and of curves in each of the two pictures, and a folder
to write into.
"""

import sys
from pathlib import Path

import click
import matplotlib
import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.patches import PathPatch
from matplotlib.path import Path as PlotPath
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas
from shapely.geometry import Polygon

pages, curves, drawn = (int(text) for text in sys.argv[1:4])
folder = Path(sys.argv[4])
assert Polygon([(0, 0), (1, 0), (1, 1)]).buffer(1).area > np.zeros(1)[0]

fonts = Path(matplotlib.get_data_path()) / "fonts" / "ttf"
for name in ("DejaVuSans", "DejaVuSans-Bold"):
    pdfmetrics.registerFont(TTFont(name, fonts / f"{name}.ttf"))
canvas = Canvas(str(folder / "bare.pdf"), pagesize=(595.28, 841.89))
for number in range(pages):
    canvas.setFont("DejaVuSans", 12)
    canvas.drawString(50, 50, f"page {number}")
    path = canvas.beginPath()
    path.moveTo(50, 50)
    for _ in range(curves):
        path.curveTo(100, 200, 300, 400, 500, 50)
    canvas.drawPath(path)
    canvas.showPage()
canvas.save()

for name in ("block", "ease"):
    figure = Figure(figsize=(10, 10))
    FigureCanvasAgg(figure)
    axes = figure.add_axes((0, 0, 1, 1))
    axes.set_xlim(0, 1)
    for _ in range(drawn):
        axes.add_patch(PathPatch(PlotPath([(0, 0), (0, 1), (1, 1), (1, 0)], [1, 4, 4, 4]), fill=False))
    axes.text(0.5, 0.5, name)
    figure.savefig(folder / f"{name}.png", dpi=150)
click.echo("done")
