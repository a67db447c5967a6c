"""The finished widths of the leg: the block's own straight leg, or what a style asks for."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.formula import Length, largest, mm, named
from drafting.proportions import Ease, Proportions


@dataclass(frozen=True, kw_only=True)
class LegShape:
    """Finished girths of the leg and the height of its hem above the floor, mm.

    `hem_asked` is the hem girth before the body had its say.
    """

    knee: Length
    hem: Length
    hem_height: Length
    hem_asked: float


def straight_leg(body: Body, ease: Ease, p: Proportions) -> LegShape:
    """Return the block's leg: by proportion of the hip, never too tight for a known knee, calf and heel."""
    hip = body["hip_girth"]
    knees, hems = [hip * p.knee_share], [hip * p.hem_share]
    if knee := body.get("knee_girth"):
        knees.append(knee + named("knee ease", ease.knee))
    if heel := body.get("heel_girth"):
        hems.append(heel + named("heel ease", ease.heel))
    leg = LegShape(knee=largest(*knees), hem=largest(*hems), hem_height=mm(0), hem_asked=hems[0].mm)
    return _over_the_calf(leg, body, ease)


def _over_the_calf(leg: LegShape, body: Body, ease: Ease) -> LegShape:
    """Return the leg widened alike at knee and hem where its straight run would bind on the calf."""
    calf = body.get("calf_girth")
    if calf is None:
        return leg
    share = (body["calf_height"] - leg.hem_height).mm / (body["knee_height"] - leg.hem_height).mm
    at_calf = leg.hem.mm + share * (leg.knee.mm - leg.hem.mm)
    short = calf.mm + ease.calf - at_calf
    if short <= 0:
        return leg
    more = named("widening for the calf", short)
    return replace(leg, knee=leg.knee + more, hem=leg.hem + more)
