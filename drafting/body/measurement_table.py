"""The one table that defines each body measurement: its term, how it is taken, its range, its use.

The blank measurements file, the checks, the help texts and the tests all read this table.

Terms are those of ISO 8559-1:2017 where it has one. Its numbers are given only where another text quotes
them; they are second-hand and were not read in the standard itself.

Ranges are in millimetres. `usual` is the range of the adults of the 2012 Anthropometric Survey of U.S. Army
Personnel (Natick TR-15/007, public domain) opened by a tenth or so, since soldiers are fitter and younger
than the public; for what that survey did not take, it is from memory. `possible` runs from a small child to
a very large adult (own judgement): beyond it a draft would mean nothing.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from types import MappingProxyType
from typing import NamedTuple

__all__ = ["MEASUREMENTS", "Kind", "MeasurementSpec", "Need", "Range", "Sides"]


class Kind(Enum):
    """How the tape runs."""

    GIRTH = "round the body"
    HEIGHT = "straight up from the floor"
    LENGTH = "along the body"
    ARC = "a part of a girth"


class Need(Enum):
    """Whether a draft can do without."""

    NEEDED = "needed"
    ONE_OF = "one of these two"
    HELPS_MOST = "helps most"
    HELPS = "helps"


class Sides(Enum):
    """Whether the measurement belongs to the whole body, to a leg, or to either."""

    BODY = "given once"
    EITHER = "given once, or for each side"
    EACH = "given for each side only"


class Range(NamedTuple):
    """From low to high in millimetres, both ends included."""

    low: float
    high: float

    def holds(self, mm: float) -> bool:
        """Return whether the length lies in the range; never for NaN."""
        return self.low <= mm <= self.high


@dataclass(frozen=True, kw_only=True)
class MeasurementSpec:
    """One body measurement.

    Attributes:
        key: name in files and in Python: the term in snake case.
        term: name in print.
        kind: how the tape runs.
        how: how to take it, for somebody who sews at home.
        possible: outside it, the value is refused.
        usual: outside it, the value is remarked upon.
        need: whether a draft can do without.
        drives: what it decides in the draft.
        helper: whether a second person is needed to take it well.
        mirror: whether it takes a mirror, when alone, to see that the tape lies level or plumb (common
            practice, no source).
        iso_number: number in ISO 8559-1:2017 as quoted by others; None where none was seen.
        sides: whether it may be given for each side.
        also: what else people call it.
    """

    key: str
    term: str
    kind: Kind
    how: str
    possible: Range
    usual: Range
    need: Need
    drives: str
    helper: bool = False
    mirror: bool = False
    iso_number: str | None = None
    sides: Sides = Sides.BODY
    also: tuple[str, ...] = ()


# Ranges: usual from Natick TR-15/007, else from memory; possible by own judgement (see above).
_ROWS = (
    MeasurementSpec(
        key="waist_girth",
        term="waist girth",
        kind=Kind.GIRTH,
        iso_number="5.3.10",
        how="Tie a narrow elastic round the waist, level all round, and leave it there: every length that"
        " starts at the waist starts at this elastic. Measure along it, standing relaxed.",
        possible=Range(350, 2000),
        usual=Range(550, 1500),
        mirror=True,
        need=Need.NEEDED,
        drives="the top edge of front and back, and the dart",
    ),
    MeasurementSpec(
        key="hip_girth",
        term="hip girth",
        also=("seat",),
        kind=Kind.GIRTH,
        iso_number="5.3.13",
        how="Round the fullest part of the seat, level, over underwear only. With a full belly hang a sheet"
        " of paper over it and measure over the paper.",
        possible=Range(400, 2200),
        usual=Range(750, 1600),
        mirror=True,
        need=Need.NEEDED,
        drives="the width of the block and both crotch forks",
    ),
    MeasurementSpec(
        key="inside_leg_height",
        term="inside leg height",
        also=("inseam",),
        kind=Kind.HEIGHT,
        iso_number="5.1.15",
        how="Barefoot, feet a hand apart, a thin book pushed up level between the legs: from its upper edge"
        " straight down to the floor.",
        possible=Range(200, 1250),
        usual=Range(580, 1080),
        need=Need.NEEDED,
        helper=True,
        sides=Sides.EITHER,
        drives="the length of the leg",
    ),
    MeasurementSpec(
        key="waist_height",
        term="waist height",
        kind=Kind.HEIGHT,
        how="Barefoot, at the side, from the elastic straight down to the floor, not over the hip.",
        possible=Range(400, 1600),
        usual=Range(760, 1320),
        need=Need.ONE_OF,
        helper=True,
        drives="the crotch depth, less the inside leg height",
    ),
    MeasurementSpec(
        key="body_rise",
        term="body rise, seated",
        also=("crotch depth",),
        kind=Kind.HEIGHT,
        how="Sitting upright on a hard flat seat: at the side, from the elastic straight down to the seat.",
        possible=Range(80, 600),
        usual=Range(160, 400),
        mirror=True,
        need=Need.ONE_OF,
        drives="the crotch depth",
    ),
    MeasurementSpec(
        key="total_crotch_length",
        term="total crotch length",
        also=("crotch length",),
        kind=Kind.LENGTH,
        how="From the elastic at the middle of the front, between the legs, to the elastic at the middle of"
        " the back; close to the body but not tight, over underwear only.",
        possible=Range(300, 1500),
        usual=Range(430, 950),
        need=Need.HELPS_MOST,
        drives="the length of the crotch seam: of all lengths the one that decides the fit",
    ),
    MeasurementSpec(
        key="thigh_girth",
        term="thigh girth",
        kind=Kind.GIRTH,
        iso_number="5.3.20",
        how="Round the fullest part of one thigh, just below the seat, level, standing on both feet.",
        possible=Range(200, 1200),
        usual=Range(400, 950),
        need=Need.HELPS_MOST,
        sides=Sides.EITHER,
        drives="the width just below the crotch",
    ),
    MeasurementSpec(
        key="waist_to_hip",
        term="waist to hip",
        kind=Kind.LENGTH,
        how="At the side, over the hip, from the elastic down to the level of the hip girth.",
        possible=Range(20, 450),
        usual=Range(70, 300),
        mirror=True,
        need=Need.HELPS_MOST,
        drives="the hip level, when the hip height was not taken",
    ),
    MeasurementSpec(
        key="knee_height",
        term="knee height",
        kind=Kind.HEIGHT,
        how="From the middle of the kneecap straight down to the floor, standing.",
        possible=Range(120, 800),
        usual=Range(320, 650),
        need=Need.HELPS_MOST,
        drives="the knee level",
    ),
    MeasurementSpec(
        key="heel_girth",
        term="heel girth",
        kind=Kind.GIRTH,
        how="Toes pointed down: round the heel and over the front of the ankle, the girth a hem must pass.",
        possible=Range(130, 600),
        usual=Range(250, 460),
        need=Need.HELPS,
        drives="the smallest hem that the foot can pass",
    ),
    MeasurementSpec(
        key="knee_girth",
        term="knee girth",
        kind=Kind.GIRTH,
        iso_number="5.3.22",
        how="Round the middle of the kneecap, level, the leg straight and relaxed.",
        possible=Range(140, 800),
        usual=Range(280, 620),
        need=Need.HELPS,
        drives="the smallest width at the knee",
    ),
    MeasurementSpec(
        key="calf_girth",
        term="calf girth",
        kind=Kind.GIRTH,
        iso_number="5.3.24",
        how="Round the fullest part of the calf, level.",
        possible=Range(130, 800),
        usual=Range(260, 570),
        need=Need.HELPS,
        drives="the smallest width between knee and hem",
    ),
    MeasurementSpec(
        key="ankle_girth",
        term="ankle girth",
        kind=Kind.GIRTH,
        how="Round the leg just above the ankle bones, where it is thinnest.",
        possible=Range(90, 500),
        usual=Range(160, 330),
        need=Need.HELPS,
        drives="the smallest hem, when the heel was not measured",
    ),
    MeasurementSpec(
        key="mid_thigh_girth",
        term="mid-thigh girth",
        kind=Kind.GIRTH,
        iso_number="5.3.21",
        how="Round the thigh halfway between the crotch and the middle of the kneecap, level.",
        possible=Range(170, 1050),
        usual=Range(340, 830),
        need=Need.HELPS,
        drives="the smallest width between thigh and knee",
    ),
    MeasurementSpec(
        key="top_hip_girth",
        term="top hip girth",
        also=("high hip",),
        kind=Kind.GIRTH,
        iso_number="5.3.12",
        how="Round the body halfway between the elastic and the level of the hip girth.",
        possible=Range(370, 2200),
        usual=Range(600, 1600),
        mirror=True,
        need=Need.HELPS,
        drives="a check that the pattern goes round you between waist and hip",
    ),
    MeasurementSpec(
        key="waist_to_top_hip",
        term="waist to top hip",
        kind=Kind.LENGTH,
        how="At the side, from the elastic down to the level where the top hip girth was taken.",
        possible=Range(10, 300),
        usual=Range(30, 160),
        mirror=True,
        need=Need.HELPS,
        drives="the level of the top hip girth",
    ),
    MeasurementSpec(
        key="hip_height",
        term="hip height",
        kind=Kind.HEIGHT,
        how="From the level of the hip girth, at the side, straight down to the floor.",
        possible=Range(250, 1400),
        usual=Range(600, 1150),
        need=Need.HELPS,
        helper=True,
        sides=Sides.EITHER,
        drives="the hip level",
    ),
    MeasurementSpec(
        key="calf_height",
        term="calf height",
        kind=Kind.HEIGHT,
        how="From the level of the calf girth straight down to the floor.",
        possible=Range(70, 600),
        usual=Range(200, 480),
        need=Need.HELPS,
        drives="the level of the calf girth",
    ),
    MeasurementSpec(
        key="outside_leg_length",
        term="outside leg length",
        also=("outseam",),
        kind=Kind.LENGTH,
        how="At the side, from the elastic over the curve of the hip, then straight down to the floor.",
        possible=Range(400, 1650),
        usual=Range(770, 1370),
        need=Need.HELPS,
        helper=True,
        sides=Sides.EITHER,
        drives="how far the side seams differ, when given for each side",
    ),
    MeasurementSpec(
        key="front_crotch_length",
        term="front crotch length",
        kind=Kind.LENGTH,
        how="The front part of the total crotch length, from the elastic to the point where the inside leg"
        " seams will meet.",
        possible=Range(100, 750),
        usual=Range(190, 460),
        need=Need.HELPS,
        drives="how the crotch seam is shared between front and back",
    ),
    MeasurementSpec(
        key="back_crotch_length",
        term="back crotch length",
        kind=Kind.LENGTH,
        how="The back part of the total crotch length, from the point where the inside leg seams will meet"
        " to the elastic.",
        possible=Range(100, 850),
        usual=Range(220, 540),
        need=Need.HELPS,
        drives="how the crotch seam is shared between front and back",
    ),
    MeasurementSpec(
        key="front_waist_arc",
        term="front waist arc",
        kind=Kind.ARC,
        how="The part of the waist girth in front, from side seam to side seam; the rest is the back. Place"
        " the side seams where they look straight from the side.",
        possible=Range(150, 1400),
        usual=Range(240, 850),
        need=Need.HELPS,
        helper=True,
        drives="how the waist is shared between front and back",
    ),
    MeasurementSpec(
        key="front_hip_arc",
        term="front hip arc",
        kind=Kind.ARC,
        how="The part of the hip girth in front, from side seam to side seam; the rest is the back.",
        possible=Range(170, 1400),
        usual=Range(320, 880),
        need=Need.HELPS,
        helper=True,
        drives="how the hip is shared between front and back",
    ),
    MeasurementSpec(
        key="stature",
        term="stature",
        also=("body height",),
        kind=Kind.HEIGHT,
        how="Body height without shoes, against a wall.",
        possible=Range(700, 2500),
        usual=Range(1350, 2100),
        need=Need.HELPS,
        helper=True,
        drives="guesses for heights that were not measured",
    ),
    MeasurementSpec(
        key="half_hip_arc",
        term="half hip arc",
        kind=Kind.ARC,
        how="The part of the hip girth on this side, from the middle of the front to the middle of the back.",
        possible=Range(170, 1300),
        usual=Range(360, 850),
        need=Need.HELPS,
        helper=True,
        sides=Sides.EACH,
        drives="the width of the two pieces on this side",
    ),
)

MEASUREMENTS: Mapping[str, MeasurementSpec] = MappingProxyType({row.key: row for row in _ROWS})
"""Every measurement by its key, in the order in which it is asked for."""
