"""The fitting guide in lines."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.base.units import Unit
from drafting.body.corrections import CORRECTIONS
from outputs.fit.fitting_guide import CORRECTIONS_HEADING, SIGNS_HEADING, TITLE, correction_lines, sign_lines
from outputs.fit.fitting_signs import ADVICE, SIGNS
from outputs.lines.wrapped import wrapped


def guide_lines(unit: Unit) -> Iterator[str]:
    """Yield the guide for the terminal, in 80 letters a line."""
    yield TITLE
    for advice in ADVICE:
        yield from wrapped(advice)
    yield ""
    yield SIGNS_HEADING
    for sign in SIGNS:
        yield ""
        yield from wrapped(sign.seen)
        for line in sign_lines(sign, unit):
            yield from wrapped(line, indent=4)
    yield ""
    yield CORRECTIONS_HEADING
    for key in CORRECTIONS:
        yield ""
        yield key
        for line in correction_lines(key, unit):
            yield from wrapped(line, indent=4)
