"""Which measurements are worth taking twice, in lines: what a slip of the tape does to the block."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from drafting.base.units import Unit, format_length
from drafting.body.measurements import term_of
from drafting.report.moves import BlockLength
from drafting.report.tape_error import LEAST, SLIP, Effect, TapeError
from outputs.lines.wrapped import wrapped

MOST = 3
"""How many measurements are named as the most telling."""
_HEADS = {
    BlockLength.WAIST: "waist", BlockLength.HIP: "hip", BlockLength.THIGH: "thigh",
    BlockLength.CROTCH_SEAM: "crotch", BlockLength.INSEAM: "inseam", BlockLength.SIDE_SEAM: "side",
}  # fmt: skip
"""Heads of the columns by the lengths of the block."""


def measure_twice_lines(errors: Sequence[TapeError], unit: Unit) -> Iterator[str]:
    """Yield which measurements move a block most, and a table of what each of them changes.

    Lines have 80 letters at most; lengths of the table are in mm, those in reasons in the wearer's unit.
    """
    slip = f"{SLIP:g} mm" + (f" ({format_length(SLIP, unit)})" if unit is Unit.INCH else "")
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
