"""The command that says which measurements are worth taking twice."""

from __future__ import annotations

from pathlib import Path

import click

from outputs.words.progress import say, tell


@click.command("measure-twice", epilog="Example: jeansblock measure-twice ada-field.toml")
@click.argument("file", type=click.Path(path_type=Path))
def measure_twice(file: Path) -> None:
    """Say which measurements move the pattern most.

    Drafts the straight block of FILE anew, every measurement 10 mm more and 10 mm less; writes nothing.
    """
    from outputs.reading.measurements_file import read_measurements

    read = read_measurements(file)

    tell("drafting with every measurement 10 mm more and less")
    from outputs.fit.measure_twice import measure_twice_lines
    from styles.choice.style import STRAIGHT

    for line in measure_twice_lines(read, STRAIGHT):
        say(line)
