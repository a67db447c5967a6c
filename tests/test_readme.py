"""What README.md names exists, and its picture is what the tool draws now."""

import re
import shlex
from pathlib import Path
from xml.etree import ElementTree

import click
import pytest
from click.testing import CliRunner

from outputs.commands import main as command

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
SPANS = re.findall(r"`([^`\n]+)`", README)
BLOCKS = "\n".join(re.findall(r"```sh\n(.*?)```", README, re.S))
PICTURE = ROOT / "outputs" / "demo" / "legs.svg"
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


def test_every_promise_names_a_test_that_exists_and_they_are_numbered_in_order() -> None:
    promises = README.partition("## What it promises")[2].partition("\n## ")[0]
    each = re.split(r"^(\d+)\. ", promises, flags=re.M)[1:]
    assert [int(number) for number in each[::2]] == list(range(1, len(each) // 2 + 1))
    there = {path.name for path in (ROOT / "tests").rglob("test_*.py")}
    for text in each[1::2]:
        named = re.findall(r"test_\w+\.py", text)
        assert named and set(named) <= there, text


def test_every_command_line_it_shows_can_be_typed() -> None:
    lines = [line.partition("jeansblock ")[2] for line in BLOCKS.splitlines() if "jeansblock " in line]
    first = [span for span in SPANS if span.split()[0] in command.main.commands]
    assert len(lines) > 4 and len(first) > 12
    for line in [*lines, *first]:
        name, *words = shlex.split(line, comments=True)
        made = command.main.commands[name]
        needed = sum(isinstance(p, click.Argument) and p.required for p in made.params)
        if not any(not word.startswith("-") for word in words[:1]):
            words = ["FILE"] * needed + words
        with click.Context(command.main) as ctx:
            made.make_context(name, words, parent=ctx)


def test_every_option_it_names_exists() -> None:
    there = {option for made in command.main.commands.values() for p in made.params for option in p.opts}
    named = set(re.findall(r"(?<![\w-])--[a-z][a-z-]+", README))
    assert named - {"--help"} <= there


def drawn(path: Path) -> tuple[list[tuple[str, dict[str, str], str]], list[float]]:
    """Return the elements of a drawing without their numbers, and the numbers."""
    elements, numbers = [], []
    for element in ElementTree.parse(path).iter():
        attributes = {key: NUMBER.sub("#", value) for key, value in element.attrib.items()}
        elements.append((element.tag, attributes, (element.text or "").strip()))
        numbers += [float(n) for value in element.attrib.values() for n in NUMBER.findall(value)]
    return elements, numbers


def test_its_picture_is_small_and_what_the_tool_draws_now(tmp_path: Path) -> None:
    assert f"({PICTURE.relative_to(ROOT).as_posix()})" in README
    assert PICTURE.stat().st_size < 150_000
    result = CliRunner().invoke(command.main, ["styles", "--picture", str(tmp_path / "legs.svg")])
    assert result.exit_code == 0
    (shown, places), (now, places_now) = drawn(PICTURE), drawn(tmp_path / "legs.svg")
    # Another version of a library may round a last digit otherwise.
    assert shown == now and places == pytest.approx(places_now, abs=0.01)
