"""`measure-twice`: which measurements move the pattern most, as a person reads it."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from outputs.commands.main import main
from outputs.demo import DEMO_FILES
from tests.outputs.typed_files import FULL, PLAIN, UNEVEN


@pytest.fixture
def lines(tmp_path: Path):
    def reads(text: str) -> list[str]:
        path = tmp_path / "ada.toml"
        path.write_text(text, encoding="utf-8")
        result = run(path)
        assert (result.exit_code, result.stderr) == (0, "")
        return result.stdout.splitlines()

    return reads


def run(path: Path) -> Result:
    return CliRunner().invoke(main, ["measure-twice", str(path)])


@pytest.mark.slow
@pytest.mark.parametrize("text", [FULL, UNEVEN, DEMO_FILES[0].read_text(encoding="utf-8")])
def test_lines_are_short_and_the_first_names_what_to_take_twice(text: str, lines) -> None:
    found = lines(text)
    assert all(len(line) <= 80 for line in found)
    assert found[0].startswith("Most worth taking twice: ")


def test_each_measurement_that_moves_anything_has_a_line_for_more_and_one_for_less(lines) -> None:
    found = lines(PLAIN)
    rows = {line[:24].strip(): number for number, line in enumerate(found) if line[24:28] == " +10"}
    assert rows.keys() == {"waist girth", "hip girth", "inside leg height", "body rise, seated"}
    for name, length in (("waist girth", "+10.0"), ("hip girth", "+10.0")):
        assert length in found[rows[name]] and length.replace("+", "-") in found[rows[name] + 1]
        assert found[rows[name] + 1].split()[0] == "-10"
    outlines = [float(found[number].split()[-7]) for number in rows.values()]
    assert outlines == sorted(outlines, reverse=True)


def test_what_changes_nothing_is_named_in_one_sentence(lines) -> None:
    text = " ".join(lines(FULL.replace('estimate_like = "women"\n', "") + "stature = 166\n"))
    assert "stature" in text.partition("No change by 10 mm of: ")[2]


def test_inches_are_told_what_10_mm_is(lines) -> None:
    text = '[measurements]\nwaist_girth = 30\nhip_girth = 39\ninside_leg_height = 31\nbody_rise = "10 1/2"\n'
    assert "what 10 mm (3/8 in) more or less" in " ".join(lines(f'unit = "in"\n{text}'))


def test_a_change_that_cannot_be_drafted_is_told_in_the_unit_of_the_file(lines) -> None:
    found = lines(PLAIN.replace("waist_girth = 76", "waist_girth = 40"))
    (refused,) = (number for number, line in enumerate(found) if line.endswith("-10  refused"))
    reason = " ".join(" ".join(found[refused + 1 : refused + 4]).split())
    assert reason.startswith("The waist girth 39.0 cm cannot go with hip girth 98.0 cm")


@pytest.mark.parametrize("text", [PLAIN.replace("98", "980"), "", "x = ["])
def test_a_file_that_cannot_be_drafted_is_refused_as_ever(tmp_path: Path, text: str) -> None:
    (tmp_path / "ada.toml").write_text(text)
    result = run(tmp_path / "ada.toml")
    assert (result.exit_code, result.stdout) == (2, "") and result.stderr.startswith(
        str(tmp_path / "ada.toml")
    )


def test_the_stretch_of_the_cloth_is_reckoned_with(lines) -> None:
    assert lines(PLAIN) != lines(f"{PLAIN}\n[cloth]\nstretch = 30\n")


def test_nothing_is_written(lines, tmp_path: Path) -> None:
    lines(PLAIN)
    assert [path.name for path in tmp_path.iterdir()] == ["ada.toml"]
