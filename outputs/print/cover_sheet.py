"""Sheet 1 of the tiled pattern: no pattern on it, but all that is needed to print and tape the rest truly."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from drafting.pieces.pattern import Pattern
from outputs.canvas.canvas import Canvas, Role, line
from outputs.canvas.header import Header
from outputs.canvas.lettering import Column, Line, shortened
from outputs.packing.layout import StandingPiece
from outputs.paper.paper import Paper
from outputs.print.piece_text import check_length, some_pieces, taken
from outputs.sheets.print_test import BODY, GUTTER, HEADING, draw_print_test, numbered
from outputs.sheets.sheet_map import HEAD, SheetMap
from outputs.sheets.tiling import Tiling

HEADER = 17.0
"""Height of the title at the top of a sheet, mm."""
HEAD_LINES = Header(
    title=6.5, title_at=6.5, place=BODY, place_at=6.5, words=(3.6, 2.8, 2.4), words_at=12, rule_at=15
)
TAPING = (
    "Check the {check:g} mm bars of every sheet.",
    "Cut off the right and the top edge along the dotted line where ✂ stands; leave left and bottom. "
    "So a sheet is trimmed on two sides at most.",
    "Tape each row from left to right: lay the cut edge on the dotted line of the next sheet.",
    "Lay the cut top edge of each row on the dotted line of the row above it.",
    "Go by the crosses on the joins, not by the paper's edge. Crossed-out places on the map are empty; "
    "no sheet is printed for them.",
)

WHOLE = "No piece lies over a join of two sheets: cut the pieces out of each sheet as it is."


def cutting_list(pieces: Sequence[StandingPiece]) -> list[str]:
    """Return what is cut from each cloth, such as "Denim: 1 front leg ×2, 2 back leg ×2."."""
    cloths: dict[str, list[str]] = {}
    for placed in pieces:
        cutting = placed.piece.cutting
        name = placed.piece.name_in_its_cloth
        cloths.setdefault(cutting.material.value, []).append(f"{placed.number} {name} ×{cutting.quantity}")
    return [f"{cloth.capitalize()}: {', '.join(names)}." for cloth, names in cloths.items()]


def check_lengths(tiling: Tiling) -> list[str]:
    """Return the grain lines that run over several sheets, as lengths to measure on the taped pattern."""
    long = [p for p in tiling.layout.pieces if p.piece.grain.length > tiling.format.height]
    return [check_length(p.number, p.piece) for p in long]


def draw_header(canvas: Canvas, paper: Paper, title: str, subtitle: Sequence[str], place: str) -> float:
    """Draw the title at the top of a sheet and return the height of its foot.

    Args:
        canvas: The sheet.
        paper: What it is.
        title: In large type, the wearer.
        subtitle: Parts of the second line; empty ones are left out.
        place: Which sheet this is.
    """
    words = "  ·  ".join(filter(None, (*subtitle, paper.scale.words)))
    HEAD_LINES.draw(canvas, paper, title, place=f"{place}  ·  {paper.label}", words=words)
    return paper.height - paper.margin - HEADER


def draw_pattern_header(canvas: Canvas, paper: Paper, pattern: Pattern, *, sheet: int, sheets: int) -> float:
    """Draw the title of a pattern's sheet and return the height of its foot."""
    subtitle = (pattern.style, taken(pattern), some_pieces(pattern))
    return draw_header(canvas, paper, pattern.wearer, subtitle, f"sheet {sheet} of {sheets}")


def draw_cover(
    canvas: Canvas, paper: Paper, tiling: Tiling, pattern: Pattern, *, first: int, sheets: int
) -> None:
    """Draw sheet 1: the print test, the map, and how to tape.

    Args:
        canvas: The sheet.
        paper: What it is.
        tiling: The sheets of the pattern.
        pattern: What is printed.
        first: The sheet number of the first tile.
        sheets: How many sheets there are in all.
    """
    top = draw_pattern_header(canvas, paper, pattern, sheet=1, sheets=sheets)
    next_step = f"Measure as said below. If it passes, print sheets 2 to {sheets} the same way."
    if tiling.format.paper.landscape:
        next_step += f" From sheet {first} on they are landscape: leave the orientation at automatic."
    foot = draw_print_test(canvas, paper, top=top, next_step=next_step)
    canvas.stroke(line((paper.margin, foot - 2), (paper.width - paper.margin, foot - 2)), Role.FRAME)
    draw_map(canvas, paper, tiling, pattern, top=foot - 5, first=first)


