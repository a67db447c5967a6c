"""The options of `cloth`: how wide each cloth is, how it lies, and where the plan comes from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from importlib.util import find_spec

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed_words import in_one_line
from drafting.base.units import LengthError, parse_length
from drafting.pieces.pieces import Material
from outputs.cloth.laid_cloth import NARROWEST, WIDEST, WIDTH_OPTIONS, ClothOnTable

USUAL = {Material.DENIM: 1500.0, Material.POCKETING: 1100.0, Material.INTERFACING: 900.0}
"""Widths taken where none is given, mm: denim 150 cm, cotton for quilts 110, fusible 90 (from memory)."""
_RANGE = f"between {NARROWEST / 10:g} cm and {WIDEST / 10:g} cm (12 in and 130 in)"


@dataclass(frozen=True, kw_only=True)
class ClothOptions:
    """How the cloths lie.

    Attributes:
        on_table: Each cloth.
        seconds: How long to look for a shorter plan; None for the quick one.
    """

    on_table: Mapping[Material, ClothOnTable]
    seconds: int | None = None


def read_cloth_options(
    *,
    widths: tuple[str | None, ...],
    folded: bool,
    one_way: bool,
    seconds: int | None,
    repeated: str | None = None,
) -> ClothOptions:
    """Return the options as typed.

    Args:
        widths: Of denim, pocketing and interfacing.
        folded: Whether the cloth is folded lengthwise.
        one_way: Whether all hems lie to one end.
        seconds: How long to look for a shorter plan.
        repeated: The name of the file whose plan is repeated, which says all this itself.

    Raises:
        DraftRefused: with every option that cannot be meant.
    """
    typed = dict(zip(WIDTH_OPTIONS, widths, strict=True))
    read: dict[Material, float] = {}
    problems = []
    for cloth, text in typed.items():
        try:
            read[cloth] = USUAL[cloth] if text is None else parse_length(text, None)
        except LengthError as error:
            problems.append(_wrong(cloth, f"The width cannot be read: {error}.", text))
        else:
            if not NARROWEST <= read[cloth] <= WIDEST:
                problems.append(_wrong(cloth, "No cloth is sold this wide.", text))
    given = [WIDTH_OPTIONS[cloth] for cloth, text in typed.items() if text is not None]
    given += [name for name, is_given in (("--folded", folded), ("--one-way", one_way)) if is_given]
    given += ["--seconds"] if seconds else []
    if repeated and given:
        message = f"A plan that is repeated says this itself; leave out {', '.join(given)}."
        problems.append(Problem("--plan", message, Severity.REFUSAL, in_one_line(repeated)))
    if seconds and find_spec("spyrrow") is None:
        message = 'This needs the library spyrrow; install it with: pip install "jeansblock[plan]".'
        problems.append(Problem("--seconds", message, Severity.REFUSAL, str(seconds)))
    if problems:
        raise DraftRefused(problems)
    on_table = {cloth: ClothOnTable(width=mm, folded=folded, one_way=one_way) for cloth, mm in read.items()}
    return ClothOptions(on_table=on_table, seconds=seconds)


def _wrong(cloth: Material, message: str, typed: str | None) -> Problem:
    return Problem(WIDTH_OPTIONS[cloth], message, Severity.REFUSAL, in_one_line(typed), _RANGE)
