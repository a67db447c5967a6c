"""The options that say what is drafted and how it is written, for every command that drafts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import click

from drafting.base.errors import DraftRefused
from outputs.commands.completion import listed, names_of
from outputs.commands.shared import force_option
from outputs.commands.style_arguments import TypedChanges, change_arguments, handing, with_options
from outputs.commands.usage import not_among
from outputs.files.all_problems import gather
from outputs.jobs.options import FORMATS, DraftOptions
from outputs.paper.paper import PAPERS, Orientation
from outputs.print.options import read_print_options

folder_force_option = force_option("Replace what is already there; other files stay.")
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
        "--format", "formats", metavar=listed(FORMATS), shell_complete=names_of(lambda: FORMATS),
        multiple=True, default=["pdf"], show_default=True,
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


@dataclass(frozen=True, kw_only=True)
class TypedDraft:
    """What was typed to say how a draft shall be, as click hands it over."""

    changes: TypedChanges
    paper: str
    orientation: str
    formats: tuple[str, ...]
    printed_bar: tuple[str, ...]
    only: str | None
    toile: bool
    apart: bool
    anyway: bool

    def read(self) -> DraftOptions:
        """Return what is meant.

        Raises:
            DraftRefused: with every option that cannot be meant.
        """
        changes, printing, _ = gather(
            self.changes.read,
            lambda: read_print_options(
                paper=self.paper,
                printed_bar=self.printed_bar,
                orientation=self.orientation,
                only=self.only,
                toile=self.toile,
                apart=self.apart,
            ),
            self._refuse_unknown_formats,
        )
        return DraftOptions(changes=changes, printing=printing, formats=self.formats, anyway=self.anyway)

    def _refuse_unknown_formats(self) -> None:
        unknown = dict.fromkeys(name for name in self.formats if name not in FORMATS)
        if unknown:
            raise DraftRefused([not_among(FORMATS, "--format", name) for name in unknown])


def draft_options(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command all options of a draft but its style, as `typed`."""
    return change_arguments(with_options(_OPTIONS, handing("typed", TypedDraft, command)))
