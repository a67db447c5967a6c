"""The block: front and back of one leg, fitted to the body, without any style."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from drafting.body import Body, complete
from drafting.construction import Step
from drafting.findings import Finding
from drafting.fitting import Fitter, Lower
from drafting.formula import mm, named
from drafting.leg_shape import LegShape, straight_leg
from drafting.means import Fit
from drafting.measurement_checks import refuse_meaningless
from drafting.measurements import Measurements
from drafting.panel import Levels, thigh_level
from drafting.plans import Shares, dart_count, dart_length
from drafting.proportions import Ease, Proportions
from drafting.waist_line import BlockPanel, draw_waist


@dataclass(frozen=True)
class Block:
    """Front and back jeans block at the waist level of the measurements.

    Attributes:
        body: What is known of the wearer, the crotch depth as fitted.
        ease: Room added.
        proportions: Constants of the draft.
        leg: Finished widths of knee and hem.
        fit: How far the means of fitting are used.
        shares: How hip and waist are shared over front and back.
        levels: Heights of the level lines.
        front: The front panel, drawn as the right front seen from outside.
        back: The back panel, drawn with the fork to the right like the front: the left back.
    """

    body: Body
    ease: Ease
    proportions: Proportions
    leg: LegShape
    fit: Fit
    shares: Shares
    levels: Levels
    front: BlockPanel
    back: BlockPanel

    @property
    def steps(self) -> tuple[Step, ...]:
        """Every step of the draft, front then back."""
        return self.front.steps + self.back.steps

    @property
    def waist_girth(self) -> float:
        """The sewn waist, darts closed, mm of full girth."""
        return 2 * (self.front.waist_length + self.back.waist_length)

    @property
    def crotch_length(self) -> float:
        """The whole crotch seam from front waist to back waist, mm."""
        return self.front.panel.crotch.length + self.back.panel.crotch.length

    def trunk_girth(self, y: float) -> float:
        """Return the girth of both halves at a height from hip level to waist, between the centre lines, mm."""
        return 2 * (self.front.trunk_width(y) + self.back.trunk_width(y))

    def leg_girth(self, y: float) -> float:
        """Return the girth of one leg at a height from hem to just below the fork, mm."""
        return self.front.panel.width(y) + self.back.panel.width(y)

    @property
    def thigh_level(self) -> float:
        """The height just below both forks at which the thigh is measured on the pattern."""
        return thigh_level(self.levels, self.back.points()["fork"].y, self.proportions)

    def figures(self) -> dict[str, Any]:
        """Return the numbers of the block in cm, see `drafting.figures`."""
        from drafting.figures import block_figures

        return block_figures(self)

    def findings(self) -> tuple[Finding, ...]:
        """Return what there is to say about the fit, see `drafting.fit_report`."""
        from drafting.fit_report import fit_findings

        return fit_findings(self)


def draft_block(
    measurements: Measurements,
    *,
    ease: Ease | None = None,
    proportions: Proportions | None = None,
    fitted: bool = True,
) -> Block:
    """Return the block drafted for the measurements.

    Args:
        measurements: In millimetres; waist girth, hip girth, inside leg height and one of waist height or body
            rise are needed.
        ease: Room to add; the defaults are those of close jeans.
        proportions: Constants of the draft.
        fitted: False leaves crotch seam and thigh as the proportions give them, for comparison.

    Raises:
        DraftRefused: a measurement is missing or no draft could be meant by it.
    """
    refuse_meaningless(measurements)
    ease, p = ease or Ease(), proportions or Proportions()
    body = complete(measurements, p)
    leg = straight_leg(body, ease, p)
    fitter = Fitter(body, leg, ease, p)
    fit = fitter.solve() if fitted else Fit()
    return finish(fitter.draft(fit), leg, ease, p, fit)


def finish(lower: Lower, leg: LegShape, ease: Ease, p: Proportions, fit: Fit) -> Block:
    """Return the block with the waist lines drawn on its lower panels."""
    shares, taken = lower.shares, lower.shares.suppression
    front = draw_waist(
        lower.front,
        side_in=taken.front_side,
        waist=shares.front_waist,
        dart=mm(0),
        darts=0,
        dart_length=mm(0),
        side_length=None,
    )
    back = draw_waist(
        lower.back,
        side_in=taken.back_side,
        waist=shares.back_waist,
        dart=named("dart", taken.dart),
        darts=dart_count(taken.dart, p),
        dart_length=dart_length(lower.levels, p),
        side_length=front.side.length,
    )
    return Block(lower.body, ease, p, leg, fit, shares, lower.levels, front, back)
