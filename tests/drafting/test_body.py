"""The body made complete: where each value comes from, and what is never mixed."""

import math

import pytest

from drafting.base.construction_proportions import Proportions
from drafting.body.body import Body, Origin, complete
from drafting.body.measurements import Measurements, Population, WaistLevel
from tests.wearers import wearer

P = Proportions()


def body(**changed: float | Population | WaistLevel | None) -> Body:
    return complete(wearer(**changed), P)


def test_a_measured_value_stays_as_it_was_measured() -> None:
    known = body(knee_height=455)
    assert known["knee_height"].mm == 455
    assert known.values["knee_height"].origin is Origin.MEASURED


def test_the_waist_height_follows_from_inside_leg_and_seated_rise() -> None:
    # 780 + 265 - 20: a seated rise is some 2 cm more than the standing difference (common practice).
    assert body()["waist_height"].mm == 1025
    assert body().values["waist_height"].origin is Origin.DERIVED


def test_the_crotch_hangs_half_a_centimetre_under_a_seated_rise() -> None:
    assert body()["crotch_depth"].mm == 270
    assert body()["crotch_height"].mm == 755


def test_from_heights_the_crotch_hangs_some_2_cm_under_the_body_and_less_where_the_trunk_is_long() -> None:
    # 23, for a trunk of 0.19 of the hip and 22, which is 208.2 for 980; of what it is longer 0.17, at most
    # 6.5
    for rise, lower in ((208.2, 23), (218.2, 23 - 1.7), (260, 23 - 6.5), (160, 23 + 6.5)):
        known = body(body_rise=None, waist_height=780 + rise)
        assert known["crotch_depth"].mm - rise == pytest.approx(lower)


def test_the_crotch_line_never_lies_above_the_bodys_own_crotch() -> None:
    for rise in (235, 245, 255, 265, 275):
        assert body(body_rise=rise, waist_height=1025)["crotch_height"].mm < 780


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({"total_crotch_length": 700, "front_crotch_length": 310}, {"back_crotch_length": 390}),
        ({"total_crotch_length": 700, "back_crotch_length": 390}, {"front_crotch_length": 310}),
        ({"front_crotch_length": 310, "back_crotch_length": 390}, {"total_crotch_length": 700}),
    ],
)
def test_two_of_the_crotch_lengths_tell_the_third(given: dict[str, float], told: dict[str, float]) -> None:
    [(key, mm)] = told.items()
    known = body(**given)
    assert known[key].mm == mm
    assert known.values[key].origin is Origin.DERIVED


def test_nothing_is_guessed_for_those_who_do_not_ask() -> None:
    known = body(stature=1650)
    assert known.get("thigh_girth") is None
    assert known.get("total_crotch_length") is None
    assert not any(value.origin is Origin.ESTIMATED for value in known.values.values())


def test_a_womans_thigh_is_guessed_by_the_survey_with_its_spread() -> None:
    # Natick TR-15/007, least squares: -3.73 + 0.701 * 98 + 0.003 * 76 - 0.040 * 165 = 58.60 cm, sd 1.9
    thigh = body(stature=1650, estimate_like=Population.WOMEN).values["thigh_girth"]
    assert thigh.length.mm == pytest.approx(586.0, abs=0.1)
    assert thigh.spread == pytest.approx(19)
    assert thigh.origin is Origin.ESTIMATED
    assert "TR-15/007" in thigh.source


def test_a_mans_crotch_length_is_guessed_by_the_survey_with_its_spread() -> None:
    # Natick TR-15/007: 0.71 + 0.352 * 98 + 0.050 * 76 + 0.995 * (102.5 - 78) = 63.38 cm, sd 2.55, of a waist
    # at the navel, about where jeans are worn
    worn = body(estimate_like=Population.MEN, waist_taken_at=WaistLevel.WORN)
    length = worn.values["total_crotch_length"]
    assert length.length.mm == pytest.approx(633.8, abs=0.1)
    assert length.spread == pytest.approx(math.hypot(25.5, 1.005 * 15))


