"""Writes the blank measurements file, with how to take each measurement, from the table of measurements."""

import textwrap

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed_words import doubt_about_text
from drafting.base.units import Unit
from drafting.body.corrections import CORRECTIONS
from drafting.body.measurement_table import MEASUREMENTS, MeasurementSpec, Need, Sides
from outputs.reading.cloth_entries import CLOTH_ENTRIES
from outputs.reading.fitting_entries import TABLE as FITTING

__all__ = ["HOW_TO_MEASURE", "refuse_unprintable", "write_template"]

_WIDTH = 90

_EXAMPLE = {
    Unit.CM: '"98", "98 cm" or "38 1/2 in"',
    Unit.MM: '"980", "980 mm" or "38 1/2 in"',
    Unit.INCH: '"38 1/2", "38-1/2", "38.5" or "98 cm"',
}

_NAMES = {Unit.CM: "centimetres", Unit.MM: "millimetres", Unit.INCH: "inches"}

_LIST = {Unit.CM: "[98, 98.5, 99]", Unit.MM: "[980, 985, 990]", Unit.INCH: '["38 1/2", "38 3/4", 39]'}

HOW_TO_MEASURE = (
    "Measure the body over underwear only, standing relaxed, the tape close but not tight. Add nothing:"
    " what the cloth needs besides is added by the draft."
)
"""What holds for every measurement."""

_INTRODUCTION = (
    "Measurements for jeans. Fill in between the quotes and save; what follows a # is a note.",
    HOW_TO_MEASURE,
)

_CLOTH = (
    "All in percent. Lengthwise and crosswise change are what washing does to a swatch: (after - before) /"
    ' before x 100, so "-3" is a cloth that shrinks by 3 % and is cut larger for it. Stretch is how much'
    ' further the cloth can be pulled crosswise without strain: "0" for rigid denim, "20" for comfort denim.'
)

_FITTING = (
    "Write what is seen, and by how much; leave the measurements as they were for the toile, and add up what"
    " several toiles show."
    " `jeansblock fitting-guide` says what each means and how much to try first."
)

_HEADINGS = {
    Need.NEEDED: "Needed.",
    Need.ONE_OF: "One of these two is needed. Give both and they are compared.",
    Need.HELPS_MOST: "Not needed, but these help the fit most. Leave empty what was not measured.",
    Need.HELPS: "Not needed; each takes the place of a guess.",
}


def write_template(name: str, unit: Unit) -> str:
    """Return a blank measurements file (TOML) for a wearer, every value still to be filled in.

    Args:
        name: the wearer's name as it shall be printed on the pieces.
        unit: unit of the values that are typed without one.

    Raises:
        DraftRefused: for a name that cannot be printed in one line.
    """
    refuse_unprintable(name)
    quoted = name.strip().replace("\\", "\\\\").replace('"', '\\"')
    lines = [
        *(line for paragraph in _INTRODUCTION for line in _note(paragraph)),
        *_note(f"A value is written like {_EXAMPLE[unit]}; a value without a unit is in {_NAMES[unit]}."),
        *_note(f"Of several readings the median counts: hip_girth = {_LIST[unit]}"),
        "",
        f'wearer = "{quoted}"',
        'taken_on = ""  # the day, as you like to write it',
        f'unit = "{unit.value}"  # cm, mm or in',
        "",
        *_note(
            'Where the waist was taken: "natural" is where the body is narrowest or folds sideways, "worn"'
            " is where the top edge of the jeans shall sit. Waist girth and all that is measured from the"
            " waist start at this one level."
        ),
        'waist_taken_at = "natural"',
        "",
        *_note(
            'What was not measured may be guessed from averages of "women" or of "men"; with "nobody"'
            " the draft uses its own proportions."
        ),
        'estimate_like = "nobody"',
        "",
        "[measurements]",
    ]
    for need, heading in _HEADINGS.items():
        specs = [spec for spec in MEASUREMENTS.values() if spec.need is need and spec.sides is not Sides.EACH]
        lines += ["", *_note(f"=== {heading}"), *(line for spec in specs for line in _entry(spec))]
    sided = [spec for spec in MEASUREMENTS.values() if spec.sides is not Sides.BODY]
    each = [spec for spec in sided if spec.sides is Sides.EACH]
    lines += [
        "",
        *_note("=== Only for a body whose two sides differ: what is given for a side counts there."),
    ]
    lines += [line for spec in each for line in _how(spec)]
    for side in ("left", "right"):
        lines += ["", f"[{side}]", *(f'{spec.key} = ""' for spec in sided)]
    lines += [
        "",
        *_note(f"=== Only where the cloth is not washed before cutting, or stretches. {_CLOTH}"),
        "",
        "[cloth]",
        *(f'{entry} = ""' for entry in CLOTH_ENTRIES),
        "",
        *_note(f"=== Only after trying on the toile. {_FITTING}"),
        "",
        f"[{FITTING}]",
        *(f'{key} = ""' for key in CORRECTIONS),
    ]
    return "\n".join(lines) + "\n"


def refuse_unprintable(name: str) -> None:
    """Refuse a wearer's name that is empty or cannot be printed in one line.

    Raises:
        DraftRefused: with the reason.
    """
    doubt = doubt_about_text(name)
    if doubt or not name.strip():
        message = doubt or "A name is needed."
        raise DraftRefused([Problem("wearer", message, Severity.REFUSAL, repr(name)[:60])])


def _entry(spec: MeasurementSpec) -> tuple[str, ...]:
    return ("", *_how(spec), f'{spec.key} = ""')


def _how(spec: MeasurementSpec) -> list[str]:
    aid = " Ask somebody to help." if spec.helper else " Alone, use a mirror." if spec.mirror else ""
    also = f" ({', '.join(spec.also)})" if spec.also else ""
    return _note(f"{spec.term[0].upper()}{spec.term[1:]}{also}. {spec.how}{aid} For: {spec.drives}.")


def _note(paragraph: str) -> list[str]:
    return [f"# {line}" for line in textwrap.wrap(paragraph, _WIDTH - 2)]
