"""The parts round the waist of one pair of jeans, put together without the legs."""

from __future__ import annotations

from drafting.block.block import Block
from drafting.pieces.pieces import Piece
from styles.base.part import HalfToCut, Part
from styles.choice.style import Style
from styles.parts.belt_loops import loop_count, loop_places
from styles.parts.shaped_band import WaistNotches, centre_back_of_band, shaped_band
from styles.parts.straight_band import HalfWaist
from styles.top.upper import back_top, front_band


def loops_of(block: Block, style: Style) -> list[HalfWaist]:
    """Return the waist seam under a shaped band, half by half, with its belt loops."""
    halves = []
    for half in block.halves:
        front = front_band(half.front, style.below_waist, style.band_height).lower.length
        back = back_top(half.back, style).yoke.waist.length
        halves.append(HalfWaist(front, back, loop_places(front, back, loop_count(block.waist_girth))))
    return halves


def whole_band(block: Block, style: Style, *, loops: bool = True) -> Part:
    """Return a shaped band with every seam of its own."""
    parts = Part(())
    for half, waist in zip(block.halves, loops_of(block, style), strict=True):
        parts += shaped_band(HalfToCut(half), style, waist.notches if loops else WaistNotches())
    return parts + Part((), centre_back_of_band(block, {piece.id: piece for piece in parts.pieces}))


def reach(piece: Piece) -> tuple[float, float]:
    """Return width and height of a piece's sew line, mm."""
    x0, y0, x1, y1 = piece.polygon.bounds
    return x1 - x0, y1 - y0
