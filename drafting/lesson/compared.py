"""Our block, by its proportions alone, set beside the published drafts of the same body."""

from __future__ import annotations

from drafting.base.formula import Length, named
from drafting.block.block import Block
from drafting.block.point_names import Drawn
from drafting.block.waist_line import BlockPanel
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector
from drafting.lesson.published import PublishedPanel, Quantity, SystemDraft, Wearer
from drafting.lesson.published_systems import SYSTEMS

OWN = "this draft"
DRAWN = "as drawn"
"""Name of an amount of ours that follows from other steps."""


def compared(block: Block) -> tuple[SystemDraft, ...]:
    """Return our draft first, then each published one for the same body and the same leg widths.

    Args:
        block: Drafted with `fitted=False`, so that proportions are set beside proportions.
    """
    wearer = Wearer.of(block.body, block.leg, block.proportions.seated_more_than_standing)
    return (own_draft(block), *(system(wearer) for system in SYSTEMS))


def own_draft(block: Block) -> SystemDraft:
    """Return our block in the terms in which drafts are compared."""
    levels, front, back = block.levels, block.front, block.back
    amounts: dict[Quantity, Length] = {
        Quantity.CROTCH_DEPTH: block.body["crotch_depth"],
        Quantity.HIP_LEVEL_ABOVE_CROTCH: levels.hip - levels.crotch,
        Quantity.FRONT_HIP_WIDTH: front.lower.plan.hip,
        Quantity.BACK_HIP_WIDTH: back.lower.plan.hip,
        Quantity.FRONT_FORK: front.lower.plan.fork,
        Quantity.BACK_FORK: back.lower.plan.fork,
        Quantity.BACK_FORK_DROP: named(DRAWN, levels.crotch.mm - back.points()[Drawn.FORK].y),
        Quantity.CURVE_OFF_CORNER: named(DRAWN, _off_the_corner(front)),
        Quantity.CENTRE_FRONT_IN_AT_WAIST: named(DRAWN, -front.points()[Drawn.CENTRE_AT_WAIST].x),
        Quantity.CENTRE_FRONT_BELOW_WAIST: named(
            DRAWN, levels.waist.mm - front.points()[Drawn.CENTRE_AT_WAIST].y
        ),
        Quantity.CENTRE_BACK_IN_AT_WAIST: named(DRAWN, -back.points()[Drawn.CENTRE_AT_WAIST].x),
        Quantity.CENTRE_BACK_ABOVE_WAIST: named(
            DRAWN, back.points()[Drawn.CENTRE_AT_WAIST].y - levels.waist.mm
        ),
        Quantity.FRONT_WAIST: named(DRAWN, front.waist_length),
        Quantity.BACK_WAIST: named(DRAWN, back.waist_length + sum(dart.width for dart in back.darts)),
        Quantity.KNEE_BELOW_CROTCH: levels.crotch - levels.knee,
    }
    return SystemDraft(
        OWN, "the block's own proportions, before it is fitted", amounts, _panel(front), _panel(back)
    )


def _off_the_corner(panel: BlockPanel) -> float:
    corner = panel.points()[Drawn.CROTCH_CORNER]
    curve = panel.lower.crotch.curves[0]
    return min((curve.point(t / 80) - corner).length for t in range(81))


def _panel(panel: BlockPanel) -> PublishedPanel:
    down = Vector(0, -panel.lower.levels.crotch.mm)

    def moved(p: Point) -> Point:
        return p + down

    hem = Path.through([panel.points()[end] for end in (Drawn.HEM_AT_SIDE, Drawn.HEM_AT_INSEAM)])
    paths = [*panel.waist, panel.side, panel.lower.inseam, panel.lower.crotch, hem]
    paths += [Path.through([dart.inner, dart.tip, dart.outer]) for dart in panel.darts]
    points = {name: moved(p) for name, p in panel.points().items()}
    return PublishedPanel(points, tuple(path.moved(moved) for path in paths))
