"""The proportions of the jeans block: every constant of the draft with its unit, reason and source.

Change one by `Proportions(back_lean=12.0)`; the table itself prints with `constants()`.
"""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from typing import Any, ClassVar

ALDRICH = "metric trouser block, Aldrich (from memory of the book, figures confirmed by its own sums)"
HERTZER = "Hertzer, Garment Cutting in the Twentieth Century, 1890s"
RUSSIAN = "half-girth draft of a Russian home-sewing page"
COMMON = "common practice, no source"
TRIAL = "own trial on the 2012 US Army survey (Natick TR-15/007)"


@dataclass(frozen=True)
class Constant:
    """One row of the table of constants."""

    name: str
    value: float
    unit: str
    reason: str
    source: str


def constant(value: float, unit: str, reason: str, source: str) -> Any:
    """Return a field of a table with its default."""
    return field(default=value, metadata={"unit": unit, "reason": reason, "source": source})


class ConstantTable:
    """Fields with a unit, a reason and a source each."""

    _SUFFIX: ClassVar[str] = ""

    def constants(self) -> tuple[Constant, ...]:
        """Return the table, one row a constant."""
        rows = fields(self)  # type: ignore[arg-type]
        return tuple(Constant(f.name + self._SUFFIX, getattr(self, f.name), **f.metadata) for f in rows)


