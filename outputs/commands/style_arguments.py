"""The options of the command line that decide what is drafted, for every command that drafts."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import reduce
from typing import Any, TypeVar

import click

from outputs.commands.completion import one_of, style_names
from outputs.reading.cloth_entries import CLOTH_ENTRIES
from outputs.reading.style_options import LAPS, StyleOptions, read_options
from styles.choice.style import STRAIGHT, Band, Felling, Rise

_Command = TypeVar("_Command", bound=Callable[..., Any])

_ONE = "What to draft: one of those that `jeansblock styles` lists, or a style file of your own."

one_style = click.option(
    "--style", default=STRAIGHT.name, show_default=True, metavar="NAME", shell_complete=style_names, help=_ONE
)
"""The option of a command that drafts one style."""

_SEVERAL = (
    click.option(
        "--style", "asked_styles", multiple=True, metavar="NAME", shell_complete=style_names,
        help=f"{_ONE} Give it again for several in one folder, with a sheet that compares "
        f"them.  [default: {STRAIGHT.name}]",
    ),
    click.option("--all-styles", is_flag=True, help="Draft every style that `jeansblock styles` lists."),
    click.option(
        "--shared-once", is_flag=True,
        help="Of several styles: print pieces that are the same only with the first that has them.",
    ),
)  # fmt: skip

_CHANGES = (
    click.option("--rise", **one_of(r.value for r in Rise), help="How high the jeans reach."),
    click.option("--band", **one_of(b.value for b in Band), help="How the waistband is cut."),
    click.option("--laps", **one_of(LAPS), help="Which front lies on top at the fly."),
    click.option(
        "--below-waist", metavar="LENGTH",
        help='How far below the waist the jeans sit: "3 cm", "1 1/2 in"; a minus for above.',
    ),
    click.option(
        "--seams", **one_of(f.value for f in Felling),
        help="Plain and overlocked, or flat-felled with unequal allowances.",
    ),
    click.option(
        "--set", "changes", metavar="SETTING=VALUE", multiple=True,
        help='Change one setting of the style: "leg.hem_of_hip=40 %"; `jeansblock styles NAME` lists all.',
    ),
    click.option("--no-allowance", is_flag=True, help="Leave out the seam allowances, to add your own."),
    click.option(
        "--lengthwise-change", metavar="PERCENT",
        help="What washing does to the cloth along the warp; a minus for shrinking.",
    ),
    click.option("--crosswise-change", metavar="PERCENT", help="The same across the warp."),
    click.option(
        "--stretch", metavar="PERCENT", help="How far the cloth can be pulled crosswise; 0 if rigid."
    ),
)  # fmt: skip


def several_styles(command: _Command) -> _Command:
    """Give a command the options that name one or several styles."""
    return _with(_SEVERAL, command)


def style_arguments(command: _Command) -> _Command:
    """Give a command one style and what changes it, by name, for `read_arguments`."""
    return one_style(change_arguments(command))


def change_arguments(command: _Command) -> _Command:
    """Give a command the options that change a style."""
    return _with(_CHANGES, command)


def _with(options: Iterable[Callable[[_Command], _Command]], command: _Command) -> _Command:
    return reduce(lambda made, option: option(made), reversed(tuple(options)), command)


def read_arguments(*, no_allowance: bool, changes: tuple[str, ...], **asked: str | None) -> StyleOptions:
    """Return the options as typed, all but the style's name.

    Raises:
        DraftRefused: with every option that cannot be meant.
    """
    cloth = {key: asked.pop(key) for key in CLOTH_ENTRIES}
    return read_options(allowance=not no_allowance, changes=changes, cloth=cloth, **asked)
