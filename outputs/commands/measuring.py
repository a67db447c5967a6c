"""The commands for taking the measurements: a sheet to fill in, and what is worth taking twice."""

from __future__ import annotations

from pathlib import Path

import click

from outputs.commands.shared import force_option, sheet_option, unit_option
from outputs.commands.terminal import say, say_all, tell
from outputs.files.folder import write_file

MEASURING_SHEETS = ("a4", "letter")
"""Papers it is laid out for, by their names in `outputs.paper.paper.PAPERS`."""


@click.command("measuring-sheet", epilog='Example: jeansblock measuring-sheet "Ada Field" --paper letter')
@click.argument("name", required=False)
@sheet_option("What to print on.", MEASURING_SHEETS)
@unit_option("Unit to write the readings in.")
@click.option(
    "--out", type=click.Path(path_type=Path), help="The file to write; else measuring-sheet.pdf, after NAME."
)
@force_option("Replace a file that is already there.")
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


@click.command("measure-twice", epilog="Example: jeansblock measure-twice ada-field.toml")
@click.argument("file", type=click.Path(path_type=Path))
def measure_twice(file: Path) -> None:
    """Say which measurements move the pattern most.

    Drafts the straight block of FILE anew, every measurement 10 mm more and 10 mm less; writes nothing.
    """
    from outputs.reading.measurements_file import read_measurements

    read = read_measurements(file)

    tell("drafting with every measurement 10 mm more and less")
    from outputs.jobs.measure import measure_twice as errors_of
    from outputs.lines.measure_twice import measure_twice_lines
    from styles.choice.style import STRAIGHT

    say_all(measure_twice_lines(errors_of(read, STRAIGHT), read.unit))
