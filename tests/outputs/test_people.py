"""A class as people type it: a folder of files, or a table of any separator with holes, units and slips."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given
from hypothesis import strategies as st

from drafting.base.errors import DraftRefused
from drafting.base.units import Unit
from outputs.reading.class_file import Person, find_people
from outputs.reading.measurements_file import MeasurementFile, read_measurements
from tests.invented_class import people, table
from tests.outputs.typed_files import PLAIN
from tests.strategies import examples

HEAD = "wearer;unit;waist_girth;hip_girth;inside_leg_height;body_rise"


@pytest.fixture
def csv_file(tmp_path: Path):
    def write(text: str | bytes) -> Path:
        path = tmp_path / "class.csv"
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
        return path

    return write


def read(path: Path) -> list[Person]:
    return list(find_people(path))


def told(person: Person) -> str:
    assert isinstance(person.read, DraftRefused)
    return str(person.read)


def refused(path: Path) -> str:
    with pytest.raises(DraftRefused) as caught:
        find_people(path)
    return str(caught.value)


def test_a_row_reads_as_the_same_file_would(csv_file, tmp_path: Path) -> None:
    full = f"{HEAD};taken on;estimate_like;left.thigh_girth;cloth.stretch;fitting.full_seat\n"
    row = 'Ada Example;cm;76;"98";30 3/4 in;27,0;spring;women;57;20 %;15 mm\n'
    (person,) = read(csv_file(full + row))
    written = PLAIN.replace("78", '"30 3/4 in"').replace("[meas", 'estimate_like = "women"\n[meas')
    (tmp_path / "ada.toml").write_text(
        written + "[left]\nthigh_girth = 57\n[cloth]\nstretch = 20\n[fitting]\nfull_seat = 1.5\n"
    )
    alone = read_measurements(tmp_path / "ada.toml")
    assert isinstance(person.read, MeasurementFile)
    for name in ("wearer", "taken_on", "unit", "measurements", "cloth", "corrections"):
        assert getattr(person.read, name) == getattr(alone, name)


@pytest.mark.parametrize("separator", [",", ";", "\t"])
@pytest.mark.parametrize("ending", ["\n", "\r\n"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_any_spreadsheets_table_is_read(csv_file, separator: str, ending: str, mark: str) -> None:
    found = read(csv_file(mark + table(people(5), separator).replace("\n", ending)))
    assert [person.name for person in found] == [row["wearer"] for row in people(5)]
    assert [person.row for person in found] == [2, 3, 4, 5, 6]
    assert all(isinstance(person.read, MeasurementFile) for person in found)


def test_empty_cells_are_not_given_and_empty_rows_are_nobody(csv_file) -> None:
    found = find_people(
        csv_file(f"{HEAD};thigh_girth\n;;;;;;\nAda;cm;76;98;78;27;\n\n;;;;;;\nBo;cm;80;99;78;27\n")
    )
    assert found.count == 2
    assert [person.place.rpartition(", ")[2] for person in found] == ["row 3", "row 6"]
    ada = next(iter(found)).read
    assert isinstance(ada, MeasurementFile) and ada.measurements.thigh_girth is None


def test_every_problem_of_a_row_is_told_with_its_number_in_the_words_of_a_file(csv_file) -> None:
    rows = f"{HEAD}\nAda;cm;76;98;78;27\nBo;cm;760;371/2;78;\nCy;;30 in;98;78;27\n"
    _, bo, cy = read(csv_file(rows))
    lines = told(bo).splitlines()
    assert all(line.startswith(f"{bo.place}: ") and ", row 3: " in line for line in lines)
    assert 'waist_girth = "760"' in told(bo)
    assert 'hip_girth = "371/2": The hip girth cannot be read' in told(bo)
    assert "One of these is needed for a draft" in told(bo)
    # no unit was stated: each bare number is told, the one in inches is fine
    assert told(cy).count("no unit is stated") == 3 and "waist_girth" not in told(cy)


def test_a_decimal_comma_that_parts_a_cell_is_told(csv_file) -> None:
    (person,) = read(csv_file(HEAD.replace(";", ",") + "\nAda,cm,76,97,5,78,27\n"))
    assert "more cells than the first row" in told(person)


def test_a_quotation_mark_that_does_not_close_is_told(csv_file) -> None:
    found = read(csv_file(f'{HEAD}\nAda;cm;76;98;78;27\n"Bo;cm;76;98;78;27\nCy;cm;76;98;78;27\n'))
    assert found[0].name == "Ada" and "does not close" in told(found[-1])
    # an inch sign without quotes round it is no quotation mark
    (person,) = read(csv_file(f'{HEAD}\nAda;in;30"' + ';38 1/2";31;10 1/2"\n'))
    assert isinstance(person.read, MeasurementFile) and person.read.unit is Unit.INCH


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "The first row should name the measurements"),
        ("Ada;cm;76;98;78;27\n", "The first row should name the measurements"),
        (f"{HEAD}\n", "There is nobody below the first row."),
        (f"{HEAD};hip_grith\nAda\n", 'Column 7: no measurement has this name. Did you mean "hip_girth"?'),
        (f"{HEAD};hip girth\nAda\n", "hip_girth: Column 7: this stands in the table twice"),
        (f"{HEAD};;thigh_girth\nAda\n", "Column 7: no measurement has this name."),
    ],
)  # fmt: skip
def test_a_table_that_is_none_is_refused_whole(csv_file, text: str, message: str) -> None:
    assert message in refused(csv_file(text))


def test_all_wrong_columns_are_told_at_once(csv_file) -> None:
    assert refused(csv_file(f"{HEAD};hip_grith;shoe size\nAda\n")).count("no measurement has this name") == 2


def test_a_folder_gives_its_files_in_the_order_of_their_names(tmp_path: Path) -> None:
    (tmp_path / "b.toml").write_text(PLAIN)
    (tmp_path / "a.toml").write_text(PLAIN.replace("98", "980"))
    (tmp_path / "notes.txt").write_text("not a person")
    first, second = read(tmp_path)
    assert (first.name, second.name) == ("a", "Ada Example")
    assert told(first).startswith(f"{tmp_path / 'a.toml'}: line ")


def test_no_folder_no_person_no_table(tmp_path: Path) -> None:
    assert "no measurements file in this folder" in refused(tmp_path)
    assert "There is no such file." in refused(tmp_path / "class.csv")
    (tmp_path / "ada.toml").write_text(PLAIN)
    assert "This is one measurements file" in refused(tmp_path / "ada.toml")


@examples(150, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
@given(rows=st.text(alphabet='abc;,\t\n\r"0179 /½\x00é=[]', max_size=60))
def test_whatever_is_typed_below_the_first_row_everybody_is_read_or_told(csv_file, rows: str) -> None:
    path = csv_file(f"{HEAD}\n{rows}\n")
    try:
        found = find_people(path)
    except DraftRefused:
        return
    all_read = list(found)
    assert len(all_read) == found.count
    assert all(isinstance(person.read, MeasurementFile | DraftRefused) and person.name for person in all_read)


def test_the_table_in_the_help_of_the_command_is_a_class_that_can_be_drafted(tmp_path: Path) -> None:
    from outputs.commands.draft_all import draft_all

    table = [line.strip() for line in (draft_all.epilog or "").splitlines() if line.startswith("  ")]
    (tmp_path / "class.csv").write_text("\n".join(table))
    read = [person.read for person in find_people(tmp_path / "class.csv")]
    assert len(read) == 2 and all(isinstance(each, MeasurementFile) and not each.warnings for each in read)
