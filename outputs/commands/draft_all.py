"""The command that drafts a whole class."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from contextlib import ExitStack
from pathlib import Path

import click

from outputs.commands.draft_options import TypedDraft, draft_options, folder_force_option
from outputs.commands.shared import unit_option
from outputs.commands.style_arguments import one_style
from outputs.commands.terminal import say, say_all
from outputs.files.folder import make_folder, write_file
from outputs.words.file_names import safe_name

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
@unit_option("Unit of the table of all.")
@click.option(
    "--out", type=click.Path(path_type=Path), help="The folder for all folders; else named after PEOPLE."
)
@folder_force_option
def draft_all(
    people: Path,
    style: str,
    typed: TypedDraft,
    workers: int | None,
    unit: str,
    out: Path | None,
    force: bool,
) -> None:
    """Draft everybody in a folder or a table.

    PEOPLE is a folder of measurements files, or a CSV file with one person a row, whose first row names the
    columns as a measurements file does: wearer, unit, waist_girth, hip_girth, left.thigh_girth and so on.

    Everybody gets a folder, and summary.csv lists all. Who is refused is told with the row, and stops nobody
    else; the exit code is 2 then. Run again, it drafts those who are missing; Ctrl-C finishes those underway.
    """
    from drafting.body.measurements import WaistLevel
    from outputs.files.all_problems import gather
    from outputs.reading.class_file import find_people
    from outputs.reading.style_file import find_style

    asked, chosen, found = gather(typed.read, lambda: find_style(style), lambda: find_people(people))
    asked.changes.style(chosen, WaistLevel.NATURAL)  # what fights is told once, not for everybody
    home = out or Path(safe_name(people.resolve().stem, "drafts"))

    from drafting.base.units import Unit
    from outputs.jobs.class_table import Outcome, State, class_table
    from outputs.lines.class_table import counted, refusal_lines, summary_table
    from outputs.running.class_pool import draft_people, refuse_foreign_summary

    make_folder(home, force=home.is_dir())
    refuse_foreign_summary(home)
    outcomes: list[Outcome] = []
    with ExitStack() as stack:
        advance = _progress(stack, found.count)

        def done(outcome: Outcome) -> None:
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
    say_all(summary_table(outcomes, Unit(unit)))
    name, write = class_table(outcomes, Unit(unit)).file
    write_file(home / name, write, force=True)
    say()
    say(f"{counted(outcomes)}; all of them: {home / name}")
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
