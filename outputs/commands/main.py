"""The command line. Heavy libraries load only inside the command that needs them."""

from __future__ import annotations

import errno
import sys
from io import TextIOWrapper
from itertools import chain
from pathlib import Path
from typing import Any

import click

from drafting.base.errors import DraftRefused
from outputs.commands.cloth import cloth
from outputs.commands.compare import compare
from outputs.commands.draft_all import draft_all
from outputs.commands.draft_options import draft_options, force_option, paper_option, read_draft_options
from outputs.commands.fitting_guide import fitting_guide
from outputs.commands.measure_twice import measure_twice
from outputs.commands.measuring_sheet import measuring_sheet
from outputs.commands.print_check import check_print
from outputs.commands.style_arguments import several_styles
from outputs.commands.styles import style_file, styles
from outputs.commands.systems import systems
from outputs.commands.usage import plainly_told
from outputs.commands.worksheet import mark, worksheet
from outputs.files.folder import make_folder, refuse_link, refuse_overwriting, safe_name, write_file
from outputs.jobs.ending import tidy_ending
from outputs.print.options import read_print_options
from outputs.reading.style_options import StyleOptions
from outputs.words.progress import say, tell, watched
from styles.choice.style import STRAIGHT


class _Group(click.Group):
    """Prints a refusal as it is and leaves with code 2; ends tidily when it is asked to end."""

    def main(self, *args: Any, **extra: Any) -> Any:
        # Where output goes to a file, some systems write fewer letters than names have.
        for stream in (sys.stdout, sys.stderr):
            if isinstance(stream, TextIOWrapper):
                stream.reconfigure(errors="backslashreplace")
        with tidy_ending():
            return super().main(*args, **extra)

    def make_context(self, *args: Any, **extra: Any) -> click.Context:
        with plainly_told():
            return super().make_context(*args, **extra)

    def invoke(self, ctx: click.Context) -> Any:
        try:
            with plainly_told(), watched():
                return super().invoke(ctx)
        except DraftRefused as refusal:
            click.echo(str(refusal), err=True)
            ctx.exit(2)
        except OSError as error:
            # A reader that closed the pipe wants no more lines; click leaves quietly for it.
            if error.errno == errno.EPIPE:
                raise
            where = f"{error.filename}: " if error.filename else ""
            click.echo(f"{where}{error.strerror or error}", err=True)
            ctx.exit(1)


_FIRST_STEPS = """\b
First steps:
  jeansblock measure "Ada Field"    write a measurements file to fill in
  jeansblock draft ada-field.toml   draft it and write the pattern
  jeansblock demo                   see what comes out, without measuring
"""


@click.group(cls=_Group, epilog=_FIRST_STEPS, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="jeansblock")
def main() -> None:
    """Draft jeans from body measurements and print them at true scale."""


@main.command(epilog='Example: jeansblock measure "Ada Field" --unit in')
@click.argument("name")
@click.option(
    "--unit", type=click.Choice(["cm", "mm", "in"]), default="cm", show_default=True,
    help="Unit of values typed without one.",
)  # fmt: skip
@click.option(
    "--out", type=click.Path(path_type=Path), help="The file to write; else named after the wearer."
)
@force_option
def measure(name: str, unit: str, out: Path | None, force: bool) -> None:
    """Write a measurements file to fill in.

    It says how each measurement of NAME, the wearer, is taken.
    """
    from drafting.base.units import Unit
    from outputs.reading.measurement_template import write_template

    target = out or Path(f"{safe_name(name)}.toml")
    write_file(target, write_template(name, Unit(unit)).encode(), force=force)
    say(f'Fill in {target}, then run: jeansblock draft "{target}"')


_DRAFT_EXAMPLES = """\b
Example: jeansblock draft ada-field.toml --paper letter

\b
More of them:
  jeansblock draft ada-field.toml --style bootcut --style flare
  jeansblock draft ada-field.toml --rise mid --band straight --seams felled
  jeansblock draft ada-field.toml --set fly=buttons --set "turn_up=4 cm"
  jeansblock draft ada-field.toml --set back=dart --set front_pocket.kind=scoop
  jeansblock draft ada-field.toml --lengthwise-change -3 --crosswise-change -1
  jeansblock draft ada-field.toml --toile --printed-bar "97 mm"
  jeansblock draft ada-field.toml --paper "36 in" --format pdf --format svg
"""


