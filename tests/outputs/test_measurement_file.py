"""The measurements file: written blank, filled in, read back, and refused in plain words."""

import re
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.units import Unit
from drafting.body.measurements import MEASUREMENTS, Measurements, Population, Sides, WaistLevel
from outputs.reading.measurement_template import write_template
from outputs.reading.measurements_file import MeasurementFile, read_measurements
from tests.strategies import bodies

ROOT = Path(__file__).parents[2]
DEMO = sorted((ROOT / "outputs" / "demo").glob("*.toml"))
BODY = "[measurements]\nwaist_girth = 76\nhip_girth = 98\ninside_leg_height = 78\nbody_rise = 27\n"

# One file for all examples that hypothesis tries in a test.
shared_folder = settings(suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])


@pytest.fixture
def read(tmp_path: Path):
    def reads(text: str | bytes) -> MeasurementFile:
        path = tmp_path / "zoe.toml"
        path.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass"))
        return read_measurements(path)

    return reads


@pytest.fixture
def problems(read):
    def reads(text: str | bytes) -> tuple[Problem, ...]:
        with pytest.raises(DraftRefused) as caught:
            read(text)
        return caught.value.problems

    return reads


def test_a_filled_in_file_gives_millimetres_and_names(read) -> None:
    file = read(
        'wearer = "Zoë"\ntaken_on = 2026-03-14\nunit = "cm"\nwaist_taken_at = "worn"\n'
        'estimate_like = "women"\n' + BODY + 'thigh_girth = "23 in"\n[left]\nthigh_girth = 59\n'
    )
    assert (file.wearer, file.taken_on, file.unit, file.warnings) == ("Zoë", "2026-03-14", Unit.CM, ())
    body = file.measurements
    assert (body.waist_girth, body.hip_girth, body.thigh_girth) == (760, 980, 584.2)
    assert (body.waist_taken_at, body.estimate_like) == (WaistLevel.WORN, Population.WOMEN)
    assert body.left is not None and body.left.thigh_girth == 590 and body.right is None


def test_a_name_that_stands_in_two_places_is_told_at_its_own_line(tmp_path: Path) -> None:
    (tmp_path / "ada.toml").write_text('waist_girth = 76\nunit = "cm"\n' + BODY + 'unit = "in"\n')
    with pytest.raises(DraftRefused) as caught:
        read_measurements(tmp_path / "ada.toml")
    found = {(problem.key, problem.line) for problem in caught.value.problems}
    assert found == {("waist_girth", 1), ("unit", 3 + BODY.count("\n"))}


def test_what_the_file_leaves_out_has_plain_defaults(read) -> None:
    file = read('unit = "cm"\n' + BODY)
    assert (file.wearer, file.taken_on) == ("zoe", "")
    assert file.measurements == Measurements(
        waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=270
    )


def test_warnings_carry_line_value_and_range_in_the_unit_of_the_file(read) -> None:
    [warning] = read(
        'unit = "in"\n[measurements]\nwaist_girth = 30\nhip_girth = "38 1/2"\ninside_leg_height = 31\n'
        'body_rise = "10 1/2"\nstature = "52"\n'
    ).warnings[:1]
    assert (warning.key, warning.value, warning.line) == ("stature", '"52"', 7)
    assert warning.plausible == "53 1/8 in to 82 11/16 in"


@pytest.mark.parametrize("unit", Unit)
def test_the_blank_file_asks_for_every_measurement_in_short_lines(unit: Unit, problems) -> None:
    text = write_template('Zoë "Z" \\ Łęcka', unit)
    assert max(len(line) for line in text.splitlines()) <= 90
    times = {Sides.BODY: 1, Sides.EITHER: 3, Sides.EACH: 2}
    for spec in MEASUREMENTS.values():
        assert text.count(f'\n{spec.key} = ""') == times[spec.sides]
    assert not re.search(r"^# *(\w+ =|\[)", text, re.M), "an entry to fill in is a note"
    missing = [problem.key for problem in problems(text)]
    assert missing == ["waist_girth", "hip_girth", "inside_leg_height", "waist_height"]


