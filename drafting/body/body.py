"""The body, complete: every value the draft needs, each saying where it came from.

Heights are millimetres above the floor, barefoot. The waist is the level at which the waist girth was taken,
be it the natural waist or where the jeans are to sit.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import Enum

from drafting.base.construction_proportions import Proportions
from drafting.base.errors import Severity
from drafting.base.findings import Finding
from drafting.base.formula import Length, Reason, mm, named
from drafting.body.measurements import MEASUREMENTS, Measurements, Population
from drafting.body.regressions import ABOVE_NAVEL, ARMY, REGRESSIONS, CrotchGuess, crotch_guess


class Origin(Enum):
    """Where a value comes from."""

    MEASURED = "measured"
    DERIVED = "worked out"
    """Exactly from other measurements."""
    ESTIMATED = "estimated"
    """From a survey, with a spread."""
    CONSTRUCTION = "by construction"
    """From the proportions of the draft."""
    CORRECTED = "corrected at the fitting"
    """Moved by what the wearer saw on the toile."""


@dataclass(frozen=True)
class Value:
    """A length of the body with its origin.

    Attributes:
        length: The value and its formula.
        origin: Where it comes from.
        spread: One standard deviation of a guess, mm; 0 unless estimated.
        source: Which measurements or which survey, for the report.
    """

    length: Length
    origin: Origin
    spread: float = 0.0
    source: str = ""


@dataclass(frozen=True)
class Body:
    """All lengths by their key; a key is absent when it was neither measured nor can be told.

    Always present: waist_girth, hip_girth, inside_leg_height, waist_height, crotch_depth, crotch_height,
    hip_height, knee_height.
    """

    values: Mapping[str, Value]
    findings: tuple[Finding, ...] = ()
    crotch_guess: CrotchGuess | None = None
    """What other people's crotch lengths let expect, where the wearer's own and the sex are not known."""

    def __getitem__(self, key: str) -> Length:
        """Return a length; raises KeyError when the body does not tell it."""
        return self.values[key].length

    def get(self, key: str) -> Length | None:
        """Return a length, None when the body does not tell it."""
        value = self.values.get(key)
        return value.length if value else None

    def deepened(self, by: float) -> Body:
        """Return the body with the crotch line `by` mm lower (negative: higher)."""
        if not by:
            return self
        depth = (self["crotch_depth"] + named("deepened for the fit", by, Reason.CROTCH_SEAM)).called(
            "fitted crotch depth"
        )
        height = (self["waist_height"] - depth).called("crotch height")
        fitted = {
            "crotch_depth": replace(self.values["crotch_depth"], length=depth),
            "crotch_height": replace(self.values["crotch_height"], length=height),
        }
        return replace(self, values={**self.values, **fitted})


_CALF_OF_KNEE, _ANKLE_OF_KNEE = 0.72, 0.25
"""Heights of girths that are seldom measured, as shares of knee height (from memory; they place report lines
only)."""

_RISES_AGREE = 30.0
"""A seated and a standing rise agree within this, mm (common practice, no source)."""


def complete(given: Measurements, proportions: Proportions) -> Body:
    """Return the body that `given` tells, with estimates where the wearer asked for them.

    Expects measurements that passed their checks (`refuse_meaningless`); out of range values are used as they
    are.
    """
    values: dict[str, Value] = {}
    for key, spec in MEASUREMENTS.items():
        measured = getattr(given, key, None)
        if measured is not None:
            values[key] = Value(named(spec.term, measured), Origin.MEASURED)

    def derive(key: str, length: Length, origin: Origin, source: str = "") -> None:
        values.setdefault(key, Value(length.called(key.replace("_", " ")), origin, 0.0, source))

    def known() -> dict[str, Length]:
        return {key: value.length for key, value in values.items()}

    p = proportions
    findings: list[Finding] = []
    if "waist_height" not in values:
        height = known()["inside_leg_height"] + known()["body_rise"] - mm(p.seated_more_than_standing)
        derive("waist_height", height, Origin.DERIVED, "inside leg height and body rise")
    _split_crotch(values)
    findings += _unused_part(values)
    above, unsure = ABOVE_NAVEL[given.waist_taken_at]
    for guess in REGRESSIONS[given.estimate_like]:
        length = guess.guess(known(), above)
        if guess.target not in values and length is not None:
            variance = guess.spread_at(unsure) ** 2 + sum(
                (factor * values[key].spread) ** 2 for key, factor in guess.factors.items()
            )
            values[guess.target] = Value(length, Origin.ESTIMATED, math.sqrt(variance), guess.source)

    guessed = None
    if given.estimate_like is Population.NOBODY and "total_crotch_length" not in values:
        guessed = crotch_guess(known(), above, unsure)
    if guessed and guessed.agreed:
        length = named("total crotch length", guessed.mean)
        source = f"{ARMY}, women and men alike"
        values["total_crotch_length"] = Value(length, Origin.ESTIMATED, guessed.spread, source)

    depth, origin, depth_findings = _crotch_depth(known(), p)
    findings += depth_findings
    values["crotch_depth"] = Value(depth.called("crotch depth"), origin)
    derive("crotch_height", known()["waist_height"] - known()["crotch_depth"], origin)
    lengths = known()
    if "waist_to_hip" in lengths:
        derive(
            "hip_height", lengths["waist_height"] - lengths["waist_to_hip"], Origin.DERIVED, "waist to hip"
        )
    derive(
        "hip_height",
        lengths["crotch_height"] + lengths["crotch_depth"] / p.hip_level_divisor,
        Origin.CONSTRUCTION,
    )
    derive("knee_height", lengths["inside_leg_height"] / 2 + mm(p.knee_over_mid_inseam), Origin.CONSTRUCTION)
    lengths = known()
    if "waist_to_top_hip" in lengths:
        top = lengths["waist_height"] - lengths["waist_to_top_hip"]
    else:
        top = (lengths["waist_height"] + lengths["hip_height"]) / 2
    derive("top_hip_height", top, Origin.DERIVED, "midway, ISO 8559-1")
    derive(
        "mid_thigh_height",
        (lengths["inside_leg_height"] + lengths["knee_height"]) / 2,
        Origin.DERIVED,
        "ISO 8559-1",
    )
    derive("calf_height", lengths["knee_height"] * _CALF_OF_KNEE, Origin.CONSTRUCTION)
    derive("ankle_height", lengths["knee_height"] * _ANKLE_OF_KNEE, Origin.CONSTRUCTION)
    return Body(values, tuple(findings), guessed)


def _split_crotch(values: dict[str, Value]) -> None:
    """Complete total, front and back crotch length from any two of them."""
    total, front, back = (values.get(f"{part}_crotch_length") for part in ("total", "front", "back"))
    if front and back and not total:
        values["total_crotch_length"] = Value(
            front.length + back.length, Origin.DERIVED, 0.0, "front and back part"
        )
    elif total and back and not front:
        values["front_crotch_length"] = Value(
            total.length - back.length, Origin.DERIVED, 0.0, "total less back part"
        )
    elif total and front and not back:
        values["back_crotch_length"] = Value(
            total.length - front.length, Origin.DERIVED, 0.0, "total less front part"
        )


def _unused_part(values: Mapping[str, Value]) -> list[Finding]:
    """Say when one part of the crotch length was given and no total to set it against."""
    if "total_crotch_length" in values:
        return []
    text = (
        "The {part} crotch length, {{0}}, is not used: where front and back part is felt says little without "
        "the whole. Measure the total crotch length, from waist to waist between the legs, as well."
    )
    return [
        Finding(
            "crotch-part-unused",
            Severity.WARNING,
            f"{part}_crotch_length",
            text.format(part=part),
            (values[key].length.mm,),
            values[key].length.mm,
            None,
        )
        for part in ("front", "back")
        if (key := f"{part}_crotch_length") in values
    ]


def long_trunk(known: Mapping[str, Length] | Body, p: Proportions) -> Length:
    """Return how much longer the trunk is than the hip girth lets expect; negative where it is shorter."""
    usual = known["hip_girth"] * p.trunk_of_hip + mm(p.trunk_usual)
    return (known["waist_height"] - known["inside_leg_height"] - usual).called("long trunk")


def _crotch_depth(known: Mapping[str, Length], p: Proportions) -> tuple[Length, Origin, list[Finding]]:
    """Return the depth of the crotch line under the waist, and what there is to say about it.

    A seated rise is trusted unless it contradicts the heights: then the heights decide, because a crotch line
    above the body's own crotch cannot be worn; the two readings are shown and never averaged.
    """
    standing = known["waist_height"] - known["inside_leg_height"]
    rises = long_trunk(known, p) * p.trunk_in_depth
    if abs(rises.mm) > p.trunk_in_depth_most:
        rises = mm(math.copysign(p.trunk_in_depth_most, rises.mm))
    from_heights = standing + mm(p.depth_over_standing_rise) - rises
    seated = known.get("body_rise")
    if seated is None:
        return from_heights, Origin.DERIVED, []
    depth = seated + mm(p.depth_over_seated_rise)
    miss = seated.mm - (standing.mm + p.seated_more_than_standing)
    if abs(miss) <= _RISES_AGREE:
        if depth.mm >= standing.mm + p.depth_least:
            return depth, Origin.MEASURED, []
        return standing + mm(p.depth_least), Origin.DERIVED, []
    text = (
        "body rise {0} and waist height less inside leg height {1} do not agree (a seated rise is some {2} "
        "larger): drafted from the heights; please measure both again"
    )
    amounts = (seated.mm, standing.mm, p.seated_more_than_standing)
    finding = Finding("rise-disagrees", Severity.WARNING, "body_rise", text, amounts, seated.mm, standing.mm)
    return from_heights, Origin.DERIVED, [finding]
