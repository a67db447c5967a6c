"""The list of styles, one style with its settings, and a style file to change."""

import tomllib
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from outputs.commands import main as command
from outputs.files.text_file import read_file
from outputs.reading.style_file import find_style, read_style
from styles.choice.catalogue import catalogue_names
from styles.choice.settings import SETTINGS


def run(*words: object) -> Result:
    return CliRunner().invoke(command.main, [str(word) for word in words])


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_the_list_tells_of_each_style_what_it_is_like_its_rise_cloth_and_leg() -> None:
    lines = run("styles").stdout.splitlines()
    assert all(len(line) <= 80 for line in lines)
    text = " ".join(" ".join(lines).split())
    assert [line.split()[0] for line in lines if not line.startswith(" ")] == list(catalogue_names())
    assert all(find_style(name).says in text for name in catalogue_names())
    assert "mid rise; cloth that stretches by 20 % or more leg: knee 37 %, hem 32 % of the hip girth" in text
    assert "hem 25.0 cm to 36.0 cm; ends 4.0 cm above the floor" in text
    assert "3.0 cm below the waist; rigid denim will do" in text
    assert "1 3/16 in below the waist" in run("styles", "--unit", "in").stdout


def test_one_style_is_told_with_every_setting_under_the_name_that_set_takes() -> None:
    lines = run("styles", "skinny").stdout.splitlines()
    assert lines[0] == "skinny: close to the leg down to the ankle, for cloth that stretches"
    keys = [line.split()[0] for line in lines[1:] if not line.startswith(" ")]
    assert keys == list(SETTINGS) and all(len(line) <= 80 for line in lines)
    assert any(line.startswith("leg.knee_of_hip           37 %  ") for line in lines)


def test_all_mistakes_about_the_picture_are_told_at_once() -> None:
    result = run("styles", "straigt", "--picture", "legs.jpg", "--on", "ada.toml")
    assert result.exit_code == 2
    starts = ("NAME = straigt: ", "ada.toml: There is no such file", "--picture = legs.jpg: ")
    for line, start in zip(result.stderr.splitlines(), starts, strict=True):
        assert line.startswith(start)
    result = run("styles", "--on", Path(command.__file__).parent / "demo" / "zaneta.toml")
    assert result.exit_code == 2 and "give --picture as well" in result.stderr


@pytest.mark.parametrize("unit", ["cm", "in", "mm"])
def test_a_style_file_is_written_to_change_and_read_back(unit: str) -> None:
    result = run("style-file", 'Żaneta "98" {0} \\', "--like", "bootcut", "--unit", unit)
    assert result.exit_code == 0 and "żaneta-98-0-style.toml" in result.stdout
    path = Path("żaneta-98-0-style.toml")
    style, like = read_style(read_file(path)), find_style("bootcut")
    assert style.name == 'Żaneta "98" {0} \\' and style.says == like.says and style.rise is like.rise
    assert style.leg.hem_most == pytest.approx(like.leg.hem_most, abs=0.8)  # a 32nd of an inch
    tables = tomllib.loads(path.read_text(encoding="utf-8"))
    named = {f"{k}.{n}" for k, v in tables.items() if isinstance(v, dict) for n in v} | {
        key for key, value in tables.items() if not isinstance(value, dict)
    }
    assert named == {*SETTINGS, "name", "says"}


def test_a_style_file_is_not_overwritten_unasked() -> None:
    Path("mine.toml").write_text("mine")
    result = run("style-file", "Mine", "--out", "mine.toml")
    assert result.exit_code == 2 and "mine.toml: This already exists" in result.stderr
    assert Path("mine.toml").read_text() == "mine"
    assert run("style-file", "Mine", "--out", "mine.toml", "--force").exit_code == 0
    assert 'name = "Mine"' in Path("mine.toml").read_text()


def test_a_name_that_cannot_be_meant_is_refused_with_all_else(here: Path) -> None:
    for name, told in (("Straight", "lists one of this name"), (" ", "A name is needed"),
                       ("two\nlines", "cannot be printed"), ("x" * 90, "longer than")):  # fmt: skip
        result = run("style-file", name, "--like", "fuzzy")
        lines = result.stderr.splitlines()
        assert result.exit_code == 2 and len(lines) == 2
        assert lines[0].startswith("--like = fuzzy: ") and told in lines[1]
    assert not list(here.iterdir())
