"""Mistakes on the command line, told in the same form as those in a file: what, why, where to look."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from typing import IO, Any

import click

from drafting.base.errors import Problem, Severity
from drafting.base.typed_words import LONGEST_GUESS, did_you_mean, in_one_line


class Misused(click.UsageError):
    """Prints itself in one line."""

    def show(self, file: IO[Any] | None = None) -> None:
        """Print it on stderr."""
        click.echo(self.message, file=file, err=file is None)


@contextmanager
def plainly_told() -> Iterator[None]:
    """Turn click's errors of usage into one plain line each; the help for no words at all stays as it is."""
    try:
        yield
    except click.exceptions.NoArgsIsHelpError:
        raise
    except click.UsageError as error:
        raise Misused(str(_problem(error)), error.ctx) from error


def not_among(words: Iterable[str], option: str, typed: str) -> Problem:
    """Return the refusal of a word that is none of those that an option takes."""
    words = tuple(words)
    guess = difflib.get_close_matches(typed.lower()[:LONGEST_GUESS], words, 1)
    message = f"This is none of the choices.{did_you_mean(guess)}"
    return Problem(option, message, Severity.REFUSAL, in_one_line(typed), " or ".join(words))


def _problem(error: click.UsageError) -> Problem:
    context = error.ctx
    where = context.command_path if context else ""
    message = error.format_message()
    match error:
        case click.NoSuchOption():
            where, message = error.option_name, "There is no such option."
            if error.possibilities:
                message += f" Did you mean {' or '.join(error.possibilities)}?"
        case click.BadOptionUsage():
            where = error.option_name
        case click.MissingParameter() if error.param and context:
            where, message = error.param.make_metavar(context), "This is missing."
        case click.BadParameter() if error.param:
            where, message = error.param.opts[0], error.message
        case _ if "extra argument" in message:
            message += ". Several words, such as a name, need quotes round them."
    end = "" if message.endswith((".", "?", ")")) else "."
    look = f" `{context.command_path} --help` tells what it takes." if context else ""
    return Problem(where, f"{message}{end}{look}", Severity.REFUSAL)
