"""Fitting the block: the means of the crotch seam and the width of the thigh, solved together.

One number moves every mean of the crotch seam in proportion until the whole seam is the body's. Where the
seam is divided into front and back is another matter: the seam of a garment lies forward of the point that
a person feels, so the split counts only as far as it differs from what the body lets expect, and moves the
tops of the centre lines, never the forks. The thigh only ever widens.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from drafting.base.construction_proportions import Ease, Proportions
from drafting.base.formula import Length, Reason, named
from drafting.block.alteration import Alteration
from drafting.block.crotch_curve import missing_turn
from drafting.block.leg_shape import LegShape
from drafting.block.means import LEAN, LEAN_NAME, MEANS, WIDEST, Fit, Moved
from drafting.block.panel import Levels, Panel, draw_panel, thigh_level
from drafting.block.panel_plans import amounts, back_plan, front_plan, lean_at_hip
from drafting.block.shares import Shares, share_widths
from drafting.body.body import Body
from drafting.body.sides import OneSide
from drafting.geometry.solve import Numbers, solve_within

CLOSE = 0.05
"""Fitted when crotch seam and thigh are this close, mm."""

_TOTAL, _THIGH = "number", "thigh"
"""What a fit can be asked to meet, by the field that meets it: crotch seam, girth of the thigh."""

_WEIGHTS = {_TOTAL: 1.0, _THIGH: 10.0}
"""Where a limit forces a choice the thigh comes first."""

_SLOPES = {_TOTAL: {_TOTAL: 45.0, _THIGH: 0.9}, _THIGH: {_TOTAL: 12.0, _THIGH: 1.3}}
"""First guesses of what each gains by the number and by a mm of the thigh's width (medians over surveyed
bodies)."""

_THIGH_MOST = 120.0
"""The thigh widens the draft by no more than this, mm (own judgement)."""

_THIGH_ROUNDS = 5
"""Rounds of the search for the thigh at most: each leaves a fraction of the miss."""

_FRONT_PART = (-83.0, 0.475, 0.056, 0.003)
"""The front part of a crotch length that a body lets expect, mm: so much, and shares of the whole crotch
length, of hip and of waist girth (least squares on the 2012 US Army survey, Natick TR-15/007, both sexes
alike)."""

_SPLIT_DEAD, _SPLIT_GAIN = 20.0, 0.5
"""A front part that differs from it by less changes nothing, mm: one spread of single persons about that
line. Of what is more the draft follows this share (own judgement)."""


def split_off(body: Body) -> float | None:
    """Return how much longer the front part of the crotch length is than the body lets expect, mm."""
    front, total = body.get("front_crotch_length"), body.get("total_crotch_length")
    if front is None or total is None:
        return None
    constant, of_total, of_hip, of_waist = _FRONT_PART
    expected = constant + of_total * total.mm
    expected += of_hip * body["hip_girth"].mm + of_waist * body["waist_girth"].mm
    return front.mm - expected


def followed(off: float) -> float:
    """Return how much of a split that differs by `off` mm the draft follows, mm."""
    return _SPLIT_GAIN * (max(off - _SPLIT_DEAD, 0.0) + min(off + _SPLIT_DEAD, 0.0))


@dataclass(frozen=True)
class BothPanels:
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


_NO_MOVE = 0.05
"""A means that moved by less, mm or degrees, did not move: the width of half a pencil's line (common
practice)."""


def moved(plain: BothPanels, fitted: BothPanels) -> tuple[Moved, ...]:
    """Return what the means moved from the one to the other, read from the drawn points."""
    names = {mean.key: mean.name for mean in MEANS} | {LEAN: LEAN_NAME}
    before, after = _drawn(plain), _drawn(fitted)
    amounts = ((key, after[key] - before[key]) for key in names)
    return tuple(Moved(key, names[key], by) for key, by in amounts if abs(by) >= _NO_MOVE)


def _drawn(lower: BothPanels) -> dict[str, float]:
    """Return where the means stand on the drawing, mm and degrees, larger where they lengthen the seam."""
    front, back = lower.front.construction, lower.back.construction
    return {
        "centre_back_height": back["centre at the waist"].y,
        "back_fork": back["fork"].x,
        "crotch_depth": -front["fork"].y,
        "front_fork": front["fork"].x,
        "centre_front_height": front["centre at the waist"].y,
        LEAN: math.degrees(lower.back.plan.lean),
    }


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


def on_side(whole: BothPanels, side: OneSide) -> BothPanels:
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
    return BothPanels(whole.body, own_levels, shares, front, back)


@dataclass(frozen=True)
class Fitter:
    """Drafts the lower panels for any fit of one body."""

    body: Body
    leg: LegShape
    ease: Ease
    proportions: Proportions
    _drafted: dict[Fit, BothPanels] = field(default_factory=dict, compare=False, repr=False)

    def draft(self, fit: Fit, alteration: Alteration | None = None) -> BothPanels:
        """Return the panels drawn with the means used as `fit` says, corrected where the toile showed it."""
        if alteration:
            return self._draft(fit, alteration)
        if fit not in self._drafted:
            self._drafted[fit] = self._draft(fit, None)
        return self._drafted[fit]

    def _draft(self, fit: Fit, alteration: Alteration | None) -> BothPanels:
        p = self.proportions
        wanted = amounts(self.body, p, fit)
        least = self.body["waist_height"].mm - self.body["inside_leg_height"].mm + p.depth_least
        depth = self.body["crotch_depth"].mm
        body = self.body.deepened(max(wanted.deepened, min(least - depth, 0.0)))
        levels = _levels(body, self.leg)
        shares = share_widths(body, self.ease, p, wanted.raised)
        in_front = front_plan(body, levels, self.leg, shares, p, fit, wanted)
        behind = back_plan(body, levels, self.leg, shares, p, fit, wanted)
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
            front = draw_panel(replace(in_front, fork_turn=in_front.fork_turn - turn), levels)
            back = draw_panel(replace(behind, fork_turn=behind.fork_turn + turn), levels)
        return BothPanels(body, levels, shares, front, back)

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
        aims: dict[str, float] = {}
        total, thigh = self.body.get("total_crotch_length"), self.body.get("thigh_girth")
        if total is not None:
            aims[_TOTAL] = total.mm + self.ease.crotch
        off = split_off(self.body)
        fit = self._meet(Fit(split=0.0 if off is None else followed(off)), aims)
        if thigh is None:
            return fit
        aims[_THIGH] = thigh.mm + self.ease.thigh
        if self._misses(fit, aims)[_THIGH] < -CLOSE:
            fit = self._meet(fit, aims)
        # Where the crotch seam is out of reach it pulls at the compromise; the thigh is never left short.
        for _ in range(_THIGH_ROUNDS):
            miss = self._misses(fit, aims)[_THIGH]
            if miss >= -CLOSE:
                break
            fit = replace(fit, thigh=min(fit.thigh - miss, _THIGH_MOST))
        return fit

    def _misses(self, fit: Fit, aims: Mapping[str, float]) -> dict[str, float]:
        """Return how much each is longer than it should be, mm."""
        lower = self.draft(fit)
        drawn = {_TOTAL: lower.front.crotch.length + lower.back.crotch.length}
        if _THIGH in aims:
            drawn[_THIGH] = lower.thigh(self.proportions)
        return {what: drawn[what] - aim for what, aim in aims.items()}

    def _meet(self, start: Fit, aims: Mapping[str, float]) -> Fit:
        """Return the fit moved, within its limits, until what is aimed at is met."""
        if not aims:
            return start
        moved = list(aims)
        weights = np.array([_WEIGHTS[what] for what in moved])
        slopes = np.array([[_SLOPES[what][by] for by in moved] for what in moved])

        def fit(x: Numbers) -> Fit:
            return replace(start, **{name: float(by) for name, by in zip(moved, x, strict=True)})

        def residual(x: Numbers) -> Numbers:
            return weights * list(self._misses(fit(x), aims).values())

        first = np.array([getattr(start, name) for name in moved])
        low = np.array([0.0 if name == _THIGH else -WIDEST for name in moved])
        high = np.array([_THIGH_MOST if name == _THIGH else WIDEST for name in moved])
        return fit(solve_within(residual, first, weights[:, None] * slopes, (low, high), enough=CLOSE))
