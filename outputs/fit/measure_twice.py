"""Which measurements are worth taking twice, in words: what a slip of the tape in each does to the block."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import partial

from drafting.base.units import Unit, format_length
from drafting.block.block import draft_block
from drafting.body.checks import Wording
from drafting.body.measurements import term_of
from drafting.body.table import Range
from drafting.report.moves import BlockLength
from drafting.report.tape_error import LEAST, SLIP, Effect, TapeError, tape_errors
from outputs.fit.summary import wrapped
from outputs.reading.measurements_file import MeasurementFile
from styles.choice.style import Style
from styles.cloth.block_for_style import block_for
from styles.cloth.cloth import Cloth

MOST = 3
"""How many measurements are named as the most telling."""
_HEADS = {
    BlockLength.WAIST: "waist", BlockLength.HIP: "hip", BlockLength.THIGH: "thigh",
    BlockLength.CROTCH_SEAM: "crotch", BlockLength.INSEAM: "inseam", BlockLength.SIDE_SEAM: "side",
}  # fmt: skip
"""Heads of the columns by the lengths of the block."""


class _InUnit(Wording):
    """Speaks of lengths in the wearer's unit; nobody typed the changed values, so no slip is guessed."""

    def __init__(self, unit: Unit) -> None:
        self.unit = unit

    def show(self, mm: float) -> str:
        return format_length(mm, self.unit)

    def other_reading(self, key: str, mm: float, usual: Range) -> str:
        return ""


def measure_twice_lines(read: MeasurementFile, style: Style) -> Iterator[str]:
    """Yield which measurements move the block of a style most, and a table of what each of them changes.

    Lines have 80 letters at most; lengths of the table are in mm, those in reasons in the wearer's unit.
    """
    block = block_for(read.measurements, style, Cloth(**read.cloth))
    draft = partial(draft_block, ease=block.ease, cut=style.leg)
    errors = tape_errors(read.measurements, draft=draft, wording=_InUnit(read.unit))
    slip = f"{SLIP:g} mm" + (f" ({format_length(SLIP, read.unit)})" if read.unit is Unit.INCH else "")
    telling = [error for error in errors if not error.idle]
    yield from wrapped(f"Most worth taking twice: {_names(telling[:MOST])}.")
    yield from wrapped(
        f"The table says what {slip} more or less of a measurement does: how far the outline of the block"
        " moves at most, and what becomes longer (+) or shorter (-), in mm. A dot is no change."
    )
    yield ""
    yield _row("", "", "outline", *_HEADS.values())
    for error in telling:
        name = term_of(error.key)
        for effect in (error.more, error.less):
            yield from _effect_lines(name, effect)
            name = ""
    if idle := [error for error in errors if error.idle]:
        yield ""
        yield from wrapped(f"No change by {slip} of: {_names(idle)}.")


def _names(errors: Iterable[TapeError]) -> str:
    # Some terms have commas of their own.
    return "; ".join(term_of(error.key) for error in errors)


def _effect_lines(name: str, effect: Effect) -> Iterator[str]:
    by = f"{effect.by:+g}"
    if effect.refusals:
        yield _row(name, by, "refused")
        for problem in effect.refusals:
            yield from (f"    {line}" for line in wrapped(problem.message))
        return
    yield _row(
        name, by, _tenths(effect.outline, sign=False), *(_tenths(effect.lengths[key]) for key in _HEADS)
    )


def _tenths(mm: float, *, sign: bool = True) -> str:
    if abs(mm) < LEAST:
        return "."
    return f"{mm:+.1f}" if sign else f"{mm:.1f}"


def _row(name: str, by: str, outline: str, *lengths: str) -> str:
    return f"{name:<24}{by:>4}{outline:>9}" + "".join(f"{length:>7}" for length in lengths)
