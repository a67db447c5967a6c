"""The jeans of a measurements file, with what was asked for otherwise."""

from __future__ import annotations

from drafting.errors import DraftRefused, Problem, Severity
from outputs.measurement_file import MeasurementFile
from outputs.style_options import StyleOptions
from outputs.units import format_length
from styles.cloth import Cloth
from styles.jeans import Jeans, make_jeans
from styles.room import block_for
from styles.style import Style


def jeans_from(read: MeasurementFile, style: Style, options: StyleOptions) -> Jeans:
    """Return the jeans; the cloth of the options counts before the file's."""
    cloth = Cloth(**{**read.cloth, **options.cloth})
    asked = options.style(style, read.measurements.waist_taken_at)
    return make_jeans(
        block_for(read.measurements, asked, cloth),
        asked,
        wearer=read.wearer,
        date=read.taken_on,
        cloth=cloth,
    )


def refuse_faults(jeans: Jeans, read: MeasurementFile) -> None:
    """Refuse jeans that would not sew together.

    Raises:
        DraftRefused: with every fault, in the wearer's unit.
    """
    if not jeans.faults:
        return
    problems = [
        Problem(fault.where, fault.say(lambda mm: format_length(mm, read.unit)), Severity.REFUSAL)
        for fault in jeans.faults
    ]
    advice = "The draft would not sew together; nothing was written. Give --anyway to see it nevertheless."
    raise DraftRefused([*problems, Problem("", advice, Severity.REFUSAL)])
