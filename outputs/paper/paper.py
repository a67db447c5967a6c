"""Papers to print on: exact sizes, and the border that no ink may enter. Millimetres, upright."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import Enum

from drafting.base.units import LengthError, read_length
from outputs.paper.printer_scale import PrinterScale

MARGIN = 10.0
"""Border without ink. Home printers leave 3 to 6.35 mm, older ones up to 10 mm (makers' data sheets)."""
LARGE = 500.0
"""Sheets wider than this come from a copy shop (A3 of ISO 216, the widest at home, is 297 mm), mm."""
ROLL_LEAST, ROLL_MOST = 275.0, 2300.0
"""Widths of the rolls that plotters take: from 11 in to some 90 in (from memory)."""
ROLL_RANGE = "a roll between 275 and 2300 mm wide (11 to 90 in)"


@dataclass(frozen=True)
class Paper:
    """A sheet of paper.

    Attributes:
        label: Its name as printed on every sheet.
        width: Full width in mm.
        height: Full height in mm.
        margin: Border without ink on all four sides, in mm.
        scale: What its printer makes of a true length. The sizes are those of the print: on a printer that
            prints 97 % a page of 210 mm is 203.7 mm wide. It is said of the upright sheet.
        landscape: Whether it lies across: turned by a quarter for reading, after it was printed upright.
    """

    label: str
    width: float
    height: float
    margin: float = MARGIN
    scale: PrinterScale = field(default_factory=PrinterScale)
    landscape: bool = False

    @property
    def name(self) -> str:
        """Its label, and whether it lies across."""
        return f"{self.label}, landscape" if self.landscape else self.label

    @property
    def turned(self) -> Paper:
        """The same sheet turned by a quarter."""
        return replace(self, width=self.height, height=self.width, landscape=not self.landscape)

    @property
    def upright(self) -> Paper:
        """The same sheet as a printer takes it."""
        return self.turned if self.landscape else self

    @property
    def is_large(self) -> bool:
        """Whether it is printed at a copy shop: too large and too dear for notes."""
        return min(self.width, self.height) > LARGE

    def fit_factor(self, other: Paper, border: float) -> float:
        """Return the scale at which a program fits this page on `other` within a dead `border` in mm."""
        across, up = other.width / other.scale.across, other.height / other.scale.up
        return min(
            (across - 2 * border) / (self.width / self.scale.across),
            (up - 2 * border) / (self.height / self.scale.up),
        )

    def corrected(self, scale: PrinterScale) -> Paper:
        """Return the sheet as it comes out of a printer of this scale, its ink MARGIN inside the real one.

        A print that comes out larger than its sheet loses an edge, and which one is up to the printer: the
        border is that much wider on all sides.
        """
        lost = max(0.0, self.width * (scale.across - 1), self.height * (scale.up - 1))
        return replace(
            self,
            width=self.width * scale.across,
            height=self.height * scale.up,
            margin=self.margin + lost,
            scale=scale,
        )


class Orientation(Enum):
    """How sheets lie."""

    FEWEST = "fewest"
    """Whichever needs fewer sheets; upright where both need as many."""
    PORTRAIT = "portrait"
    LANDSCAPE = "landscape"

    def of(self, paper: Paper) -> tuple[Paper, ...]:
        """Return the ways in which an upright sheet may lie."""
        ways = {Orientation.PORTRAIT: (paper,), Orientation.LANDSCAPE: (paper.turned,)}
        return ways.get(self, (paper, paper.turned))


@dataclass(frozen=True)
class Roll:
    """Paper from a roll: as wide as that, as long as needed.

    Attributes:
        label: Its name as printed, such as "roll 36 in".
        width: Full width in mm.
    """

    label: str
    width: float


A4 = Paper("A4", 210.0, 297.0)
"""ISO 216."""
LETTER = Paper("US Letter", 8.5 * 25.4, 11 * 25.4)
"""ANSI A, 8 1/2 by 11 inches."""
EITHER = Paper("A4 or US Letter", min(A4.width, LETTER.width), min(A4.height, LETTER.height))
"""The largest page that prints whole on both."""

PAPERS = {
    "a4": A4,
    "letter": LETTER,
    "a3": Paper("A3", 297.0, 420.0),
    "legal": Paper("US Legal", 8.5 * 25.4, 14 * 25.4),
    "either": EITHER,
    "a1": Paper("A1", 594.0, 841.0),
    "a0": Paper("A0", 841.0, 1189.0),
}
"""Sheets by the name that a person types."""
SINGLE = "single"
"""What is typed for one big page."""


def read_paper(typed: str) -> Paper | Roll | None:
    """Return the sheet or roll that a person means; None for one page as large as it needs.

    Raises:
        LengthError: neither a name of a paper nor the width of a roll; the message says what is offered.
    """
    name = " ".join(typed.lower().split())
    if name == SINGLE:
        return None
    if name in PAPERS:
        return PAPERS[name]
    offered = f"Papers are {', '.join([*PAPERS, SINGLE])}, or the width of a roll such as “36 in” or “841 mm”"
    if not any(character.isdigit() for character in name) or name[:1] in "ab":
        raise LengthError(f"No paper has this name. {offered}")
    try:
        length = read_length(name, None)
    except LengthError as error:
        raise LengthError(f"The width of a roll cannot be read: {error}. {offered}") from error
    if not ROLL_LEAST <= length.mm <= ROLL_MOST:
        raise LengthError("No roll of paper is that wide")
    return Roll(f"roll {float(length.number):g} {length.unit.value}", length.mm)
