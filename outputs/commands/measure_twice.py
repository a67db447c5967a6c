"""The command that says which measurements are worth taking twice."""

from __future__ import annotations

from pathlib import Path

import click

from outputs.commands.terminal import say_all, tell


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
