"""One person of a class, as handed to a worker."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from outputs.jobs.options import DraftOptions
from outputs.reading.measurements_file import MeasurementFile
from styles.choice.style import Style


@dataclass(frozen=True, kw_only=True)
class Task:
    """One person to draft.

    Attributes:
        number: In the order of the class, from 1.
        place: Where the measurements stand.
        read: The measurements.
        target: The folder.
        style: What is drafted.
        asked: How.
        force: Draft anew what is there.
    """

    number: int
    place: str
    read: MeasurementFile
    target: Path
    style: Style
    asked: DraftOptions
    force: bool
