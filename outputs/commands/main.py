"""The command line. Heavy libraries load only inside the command that needs them."""

from __future__ import annotations

import errno
import sys
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from drafting.base.errors import DraftRefused
from outputs.commands.cloth import cloth
from outputs.commands.compare import compare
from outputs.commands.draft_all import draft_all
from outputs.commands.draft_options import TypedDraft, draft_options, folder_force_option, paper_option
from outputs.commands.fitting_guide import fitting_guide
from outputs.commands.measuring import measure_twice, measuring_sheet
from outputs.commands.print_check import check_print
from outputs.commands.shared import unit_option
from outputs.commands.style_arguments import several_styles
from outputs.commands.styles import style_file, styles
from outputs.commands.systems import systems
from outputs.commands.terminal import say, say_all, tell, watched
from outputs.commands.usage import plainly_told
from outputs.commands.worksheet import mark, worksheet
from outputs.files.folder import make_folder, refuse_link, refuse_overwriting, write_file, write_folder
from outputs.jobs.options import DraftOptions
from outputs.print.options import read_print_options
from outputs.running.ending import tidy_ending
from outputs.words.file_names import safe_name
from styles.choice.style import STRAIGHT, Style

if TYPE_CHECKING:
    from outputs.reading.measurements_file import MeasurementFile


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
@unit_option("Unit of values typed without one.")
@click.option(
    "--out", type=click.Path(path_type=Path), help="The file to write; else named after the wearer."
)
@folder_force_option
def measure(name: str, unit: str, out: Path | None, force: bool) -> None:
    """Write a measurements file to fill in.

    It says how each measurement of NAME, the wearer, is taken.
    """
    from drafting.base.units import Unit
    from outputs.jobs.blank import measurements_form

    file, write = measurements_form(name, Unit(unit)).file
    target = out or Path(file)
    write_file(target, write, force=force)
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
@folder_force_option
def draft(
    file: Path,
    asked_styles: tuple[str, ...],
    all_styles: bool,
    shared_once: bool,
    typed: TypedDraft,
    out: Path | None,
    force: bool,
    count: bool,
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
    from outputs.files.all_problems import gather
    from outputs.reading.measurements_file import read_measurements
    from outputs.reading.style_file import find_styles

    names = asked_styles or (() if all_styles else (STRAIGHT.name,))
    asked, styles, read = gather(
        typed.read,
        lambda: find_styles(names, all_styles=all_styles),
        lambda: read_measurements(file),
    )
    if count:
        _count(read, styles, asked)
        return
    target = out or Path(safe_name(read.wearer, styles[0].name if len(styles) == 1 else "styles"))
    refuse_overwriting(target, force=force)

    tell("drafting")
    from outputs.lines.draft import advice_on_printing, draft_lines, paper_lines

    if len(styles) == 1:
        from outputs.jobs import draft as one

        drafted = one.draft(read, styles[0], asked, progress=tell)
        say_all(paper_lines(drafted))
        say_all(draft_lines(drafted, write_folder(target, drafted.files, force=force, progress=tell)))
    else:
        from outputs.jobs import several_styles as more
        from outputs.lines.several_styles import several_lines

        several = more.draft_several(read, styles, asked, shared_once=shared_once, progress=tell)
        for each in several.drafted:
            say_all(paper_lines(each, named=True))
        say_all(several_lines(several, write_folder(target, several.files, force=force, progress=tell)))
    say_all(advice_on_printing(asked.printing, asked.formats))


def _count(read: MeasurementFile, styles: tuple[Style, ...], asked: DraftOptions) -> None:
    """Tell how many sheets each paper takes."""
    tell("drafting")
    from outputs.jobs.draft import count_sheets
    from outputs.lines.draft import count_lines

    for style in styles:
        if len(styles) > 1:
            say(f"=== {style.name}")
        say_all(count_lines(count_sheets(read, style, asked, progress=tell), read))


@main.command(epilog="Example: jeansblock demo --paper letter")
@click.option(
    "--out", type=click.Path(path_type=Path), default=Path("demo"), show_default=True,
    help="The folder to write.",
)  # fmt: skip
@paper_option
@folder_force_option
def demo(out: Path, paper: str, force: bool) -> None:
    """Draft the jeans of four invented people.

    Their measurements files are written beside the patterns, to try changes on.
    """
    from outputs.demo import DEMO_FILES
    from outputs.files.text_file import read_file
    from outputs.files.writers import text_writer

    printing = read_print_options(paper=paper)
    make_folder(out, force=force)
    for source in DEMO_FILES:
        refuse_link(out / f"{source.stem}-{STRAIGHT.name}")
    tell("drafting")

    from outputs.jobs import demo as invented
    from outputs.lines.draft import advice_on_printing, draft_lines, paper_lines

    for person in invented.demo(map(read_file, DEMO_FILES), printing, progress=tell):
        drafted, copy = person.drafted, out / f"{person.file.stem}.toml"
        write_file(copy, text_writer(person.file.text), force=force)
        say(f"=== {drafted.read.wearer}, an invented person: {copy}")
        say_all(paper_lines(drafted))
        target = out / f"{person.file.stem}-{drafted.jeans.style.name}"
        say_all(draft_lines(drafted, write_folder(target, drafted.files, force=force, progress=tell)))
        say()
    say_all(advice_on_printing(printing, ("pdf",)))


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
