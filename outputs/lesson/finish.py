"""The last sheet of the worksheet: key to the signs, what a finished pattern carries, room for remarks."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Sequence
from dataclasses import replace

from drafting.block.point_names import Drawn
from drafting.body.words import of_side
from drafting.geometry.points import Point
from drafting.lesson.hand_draft import HandDraft, How, Instruction
from drafting.lesson.words import LEVELS, About
from outputs.canvas.canvas import Recording, Role, Ruler, line
from outputs.canvas.lettering import Line
from outputs.canvas.text_flow import Area
from outputs.lesson.sheet import SheetSet
from outputs.lesson.words import Writing
from outputs.print.notes_sheet import Note

CREASE = (Drawn.CREASE, Drawn.CREASE_AT_HEM)
"""The ends of the grain line."""
NOTCHED = {
    Drawn.HIP_LEVEL: (Drawn.HIP_AT_SIDE,),
    Drawn.KNEE_LEVEL: (Drawn.KNEE_AT_SIDE, Drawn.KNEE_AT_INSEAM),
}
"""The points at which each level is notched."""
SIGNS = (
    (Role.PLAN, "a line of the pattern, drawn in this stage"),
    (Role.FRAME, "a line of the pattern that stood before"),
    (Role.RULER, "a construction line, with ruler and square; also from a point to its number"),
    (Role.MARK, "a level, right across"),
    (Role.GRAIN, "the crease: the straight grain"),
    (Role.JOIN, "from the end of a curve to its guide"),
)
RINGED = "a point; in bold the new ones, with the number of the step that sets them"
CROSSED = "a guide of a curve, with the number of the curve and a letter"
HOW_A_CURVE = (
    "A curve leaves each end towards its guide. Halve the three lines end, guide, guide, end; join the "
    "halves; halve these two lines and join again: the middle of this last line lies on the curve, and the "
    "line touches it there. Each half of the curve can be halved again in the same way. The corner "
    "of a curve is where its two end directions meet."
)
DIRECTIONS = (
    "Up is towards the waist, right towards the fork, on both panels: front and back are drawn as they lie "
    "here. Lengths are those of the body, full size; divide by the scale to draw small."
)
SHARES = (1.0, 0.9, 0.8, 0.72)
"""Of the type size: the last sets small print in 2 mm, the least that reads well."""
TOILE = "Sew a toile of cheap cloth and try it on, sitting and walking, before you cut good cloth."


def finish_sheet(
    ruler: Ruler, sheets: SheetSet, drafts: tuple[HandDraft, ...], drawn: Iterable[Recording]
) -> Recording:
    """Return the last sheet, without its header; the key has the signs that the drawings `drawn` hold."""
    sheet = Recording(ruler)
    area = sheets.area
    gap, third = 7.0, (area.width - 14) / 3
    used = {stroke.role for recording in drawn for stroke in recording.strokes}
    _notes(sheet, _key(used), Area(area.left, area.bottom, area.left + third, area.top))
    left = area.left + third + gap
    _notes(sheet, _finished(sheets, drafts), Area(left, area.bottom, left + third, area.top))
    _remarks(sheet, Area(left + third + gap, area.bottom, area.right, area.top))
    return sheet


def _notes(sheet: Recording, notes: Iterable[Note], area: Area) -> None:
    """Set notes in a column, smaller where they are too long for it."""
    notes = list(notes)
    for share in SHARES:
        smaller = [replace(note, words=tuple(_sized(line, share) for line in note.words)) for note in notes]
        blocks = [note.block(sheet, area.width) for note in smaller]
        if sum(block.height + 1.3 * share for block in blocks) <= area.height - 1:
            break
    y = area.top - 1
    for note, block in zip(smaller, blocks, strict=True):
        note.draw(sheet, block, area.left, y)
        y -= block.height + 1.3 * share


def _sized(line: Line, share: float) -> Line:
    return replace(line, size=line.size * share)


def _heading(words: str) -> Note:
    return Note((Line(words, 3.6, bold=True),))


def _say(words: str) -> Note:
    return Note((Line(words, 2.8),))


def _key(used: set[Role]) -> Iterator[Note]:
    yield _heading("The signs")
    for role, words in SIGNS:
        if role in used:
            yield Note((Line(words, 2.8),), role)
    yield _say(f"Ring: {RINGED}.")
    yield _say(f"Small cross: {CROSSED}.")
    yield _heading("How to draw a curve")
    yield _say(HOW_A_CURVE)
    yield _heading("Directions and lengths")
    yield _say(DIRECTIONS)


def _finished(sheets: SheetSet, drafts: tuple[HandDraft, ...]) -> Iterator[Note]:
    writing = Writing(sheets.read.unit)
    yield _heading("A finished pattern carries")
    for draft in drafts:
        for panel in ("front", "back"):
            yield Note((Line(of_side(panel, draft.half.side).capitalize(), 2.8, bold=True),))
            yield from map(_say, carried(draft, panel, writing))
    taken = f", measured {sheets.read.taken_on}" if sheets.read.taken_on else ""
    yield Note((Line("Each piece", 2.8, bold=True),))
    yield _say(
        f"“{sheets.read.wearer}{taken}”, the name of the piece, its scale where it is not full size, how "
        "often it is cut, right side up."
    )
    yield _say("Seam allowance: none is drawn. Add it, and write on each edge how much.")
    yield _say(TOILE)


def carried(draft: HandDraft, panel: str, writing: Writing) -> Iterator[str]:
    """Yield what the finished panel must show, one line each, from what is drawn."""
    mine = [i for i in draft.instructions if i.panel == panel]
    seams = [i for i in mine if i.curve and i.draws is not Drawn.DART]
    yield "cut 1" if draft.half.side else "cut 2, one the mirror of the other"
    yield _seam_lines(seams)
    yield from _darts(mine, writing)
    yield f"grain line along the crease {'–'.join(i.label for i in mine if i.draws in CREASE)}"
    yield from _notches(draft, mine, on={label for i in seams for label in i.start[:2]})


def _seam_lines(seams: Iterable[Instruction]) -> str:
    """Return the edges, each with the ends of the lines that it is drawn in."""
    edges: dict[About, list[str]] = {}
    for step in seams:
        edges.setdefault(step.about.edge, []).append("–".join(step.start[:2]))
    return "seam lines: " + "; ".join(f"{edge.name} {', '.join(parts)}" for edge, parts in edges.items())


def _darts(mine: Sequence[Instruction], writing: Writing) -> Iterator[str]:
    """Yield each dart with its points and its width; its two legs are drawn one after the other."""
    places = {i.label: i.at for i in mine if i.at}
    legs = [i for i in mine if i.curve and i.draws is Drawn.DART]
    for first, second in zip(legs[::2], legs[1::2], strict=True):
        inner, tip, outer = *first.start[:2], second.start[1]
        wide = writing.rounded((places[outer] - places[inner]).length)
        yield f"dart {inner}–{tip}–{outer}, {wide} wide, its tip marked"


def _notches(draft: HandDraft, mine: Sequence[Instruction], *, on: Container[str]) -> Iterator[str]:
    """Yield the notches of each level, at those of its points that lie `on` an edge."""
    levels = {i.draws: i.label for i in draft.instructions if i.how is How.LEVEL}
    for level, points in NOTCHED.items():
        at = [i.label for i in mine if i.label in on and i.draws in points]
        if at:
            name = LEVELS[level]
            yield f"notches at {name} level ({', '.join(at)}) and the {name} line {levels[level]}"


def _remarks(sheet: Recording, area: Area) -> None:
    sheet.text("Remarks", Point(area.left, area.top - 4.6), 3.6, bold=True)
    y = area.top - 14
    while y > area.bottom + 2:
        sheet.stroke(line((area.left, y), (area.right, y)), Role.RULER)
        y -= 9
