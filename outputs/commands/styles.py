"""The commands that show the styles there are, and write a style file to change."""

from __future__ import annotations

from pathlib import Path

import click

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed_words import in_one_line
from outputs.commands.completion import style_names
from outputs.commands.shared import force_option, like_option, unit_option
from outputs.commands.terminal import say, say_all, tell
from outputs.files.folder import refuse_overwriting, write_file

ENDINGS = (".png", ".svg")
"""Of the names of pictures."""

_UNIT = unit_option("Unit of lengths.")
_FORCE = force_option("Replace a file that is already there.")


@click.command("styles", epilog="Example: jeansblock styles bootcut")
@click.argument("name", required=False, shell_complete=style_names)
@click.option(
    "--picture", type=click.Path(path_type=Path), metavar="FILE",
    help="Draw the legs instead, of all styles or of NAME's, into a .png or .svg.",
)  # fmt: skip
@click.option(
    "--on", "body", type=click.Path(path_type=Path), metavar="FILE",
    help="The measurements that the picture is drawn for; else an invented body.",
)  # fmt: skip
@_UNIT
@_FORCE
def styles(name: str | None, picture: Path | None, body: Path | None, unit: str, force: bool) -> None:
    """List the styles, or all settings of one.

    NAME is one of the list, or a style file of your own.
    """
    from drafting.base.units import Unit
    from outputs.demo import AVERAGE
    from outputs.files.all_problems import gather
    from outputs.lines.styles import catalogue_lines, setting_lines
    from outputs.reading.measurements_file import read_measurements
    from outputs.reading.style_file import find_style, find_styles
    from styles.choice.catalogue import catalogue_names

    chosen, read, _ = gather(
        lambda: [find_style(name, option="NAME")] if name else find_styles(catalogue_names()),
        lambda: read_measurements(body or AVERAGE) if picture or body else None,
        lambda: _refuse_picture(picture, body, force=force),
    )
    if picture is None or read is None:
        say_all(setting_lines(chosen[0], Unit(unit)) if name else catalogue_lines(chosen, Unit(unit)))
        return

    tell("drawing")
    from outputs.jobs.styles import styles_picture

    what = ", ".join(style.name for style in chosen) if name else "Styles of jeans"
    title = f"{what} on {read.wearer if body else 'an invented body'}"
    drawn = styles_picture(chosen, read, title=title, svg=picture.suffix.lower() == ".svg")
    write_file(picture, drawn.file[1], force=force)
    say(str(picture))


def _refuse_picture(picture: Path | None, body: Path | None, *, force: bool) -> None:
    if picture is None:
        if body is not None:
            message = "Only a picture is drawn on a body; give --picture as well."
            raise DraftRefused([Problem("--on", message, Severity.REFUSAL, in_one_line(str(body)))])
        return
    if picture.suffix.lower() not in ENDINGS:
        message = "A picture is written as PNG or SVG, by the ending of its name."
        value = in_one_line(str(picture))
        raise DraftRefused([Problem("--picture", message, Severity.REFUSAL, value, " or ".join(ENDINGS))])
    refuse_overwriting(picture, force=force)


@click.command("style-file", epilog='Example: jeansblock style-file "Ada Field" --like bootcut')
@click.argument("name")
@like_option(
    "--like", "The style to start from: one that `jeansblock styles` lists, or a style file.", metavar="STYLE"
)
@_UNIT
@click.option("--out", type=click.Path(path_type=Path), help="The file to write; else named after the style.")
@_FORCE
def style_file(name: str, like: str, unit: str, out: Path | None, force: bool) -> None:
    """Write a style of your own to change, called NAME.

    The file has every setting with its meaning and its plausible range.
    """
    from drafting.base.units import Unit
    from outputs.files.all_problems import gather
    from outputs.jobs import blank
    from outputs.reading.style_file import find_style

    target = out or Path(blank.style_file_name(name))
    base, _, _ = gather(
        lambda: find_style(like, option="--like"),
        lambda: blank.refuse_name(name),
        lambda: refuse_overwriting(target, force=force),
    )
    write_file(target, blank.style_file(name, base, Unit(unit)).file[1], force=force)
    say(f'Change {target}, then run: jeansblock draft ada-field.toml --style "{target}"')
