"""A wearer's measurements as they were taken, each of them optional, in millimetres."""

from dataclasses import dataclass, fields
from enum import Enum

from drafting.body.measurement_table import MEASUREMENTS as MEASUREMENTS
from drafting.body.measurement_table import Kind as Kind
from drafting.body.measurement_table import MeasurementSpec as MeasurementSpec
from drafting.body.measurement_table import Need as Need
from drafting.body.measurement_table import Sides as Sides

__all__ = [
    "MEASUREMENTS",
    "Kind",
    "MeasurementSpec",
    "Measurements",
    "Need",
    "Population",
    "Side",
    "SideMeasurements",
    "Sides",
    "WaistLevel",
    "term_of",
]


class WaistLevel(Enum):
    """Where the waist girth and every length that starts at the waist were taken."""

    NATURAL = "natural"
    """The natural waist: where the body is narrowest, or where it folds sideways."""
    WORN = "worn"
    """Where the wearer wants the top edge of the jeans to sit."""


class Population(Enum):
    """Whose averages may stand in for what was not measured."""

    WOMEN = "women"
    MEN = "men"
    NOBODY = "nobody"
    """Nobody's: the draft falls back on its own construction."""


class Side(Enum):
    """A side of the body, as the wearer names it."""

    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, kw_only=True)
class SideMeasurements:
    """What was measured on one side of a body whose sides differ, in millimetres; see `MEASUREMENTS`."""

    inside_leg_height: float | None = None
    outside_leg_length: float | None = None
    hip_height: float | None = None
    thigh_girth: float | None = None
    half_hip_arc: float | None = None


@dataclass(frozen=True, kw_only=True)
class Measurements:
    """What was measured on one body, in millimetres; None is not measured. See `MEASUREMENTS` for each.

    Making one never raises: `drafting.body.checks` says what is missing, impossible or unusual.
    A value in `left` or `right` takes the place of the body's own value on that side.
    """

    stature: float | None = None
    waist_girth: float | None = None
    top_hip_girth: float | None = None
    hip_girth: float | None = None
    thigh_girth: float | None = None
    mid_thigh_girth: float | None = None
    knee_girth: float | None = None
    calf_girth: float | None = None
    ankle_girth: float | None = None
    heel_girth: float | None = None
    waist_height: float | None = None
    hip_height: float | None = None
    knee_height: float | None = None
    calf_height: float | None = None
    inside_leg_height: float | None = None
    body_rise: float | None = None
    waist_to_hip: float | None = None
    waist_to_top_hip: float | None = None
    outside_leg_length: float | None = None
    total_crotch_length: float | None = None
    front_crotch_length: float | None = None
    back_crotch_length: float | None = None
    front_waist_arc: float | None = None
    front_hip_arc: float | None = None
    waist_taken_at: WaistLevel = WaistLevel.NATURAL
    estimate_like: Population = Population.NOBODY
    left: SideMeasurements | None = None
    right: SideMeasurements | None = None

    def given(self) -> dict[str, float]:
        """Return what was measured, in millimetres, by key; a side's own as "left.thigh_girth"."""
        found: dict[str, float] = {}
        for prefix, holder in (("", self), ("left.", self.left), ("right.", self.right)):
            # A wrong type for a side is reported by the checks; here it holds nothing.
            if not isinstance(holder, Measurements | SideMeasurements):
                continue
            for field in fields(holder):
                value = getattr(holder, field.name)
                if field.name in MEASUREMENTS and value is not None:
                    found[prefix + field.name] = value
        return found


def term_of(key: str) -> str:
    """Return the printed term of a key: "left.thigh_girth" gives "left thigh girth"."""
    side, _, name = key.rpartition(".")
    return f"{side} {MEASUREMENTS[name].term}".strip()
