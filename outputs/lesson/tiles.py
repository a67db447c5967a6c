"""The finished draft at half or full size, on sheets to be taped."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from shapely.geometry import LineString, Polygon

from drafting.geometry.points import Point
from drafting.lesson.hand_draft import HandDraft
from outputs.canvas.canvas import Recording, Role, Ruler
from outputs.canvas.lettering import Line
from outputs.canvas.pdf_canvas import PdfCanvas
from outputs.canvas.text_flow import Area, Flow
from outputs.lesson.drawing import RIGHT_ROOM, SIDE_ROOM, TOP_ROOM, Scene, StagePicture, Window
from outputs.lesson.sheet import scale_words
from outputs.lesson.stages import finished_draft
from outputs.packing.layout import EDGE, Layout
from outputs.paper.paper import Paper
from outputs.sheets.tile_sheet import SheetWords, clip, draw_tile_sheet, shift
from outputs.sheets.tiling import UNDER, TileFormat, Tiling

TAPING = (
    "Print at “actual size” or “100 %”, and measure the 50 mm bars of every sheet.",
    "Cut off the right and the top edge along the dotted line where ✂ stands; leave left and bottom.",
    "Tape each row from left to right: lay the cut edge on the dotted line of the next sheet.",
    "Lay the cut top edge of each row on the dotted line of the row above it.",
    "Go by the crosses on the joins, not by the paper's edge.",
)


@dataclass(frozen=True, eq=False)
class DrawnLayout(Layout):
    """An area with drawn shapes instead of pieces on it."""

    drawn: tuple[Polygon, ...] = ()

    @property
    def shapes(self) -> tuple[Polygon, ...]:
        """What a sheet must touch to be printed."""
        return self.drawn


def tiled_draft(
    ruler: Ruler, draft: HandDraft, scale: float, paper: Paper, said: Sequence[Line] = ()
) -> tuple[Tiling, Recording]:
    """Return the sheets of the finished draft and the drawing on their common area.

    `said` stands on each panel, under its name.
    """
    finished = finished_draft(draft, scale)
    side, top = SIDE_ROOM * scale, TOP_ROOM * scale
    f = finished.frame
    frame = Area(f.left - side, f.bottom - top, f.right + RIGHT_ROOM * scale, f.top + top)
    width, height = frame.width / scale + 2 * EDGE, frame.height / scale + 2 * EDGE
    window = Window(frame, scale, Point(EDGE, height - EDGE))
    drawing = Recording(ruler)
    scene = Scene.of(draft, scale)
    StagePicture(scene, window, drawing, finished.old, finished.new, bare=True, said=said).draw()
    # No sheet is printed for a level line alone.
    lines = (stroke.outline for stroke in drawing.strokes if stroke.role is Role.PLAN)
    shapes = tuple(LineString(outline.flatten()).buffer(2) for outline in lines)
    return Tiling(DrawnLayout((), width, height, shapes), TileFormat(paper)), drawing


def draw_tiles(
    canvas: PdfCanvas, tiling: Tiling, drawing: Recording, words: SheetWords, *, first: int
) -> None:
    """Draw every sheet of a tiled draft, the first with the number `first`, all from one picture."""
    form, name = tiling.format, f"draft{first}"
    width, height = tiling.columns * form.width, tiling.rows * form.height
    with canvas.picture(name, left=-UNDER, bottom=-UNDER, right=width + UNDER, top=height + UNDER):
        drawing.play(canvas)
    ink = drawing.ink()
    for sheet, tile in enumerate(tiling.tiles, start=first):
        with canvas.page(form.paper.width, form.paper.height):
            canvas.show(name, at=shift(tiling, tile), **clip(form))
            draw_tile_sheet(canvas, tiling, tile, words, sheet=sheet, ink=ink)


def write_taping(flow: Flow, tiling: Tiling, scale: float, first: int) -> None:
    """Set how the sheets are taped on a sheet of its own."""
    last = first + len(tiling.tiles) - 1
    flow.text(Line(f"The finished draft, {scale_words(scale)}", 3.8, bold=True))
    flow.text(
        Line(f"Sheets {first} to {last}: {tiling.rows} rows of {tiling.columns}, empty ones left out.", 2.8),
        *(Line(f"{number}. {words}", 2.8) for number, words in enumerate(TAPING, start=1)),
    )
