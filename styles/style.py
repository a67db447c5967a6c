"""What a style decides, as data."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, kw_only=True)
class Allowances:
    """Seam allowances in mm, 0 for those who add their own (home-sewn jeans: 10 to 15, common practice)."""

    waist: float = 10
    side_seam: float = 15
    inseam: float = 15
    crotch_seam: float = 10
    hem: float = 30
    """Turned up twice by half: a finished hem of 15 (1.3 to 1.5 cm is usual, from memory)."""


@dataclass(frozen=True, kw_only=True)
class Style:
    """One style of jeans."""

    name: str
    allowances: Allowances = field(default_factory=Allowances)


STRAIGHT = Style(name="straight")
