"""The PDF files of one pattern: on which sheets, which pieces, and how many sheets that makes."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cache, partial
from pathlib import Path
from typing import BinaryIO

from drafting.errors import DraftRefused, Problem, Severity
from drafting.findings import Show
from drafting.pattern import Pattern
from outputs.chosen_pieces import choose
from outputs.folder import safe_name
from outputs.notes_sheet import draw_notes
from outputs.paper import PAPERS, SINGLE, Paper, Roll
from outputs.pdf import (
    PageTooLarge,
    write_notes_pdf,
    write_page,
    write_sheets,
    write_sheets_with_notes,
)
from outputs.pdf_fonts import Typeface
from outputs.print_options import PrintOptions
from outputs.print_report import PrintReport
from outputs.roll import laid_on_roll
from outputs.single_page import SinglePage, single_page
from outputs.tiling import Tiling, tiled
from styles.toile import toile_pieces

NOTES = "notes.pdf"
"""What goes with a pattern on large sheets, for the printer at home."""
ROLLS = (Roll("roll 24 in", 24 * 25.4), Roll("roll 36 in", 36 * 25.4))
"""Rolls that most copy shops have (from memory)."""

Laid = Tiling | SinglePage


def pattern_to_print(pattern: Pattern, options: PrintOptions) -> Pattern:
    """Return the pattern with the pieces that are to be printed.

    Raises:
        DraftRefused: no piece has such a name.
    """
    if options.toile:
        return replace(pattern, printed=toile_pieces(pattern))
    return choose(pattern, options.only) if options.only else pattern


def pdf_writers(
    pattern: Pattern, options: PrintOptions, show: Show, reports: dict[str, PrintReport]
) -> dict[str, Callable[[Path], None]]:
    """Return what writes each file, by its name; each adds to `reports` when it has written.

    A writer refuses pieces that do not fit on one page which PDF readers show.
    """
    name = f"pattern-{options.name}"
    if options.apart:
        parts = {
            f"{name}-{number}-{safe_name(piece.name)}.pdf": replace(pattern, printed=(piece.name,))
            for number, piece in pattern.numbered
        }
    else:
        parts = {f"{name}.pdf": pattern}
    with_notes = _is_for_home(options) and not options.apart

    @cache
    def laid_part(name: str) -> Laid:
        return laid_out(parts[name], options)

    def write_part(part: Pattern, name: str, path: Path) -> None:
        laid = laid_part(name)
        with path.open("wb") as target:
            if isinstance(laid, SinglePage):
                reports[name] = _write_page(part, laid, target)
            elif with_notes:
                reports[name] = write_sheets_with_notes(part, laid, target, show=show)
            else:
                reports[name] = write_sheets(part, laid, target)

    def write_notes(path: Path) -> None:
        with path.open("wb") as target:
            reports[NOTES] = write_notes_pdf(pattern, laid_part(f"{name}.pdf"), target, show=show)

    writers: dict[str, Callable[[Path], None]] = {
        name: partial(write_part, part, name) for name, part in parts.items()
    }
    return writers if options.apart or with_notes else {**writers, NOTES: write_notes}


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
        asked = replace(options, paper=form)
        laid = laid_out(pattern, asked)
        if isinstance(laid, SinglePage):
            yield f"{name}: 1 page, {show(laid.paper.width)} wide and {show(laid.paper.height)} long"
            continue
        said = _sheets(len(laid.tiles))
        if _is_for_home(asked):
            notes = draw_notes(Typeface(), laid.format.paper, laid.layout, pattern, show=show)
            said += f" of pattern, {1 + len(notes)} to read first"
        yield f"{name}: {said}"


def _sheets(count: int) -> str:
    return "1 sheet" if count == 1 else f"{count} sheets"


def _is_for_home(options: PrintOptions) -> bool:
    """Return whether the pattern and what goes with it are printed on one paper."""
    return isinstance(options.paper, Paper) and not options.paper.is_large
