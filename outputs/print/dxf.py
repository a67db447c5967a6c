"""The pattern as DXF: a block for each piece, on numbered layers, for cutters and drawing programs."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from enum import IntEnum
from typing import BinaryIO

import numpy as np
from shapely.geometry import LinearRing
from shapely.geometry import Point as Spot

from drafting.base.tolerance import JOIN
from drafting.geometry.curves import Coordinates
from drafting.geometry.points import Point
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import MarkKind
from outputs.canvas import dxf_writer
from outputs.canvas.canvas import Recording, Role
from outputs.canvas.chords import GAP, few_chords
from outputs.canvas.typeface import Typeface
from outputs.packing.layout import EDGE, Layout, StandingPiece
from outputs.print.piece_drawing import draw_piece
from outputs.print.piece_text import sheet_title
from outputs.print.single_page import drawn_side_by_side
from outputs.words.ascii_text import STAND_IN, distinct_names, in_ascii
from outputs.words.print_report import PrintReport

TITLE_SIZE = 10.0
"""Type size of the lines above the pieces, mm."""


class DxfLayer(IntEnum):
    """Layers by the numbers that ASTM D6673 gives them, as remembered: not compared with the standard."""

    CUT = 1
    TURN = 2
    CURVE = 3
    NOTCH = 4
    FOLD = 6
    GRAIN = 7
    INTERNAL = 8
    DRILL = 13
    SEW = 14
    TEXT = 15


MEANINGS = {
    DxfLayer.CUT: "cut line, closed; facts of the style",
    DxfLayer.TURN: "corners of cut and sew lines",
    DxfLayer.CURVE: "points of their curves",
    DxfLayer.NOTCH: "notches, points on the cut line",
    DxfLayer.FOLD: "fold of the cloth",
    DxfLayer.GRAIN: "grain line, hem to waist",
    DxfLayer.INTERNAL: "lines to draw, not to cut: marks, arrow heads, strokes of notches, rings of drill "
    "holes",
    DxfLayer.DRILL: "drill holes",
    DxfLayer.SEW: "sew line",
    DxfLayer.TEXT: "words",
}
DRAWN = {
    Role.SEW: DxfLayer.SEW,
    Role.FOLD: DxfLayer.FOLD,
    Role.GRAIN: DxfLayer.GRAIN,
    Role.ARROW: DxfLayer.INTERNAL,
    Role.NOTCH: DxfLayer.INTERNAL,
    Role.MARK: DxfLayer.INTERNAL,
    Role.DRILL: DxfLayer.INTERNAL,
}
"""Where the strokes of a piece go; the cut line is written whole instead, folds and all."""


def write_dxf(pattern: Pattern, target: BinaryIO) -> PrintReport:
    """Write a block for each piece, its lower left corner at the origin, and show all side by side.

    Curves are chords within GAP; names and words are spelled in ASCII (`outputs.words.ascii_text`). The
    numbers of the layers are those of ASTM D6673, but nobody compared the file with the standard.

    Args:
        pattern: At least one piece; all are written.
        target: Open binary file; the same pattern gives the same bytes.
    """
    ruler = Typeface()
    spelled = replace(pattern, wearer=in_ascii(pattern.wearer), style=in_ascii(pattern.style))
    layout = drawn_side_by_side(spelled, ruler).layout
    names = distinct_names((p.piece.name for p in layout.pieces), longest=dxf_writer.LONGEST_NAME)
    blocks, entities = [], list(_facts(spelled, layout))
    unfit: list[str] = []
    for name, placed in zip(names, layout.pieces, strict=True):
        left, bottom = placed.cut.min(axis=0).tolist()
        at_origin = placed.at(0, 0)
        drawing = Recording(ruler)
        unfit += draw_piece(drawing, at_origin, spelled)
        blocks.append(dxf_writer.block(name, _entities(at_origin, drawing)))
        entities.append(dxf_writer.insert(name, Point(left, bottom)))
    target.write(dxf_writer.dxf_file(notes=_notes(), blocks=blocks, entities=entities))
    return PrintReport(1, tuple(unfit), tuple(_unspelled(pattern)))


def _unspelled(pattern: Pattern) -> Iterator[str]:
    """Yield a sentence for the letters that are written as STAND_IN."""
    letters = {ch for text in (pattern.wearer, pattern.style) for ch in text if ch != STAND_IN}
    lost = sorted(ch for ch in letters if STAND_IN in in_ascii(ch))
    if lost:
        named = ", ".join(f"{ch} (U+{ord(ch):04X})" for ch in lost)
        yield f"no plain spelling is known for these, {STAND_IN!r} in the DXF: {named}"


def _notes() -> Iterator[str]:
    yield "jeansblock: lengths in millimetres, pieces as seen from the right side of the cloth"
    yield "layers numbered after ASTM D6673 from memory; conformance with it is not claimed"
    for layer, meaning in MEANINGS.items():
        yield f"layer {layer}: {meaning}"


def _facts(pattern: Pattern, layout: Layout) -> Iterator[str]:
    """Yield lines above the pieces: title, unit and tolerance."""
    lines = (
        (DxfLayer.TEXT, sheet_title(pattern)),
        (DxfLayer.CUT, f"Style Name: {pattern.style}"),
        (DxfLayer.CUT, "Units: METRIC"),
        (DxfLayer.CUT, f"Curve Tolerance: {GAP:g}"),
    )
    for row, (layer, words) in enumerate(reversed(lines)):
        at = Point(EDGE, layout.height + (1 + 2 * row) * TITLE_SIZE)
        yield dxf_writer.text(layer, words, at, TITLE_SIZE)


def _entities(placed: StandingPiece, drawing: Recording) -> Iterator[str]:
    ring = placed.cut
    yield from _line(DxfLayer.CUT, np.vstack([ring, ring[:1]]))
    border = LinearRing(ring)
    for stroke in drawing.strokes:
        if stroke.role is Role.NOTCH:
            ends = (Point(*end) for end in stroke.outline.flatten().tolist())
            yield dxf_writer.point(DxfLayer.NOTCH, min(ends, key=lambda end: border.distance(Spot(*end))))
        if stroke.role in DRAWN:
            yield from _line(DRAWN[stroke.role], stroke.outline.flatten())
    for mark in placed.piece.marks:
        if mark.kind is MarkKind.DRILL:
            yield dxf_writer.point(DxfLayer.DRILL, mark.path.start)
    for t in drawing.texts:
        yield dxf_writer.text(DxfLayer.TEXT, t.string, t.at, t.size, angle=t.angle, align=t.align)


def _line(layer: DxfLayer, fine: Coordinates) -> Iterator[str]:
    """Yield the line as few chords, and for a cut or sew line what each of its points is."""
    points, corners = few_chords(fine)
    closed = len(points) > 2 and float(np.hypot(*(points[-1] - points[0]))) < JOIN
    if closed:
        points, corners = points[:-1], corners[:-1]
    yield dxf_writer.polyline(layer, points, closed=closed)
    if layer in (DxfLayer.CUT, DxfLayer.SEW):
        for corner, place in zip(corners, points.tolist(), strict=True):
            yield dxf_writer.point(DxfLayer.TURN if corner else DxfLayer.CURVE, Point(*place))
