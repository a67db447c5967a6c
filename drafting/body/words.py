"""What the sides of the body are called in print; no code decides anything by these words."""

from __future__ import annotations

from drafting.body.measurements import Side

SIDES: dict[Side, str] = {side: side.value for side in Side}


def of_side(words: str, side: Side | None) -> str:
    """Return words with the side before them, such as "left thigh"; as they are where there is none."""
    return f"{SIDES[side]} {words}" if side else words
