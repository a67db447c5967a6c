"""Papers for a home printer: exact sizes, and the border that no ink may enter. Millimetres, upright."""

from __future__ import annotations

from dataclasses import dataclass

MARGIN = 10.0
"""Border without ink. Home printers leave 3 to 6.35 mm, older ones up to 10 mm (makers' data sheets)."""


@dataclass(frozen=True)
class Paper:
    """A sheet of paper.

    Attributes:
        label: Its name as printed on every sheet.
        width: Full width in mm.
        height: Full height in mm.
        margin: Border without ink on all four sides, in mm.
    """

    label: str
    width: float
    height: float
    margin: float = MARGIN

    def fit_factor(self, other: Paper, border: float) -> float:
        """Return the scale at which a printer fits this page on `other` within a dead `border` in mm."""
        return min((other.width - 2 * border) / self.width, (other.height - 2 * border) / self.height)


A4 = Paper("A4", 210.0, 297.0)
"""ISO 216."""
LETTER = Paper("US Letter", 8.5 * 25.4, 11 * 25.4)
"""ANSI A, 8 1/2 by 11 inches."""

PAPERS = {
    "a4": A4,
    "letter": LETTER,
    "a3": Paper("A3", 297.0, 420.0),
    "legal": Paper("US Legal", 8.5 * 25.4, 14 * 25.4),
    "either": Paper("A4 or US Letter", min(A4.width, LETTER.width), min(A4.height, LETTER.height)),
}
"""Papers by the name that a person types; "either" is the largest page that prints whole on both."""
