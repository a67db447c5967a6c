"""The block: front and back of one leg, fitted to the body, without any style."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from drafting.base.construction_proportions import Ease, Proportions
from drafting.block.alteration import Alteration
from drafting.block.fitting import BothPanels, Fitter, moved
from drafting.block.leg_shape import LegCut, LegShape, leg_shape
from drafting.block.means import Fit, Moved
from drafting.block.panel import Levels, thigh_level
from drafting.block.shares import Shares, dart_count, dart_length
from drafting.block.step_record import Step
from drafting.block.thighs import fit_of, leg_of_side
from drafting.block.waist_line import BlockPanel, draw_waist
from drafting.body.body import Body, complete
from drafting.body.checks import refuse_meaningless
from drafting.body.correction_checks import refuse_meaningless_corrections
from drafting.body.corrections import CORRECTIONS, changes_of
from drafting.body.measurements import Measurements, Side
from drafting.body.sides import OneSide, known_of_both, two_sides


@dataclass(frozen=True)
class Half:
    """Front and back of one half of the body.

    Attributes:
        side: Which side it is for; None when one mirrored pair serves both.
        levels: Heights of its level lines.
        front: The front panel, drawn as the right front seen from outside.
        back: The back panel, drawn with the fork to the right like the front: the left back.
        slimmer: How much slimmer its thigh was measured than that of the other side, mm.
    """

    side: Side | None
    levels: Levels
    front: BlockPanel
    back: BlockPanel
    slimmer: float = 0.0

    def leg_girth(self, y: float) -> float:
        """Return the girth of the leg at a height from hem to just below the fork, mm."""
        return self.front.lower.width(y) + self.back.lower.width(y)

    def thigh_level(self, p: Proportions) -> float:
        """Return the height just below both forks at which the thigh is measured on the pattern."""
        return thigh_level(self.levels, self.back.points()["fork"].y, p)

    def thigh_girth(self, p: Proportions) -> float:
        """Return the girth of the leg there, mm."""
        return self.leg_girth(self.thigh_level(p))


@dataclass(frozen=True)
class Block:
    """Front and back jeans block at the waist level of the measurements.

    Attributes:
        body: What is known of the wearer, the crotch depth as fitted.
        ease: Room added.
        proportions: Constants of the draft.
        leg: Finished widths of knee and hem.
        fit: How far the means of fitting are used.
        shares: How hip and waist of an even half are shared over front and back.
        halves: One for a mirrored pair, or the right and the left half of a body whose sides differ.
        moved: What the means of fitting moved against the proportions alone; of the toile where there is one.
        corrections: What was seen on the toile and is corrected here, mm by key of `CORRECTIONS`.
        toile: The block before the corrections; None where there are none.
    """

    body: Body
    ease: Ease
    proportions: Proportions
    leg: LegShape
    fit: Fit
    shares: Shares
    halves: tuple[Half, ...]
    moved: tuple[Moved, ...] = ()
    corrections: Mapping[str, float] = field(default_factory=dict)
    toile: Block | None = None

    @property
    def front(self) -> BlockPanel:
        """The front; of the right half where the sides differ."""
        return self.halves[0].front

    @property
    def back(self) -> BlockPanel:
        """The back; of the right half where the sides differ."""
        return self.halves[0].back

    @property
    def levels(self) -> Levels:
        """The level lines; of the right half where the sides differ."""
        return self.halves[0].levels

    @property
    def steps(self) -> tuple[Step, ...]:
        """Every step of the draft, front then back, half by half."""
        return tuple(
            step for half in self.halves for panel in (half.front, half.back) for step in panel.steps
        )

    def _both(self, of_half: Callable[[Half], float]) -> float:
        """Return an amount summed over both halves of the body."""
        return sum(of_half(half) for half in self.halves) * 2 / len(self.halves)

    @property
    def waist_girth(self) -> float:
        """The sewn waist, darts closed, mm of full girth."""
        return self._both(lambda half: half.front.waist_length + half.back.waist_length)

    @property
    def crotch_length(self) -> float:
        """The whole crotch seam from front waist to back waist, mm."""
        return self.front.lower.crotch.length + self.back.lower.crotch.length

    def trunk_girth(self, y: float) -> float:
        """Return the girth of both halves between the centre lines, mm, at a height from hip to waist."""
        return self._both(lambda half: half.front.trunk_width(y) + half.back.trunk_width(y))

    @property
    def hip_girth(self) -> float:
        """The girth at hip level between the centre lines, mm; a side's own level changes its seam only."""
        return self._both(lambda half: half.front.lower.plan.hip.mm + half.back.lower.plan.hip.mm)

    def leg_girth(self, y: float) -> float:
        """Return the girth of one leg at a height from hem to just below the fork, mm; of the tighter leg.

        Below the hem of a leg that stands on a higher floor its hem counts. A leg whose thigh is slimmer than
        the other's is left out: see `GirthLine` for its own.
        """
        return min(half.leg_girth(max(y, half.levels.hem.mm)) for half in self.halves if not half.slimmer)

    @property
    def thigh_girth(self) -> float:
        """The girth of one leg just below the fork, mm; of the tighter leg, a slimmer one left out."""
        return min(half.thigh_girth(self.proportions) for half in self.halves if not half.slimmer)

    @property
    def thigh_level(self) -> float:
        """The height just below both forks at which the thigh is measured on the pattern."""
        return self.halves[0].thigh_level(self.proportions)


