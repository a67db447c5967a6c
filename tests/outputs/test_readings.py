"""Measurements taken several times: the median counts, every reading is checked, a wide spread is told."""

import json
import statistics
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.units import Unit
from outputs.commands.main import main
from outputs.reading.measurement_template import write_template
from outputs.reading.measurements_file import MeasurementFile, read_measurements
from tests.outputs.typed_files import PLAIN

shared_folder = settings(suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])


@pytest.fixture
def read(tmp_path: Path):
    def reads(hip: str, text: str = PLAIN) -> MeasurementFile:
        path = tmp_path / "ada.toml"
        path.write_text(text.replace("hip_girth = 98", f"hip_girth = {hip}"), encoding="utf-8")
        return read_measurements(path)

    return reads


@pytest.fixture
def problems(read):
    def reads(*words: str) -> tuple[Problem, ...]:
        with pytest.raises(DraftRefused) as caught:
            read(*words)
        return caught.value.problems

    return reads


def test_the_middle_reading_counts_whatever_its_unit(read) -> None:
    file = read('[98, "99 cm", 98.5]')
    assert (file.measurements.hip_girth, file.readings, file.warnings) == (985, {"hip_girth": 3}, ())
    assert read('["980 mm", "39 in", 99]').measurements.hip_girth == 990  # 39 in = 990.6 mm


def test_of_an_even_number_the_mean_of_the_middle_two_counts(read) -> None:
    assert read("[98, 99]").measurements.hip_girth == 985
    assert read('["38 1/2 in", "39 in"]').measurements.hip_girth == 984.25  # 977.9 and 990.6 mm
    assert read("[97.5, 98, 98.4, 98.5]").measurements.hip_girth == pytest.approx(982)


def test_one_reading_in_a_list_is_that_reading(read) -> None:
    assert read("[98]").measurements == read("98").measurements


@shared_folder
@given(
    typed=st.lists(
        st.tuples(st.integers(9600, 10400), st.sampled_from(["{:.2f}", '"{:.2f} cm"', '"{:.1f} mm"'])),
        min_size=1,
        max_size=9,
    )
)
def test_any_list_of_readings_gives_the_median_that_the_standard_library_finds(typed, read) -> None:
    words = [form.format(mm / (10 if "mm" in form else 100)) for mm, form in typed]
    file = read(f"[{', '.join(words)}]")
    all_mm = [hundredths / 10 for hundredths, _ in typed]
    assert file.measurements.hip_girth == pytest.approx(statistics.median(all_mm))
    assert bool(file.warnings) == (max(all_mm) - min(all_mm) > 10 + 1e-6)


def test_readings_more_than_10_mm_apart_are_warned_of_with_both_ends_in_the_wearers_unit(read) -> None:
    assert read("[98, 98.4, 99]").warnings == ()
    (warning,) = read("[98, 98.5, 99.1]").warnings
    assert (warning.line, warning.value) == (7, "[98, 98.5, 99.1]")
    assert "lie 1.1 cm apart, from 98.0 cm to 99.1 cm" in warning.message
    assert "median 98.5 cm is used" in warning.message
    inches = PLAIN.replace('"cm"', '"in"').replace("76", "30").replace("78", "31").replace("27", '"10 1/2"')
    (warning,) = read('[38, "38 1/2"]', inches).warnings
    assert "from 38 in to 38 1/2 in" in warning.message


def test_every_reading_is_checked_with_its_own_message(problems) -> None:
    found = problems('[98, 980, "38 foot", true, 9.8, "98,2"]')
    assert [problem.line for problem in found] == [7] * 4
    assert [problem.value for problem in found] == ["980", '"38 foot"', "True", "9.8"]
    assert [problem.message.partition(":")[0] for problem in found] == [
        f"Reading {number} of 6" for number in (2, 3, 4, 5)
    ]
    assert "did you mean 980 mm = 98.0 cm?" in found[0].message
    assert all(problem.plausible == "75.0 cm to 160.0 cm" for problem in found)


