"""What every job hands back: what it found, and files that are still to be written."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from drafting.base.errors import Problem
from outputs.files.writers import Writer


@dataclass(frozen=True, kw_only=True, eq=False)
class Result:
    """What came of a job. Nothing is written yet, and no writer needs another to have written.

    Attributes:
        files: What writes each file, by its name, in the order in which they are told.
        warnings: What is unusual about the measurements, each with its key and line in the file.
    """

    files: Mapping[str, Writer] = field(default_factory=dict)
    warnings: tuple[Problem, ...] = ()

    @property
    def file(self) -> tuple[str, Writer]:
        """The name of the only file, and what writes it.

        Raises:
            ValueError: there are several.
        """
        [named] = self.files.items()
        return named
