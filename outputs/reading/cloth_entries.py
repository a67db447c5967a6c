"""What is typed about the cloth, in the measurements file or on the command line: percentages by name."""

from __future__ import annotations

import math
from collections.abc import Mapping

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed_words import PERCENT_LIKE, in_one_line, percentage

CLOTH_ENTRIES = ("lengthwise_change", "crosswise_change", "stretch")
"""The fields of its `Cloth`, by name here so that a file without any need not wait for its libraries."""


def read_cloth(typed: Mapping[str, object]) -> tuple[dict[str, float], list[Problem]]:
    """Return the percentages that can be meant, and what is wrong with the others.

    Args:
        typed: Numbers or texts by names of `CLOTH_ENTRIES`.
    """
    if not typed:
        return {}, []
    from styles.cloth.shrinkage_and_stretch import Cloth, refuse_meaningless_cloth

    read = {key: percentage(value) for key, value in typed.items()}
    try:
        refuse_meaningless_cloth(Cloth(**read))
    except DraftRefused as refusal:
        # No range holds what is no number, so that an unreadable text is told its range as well.
        problems = [
            problem if math.isfinite(read[problem.key]) else _unreadable(problem, typed[problem.key])
            for problem in refusal.problems
        ]
        wrong = {problem.key for problem in problems}
        return {key: value for key, value in read.items() if key not in wrong}, problems
    return read, []


def _unreadable(problem: Problem, typed: object) -> Problem:
    # A text on a command line or in a file may hold anything, line breaks too.
    return Problem(problem.key, PERCENT_LIKE, Severity.REFUSAL, in_one_line(typed), problem.plausible)
