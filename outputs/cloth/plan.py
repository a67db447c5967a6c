"""A plan of every cloth of one or more pairs of jeans: made, checked, or repeated from a file."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.findings import Show
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Material
from outputs.cloth.cut_pieces import CLOTHS, CutPiece, pieces_to_cut
from outputs.cloth.laid_cloth import SELVEDGE, WIDTH_OPTIONS, ClothOnTable, LaidCloth
from outputs.cloth.packing import lay


@dataclass(frozen=True, eq=False)
class ClothPlan:
    """The plans of all cloths.

    Attributes:
        patterns: Whose pieces are laid, in the order of their numbers from 1.
        cloths: One for each cloth that is cut.
    """

    patterns: tuple[Pattern, ...]
    cloths: tuple[LaidCloth, ...]


def make_plan(
    patterns: Sequence[Pattern], on_table: Mapping[Material, ClothOnTable], *, show: Show
) -> ClothPlan:
    """Return a plan; the same for the same patterns.

    Args:
        patterns: At least one.
        on_table: How each of CLOTHS lies.
        show: Writes a length in the person's unit.

    Raises:
        DraftRefused: for every cloth that is too narrow for a piece.
    """
    pieces = all_pieces(patterns, on_table)
    problems = [
        _too_narrow(cloth, on_table[cloth], widest, show)
        for cloth in pieces
        for widest in [max(pieces[cloth], key=lambda piece: piece.width)]
        if widest.width > on_table[cloth].room
    ]
    if problems:
        raise DraftRefused(problems)
    cloths = [
        LaidCloth(cloth, on_table[cloth], tuple(lay(pieces[cloth], on_table[cloth]))) for cloth in pieces
    ]
    return ClothPlan(tuple(patterns), tuple(cloths))


def all_pieces(
    patterns: Sequence[Pattern], on_table: Mapping[Material, ClothOnTable]
) -> dict[Material, list[CutPiece]]:
    """Return what is cut from each cloth; a cloth of which nothing is cut is left out."""
    pieces = {cloth: pieces_to_cut(patterns, cloth, folded=on_table[cloth].folded) for cloth in CLOTHS}
    return {cloth: cut for cloth, cut in pieces.items() if cut}


def _too_narrow(cloth: Material, lies: ClothOnTable, widest: CutPiece, show: Show) -> Problem:
    least = widest.width + (lies.lying - lies.room)
    how = "folded" if lies.folded else "open"
    message = (
        f"{widest.title} is {show(widest.width)} wide, and {cloth.value} of this width has room for "
        f"{show(lies.room)} when it lies {how}, {show(SELVEDGE)} off the selvedges."
    )
    plausible = f"{show(least * (2 if lies.folded else 1))} and wider"
    return Problem(WIDTH_OPTIONS[cloth], message, Severity.REFUSAL, show(lies.width), plausible)
