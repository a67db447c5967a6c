"""What moves from one version of a draft to another: named points, lengths, edges of the pieces.

Each is known by a key that says what it is; the keys print themselves.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from drafting.block.block import Block, Half
from drafting.block.point_names import Drawn, drawn, drawn_name
from drafting.body.measurements import Side
from drafting.body.words import of_side
from drafting.pieces.kinds import EdgeKind, PieceId
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Material
from drafting.pieces.words import edge_name, piece_name

Amounts = NDArray[np.float64]
SIDES = (Side.RIGHT, Side.LEFT)
"""The sides of the halves where these differ."""


class BlockLength(StrEnum):
    """A length of the block, or a girth of its leg."""

    WAIST = "waist"
    HIP = "hip"
    THIGH = "thigh"
    CROTCH_SEAM = "crotch seam"
    INSEAM = "inseam"
    SIDE_SEAM = "side seam"
    KNEE = "knee"
    HEM = "hem"


LENGTHS: dict[BlockLength, str] = {of: of.value for of in BlockLength}
"""What they are called in print."""


@dataclass(frozen=True)
class LengthKey:
    """A length of one side, or of the whole body."""

    of: BlockLength
    side: Side | None = None

    @property
    def name(self) -> str:
        """What it is called in print, such as "right thigh"."""
        return of_side(LENGTHS[self.of], self.side)


@dataclass(frozen=True)
class PointKey:
    """A point of a panel of one side."""

    panel: str
    point: Drawn
    side: Side | None = None
    number: int = 0

    @property
    def name(self) -> str:
        """What it is called in print, such as "front, fork"."""
        return f"{of_side(self.panel, self.side)}, {drawn_name(self.point, self.number)}"


@dataclass(frozen=True)
class EdgeKey:
    """All edges of a kind of a piece."""

    piece: PieceId
    edge: EdgeKind

    @property
    def name(self) -> str:
        """What they are called in print, such as "front leg, inseam"."""
        return f"{piece_name(self.piece)}, {edge_name(self.edge)}"


Key = TypeVar("Key", LengthKey, PointKey, EdgeKey)


def halves_of(block: Block, count: int) -> tuple[Half, ...]:
    """Return the halves, as many as wanted: one mirrored pair stands for both sides."""
    return block.halves if len(block.halves) == count else block.halves * count


def block_lengths(block: Block) -> dict[BlockLength, Amounts]:
    """Return each length of the block, mm; of shape (2,) where both halves have their own, else (1,)."""
    p = block.proportions
    return {
        BlockLength.WAIST: np.array([block.waist_girth]),
        BlockLength.HIP: np.array([block.hip_girth]),
        BlockLength.THIGH: np.array([half.thigh_girth(p) for half in block.halves]),
        BlockLength.CROTCH_SEAM: np.array([block.crotch_length]),
        BlockLength.INSEAM: np.array([half.back.lower.inseam.length for half in block.halves]),
        BlockLength.SIDE_SEAM: np.array([half.front.side.length for half in block.halves]),
    }


def lengths_of(block: Block, count: int) -> dict[LengthKey, Amounts]:
    """Return the lengths of a block and the girths of knee and hem, each of shape (1,), mm.

    Args:
        block: The block.
        count: Of halves that are told apart: 2 gives right and left thigh.
    """
    levels = [(half, half.levels) for half in block.halves]
    lengths = block_lengths(block) | {
        BlockLength.KNEE: np.array([half.leg_girth(max(at.knee.mm, at.hem.mm)) for half, at in levels]),
        BlockLength.HEM: np.array([half.leg_girth(at.hem.mm) for half, at in levels]),
    }
    found: dict[LengthKey, Amounts] = {}
    for of, amounts in lengths.items():
        if count == 1 or of in (BlockLength.WAIST, BlockLength.HIP, BlockLength.CROTCH_SEAM):
            found[LengthKey(of)] = amounts[:1]
        else:
            sides = zip(SIDES, np.broadcast_to(amounts, count), strict=True)
            found |= {LengthKey(of, side): np.array([mm]) for side, mm in sides}
    return found


def points_of(block: Block, count: int) -> dict[PointKey, Amounts]:
    """Return the named points of both panels, each of shape (2,): x and y in the block, mm.

    Args:
        block: The block.
        count: Of halves that are told apart.
    """
    sides: tuple[Side | None, ...] = SIDES if count > 1 else (None,)
    return {
        PointKey(panel.name, it, side, number): np.array([point.x, point.y])
        for side, half in zip(sides, halves_of(block, count), strict=True)
        for panel in (half.front, half.back)
        for name, point in panel.points().items()
        for it, number in (drawn(name),)
    }


def edges_of(pattern: Pattern) -> dict[EdgeKey, Amounts]:
    """Return the length of every edge, each of shape (1,), mm; edges of one kind in a piece together.

    Interfacing is left away: it is cut like the piece that it stiffens.
    """
    lengths: dict[EdgeKey, Amounts] = {}
    for piece in pattern.pieces:
        if piece.cutting.material is Material.INTERFACING:
            continue
        for edge in piece.edges:
            key = EdgeKey(piece.id, edge.kind)
            lengths[key] = lengths.get(key, np.zeros(1)) + edge.length
    return lengths


def as_sides(edges: Mapping[EdgeKey, Amounts], known: Collection[EdgeKey]) -> dict[EdgeKey, Amounts]:
    """Return the edges, those of a mirrored pair as right and left where another version knows them so.

    Args:
        edges: Of one version.
        known: The edges of all versions.
    """
    found: dict[EdgeKey, Amounts] = {}
    for key, amount in edges.items():
        pair = (replace(key, piece=replace(key.piece, side=side)) for side in SIDES)
        sided = [] if key.piece.side else [one for one in pair if one in known]
        found |= dict.fromkeys(sided or [key], amount)
    return found


def moved(old: Mapping[Key, Amounts], new: Mapping[Key, Amounts]) -> dict[Key, Amounts]:
    """Return new less old of all that both have."""
    return {key: new[key] - amount for key, amount in old.items() if key in new}
