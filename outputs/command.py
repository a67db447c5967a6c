"""The command line. Heavy libraries load only inside the command that needs them."""

from __future__ import annotations

import errno
from pathlib import Path
from typing import Any

import click

from drafting.errors import DraftRefused
from outputs.cloth_command import cloth
from outputs.fitting_guide_command import fitting_guide
from outputs.folder import make_folder, refuse_overwriting, safe_name, write_file
from outputs.measure_twice_command import measure_twice
from outputs.measuring_sheet_command import measuring_sheet
from outputs.paper import PAPERS
from outputs.print_check_command import check_print
from outputs.print_options import read_print_options
from outputs.style_arguments import change_arguments, read_arguments
from outputs.style_options import StyleOptions
from outputs.styles_command import style_file, styles
from outputs.systems_command import systems
from outputs.worksheet_command import mark, worksheet
from styles.style import STRAIGHT

FORMATS = ("pdf", "svg", "dxf")
"""What `outputs.pattern_files` can write."""


class _Group(click.Group):
    """Prints a refusal as it is and leaves with code 2."""

    def invoke(self, ctx: click.Context) -> Any:
        try:
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


_FORCE = click.option("--force", is_flag=True, help="Replace what is already there; other files stay.")
_PAPER = click.option(
    "--paper", default="a4", show_default=True, metavar="PAPER",
    help=f'Sheets to print on: {", ".join(PAPERS)} ("either" fits A4 and Letter); "single" for one big page; '
    'or the width of a roll, "36 in".',
)  # fmt: skip


@main.command(epilog='Example: jeansblock measure "Ada Field" --unit in')
@click.argument("name")
@click.option(
    "--unit", type=click.Choice(["cm", "mm", "in"]), default="cm", show_default=True,
    help="Unit of values typed without one.",
)  # fmt: skip
@click.option(
    "--out", type=click.Path(path_type=Path), help="The file to write; else named after the wearer."
)
@_FORCE
def measure(name: str, unit: str, out: Path | None, force: bool) -> None:
    """Write a measurements file to fill in.

    It says how each measurement of NAME, the wearer, is taken.
    """
    from outputs.measurement_template import write_template
    from outputs.units import Unit

    target = out or Path(f"{safe_name(name)}.toml")
    write_file(target, write_template(name, Unit(unit)).encode(), force=force)
    click.echo(f'Fill in {target}, then run: jeansblock draft "{target}"')


@main.command(epilog="Example: jeansblock draft ada-field.toml --paper letter")
@click.argument("file", type=click.Path(path_type=Path))
@click.option(
    "--style", "asked_styles", multiple=True, metavar="NAME", show_default=STRAIGHT.name,
    help="What to draft: one of those that `jeansblock styles` lists, or a style file of your own. Give it "
    "again for several in one folder, with a sheet that compares them.",
)  # fmt: skip
@click.option("--all-styles", is_flag=True, help="Draft every style that `jeansblock styles` lists.")
@click.option(
    "--shared-once", is_flag=True,
    help="Of several styles: print pieces that are the same only with the first that has them.",
)  # fmt: skip
@change_arguments
@_PAPER
@click.option(
    "--format", "formats", type=click.Choice(FORMATS), multiple=True, default=["pdf"], show_default=True,
    help="How the pattern is written; give it again for another. SVG and DXF have all pieces at true scale.",
)  # fmt: skip
@click.option(
    "--printed-bar", multiple=True, metavar="LENGTH",
    help='Correct the PDF for a printer that is not true: what the 100 mm bar measured, "97 mm". '
    "Given twice: across, then up.",
)  # fmt: skip
@click.option(
    "--only", metavar="NAMES", help='Print these pieces alone: names or parts of them, "front,yoke".'
)
@click.option("--toile", is_flag=True, help="Print only what a toile needs: legs, yokes, band, facings.")
@click.option("--apart", is_flag=True, help="Write every piece into a PDF of its own, without notes.")
@click.option("--count", is_flag=True, help="Tell how many sheets each paper takes, and write nothing.")
@click.option(
    "--out", type=click.Path(path_type=Path), help="The folder to write; else named after wearer and style."
)
@_FORCE
@click.option("--anyway", is_flag=True, help="Write the pattern even if a check finds it faulty.")
def draft(
    file: Path,
    asked_styles: tuple[str, ...],
    all_styles: bool,
    shared_once: bool,
    formats: tuple[str, ...],
    out: Path | None,
    force: bool,
    anyway: bool,
    count: bool,
    **asked: Any,
) -> None:
    """Draft the jeans for a measurements file.

    Writes the pattern as PDF or as --format says, the numbers as figures.json, and pictures of the block
    and of its ease, block.png and ease.png, into one folder. What is said of the cloth here counts before
    the file. Of several styles, the files of each begin with its name, and comparison.pdf and .png show all.
    """
    from outputs.gathering import gather
    from outputs.measurement_file import read_measurements
    from outputs.style_file import find_styles

    printed = {key: asked.pop(key) for key in ("paper", "printed_bar", "only", "toile", "apart")}
    options, printing, chosen, read = gather(
        lambda: read_arguments(**asked),
        lambda: read_print_options(**printed),
        lambda: find_styles(asked_styles or (() if all_styles else (STRAIGHT.name,)), all_styles=all_styles),
        lambda: read_measurements(file),
    )
    if count:
        from outputs.draft_files import count_for

        for line in count_for(read, chosen, options, printing):
            click.echo(line)
        return
    target = out or Path(safe_name(read.wearer, chosen[0].name if len(chosen) == 1 else "styles"))
    refuse_overwriting(target, force=force)

    from outputs.draft_files import draft_into
    from outputs.several_files import draft_several_into

    lines = (
        draft_into(
            target, read, chosen[0], options, printing=printing, formats=formats, force=force, anyway=anyway
        )
        if len(chosen) == 1
        else draft_several_into(
            target, read, chosen, options, printing=printing, formats=formats, shared_once=shared_once,
            force=force, anyway=anyway,
        )
    )  # fmt: skip
    for line in lines:
        click.echo(line)


@main.command(epilog="Example: jeansblock demo --paper letter")
@click.option(
    "--out", type=click.Path(path_type=Path), default=Path("demo"), show_default=True,
    help="The folder to write.",
)  # fmt: skip
@_PAPER
@_FORCE
def demo(out: Path, paper: str, force: bool) -> None:
    """Draft the jeans of four invented people.

    Their measurements files are written beside the patterns, to try changes on.
    """
    from outputs.demo import DEMO_FILES
    from outputs.measurement_file import read_measurements

    printing = read_print_options(paper=paper)
    make_folder(out, force=force)

    from outputs.draft_files import draft_into

    for source in DEMO_FILES:
        copy = out / source.name
        write_file(copy, source.read_bytes(), force=force)
        read = read_measurements(copy)
        click.echo(f"=== {read.wearer}, an invented person: {copy}")
        target = out / f"{source.stem}-{STRAIGHT.name}"
        for line in draft_into(target, read, STRAIGHT, StyleOptions(), printing=printing, force=force):
            click.echo(line)
        click.echo()


main.add_command(check_print)
main.add_command(fitting_guide)
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
