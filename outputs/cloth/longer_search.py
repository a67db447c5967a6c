"""A shorter plan of a cloth, searched for by the library spyrrow for as long as one likes.

The search goes by the clock, so it does not come to the same end twice; the plan is kept in a file instead.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import shapely
import spyrrow
from shapely.affinity import affine_transform, rotate, translate
from shapely.geometry import MultiPolygon, Polygon

from outputs.cloth.cut_pieces import CutPiece, Laying
from outputs.cloth.laid_cloth import END, GAP, ClothOnTable, Laid, LaidCloth, rounded
from outputs.cloth.packing import settled

OUTWARD = 0.1
"""How far an outline is drawn outwards before it gets fewer corners, mm; they stay outside the true one."""
STEP = 2.0
"""Steps in which a place on the fold is looked for, mm."""


def search(start: LaidCloth, *, seconds: int) -> LaidCloth:
    """Return the shorter of a plan and what the search finds; Ctrl-C ends it early with the best so far.

    Args:
        start: The plan to beat.
        seconds: Whole seconds, at least 1.
    """
    pieces = [each.piece for each in start.laid]
    free = [index for index, piece in enumerate(pieces) if piece.lie is not Laying.ON_FOLD]
    if not free:
        return start
    cloth, laid = start.cloth, dict[int, Laid]()
    # It keeps the gap from the sides of its strip too, where the selvedge leaves room enough.
    strip = spyrrow.StripPackingInstance(
        "cloth",
        strip_height=cloth.room + 2 * GAP,
        items=[_item(str(index), pieces[index], cloth) for index in free],
    )
    setting = spyrrow.StripPackingConfig(total_computation_time=seconds, min_items_separation=GAP, seed=1)
    found = strip.solve(setting)
    for item in found.placed_items:
        index = int(item.id)
        piece = pieces[index]
        lying = translate(rotate(_along_strip(piece), item.rotation, origin=(0, 0)), *item.translation)
        along, _, _, across = lying.bounds
        x, y = cloth.right + GAP - across + OUTWARD, END - GAP + along + OUTWARD
        laid[index] = Laid(piece, rounded(x), rounded(y), abs(item.rotation) > 90)
    for index in sorted(set(range(len(pieces))) - set(free)):
        laid[index] = _on_fold(pieces[index], list(laid.values()))
    better = replace(start, laid=tuple(settled([laid[index] for index in range(len(pieces))])))
    return start if list(better.faults()) or better.length >= start.length else better


def _along_strip(piece: CutPiece) -> Polygon:
    """Return the outline, a little larger and with few corners, its warp along the library's strip."""
    plain = piece.shape.buffer(OUTWARD, join_style="mitre").simplify(OUTWARD)
    return Polygon(shapely.get_coordinates(affine_transform(plain, (0, 1, -1, 0, 0, 0))))


def _item(name: str, piece: CutPiece, cloth: ClothOnTable) -> spyrrow.Item:
    corners = [(x, y) for x, y, *_ in _along_strip(piece).exterior.coords[:-1]]
    turns = [0.0] if cloth.one_way else [0.0, 180.0]
    return spyrrow.Item(name, corners, demand=1, allowed_orientations=turns)


def _on_fold(piece: CutPiece, laid: Sequence[Laid]) -> Laid:
    """Return the piece on the fold, at the lowest place that is free."""
    others = MultiPolygon([each.shape for each in laid])
    shapely.prepare(others)
    y = END
    while shapely.dwithin(others, Laid(piece, 0.0, y).shape, GAP):
        y += STEP
    return Laid(piece, 0.0, y)
