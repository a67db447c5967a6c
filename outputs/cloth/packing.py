"""Cut pieces packed on a length of cloth, the wearers' together, as short as the strip's trials find."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from outputs.cloth.cut_pieces import CutPiece, Laying
from outputs.cloth.laid_cloth import END, GAP, ClothOnTable, Laid, rounded
from outputs.packing.cells import NO_PLACE, Costs, Stamp, reach, stamp
from outputs.packing.strip_packing import Blank, cells_across, lowest, shortest, slides


def lay(pieces: Sequence[CutPiece], cloth: ClothOnTable) -> list[Laid]:
    """Return the pieces packed, in their order; the same each time.

    Args:
        pieces: None wider than the room of the cloth.
        cloth: What they are laid on.
    """
    # Half the gap of a piece may reach over a selvedge; along the fold it keeps inside.
    left = cloth.left if cloth.folded else cloth.left - reach(GAP)
    columns, cell = cells_across(cloth.right + reach(GAP) - left)
    blanks = {piece.key: _blank(piece, cell, one_way=cloth.one_way) for piece in pieces}
    places = shortest([blanks[piece.key] for piece in pieces], columns)
    laid = []
    for piece, placed in zip(pieces, places, strict=True):
        x, y = placed.corner
        laid.append(Laid(piece, rounded(left + x), rounded(END - reach(GAP) + y), placed.stamp.turned))
    return settled(laid)


def _blank(piece: CutPiece, cell: tuple[float, float], *, one_way: bool) -> Blank:
    on_fold = piece.lie is Laying.ON_FOLD
    upright = stamp(piece.shape, cell=cell, gap=GAP, flush=on_fold)
    stamps = (upright,) if one_way or on_fold else (upright, upright.upside_down)
    return Blank(stamps, piece.shape.area, _on_fold if on_fold else lowest)


def _on_fold(stamp: Stamp, shape: tuple[int, ...]) -> Costs:
    """Cost the same in the first column, beyond which the fold does not reach."""
    costs = lowest(stamp, shape)
    costs[1:] = NO_PLACE
    return costs


def settled(laid: Sequence[Laid]) -> list[Laid]:
    """Return the pieces slid down, the lowest first, as far as the gap and the end of the cloth allow."""
    ways = slides([each.shape for each in laid], end=END, gap=GAP)
    return [replace(each, y=rounded(each.y - way)) for each, way in zip(laid, ways, strict=True)]
