"""Makes the corrections of a fitting on the amounts of the toile's draft, before anything is drawn.

The toile was drawn with levels, shares and plans; a cutter's move is a change of these, and the draft then
draws every line fair and trues every seam as ever. What the crotch seam was fitted to stays as it was on the
toile: what the wearer saw is added to it and not fitted away again.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from drafting.base.construction_proportions import Ease
from drafting.base.formula import Length, Reason, named
from drafting.block.leg_shape import LegShape
from drafting.block.panel import Levels, PanelPlan
from drafting.block.panel_plans import lean_at_hip
from drafting.block.shares import Shares
from drafting.body.body import Body, Origin
from drafting.body.corrections import Changes
from drafting.geometry.points import Point

CORRECTED = "corrected"
"""How the formulas of the steps begin the name of what a correction adds."""

FORK_OF_SEAT = 0.6
"""The back fork follows a seat wedge by this share of it: 0.6 to 1.5 for wedges of 1 to 2.5 (from memory)."""


def _plus(length: Length, what: str, by: float) -> Length:
    """Return a length with what a correction adds to it, under its own name in the formula."""
    return length + named(f"{CORRECTED}: {what}", by, Reason.TOILE) if by else length


@dataclass(frozen=True)
class Alteration:
    """The corrections of one toile.

    Attributes:
        changes: What is changed.
        leg: The leg of the toile; what is let in below the hem of a short one is no change.
    """

    changes: Changes
    leg: LegShape

    # Lengths: the heights of everything above a cut.

    def altered_leg(self) -> LegShape:
        """Return the leg with its knee where the corrections put it; every girth stays."""
        if self.leg.short:
            return self.leg
        knee = _plus(self.leg.knee_height, "length at the calf", self.changes.at_calf)
        return replace(self.leg, knee_height=_plus(knee, "length at the knee", self.changes.at_knee / 2))

    def altered_body(self, body: Body) -> Body:
        """Return the body whose levels lie where those of the corrected pattern do.

        The hem stays where it is, and what lies above a cut rises by what is let in there. A girth stays with
        its level.
        """
        raised = self._raise_at(body)
        whole = raised(body["crotch_height"].mm)
        above = {"waist_height": whole + self.changes.rise, "top_hip_height": whole + self.changes.rise}
        values = dict(body.values)
        for key, value in body.values.items():
            if key == "crotch_depth":
                by = self.changes.rise
            elif key.endswith("_height"):
                by = above.get(key, raised(value.length.mm))
            else:
                continue
            if by:
                length = _plus(value.length, value.length.name, by).called(value.length.name)
                values[key] = replace(value, length=length, origin=Origin.CORRECTED, spread=0.0)
        return replace(body, values=values)

    def _raise_at(self, body: Body) -> Callable[[float], float]:
        c = self.changes
        if self.leg.short:
            places, raised = [self.leg.hem_height.mm, body["crotch_height"].mm], [0.0, c.at_thigh]
        else:
            levels = self.leg.hem_height, self.leg.knee_height, body["crotch_height"]
            places = [level.mm for level in levels]
            raised = [0.0, c.at_calf + c.at_knee / 2, c.at_calf + c.at_knee + c.at_thigh]
        return lambda height: float(np.interp(height, places, raised))

    # Widths of the trunk.

    def gained(self, levels: Levels, shares: Shares) -> float:
        """Return how much wider the front waist becomes by the hinge of the abdomen, mm of one half.

        Hinged at the side seam, the front's top swings outwards there; its centre is put back to its slant,
        and so what the swing moved is gained.
        """
        return (levels.waist - levels.hip).mm * self.changes.abdomen / shares.front_hip.mm

    def altered_shares(self, levels: Levels, shares: Shares) -> Shares:
        """Return the shares of hip and waist; `levels` and `shares` are those of the toile."""
        c = self.changes
        hip, waist = c.hip / 4, c.waist / 4
        gained = self.gained(levels, shares)
        # Swung about its hip at the side, the back's top leans out there as much as its centre leans in.
        seat = (levels.waist - levels.hip).mm * c.seat / shares.back_hip.mm
        taken = shares.suppression
        return replace(
            shares,
            front_hip=_plus(shares.front_hip, "front hip", hip),
            back_hip=_plus(shares.back_hip, "back hip", hip),
            front_waist=shares.front_waist + waist + gained,
            back_waist=shares.back_waist + waist - c.gape / 2,
            suppression=replace(
                taken,
                front_side=taken.front_side + hip - waist - gained,
                back_side=taken.back_side + hip - waist - seat,
                dart=taken.dart + c.gape / 2,
            ),
        )

    def without_hinge(self) -> Alteration:
        """Return the corrections less that of the abdomen, for the length of the side seam it hinges on."""
        return replace(self, changes=replace(self.changes, abdomen=0.0))

    def altered_ease(self, ease: Ease, gained: float) -> Ease:
        """Return the room that the wearer wants after the fitting at waist and hip."""
        c = self.changes
        return replace(ease, waist=ease.waist + c.waist - c.gape + 2 * gained, hip=ease.hip + c.hip)

    # The panels.

    def altered_front(self, plan: PanelPlan, levels: Levels, shares: Shares) -> PanelPlan:
        """Return the front; `plan` and `levels` are those of the toile, `shares` those after corrections."""
        height, c = (levels.waist - levels.hip).mm, self.changes
        top = Point(-(height + plan.top.mm) * math.tan(plan.lean), height + plan.top.mm)
        swung = _swung(top, plan.hip, c.abdomen)
        plan = replace(
            plan,
            fork=_plus(plan.fork, "front fork", c.front_fork),
            crease=_plus(plan.crease, "crease kept from the front fork", -c.front_fork / 2),
            top=_plus(plan.top, "centre front for the abdomen", swung.y - top.y),
            lean=math.atan2(-top.x, swung.y + c.rise),
        )
        return self._alike(plan, height, shares.front_hip, shares.suppression.front_side)

    def altered_back(self, plan: PanelPlan, levels: Levels, shares: Shares) -> PanelPlan:
        """Return the back, likewise."""
        height, c = (levels.waist - levels.hip).mm, self.changes
        fork = _plus(
            _plus(plan.fork, "back fork", c.back_fork), "back fork for the seat", FORK_OF_SEAT * c.seat
        )
        top = Point(-(height + plan.top.mm) * math.tan(plan.lean), height + plan.top.mm)
        swung = _swung(top, plan.hip, c.seat)
        hip_point = Point(0.0, 0.0)
        at = swung.towards(hip_point, c.sway / (swung - hip_point).length)
        plan = replace(
            plan,
            fork=fork,
            crease=_plus(plan.crease, "crease kept from the back fork", (plan.fork - fork).mm / 2),
            top=_plus(
                _plus(plan.top, "centre back for the seat", swung.y - top.y), "sway back", at.y - swung.y
            ),
            lean=math.atan2(-at.x, at.y + c.rise),
        )
        return self._alike(plan, height, shares.back_hip, shares.suppression.back_side)

    def _alike(self, plan: PanelPlan, height: float, hip: Length, side: float) -> PanelPlan:
        """Return what front and back have in common: the lower leg swings alike.

        The crease keeps its place, though hip and fork move the middle of the width that it stands on.
        """
        crease = _plus(plan.crease, f"{plan.name} crease kept from the hip", (hip - plan.hip).mm / 2)
        return replace(
            plan,
            hip=hip,
            crease=crease,
            side_lean=lean_at_hip(side, height + self.changes.rise),
            swing=self._swing(),
        )

    def _swing(self) -> float:
        """Return how far the hem swings outwards when a slash at the knee opens, mm."""
        if self.leg.short:
            return 0.0
        shin = (self.leg.knee_height - self.leg.hem_height).mm
        return self.changes.knees * shin / (self.leg.knee.mm / 2)


def _swung(top: Point, width: Length, by: float) -> Point:
    """Return where the centre line's end comes to lie when a slash at hip level opens.

    Args:
        top: The end, from the hip point.
        width: From the hip point to the hinge at the side seam.
        by: How far the slash opens at the hip point, mm; negative folds over.
    """
    if not by:
        return top
    return top.turned(Point(-width.mm, 0.0), math.asin(by / width.mm))
