"""The command that drafts a whole class."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from contextlib import ExitStack
from pathlib import Path
from typing import Any

import click

from outputs.commands.draft_options import draft_options, force_option, read_draft_options
from outputs.commands.style_arguments import one_style
from outputs.files.folder import make_folder, safe_name, write_file

_EXAMPLE = """\b
Example: jeansblock draft-all class.csv --paper letter

\b
A table, with commas or semicolons:
  wearer,unit,waist_girth,hip_girth,inside_leg_height,body_rise
  Ada Field,cm,76,98,78,27
  Ben Field,in,34 1/2,39 1/2,32,10 1/2
"""


@click.command("draft-all", epilog=_EXAMPLE)
@click.argument("people", type=click.Path(path_type=Path))
@one_style
@draft_options
@click.option("--workers", type=click.IntRange(1, 256), help="How many to draft at once; else one a core.")
@click.option(
    "--unit", type=click.Choice(["cm", "mm", "in"]), default="cm", show_default=True,
    help="Unit of the table of all.",
)  # fmt: skip
@click.option(
    "--out", type=click.Path(path_type=Path), help="The folder for all folders; else named after PEOPLE."
)
@force_option
def draft_all(
    people: Path,
    style: str,
    workers: int | None,
    unit: str,
    out: Path | None,
    force: bool,
    **typed: Any,
) -> None:
    """Draft everybody in a folder or a table.

    PEOPLE is a folder of measurements files, or a CSV file with one person a row, whose first row names the
    columns as a measurements file does: wearer, unit, waist_girth, hip_girth, left.thigh_girth and so on.

    Everybody gets a folder, and summary.csv lists all. Who is refused is told with the row, and stops nobody
    else; the exit code is 2 then. Run again, it drafts those who are missing; Ctrl-C finishes those underway.
    """
    from drafting.body.measurements import WaistLevel
    from outputs.files.gathering import gather
    from outputs.reading.people import find_people
    from outputs.reading.style_file import find_style

    asked, chosen, found = gather(
        lambda: read_draft_options(**typed), lambda: find_style(style), lambda: find_people(people)
    )
    asked.changes.style(chosen, WaistLevel.NATURAL)  # what fights is told once, not for everybody
    home = out or Path(safe_name(people.resolve().stem, "drafts"))

    from drafting.base.units import Unit
    from outputs.jobs.class_run import State, draft_people
    from outputs.jobs.class_summary import (
        SUMMARY_FILE,
        counted,
        refusal_lines,
        refuse_foreign_summary,
        summary_csv,
        summary_table,
    )

    make_folder(home, force=home.is_dir())
    refuse_foreign_summary(home)
    outcomes = []
    with ExitStack() as stack:
        advance = _progress(stack, found.count)

        def done(outcome: Any) -> None:
            outcomes.append(outcome)
            advance()

        whole = draft_people(
            found, home, chosen, asked,
            workers=min(workers or _cores(), found.count), force=force, done=done, stopping=_say_stopping,
        )  # fmt: skip
    outcomes.sort(key=lambda outcome: outcome.number)
    refused = [outcome for outcome in outcomes if outcome.state is State.REFUSED]
    for outcome in refused:
        click.echo(refusal_lines(outcome), err=True)
    for line in summary_table(outcomes, Unit(unit)):
        click.echo(line)
    write_file(home / SUMMARY_FILE, summary_csv(outcomes, Unit(unit)), force=True)
    click.echo()
    click.echo(f"{counted(outcomes)}; all of them: {home / SUMMARY_FILE}")
    if not whole:
        missing = found.count - len(outcomes)
        click.echo(
            f"Stopped: {len(outcomes)} of {found.count} had their turn, {missing} are missing. What is "
            "written is whole; run it again to go on.",
            err=True,
        )
        sys.exit(1)
    if refused:
        sys.exit(2)


def _cores() -> int:
    """Return how many cores this process may use."""
    try:
        return len(os.sched_getaffinity(0))
    except AttributeError:  # only Linux tells
        return os.cpu_count() or 1


def _progress(stack: ExitStack, count: int) -> Callable[[], None]:
    """Return what moves the bar on; there is none where nobody looks."""
    if not sys.stderr.isatty():
        return lambda: None
    bar = stack.enter_context(
        click.progressbar(length=count, label="drafting", show_pos=True, file=sys.stderr)
    )
    return lambda: bar.update(1)


def _say_stopping(underway: int) -> None:
    click.echo(f"\nStopping; {underway} underway are finished first.", err=True)
