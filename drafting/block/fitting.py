"""Fitting the block: the means of the crotch seam and the width of the thigh, solved together.

With the total crotch length known, one number moves every mean of front and back in proportion; with its
front and back parts known, front and back move apart, but the total comes first: what one part cannot reach
the other makes up. The thigh only ever widens.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, fields, replace

import numpy as np

from drafting.base.formula import Length, Reason, named
from drafting.base.proportions import Ease, Proportions
from drafting.block.alteration import Alteration
from drafting.block.crotch_curve import missing_turn
from drafting.block.leg_shape import LegShape
from drafting.block.means import Fit
from drafting.block.panel import Levels, Panel, draw_panel, thigh_level
from drafting.block.plans import back_plan, front_plan, lean_at_hip
from drafting.block.shares import Shares, share_widths
from drafting.body.body import Body
from drafting.body.sides import OneSide
from drafting.geometry.solve import Numbers, solve_within

CLOSE = 0.05
"""Fitted when crotch seam and thigh are this close, mm."""

_TOTAL, _FRONT, _THIGH = range(3)
"""What a fit can be asked to meet: crotch seam, its front part, girth of the thigh; the rows below."""

_WEIGHTS = np.array([1.0, 0.05, 10.0])
"""Where a limit forces a choice the thigh comes first, the front part last."""

_SLOPES = np.array([[47.0, 120.0, 0.7], [37.0, 17.0, 0.2], [20.0, 46.0, 1.3]])
"""First guesses of what each gains by the s of the front, the s of the back and a mm of the thigh's width
(own trial: medians over surveyed bodies whose crotch seam is lengthened)."""

_MOVED = {"front": ("front",), "back": ("back",), "both": ("front", "back"), "thigh": ("thigh",)}
"""What a search can move: the fields of the fit, whose order is that of the columns above."""

_FIELDS = [field.name for field in fields(Fit)]

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
        if not by:
            return length
        return length + named(f"{side.side.value} side: {what} higher", by, Reason.SIDE_OF_BODY)

    own_levels = replace(
        levels,
        hem=own(levels.hem, side.floor, "floor"),
        side_hip=own(levels.hip, side.hip_rise, "hip"),
        side_waist=own(levels.waist, side.top, "waist"),
    )

    def panel(drawn: Panel, hip: Length, taken: float) -> Panel:
        c, plan = drawn.construction, drawn.plan
        lean = lean_at_hip(taken, own_levels.side_waist.mm - own_levels.side_hip.mm)
        drop = named(f"drop of the {plan.name} fork", c["fork level"].y - c["fork"].y, Reason.INSEAM)
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
    _drafted: dict[Fit, Lower] = field(default_factory=dict, compare=False, repr=False)

    def draft(self, fit: Fit, alteration: Alteration | None = None) -> Lower:
        """Return the panels drawn with the means used as `fit` says, corrected where the toile showed it."""
        if alteration:
            return self._draft(fit, alteration)
        if fit not in self._drafted:
            self._drafted[fit] = self._draft(fit, None)
        return self._drafted[fit]

    def _draft(self, fit: Fit, alteration: Alteration | None) -> Lower:
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
        back = draw_panel(behind, levels)
        if turn := missing_turn(back.crotch.curves[0].reversed()):
            # What the back lacks the front has to spare: together they are smooth across the inseam.
            front = draw_panel(replace(in_front, fork_turn=-turn), levels)
            back = draw_panel(replace(behind, fork_turn=turn), levels)
        return Lower(body, levels, shares, front, back)

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
        aims = self._crotch_aims()
        thigh = self.body.get("thigh_girth")
        fit = self._solve(Fit(), aims)
        if thigh is None:
            return fit
        aims[_THIGH] = thigh.mm + self.ease.thigh
        if self._misses(fit, aims)[_THIGH] < -CLOSE:
            fit = self._solve(fit, aims)
        # Where the crotch seam is out of reach it pulls at the compromise; the thigh is never left short.
        for _ in range(_THIGH_ROUNDS):
            miss = self._misses(fit, aims)[_THIGH]
            if miss >= -CLOSE:
                break
            fit = replace(fit, thigh=min(fit.thigh - miss, _THIGH_MOST))
        return fit

    def _crotch_aims(self) -> dict[int, float]:
        """Return what the crotch seam should measure, mm: nothing, the total, or the total and its front."""
        total = self.body.get("total_crotch_length")
        if total is None:
            return {}
        wanted = total.mm + self.ease.crotch
        front = self.body.get("front_crotch_length")
        return {_TOTAL: wanted} | ({} if front is None else {_FRONT: front.mm * wanted / total.mm})

    def _solve(self, start: Fit, aims: dict[int, float]) -> Fit:
        """Solve for all that is known; where the front part costs the total, the total comes first.

        Then the front goes to its limit and the back makes up, or, where that is at its limit too, the front
        gives way.
        """
        crotch = ("front", "back") if _FRONT in aims else ("both",) if _TOTAL in aims else ()
        thigh = ("thigh",) if _THIGH in aims else ()
        fit = self._meet(start, (*crotch, *thigh), aims)
        if _FRONT not in aims or abs(self._misses(fit, aims)[_TOTAL]) < CLOSE:
            return fit
        without_front = {what: aim for what, aim in aims.items() if what != _FRONT}
        at_limit = replace(fit, front=-1.0 if self._misses(fit, aims)[_FRONT] > 0 else 1.0)
        back = self._meet(at_limit, ("back", *thigh), without_front)
        apart = self._meet(back, ("front", *thigh), without_front)
        together = self._meet(Fit(), ("both", *thigh), without_front)

        def worth(fit: Fit) -> tuple[float, float]:
            misses = self._misses(fit, aims)
            return max(abs(misses[_TOTAL]), CLOSE), abs(misses[_FRONT])

        return min((apart, together), key=worth)

    def _misses(self, fit: Fit, aims: Mapping[int, float]) -> dict[int, float]:
        """Return how much each is longer than it should be, mm."""
        lower = self.draft(fit)
        front, back = lower.front.crotch.length, lower.back.crotch.length
        drawn = (front + back, front, lower.thigh(self.proportions) if _THIGH in aims else 0.0)
        return {what: drawn[what] - aim for what, aim in aims.items()}

    def _meet(self, start: Fit, moved: tuple[str, ...], aims: Mapping[int, float]) -> Fit:
        """Return the fit with what is `moved` moved, within its limits, until as many aims are met."""
        if not moved:
            return start
        rows = list(aims)
        weights, columns = _WEIGHTS[rows], [[_FIELDS.index(name) for name in _MOVED[what]] for what in moved]
        slopes = np.column_stack([_SLOPES[rows][:, column].sum(axis=1) for column in columns])

        def fit(x: Numbers) -> Fit:
            pairs = zip(moved, x, strict=True)
            return replace(start, **{name: float(by) for what, by in pairs for name in _MOVED[what]})

        def residual(x: Numbers) -> Numbers:
            return weights * list(self._misses(fit(x), aims).values())

        first = np.array([getattr(start, _MOVED[what][0]) for what in moved])
        low = np.array([0.0 if what == "thigh" else -1.0 for what in moved])
        high = np.array([_THIGH_MOST if what == "thigh" else 1.0 for what in moved])
        return fit(solve_within(residual, first, weights[:, None] * slopes, (low, high), enough=CLOSE))
