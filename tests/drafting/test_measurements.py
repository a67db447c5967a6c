"""The table of measurements and the checks of a body against it."""

import csv
import pickle
from dataclasses import fields, replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.body.checks import check_measurements, refuse_meaningless
from drafting.body.measurements import MEASUREMENTS, Measurements, SideMeasurements, Sides
from drafting.body.relations import RELATIONS
from tests.strategies import OPTIONAL, bodies

WOMAN = Measurements(waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=270)
SURVEY = Path(__file__).parents[3] / "shared" / "data" / "bodies" / "army-2012.csv"


def refusals(measurements: Measurements) -> list[str]:
    return [p.key for p in check_measurements(measurements) if p.severity is Severity.REFUSAL]


def warnings(measurements: Measurements) -> list[str]:
    return [p.key for p in check_measurements(measurements) if p.severity is Severity.WARNING]


def test_every_measurement_of_the_table_is_a_field_and_the_other_way_round() -> None:
    choices = {"waist_taken_at", "estimate_like", "left", "right"}
    body = {spec.key for spec in MEASUREMENTS.values() if spec.sides is not Sides.EACH}
    side = {spec.key for spec in MEASUREMENTS.values() if spec.sides is not Sides.BODY}
    assert {field.name for field in fields(Measurements)} - choices == body
    assert {field.name for field in fields(SideMeasurements)} == side


@pytest.mark.parametrize("spec", MEASUREMENTS.values(), ids=lambda spec: spec.key)
def test_the_usual_range_lies_within_the_possible_one(spec) -> None:
    assert 0 < spec.possible.low < spec.usual.low < spec.usual.high < spec.possible.high


def test_every_relation_names_measurements_of_the_table() -> None:
    for relation in RELATIONS:
        for key in (relation.key, *relation.given, *relation.unless):
            assert key.removeprefix("left.").removeprefix("right.") in MEASUREMENTS


def test_an_ordinary_body_has_no_problem() -> None:
    assert check_measurements(WOMAN) == []


def test_everything_missing_is_said_at_once() -> None:
    assert refusals(Measurements()) == ["waist_girth", "hip_girth", "inside_leg_height", "waist_height"]


@pytest.mark.parametrize(
    "value",
    [float("nan"), float("inf"), -760.0, 0, "760", True, [760], 10**400, pytest.param(10**5000, id="huge")],
)
def test_what_is_no_length_is_refused_under_its_name(value) -> None:
    assert refusals(replace(WOMAN, thigh_girth=value)) == ["thigh_girth"]


@pytest.mark.parametrize("field", ["waist_taken_at", "estimate_like", "left", "right"])
def test_what_is_no_choice_is_refused_under_its_name(field: str) -> None:
    assert refusals(replace(WOMAN, **{field: "left"})) == [field]


def test_what_are_no_measurements_are_refused() -> None:
    assert [problem.severity for problem in check_measurements({"waist_girth": 760})] == [Severity.REFUSAL]


def test_centimetres_given_for_millimetres_are_named() -> None:
    [problem] = check_measurements(replace(WOMAN, waist_girth=76))
    assert "did you mean 76 cm = 760 mm?" in problem.message
    assert problem.plausible == "550 mm to 1500 mm"


@pytest.mark.parametrize("spec", MEASUREMENTS.values(), ids=lambda spec: spec.key)
def test_one_millimetre_beyond_the_possible_range_is_refused(spec) -> None:
    for mm in (spec.possible.low - 1, spec.possible.high + 1):
        if spec.sides is Sides.EACH:
            body = replace(WOMAN, left=SideMeasurements(**{spec.key: mm}))
            assert refusals(body) == [f"left.{spec.key}"]
        else:
            assert refusals(replace(WOMAN, **{spec.key: mm})) == [spec.key]


