"""What the Tab key offers, asked as the shell asks."""

import pytest
from click.shell_completion import BashComplete

from outputs.commands import main as command
from outputs.paper.paper import PAPERS
from styles.choice.catalogue import catalogue_names


def offered(*words: str) -> list[str]:
    """Return what is offered for the last word, files left out."""
    shell = BashComplete(command.main, {}, "jeansblock", "_JEANSBLOCK_COMPLETE")
    found = shell.get_completions(list(words[:-1]), words[-1])
    return [item.value for item in found if item.type == "plain"]


def test_commands_and_options_are_offered() -> None:
    assert offered("measur") == ["measure", "measure-twice", "measuring-sheet"]
    assert offered("draft", "--pa") == ["--paper"]


@pytest.mark.parametrize(
    "words",
    [
        ("draft", "--style"),
        ("cloth", "--style"),
        ("compare", "--style"),
        ("worksheet", "--style"),
        ("style-file", "--like"),
        ("styles",),
    ],
)
def test_styles_are_offered_where_one_may_stand(words: tuple[str, ...]) -> None:
    assert offered(*words, "") == list(catalogue_names())
    assert offered(*words, "s") == [name for name in catalogue_names() if name.startswith("s")]


def test_papers_are_offered() -> None:
    assert offered("draft", "--paper", "") == [*PAPERS, "single"]
