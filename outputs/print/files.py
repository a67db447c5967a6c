"""The PDF files of one pattern: on which sheets, which pieces, and how many sheets that makes."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property, partial
from pathlib import Path
from typing import BinaryIO

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.findings import Show
from drafting.pieces.pattern import Pattern
from outputs.canvas.canvas import Recording
from outputs.canvas.typeface import Typeface
from outputs.files.folder import safe_name
from outputs.paper.paper import PAPERS, SINGLE, Paper, Roll
from outputs.print.options import PrintOptions
from outputs.print.pdf import (
    PageTooLarge,
    notes_of,
    write_notes_pdf,
    write_page,
    write_sheets,
    write_sheets_with_notes,
)
from outputs.print.roll import laid_on_roll
from outputs.print.single_page import SinglePage, single_page
from outputs.sheets.tiling import Tiling, tiled
from outputs.words.report import PrintReport

NOTES = "notes.pdf"
"""What goes with a pattern on large sheets, for the printer at home."""
ROLLS = (Roll("roll 24 in", 24 * 25.4), Roll("roll 36 in", 36 * 25.4))
"""Rolls that most copy shops have (from memory)."""

Laid = Tiling | SinglePage


@dataclass(frozen=True, eq=False)
class PatternPrint:
    """The PDF files of a pattern: laid out and counted first, written later.

    Attributes:
        pattern: With the pieces that are to be printed.
        options: How they are printed.
        show: Writes lengths, in the wearer's unit.
    """

    pattern: Pattern
    options: PrintOptions
    show: Show

    @cached_property
    def _parts(self) -> dict[str, Pattern]:
        """What lies on the sheets of each file, by its name."""
        name = f"pattern-{self.options.name}"
        if not self.options.apart:
            return {f"{name}.pdf": self.pattern}
        return {
            f"{name}-{number}-{safe_name(piece.name)}.pdf": replace(self.pattern, printed=(piece.id,))
            for number, piece in self.pattern.numbered
        }

    @cached_property
    def _laid(self) -> dict[str, Laid]:
        return {name: laid_out(part, self.options) for name, part in self._parts.items()}

    @cached_property
    def _notes(self) -> list[Recording]:
        """What is printed before the sheets of a home printer."""
        laid = next(iter(self._laid.values()))
        return notes_of(self.pattern, laid, show=self.show) if isinstance(laid, Tiling) else []

    @property
    def _with_notes(self) -> bool:
        """Whether the pattern and what goes with it are printed on one paper."""
        paper = self.options.paper
        return isinstance(paper, Paper) and not paper.is_large and not self.options.apart

    @property
    def said(self) -> str:
        """How much paper it takes, such as "24 sheets of A4 in landscape and 3 to read first"."""
        laid = list(self._laid.values())
        if len(laid) > 1:
            return f"{len(laid)} files, {_sheets(sum(map(_pages, laid)))} in all"
        if isinstance(laid[0], SinglePage):
            paper = laid[0].paper
            return f"1 page, {self.show(paper.width)} wide and {self.show(paper.height)} long"
        paper = laid[0].format.paper
        of = f" of {paper.label}" if isinstance(self.options.paper, Paper) else ""
        said = f"{_sheets(_pages(laid[0]))}{of}{' in landscape' if paper.landscape else ''}"
        if not self._with_notes:
            return said
        return f"{said} and {1 + len(self._notes)} to read first"

    def writers(self, reports: dict[str, PrintReport]) -> dict[str, Callable[[Path], None]]:
        """Return what writes each file, by its name; each adds to `reports` when it has written.

        A writer refuses pieces that do not fit on one page which PDF readers show.
        """
        writers: dict[str, Callable[[Path], None]] = {
            name: partial(self._write_part, name, reports) for name in self._parts
        }
        if not self.options.apart and not self._with_notes:
            writers[NOTES] = partial(self._write_notes, reports)
        return writers

    def _write_part(self, name: str, reports: dict[str, PrintReport], path: Path) -> None:
        part, laid = self._parts[name], self._laid[name]
        with path.open("wb") as target:
            if isinstance(laid, SinglePage):
                reports[name] = _write_page(part, laid, target)
            elif self._with_notes:
                reports[name] = write_sheets_with_notes(part, laid, target, notes=self._notes)
            else:
                reports[name] = write_sheets(part, laid, target)

    def _write_notes(self, reports: dict[str, PrintReport], path: Path) -> None:
        (laid,) = self._laid.values()
        with path.open("wb") as target:
            reports[NOTES] = write_notes_pdf(self.pattern, laid, target, show=self.show)


def _write_page(pattern: Pattern, page: SinglePage, target: BinaryIO) -> PrintReport:
    try:
        return write_page(pattern, page, target)
    except PageTooLarge as error:
        message = f"{str(error)[0].upper()}{str(error)[1:]}."
        raise DraftRefused([Problem(f"--paper {SINGLE}", message, Severity.REFUSAL)]) from error


def laid_out(pattern: Pattern, options: PrintOptions) -> Laid:
    """Return the pieces on the paper asked for."""
    if isinstance(options.paper, Paper):
        return tiled(pattern, options.paper.corrected(options.scale), options.orientation)
    if options.paper is None:
        return single_page(pattern, Typeface(), options.scale)
    return laid_on_roll(pattern, options.paper, options.scale, Typeface())


def sheet_counts(pattern: Pattern, options: PrintOptions, show: Show) -> Iterator[str]:
    """Yield a line for every paper: how many sheets the pattern takes on it."""
    forms: dict[str, Paper | Roll | None] = {**PAPERS, SINGLE: None}
    forms |= {roll.label: roll for roll in ROLLS}
    if isinstance(options.paper, Roll):
        forms[options.paper.label] = options.paper
    for name, form in forms.items():
        yield f"{name}: {PatternPrint(pattern, replace(options, paper=form), show).said}"


def _pages(laid: Laid) -> int:
    return 1 if isinstance(laid, SinglePage) else len(laid.tiles)


def _sheets(count: int) -> str:
    return "1 sheet" if count == 1 else f"{count} sheets"
