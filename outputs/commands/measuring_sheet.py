"""The command that writes the measuring sheet."""

from __future__ import annotations

from pathlib import Path

import click

from outputs.commands.terminal import say, say_all, tell
from outputs.files.folder import write_file

SHEETS = ("a4", "letter")
"""Papers it is laid out for, by their names in `outputs.paper.paper.PAPERS`."""


@click.command("measuring-sheet", epilog='Example: jeansblock measuring-sheet "Ada Field" --paper letter')
@click.argument("name", required=False)
@click.option("--paper", type=click.Choice(SHEETS), default="a4", show_default=True, help="What to print on.")
@click.option(
    "--unit", type=click.Choice(["cm", "mm", "in"]), default="cm", show_default=True,
    help="Unit to write the readings in.",
)  # fmt: skip
@click.option(
    "--out", type=click.Path(path_type=Path), help="The file to write; else measuring-sheet.pdf, after NAME."
)
@click.option("--force", is_flag=True, help="Replace a file that is already there.")
def measuring_sheet(name: str | None, paper: str, unit: str, out: Path | None, force: bool) -> None:
    """Print where the tape goes, with boxes to fill in.

    Writes a PDF of two pages; NAME, the wearer, is printed at its top.
    """
    from drafting.base.units import Unit
    from outputs.reading.measurement_template import refuse_unprintable

    if name is not None:
        refuse_unprintable(name)

    tell("drawing")
    from outputs.jobs.measure import measuring_sheet as sheet
    from outputs.lines.written import warned
    from outputs.paper.paper import PAPERS

    file, write = sheet(name, paper=PAPERS[paper], unit=Unit(unit)).file
    target = out or Path(file)
    report = write_file(target, write, force=force)
    say_all(warned(report.warnings))
    say(f"{target}: {report.sheets} pages")
