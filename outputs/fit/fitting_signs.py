"""What one sees on a toile and what to try first, as one table: for the guide and any sheet to print.

Every key is one of `drafting.body.corrections.CORRECTIONS`. Amounts are for a first try; an amount without a
source is common practice, and says so.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.base.construction_proportions import COMMON
from drafting.body.corrections import MEMORY
from drafting.body.measurement_table import Range

__all__ = ["ADVICE", "SIGNS", "Sign"]


@dataclass(frozen=True)
class Sign:
    """One thing to be seen on the wearer.

    Attributes:
        seen: What it looks like, and which way its lines run.
        means: What it says of the cut.
        first: The correction to try first.
        amount: By how much, mm.
        then: Others to try when it is not gone, in this order.
        source: Where cause and amount come from.
        besides: What else may be the cause, or is to be looked at.
    """

    seen: str
    means: str
    first: str
    amount: Range
    then: tuple[str, ...]
    source: str
    besides: str = ""


ADVICE = (
    "Sew the toile from legs, yokes, band and pocket facings. Try it on over the underwear, with the shoes "
    "that go with it and the waist where it shall sit, and have somebody look at you from the front, the "
    "side and behind, standing, sitting and walking.",
    "Begin with what hangs level or does not: waist, hip, knee, hem. Then the widths. The crotch comes last, "
    "for all else moves it. Change one or two things, write them below [fitting] in the measurements file, "
    "draft again, and sew the toile again. What a second toile shows is added to what stands there.",
    "Lines point to the place where cloth is wanting, and lie in folds where there is too much: pull at it, "
    "let out or pin, and measure how much it was.",
    "What is seen on one side only goes below [left] and [right] as a measurement of that side.",
)
"""How to look, and in which order (order of a published trouser fitting, 2020; else common practice)."""

_FIT_GUIDE = "a pattern maker's fit guide"
_TAILORS = "a tailors' book of trouser faults and cures"

SIGNS = (
    Sign(
        "Whiskers: short level folds that fan out from the front fork over the top of the thigh.",
        "The fork is too short or the thigh too tight; with a high waist the rise may be too long.",
        "front_crotch_pulls", Range(6, 13), ("full_thigh", "lower_rise"),
        f"cause: a pattern maker on crotch width; amount: {MEMORY}",
    ),
    Sign(
        "A smile in front: lines that rise from the crotch towards both hips.",
        "The front crotch seam is too short at the fork.",
        "front_crotch_pulls", Range(3, 6), ("higher_rise",),
        f"in small steps: {_FIT_GUIDE}; amount: {COMMON}",
    ),
    Sign(
        "A frown in front: lines or soft folds that fall from the crotch outwards.",
        "The front crotch seam is too long at the fork.",
        "front_crotch_pools", Range(3, 6), ("lower_rise",), f"{_FIT_GUIDE}; amount: {COMMON}",
    ),
    Sign(
        "A smile behind: lines that rise from the crotch towards the side seams; the seam cuts in.",
        "The back crotch seam is too short at the fork.",
        "back_crotch_pulls", Range(6, 13), ("full_seat",),
        f"cause: {COMMON}; half an inch and more in worked examples",
    ),
    Sign(
        "Pooling behind: soft folds that hang down from the back crotch.",
        "The back crotch seam is too long at the fork.",
        "back_crotch_pools", Range(6, 13), ("flat_seat",), f"0.6 to 1.3 cm: {MEMORY}",
    ),
    Sign(
        "The centre back is dragged down, most of all when sitting; lines run from the seat up to the waist.",
        "The back is too short over the seat.",
        "full_seat", Range(10, 25), ("back_crotch_pulls",),
        f"a short centre back is made longer: {_TAILORS}; amount: {MEMORY}",
    ),
    Sign(
        "Loose cloth below the seat, in level or slanting folds.",
        "The seat is flatter than the cut: its angle and length are too great.",
        "flat_seat", Range(6, 15), ("back_crotch_pools",), f"{_TAILORS}; amount: {MEMORY}",
    ),
    Sign(
        "A level fold across the back, just below the band.",
        "The hollow of the back is shorter than the cut.",
        "sway_back", Range(6, 20), ("gaping_back",), f"a dressmaker's answer, 2011; amount: {MEMORY}",
    ),
    Sign(
        "The band dips at the centre front; lines rise from the side seams to the abdomen.",
        "The front is too short over the abdomen.",
        "full_abdomen", Range(10, 25), ("waist_out",), f"{MEMORY}",
    ),
    Sign(
        "A loose level fold across the front, below the band.",
        "The abdomen is flatter than the cut.",
        "flat_abdomen", Range(5, 15), (), COMMON,
    ),
    Sign(
        "Folds in the lap when sitting, the front standing off.",
        "The fork or the seat angle is too small.",
        "back_crotch_pulls", Range(6, 13), ("full_seat",), f"let out the fork, slope the seat: {_TAILORS}; "
        f"amount: {COMMON}",
    ),
    Sign(
        "The crotch hangs low, front and back alike, and hampers the step.",
        "The trunk of the cut is too long.",
        "lower_rise", Range(5, 20), (), COMMON, "The hem rises with it: look at the length again.",
    ),
    Sign(
        "The crotch cuts in front and back alike, and the whole waist is pulled down.",
        "The trunk of the cut is too short.",
        "higher_rise", Range(5, 20), ("front_crotch_pulls", "back_crotch_pulls"), COMMON,
        "The hem drops with it: look at the length again.",
    ),
    Sign(
        "Level creases round the hips; the front pockets stand open.",
        "The hip is too tight.", "hip_out", Range(10, 30), ("full_thigh",), COMMON,
    ),
    Sign(
        "Upright folds beside the side seams at the hip.",
        "The hip is too wide.", "hip_in", Range(10, 30), (), COMMON,
    ),
    Sign(
        "The band digs in, or does not close.",
        "The waist is too tight.", "waist_out", Range(10, 20), ("full_abdomen",), COMMON,
    ),
    Sign(
        "The band slides down; it can be pinned in all round.",
        "The waist is too wide.", "waist_in", Range(10, 20), (), "a tailoring page, 2013: no more than 3 in",
    ),
    Sign(
        "The band stands off at the back only, most of all when sitting.",
        "Waist and hip differ more at the back than the darts take up.",
        "gaping_back", Range(20, 50), ("sway_back",),
        "refitting articles, 2018: 2 to 4 in on strongly curved figures, in two darts up to 2 in",
    ),
    Sign(
        "Level pulls round the thigh below the crotch; the leg rides up when sitting.",
        "The thigh is too tight.", "full_thigh", Range(10, 30), ("back_crotch_pulls",),
        "a dressmaking school",
    ),
    Sign(
        "Lines slant from the inside of the knee down to the outside of the hem; the leg rests on the knee.",
        "The knees stand in.", "knees_in", Range(6, 13), (), f"amount: {MEMORY}",
    ),
    Sign(
        "Lines slant from the outside of the knee down to the inside of the hem.",
        "The knees stand out.", "knees_out", Range(6, 13), (), f"amount: {MEMORY}",
    ),
    Sign(
        "The narrowest place of the leg sits above the knee; the hem is too high.",
        "The thigh of the cut is too short.", "longer_at_thigh", Range(5, 40), ("longer_at_knee",),
        f"lengthen above and below the knee apart: sewing pages, 2016; amount: {COMMON}",
    ),
    Sign(
        "The narrowest place of the leg sits below the knee; the hem is too low.",
        "The thigh of the cut is too long.", "shorter_at_thigh", Range(5, 40), ("shorter_at_knee",),
        f"shorten above and below the knee apart: sewing pages, 2016; amount: {COMMON}",
    ),
    Sign(
        "The knee sits right and the hem is too high.",
        "The shin of the cut is too short.", "longer_at_calf", Range(5, 40), (),
        f"the hem keeps its girth: a dressmaker on vertical changes; amount: {COMMON}",
    ),
    Sign(
        "The knee sits right and the hem is too low.",
        "The shin of the cut is too long.", "shorter_at_calf", Range(5, 40), (),
        f"the hem keeps its girth: a dressmaker on vertical changes; amount: {COMMON}",
        "A leg that twists round the shin was cut off the grain: lay it anew.",
    ),
)  # fmt: skip
