"""What moves from one version of a draft to another: named points, lengths, edges of the pieces."""

from __future__ import annotations

from collections.abc import Collection, Mapping

import numpy as np
from numpy.typing import NDArray

from drafting.block.block import Block, Half
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Material

Amounts = NDArray[np.float64]
SIDES = ("right ", "left ")
"""Before the names of a half's points and lengths where the sides differ."""


def halves_of(block: Block, count: int) -> tuple[Half, ...]:
    """Return the halves, as many as wanted: one mirrored pair stands for both sides."""
    return block.halves if len(block.halves) == count else block.halves * count


def block_lengths(block: Block) -> dict[str, Amounts]:
    """Return each length of the block, mm; of shape (2,) where both halves have their own, else (1,)."""
    p = block.proportions
    return {
        "waist": np.array([block.waist_girth]),
        "hip": np.array([block.hip_girth]),
        "thigh": np.array([half.thigh_girth(p) for half in block.halves]),
        "crotch seam": np.array([block.crotch_length]),
        "inseam": np.array([half.back.panel.inseam.length for half in block.halves]),
        "side seam": np.array([half.front.side.length for half in block.halves]),
    }


def lengths_of(block: Block, count: int) -> dict[str, Amounts]:
    """Return the lengths of a block and the girths of knee and hem by name, each of shape (1,), mm.

    Args:
        block: The block.
        count: Of halves that are told apart: 2 gives "right thigh" and "left thigh".
    """
    levels = [(half, half.levels) for half in block.halves]
    lengths = block_lengths(block) | {
        "knee": np.array([half.leg_girth(max(at.knee.mm, at.hem.mm)) for half, at in levels]),
        "hem": np.array([half.leg_girth(at.hem.mm) for half, at in levels]),
    }
    named: dict[str, Amounts] = {}
    for name, amounts in lengths.items():
        if count == 1 or name in ("waist", "hip", "crotch seam"):
            named[name] = amounts[:1]
        else:
            sides = zip(SIDES, np.broadcast_to(amounts, count), strict=True)
            named |= {side + name: np.array([mm]) for side, mm in sides}
    return named


def points_of(block: Block, count: int) -> dict[str, Amounts]:
    """Return the named points of both panels, each of shape (2,): x and y in the block, mm.

    Args:
        block: The block.
        count: Of halves that are told apart.
    """
    prefixes = SIDES if count > 1 else ("",)
    return {
        f"{prefix}{panel.name}, {name}": np.array([point.x, point.y])
        for prefix, half in zip(prefixes, halves_of(block, count), strict=True)
        for panel in (half.front, half.back)
        for name, point in panel.points().items()
    }


def edges_of(pattern: Pattern) -> dict[str, Amounts]:
    """Return the length of every edge, each of shape (1,), mm; edges of one name in a piece together.

    Interfacing is left away: it is cut like the piece that it stiffens.
    """
    lengths: dict[str, Amounts] = {}
    for piece in pattern.pieces:
        if piece.cutting.material is Material.INTERFACING:
            continue
        for edge in piece.edges:
            name = f"{piece.name}, {edge.name}"
            lengths[name] = lengths.get(name, np.zeros(1)) + edge.length
    return lengths


def as_sides(edges: Mapping[str, Amounts], known: Collection[str]) -> dict[str, Amounts]:
    """Return the edges, those of a mirrored pair as right and left where another version knows them so.

    Args:
        edges: Of one version.
        known: Names of the edges of all versions.
    """
    found: dict[str, Amounts] = {}
    for name, amount in edges.items():
        sided = [side + name for side in SIDES if side + name in known]
        found |= dict.fromkeys(sided or [name], amount)
    return found


def moved(old: Mapping[str, Amounts], new: Mapping[str, Amounts]) -> dict[str, Amounts]:
    """Return new less old of all that both have."""
    return {name: new[name] - amount for name, amount in old.items() if name in new}
