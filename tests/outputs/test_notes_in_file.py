"""What stands filled in behind a # of a measurements file does not go unused without a word."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from typed_files import PLAIN

from drafting.errors import DraftRefused
from outputs.demo import DEMO_FILES
from outputs.measurement_file import read_measurements, write_template
from outputs.notes_in_file import read_notes
from outputs.units import Unit


def told(tmp_path: Path, text: str) -> list[str]:
    path = tmp_path / "ada.toml"
    path.write_text(text, encoding="utf-8")
    try:
        return [str(warning) for warning in read_measurements(path).warnings]
    except DraftRefused as refusal:
        return str(refusal).replace(f"{path}: ", "").splitlines()


def filled(text: str, **values: str) -> str:
    for entry, value in values.items():
        assert text.count(f'{entry} = ""') >= 1
        text = text.replace(f'{entry} = ""', f'{entry} = "{value}"', 1)
    return text


BLANK = filled(
    write_template("Ada", Unit.CM), waist_girth="76", hip_girth="98", inside_leg_height="78", body_rise="27"
)


@pytest.mark.parametrize("unit", Unit)
def test_a_blank_file_and_those_of_the_demo_have_nothing_behind_a_sign(unit: Unit) -> None:
    assert not read_notes(write_template("Ada", unit)).problems
    assert not any(read_notes(path.read_text(encoding="utf-8")).problems for path in DEMO_FILES)


def test_a_value_behind_a_sign_is_told_with_its_line(tmp_path: Path) -> None:
    (line,) = told(tmp_path, filled(BLANK, thigh_girth="58"))
    number = BLANK[: BLANK.index("# thigh_girth")].count("\n") + 1
    assert line.startswith(f'line {number}: thigh_girth = "58": This stands behind a # and is not used.')
    (line,) = told(tmp_path, filled(BLANK, full_seat="1.5"))
    assert 'fitting.full_seat = "1.5": This stands behind a #' in line


def test_a_needed_value_behind_a_sign_is_still_missing(tmp_path: Path) -> None:
    lines = told(tmp_path, PLAIN.replace("hip_girth", "# hip_girth"))
    assert any("hip girth is needed" in line for line in lines)
    assert any("hip_girth = 98: This stands behind a #" in line for line in lines)


def test_an_older_value_of_one_that_counts_may_be_kept_behind_a_sign(tmp_path: Path) -> None:
    assert told(tmp_path, PLAIN.replace("hip_girth = 98", "hip_girth = 98\n# hip_girth = 97")) == []


@pytest.mark.parametrize(
    ("table", "entry"), [("left", "thigh_girth"), ("fitting", "full_seat"), ("cloth", "stretch")]
)
def test_an_entry_below_a_heading_behind_a_sign_is_refused_and_not_read_elsewhere(
    tmp_path: Path, table: str, entry: str
) -> None:
    head, heading, rest = BLANK.partition(f"# [{table}]")
    text = head + heading + rest.replace(f'# {entry} = ""', f'{entry} = "1"', 1)
    (line,) = told(tmp_path, text)
    at = head.count("\n") + 1
    assert f'{table}.{entry} = "1": The heading [{table}] above it, line {at}, stands behind a #.' in line


def test_a_file_of_another_kind_is_told_in_one_line(tmp_path: Path) -> None:
    for text in ("# Notes\nbuy denim: 2 m\nand thread\n", '{\n  "waist_girth": 760.0\n}\n'):
        (line,) = told(tmp_path, text)
        assert line.startswith("This is no measurements file.")
    assert len(told(tmp_path, "waist girth: 76\nhip girth: 98\n")) > 1


@given(st.text(st.sampled_from('#[]="\n\r ab1leftfitting_thigh_girth')))
def test_any_text_is_read_and_no_line_is_lost(text: str) -> None:
    notes = read_notes(text)
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    kept = notes.text.split("\n")
    assert len(kept) == len(lines)
    assert all(new in (old, "") for old, new in zip(lines, kept, strict=True))
