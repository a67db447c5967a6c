"""The jeans of a measurements file, with what was asked for otherwise."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.units import format_length
from outputs.reading.draft_record import Inputs
from outputs.reading.measurements_file import MeasurementFile
from outputs.reading.style_options import StyleOptions
from styles.choice.style import Style
from styles.making.jeans import Jeans


def jeans_from(read: MeasurementFile, style: Style, options: StyleOptions) -> Jeans:
    """Return the jeans; the cloth of the options counts before the file's.

    Raises:
        DraftRefused: the measurements do not allow a draft.
    """
    return Inputs.of(read, style, options).jeans()


def refuse_faults(several: Iterable[Jeans], read: MeasurementFile) -> None:
    """Refuse jeans that would not sew together.

    Raises:
        DraftRefused: with every fault of every style, in the wearer's unit.
    """
    several = tuple(several)
    problems = [problem for jeans in several for problem in _faults(jeans, read, named=len(several) > 1)]
    if problems:
        advice = (
            "The draft would not sew together; nothing was written. Give --anyway to see it nevertheless."
        )
        raise DraftRefused([*problems, Problem("", advice, Severity.REFUSAL)])


def _faults(jeans: Jeans, read: MeasurementFile, *, named: bool) -> Iterator[Problem]:
    for fault in jeans.faults:
        said = fault.say(lambda mm: format_length(mm, read.unit))
        yield Problem(
            fault.where, said, Severity.REFUSAL, source=f"style {jeans.style.name}" if named else ""
        )
