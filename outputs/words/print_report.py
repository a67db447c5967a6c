"""What is to say of a file once it is written."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class PrintReport:
    """What was written.

    Attributes:
        sheets: Pages in the file; 0 of one that is not printed.
        shortened: Pieces whose label did not fit, each with what it lacks.
        warnings: A sentence each: characters that cannot be written as typed.
    """

    sheets: int = 0
    shortened: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
