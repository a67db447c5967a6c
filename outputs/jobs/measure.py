"""Taking the measurements: a sheet to fill in, and which are worth taking twice."""

from __future__ import annotations

from functools import partial

from drafting.base.units import Unit, format_length
from drafting.block.block import draft_block
from drafting.body.checks import Wording
from drafting.body.measurement_table import Range
from drafting.report.tape_error import TapeError, tape_errors
from outputs.jobs.options import Sheet
from outputs.jobs.result import Result
from outputs.measuring.measuring_sheet import write_measuring_sheet
from outputs.paper.paper import Paper
from outputs.reading.measurement_template import refuse_unprintable
from outputs.reading.measurements_file import MeasurementFile
from styles.choice.style import Style
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth


def measuring_sheet(wearer: str | None, *, paper: Paper, unit: Unit) -> Result:
    """Return the measuring sheet.

    Args:
        wearer: Printed at its top; None leaves a line to write on.
        paper: What it is printed on.
        unit: To write the readings in.

    Raises:
        DraftRefused: for a name that cannot be printed in one line.
    """
    if wearer is not None:
        refuse_unprintable(wearer)
    name = wearer or ""
    write = partial(write_measuring_sheet, wearer=name.strip(), paper=paper, unit=unit)
    return Result(files={Sheet.MEASURING.file_name(name): write})


def measure_twice(read: MeasurementFile, style: Style) -> tuple[TapeError, ...]:
    """Return what a slip of the tape in each measurement does to the block of a style, the worst first.

    Raises:
        DraftRefused: there is no draft of the measurements as they are.
    """
    block = block_for(read.measurements, style, Cloth(**read.cloth))
    draft = partial(draft_block, ease=block.ease, cut=style.leg)
    return tape_errors(read.measurements, draft=draft, wording=_InUnit(read.unit))


class _InUnit(Wording):
    """Speaks of lengths in the wearer's unit; nobody typed the changed values, so no slip is guessed."""

    def __init__(self, unit: Unit) -> None:
        self.unit = unit

    def show(self, mm: float) -> str:
        return format_length(mm, self.unit)

    def other_reading(self, key: str, mm: float, usual: Range) -> str:
        return ""
