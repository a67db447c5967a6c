"""How a body's measurements go together: each relation says what one of them may be, given others.

One table, read by `drafting.body.checks`. Lengths in millimetres.

Sources, as marked on the rows:
    SURVEY  the range over 4,537 adults of the 2012 Anthropometric Survey of U.S. Army Personnel
            (Natick TR-15/007, public domain), opened a little.
    CRAFT   common practice, no source.
    TERM    follows from what the measurements are; the play is own judgement.
Outside `possible` the values contradict each other so far that no draft could serve (own judgement).
"""

from drafting.body.measurement_table import Range
from drafting.body.relation import Expect, Relation, less, plus, times

SEATED_MORE = 20.0
"""Seated rise less standing rise: the flesh sits down on the seat (common practice)."""


def _crotch_seated(low: float, high: float) -> Expect:
    """Twice the rise and a share of the hip for the way between the legs from front to back."""
    return lambda hip, rise: Range(2 * rise + low * hip, 2 * rise + high * hip)


def _crotch_standing(low: float, high: float) -> Expect:
    return lambda hip, waist, leg: _crotch_seated(low, high)(hip, waist - leg)


_OVER_CLOTHES = (
    "What was worn while measuring? Over trousers, hip and crotch length both come out too large;"
    " a tight tape makes the crotch length too short."
)

