"""The finished widths of the leg: how a style cuts it, and what that makes on one body."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from drafting.base.construction_proportions import COMMON, ConstantTable, Ease, constant
from drafting.base.formula import Length, Reason, largest, mm, named

if TYPE_CHECKING:
    from drafting.body.body import Body

_SMALLEST_HIP, _LARGEST_HIP = 850.0, 1150.0
"""Hip girths, mm, that published hem widths are for; beyond them the rails move with the hip (common
practice, no source)."""


HEEL_OVER_ANKLE = 80.0
"""A heel that was not measured is taken to be this much larger than the ankle, mm: the hem of a
tapered leg in a handbook, from memory. Of 100 people 95 have more (2012 US Army survey, Natick TR-15/007)."""


@dataclass(frozen=True, kw_only=True)
class LegCut(ConstantTable):
    """How the leg is cut, as shares of the wearer's girths and lengths; the defaults are a straight leg.

    Attributes:
        knee_of_hip: Knee girth as a share of the hip girth; never less than knee and ease.
        hem_of_hip: Hem girth as a share of the hip girth; never less than heel and ease.
        hem_least: Rail: no narrower hem, mm.
        hem_most: Rail: no wider hem, mm, unless the body needs it.
        break_above_knee: How far above the wearer's knee the leg breaks, mm.
        hem_above_floor: Where a leg of full length ends, mm above the floor.
        hem_below_knee: Where a cropped leg ends, as a share of the way from knee to floor; 1 is full length.
        hem_above_knee: Where shorts end, as a share of the way from knee to crotch; 0 for a longer leg.
    """

    knee_of_hip: float = constant(
        0.46,
        "share",
        "straight leg: knee girth of hip girth",
        "work-pant sheet: knee 20 in for hip 39.5 is 0.51; tapered 44.5 cm for 32 in waist is 0.45",
    )
    hem_of_hip: float = constant(
        0.42,
        "share",
        "straight leg: hem girth of hip girth",
        "work-pant sheet: 0.44; straight openings 36 to 41 cm",
    )
    hem_least: float = constant(0, "mm", "no narrower hem", COMMON)
    hem_most: float = constant(math.inf, "mm", "no wider hem", COMMON)
    break_above_knee: float = constant(0, "mm", "the leg breaks at the wearer's own knee", COMMON)
    hem_above_floor: float = constant(0, "mm", "a leg of full length reaches the floor, barefoot", COMMON)
    hem_below_knee: float = constant(1, "share", "a full leg is not cropped", COMMON)
    hem_above_knee: float = constant(0, "share", "a full leg ends below the knee", COMMON)

    @property
    def short(self) -> bool:
        """Whether the leg ends above the knee."""
        return self.hem_above_knee > 0


@dataclass(frozen=True, kw_only=True)
class LegShape:
    """Finished girths of the leg and heights above the floor, mm.

    Attributes:
        knee: Girth where the leg breaks.
        hem: Girth at the hem; of shorts that of the knee, which the whole leg they are cut from has below.
        knee_height: Where the leg breaks.
        hem_height: Where it ends.
        hem_asked: The hem girth before the body had its say.
        knee_asked: The girth where the leg breaks, likewise.
    """

    knee: Length
    hem: Length
    knee_height: Length
    hem_height: Length
    hem_asked: float
    knee_asked: float

    @property
    def short(self) -> bool:
        """Whether it ends above the knee."""
        return self.hem_height.mm > self.knee_height.mm


def leg_shape(body: Body, ease: Ease, cut: LegCut) -> LegShape:
    """Return the leg on a body: by shares of the hip, never too tight for a known knee, calf and foot."""
    hip = body["hip_girth"]
    knees, asked = [hip * cut.knee_of_hip], _between_rails(hip * cut.hem_of_hip, hip.mm, cut)
    if knee := body.get("knee_girth"):
        knees.append(knee + named("knee ease", ease.knee, Reason.EASE))
    above = cut.break_above_knee
    breaks = body["knee_height"] + named("break above the knee", above) if above else body["knee_height"]
    knee_girth = largest(*knees)
    if cut.short:
        height = body["knee_height"] + (body["crotch_height"] - body["knee_height"]) * cut.hem_above_knee
        return LegShape(
            knee=knee_girth,
            hem=knee_girth,
            knee_height=breaks,
            hem_height=height,
            hem_asked=knees[0].mm,
            knee_asked=knees[0].mm,
        )
    hems = [asked]
    if cut.hem_of_hip > cut.knee_of_hip:
        # However full the knee, a flare stays one: half of what it was meant to be.
        hems.append(knee_girth * ((1 + cut.hem_of_hip / cut.knee_of_hip) / 2))
    if foot := foot_girth(body, ease):
        hems.append(foot)
    leg = LegShape(
        knee=knee_girth,
        hem=largest(*hems),
        knee_height=breaks,
        hem_height=_hem_height(body, cut),
        hem_asked=asked.mm,
        knee_asked=knees[0].mm,
    )
    return _over_the_calf(leg, body, ease)


def foot_girth(body: Body, ease: Ease) -> Length | None:
    """Return what a closed hem must measure to pass the foot, None where neither heel nor ankle is known."""
    if heel := body.get("heel_girth"):
        return heel + named("heel ease", ease.heel, Reason.EASE)
    ankle = body.get("ankle_girth")
    return ankle + mm(HEEL_OVER_ANKLE + min(ease.heel, 0.0)) if ankle else None


def _hem_height(body: Body, cut: LegCut) -> Length:
    if cut.hem_below_knee < 1:
        return body["knee_height"] * (1 - cut.hem_below_knee)
    return mm(cut.hem_above_floor)


def _between_rails(hem: Length, hip: float, cut: LegCut) -> Length:
    """Return the hem girth kept within the style's rails."""
    least = cut.hem_least * min(hip / _SMALLEST_HIP, 1.0)
    most = cut.hem_most * max(hip / _LARGEST_HIP, 1.0)
    if hem.mm < least:
        return named("narrowest hem of the style", least)
    return named("widest hem of the style", most) if hem.mm > most else hem


def _over_the_calf(leg: LegShape, body: Body, ease: Ease) -> LegShape:
    """Return the leg widened alike at knee and hem where its straight run would bind on the calf."""
    calf = body.get("calf_girth")
    if calf is None or body["calf_height"].mm <= leg.hem_height.mm:
        return leg
    share = (body["calf_height"] - leg.hem_height).mm / (leg.knee_height - leg.hem_height).mm
    at_calf = leg.hem.mm + share * (leg.knee.mm - leg.hem.mm)
    short = calf.mm + ease.calf - at_calf
    if short <= 0:
        return leg
    more = named("widening for the calf", short, Reason.CALF)
    return replace(leg, knee=leg.knee + more, hem=leg.hem + more)
