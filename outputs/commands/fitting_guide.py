"""The command that says what to try when a toile does not fit."""

from __future__ import annotations

from pathlib import Path

import click

from outputs.commands.measuring import MEASURING_SHEETS
from outputs.commands.shared import force_option, sheet_option, unit_option
from outputs.commands.terminal import say, say_all, tell
from outputs.files.folder import write_file


@click.command("fitting-guide", epilog="Example: jeansblock fitting-guide --pdf --paper letter")
@unit_option("Unit of the amounts.")
@click.option("--pdf", is_flag=True, help="Write it as a PDF to print, instead of showing it here.")
@sheet_option("What to print on.", MEASURING_SHEETS)
@click.option(
    "--out", type=click.Path(path_type=Path), default=Path("fitting-guide.pdf"), show_default=True,
    help="The PDF to write.",
)  # fmt: skip
@force_option("Replace a file that is already there.")
def fitting_guide(unit: str, pdf: bool, paper: str, out: Path, force: bool) -> None:
    """Say what to try when the toile does not fit.

    From what one sees on the wearer, such as lines and where they run, to the entry below [fitting] of the
    measurements file, and by how much to begin with.
    """
    from drafting.base.units import Unit

    if not pdf:
        from outputs.lines.fitting_guide import guide_lines

        say_all(guide_lines(Unit(unit)))
        return

    tell("drawing")
    from outputs.jobs.sheets import fitting_guide as guide
    from outputs.lines.written import written_sheets
    from outputs.paper.paper import PAPERS

    _, write = guide(PAPERS[paper], Unit(unit)).file
    say(written_sheets(out, write_file(out, write, force=force)))