def test_a_reading_without_any_unit_is_refused(problems) -> None:
    text = PLAIN.replace('unit = "cm"\n', "")
    for number in ("76", "78", "27"):
        text = text.replace(f"= {number}", f'= "{number} cm"')
    (problem,) = problems('["98 cm", 98.5]', text)
    assert problem.message.startswith("Reading 2 of 2: ") and "no unit is stated" in problem.message


def test_under_a_misspelt_unit_the_readings_are_not_to_blame(problems) -> None:
    (problem,) = problems("[98, 98.5]", PLAIN.replace('"cm"', '"cms"'))
    assert problem.key == "unit"


def test_an_unusual_reading_is_warned_of_once_and_no_second_time_for_the_median(read) -> None:
    warnings = [w for w in read("[74.5, 74.6, 75.5]").warnings if "unusual" in w.message]
    assert [w.value for w in warnings] == ["74.5", "74.6"]
    assert all(w.severity is Severity.WARNING for w in warnings)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("[]", 'is empty; write "" for what was not measured'),
        ("[[98, 99]]", "a length is a number"),
        ("[98, {a = 1}]", "Reading 2 of 2"),
        ('["", "", ""]', "there is no number"),
        ("[nan]", "not a number that a tape can show"),
    ],
)
def test_a_list_that_holds_no_readings_is_refused_clearly(typed: str, said: str, problems) -> None:
    found = problems(typed)
    assert said in found[0].message and {problem.key for problem in found} == {"hip_girth"}


def test_a_refused_reading_does_not_make_the_measurement_missing(problems) -> None:
    assert len(problems("[98, -98]")) == 1


def test_a_side_can_be_read_several_times_too(read) -> None:
    file = read("98", PLAIN + "[left]\nthigh_girth = [58, 58.5, 59]\n")
    assert file.measurements.left is not None and file.measurements.left.thigh_girth == 585
    assert file.readings == {"left.thigh_girth": 3}


@shared_folder
@given(inside=st.text(alphabet="0129.,/½-\"'“cmin #[]{}xe_+\n", max_size=25))
def test_anything_in_brackets_is_a_median_or_a_refusal(inside: str, read) -> None:
    try:
        file = read(f"[{inside}]")
    except DraftRefused as refused:
        assert str(refused)
    else:
        assert file.readings["hip_girth"] >= 1


@pytest.mark.slow
def test_the_draft_says_what_it_took_the_median_of(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("ada.toml").write_text(PLAIN.replace("hip_girth = 98", "hip_girth = [97.5, 98, 98.2]"))
    result = CliRunner().invoke(main, ["draft", "ada.toml", "--out", "out"])
    assert "taken several times: hip girth 98.0 cm, median of 3 readings" in result.stdout.splitlines()
    figures: dict[str, Any] = json.loads(Path("out/figures.json").read_text(encoding="utf-8"))
    assert figures["body"]["hip_girth"]["source"] == "median of 3 readings"
    assert figures["body"]["waist_girth"]["source"] == ""


@pytest.mark.parametrize("typed", ["[98, 98 cm]", "[98, 38 1/2]", "[98, 98.5", "[98; 98.5]", "[98, “98”]"])
def test_a_slip_in_a_list_gets_a_hint_of_its_own(typed: str, problems) -> None:
    (problem,) = problems(typed)
    assert 'Readings are listed like [98, "98,5", "38 3/4 in"]' in problem.message and problem.line == 7


@pytest.mark.parametrize("unit", Unit)
def test_the_blank_file_tells_how_to_write_several_readings(unit: Unit, read) -> None:
    (note,) = (line for line in write_template("Ada", unit).splitlines() if "the median counts" in line)
    typed = note.partition("hip_girth = ")[2]
    plain = PLAIN.replace('"cm"', f'"{unit.value}"')
    for number in ("76", "78", "27"):
        plain = plain.replace(f"= {number}", f'= "{number} cm"')
    assert read(typed, plain).readings == {"hip_girth": 3}