RELATIONS: tuple[Relation, ...] = (
    # Girths of the trunk.
    Relation(
        key="waist_girth",
        given=("hip_girth",),
        source="SURVEY 0.70 to 1.15",
        usual=times(0.60, 1.22),
        possible=times(0.40, 1.70),
        ask="Is one of them in another unit, or are the two exchanged?",
    ),
    Relation(
        key="top_hip_girth",
        given=("waist_girth", "hip_girth"),
        source="CRAFT",
        usual=lambda waist, hip: Range(0.97 * min(waist, hip), 1.08 * max(waist, hip)),
        possible=lambda waist, hip: Range(0.6 * min(waist, hip), 1.6 * max(waist, hip)),
        ask="The top hip lies halfway between waist and hip.",
    ),
    Relation(
        key="front_waist_arc",
        given=("waist_girth",),
        source="CRAFT",
        usual=times(0.38, 0.66),
        possible=times(0.20, 0.80),
        ask="It is the front part only, side seam to side seam.",
    ),
    Relation(
        key="front_hip_arc",
        given=("hip_girth",),
        source="CRAFT",
        usual=times(0.38, 0.62),
        possible=times(0.20, 0.80),
        ask="It is the front part only, side seam to side seam.",
    ),
    Relation(
        key="half_hip_arc",
        given=("hip_girth",),
        source="CRAFT",
        usual=times(0.45, 0.55),
        possible=times(0.25, 0.75),
        ask="It runs from the middle of the front to the middle of the back.",
    ),
    Relation(
        key="hip_girth",
        given=("left.half_hip_arc", "right.half_hip_arc"),
        source="TERM",
        usual=plus(-10, 10),
        possible=plus(-80, 80),
        ask="The two halves should make the whole.",
    ),
    # Heights and levels.
    Relation(
        key="waist_height",
        given=("stature",),
        source="SURVEY 0.55 to 0.66, at the navel",
        usual=times(0.53, 0.70),
        possible=times(0.40, 0.85),
        ask="Is one of them in another unit?",
    ),
    Relation(
        key="inside_leg_height",
        given=("stature",),
        source="SURVEY 0.42 to 0.54",
        usual=times(0.41, 0.56),
        possible=times(0.20, 0.70),
        ask="Is one of them in another unit?",
    ),
    Relation(
        key="waist_height",
        given=("inside_leg_height",),
        source="SURVEY 125 to 283 mm more, at the navel",
        usual=lambda leg: Range(leg + 120, min(leg + 360, 1.43 * leg)),
        possible=plus(60, 550),
        ask="A long body over short legs, or the reverse, is possible; otherwise measure both again.",
    ),
    Relation(
        key="body_rise",
        given=("inside_leg_height",),
        source="SURVEY, as the row above",
        unless=("waist_height",),
        usual=times(0.16, 0.44),
        possible=times(0.08, 1.2),
        ask="A long body over short legs, or the reverse, is possible; otherwise measure both again.",
    ),
    Relation(
        key="body_rise",
        given=("waist_height", "inside_leg_height"),
        source="CRAFT",
        usual=less(SEATED_MORE - 30, SEATED_MORE + 30),
        possible=less(-180, 220),
        compare=("waist height less inside leg height", lambda waist, leg: waist - leg),
        ask="Seated it is usually some 2 cm (3/4 in) more. Which do you trust? Leave the other out.",
    ),
    # Over the curve of the hip the outside leg length gains about half of what sitting adds to the rise.
    Relation(
        key="body_rise",
        given=("outside_leg_length", "inside_leg_height"),
        source="CRAFT",
        unless=("waist_height",),
        usual=less(SEATED_MORE / 2 - 30, SEATED_MORE / 2 + 30),
        possible=less(-190, 210),
        compare=("outside leg length less inside leg height", lambda outside, leg: outside - leg),
        ask="The two usually agree within 2 cm (3/4 in). Which do you trust? Leave the other out.",
    ),
    Relation(
        key="hip_height",
        given=("waist_height",),
        source="SURVEY 50 to 253 mm less, at the navel",
        usual=plus(-300, -60),
        possible=plus(-500, -15),
        ask="The hip level lies below the waist.",
    ),
    # In 1 of 70 bodies of the survey the fullest seat lies below the crotch, by up to 29 mm, so this is
    # remarked upon and not refused.
    Relation(
        key="hip_height",
        given=("inside_leg_height",),
        source="SURVEY -29 to 139 mm more",
        usual=plus(0, 150),
        possible=plus(-60, 350),
        ask="The hip level usually lies above the crotch.",
    ),
    Relation(
        key="waist_to_hip",
        given=("waist_height", "hip_height"),
        source="TERM: along the curve, so longer",
        usual=less(-15, 50),
        possible=less(-120, 150),
        ask="Were both taken from the same level?",
    ),
    Relation(
        key="waist_to_hip",
        given=("body_rise",),
        source="CRAFT",
        usual=times(0.25, 1.0),
        possible=lambda rise: Range(0.05 * rise, rise + 60),
        ask="The hip level lies between waist and crotch.",
    ),
    Relation(
        key="waist_to_hip",
        given=("waist_height", "inside_leg_height"),
        source="CRAFT",
        unless=("body_rise", "hip_height"),
        usual=lambda waist, leg: Range(0.27 * (waist - leg), 1.05 * (waist - leg)),
        possible=lambda waist, leg: Range(0.05 * (waist - leg), waist - leg + 70),
        ask="The hip level lies between waist and crotch.",
    ),
    Relation(
        key="waist_to_top_hip",
        given=("waist_to_hip",),
        source="TERM",
        usual=times(0.35, 0.65),
        possible=times(0.05, 0.98),
        ask="The top hip lies halfway between waist and hip.",
    ),
    Relation(
        key="outside_leg_length",
        given=("waist_height",),
        source="TERM: along the curve, so longer",
        usual=plus(-10, 60),
        possible=plus(-120, 200),
        ask="Were both taken from the same level?",
    ),
    Relation(
        key="outside_leg_length",
        given=("inside_leg_height",),
        source="SURVEY, as for waist height",
        unless=("waist_height",),
        usual=plus(130, 400),
        possible=plus(60, 600),
        ask="Were both taken down to the floor?",
    ),
    Relation(
        key="knee_height",
        given=("inside_leg_height",),
        source="SURVEY 0.535 to 0.625",
        usual=times(0.50, 0.66),
        possible=times(0.25, 0.95),
        ask="The knee lies a little above half the inside leg, well below the crotch.",
    ),
    Relation(
        key="calf_height",
        given=("knee_height",),
        source="from memory",
        usual=times(0.55, 0.92),
        possible=times(0.20, 1.0),
        ask="The fullest calf lies below the knee.",
    ),
    # Girths of the leg.
    Relation(
        key="thigh_girth",
        given=("hip_girth",),
        source="SURVEY 0.525 to 0.687",
        usual=times(0.49, 0.73),
        possible=times(0.25, 0.95),
        ask="It is one thigh only, just below the seat.",
    ),
    Relation(
        key="thigh_girth",
        given=("knee_girth",),
        source="SURVEY 1.30 to 1.84, just above the kneecap",
        usual=times(1.15, 2.0),
        possible=times(1.0, 3.5),
        ask="The thigh is larger than the knee; are the two exchanged?",
    ),
    Relation(
        key="mid_thigh_girth",
        given=("thigh_girth",),
        source="CRAFT",
        usual=times(0.70, 1.0),
        ask="Halfway down, the thigh is slimmer than at the top.",
    ),
    Relation(
        key="mid_thigh_girth",
        given=("knee_girth",),
        source="CRAFT",
        usual=times(1.0, 1.8),
        ask="Halfway down, the thigh is fuller than the knee.",
    ),
    Relation(
        key="calf_girth",
        given=("knee_girth",),
        source="SURVEY 0.77 to 1.12, just above the kneecap",
        usual=times(0.75, 1.18),
        ask="Knee and calf are usually near each other; are the two exchanged?",
    ),
    Relation(
        key="ankle_girth",
        given=("calf_girth",),
        source="SURVEY 0.465 to 0.713",
        usual=times(0.45, 0.75),
        ask="The ankle is slimmer than the calf; are the two exchanged?",
    ),
    Relation(
        key="heel_girth",
        given=("ankle_girth",),
        source="SURVEY 1.12 to 1.75",
        usual=times(1.10, 1.80),
        possible=times(0.8, 3.0),
        ask="Round the heel is more than round the ankle.",
    ),
    # Crotch length: twice the rise, and a share of the hip for the way between the legs. At a share of 0.25
    # with the seated rise a doubt begins (own judgement, from two bodies told of by home sewists: measured
    # over jeans 0.275, the true body 0.184, another true body 0.218).
    Relation(
        key="total_crotch_length",
        given=("hip_girth", "body_rise"),
        source="SURVEY, 20 mm added to the rise",
        usual=_crotch_seated(0.10, 0.25),
        possible=_crotch_seated(-0.15, 0.60),
        ask=_OVER_CLOTHES,
    ),
    Relation(
        key="total_crotch_length",
        given=("hip_girth", "waist_height", "inside_leg_height"),
        unless=("body_rise",),
        source="SURVEY 0.12 to 0.265 for 94 in 100",
        usual=_crotch_standing(0.12, 0.265),
        possible=_crotch_standing(-0.10, 0.60),
        ask=_OVER_CLOTHES,
    ),
    Relation(
        key="total_crotch_length",
        given=("front_crotch_length", "back_crotch_length"),
        source="TERM",
        usual=plus(-10, 10),
        possible=plus(-80, 80),
        ask="Front and back part should make the whole.",
    ),
    Relation(
        key="back_crotch_length",
        given=("total_crotch_length",),
        source="SURVEY 0.42 to 0.70",
        usual=times(0.41, 0.71),
        possible=times(0.20, 0.85),
        ask="It is the back part only.",
    ),
    Relation(
        key="front_crotch_length",
        given=("total_crotch_length",),
        source="SURVEY 0.30 to 0.58",
        usual=times(0.29, 0.59),
        possible=times(0.15, 0.80),
        ask="It is the front part only.",
    ),
    # The two sides of one body.
    *(
        Relation(
            key=f"left.{key}",
            given=(f"right.{key}",),
            source="CRAFT",
            usual=plus(-30, 30),
            possible=plus(-150, 150),
            ask="Two sides may differ, but so much is rare.",
        )
        for key in ("inside_leg_height", "outside_leg_length", "hip_height", "thigh_girth")
    ),
)
