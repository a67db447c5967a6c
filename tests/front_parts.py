"""The front of a pair of jeans by itself: legs, pockets and fly, without band, back and belt loops."""

from __future__ import annotations

from drafting.block.block import Block
from styles.base.part import HalfToCut, Part
from styles.choice.style import Style
from styles.parts.fly import fly
from styles.parts.fly_length import fly_length
from styles.parts.front_leg import front_leg
from styles.parts.front_pocket import front_pocket


def front_parts(block: Block, style: Style) -> Part:
    """Return front legs, pockets and fly of the whole body."""
    part, length = Part(()), fly_length(block, style)
    for half in block.halves:
        leg = front_leg(HalfToCut(half), style, length)
        part += leg + front_pocket(HalfToCut(half), style, leg.pieces[0])
    return part + fly(block, style, {piece.id: piece for piece in part.pieces})
