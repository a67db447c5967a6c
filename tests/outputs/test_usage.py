"""Mistakes on the command line: one plain line each, whatever library found them."""

from pathlib import Path

import pytest
from click.testing import CliRunner

from outputs.commands import main as command


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["--stlye"], "--stlye: There is no such option."),
        (["drft"], "main: No such command 'drft'."),
        (["draft"], "FILE: This is missing. `main draft --help`"),
        (["cloth"], "FILE...: This is missing."),
        (["draft", "x.toml", "--stlye", "flare"], "--stlye: There is no such option. Did you mean --style"),
        (["measure", "Ada", "--unit", "feet"], "--unit: 'feet' is not one of 'cm', 'mm', 'in'"),
        (["draft", "x.toml", "--style"], "--style: Option '--style' requires an argument."),
        (["draft", "x.toml", "--count=3"], "--count: Option '--count' does not take a value."),
        (["cloth", "x.toml", "--seconds", "many"], "--seconds: 'many' is not a valid integer"),
        (["draft", "x.toml", "--\x1b[31mred\nred"], "--\\x1b[31mred\\nred: There is no such option."),
        (["measure", "Ada", "Field"], "Several words, such as a name, need quotes round them."),
    ],
)
def test_a_slip_is_told_in_one_line_that_begins_with_what_was_typed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, words: list[str], told: str
) -> None:
    monkeypatch.chdir(tmp_path)
    result = CliRunner().invoke(command.main, words)
    assert (result.exit_code, result.stdout) == (2, "")
    (line,) = result.stderr.splitlines()
    assert told in line and "Usage" not in line and "Error" not in line
    assert not list(tmp_path.iterdir())


def test_the_name_alone_shows_the_help() -> None:
    assert "First steps:" in CliRunner().invoke(command.main, []).output


def test_wrong_words_are_told_with_all_other_mistakes_at_once() -> None:
    words = (
        "--rise lowest --band curly --laps top --seams none --format gif --paper a9 --stretch x --style no"
    )
    result = CliRunner().invoke(command.main, ["draft", "nobody.toml", *words.split()])
    told = dict(line.split(": ", 1) for line in result.stderr.splitlines())
    assert result.exit_code == 2 and set(told) == {
        "--rise = lowest", "--band = curly", "--laps = top", "--seams = none", "--format = gif",
        "--paper = a9", "--stretch = x", "--style = no", "nobody.toml",
    }  # fmt: skip
    assert told["--rise = lowest"].endswith("Plausible: low or mid or high or natural.")
    assert told["--laps = top"].endswith("Plausible: left or right.")
    assert told["--format = gif"].endswith("Plausible: pdf or svg or dxf or png.")
