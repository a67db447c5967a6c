"""Says what is wrong with a set of corrections: too large, unusual, or at odds with each other."""

from __future__ import annotations

from collections.abc import Mapping
from math import isfinite

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.body.checks import Wording
from drafting.body.corrections import CORRECTIONS, FIGHTS, Correction, opposites


def check_corrections(
    amounts: Mapping[str, float], *, wording: Wording | None = None, prefix: str = ""
) -> list[Problem]:
    """Return every problem found, refusals and warnings, in the order of the table.

    Args:
        amounts: Millimetres by key of `CORRECTIONS`.
        wording: How to speak of lengths and of what was typed; in millimetres when None.
        prefix: Stands before the key in the problem, such as "fitting.".
    """
    wording = wording or Wording()
    problems = [
        Problem(prefix + key, "No correction has this name.", Severity.REFUSAL)
        for key in amounts
        if key not in CORRECTIONS
    ]
    for key, correction in CORRECTIONS.items():
        if key in amounts and (problem := _check_amount(correction, amounts[key], wording, prefix)):
            problems.append(problem)
    for one, other in opposites():
        if one in amounts and other in amounts:
            terms = f"{CORRECTIONS[one].term} and {CORRECTIONS[other].term}"
            message = f"{terms[0].upper()}{terms[1:]} are opposites: keep the one that was seen."
            problems.append(Problem(prefix + other, message, Severity.REFUSAL))
    for fight in FIGHTS:
        if fight.first in amounts and fight.second in amounts:
            first, second = CORRECTIONS[fight.first].term, CORRECTIONS[fight.second].term
            message = (
                f"This works against {first}: {fight.why}. Both are done; better do the one that was seen "
                f"most, sew the toile again, and look whether the {second} is still there."
            )
            problems.append(Problem(prefix + fight.second, message, Severity.WARNING))
    return problems


def refuse_meaningless_corrections(amounts: Mapping[str, float]) -> None:
    """Refuse corrections that cannot be meant.

    Raises:
        DraftRefused: with all refusals at once.
    """
    refusals = [p for p in check_corrections(amounts) if p.severity is Severity.REFUSAL]
    if refusals:
        raise DraftRefused(refusals)


def _check_amount(correction: Correction, mm: float, wording: Wording, prefix: str) -> Problem | None:
    key, plausible = prefix + correction.key, wording.show_range(correction.usual)
    typed = wording.typed(key, mm)
    if not isfinite(mm) or mm <= 0:
        message = "An amount is a length above zero; what goes the other way has a name of its own."
        return Problem(key, message, Severity.REFUSAL, typed, plausible)
    if correction.usual.holds(mm):
        return None
    if correction.possible.holds(mm):
        size = "little" if mm < correction.usual.low else "much"
        again = "" if size == "little" else " Sew the toile again before you cut."
        message = f"That is {size} for one fitting.{again}"
        return Problem(key, message, Severity.WARNING, typed, plausible)
    if mm < correction.possible.low:
        message = "That is less than a toile can show; leave it away."
    else:
        message = "That is more than a correction can mend; look at the measurements again."
    doubt = wording.other_reading(key, mm, correction.usual)
    return Problem(key, message + doubt, Severity.REFUSAL, typed, plausible)
