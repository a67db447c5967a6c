"""The thighs as a whole: room at mid-thigh, and the legs of a body whose sides differ.

Forks and crotch seam are alike on both sides, drawn for the fuller leg; a slimmer one goes in over its side
seams, and a side whose hip is narrower is not short.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from drafting.base.construction_proportions import Proportions
from drafting.block.fitting import CLOSE, BothPanels, Fitter, on_side
from drafting.block.means import Fit
from drafting.block.panel import Panel, PanelPlan, draw_panel
from drafting.body.sides import OneSide
from drafting.geometry.solve import Numbers, solve_within

_LEAST_HANDLE, _MOST_TURN = 0.1, 1.5
"""A slimmer thigh shortens the side seam's handle below the hip to this share of the drop to the knee, and
the seam leaves the hip at this multiple of its chord's angle, at most: beyond it turns in too sharply
under the hip (own trial)."""

_BY_SLIMMING = -12.0
"""First guess of what going all the way there does to the girth of the thigh, mm (an average body's
draft)."""

_BY_BULGE = 22.0
"""First guess of what side seams kept out all the way do to the girth at mid-thigh, mm (likewise)."""

_ROUNDS = 4
"""Rounds of widening at most: the second leaves less than a tenth of a millimetre."""


def fit_of(fitter: Fitter, sides: tuple[OneSide, ...]) -> Fit:
    """Return the fit of the whole body, with room for its mid-thigh and for both sides where they differ."""
    return _over_the_mid_thigh(fitter, _for_both_sides(fitter, fitter.solve(), sides))


def _for_both_sides(fitter: Fitter, fit: Fit, sides: tuple[OneSide, ...]) -> Fit:
    """Return the fit, wider where a side's narrower hip would leave its thigh short."""
    thigh = fitter.body.get("thigh_girth")
    if thigh is None or not sides:
        return fit
    p = fitter.proportions
    for _ in range(_ROUNDS):
        whole = fitter.draft(fit)
        girths = [on_side(whole, side).thigh(p) + side.slimmer for side in sides]
        short = thigh.mm + fitter.ease.thigh - min(girths)
        if short <= CLOSE:
            break
        ease = replace(fitter.ease, thigh=whole.thigh(p) + short - thigh.mm)
        fit = Fitter(fitter.body, fitter.leg, ease, p).solve()
    return fit


def _over_the_mid_thigh(fitter: Fitter, fit: Fit) -> Fit:
    """Return the fit, its side seams kept out until the mid-thigh has its ease, as far as they go."""
    body = fitter.body
    girth = body.get("mid_thigh_girth")
    if girth is None:
        return fit
    height, wanted = body["mid_thigh_height"].mm, girth.mm + fitter.ease.mid_thigh

    def miss(x: Numbers) -> Numbers:
        lower = fitter.draft(replace(fit, bulge=float(x[0])))
        return np.array([lower.front.width(height) + lower.back.width(height) - wanted])

    start = np.array([fit.side_bulge])
    if height < fitter.leg.hem_height.mm or fit.side_bulge == 1 or miss(start)[0] >= -CLOSE:
        return fit
    found = solve_within(miss, start, np.array([[_BY_BULGE]]), (start, np.ones(1)), enough=CLOSE)
    return replace(fit, bulge=float(found[0]))


def leg_of_side(whole: BothPanels, side: OneSide, p: Proportions) -> BothPanels:
    """Return the panels of one side, its thigh slimmer as it was measured and as its side seam allows."""
    lower, wanted = on_side(whole, side), whole.thigh(p) - side.slimmer
    if not side.slimmer or lower.thigh(p) <= wanted:
        return lower

    def slimmed(plan: PanelPlan, share: float) -> PanelPlan:
        handle, turn = plan.side_handle, plan.side_hip_turn
        return replace(
            plan,
            side_handle=handle + share * (min(_LEAST_HANDLE, handle) - handle),
            side_hip_turn=turn + share * (max(_MOST_TURN, turn) - turn),
        )

    def drawn(share: float) -> BothPanels:
        def again(panel: Panel) -> Panel:
            return draw_panel(slimmed(panel.plan, share), panel.levels)

        return replace(lower, front=again(lower.front), back=again(lower.back))

    def miss(x: Numbers) -> Numbers:
        return np.array([drawn(float(x[0])).thigh(p) - wanted])

    found = solve_within(
        miss, np.zeros(1), np.array([[_BY_SLIMMING]]), (np.zeros(1), np.ones(1)), enough=CLOSE
    )
    return drawn(float(found[0]))
