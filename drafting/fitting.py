"""Fitting the block: the means of the crotch seam and the width of the thigh, solved together.

With the total crotch length known, one number moves every mean of front and back in proportion; with its front and
back parts known, front and back move apart, but the total comes first: what one part cannot reach the other makes
up. The thigh only ever widens.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from drafting.body import Body
from drafting.formula import Length, named
from drafting.leg_shape import LegShape
from drafting.means import Fit
from drafting.panel import Levels, Panel, draw_panel, thigh_level
from drafting.plans import Shares, back_plan, front_plan, share_widths
from drafting.proportions import Ease, Proportions
from drafting.sides import OneSide
from drafting.solve import Numbers, solve_within

CLOSE = 0.05
"""Fitted when crotch seam and thigh are this close, mm."""

# First guesses of the slopes, mm per unit of s or of thigh width (measured on the draft of an average body).
_FRONT_SLOPE, _BACK_SLOPE, _THIGH_BY_S = 45.0, 80.0, 40.0
# Total, front part, thigh: where a limit forces a choice the thigh comes first, the front part last.
_WEIGHTS = (1.0, 0.05, 10.0)
_THIGH_MOST = 120.0
_THIGH_ROUNDS = 5


@dataclass(frozen=True)
class Lower:
    """The two panels without their waist lines, with the shares they were drawn by."""

    body: Body
    levels: Levels
    shares: Shares
    front: Panel
    back: Panel

    def thigh(self, p: Proportions) -> float:
        """Return the girth of the pattern just below the fork, mm."""
        y = thigh_level(self.levels, self.back.construction["fork"].y, p)
        return self.front.width(y) + self.back.width(y)


def _levels(body: Body, leg: LegShape, side: OneSide | None) -> Levels:
    """Return the level lines; knee and hem stand on the side's own floor."""

    def own(length: Length, by: float) -> Length:
        return length + named("this side", by) if by else length

    floor, hip_rise, top = (side.floor, side.hip_rise, side.top) if side else (0.0, 0.0, 0.0)
    return Levels(
        waist=body["waist_height"],
        hip=body["hip_height"],
        crotch=body["crotch_height"],
        knee=own(body["knee_height"], floor),
        hem=own(leg.hem_height, floor),
        side_hip=own(body["hip_height"], hip_rise),
        side_waist=own(body["waist_height"], top),
    )


@dataclass(frozen=True)
class Fitter:
    """Drafts the lower panels for any fit of one body."""

    body: Body
    leg: LegShape
    ease: Ease
    proportions: Proportions

    def draft(self, fit: Fit, side: OneSide | None = None) -> Lower:
        """Return the panels drawn with the means used as `fit` says, of one side when the two differ."""
        p = self.proportions
        least = self.body["waist_height"].mm - self.body["inside_leg_height"].mm + p.depth_least
        depth = self.body["crotch_depth"].mm
        body = self.body.deepened(max(fit.depth, min(least - depth, 0.0)))
        levels = _levels(body, self.leg, side)
        shares = share_widths(body, self.ease, p, fit).widened(side.hip if side else 0.0)
        front = draw_panel(front_plan(body, levels, self.leg, shares, p, fit), levels)
        inseam = front.inseam.length - p.inseam_ease
        back = draw_panel(back_plan(body, levels, self.leg, shares, p, fit, inseam=inseam), levels)
        return Lower(body, levels, shares, front, back)

    def solve(self) -> Fit:
        """Return the fit that meets the body's crotch length and thigh as far as the limits allow."""
        target = self.crotch_targets()
        thigh = self.body.get("thigh_girth")
        fit = self._solve(target, None)
        if thigh is None:
            return fit
        wanted = thigh.mm + self.ease.thigh
        if self._thigh_miss(fit, wanted) < -CLOSE:
            fit = self._solve(target, wanted)
        # Where the crotch seam is out of reach it pulls at the compromise; the thigh is never left short.
        for _ in range(_THIGH_ROUNDS):
            miss = self._thigh_miss(fit, wanted)
            if miss >= -CLOSE:
                break
            fit = replace(fit, thigh=min(fit.thigh - miss, _THIGH_MOST))
        return fit

    def _thigh_miss(self, fit: Fit, wanted: float) -> float:
        return self.draft(fit).thigh(self.proportions) - wanted

    def crotch_targets(self) -> tuple[float, ...]:
        """Return what the crotch seam should measure, mm: nothing, (total,) or (total, front part)."""
        total = self.body.get("total_crotch_length")
        if total is None:
            return ()
        wanted = total.mm + self.ease.crotch
        front = self.body.get("front_crotch_length")
        return (wanted,) if front is None else (wanted, front.mm * wanted / total.mm)

    def _solve(self, target: tuple[float, ...], thigh: float | None) -> Fit:
        """Solve for the means, and for the thigh when its wanted girth is given."""
        parts, size = len(target), len(target) + (thigh is not None)
        if size == 0:
            return Fit()

        def residual(x: Numbers) -> Numbers:
            lower = self.draft(_as_fit(x, parts))
            front, back = lower.front.crotch.length, lower.back.crotch.length
            drawn = zip((front + back, front), target, _WEIGHTS, strict=False)
            crotch = [(length - wanted) * weight for length, wanted, weight in drawn]
            return np.array(
                crotch if thigh is None else [*crotch, _WEIGHTS[2] * (lower.thigh(self.proportions) - thigh)]
            )

        return _as_fit(
            solve_within(residual, np.zeros(size), _slopes(parts, size), _bounds(parts, size), enough=CLOSE),
            parts,
        )


def _as_fit(x: Numbers, parts: int) -> Fit:
    values = [float(v) for v in x]
    thigh = values[parts] if len(values) > parts else 0.0
    return Fit(front=values[0], back=values[parts - 1], thigh=thigh) if parts else Fit(thigh=thigh)


def _slopes(parts: int, size: int) -> Numbers:
    """Return the first guess of the slopes of (total, front part, thigh) by (front s, back s, thigh width)."""
    f, b, t = _FRONT_SLOPE, _BACK_SLOPE, _THIGH_BY_S
    thigh = np.array([t, 0.9]) * _WEIGHTS[2]
    if parts == 2:
        full = np.array(
            [[f, b, 0.7], [f * _WEIGHTS[1], 0.3, 0.01], [thigh[0] / 3, thigh[0] * 2 / 3, thigh[1]]]
        )
    elif parts == 1:
        full = np.array([[f + b, 0.7], thigh])
    else:
        full = np.array([thigh[1:]])
    return full[:size, :size]


def _bounds(parts: int, size: int) -> tuple[Numbers, Numbers]:
    low, high = np.full(size, -1.0), np.ones(size)
    low[parts:], high[parts:] = 0.0, _THIGH_MOST
    return low, high
