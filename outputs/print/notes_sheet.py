"""The sheets after the first: key to the lines, what the drafting found, and cautions. No pattern on them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from drafting.base.errors import Severity
from drafting.base.findings import Show, in_centimetres
from drafting.geometry.points import Point
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Piece
from outputs.canvas.canvas import Canvas, Recording, Role, Ruler, line
from outputs.canvas.lettering import Line, TextBlock
from outputs.canvas.text_flow import Area, Flow, Heads
from outputs.packing.layout import Layout, StandingPiece
from outputs.paper.paper import Paper
from outputs.print.cover_sheet import HEADER
from outputs.print.piece_drawing import draw_drill
from outputs.print.piece_outlines import NOTCH_APART
from outputs.print.piece_text import allowance_text, cloth_text, title
from outputs.sheets.print_test import BODY, GUTTER, HEADING

KEY = (
    (Role.CUT, "cut here"),
    (Role.SEW, "sew here"),
    (Role.FOLD, "lay on the fold of the cloth, do not cut"),
    (Role.GRAIN, "grain line: lay it along the warp, parallel to the selvedge"),
    (
        Role.NOTCH,
        "notch, across the allowance: meets the notch of the other piece; "
        "two side by side mark the back of the body",
    ),
    (Role.DRILL, "ring with a cross: mark its middle through the cloth"),
    (Role.MARK, "line to transfer or to fold along"),
    (Role.JOIN, "join of two sheets, with crosses to match"),
)
TOILE = "Sew a toile from cheap cloth first and try it on, sitting and walking, before you cut denim."
WASHED = "Wash and iron the cloth before cutting: denim shrinks, mostly along the warp."
UNWASHED = "Cut the cloth unwashed: the pieces are drawn larger for what it loses in the first wash."
LEVELS = {Severity.FAULT: "FAULT", Severity.WARNING: "Warning", Severity.NOTE: "Note"}

SAMPLE = 22.0
"""Length of a line's sample in the key, mm."""
KEPT = 20.0
"""A table begins on the sheet of its heading where so much is left of it, mm."""
TABLE_SIZES = (2.5, 2.2)
"""Type size in a table, mm: the smaller where it saves a sheet."""
GAPS = (1.4, 0.8)
"""Space after a paragraph, mm: the smaller where it saves a sheet."""


@dataclass(frozen=True)
class Note:
    """Lines kept together, with a sample of a line before them where they explain one."""

    words: tuple[Line, ...]
    sample: Role | None = None

    def block(self, ruler: Ruler, width: float) -> TextBlock:
        """Return the paragraph set to `width` mm less the sample."""
        return TextBlock.set(ruler, list(self.words), width - self._indent)

    def draw(self, canvas: Canvas, block: TextBlock, left: float, top: float) -> None:
        """Draw the paragraph as set by `block`."""
        if self.sample:
            _draw_sample(canvas, self.sample, left + 0.3, top - 0.75 * BODY)
        block.draw(canvas, Point(left + self._indent, top))

    @property
    def _indent(self) -> float:
        return SAMPLE + 4 if self.sample else 0.0


def draw_notes(
    ruler: Ruler, paper: Paper, layout: Layout, pattern: Pattern, *, show: Show = in_centimetres
) -> list[Recording]:
    """Return the notes on as many sheets as they need, in two columns, still without their headers.

    Lengths in what the drafting found are written by `show`.
    """
    sections = list(_sections(layout, pattern, show))
    columns = min((_set(ruler, paper, sections, gap) for gap in GAPS), key=len)
    return columns + min((_tables(ruler, paper, pattern, show, size) for size in TABLE_SIZES), key=len)


def _tables(ruler: Ruler, paper: Paper, pattern: Pattern, show: Show, size: float) -> list[Recording]:
    """Return the sections that have a table, on sheets of their own: a table wants their whole width."""
    edge = paper.margin
    area = Area(edge, edge, paper.width - edge, paper.height - edge - HEADER - HEADING)
    flow = Flow(ruler, area, size=size)
    for section in pattern.sections:
        if table := section.table:
            flow.text(Line(section.heading, HEADING, bold=True), keep=KEPT)
            flow.text(*(Line(said.say(show), BODY) for said in section.lines), keep=KEPT)
            rows = [[cell.say(show) for cell in row] for row in table.rows]
            flow.table(Heads(table.heads, table.shares), rows)
    return flow.sheets


def _set(
    ruler: Ruler, paper: Paper, sections: Sequence[tuple[str, list[Note]]], gap: float
) -> list[Recording]:
    width = (paper.width - 2 * paper.margin - GUTTER) / 2
    top, bottom = paper.height - paper.margin - HEADER, paper.margin
    sheets: list[Recording] = []
    columns = 0
    y = -1.0
    for heading, notes in sections:
        paragraphs = [Note((Line(heading, HEADING, bold=True),)), *notes]
        blocks = [note.block(ruler, width) for note in paragraphs]
        y -= HEADING
        for index, (note, block) in enumerate(zip(paragraphs, blocks, strict=True)):
            kept_together = blocks[:3] if index == 0 else [block]
            if y - sum(b.height + gap for b in kept_together) < bottom:
                if columns % 2 == 0:
                    sheets.append(Recording(ruler))
                columns += 1
                y = top
            left = paper.margin + (width + GUTTER) * ((columns - 1) % 2)
            note.draw(sheets[-1], block, left, y)
            y -= block.height + gap
    return sheets


def _draw_sample(canvas: Canvas, role: Role, left: float, y: float) -> None:
    """Draw how a role looks on the pattern."""
    if role is Role.DRILL:
        draw_drill(canvas, Point(left + SAMPLE / 2, y))
    elif role is Role.NOTCH:
        for x in (left + 6, left + 13, left + 13 + NOTCH_APART):
            canvas.stroke(line((x, y - 2.5), (x, y + 1.5)), role)
    else:
        canvas.stroke(line((left, y), (left + SAMPLE, y)), role)


def _sections(layout: Layout, pattern: Pattern, show: Show) -> Iterator[tuple[str, list[Note]]]:
    if pattern.findings:
        ordered = sorted(pattern.findings, key=lambda f: list(LEVELS).index(f.severity))
        said = [_text(f"{LEVELS[f.severity]}, {f.where}: {f.say(show)}") for f in ordered]
        yield "What the drafting found", said
    for section in pattern.sections:
        if section.table:
            continue
        yield section.heading, [_text(line.say(show)) for line in section.lines]
    yield "The lines", [Note((Line(words, BODY),), role) for role, words in KEY]
    larger = any(cloth_text(placed.piece) for placed in layout.pieces)
    yield "Before you cut", [_text(words) for words in (TOILE, UNWASHED if larger else WASHED)]
    yield (
        "The pieces and their allowances",
        [
            Note((Line(_piece_line(placed), BODY, bold=True), *_said_of(placed.piece)))
            for placed in layout.pieces
        ],
    )


def _piece_line(placed: StandingPiece) -> str:
    """Return a piece's entry in the list, such as "1. front leg: denim, cut 1, this side up"."""
    piece = placed.piece
    return f"{title(placed.number, piece)}: {piece.cutting.material.value}, {piece.cut_text}"


def _said_of(piece: Piece) -> Iterator[Line]:
    for words in (allowance_text(piece), cloth_text(piece), _marks(piece)):
        if words:
            yield Line(words, BODY)


def _marks(piece: Piece) -> str:
    names = dict.fromkeys(mark.name.replace("_", " ") for mark in piece.marks)
    return f"marks: {', '.join(names)}" if names else ""


def _text(words: str) -> Note:
    return Note((Line(words, BODY),))
