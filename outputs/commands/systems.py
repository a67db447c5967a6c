"""`jeansblock systems`. Heavy libraries load inside the command."""

from __future__ import annotations

from pathlib import Path

import click

from outputs.commands.shared import force_option, sheet_option
from outputs.commands.terminal import say_all, tell
from outputs.paper.paper import PAPERS


@click.command(epilog="Example: jeansblock systems ada-field.toml --paper letter")
@click.argument("file", type=click.Path(path_type=Path))
@sheet_option("The sheet to print on.")
@click.option(
    "--out", type=click.Path(path_type=Path), help="The file to write; else named after the wearer."
)
@force_option()
def systems(file: Path, paper: str, out: Path | None, force: bool) -> None:
    """Compare published drafting systems for one body.

    The measurements of FILE drafted by our proportions and by the formulas of published hand drafts, laid
    over each other and tabulated on one sheet.
    """
    from outputs.files.folder import refuse_overwriting, write_file
    from outputs.jobs.options import Sheet
    from outputs.reading.measurements_file import read_measurements

    read = read_measurements(file)
    target = out or Path(Sheet.SYSTEMS.file_name(read.wearer))
    refuse_overwriting(target, force=force)

    tell("drafting")
    from outputs.jobs.lesson import systems as compared
    from outputs.lines.lesson import sheet_lines

    result = compared(read, paper=PAPERS[paper])
    say_all(sheet_lines(result, target, write_file(target, result.file[1], force=force)))