def test_the_blank_file_filled_in_is_read_with_every_measurement(read) -> None:
    body = (
        "waist_girth 76 hip_girth 98 inside_leg_height 78 waist_height 103 body_rise 27"
        " total_crotch_length 71 thigh_girth 58.5 knee_height 45 heel_girth 31.5 stature 166"
    )
    words = body.split()
    text = write_template('Zoë "Z" \\ Łęcka', Unit.CM)
    for key, value in zip(words[::2], words[1::2], strict=True):
        text = text.replace(f'\n{key} = ""', f'\n{key} = "{value}"', 1)
    file = read(text)
    assert file.wearer == 'Zoë "Z" \\ Łęcka'
    assert file.warnings == ()
    assert set(file.measurements.given()) == set(words[::2])


@pytest.mark.parametrize("text", ["# Notes\nbuy denim: 2 m\nand thread\n", '{\n  "waist_girth": 760.0\n}\n'])
def test_a_file_of_another_kind_is_told_in_one_line(problems, text: str) -> None:
    (problem,) = problems(text)
    assert problem.message.startswith("This is no measurements file.")


def test_one_line_of_a_measurements_file_is_enough_to_be_told_what_is_wrong_with_it(problems) -> None:
    assert [problem.line for problem in problems("waist girth: 76\nbuy denim: 2 m\n")][:2] == [1, 2]


@pytest.mark.parametrize(("entry", "home"), [("full_seat", "fitting"), ("stretch", "cloth")])
def test_what_is_no_measurement_is_sent_to_its_table(problems, entry: str, home: str) -> None:
    (problem,) = problems('unit = "cm"\n' + BODY + f'{entry} = "1"\n')
    assert problem.message == f"This belongs below the line [{home}]." and problem.line == 7


@pytest.mark.parametrize("name", ["", "  ", "two\nlines", "x" * 81, "\ud800"])
def test_a_name_that_cannot_be_printed_is_refused(name: str) -> None:
    with pytest.raises(DraftRefused):
        write_template(name, Unit.CM)


@pytest.mark.parametrize("path", DEMO, ids=lambda path: path.stem)
def test_each_demo_wearer_is_invented_and_without_a_warning(path: Path) -> None:
    assert path.read_text(encoding="utf-8").startswith("# An invented person")
    assert read_measurements(path).warnings == ()


def test_there_are_demo_wearers_with_much_and_with_little_measured() -> None:
    counts = [len(read_measurements(path).measurements.given()) for path in DEMO]
    assert min(counts) == 4 and sorted(counts)[-3] > 12


def test_everything_that_is_wrong_is_said_at_once_with_line_value_and_range(problems) -> None:
    found = problems(
        'unit = "cm"\nshoe = 42\n[measurements]\nwaist_girth = 30\nhip_girth = 980\ninside_leg = 78\n'
        'thigh_girth = "371/2"\nbody_rise = -27\nhalf_hip_arc = 49\n[left]\nwaist_girth = 76\n[shop]\n'
    )
    assert {(problem.key, problem.line) for problem in found} == {
        ("shoe", 2),
        ("waist_girth", 4),
        ("hip_girth", 5),
        ("inside_leg", 6),
        ("thigh_girth", 7),
        ("body_rise", 8),
        ("half_hip_arc", 9),
        ("left.waist_girth", 11),
        ("shop", 12),
    }
    by_key = {problem.key: problem for problem in found}
    assert by_key["waist_girth"].value == "30"
    assert by_key["waist_girth"].plausible == "55.0 cm to 150.0 cm"


def test_a_value_in_another_unit_is_named_with_both_readings(problems) -> None:
    waist, hip = problems('unit = "cm"\n' + BODY.replace("76", "30").replace("98", "980"))
    assert "30 read as cm is 11.8 in; did you mean 30 in = 76.2 cm?" in waist.message
    assert "did you mean 980 mm = 98.0 cm?" in hip.message


