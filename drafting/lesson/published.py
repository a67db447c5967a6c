"""What a published hand draft is: its amounts with their formulas, and its panels, for one body.

Lengths in mm; every panel has the plumb line through the point where
its centre line crosses hip level (a draft without a hip level: its corner) at x = 0 and its crotch line at
y = 0, the fork to the right, so that drafts can be laid over each other.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from drafting.base.formula import Length, mm, named
from drafting.block.leg_shape import LegShape
from drafting.body.body import Body
from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.geometry.solve import bisect


class Quantity(StrEnum):
    """An amount in which drafts are compared; the waist before its darts and pleats are closed."""

    CROTCH_DEPTH = "crotch depth"
    HIP_LEVEL_ABOVE_CROTCH = "hip level above crotch"
    FRONT_HIP_WIDTH = "front hip width"
    BACK_HIP_WIDTH = "back hip width"
    FRONT_FORK = "front fork"
    BACK_FORK = "back fork"
    BACK_FORK_DROP = "back fork drop"
    CURVE_OFF_CORNER = "curve off the corner"
    CENTRE_FRONT_IN_AT_WAIST = "centre front in at the waist"
    CENTRE_FRONT_BELOW_WAIST = "centre front below the waist"
    CENTRE_BACK_IN_AT_WAIST = "centre back in at the waist"
    CENTRE_BACK_ABOVE_WAIST = "centre back above the waist"
    FRONT_WAIST = "front waist"
    BACK_WAIST = "back waist"
    KNEE_BELOW_CROTCH = "knee below crotch"


QUANTITIES: dict[Quantity, str] = {quantity: quantity.value for quantity in Quantity}
"""What they are called in print, in the order of the table."""
CROTCH_AT_SIDE = "crotch at the side"
"""A point of some published drafts that ours has not."""
QUARTER_ELLIPSE = 0.5523
"""Handles of a curve whose depth is not stated, as a share of the way to the corner."""

_CLOSE = 1e-12
"""So near the handles of a curve of stated depth are found, as a share: rounding of what is drawn."""


@dataclass(frozen=True)
class PublishedPanel:
    """One panel: its named points and the lines between them."""

    points: Mapping[str, Point]
    lines: tuple[Path, ...]


@dataclass(frozen=True)
class SystemDraft:
    """A draft by one system.

    Attributes:
        name: Short name for tables.
        source: Where its formulas were read.
        amounts: Those of QUANTITIES that it states, with their formulas.
        front: The front.
        back: The back, None where the source was read for the front alone.
        remarks: What had to be read into the source.
    """

    name: str
    source: str
    amounts: Mapping[Quantity, Length]
    front: PublishedPanel
    back: PublishedPanel | None = None
    remarks: str = ""


@dataclass(frozen=True)
class Wearer:
    """The measurements that the published drafts start from, ready named."""

    waist: Length
    hip: Length
    rise: Length
    """Seated, or the heights' difference and what a seated rise is larger."""
    standing_rise: Length
    leg: Length
    waist_to_hip: Length
    knee: Length
    hem: Length

    @staticmethod
    def of(body: Body, leg: LegShape, seated_more: float) -> Wearer:
        """Return them from a body, the leg's widths and what a seated rise is larger than a standing, mm."""
        standing = body["waist_height"] - body["inside_leg_height"]
        rise = body.get("body_rise") or standing + mm(seated_more)
        return Wearer(
            waist=named("waist girth", body["waist_girth"].mm),
            hip=named("hip girth", body["hip_girth"].mm),
            rise=named("rise", rise.mm),
            standing_rise=named("side less leg", standing.mm),
            leg=named("leg", body["inside_leg_height"].mm),
            waist_to_hip=named("waist to hip", (body["waist_height"] - body["hip_height"]).mm),
            knee=named("knee girth", leg.knee.mm),
            hem=named("hem girth", leg.hem.mm),
        )


@dataclass
class PanelSketch:
    """Collects a panel."""

    points: dict[str, Point] = field(default_factory=dict)
    lines: list[Path] = field(default_factory=list)

    def at(self, name: str, x: float, y: float) -> None:
        """Set a point."""
        self.points[name] = Point(x, y)

    def join(self, *names: str) -> None:
        """Draw straight lines from point to point."""
        self.lines.append(Path.through([self.points[name] for name in names]))

    def curve(self, start: str, end: str, corner: Point, depth: float | None) -> None:
        """Draw the crotch curve from the centre line to the fork, `depth` off the corner where stated."""
        first, last = self.points[start], self.points[end]
        self.lines.append(Path((_hollow(first, last, corner, depth),)))

    def leg(self, crease: float, knee: float, half_knee: float, hem: float, half_hem: float) -> None:
        """Set knee and hem evenly about the crease, so far below the crotch line."""
        for name, y, half in (("knee", -knee, half_knee), ("hem", -hem, half_hem)):
            self.at(f"{name} at the inseam", crease + half, y)
            self.at(f"{name} at the side", crease - half, y)

    def done(self) -> PublishedPanel:
        """Return the panel."""
        return PublishedPanel(dict(self.points), tuple(self.lines))


def _hollow(start: Point, end: Point, corner: Point, depth: float | None) -> Cubic:
    """Return the curve along both legs of a corner whose nearest point lies `depth` off it (bisection)."""

    def bent(share: float) -> Cubic:
        return Cubic(start, start.towards(corner, share), end.towards(corner, share), end)

    if depth is None:
        return bent(QUARTER_ELLIPSE)

    def too_near(share: float) -> bool:
        return min((bent(share).point(t / 40) - corner).length for t in range(41)) <= depth

    return bent(bisect(too_near, 0.0, 1.0, within=_CLOSE))
