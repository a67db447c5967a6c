"""The floor of several patterns: the same libraries, the same number of PDFs, pages and curves, nothing else.

Run with a folder to write into, then for each PDF its pages and the curves on each of them.
"""

import sys
from pathlib import Path

import numpy as np
from matplotlib import get_data_path
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas
from shapely.geometry import Polygon

folder, numbers = Path(sys.argv[1]), [int(text) for text in sys.argv[2:]]
assert Polygon([(0, 0), (1, 0), (1, 1)]).buffer(1).area > np.zeros(1)[0]
fonts = Path(get_data_path()) / "fonts" / "ttf"
for name in ("DejaVuSans", "DejaVuSans-Bold"):
    pdfmetrics.registerFont(TTFont(name, fonts / f"{name}.ttf"))
for index, (pages, curves) in enumerate(zip(numbers[::2], numbers[1::2], strict=True)):
    canvas = Canvas(str(folder / f"bare-{index}.pdf"), pagesize=(595.28, 841.89))
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
