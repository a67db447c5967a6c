"""The PDF files of one pattern: on which sheets, which pieces, and how many sheets that makes."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property, partial
from typing import BinaryIO

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.findings import Show
from drafting.pieces.pattern import Pattern
from outputs.canvas.canvas import Recording
from outputs.canvas.typeface import Typeface
from outputs.files.writers import Writer
from outputs.paper.paper import PAPERS, SINGLE, Paper, Roll
from outputs.print.options import PrintOptions
from outputs.print.pdf import (
    PageTooLarge,
    notes_apart,
    notes_of,
    write_notes_pdf,
    write_page,
    write_sheets,
    write_sheets_with_notes,
)
from outputs.print.roll import laid_on_roll
from outputs.print.single_page import SinglePage, single_page
from outputs.sheets.tiling import Tiling, tiled
from outputs.words.file_names import safe_name
from outputs.words.print_report import PrintReport

NOTES = "notes.pdf"
"""What goes with a pattern on large sheets, for the printer at home."""
ROLLS = (Roll("roll 24 in", 24 * 25.4), Roll("roll 36 in", 36 * 25.4))
"""Rolls that most copy shops have (from memory)."""

Laid = Tiling | SinglePage


@dataclass(frozen=True, kw_only=True)
class PaperUse:
    """How much paper a pattern takes.

    Attributes:
        files: How many files it is printed in.
        sheets: Sheets that it lies on, of all files.
        before: Sheets to read first, in the same file.
        label: What the paper is called; empty where it is from a roll.
        landscape: Whether the sheets lie.
        page: Width and height, mm, where it is one page as large as it needs.
    """

    files: int = 1
    sheets: int
    before: int = 0
    label: str = ""
    landscape: bool = False
    page: tuple[float, float] | None = None

    def say(self, show: Show) -> str:
        """Return it in words, such as "24 sheets of A4 in landscape and 3 to read first"."""
        if self.files > 1:
            return f"{self.files} files, {_sheets(self.sheets)} in all"
        if self.page:
            width, height = map(show, self.page)
            return f"1 page, {width} wide and {height} long"
        of = f" of {self.label}" if self.label else ""
        said = f"{_sheets(self.sheets)}{of}{' in landscape' if self.landscape else ''}"
        return f"{said} and {self.before} to read first" if self.before else said


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
        """What is printed before the sheets of a home printer, or apart from large ones."""
        if self.options.apart:
            return []
        (laid,) = self._laid.values()
        if self._with_notes and isinstance(laid, Tiling):
            return notes_of(self.pattern, laid, show=self.show)
        return notes_apart(self.pattern, laid, show=self.show)

    @property
    def _with_notes(self) -> bool:
        """Whether the pattern and what goes with it are printed on one paper."""
        paper = self.options.paper
        return isinstance(paper, Paper) and not paper.is_large and not self.options.apart

    @property
    def _notes_apart(self) -> bool:
        """Whether what goes with the pattern is a file of its own."""
        return not self.options.apart and not self._with_notes

    @property
    def use(self) -> PaperUse:
        """How much paper the pattern takes; notes that are a file of their own do not count."""
        laid = list(self._laid.values())
        first, sheets = laid[0], sum(map(_pages, laid))
        if len(laid) > 1:
            return PaperUse(files=len(laid), sheets=sheets)
        if isinstance(first, SinglePage):
            return PaperUse(sheets=sheets, page=(first.paper.width, first.paper.height))
        paper = first.format.paper
        return PaperUse(
            sheets=sheets,
            before=1 + len(self._notes) if self._with_notes else 0,
            label=paper.label if isinstance(self.options.paper, Paper) else "",
            landscape=paper.landscape,
        )

    @property
    def sheets(self) -> dict[str, int]:
        """How many sheets each file has, by its name."""
        before = 1 + len(self._notes) if self._with_notes else 0
        counts = {name: before + _pages(laid) for name, laid in self._laid.items()}
        return {**counts, NOTES: 1 + len(self._notes)} if self._notes_apart else counts

    def writers(self) -> dict[str, Writer]:
        """Return what writes each file, by its name.

        A writer refuses pieces that do not fit on one page which PDF readers show.
        """
        writers: dict[str, Writer] = {name: partial(self._write_part, name) for name in self._parts}
        if self._notes_apart:
            writers[NOTES] = self._write_notes
        return writers

    def _write_part(self, name: str, target: BinaryIO) -> PrintReport:
        part, laid = self._parts[name], self._laid[name]
        if isinstance(laid, SinglePage):
            return _write_page(part, laid, target)
        if self._with_notes:
            return write_sheets_with_notes(part, laid, target, notes=self._notes)
        return write_sheets(part, laid, target)

    def _write_notes(self, target: BinaryIO) -> PrintReport:
        (laid,) = self._laid.values()
        return write_notes_pdf(self.pattern, laid, target, notes=self._notes)


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


def uses(pattern: Pattern, options: PrintOptions, show: Show) -> dict[str, PaperUse]:
    """Return how much of every paper the pattern takes, by the paper's name."""
    forms: dict[str, Paper | Roll | None] = {**PAPERS, SINGLE: None}
    forms |= {roll.label: roll for roll in ROLLS}
    if isinstance(options.paper, Roll):
        forms[options.paper.label] = options.paper
    return {
        name: PatternPrint(pattern, replace(options, paper=form), show).use for name, form in forms.items()
    }


def _pages(laid: Laid) -> int:
    return 1 if isinstance(laid, SinglePage) else len(laid.tiles)


def _sheets(count: int) -> str:
    return "1 sheet" if count == 1 else f"{count} sheets"