@pytest.mark.parametrize(
    "body",
    [
        Measurements(waist_girth=1180, hip_girth=980, inside_leg_height=780, body_rise=290),
        # Told of by a home sewist: 27 1/2 in waist, 43 1/2 in hip, 12 in rise, 33 1/2 in between the legs.
        Measurements(
            waist_girth=698.5,
            hip_girth=1104.9,
            inside_leg_height=690,
            body_rise=304.8,
            top_hip_girth=952.5,
            total_crotch_length=850.9,
            stature=1524,
        ),
        Measurements(waist_girth=760, hip_girth=980, inside_leg_height=690, body_rise=310),
        Measurements(waist_girth=760, hip_girth=980, inside_leg_height=690, waist_height=1000, stature=1600),
        Measurements(waist_girth=900, hip_girth=980, inside_leg_height=780, waist_height=950, hip_height=900),
        Measurements(waist_girth=520, hip_girth=540, inside_leg_height=380, body_rise=170),
        Measurements(waist_girth=1950, hip_girth=2050, inside_leg_height=700, body_rise=380),
    ],
    ids=[
        "waist 20 cm over hip",
        "hip 406 mm over waist",
        "long rise, short legs",
        "the same, standing",
        "hip 50 mm below waist",
        "small child",
        "very large adult",
    ],
)
def test_an_unusual_but_possible_body_is_not_refused(body: Measurements) -> None:
    assert refusals(body) == []


def test_a_long_rise_over_short_legs_is_remarked_upon() -> None:
    assert warnings(Measurements(waist_girth=760, hip_girth=980, inside_leg_height=690, body_rise=310)) == [
        "body_rise"
    ]


def inches(waist: float, hip: float, rise: float, crotch: float) -> Measurements:
    return Measurements(
        waist_girth=25.4 * waist,
        hip_girth=25.4 * hip,
        body_rise=25.4 * rise,
        inside_leg_height=760,
        total_crotch_length=25.4 * crotch,
    )


def test_a_body_measured_over_jeans_is_asked_about() -> None:
    """2 in more on the hip and 4 in on the crotch length than the body has: (31 - 2 * 10) / 40 = 0.275."""
    [problem] = check_measurements(inches(30, 40, 10, 31))
    assert problem.severity is Severity.WARNING
    assert "hip girth 1016 mm" in problem.message and "crotch length 787 mm" in problem.message
    assert "What was worn" in problem.message
    assert problem.plausible == "610 mm to 762 mm beside them"


def test_the_same_body_measured_without_them_is_not() -> None:
    """(27 - 2 * 10) / 38 = 0.184."""
    assert check_measurements(inches(30, 38, 10, 27)) == []


def test_a_seated_rise_that_disagrees_with_the_side_is_shown_beside_it() -> None:
    """Seated rise 260, outside less inside leg 300: 40 mm apart."""
    body = replace(WOMAN, body_rise=260, inside_leg_height=740, outside_leg_length=1040)
    [problem] = check_measurements(body)
    assert (problem.key, problem.severity) == ("body_rise", Severity.WARNING)
    assert "260 mm" in problem.message and "300 mm: 40 mm apart" in problem.message


@pytest.mark.parametrize(
    ("rise", "keys"), [(260, []), (280, []), (310, []), (249, ["body_rise"]), (311, ["body_rise"])]
)
def test_seated_rise_may_be_20_mm_more_than_standing_give_or_take_30(rise: float, keys: list[str]) -> None:
    assert warnings(replace(WOMAN, waist_height=1040, body_rise=rise)) == keys


@pytest.mark.parametrize(
    ("changes", "key"),
    [
        ({"knee_height": 775}, "knee_height"),
        ({"knee_girth": 400, "thigh_girth": 390}, "thigh_girth"),
        ({"waist_girth": 380}, "waist_girth"),
        ({"waist_height": 1040, "hip_height": 1035}, "hip_height"),
        ({"hip_height": 700}, "hip_height"),
        ({"front_waist_arc": 765}, "front_waist_arc"),
        ({"front_hip_arc": 980}, "front_hip_arc"),
        ({"total_crotch_length": 700, "back_crotch_length": 700}, "back_crotch_length"),
        (
            {"total_crotch_length": 700, "front_crotch_length": 400, "back_crotch_length": 400},
            "total_crotch_length",
        ),
        ({"stature": 1000}, "inside_leg_height"),
        ({"waist_to_hip": 345}, "waist_to_hip"),
        ({"knee_height": 420, "calf_height": 430}, "calf_height"),
    ],
)
def test_values_that_contradict_each_other_are_refused(changes: dict[str, float], key: str) -> None:
    assert refusals(replace(WOMAN, **changes)) == [key]


