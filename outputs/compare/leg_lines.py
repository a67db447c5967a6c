"""The finished legs of several styles, drawn so that they can be laid over each other."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from drafting.block.block import Block, Half
from drafting.block.panel import Levels
from drafting.block.point_names import Drawn
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from outputs.canvas.canvas import STYLE_ROLES, Role
from styles.base.hem import hem_line
from styles.choice.style import Style
from styles.top.upper import back_at, front_at


@dataclass(frozen=True)
class PanelOutline:
    """A front or a back with its side seam on the left.

    Attributes:
        outline: From its upper edge down to the hem and up again, without allowance, the dart open; x from
            the crease, y above the floor, mm.
        hem: The corner of hem and side seam.
    """

    outline: Path
    hem: Point

    @cached_property
    def reach(self) -> tuple[float, float]:
        """How far it reaches from the crease to the side seam's side and to the fork's, mm."""
        x = self.outline.flatten(1.0)[:, 0]
        return -float(x.min()), float(x.max())

    @cached_property
    def top(self) -> float:
        """Its highest place above the floor, mm."""
        return float(self.outline.flatten(1.0)[:, 1].max())


@dataclass(frozen=True)
class LegLines:
    """The leg of one style; the right one where the sides of the body differ.

    Attributes:
        style: Its name.
        role: How its lines are drawn among those of several styles.
        levels: Heights of its level lines.
        front: The front, up to the upper edge of the waistband.
        back: The back, likewise.
    """

    style: str
    role: Role
    levels: Levels
    front: PanelOutline
    back: PanelOutline


def leg_lines(block: Block, style: Style, number: int) -> LegLines:
    """Return the leg of the style that is the `number`th of several, counted from 0, on its block."""
    half, style = block.halves[0], style.on(block.body)
    return LegLines(style.name, STYLE_ROLES[number], half.levels, _front(half, style), _back(half, style))


def _front(half: Half, style: Style) -> PanelOutline:
    top, inseam = front_at(half.front, style.below_waist), half.front.lower.inseam
    hem = hem_line(top.side, inseam)
    ring = top.waist + top.side + hem + inseam + top.crotch
    return _from_crease(ring, top.side.end, half.front.points()[Drawn.CREASE].x)


def _back(half: Half, style: Style) -> PanelOutline:
    top, inseam = back_at(half.back, style.below_waist), half.back.lower.inseam
    hem = hem_line(top.side, inseam)
    ring = (top.outer or top.inner) + top.side + hem + inseam + top.crotch
    if top.outer:
        ring += top.inner
    return _from_crease(ring, top.side.end, half.back.points()[Drawn.CREASE].x)


def _from_crease(outline: Path, hem: Point, crease: float) -> PanelOutline:
    def move(p: Point) -> Point:
        return Point(p.x - crease, p.y)

    return PanelOutline(outline.moved(move), move(hem))
