"""Fitting the block: the means of the crotch seam and the width of the thigh, solved together.

With the total crotch length known, one number moves every mean of front and back in proportion; with its
front and back parts known, front and back move apart, but the total comes first: what one part cannot reach
the other makes up. The thigh only ever widens.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from drafting.alteration import Alteration
from drafting.body import Body
from drafting.formula import Length, named
from drafting.leg_shape import LegShape
from drafting.means import Fit
from drafting.panel import Levels, Panel, draw_panel, thigh_level
from drafting.plans import back_plan, front_plan, lean_at_hip
from drafting.proportions import Ease, Proportions
from drafting.shares import Shares, share_widths
from drafting.sides import OneSide
from drafting.solve import Numbers, solve_within

CLOSE = 0.05
"""Fitted when crotch seam and thigh are this close, mm."""

_FRONT_SLOPE, _BACK_SLOPE, _THIGH_BY_S = 45.0, 80.0, 40.0
"""First guesses of the slopes, mm per unit of s or of thigh width (measured on an average body's draft)."""

_WEIGHTS = (1.0, 0.05, 10.0)
"""Of total, front part, thigh: where a limit forces a choice the thigh comes first, the front part last."""

_THIGH_MOST = 120.0
"""The thigh widens the draft by no more than this, mm (own judgement)."""

_THIGH_ROUNDS = 5
"""Rounds of the search for the thigh at most: each leaves a fraction of the miss."""


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


def _levels(body: Body, leg: LegShape) -> Levels:
    return Levels(
        waist=body["waist_height"],
        hip=body["hip_height"],
        crotch=body["crotch_height"],
        knee=leg.knee_height,
        hem=leg.hem_height,
        side_hip=body["hip_height"],
        side_waist=body["waist_height"],
    )


def on_side(whole: Lower, side: OneSide) -> Lower:
    """Return the panels of one side of an uneven body: centre lines, forks and crease as on the whole.

    The side's own hip lies at the side seam; its own leg length is made up below the knee.
    """
    levels, shares = whole.levels, whole.shares.widened(side.hip, side.side.value)

    def own(length: Length, by: float, what: str) -> Length:
        return length + named(f"{side.side.value} side: {what} higher", by) if by else length

    own_levels = replace(
        levels,
        hem=own(levels.hem, side.floor, "floor"),
        side_hip=own(levels.hip, side.hip_rise, "hip"),
        side_waist=own(levels.waist, side.top, "waist"),
    )

    def panel(drawn: Panel, hip: Length, taken: float) -> Panel:
        c, plan = drawn.construction, drawn.plan
        lean = lean_at_hip(taken, own_levels.side_waist.mm - own_levels.side_hip.mm)
        drop = named(f"drop of the {plan.name} fork", c["fork level"].y - c["fork"].y)
        crease = plan.crease + (hip - plan.hip) / 2
        return draw_panel(replace(plan, hip=hip, crease=crease, drop=drop, side_lean=lean), own_levels)

    front = panel(whole.front, shares.front_hip, shares.suppression.front_side)
    back = panel(whole.back, shares.back_hip, shares.suppression.back_side)
    return Lower(whole.body, own_levels, shares, front, back)


@dataclass(frozen=True)
class Fitter:
    """Drafts the lower panels for any fit of one body."""

    body: Body
    leg: LegShape
    ease: Ease
    proportions: Proportions

    def draft(self, fit: Fit, alteration: Alteration | None = None) -> Lower:
        """Return the panels drawn with the means used as `fit` says, corrected where the toile showed it."""
        p = self.proportions
        least = self.body["waist_height"].mm - self.body["inside_leg_height"].mm + p.depth_least
        depth = self.body["crotch_depth"].mm
        body = self.body.deepened(max(fit.depth, min(least - depth, 0.0)))
        levels = _levels(body, self.leg)
        shares = share_widths(body, self.ease, p, fit)
        in_front = front_plan(body, levels, self.leg, shares, p, fit)
        behind = back_plan(body, levels, self.leg, shares, p, fit)
        if alteration:
            toile = levels
            body, shares = alteration.altered_body(body), alteration.altered_shares(levels, shares)
            levels = _levels(body, alteration.altered_leg())
            in_front = alteration.altered_front(in_front, toile, shares)
            behind = alteration.altered_back(behind, toile, shares)
        front = draw_panel(in_front, levels)
        behind = replace(behind, inseam_length=front.inseam.length - p.inseam_ease)
        return Lower(body, levels, shares, front, draw_panel(behind, levels))

    def corrected(self, fit: Fit, alteration: Alteration) -> Fit:
        """Return the fit of the toile, its thigh wider by what the correction asks for.

        The crotch seam is left as the toile had it: only what was seen is changed.
        """
        more = alteration.changes.thigh
        if not more:
            return fit

        def girth(x: Numbers) -> Numbers:
            wider = replace(fit, thigh=fit.thigh + float(x[0]))
            return np.array([self.draft(wider, alteration).thigh(self.proportions)])

        wanted = girth(np.zeros(1)) + more
        bounds = np.zeros(1), np.array([max(_THIGH_MOST - fit.thigh, more)])
        added = solve_within(lambda x: girth(x) - wanted, np.array([more]), np.eye(1), bounds, enough=CLOSE)
        return replace(fit, thigh=fit.thigh + float(added[0]))

    def solve(self) -> Fit:
        """Return the fit that meets the body's crotch length and thigh as far as the limits allow."""
        target = self.crotch_targets()
        thigh = self.body.get("thigh_girth")
        fit = self._solve_crotch(target, None)
        if thigh is None:
            return fit
        wanted = thigh.mm + self.ease.thigh
        if self._thigh_miss(fit, wanted) < -CLOSE:
            fit = self._solve_crotch(target, wanted)
        # Where the crotch seam is out of reach it pulls at the compromise; the thigh is never left short.
        for _ in range(_THIGH_ROUNDS):
            miss = self._thigh_miss(fit, wanted)
            if miss >= -CLOSE:
                break
            fit = replace(fit, thigh=min(fit.thigh - miss, _THIGH_MOST))
        return fit

    def _solve_crotch(self, target: tuple[float, ...], thigh: float | None) -> Fit:
        """Solve for all that is known; where the front part costs the total, the total comes first.

        Then the front goes to its limit and the back makes up, or, where that is at its limit too, the front
        gives way.
        """
        fit = self._solve(target, thigh)
        if len(target) < 2 or abs(self._misses(fit, target)[0]) < CLOSE:
            return fit
        at_limit = replace(fit, front=-1.0 if self._misses(fit, target)[1] > 0 else 1.0)
        back = self._with_total(at_limit, "back", target, thigh)
        both = self._with_total(back, "front", target, thigh)

        def worth(fit: Fit) -> tuple[float, float]:
            total, front = self._misses(fit, target)
            return max(abs(total), CLOSE), abs(front)

        return min((both, self._solve(target[:1], thigh)), key=worth)

    def _with_total(self, fit: Fit, part: str, target: tuple[float, ...], thigh: float | None) -> Fit:
        """Return the fit with one part moved, within its limits, until the total is met; and the thigh."""
        names = (part,) if thigh is None else (part, "thigh")
        size, weight = len(names), _WEIGHTS[2]
        slope, share = (_FRONT_SLOPE, 1 / 3) if part == "front" else (_BACK_SLOPE, 2 / 3)
        slopes = np.array([[slope, 0.7], [weight * _THIGH_BY_S * share, weight * 0.9]])[:size, :size]

        def moved(x: Numbers) -> Fit:
            return replace(fit, **{name: float(value) for name, value in zip(names, x, strict=True)})

        def residual(x: Numbers) -> Numbers:
            total, _ = self._misses(moved(x), target)
            return np.array([total] if thigh is None else [total, weight * self._thigh_miss(moved(x), thigh)])

        start = np.array([getattr(fit, name) for name in names])
        return moved(solve_within(residual, start, slopes, _bounds(1, size), enough=CLOSE))

    def _misses(self, fit: Fit, target: tuple[float, ...]) -> tuple[float, float]:
        """Return how much longer than wanted the total and its front part are, mm."""
        lower = self.draft(fit)
        front = lower.front.crotch.length
        return front + lower.back.crotch.length - target[0], front - target[1]

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
    """Return first guesses of the slopes of (total, front part, thigh) by (front s, back s, thigh width)."""
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