@pytest.mark.parametrize(
    ("changes", "key"),
    [
        ({"knee_girth": 370, "calf_girth": 450}, "calf_girth"),
        ({"calf_girth": 350, "ankle_girth": 300}, "ankle_girth"),
        ({"thigh_girth": 560, "mid_thigh_girth": 580}, "mid_thigh_girth"),
        ({"hip_height": 770}, "hip_height"),
        (
            {"front_crotch_length": 300, "back_crotch_length": 385, "total_crotch_length": 700},
            "total_crotch_length",
        ),
        ({"waist_height": 1030, "outside_leg_length": 1110}, "outside_leg_length"),
    ],
)
def test_values_that_hardly_go_together_are_remarked_upon(changes: dict[str, float], key: str) -> None:
    body = replace(WOMAN, **changes)
    assert refusals(body) == []
    assert warnings(body) == [key]


def test_each_side_is_judged_with_its_own_values() -> None:
    assert refusals(replace(WOMAN, knee_height=450, right=SideMeasurements(inside_leg_height=460))) == [
        "knee_height"
    ]
    [problem] = check_measurements(
        replace(WOMAN, knee_height=450, right=SideMeasurements(inside_leg_height=650))
    )
    assert "right inside leg height 650 mm" in problem.message


def test_half_hip_arcs_make_the_hip() -> None:
    body = replace(WOMAN, hip_girth=1000, left=SideMeasurements(half_hip_arc=510))
    assert check_measurements(replace(body, right=SideMeasurements(half_hip_arc=490))) == []
    assert warnings(replace(body, right=SideMeasurements(half_hip_arc=470))) == ["hip_girth"]


def test_a_needed_value_given_for_the_sides_only_is_asked_for_once_more() -> None:
    legs = SideMeasurements(inside_leg_height=780)
    [problem] = check_measurements(replace(WOMAN, inside_leg_height=None, left=legs, right=legs))
    assert problem.key == "inside_leg_height" and "besides its sides" in problem.message


def test_a_refusal_holds_all_refusals_and_is_a_value_error() -> None:
    with pytest.raises(ValueError) as caught:
        refuse_meaningless(Measurements(waist_girth=-1), source="zoe.toml")
    assert isinstance(caught.value, DraftRefused)
    lines = str(caught.value).split("\n")
    assert len(lines) == len(caught.value.problems) == 4
    assert all(line.startswith("zoe.toml: ") for line in lines)


def test_a_refusal_survives_the_way_between_processes() -> None:
    refused = DraftRefused(
        [Problem("waist_girth", "Too small.", Severity.REFUSAL, "30", "55 to 150", 7)], "a.toml"
    )
    again = pickle.loads(pickle.dumps(refused))
    assert again.problems == refused.problems
    assert str(again) == "a.toml: line 7: waist_girth = 30: Too small. Plausible: 55 to 150."


@given(bodies())
def test_a_plausible_body_is_never_refused(body: Measurements) -> None:
    assert refusals(body) == []


@given(
    st.dictionaries(
        st.sampled_from([*OPTIONAL, "waist_girth", "hip_girth", "waist_height"]),
        st.one_of(st.floats(), st.integers(), st.sampled_from(["", "76", None, True])),
    )
)
def test_whatever_is_typed_gives_problems_and_no_crash(values) -> None:
    for problem in check_measurements(Measurements(**values)):
        assert str(problem)


@pytest.mark.slow
@pytest.mark.skipif(not SURVEY.exists(), reason="the survey is not part of the project")
def test_nobody_of_the_army_survey_is_refused_and_few_are_remarked_upon() -> None:
    """2012 Anthropometric Survey of U.S. Army Personnel, 4,537 adults, centimetres, waist at the navel."""
    keys = (
        "waist_girth",
        "hip_girth",
        "waist_height",
        "hip_height",
        "inside_leg_height",
        "knee_height",
        "stature",
        "thigh_girth",
        "calf_girth",
        "ankle_girth",
        "heel_girth",
        "total_crotch_length",
        "back_crotch_length",
    )
    remarked = people = 0
    with SURVEY.open(newline="") as stream:
        for row in csv.DictReader(stream):
            body = Measurements(**{key: float(row[key]) * 10 for key in keys})
            assert refusals(body) == [], row["id"]
            people += 1
            remarked += bool(warnings(body))
    assert people > 4000
    assert remarked < 0.1 * people
