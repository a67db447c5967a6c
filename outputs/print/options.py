"""The options of `draft` that say how the pattern is printed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed_words import in_one_line
from drafting.base.units import LengthError
from outputs.files.all_problems import gather
from outputs.paper.paper import A4, PAPERS, ROLL_RANGE, SINGLE, Orientation, Paper, Roll, read_paper
from outputs.paper.printer_scale import PrinterScale, read_printer_scale
from outputs.words.file_names import safe_name


@dataclass(frozen=True, kw_only=True)
class PrintOptions:
    """How to print.

    Attributes:
        paper: Sheets, a roll, or None for one page as large as it needs.
        scale: What the printer makes of a true length.
        orientation: How sheets lie.
        only: Words in the names of the pieces to print; empty for all.
        toile: Print only what a toile is sewn from.
        apart: Write every piece into a file of its own, without notes.
    """

    paper: Paper | Roll | None = A4
    scale: PrinterScale = field(default_factory=PrinterScale)
    orientation: Orientation = Orientation.FEWEST
    only: tuple[str, ...] = ()
    toile: bool = False
    apart: bool = False

    @property
    def some(self) -> str:
        """A word in the file's name where not all pieces are printed."""
        return "toile" if self.toile else "part" if self.only else ""

    @property
    def name(self) -> str:
        """What the file is called after: "a4", "roll-36-in", "a4-toile-corrected-97"."""
        named = [name for name, paper in PAPERS.items() if paper == self.paper]
        paper = named[0] if named else SINGLE if self.paper is None else self.paper.label
        return safe_name("-".join(filter(None, (paper, self.some)))) + (
            f"-{self.scale.name}" if self.scale.name else ""
        )


def read_print_options(
    *,
    paper: str,
    printed_bar: Sequence[str] = (),
    orientation: str = Orientation.FEWEST.value,
    only: str | None = None,
    toile: bool = False,
    apart: bool = False,
) -> PrintOptions:
    """Return the options as typed.

    Raises:
        DraftRefused: with every option that cannot be meant.
    """
    form, scale, _ = gather(
        lambda: _read_paper(paper),
        lambda: read_printer_scale(printed_bar),
        lambda: _refuse_both(only, toile),
    )
    words = () if only is None else tuple(word.strip() for word in only.split(","))
    return PrintOptions(
        paper=form, scale=scale, orientation=Orientation(orientation), only=words, toile=toile, apart=apart
    )


def _refuse_both(only: str | None, toile: bool) -> None:
    if toile and only is not None:
        message = "This and --toile both say what to print; give one of them."
        raise DraftRefused([Problem("--only", message, Severity.REFUSAL, in_one_line(only))])


def _read_paper(typed: str) -> Paper | Roll | None:
    try:
        return read_paper(typed)
    except LengthError as error:
        problem = Problem("--paper", f"{error}.", Severity.REFUSAL, in_one_line(typed), ROLL_RANGE)
        raise DraftRefused([problem]) from error