@pytest.mark.parametrize(("like", "by_height"), [(Population.WOMEN, 0.972), (Population.MEN, 0.995)])
def test_a_waist_taken_higher_than_the_surveys_lengthens_a_guessed_crotch_in_front_and_behind(
    like: Population, by_height: float
) -> None:
    # the natural waist lies 4 to 6 cm above the navel (from memory); the line itself makes by_height of it
    natural, worn = (
        body(estimate_like=like, waist_taken_at=level).values["total_crotch_length"]
        for level in (WaistLevel.NATURAL, WaistLevel.WORN)
    )
    assert natural.length.mm - worn.length.mm == pytest.approx((2 - by_height) * 50)
    assert natural.origin is worn.origin is Origin.ESTIMATED


def test_a_guess_never_takes_the_place_of_a_measurement() -> None:
    known = body(thigh_girth=555, stature=1650, estimate_like=Population.WOMEN)
    assert known["thigh_girth"].mm == 555
    assert known.values["thigh_girth"].origin is Origin.MEASURED


def test_a_guess_on_a_guess_carries_both_spreads() -> None:
    # calf from hip and the guessed thigh, TR-15/007: sd 1.8 of its own and 0.324 of the thigh's 1.9
    calf = body(stature=1650, estimate_like=Population.WOMEN).values["calf_girth"]
    assert calf.spread == pytest.approx(math.hypot(18, 0.324 * 19))


def test_a_guess_from_measured_values_alone_carries_its_own_spread_only() -> None:
    calf = body(thigh_girth=586, stature=1650, estimate_like=Population.WOMEN).values["calf_girth"]
    assert calf.spread == pytest.approx(18)


def test_the_hip_level_is_the_one_that_was_measured() -> None:
    assert body(waist_to_hip=215)["hip_height"].mm == 1025 - 215
    assert body(hip_height=820)["hip_height"].mm == 820


def test_without_one_the_hip_level_lies_a_third_of_the_depth_above_the_crotch() -> None:
    # hip line 29 / 3 = 9.7 above the crotch line: Russian half-girth draft, printed; here 27 / 3 = 9
    known = body()
    assert known["hip_height"].mm == 755 + 90
    assert known.values["hip_height"].origin is Origin.CONSTRUCTION


def test_without_a_knee_height_the_knee_lies_5_cm_above_the_middle_of_the_inseam() -> None:
    # metric trouser block, Mansie Wauch's trouser draft: half the inseam and 5 up
    assert body()["knee_height"].mm == pytest.approx(
        780 / 2 + 50, abs=15
    )  # of the leg, or of the cloth 2.5 cm lower


def test_top_hip_and_mid_thigh_lie_midway() -> None:
    # ISO 8559-1: midway between waist and hip level; midway between inside leg level and kneecap
    known = body(hip_height=845, knee_height=440)
    assert known["top_hip_height"].mm == (1025 + 845) / 2
    assert known["mid_thigh_height"].mm == (780 + 440) / 2


def test_deepening_lowers_the_crotch_and_nothing_else() -> None:
    known = body()
    deep = known.deepened(10)
    changed = {key for key in known.values if known[key].mm != deep[key].mm}
    assert changed == {"crotch_depth", "crotch_height"}
    assert deep["crotch_depth"].mm == 280
    assert deep["crotch_height"].mm == 745


def test_whole_numbers_of_millimetres_do_as_well_as_broken_ones() -> None:
    whole, broken = complete(wearer(), P), complete(wearer(hip_girth=980.0, waist_girth=760.0), P)
    assert {key: float(whole[key]) for key in whole.values} == {
        key: float(broken[key]) for key in broken.values
    }


def test_the_level_of_the_waist_is_the_one_at_which_it_was_taken() -> None:
    low = Measurements(waist_girth=860, hip_girth=980, inside_leg_height=780, waist_height=960)
    assert complete(low, P)["waist_height"].mm == 960
