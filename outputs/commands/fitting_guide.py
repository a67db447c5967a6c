"""The command that says what to try when a toile does not fit."""

from __future__ import annotations

from pathlib import Path

import click

from outputs.commands.measuring_sheet import SHEETS
from outputs.commands.terminal import say, say_all, tell
from outputs.files.folder import write_file


@click.command("fitting-guide", epilog="Example: jeansblock fitting-guide --pdf --paper letter")
@click.option(
    "--unit", type=click.Choice(["cm", "mm", "in"]), default="cm", show_default=True,
    help="Unit of the amounts.",
)  # fmt: skip
@click.option("--pdf", is_flag=True, help="Write it as a PDF to print, instead of showing it here.")
@click.option("--paper", type=click.Choice(SHEETS), default="a4", show_default=True, help="What to print on.")
@click.option(
    "--out", type=click.Path(path_type=Path), default=Path("fitting-guide.pdf"), show_default=True,
    help="The PDF to write.",
)  # fmt: skip
@click.option("--force", is_flag=True, help="Replace a file that is already there.")
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
