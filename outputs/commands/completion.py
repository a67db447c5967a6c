"""What the Tab key offers where an option takes a name of ours or a file."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

import click
from click.shell_completion import CompletionItem

Command = TypeVar("Command", bound=Callable[..., None])
Offer = Callable[[click.Context, click.Parameter, str], list[CompletionItem]]


def names_of(names: Callable[[], Iterable[str]], *, or_file: bool = False) -> Offer:
    """Return what offers those of the names that begin as typed, and files where one may stand instead."""

    def offer(context: click.Context, parameter: click.Parameter, typed: str) -> list[CompletionItem]:
        found = [CompletionItem(name) for name in names() if name.startswith(typed)]
        return [*found, CompletionItem(typed, type="file")] if or_file else found

    return offer


def listed(words: Iterable[str]) -> str:
    """Return what stands in the help for the one word of several that an option takes."""
    return f"[{'|'.join(words)}]"


def word_option(option: str, words: Iterable[str], *, help: str) -> Callable[[Command], Command]:
    """Return an option that shows and offers its words; its reader refuses others."""
    known = tuple(words)
    return click.option(option, metavar=listed(known), shell_complete=names_of(lambda: known), help=help)


def _styles() -> Iterable[str]:
    from styles.choice.catalogue import catalogue_names

    return catalogue_names()


style_names = names_of(_styles, or_file=True)
"""Styles that `jeansblock styles` lists, or a style file."""
