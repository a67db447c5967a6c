"""Shapes of the back pocket, one module each: its function `outline` takes a `PocketSize`.

A module that is put here is offered under its own name as `back_pocket.shape`.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry.paths import Path
from drafting.geometry.points import Point


@dataclass(frozen=True)
class PocketSize:
    """A back pocket as it is drafted, mm.

    Attributes:
        opening: Width at the top.
        height: Height of the sides.
        taper: How much narrower it is at the bottom of the sides, each side.
        point: How far it hangs below them, at the lowest.
        from_centre: Its inner top corner from the centre back, along the upper edge of the leg.
        below_yoke: Its top edge below the yoke seam.
        shape: Which of the shapes it has.
    """

    opening: float
    height: float
    taper: float
    point: float
    from_centre: float
    below_yoke: float
    shape: str = "pointed"


@dataclass(frozen=True)
class PocketOutline:
    """The sewn outline below the opening, whose middle is the origin; y is up, so all of it lies below 0.

    It stays within the opening's width and within height and point below it, so that it fits on the leg.

    Attributes:
        left: The left side, downwards from half the opening to the left of the origin.
        bottom: From the left side to the right one.
        right: The right side, upwards.
    """

    left: Path
    bottom: Path
    right: Path

    @staticmethod
    def alike(left: Path, half_bottom: Path) -> PocketOutline:
        """Return an outline whose right half mirrors the left one; `half_bottom` ends in the middle."""

        def other(path: Path) -> Path:
            return path.moved(lambda p: Point(-p.x, p.y)).reversed()

        return PocketOutline(left, half_bottom + other(half_bottom), other(left))

    @property
    def ring(self) -> Path:
        """The whole outline, counter-clockwise, back along the opening to its start."""
        return self.left + self.bottom + self.right + Path.through([self.right.end, self.left.start])