def draft_block(
    measurements: Measurements,
    *,
    ease: Ease | None = None,
    proportions: Proportions | None = None,
    cut: LegCut | None = None,
    corrections: Mapping[str, float] | None = None,
    fitted: bool = True,
) -> Block:
    """Return the block drafted for the measurements.

    Args:
        measurements: In millimetres; waist girth, hip girth, inside leg height and one of waist height or
            body rise are needed.
        ease: Room to add; the defaults are those of close jeans.
        proportions: Constants of the draft.
        cut: How the leg is cut; straight by default.
        corrections: What was seen on the toile of this very block, mm by key of `CORRECTIONS`; made all at
            once, whatever their order.
        fitted: False leaves crotch seam and thigh as the proportions give them, for comparison.

    Raises:
        DraftRefused: a measurement is missing, or no draft could be meant by it or by a correction.
    """
    refuse_meaningless(measurements)
    refuse_meaningless_corrections(corrections or {})
    ease, p = ease or Ease(), proportions or Proportions()
    measurements = known_of_both(measurements)
    body = complete(measurements, p)
    leg = leg_shape(body, ease, cut or LegCut())
    fitter = Fitter(body, leg, ease, p)
    sides = two_sides(measurements, body)
    fit = fit_of(fitter, sides) if fitted else Fit()
    whole = fitter.draft(fit)
    moves = moved(fitter.draft(Fit()), whole)
    block = Block(whole.body, ease, p, leg, fit, whole.shares, _halves(whole, sides, p), moves)
    return _corrected(block, fitter, sides, corrections) if corrections else block


def _corrected(
    toile: Block, fitter: Fitter, sides: tuple[OneSide, ...], amounts: Mapping[str, float]
) -> Block:
    """Return the block of a toile with what was seen on it corrected."""
    alteration = Alteration(changes_of(amounts), toile.leg)
    fit, p = fitter.corrected(toile.fit, alteration), toile.proportions
    whole = fitter.draft(fit, alteration)
    gained = alteration.gained(toile.levels, toile.shares)
    lengths: tuple[float, ...] = ()
    if gained:
        hinged = _halves(fitter.draft(fit, alteration.without_hinge()), sides, p)
        lengths = tuple(half.front.side.length for half in hinged)
    return Block(
        body=whole.body,
        ease=alteration.altered_ease(toile.ease, gained),
        proportions=p,
        leg=alteration.altered_leg(),
        fit=fit,
        shares=whole.shares,
        halves=_halves(whole, sides, p, lengths),
        moved=toile.moved,
        corrections={key: amounts[key] for key in CORRECTIONS if key in amounts},
        toile=toile,
    )


def _halves(
    whole: BothPanels, sides: tuple[OneSide, ...], p: Proportions, lengths: tuple[float, ...] = ()
) -> tuple[Half, ...]:
    """Return the halves; with `lengths` the side seam of each measures that much, mm."""
    if not sides:
        return (_finished(whole, None, p, side_length=lengths[0] if lengths else None),)
    if not lengths:
        return _both_sides(whole, sides, p)
    return tuple(
        _finished(leg_of_side(whole, side, p), side, p, side_length=length)
        for side, length in zip(sides, lengths, strict=True)
    )


def _both_sides(whole: BothPanels, sides: tuple[OneSide, ...], p: Proportions) -> tuple[Half, ...]:
    """Return right and left; where the sides themselves were measured, their seams differ as the tape did."""
    lowers = [leg_of_side(whole, side, p) for side in sides]
    halves = [_finished(lower, side, p) for lower, side in zip(lowers, sides, strict=True)]
    if not any(side.longer for side in sides):
        return tuple(halves)
    lengths = [half.front.side.length for half in halves]
    # The tape ran over the curve of each hip, so heights alone do not give the difference.
    miss = (sides[0].longer - sides[1].longer - lengths[0] + lengths[1]) / 2
    return tuple(
        _finished(lower, side, p, side_length=length)
        for lower, side, length in zip(lowers, sides, (lengths[0] + miss, lengths[1] - miss), strict=True)
    )


def _finished(
    lower: BothPanels, side: OneSide | None, p: Proportions, *, side_length: float | None = None
) -> Half:
    """Return a half with the waist lines drawn on its lower panels, the side seam as long as wanted."""
    shares, taken = lower.shares, lower.shares.suppression
    front = draw_waist(
        lower.front, side_in=taken.front_side, waist=shares.front_waist, side_length=side_length
    )
    back = draw_waist(
        lower.back,
        side_in=taken.back_side,
        waist=shares.back_waist,
        take_up=taken.dart,
        darts=dart_count(taken.dart, p),
        dart_length=dart_length(lower.levels.waist - lower.levels.hip, p),
        side_length=front.side.length,
        slack=front.slack_left,
    )
    if side is None:
        return Half(None, lower.levels, front, back)
    return Half(side.side, lower.levels, front, back, side.slimmer)
