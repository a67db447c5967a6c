"""Bodies to draft for: plausible measurements for hypothesis, drawn so that they go together."""

from typing import Any

from hypothesis import settings
from hypothesis import strategies as st

from drafting.body.measurement_table import MEASUREMENTS, Need
from drafting.body.measurements import Measurements, Population, SideMeasurements, WaistLevel

NEEDED = tuple(key for key, spec in MEASUREMENTS.items() if spec.need is Need.NEEDED)
ONE_OF = tuple(key for key, spec in MEASUREMENTS.items() if spec.need is Need.ONE_OF)
OPTIONAL = tuple(
    key
    for key, spec in MEASUREMENTS.items()
    if spec.need in (Need.HELPS, Need.HELPS_MOST) and hasattr(Measurements(), key)
)


def examples(count: int, **more: Any) -> settings:
    """Return settings for so many examples of 100 that the profile draws, three at least."""
    return settings(max_examples=max(count * settings().max_examples // 100, 3), deadline=None, **more)


def _between(draw: st.DrawFn, low: float, high: float) -> float:
    """Draw a length or a ratio; to three places, as finer ones tell no more about a body."""
    return round(draw(st.floats(low, high, allow_nan=False)), 3)


def _within(key: str, mm: float) -> float:
    """Bring a length into the usual range of its measurement, to a tenth of a millimetre."""
    low, high = MEASUREMENTS[key].usual
    return round(min(max(mm, low), high), 1)


@st.composite
def whole_bodies(draw: st.DrawFn) -> dict[str, float]:
    """Every measurement of one body in millimetres, by key, all of them in agreement."""
    hip = _between(draw, *MEASUREMENTS["hip_girth"].usual)
    stature = _between(draw, 1400, 2000)
    leg = stature * _between(draw, 0.43, 0.53)
    rise = stature * _between(draw, 0.11, 0.17)
    below_waist = rise * _between(draw, 0.5, 0.95)
    waist = hip * _between(draw, 0.62, 1.2)
    crotch = 2 * rise + hip * _between(draw, 0.14, 0.24)
    back = crotch * _between(draw, 0.45, 0.66)
    thigh = hip * _between(draw, 0.52, 0.69)
    knee = thigh * _between(draw, 0.58, 0.75)
    calf = knee * _between(draw, 0.8, 1.1)
    ankle = calf * _between(draw, 0.5, 0.7)
    knee_height = leg * _between(draw, 0.53, 0.63)
    body = {
        "stature": stature,
        "waist_girth": waist,
        "hip_girth": hip,
        "top_hip_girth": min(waist, hip) + abs(hip - waist) * _between(draw, 0.3, 1.0),
        "thigh_girth": thigh,
        "mid_thigh_girth": knee + (thigh - knee) * _between(draw, 0.4, 0.8),
        "knee_girth": knee,
        "calf_girth": calf,
        "ankle_girth": ankle,
        "heel_girth": ankle * _between(draw, 1.2, 1.7),
        "waist_height": leg + rise,
        "hip_height": leg + rise - below_waist,
        "knee_height": knee_height,
        "calf_height": knee_height * _between(draw, 0.62, 0.8),
        "inside_leg_height": leg,
        "body_rise": rise + _between(draw, 5, 35),
        "waist_to_hip": below_waist + _between(draw, 0, 15),
        "waist_to_top_hip": below_waist / 2,
        "outside_leg_length": leg + rise + _between(draw, 0, 25),
        "total_crotch_length": crotch,
        "front_crotch_length": crotch - back,
        "back_crotch_length": back,
        "front_waist_arc": waist * _between(draw, 0.44, 0.6),
        "front_hip_arc": hip * _between(draw, 0.42, 0.55),
    }
    return {key: _within(key, mm) for key, mm in body.items()}


@st.composite
def bodies(draw: st.DrawFn, *, sides: bool = True) -> Measurements:
    """Plausible measurements: the needed ones, one or both of rise and waist height, any of the others.

    Args:
        draw: given by hypothesis.
        sides: whether some bodies have two sides that differ.
    """
    whole = draw(whole_bodies())
    kept = {*NEEDED, *draw(st.sampled_from([ONE_OF[:1], ONE_OF[1:], ONE_OF]))}
    kept |= draw(st.sets(st.sampled_from(OPTIONAL)))
    left = right = None
    if sides and draw(st.booleans()):
        shift = _between(draw, -12, 12)
        half = whole["hip_girth"] / 2
        left = SideMeasurements(
            inside_leg_height=whole["inside_leg_height"] + shift, half_hip_arc=half + shift
        )
        right = SideMeasurements(half_hip_arc=half - shift)
    return Measurements(
        **{key: whole[key] for key in whole if key in kept},
        waist_taken_at=draw(st.sampled_from(WaistLevel)),
        estimate_like=draw(st.sampled_from(Population)),
        left=left,
        right=right,
    )