@main.command(epilog=_DRAFT_EXAMPLES)
@click.argument("file", type=click.Path(path_type=Path))
@several_styles
@draft_options
@click.option("--count", is_flag=True, help="Tell how many sheets each paper takes, and write nothing.")
@click.option(
    "--out", type=click.Path(path_type=Path), help="The folder to write; else named after wearer and style."
)
@force_option
def draft(
    file: Path,
    asked_styles: tuple[str, ...],
    all_styles: bool,
    shared_once: bool,
    out: Path | None,
    force: bool,
    count: bool,
    **typed: Any,
) -> None:
    """Draft the jeans for a measurements file.

    Writes into one folder: the pattern, as PDF or as --format says; figures.json, with the girths of body and
    pattern, seams, corners and pieces; inputs.json, enough to draft the same again; block.png, the block
    without style and allowance; and ease.png, the girths from waist to hem.

    Sheet 1 of the pattern has no piece: print it alone and measure its bars first. On a1, a0, a roll or a
    single page the pattern stands alone, and notes.pdf has the rest for a printer at home.

    What is said of the cloth here counts before the file. Of several styles, the files of each begin with its
    name, and comparison.pdf and .png lay their legs over each other.
    """
    from outputs.files.gathering import gather
    from outputs.reading.measurements_file import read_measurements
    from outputs.reading.style_file import find_styles

    names = asked_styles or (() if all_styles else (STRAIGHT.name,))
    asked, styles, read = gather(
        lambda: read_draft_options(**typed),
        lambda: find_styles(names, all_styles=all_styles),
        lambda: read_measurements(file),
    )
    if count:
        tell("drafting")
        from outputs.jobs.draft import count_for

        for line in count_for(read, styles, asked.changes, asked.printing):
            say(line)
        return
    target = out or Path(safe_name(read.wearer, styles[0].name if len(styles) == 1 else "styles"))
    refuse_overwriting(target, force=force)

    tell("drafting")
    common = {"printing": asked.printing, "formats": asked.formats, "force": force, "anyway": asked.anyway}
    if len(styles) == 1:
        from outputs.jobs.draft import draft_into

        lines = draft_into(target, read, styles[0], asked.changes, **common)
    else:
        from outputs.jobs.several import draft_several_into

        lines = draft_several_into(target, read, styles, asked.changes, shared_once=shared_once, **common)
    from outputs.jobs.draft import advice_on_printing

    for line in chain(lines, advice_on_printing(asked.printing, asked.formats)):
        say(line)


@main.command(epilog="Example: jeansblock demo --paper letter")
@click.option(
    "--out", type=click.Path(path_type=Path), default=Path("demo"), show_default=True,
    help="The folder to write.",
)  # fmt: skip
@paper_option
@force_option
def demo(out: Path, paper: str, force: bool) -> None:
    """Draft the jeans of four invented people.

    Their measurements files are written beside the patterns, to try changes on.
    """
    from outputs.demo import DEMO_FILES
    from outputs.reading.measurements_file import read_measurements

    printing = read_print_options(paper=paper)
    make_folder(out, force=force)
    for source in DEMO_FILES:
        refuse_link(out / f"{source.stem}-{STRAIGHT.name}")
    tell("drafting")

    from outputs.jobs.draft import advice_on_printing, draft_into

    for source in DEMO_FILES:
        copy = out / source.name
        write_file(copy, source.read_bytes(), force=force)
        read = read_measurements(copy)
        say(f"=== {read.wearer}, an invented person: {copy}")
        target = out / f"{source.stem}-{STRAIGHT.name}"
        for line in draft_into(target, read, STRAIGHT, StyleOptions(), printing=printing, force=force):
            say(line)
        say()
    for line in advice_on_printing(printing, ["pdf"]):
        say(line)


main.add_command(check_print)
main.add_command(fitting_guide)
main.add_command(compare)
main.add_command(draft_all)
main.add_command(measure_twice)
main.add_command(measuring_sheet)
main.add_command(worksheet)
main.add_command(mark)
main.add_command(systems)
main.add_command(cloth)
main.add_command(style_file)
main.add_command(styles)

if __name__ == "__main__":
    main()
