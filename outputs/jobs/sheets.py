"""Sheets that need nobody's measurements: the test of a printer, and the fitting guide."""

from __future__ import annotations

from functools import partial

from drafting.base.units import Unit
from outputs.fit.fitting_guide_sheet import write_fitting_guide
from outputs.jobs.result import Result
from outputs.paper.paper import Paper
from outputs.print.check_print import write_print_check


def check_print(paper: Paper) -> Result:
    """Return the sheet that tests a printer."""
    return Result(files={"check-print.pdf": partial(write_print_check, paper=paper)})


def fitting_guide(paper: Paper, unit: Unit) -> Result:
    """Return what to try when the toile does not fit, its amounts in `unit`."""
    return Result(files={"fitting-guide.pdf": partial(write_fitting_guide, paper=paper, unit=unit)})
