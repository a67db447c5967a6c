"""The options of `draft` that change the style, read into it; and what they say of the cloth."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from drafting.errors import DraftRefused, Problem, Severity
from drafting.measurements import WaistLevel
from outputs.cloth_entries import in_one_line, read_cloth
from outputs.units import LengthError, parse_length
from styles.style import Allowances, Band, Felling, Laps, Style

LAPS = {"left": Laps.LEFT_OVER_RIGHT, "right": Laps.RIGHT_OVER_LEFT}
"""By the front that lies on top."""

_BELOW_LEAST, _BELOW_MOST = -50.0, 120.0
"""From a high waist to the lowest that is worn, mm (common practice, no source)."""
_BELOW_RANGE = "between -5 cm (above the waist) and 12 cm (between -2 in and 4 3/4 in)"


@dataclass(frozen=True, kw_only=True)
class StyleOptions:
    """What was asked for; None leaves the style as it is.

    Attributes:
        band: How the waistband is made.
        laps: Which front lies on top.
        below_waist: How far below the waist the jeans sit, mm, negative above it.
        felling: How the seams that carry the strain are finished.
        allowance: False leaves all seam allowances away.
        cloth: Percentages by names of `outputs.cloth_entries.CLOTH_ENTRIES`.
    """

    band: Band | None = None
    laps: Laps | None = None
    below_waist: float | None = None
    felling: Felling | None = None
    allowance: bool = True
    cloth: Mapping[str, float] = field(default_factory=dict)

    def style(self, base: Style, waist: WaistLevel) -> Style:
        """Return the style as asked for; jeans whose waist was measured where they are worn sit there."""
        rise, below = base.rise, base.below_waist
        if waist is WaistLevel.WORN:
            rise, below = None, 0.0
        if self.below_waist is not None:
            rise, below = None, self.below_waist
        return replace(
            base,
            rise=rise,
            band=self.band or base.band,
            laps=self.laps or base.laps,
            below_waist=below,
            allowances=self._allowances(base.allowances),
        )

    def _allowances(self, base: Allowances) -> Allowances:
        felled = replace(base, felling=self.felling or base.felling)
        if self.allowance:
            return felled
        return replace(felled, waist=0, side_seam=0, inseam=0, crotch_seam=0, yoke=0, small=0, hem=0)


def read_options(
    *,
    band: str | None,
    laps: str | None,
    seams: str | None,
    below_waist: str | None,
    allowance: bool,
    cloth: Mapping[str, str | None],
) -> StyleOptions:
    """Return the options as typed; `band`, `laps` and `seams` are words that the command line offers.

    Raises:
        DraftRefused: with every option that cannot be meant.
    """
    below, problems = _read_below(below_waist) if below_waist is not None else (None, [])
    percents, wrong = read_cloth({key: value for key, value in cloth.items() if value is not None})
    problems += [replace(problem, key=f"--{problem.key.replace('_', '-')}") for problem in wrong]
    if problems:
        raise DraftRefused(problems)
    return StyleOptions(
        band=Band(band) if band else None,
        laps=LAPS[laps] if laps else None,
        below_waist=below,
        felling=Felling(seams) if seams else None,
        allowance=allowance,
        cloth=percents,
    )


def _read_below(typed: str) -> tuple[float | None, list[Problem]]:
    """Return millimetres, or what is wrong with the text; a minus puts the jeans above the waist."""
    bare = typed.strip()
    above = bare[:1] in ("-", "−", "–")
    try:
        mm = parse_length(bare[1:] if above else bare, None)
    except LengthError as error:
        message = f"The length cannot be read: {error}."
    else:
        mm = -mm if above else mm
        if _BELOW_LEAST <= mm <= _BELOW_MOST:
            return mm, []
        message = "Jeans are not worn there."
    return None, [Problem("--below-waist", message, Severity.REFUSAL, in_one_line(typed), _BELOW_RANGE)]
