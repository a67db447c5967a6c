"""What is to say of a pattern file once it is written."""

from dataclasses import dataclass


@dataclass(frozen=True)
class PrintReport:
    """What was written.

    Attributes:
        sheets: Pages in the file.
        shortened: Pieces whose label did not fit, each with what it lacks.
        warnings: A sentence each: characters that cannot be written as typed.
    """

    sheets: int
    shortened: tuple[str, ...]
    warnings: tuple[str, ...]
