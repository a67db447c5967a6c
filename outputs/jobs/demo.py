"""The jeans of invented people, with the measurements files to try changes on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from outputs.files.text_file import TextFile
from outputs.jobs.draft import Drafted, draft
from outputs.jobs.options import DraftOptions
from outputs.print.options import PrintOptions
from outputs.reading.measurements_file import measurements_of
from outputs.words.progress import Progress, silent
from styles.choice.style import STRAIGHT


@dataclass(frozen=True, kw_only=True, eq=False)
class Invented:
    """One of the invented people.

    Attributes:
        file: The measurements file.
        drafted: A straight cut of it.
    """

    file: TextFile
    drafted: Drafted


def demo(
    people: Iterable[TextFile], printing: PrintOptions, *, progress: Progress = silent
) -> Iterator[Invented]:
    """Yield each of some people with a straight cut, drafted when asked for.

    Raises:
        DraftRefused: a measurements file does not allow a draft.
    """
    for file in people:
        read = measurements_of(file)
        asked = DraftOptions(printing=printing)
        yield Invented(file=file, drafted=draft(read, STRAIGHT, asked, progress=progress))
