"""What click hands over has the types that the groups of options say, for every command that has them."""

from dataclasses import is_dataclass
from typing import get_args, get_type_hints

import click
import pytest

from outputs.commands.draft_options import TypedDraft
from outputs.commands.main import main
from outputs.commands.style_arguments import TypedChanges

GROUPS = {"draft": TypedDraft, "draft-all": TypedDraft, "cloth": TypedChanges}


def flat(group: type) -> dict[str, object]:
    """Return the type of every field, those of groups inside it too."""
    found: dict[str, object] = {}
    for name, kind in get_type_hints(group).items():
        found |= flat(kind) if is_dataclass(kind) else {name: kind}
    return found


def handed(param: click.Parameter) -> set[object]:
    """Return the types of value that click hands over for an option."""
    assert isinstance(param, click.Option)
    if param.multiple:
        return {tuple[str, ...]}
    if param.is_flag:
        return {bool}
    return {str} if param.default is not None and param.show_default else {str, type(None)}


def said(kind: object) -> set[object]:
    """Return the types of value that a field takes."""
    return set(get_args(kind)) if type(None) in get_args(kind) else {kind}


@pytest.mark.parametrize(("command", "group"), GROUPS.items(), ids=GROUPS)
def test_every_field_is_an_option_of_its_type(command: str, group: type) -> None:
    options = {param.name: param for param in main.commands[command].params}
    assert {name: handed(options[name]) for name in flat(group)} == {
        name: said(kind) for name, kind in flat(group).items()
    }
