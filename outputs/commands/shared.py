"""Options that several commands have, each with its own words in the help."""

from __future__ import annotations

from collections.abc import Callable, Iterable

import click

from outputs.commands.completion import Command, style_names
from outputs.paper.paper import PAPERS

SHEETS = [name for name, paper in PAPERS.items() if not paper.is_large]
"""What a printer at home takes."""


def unit_option(help: str) -> Callable[[Command], Command]:
    """Return the option that names a unit of length."""
    return click.option(
        "--unit", type=click.Choice(["cm", "mm", "in"]), default="cm", show_default=True, help=help
    )


def sheet_option(help: str, sheets: Iterable[str] = SHEETS) -> Callable[[Command], Command]:
    """Return the option that names a sheet of paper."""
    return click.option(
        "--paper", type=click.Choice(list(sheets)), default="a4", show_default=True, help=help
    )


def like_option(option: str, help: str, *, metavar: str = "NAME") -> Callable[[Command], Command]:
    """Return the option that names one style, the straight cut where none is named."""
    return click.option(
        option, default="straight", show_default=True, metavar=metavar, shell_complete=style_names, help=help
    )


def force_option(help: str = "Replace what is already there.") -> Callable[[Command], Command]:
    """Return the option that lets files be replaced."""
    return click.option("--force", is_flag=True, help=help)


proportions_alone = click.option(
    "--proportions-alone", is_flag=True,
    help="Draft by proportions alone, as by hand: crotch seam and thigh are not fitted to the body.",
)  # fmt: skip
"""The option of a command that drafts, for lessons and to compare."""
