"""Layers of a drawing, which a PDF reader can show and hide one by one."""

from __future__ import annotations

from enum import Enum

from outputs.canvas.canvas import Recording, Role


class Layer(Enum):
    """A part of a piece's drawing; the value is the name that a reader of the PDF shows."""

    CUT = "cut lines"
    SEW = "sew lines"
    MARKS = "grain, notches and marks"
    WORDS = "words on the pieces"


LAYERS = {
    Role.CUT: Layer.CUT,
    Role.FOLD: Layer.CUT,
    Role.SEW: Layer.SEW,
    Role.GRAIN: Layer.MARKS,
    Role.ARROW: Layer.MARKS,
    Role.NOTCH: Layer.MARKS,
    Role.MARK: Layer.MARKS,
    Role.DRILL: Layer.MARKS,
}
"""Where a stroke of a piece lies. What belongs to the sheet (joins, bars, frames) lies on no layer."""


def only_layer(drawing: Recording, layer: Layer) -> Recording:
    """Return what of a drawing of pieces lies on one layer."""
    part = Recording(drawing.ruler)
    part.strokes = [stroke for stroke in drawing.strokes if LAYERS[stroke.role] is layer]
    part.texts = list(drawing.texts) if layer is Layer.WORDS else []
    return part
