"""The fitting guide in words: from what one sees on the toile to what to try first, and by how much."""

from __future__ import annotations

from drafting.base.units import Unit, format_length
from drafting.body.corrections import CORRECTIONS
from outputs.fit.fitting_signs import Sign

TITLE = "Fitting guide for the toile"
CORRECTIONS_HEADING = "What each name does to the pattern"
SIGNS_HEADING = "What is seen, and what to try first"


def entry(key: str, amount: float, unit: Unit) -> str:
    """Return a line of the measurements file, such as `full_seat = "1.0 cm"`."""
    return f'{key} = "{format_length(amount, unit)}"'


def sign_lines(sign: Sign, unit: Unit) -> tuple[str, ...]:
    """Return what stands below the heading of a sign: meaning, first try, what then, and the source."""
    high = format_length(sign.amount.high, unit)
    then = f"; then {', '.join(sign.then)}" if sign.then else ""
    besides = f" {sign.besides}" if sign.besides else ""
    return (
        f"{sign.means}{besides}",
        f"Try: {entry(sign.first, sign.amount.low, unit)}, up to {high}{then}.",
        f"Source: {sign.source}.",
    )


def correction_lines(key: str, unit: Unit) -> tuple[str, ...]:
    """Return what stands below the name of a correction: its amount, what is done, and the source."""
    c = CORRECTIONS[key]
    low, high = (format_length(mm, unit) for mm in c.usual)
    return (
        f"{c.seen[0].upper()}{c.seen[1:]}; usually {low} to {high}.",
        f"Done: {c.done}.",
        f"Source: {c.source}.",
    )
