"""The pattern as one SVG drawing at true scale, with all pieces side by side."""

from __future__ import annotations

from typing import BinaryIO

from drafting.geometry.points import Point
from drafting.pieces.pattern import Pattern
from outputs.canvas.svg_canvas import SvgCanvas
from outputs.canvas.typeface import Typeface
from outputs.packing.layout import StandingPiece
from outputs.paper.paper import MARGIN
from outputs.print.piece_drawing import draw_piece
from outputs.print.piece_text import SCALE, allowance_text, cloth_text, origin_text, sheet_title, title
from outputs.print.single_page import drawn_side_by_side
from outputs.words.ascii_text import plain_words
from outputs.words.print_report import PrintReport


def write_svg(pattern: Pattern, target: BinaryIO) -> PrintReport:
    """Write all pieces, each a group, with the scale test beside them.

    Within a group such as `piece-3-back-yoke` stand `piece-3-back-yoke-cut-line`, `-sew-line`, `-fold`,
    `-grain`, `-notches`, `-marks` and `-text`, those of them that the piece has.

    Args:
        pattern: At least one piece; all are drawn.
        target: Open binary file; the same pattern gives the same bytes.
    """
    ruler = Typeface()
    page = drawn_side_by_side(pattern, ruler)
    canvas = SvgCanvas(
        ruler,
        width=page.paper.width,
        height=page.paper.height,
        origin=Point(MARGIN, MARGIN),
        title=sheet_title(pattern),
        description=_what_is_drawn(pattern),
    )
    unfit: list[str] = []
    for placed in page.layout.pieces:
        with canvas.group(
            _name(placed),
            title=title(placed.number, placed.piece),
            description=_what_is_cut(placed, pattern),
        ):
            unfit += draw_piece(canvas, placed, pattern)
    with canvas.group(
        "scale-test",
        title="Scale test",
        description="Bars of 100 mm and 4 in, level and upright, and a square of 50 mm, to measure.",
    ):
        page.draw_scale_test(canvas)
    target.write(canvas.svg())
    return PrintReport(1, tuple(unfit), ())


def _name(placed: StandingPiece) -> str:
    return "-".join(["piece", str(placed.number), *plain_words(placed.piece.name)]).lower()


def _what_is_drawn(pattern: Pattern) -> str:
    pieces = ", ".join(title(number, piece) for number, piece in pattern.numbered)
    return (
        f"Sewing pattern at true scale, one unit of the drawing to the millimetre. Pieces: {pieces}. "
        "Each is seen from the right side of the cloth, its grain upright. The cut line is solid and heavy, "
        "the sew line dashed, the grain line dash-dotted between arrow heads; short strokes across the "
        "allowance are notches."
    )


def _what_is_cut(placed: StandingPiece, pattern: Pattern) -> str:
    piece = placed.piece
    size = f"{placed.width:.0f} mm wide and {placed.height:.0f} mm high as cut"
    words = (
        f"{piece.cutting.material.value}: {piece.cut_text}",
        f"{pattern.style}, {SCALE}, {origin_text(pattern)}",
        allowance_text(piece),
        cloth_text(piece),
        size,
    )
    return "; ".join(filter(None, words))