@dataclass(frozen=True, kw_only=True)
class Proportions(ConstantTable):
    """Constants of the draft; lengths in mm, angles in degrees, divisors and shares as pure numbers."""

    # levels
    seated_more_than_standing: float = constant(
        20, "mm", "a rise measured seated is larger than waist height less inside leg height", TRIAL
    )
    depth_over_seated_rise: float = constant(
        5, "mm", "the crotch line of close jeans hangs this much under the seat", COMMON
    )
    depth_over_standing_rise: float = constant(
        23, "mm", "the same from heights: a crotch height is read with the rule pressed up", TRIAL
    )
    depth_least: float = constant(
        8, "mm", "the crotch line never comes nearer than this to the body's crotch", COMMON
    )
    hip_level_divisor: float = constant(
        3,
        "share",
        "hip level lies a third of the crotch depth above the crotch line",
        "seat depth / 3: " + RUSSIAN,
    )
    knee_over_mid_inseam: float = constant(
        50, "mm", "knee level above the middle of the inseam when the knee was not measured", ALDRICH
    )
    # the length of the trunk
    trunk_usual: float = constant(
        22, "mm", "waist height less inside leg that the hip lets expect: so much and a share of it", TRIAL
    )
    trunk_of_hip: float = constant(0.19, "share", "and this share of the hip girth", TRIAL)
    trunk_in_depth: float = constant(
        0.17,
        "share",
        "a trunk longer than that has a crotch length that grows half as fast as a draft's: the crotch line "
        "rises by this share of it, where the depth comes from heights",
        TRIAL,
    )
    trunk_in_depth_most: float = constant(6.5, "mm", "but by no more than this either way", TRIAL)
    trunk_in_raise: float = constant(0.48, "share", "the centre back is lower by this share of it", TRIAL)
    trunk_in_back_fork: float = constant(0.23, "share", "the back fork is shorter by this share of it", TRIAL)
    trunk_in_front_fork: float = constant(0.12, "share", "and the front fork by this share of it", TRIAL)
    # widths
    hip_balance: float = constant(
        5,
        "mm",
        "each back half is this much wider than a quarter of the hip, the front as much narrower",
        "front H/4 + 0.5, back H/4 + 1.5: " + ALDRICH,
    )
    front_fork_divisor: float = constant(16, "share", "front fork: hip / 16 less a constant", ALDRICH)
    front_fork_less: float = constant(
        6,
        "mm",
        "jeans: hip / 16 in a jeans article, and 1.5 cm less than a trouser's hip / 16 + 0.5 in a journal",
        "supplier magazine; cutter's journal, 2013; between them: " + TRIAL,
    )
    back_fork_divisor: float = constant(
        8,
        "share",
        "back fork from the plumb line of the hip point: hip / 8 and a constant",
        "front hip/16 plus as much again: " + ALDRICH,
    )
    back_fork_more: float = constant(
        15, "mm", "and so much more: the seam of the average body, the crotch line kept high", TRIAL
    )
    inseam_ease: float = constant(
        4,
        "mm",
        "the back inseam is shorter and stretched on between fork and knee",
        "back 3/8 to 1 in shorter is sewable; kept small for denim: " + COMMON,
    )
    knee_balance: float = constant(
        12.7,
        "mm",
        "back wider than front at knee and hem, as much again as the front is narrower",
        "finished leg +- 1: " + ALDRICH,
    )
    back_crease_shift: float = constant(
        4.5,
        "mm",
        "back knee and hem sit this much to the side of the middle: else the leg is pushed under the crotch",
        "0.4 to 0.8: " + ALDRICH,
    )
    # centre lines
    front_drop: float = constant(
        6.5, "mm", "centre front drops below the waist level", "1/4 in, Wikibooks; 1/2 in, Rosenfeld 1918"
    )
    full_front_rise: float = constant(
        0.5, "share", "a centre front that leans out for a full waist also rises by this share of it", COMMON
    )
    back_lean: float = constant(
        12,
        "deg",
        "the seat line leans no more than this before it is wedged",
        "between 7.1 and 14.0: " + HERTZER,
    )
    back_lean_least: float = constant(6, "deg", "the seat line of a straight trouser", "7.1: " + ALDRICH)
    back_lean_most: float = constant(
        15.5, "deg", "nor more than this wedged", "15 nominal, built as 1 in 4: " + HERTZER
    )
    lean_share: float = constant(
        0.50,
        "share",
        "the seat line's share of half of hip less waist, at waist level",
        "35 to 50 %: " + COMMON,
    )
    lean_share_most: float = constant(0.585, "share", "its share at most, wedged", TRIAL)
    lean_full: float = constant(
        25,
        "mm",
        "where waist and hip are alike it takes up to so much all the same, the sides swing out",
        TRIAL,
    )
    lean_full_share: float = constant(0.09, "share", "and this share of half of hip less waist", TRIAL)
    back_raise: float = constant(
        42,
        "mm",
        "centre back rises above the waist level",
        "2 to 4, jeans block article of a supplier magazine",
    )
    back_side_drop: float = constant(
        -1.4,
        "mm",
        "trueing the side seams ends the back's lower at the waist by the slant of its leg, and so much",
        TRIAL,
    )
    # curves
    front_curve_divisor: float = constant(
        3,
        "share",
        "the front crotch curve leaves the centre front at crotch depth / 3",
        "seat depth / 3: " + RUSSIAN,
    )
    front_curve_of_fork: float = constant(
        1, "share", "but no lower than the fork is wide", "curve height equal to the fork: Rosenfeld 1918"
    )
    back_curve_divisor: float = constant(
        2, "share", "the back crotch curve leaves the seat line at crotch depth / 2", ALDRICH
    )
    back_curve_of_fork: float = constant(
        0.75, "share", "but no lower than this share of the fork, or the curve would have a point", COMMON
    )
    curve_highest: float = constant(
        0.75, "share", "no crotch curve starts higher than this share of the depth", COMMON
    )
    curve_highest_of_fork: float = constant(
        2.2,
        "share",
        "nor higher than this many forks, or it turns too sharply for its seam allowance",
        COMMON,
    )
    front_curve_handle: float = constant(
        0.70,
        "share",
        "how far the front curve's handles reach to the corner; 0.55 is a quarter ellipse",
        "distance off the corner 0.45 to 0.55 of the fork in five published drafts",
    )
    back_curve_handle: float = constant(
        0.74, "share", "the same behind", "4.25 to 4.75 off the corner: " + ALDRICH
    )
    front_inseam_hollow: float = constant(
        6.5,
        "mm",
        "front inseam hollowed off the chord; less than 0.75 so that the forks join smoothly",
        ALDRICH,
    )
    back_inseam_hollow: float = constant(
        10, "mm", "back inseam hollowed off the chord; less than 1.25 for the same reason", ALDRICH
    )
    inseam_handle: float = constant(
        0.75, "share", "how far the inseam's handles reach to the corner of its end tangents", COMMON
    )
    inseam_even_turn: float = constant(
        0.4, "share", "the inseam turns at the fork at least this share of its turn at the knee", COMMON
    )
    inseam_fork_turn: float = constant(
        7, "deg", "the inseam leaves its chord at the fork by no more than this", COMMON
    )
    fork_turn: float = constant(
        6,
        "deg",
        "the back's crotch seam meets its inseam at less than a right angle by this, the front's at more: "
        "the back curve stays a curve down to the fork",
        TRIAL,
    )
    side_hip_turn: float = constant(
        0.6,
        "share",
        "the side seam leaves the hip at this share of the angle of its chord to the knee",
        TRIAL,
    )
    side_waist_turn: float = constant(
        1.5,
        "share",
        "the side seam's angle at the waist against that of its chord: bowed out some 8 mm to round the hip",
        "0.5 outwards: " + ALDRICH + "; half as much again: " + TRIAL,
    )
    side_hip_handle: float = constant(
        0.24, "share", "handle of the side seam below the hip, of the drop to the knee", TRIAL
    )
    side_knee_handle: float = constant(0.225, "share", "handle of the side seam at the knee, likewise", TRIAL)
    knee_hugs_from: float = constant(
        0.46,
        "share",
        "a knee narrower than this share of the hip has a shorter handle, or the leg binds above it",
        TRIAL,
    )
    # dart
    dart_length_share: float = constant(
        0.5, "share", "length of the back dart, of the way from waist to hip", "10 to 12 of 20.6: " + ALDRICH
    )
    dart_longest: float = constant(90, "mm", "so that the yoke can swallow it", COMMON)
    dart_shortest: float = constant(65, "mm", "a shorter dart ends in a blunt point", COMMON)
    dart_clear_of_hip: float = constant(0.85, "share", "no dart reaches further towards hip level", COMMON)
    dart_widest: float = constant(32, "mm", "a wider take-up is split over two darts", COMMON)
    dart_least: float = constant(2.5, "mm", "a narrower dart is left to the seams", COMMON)
    # leg
    thigh_below_fork: float = constant(
        25,
        "mm",
        "the thigh is measured on the pattern this far below the crotch line",
        "1 in below crotch, work-pant spec sheet",
    )


