"""`jeansblock systems`. Heavy libraries load inside the command."""

from __future__ import annotations

from pathlib import Path

import click

from outputs.commands.print_check import SHEETS
from outputs.words.progress import say, tell


@click.command(epilog="Example: jeansblock systems ada-field.toml --paper letter")
@click.argument("file", type=click.Path(path_type=Path))
@click.option(
    "--paper", type=click.Choice(SHEETS), default="a4", show_default=True, help="The sheet to print on."
)
@click.option(
    "--out", type=click.Path(path_type=Path), help="The file to write; else named after the wearer."
)
@click.option("--force", is_flag=True, help="Replace what is already there.")
def systems(file: Path, paper: str, out: Path | None, force: bool) -> None:
    """Compare published drafting systems for one body.

    The measurements of FILE drafted by our proportions and by the formulas of published hand drafts, laid
    over each other and tabulated on one sheet.
    """
    from outputs.files.folder import refuse_overwriting, safe_name
    from outputs.reading.measurements_file import read_measurements

    read = read_measurements(file)
    target = out or Path(f"{safe_name(read.wearer, 'systems')}.pdf")
    refuse_overwriting(target, force=force)

    tell("drafting")
    from outputs.jobs.lesson import write_systems_file

    for line in write_systems_file(target, read, paper=paper, force=force):
        say(line)
