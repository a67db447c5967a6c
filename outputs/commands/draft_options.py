"""The options that say what is drafted and how it is written, for every command that drafts."""

from __future__ import annotations

from collections.abc import Callable
from functools import reduce
from typing import Any, TypeVar

import click

from drafting.base.errors import DraftRefused
from outputs.commands.completion import names_of, one_of
from outputs.commands.style_arguments import change_arguments, read_arguments
from outputs.files.gathering import gather
from outputs.jobs.options import FORMATS, DraftOptions
from outputs.paper.paper import PAPERS, Orientation
from outputs.print.options import read_print_options
from outputs.reading.style_options import not_among

_Command = TypeVar("_Command", bound=Callable[..., Any])

force_option = click.option("--force", is_flag=True, help="Replace what is already there; other files stay.")
paper_option = click.option(
    "--paper", default="a4", show_default=True, metavar="PAPER",
    shell_complete=names_of(lambda: (*PAPERS, "single")),
    help=f'Sheets to print on: {", ".join(PAPERS)} ("either" fits A4 and Letter); "single" for one big page; '
    'or the width of a roll, "36 in".',
)  # fmt: skip

_OPTIONS = (
    paper_option,
    click.option(
        "--orientation", type=click.Choice([way.value for way in Orientation]), show_default=True,
        default=Orientation.FEWEST.value,
        help="How sheets lie: whichever needs fewest of them, or always one way. Rolls have no other.",
    ),
    click.option(
        "--format", "formats", **one_of(FORMATS), multiple=True, default=["pdf"], show_default=True,
        help="How the pattern is written; give it again for another. "
        "SVG and DXF have all pieces at true scale in millimetres; the DXF is release 12, its layers "
        "numbered as we remember ASTM D6673, with which it was not compared. PNG is a picture of all pieces.",
    ),
    click.option(
        "--printed-bar", multiple=True, metavar="LENGTH",
        help='Correct the PDF for a printer that is not true: what the 100 mm bar measured, "97 mm". '
        "Given twice: across, then up.",
    ),
    click.option(
        "--only", metavar="NAMES", help='Print these pieces alone: names or parts of them, "front,yoke".'
    ),
    click.option("--toile", is_flag=True, help="Print only what a toile needs: legs, yokes, band, facings."),
    click.option("--apart", is_flag=True, help="Write every piece into a PDF of its own, without notes."),
    click.option("--anyway", is_flag=True, help="Write the pattern even if a check finds it faulty."),
)  # fmt: skip


def draft_options(command: _Command) -> _Command:
    """Give a command all options of a draft but its style; `read_draft_options` reads what they hand over."""
    return change_arguments(reduce(lambda made, option: option(made), reversed(_OPTIONS), command))


def read_draft_options(*, formats: tuple[str, ...], anyway: bool, **asked: Any) -> DraftOptions:
    """Return the options of a draft as click hands them over.

    Raises:
        DraftRefused: with every option that cannot be meant.
    """
    printed = {
        key: asked.pop(key) for key in ("paper", "printed_bar", "orientation", "only", "toile", "apart")
    }
    changes, printing, _ = gather(
        lambda: read_arguments(**asked),
        lambda: read_print_options(**printed),
        lambda: _refuse_unknown(formats),
    )
    return DraftOptions(changes=changes, printing=printing, formats=formats, anyway=anyway)


def _refuse_unknown(formats: tuple[str, ...]) -> None:
    unknown = dict.fromkeys(name for name in formats if name not in FORMATS)
    if unknown:
        raise DraftRefused([not_among(FORMATS, "--format", name) for name in unknown])
