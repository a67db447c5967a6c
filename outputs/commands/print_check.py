"""`check-print`: one sheet to measure before a pattern is printed, and what its reading tells."""

from __future__ import annotations

from pathlib import Path

import click

from outputs.commands.shared import force_option, sheet_option
from outputs.commands.terminal import say, say_all, tell
from outputs.paper.paper import PAPERS


@click.command("check-print", epilog="Example: jeansblock check-print --paper letter")
@sheet_option("The sheet to print on.")
@click.option(
    "--printed-bar", multiple=True, metavar="LENGTH",
    help='What the 100 mm bar measured, "97 mm" (in inches: the 4 in bar). Given twice: across, then up. '
    "Says what to change; writes nothing.",
)  # fmt: skip
@click.option("--out", type=click.Path(path_type=Path), help="The file to write.")
@force_option()
def check_print(paper: str, printed_bar: tuple[str, ...], out: Path | None, force: bool) -> None:
    """Test a printer before a pattern is printed.

    Writes a sheet with bars to measure; told what they measured, says what to change.
    """
    from outputs.paper.printer_scale import advice, read_printer_scale

    if printed_bar:
        from outputs.lines.wrapped import wrapped

        for paragraph in advice(read_printer_scale(printed_bar)):
            say_all(wrapped(paragraph))
        return

    from outputs.files.folder import refuse_overwriting, write_file

    target = out or Path(f"check-print-{paper}.pdf")
    refuse_overwriting(target, force=force)

    tell("drawing")
    from outputs.jobs.sheets import check_print as sheet

    write_file(target, sheet(PAPERS[paper]).file[1], force=force)
    say(f"Print {target}, measure both 100 mm bars, then run:")
    say('jeansblock check-print --printed-bar "97 mm"    with what you measured,')
    say("or, with a ruler in inches, what the 4 in bar measured.")