def test_centimetres_in_a_file_of_inches_are_named_too(problems) -> None:
    found = problems('unit = "in"\n' + BODY)
    assert "did you mean 98 cm = 38.6 in?" in next(
        problem.message for problem in found if problem.key == "hip_girth"
    )


def test_a_bare_number_in_a_file_without_a_unit_is_refused_with_both_readings(problems) -> None:
    waist, hip = problems(BODY.replace("78", "'78 cm'").replace("27", "'27 cm'"))
    assert (waist.line, hip.line) == (2, 3)
    assert "98 cm would be 38.6 in, 98 in would be 248.9 cm" in hip.message


def test_a_file_without_a_unit_is_read_when_every_value_has_its_own(read) -> None:
    text = BODY.replace("76", "'30 in'").replace("98", "'98 cm'").replace("78", "'780 mm'")
    file = read(text.replace("27", "'27 cm'"))
    assert file.measurements.waist_girth == 762


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("hipp", "hip_girth"),
        ("hip", "hip_girth"),
        ("Hip_Girth", "hip_girth"),
        ("wast_girth", "waist_girth"),
        ("inseam", "inside_leg_height"),
        ("outseam", "outside_leg_length"),
        ("high_hip", "top_hip_girth"),
        ("crotch_length", "total_crotch_length"),
        ("thigh", "thigh_girth"),
        ("heel", "heel_girth"),
    ],
)
def test_a_misspelt_measurement_gets_a_suggestion(typed: str, meant: str, problems) -> None:
    [problem] = problems(f'unit = "cm"\n{BODY}{typed} = 60\n')
    assert f'Did you mean "{meant}"?' in problem.message


def test_a_misspelt_needed_measurement_is_not_called_missing_too(problems) -> None:
    [problem] = problems('unit = "cm"\n' + BODY.replace("waist_girth", "wasit_girth"))
    assert (problem.key, problem.line) == ("wasit_girth", 3)


@pytest.mark.parametrize(
    ("line", "hint"),
    [
        ('unit = "cms"', '"cm"'),
        ('unit = "Inches"', '"in"'),
        ('unit = "cm"\nestimate_like = "woman"', '"women"'),
        ('unit = "cm"\nwaist_taken_at = "worm"', '"worn"'),
        ('unit = "cm"\nweaver = "Zoë"', '"wearer"'),
    ],
)
def test_a_misspelt_choice_gets_a_suggestion_and_nothing_else_is_blamed(
    line: str, hint: str, problems
) -> None:
    [problem] = problems(f"{line}\n{BODY}")
    assert f"Did you mean {hint}?" in problem.message


def test_a_misspelt_table_gets_a_suggestion_and_nothing_else_is_blamed(problems) -> None:
    [problem] = problems('unit = "cm"\n' + BODY.replace("[measurements]", "[mesurements]"))
    assert 'Did you mean "measurements"?' in problem.message and problem.line == 2


def test_entries_in_the_wrong_place_are_told_where_they_belong(problems) -> None:
    found = problems('unit = "cm"\nhip_girth = 98\n' + BODY.replace("hip_girth = 98", 'wearer = "Zoë"'))
    assert "below the line [measurements]" in found[0].message
    assert "above the line [measurements]" in found[1].message


