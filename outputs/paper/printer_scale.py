"""What a printer makes of a true length, read off a printed bar; and how a file is corrected for it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed_words import in_one_line
from drafting.base.units import LengthError, Unit, format_length, read_length

OPTION = "--printed-bar"
BAR = 100.0
"""Length of the metric bars, mm."""
INCH_BAR = 4 * 25.4
"""Length of the inch bars, mm."""
TOLERANCE = 0.005
"""A print within this share of true size passes: 0.5 mm in 100, 5 mm on a hip of 1 m (common practice)."""
LEAST, MOST = 0.9, 1.05
"""What is corrected. "Fit to page" with the widest dead borders prints 91 %; a printer that prints more than
105 % would leave no room on the page for what must stay off its edge (own trial on A4 and US Letter)."""
APART = 0.03
"""How far across and up may differ: paper feed and carriage err each by themselves, by less than this (common
practice, no source)."""
_PLAUSIBLE = (
    "90 to 105 mm for the 100 mm bar, 3.6 to 4.2 in for the 4 in bar, across and up within 3 % of each other"
)


@dataclass(frozen=True)
class PrinterScale:
    """Printed length over true length, 1 for a true printer.

    Attributes:
        across: Across the upright sheet.
        up: Along it.
    """

    across: float = 1.0
    up: float = 1.0

    @property
    def is_true(self) -> bool:
        """Whether nothing is to be corrected."""
        return self.across == self.up == 1.0

    @property
    def passes(self) -> bool:
        """Whether a print may be used as it is."""
        return max(abs(self.across - 1), abs(self.up - 1)) <= TOLERANCE + 1e-9

    @property
    def percent(self) -> str:
        """What the printer prints, "97 %" or "97 % across and 98 % up"."""
        across, up = (f"{100 * share:.4g} %" for share in (self.across, self.up))
        return across if across == up else f"{across} across and {up} up"

    @property
    def words(self) -> str:
        """What is said of it on every sheet; nothing of a true printer."""
        return "" if self.is_true else f"corrected for a printer that prints {self.percent}"

    @property
    def name(self) -> str:
        """The same in a file name, such as "corrected-97" or "corrected-97-98"; nothing of a true printer."""
        shares = dict.fromkeys(f"{100 * share:.4g}" for share in (self.across, self.up))
        return "" if self.is_true else f"corrected-{'-'.join(shares)}"


TRUE = PrinterScale()
"""A printer that needs no correction."""


def read_printer_scale(readings: Sequence[str]) -> PrinterScale:
    """Return what the readings of the printed bars tell: none, one for both ways, or two, across and up.

    A reading in inches is one of the 4 in bar, any other of the 100 mm bar; a bare number is in millimetres.

    Raises:
        DraftRefused: with every reading that cannot be meant.
    """
    if len(readings) > 2:
        message = "Give it once for both directions, or twice: first across, then up."
        raise DraftRefused([Problem(OPTION, message, Severity.REFUSAL, in_one_line(", ".join(readings)))])
    shares: list[float] = []
    problems: list[Problem] = []
    for typed in readings:
        try:
            shares.append(_share(typed))
        except LengthError as error:
            message = f"The length of the printed bar cannot be read: {error}."
            problems.append(_problem(typed, message))
        else:
            if not LEAST <= shares[-1] <= MOST:
                message = "A printer is not that far off: a setting of the print window is, or the ruler."
                problems.append(_problem(typed, message))
    if not problems and shares and max(shares) - min(shares) > APART:
        message = "The two readings differ too much; measure both again."
        problems.append(_problem(", ".join(readings), message))
    if problems:
        raise DraftRefused(problems)
    return PrinterScale(shares[0], shares[-1]) if shares else PrinterScale()


def _share(typed: str) -> float:
    length = read_length(typed, Unit.MM)
    return length.mm / (INCH_BAR if length.unit is Unit.INCH else BAR)


def _problem(typed: str, message: str) -> Problem:
    return Problem(OPTION, message, Severity.REFUSAL, in_one_line(typed), _PLAUSIBLE)


def advice(scale: PrinterScale) -> list[str]:
    """Return what to do about a print that came out at this scale, a paragraph each."""
    measured = f"The printer prints {scale.percent} of the true size"
    if scale.passes:
        return [f"{measured}: true within 0.5 %. Change nothing; print the pattern with the same settings."]
    said = [
        f"{measured}; the pattern would come out wrong: a hip girth of "
        f"{format_length(1000, Unit.CM)} as {format_length(1000 * scale.across, Unit.CM)}.",
        "1. In the print window choose “actual size” or “100 %”, switch off “fit”, “shrink” and "
        "“borderless”, print the sheet again and measure again.",
    ]
    if scale.across == scale.up:
        said.append(
            f"2. If it still reads so, set the scale in the print window to {100 / scale.across:.1f} % "
            f"(100 divided by {scale.across:.4g}) and print the sheet once more: the bars must read true."
        )
        other = f'3. Or leave the window at 100 % and draft with {OPTION} "{BAR * scale.across:.4g} mm"'
    else:
        other = (
            "2. A print window has one scale for both directions and cannot mend this. Leave it at 100 % and "
            f'draft with {OPTION} "{BAR * scale.across:.4g} mm" {OPTION} "{BAR * scale.up:.4g} mm"'
        )
    said.append(f"{other}: the file is then corrected for this printer, and for no other.")
    return said