def draw_map(
    canvas: Canvas,
    paper: Paper,
    tiling: Tiling,
    pattern: Pattern,
    *,
    top: float,
    first: int,
    advice: Sequence[Line] = (),
) -> None:
    """Draw the map of the sheets, the pieces to cut, and how to tape, from `top` to the foot of a sheet.

    Args:
        canvas: The sheet to draw on.
        paper: What it is; the sheets that are mapped may be of another paper.
        tiling: What is mapped.
        pattern: What is printed.
        top: Upper edge in mm.
        first: The sheet number of the first tile.
        advice: What to say before the taping.
    """
    left, right, bottom = paper.margin, paper.width - paper.margin, paper.margin
    half = (right - left - GUTTER) / 2
    beside = Column(canvas, left=left + half + GUTTER, top=top, width=half, bottom=bottom)
    if advice:
        beside.write(*advice)
        beside.y -= 2
    _write_taping(beside, tiling)
    sections = [_faulty(pattern)] if pattern.faults else []
    cut = (Line(words, BODY) for words in cutting_list(tiling.layout.pieces))
    sections.append([Line("Pieces to cut", HEADING, bold=True), *cut])
    if pattern.verdict:
        sections.append([Line("Do the pieces meet?", HEADING, bold=True), Line(pattern.verdict, BODY)])
    column, foot, below = Column(canvas, left=left, top=top, width=half, bottom=bottom), bottom, list[Line]()
    for section in sections:  # the map is the larger, the less stands below it
        if beside.y - beside.height(*section) >= bottom:
            beside.write(*section)
            beside.y -= 2
        else:
            below += section
            foot += column.height(*section) + 3
    several = len(tiling.tiles) > 1
    column.write(Line("Map of the sheets" if several else "Where the pieces lie", HEADING, bold=True))
    key = Column(canvas, left=left + HEAD, top=foot + 13, width=half - HEAD, bottom=foot)
    sheet_map = SheetMap(canvas, tiling, left=left, top=column.y, width=half, height=column.y - key.y)
    unnumbered = sheet_map.draw(first=first)
    key.y = sheet_map.bottom - 1.5
    words = "Bold: pieces."
    if several:
        words = f"Thin numbers: sheets, in the order of taping. {words}"
    key.write(Line(words, BODY), gap=0)
    if unnumbered:
        words = f"Too small here for their number: {', '.join(_runs(sorted(unnumbered)))}."
        key.write(Line(shortened(canvas, words, key.width, BODY), BODY), gap=0)
    column.y = key.y - 3
    column.write(*below)


def _runs(numbers: list[int]) -> Iterator[str]:
    """Yield rising numbers, those that follow each other as "10–13"."""
    for _, run in groupby(enumerate(numbers), key=lambda pair: pair[1] - pair[0]):
        first, *rest = (number for _, number in run)
        yield f"{first}–{rest[-1]}" if rest else str(first)


def _faulty(pattern: Pattern) -> list[Line]:
    """Return what is said of a pattern that was written although it would not sew together."""
    where = ", ".join(dict.fromkeys(fault.where for fault in pattern.faults))
    said = f"Checks found faults in it ({where}), and it was written only because that was asked for. "
    return [
        Line("FAULTY: do not cut from this pattern", HEADING, bold=True),
        Line(said + "The next sheet tells each.", BODY, bold=True),
    ]


def _write_taping(column: Column, tiling: Tiling) -> None:
    if len(tiling.tiles) > 1 and not tiling.tears_pieces:
        column.write(Line("Nothing to tape", HEADING, bold=True), Line(WHOLE, BODY))
        column.y -= 2
    elif len(tiling.tiles) > 1:
        steps = numbered(step.format(check=tiling.format.check) for step in TAPING)
        column.write(Line("Tape the sheets", HEADING, bold=True), *steps)
        column.y -= 2
    lengths = check_lengths(tiling)
    if lengths:
        column.write(
            Line("Check the taped pattern before cutting", HEADING, bold=True),
            Line("Grain line, from arrow tip to arrow tip:", BODY),
            *(Line(words, BODY, bold=True) for words in lengths),
        )
        column.y -= 2