@pytest.mark.parametrize(
    ("line", "hint"),
    [
        ("thigh_girth = 58,5", '"58,5", or write a point, 58.5'),
        ("thigh_girth = 58 cm", 'quotes: "58 cm"'),
        ("thigh_girth = 23 1/2", 'quotes: "23 1/2"'),
        ('thigh_girth = 23.5"', 'quotes: "23.5 in"'),
        ('thigh_girth = "23.5""', 'write "23.5 in"'),
        ("thigh_girth = “58”", 'straight ones, "58"'),
        ('thigh_girth = "58', 'do not close, or something follows them: "58"'),
        ('thigh_girth = "58”', 'do not close, or something follows them: "58"'),
        ("thigh_girth =", 'write "" for what was not measured'),
        ("thigh_girth = wide", 'Text needs quotes: "wide"'),
        ("thigh girth = 58", 'thigh_girth = "58"'),
        ("thigh_girth: 58", 'instead of the colon: thigh_girth = "58"'),
        ("thigh_girth 58", 'form name = "value"'),
        ("[left", "square brackets"),
        ("body_rise = 28", "twice"),
        ("[measurements]", "twice"),
    ],
)
def test_a_slip_in_the_form_is_named_with_its_line_and_a_hint(line: str, hint: str, problems) -> None:
    [problem] = problems(f'unit = "cm"\n{BODY}{line}\n')
    assert hint in problem.message
    assert problem.line == 7


def test_slips_in_the_form_do_not_hide_what_else_is_wrong(problems) -> None:
    found = problems('unit = "cm"\n' + BODY.replace("76", "76,5").replace("98", "9.8"))
    assert [(problem.key, problem.line) for problem in found] == [("waist_girth", 3), ("hip_girth", 4)]


def test_each_problem_stays_on_its_line_whatever_the_names_and_values_hold(read) -> None:
    with pytest.raises(DraftRefused) as caught:
        read('wearer = "a\\nb"\n"c\\nd" = 1\nunit = "cm"\n' + BODY)
    assert len(str(caught.value).split("\n")) == len(caught.value.problems) == 2


def test_a_refusal_names_the_file_the_line_and_the_warnings_as_well(read) -> None:
    with pytest.raises(DraftRefused) as caught:
        read('unit = "cm"\n' + BODY.replace("76", "9") + "stature = 130\n")
    first, *others = str(caught.value).split("\n")
    assert "zoe.toml: line 3: waist_girth = 9: " in first
    assert all("zoe.toml: warning: line " in line for line in others) and others


def test_files_saved_by_other_editors_are_read_alike(read) -> None:
    text = 'unit = "cm"\n' + BODY
    expected = read(text).measurements
    assert read("\ufeff" + text).measurements == expected
    assert read(text.replace("\n", "\r\n")).measurements == expected
    assert read(text.replace("\n", "\r")).measurements == expected


@pytest.mark.parametrize(
    ("data", "line", "reason"),
    [
        (b'unit = "cm"\nwearer = "Zo\xeb"\n', 2, "UTF-8"),
        ('unit = "cm"'.encode("utf-16"), None, "UTF-16"),
        (b"%PDF-1.4\0\0", None, "no text file"),
        (b"x" * 1_000_001, None, "larger than 1 MB"),
    ],
    ids=["cp1252", "UTF-16", "binary", "too large"],
)
def test_what_is_no_text_is_refused_in_one_message(
    data: bytes, line: int | None, reason: str, problems
) -> None:
    [problem] = problems(data)
    assert reason in problem.message and problem.line == line


@pytest.mark.parametrize("name", ["nothing.toml", ".", "a\0b", "x" * 300])
def test_what_is_no_file_is_refused_in_one_message(name: str, tmp_path: Path) -> None:
    with pytest.raises(DraftRefused) as caught:
        read_measurements(tmp_path / name)
    assert len(caught.value.problems) == 1


@pytest.mark.parametrize(
    "text", ["a = " + "[" * 900, "a = " + "9" * 5000, "a = 1\n" * 3000, "x\n" * 3000, "[" * 2000]
)
def test_a_file_of_another_kind_gives_no_endless_list(text: str, problems) -> None:
    assert len(problems(text)) <= 61


@pytest.mark.parametrize(
    "value", ["true", "2026-03-14", "[]", "[[76]]", "{a = 1}", "nan", "inf", "1e400", "0x" + "f" * 900]
)
def test_what_is_no_length_is_refused_under_its_line(value: str, problems) -> None:
    [problem] = problems('unit = "cm"\n' + BODY.replace("76", value))
    assert (problem.key, problem.line) == ("waist_girth", 3)