@dataclass(frozen=True, kw_only=True)
class Ease(ConstantTable):
    """Room added to the body, in mm of full girth or length; each is the wearer's or the style's to choose.

    Attributes:
        waist: Added to the waist girth, exactly.
        hip: Added to the hip girth, exactly.
        thigh: Least room at the thigh; proportions may leave more.
        knee: Least room at the knee.
        calf: Least room at the calf.
        heel: Least room of a closed hem over the heel girth.
        crotch: Added to the total crotch length.
    """

    _SUFFIX = "_ease"

    waist: float = constant(10, "mm", "jeans 1 to 2 cm", "jeans draft notes of a cutter's journal, 2012")
    hip: float = constant(30, "mm", "jeans 0 to 3 cm; fitted 0 to 6", "the same; Chinese textbook classes")
    thigh: float = constant(25, "mm", "least visible room 2.5", "pant fit guide for historical dress")
    knee: float = constant(
        40, "mm", "room to bend: 4 to 6 on a bent knee", "measuring supplement for trousers"
    )
    calf: float = constant(13, "mm", "least visible room 1.3", "pant fit guide for historical dress")
    heel: float = constant(5, "mm", "a closed hem must pass the heel", COMMON)
    crotch: float = constant(5, "mm", "close jeans 0 to 1.5", "from memory")

    @property
    def mid_thigh(self) -> float:
        """Least room halfway down the thigh: the mean of thigh and calf."""
        return (self.thigh + self.calf) / 2
