"""The command that compares two versions of a pattern."""

from __future__ import annotations

import os
from pathlib import Path
from typing import TYPE_CHECKING

import click

from outputs.commands.shared import force_option, like_option
from outputs.commands.terminal import say, say_all, tell
from outputs.files.folder import refuse_overwriting, write_file

if TYPE_CHECKING:
    from outputs.reading.draft_record import Inputs


@click.command("compare", epilog="Example: jeansblock compare ada-field-straight ada-field-wider")
@click.argument("old", type=click.Path(path_type=Path))
@click.argument("new", type=click.Path(path_type=Path))
@like_option(
    "--style",
    "What measurements files are drafted in: a style that `jeansblock styles` lists, or a style file.",
)
@click.option(
    "--out", type=click.Path(path_type=Path), default=Path("compare.png"), show_default=True,
    help="The picture to write.",
)  # fmt: skip
@force_option("Replace a picture that is already there.")
def compare(old: Path, new: Path, style: str, out: Path, force: bool) -> None:
    """Say what moved from one version to another, and why.

    OLD and NEW are folders that `draft` has written, the inputs.json of one of several styles, or
    measurements files, which are drafted in --style. Both are drafted anew, and once more for each input that
    differs. Writes a picture of both over each other.
    """
    from outputs.files.all_problems import gather

    refuse_overwriting(out, force=force)
    tell("reading")
    before, after = gather(lambda: _inputs(old, style), lambda: _inputs(new, style))

    from outputs.jobs.compare import compare as compare_inputs
    from outputs.lines.versions import version_lines

    compared = compare_inputs(before, after, names=(str(old), str(new)), progress=tell)
    tell("drawing")
    write_file(out, compared.file[1], force=force)
    say_all(version_lines(compared.versions))
    say()
    say(str(out))


def _inputs(path: Path, style: str) -> Inputs:
    if os.path.isdir(path) or path.suffix.lower() == ".json":
        from outputs.reading.draft_record import read_inputs

        return read_inputs(path)

    from outputs.files.all_problems import gather
    from outputs.reading.measurements_file import read_measurements
    from outputs.reading.style_file import find_style
    from outputs.reading.style_options import StyleOptions

    chosen, read = gather(lambda: find_style(style), lambda: read_measurements(path))

    # Its libraries load once it is sure that they are needed.
    from outputs.reading.draft_record import Inputs

    return Inputs.of(read, chosen, StyleOptions())
