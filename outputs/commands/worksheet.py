"""`jeansblock worksheet` and `jeansblock mark`. Heavy libraries load inside the commands."""

from __future__ import annotations

from pathlib import Path

import click

from outputs.commands.shared import force_option, like_option, proportions_alone, sheet_option
from outputs.commands.terminal import say, say_all, tell
from outputs.paper.paper import PAPERS

SCALE_NAMES = ("1:1", "1:2", "1:4", "1:5")
"""Those of `outputs.lesson.sheet.SCALES`; a test holds them together."""

_FORCE = force_option()
_SCALE = click.option(
    "--scale", type=click.Choice(SCALE_NAMES), default="1:4", show_default=True, help="Scale of the draft."
)
_STYLE = like_option(
    "--style", "Whose leg the block has: a style that `jeansblock styles` lists, or a style file."
)


@click.command(epilog="Example: jeansblock worksheet ada-field.toml --scale 1:5")
@click.argument("file", type=click.Path(path_type=Path))
@_STYLE
@_SCALE
@sheet_option("Sheets to print on.")
@click.option("--blank", is_flag=True, help="Leave out the answers: formulas and room to write.")
@click.option("--marking", is_flag=True, help="Write the teacher's sheet: twenty right lengths.")
@proportions_alone
@click.option(
    "--out", type=click.Path(path_type=Path), help="The file to write; else named after the wearer."
)
@_FORCE
def worksheet(
    file: Path,
    style: str,
    scale: str,
    paper: str,
    blank: bool,
    marking: bool,
    proportions_alone: bool,
    out: Path | None,
    force: bool,
) -> None:
    """Write a worksheet for pattern-cutting lessons.

    The draft of a measurements file step by step, with formulas, the wearer's numbers and the drawing as it
    grows.
    """
    from drafting.base.errors import DraftRefused, Problem, Severity
    from outputs.files.all_problems import gather
    from outputs.files.folder import refuse_overwriting, write_file
    from outputs.jobs.options import Sheet
    from outputs.reading.measurements_file import read_measurements
    from outputs.reading.style_file import find_style

    if blank and marking:
        message = "The teacher's sheet holds the answers; give one of --blank and --marking."
        raise DraftRefused([Problem("--marking", message, Severity.REFUSAL)])
    chosen, read = gather(lambda: find_style(style), lambda: read_measurements(file))
    sheet = Sheet.MARKING if marking else Sheet.BLANK if blank else Sheet.WORKSHEET
    target = out or Path(sheet.file_name(read.wearer))
    refuse_overwriting(target, force=force)

    tell("drafting and writing the steps")
    from outputs.jobs import lesson
    from outputs.lesson.sheet import SCALES
    from outputs.lines.lesson import sheet_lines

    fitted = not proportions_alone
    if marking:
        result = lesson.marking_sheet(read, chosen, paper=PAPERS[paper], scale=SCALES[scale], fitted=fitted)
    else:
        result = lesson.worksheet(
            read, chosen, paper=PAPERS[paper], scale=SCALES[scale], blank=blank, fitted=fitted
        )
    say_all(sheet_lines(result, target, write_file(target, result.file[1], force=force)))


@click.command(epilog="Example: jeansblock mark ada-field.toml ben.toml")
@click.argument("file", type=click.Path(path_type=Path))
@click.argument("lengths", type=click.Path(path_type=Path))
@_STYLE
@_SCALE
@click.option("--form", is_flag=True, help="Write LENGTHS as an empty form instead.")
@proportions_alone
@_FORCE
def mark(
    file: Path, lengths: Path, style: str, scale: str, form: bool, proportions_alone: bool, force: bool
) -> None:
    """Mark the lengths that a student measured on a draft.

    FILE is the measurements file of the draft, LENGTHS holds numbers of steps and lengths, full size: TOML as
    --form writes it, or lines "13, 6.9" in a .csv file. It says which lengths are wrong and at which step
    the first mistake was made.
    """
    from outputs.files.all_problems import gather
    from outputs.files.folder import write_file
    from outputs.files.text_file import read_file
    from outputs.reading.measurements_file import read_measurements
    from outputs.reading.style_file import find_style

    chosen, read = gather(lambda: find_style(style), lambda: read_measurements(file))
    given = None if form else read_file(lengths)

    tell("drafting")
    from outputs.jobs import lesson
    from outputs.lesson.sheet import SCALES
    from outputs.lines.lesson import marked_lines

    fitted = not proportions_alone
    if given:
        marked = lesson.mark(read, chosen, given, scale=SCALES[scale], fitted=fitted)
        say_all(marked_lines(marked, read.unit, scale=scale))
        return
    write_file(lengths, lesson.form(read, chosen, fitted=fitted).file[1], force=force)
    say(f"Fill in {lengths}, then run the same line without --form")