@pytest.mark.parametrize(
    "entry", ["wearer = 3", 'wearer = "a\\nb"', "taken_on = true", "unit = 3", "measurements = 3"]
)
def test_an_entry_of_the_wrong_kind_is_refused(entry: str, problems) -> None:
    assert any(problem.key == entry.split()[0] and problem.line == 1 for problem in problems(entry + "\n"))


@shared_folder
@given(text=st.text())
@example(text="measurements.waist_girth.x = 1")
@example(text='left = "x"\n[right]\n[right.thigh_girth]')
@example(text="a = '''")
def test_any_text_at_all_is_measurements_or_a_refusal(text: str, read) -> None:
    try:
        read(text)
    except DraftRefused as refused:
        assert str(refused)


KEYS = [*MEASUREMENTS, "unit", "wearer", "[measurements]", "[left]", "inseam", ""]


@shared_folder
@given(
    rows=st.lists(
        st.tuples(
            st.sampled_from(KEYS),
            st.sampled_from(["=", " = ", ":", "", "\n"]),
            st.text(alphabet="0129.,/½-\"'“cmin #[]{}xe_+", max_size=9),
        )
    )
)
def test_any_near_miss_of_a_file_is_measurements_or_a_refusal(rows, read) -> None:
    try:
        read("\n".join("".join(row) for row in rows))
    except DraftRefused as refused:
        assert all(problem.message for problem in refused.problems)


@shared_folder
@given(body=bodies(sides=False), unit=st.sampled_from(Unit))
def test_a_body_written_by_hand_reads_back_within_rounding(body: Measurements, unit: Unit, read) -> None:
    rows = [f"{key} = {mm / unit.mm:.4f}" for key, mm in body.given().items()]
    file = read(f'unit = "{unit.value}"\n[measurements]\n' + "\n".join(rows))
    assert file.measurements.given() == pytest.approx(body.given(), abs=0.01)
    assert all(problem.severity is Severity.WARNING for problem in file.warnings)


def test_reading_loads_no_library_that_takes_long() -> None:
    slow = "{'numpy', 'shapely', 'reportlab', 'matplotlib'}"
    code = f"import sys, outputs.reading.measurements_file; print(sorted({slow} & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


CLOTH = (
    "unit = 'cm'\n[measurements]\nwaist_girth = 76\nhip_girth = 98\ninside_leg_height = 78\nbody_rise = 27\n"
)


@pytest.mark.parametrize("typed", ["-3", '"-3"', '"-3,0 %"', '"− 3%"', "-3.0"])
def test_a_percentage_of_the_cloth_is_read_however_it_is_typed(read, typed: str) -> None:
    assert read(f"{CLOTH}[cloth]\nlengthwise_change = {typed}\nstretch = ''\n").cloth == {
        "lengthwise_change": -3
    }


def test_without_a_word_on_the_cloth_nothing_is_assumed(read) -> None:
    assert read(CLOTH).cloth == read(f"{CLOTH}[cloth]\n").cloth == {}


def test_what_is_wrong_with_the_cloth_is_said_with_line_and_range(problems) -> None:
    found = problems(f"{CLOTH}[cloth]\nstrech = 2\nlengthwise_change = -40\ncrosswise_change = true\n")
    assert [(problem.key, problem.line) for problem in found] == [
        ("cloth.strech", 8), ("cloth.lengthwise_change", 9), ("cloth.crosswise_change", 10),
    ]  # fmt: skip
    assert 'Did you mean "stretch"?' in found[0].message
    assert found[1].value == "-40" and found[1].plausible.startswith("between -20 %")
    assert "A percentage is written like" in found[2].message and found[2].plausible == found[1].plausible
    (problem,) = problems(f"cloth = 3\n{CLOTH}")
    assert "[cloth]" in problem.message
