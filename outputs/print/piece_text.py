"""The words a piece carries, the same in every output."""

from __future__ import annotations

from itertools import groupby

from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Edge, Finish, Material, Piece
from outputs.canvas.canvas import Ruler
from outputs.canvas.lettering import Line, TextBlock
from outputs.paper.printer_scale import TOLERANCE


def sheet_title(pattern: Pattern) -> str:
    """Return the title of a whole pattern, such as "Ada Example, straight leg"."""
    return f"{pattern.wearer}, {pattern.style}"


def taken(pattern: Pattern) -> str:
    """Return when it was measured, such as "measured 2025-03-01"; nothing where that is not told."""
    return f"measured {pattern.date}" if pattern.date else ""


def some_pieces(pattern: Pattern) -> str:
    """Return how many pieces are printed, such as "3 of 17 pieces"; nothing where all are."""
    return f"{len(pattern.numbered)} of {len(pattern.pieces)} pieces" if pattern.printed else ""


def allowance_text(piece: Piece) -> str:
    """Return what is added at which edge, such as "seam allowance included: waist 10 mm; hem 30 mm"."""
    if piece.cutting.material in (Material.INTERFACING, Material.TEMPLATE):
        return "cut without seam allowance"
    sewn = [edge for edge in piece.edges if edge.finish is not Finish.FOLD]
    if not any(edge.allowance for edge in sewn):
        return "seam allowance NOT included, add your own"
    by_width = groupby(sorted(sewn, key=_width), key=_width)
    parts = [f"{_names(list(edges))} {f'{width:g} mm' if width else 'none'}" for width, edges in by_width]
    return f"seam allowance included: {'; '.join(parts)}"


def cloth_text(piece: Piece) -> str:
    """Return what is added for the wash, such as "drawn 5.3 % longer for the first wash"; often nothing."""
    words = (("longer", "shorter"), ("wider", "narrower"))
    parts = [
        f"{abs(times - 1) * 100:.1f} % {larger if times > 1 else smaller}"
        for times, (larger, smaller) in zip(piece.drawn_larger, words, strict=True)
        if times != 1
    ]
    return f"drawn {', '.join(parts)} for the first wash" if parts else ""


def turned_text(piece: Piece) -> str:
    """Return what is said of a piece that lies upside down to save paper; nothing of others."""
    lies_so = piece.grain.end.y < piece.grain.start.y
    return "lies turned by half a turn: its lower end is up here" if lies_so else ""


def _width(edge: Edge) -> float:
    return edge.allowance


def _names(edges: list[Edge]) -> str:
    names = (edge.name + (" with its turn-up" if edge.turn_up else "") for edge in edges)
    return ", ".join(dict.fromkeys(names))


def title(number: int, piece: Piece) -> str:
    """Return number and name, such as "1. front leg"."""
    return f"{number}. {piece.name}"


def check_length(number: int, piece: Piece) -> str:
    """Return the grain line as a length to measure on the print, with the error that is allowed."""
    length = piece.grain.length
    # Half a millimetre goes down, wherever on the area the piece lies: there its last digits differ.
    return f"{title(number, piece)}: {length:.0f} mm ± {round(length, 3) * TOLERANCE - 0.001:.0f} mm"


SCALE = "scale 1:1"
"""How large every piece is drawn, whatever the printer is corrected for."""


def origin_text(pattern: Pattern) -> str:
    """Return whose the pieces are, such as "for Ada Example, measured 2025-03-01"."""
    return ", ".join(filter(None, (f"for {pattern.wearer}", taken(pattern))))


def full_label(
    ruler: Ruler, number: int, piece: Piece, pattern: Pattern, *, width: float, scale: float
) -> TextBlock:
    """Return the whole label, lines of at most `width` mm; at scale 1 the body is set in 4 mm."""
    size = 4.0 * scale
    lines = [
        Line(title(number, piece), 2 * size, bold=True),
        Line(f"{piece.cutting.material.value}: {piece.cut_text}", size, bold=True),
        Line(f"{pattern.style}, {SCALE}", size),
        Line(origin_text(pattern), size),
        *_of_the_piece(piece, size),
    ]
    return TextBlock.set(ruler, lines, width)


def compact_label(
    ruler: Ruler, number: int, piece: Piece, pattern: Pattern, *, width: float, scale: float
) -> TextBlock:
    """Return the whole label in few lines of one size, for a narrow piece."""
    size = 4.0 * scale
    cut = f"{title(number, piece)}: {piece.cutting.material.value}, {piece.cut_text}"
    origin = Line(f"{pattern.style}, {SCALE}, {origin_text(pattern)}", size)
    return TextBlock.set(ruler, [Line(cut, size, bold=True), origin, *_of_the_piece(piece, size)], width)


def _of_the_piece(piece: Piece, size: float) -> list[Line]:
    texts = (allowance_text(piece), cloth_text(piece), turned_text(piece))
    return [Line(text, size) for text in texts if text]


def short_label(ruler: Ruler, number: int, piece: Piece, *, width: float, scale: float) -> TextBlock:
    """Return number, name and cutting alone, for a piece without room for more."""
    size = 4.0 * scale
    lines = [
        Line(title(number, piece), 1.2 * size, bold=True),
        Line(f"{piece.cutting.material.value}: {piece.cut_text}", size),
        *([Line(turned, size)] if (turned := turned_text(piece)) else []),
    ]
    return TextBlock.set(ruler, lines, width)


def number_label(ruler: Ruler, number: int, *, scale: float) -> TextBlock:
    """Return the number alone."""
    return TextBlock.set(ruler, [Line(str(number), 6.0 * scale, bold=True)], 100.0)
