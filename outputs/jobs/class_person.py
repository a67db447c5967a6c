"""The numbers of one person's draft for the table of a class, fresh or as they were kept."""

from __future__ import annotations

import json

from drafting.base.errors import Severity
from drafting.base.units import Unit
from drafting.report.block_figures import in_cm
from drafting.report.fit import crotch_line, girth_lines
from outputs.files.kept_values import number
from outputs.jobs.class_table import LEVELS, Numbers
from outputs.jobs.draft import Drafted

_CM = Unit.CM.mm


def numbers_of(drafted: Drafted) -> Numbers:
    """Return the numbers of a draft."""
    girths = {line.key: line.pattern for line in girth_lines(drafted.jeans.block)}
    crotch = crotch_line(drafted.jeans.block)
    return Numbers(
        girths=tuple(_recorded(girths[level]) for level in LEVELS),
        crotch=(None if crotch.target is None else _recorded(crotch.target), _recorded(crotch.total)),
        sheets=sum(drafted.sheets.values()),
        warnings=sum(finding.severity is Severity.WARNING for finding in drafted.findings),
    )


def numbers_kept(figures: str) -> Numbers:
    """Return the numbers of a draft that was made before, out of its `figures.json`.

    Raises:
        ValueError, KeyError, TypeError: somebody changed it.
    """
    kept = json.loads(figures)
    target, found = kept["crotch"]["target"], kept["crotch"]["total"]
    return Numbers(
        girths=tuple(number(kept["girths"][level]["pattern"]) * _CM for level in LEVELS),
        crotch=(None if target is None else number(target) * _CM, number(found) * _CM),
        sheets=sum(int(number(sheets)) for sheets in kept["sheets"].values()),
        warnings=sum(finding["level"] == Severity.WARNING.value for finding in kept["findings"]),
    )


def _recorded(mm: float) -> float:
    """Return a length as its record gives it back, so that a second run tells the same."""
    return (in_cm(mm) or 0.0) * _CM
