"""What a check found, as data: printed by the command line, on the cover sheet, and asserted in tests."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from drafting.base.errors import Severity

Show = Callable[[float], str]
"""Writes a length given in mm for people, with its unit."""


def in_centimetres(mm: float) -> str:
    """Return a length as "95.3 cm"."""
    return f"{mm / 10:.1f} cm"


@dataclass(frozen=True)
class Sentence:
    """A sentence whose lengths each output writes in the wearer's unit.

    Attributes:
        text: `{0}`, `{1}` … stand for the amounts, `{{` for a brace.
        amounts: Lengths in mm.
    """

    text: str
    amounts: tuple[float, ...] = ()

    def say(self, show: Show = in_centimetres) -> str:
        """Return the sentence with its lengths written by `show`."""
        return self.text.format(*(show(amount) for amount in self.amounts))


def literal(text: str) -> str:
    """Return a text that a person typed as it stands in a `Sentence` or a `Finding`."""
    return text.replace("{", "{{").replace("}", "}}")


@dataclass(frozen=True)
class Finding:
    """One thing that a check found.

    Attributes:
        code: A short fixed name of the kind of finding, such as "crotch-out-of-reach".
        severity: How much it matters.
        where: The piece, seam or measurement it is about.
        text: One sentence for the wearer; `{0}`, `{1}` … stand for the amounts, `{{` for a brace.
        amounts: Lengths in mm that the sentence names, so that each output writes them in the wearer's unit.
        measured: What was found, in mm or degrees, None where there is no number.
        allowed: What was wanted, in the same unit.
    """

    code: str
    severity: Severity
    where: str
    text: str
    amounts: tuple[float, ...] = ()
    measured: float | None = None
    allowed: float | None = None

    def say(self, show: Show = in_centimetres) -> str:
        """Return the sentence with its lengths written by `show`."""
        return Sentence(self.text, self.amounts).say(show)
