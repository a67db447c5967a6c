"""Lengths as people write them, read into millimetres and written back.

The only place where a centimetre or an inch is turned into millimetres or back.
"""

import re
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from math import ceil, isfinite

__all__ = [
    "LengthError",
    "NegativeLength",
    "TypedLength",
    "Unit",
    "UnitMissing",
    "exact",
    "format_length",
    "length_to_buy",
    "one_decimal",
    "parse_length",
    "read_length",
]


class Unit(Enum):
    """A unit that a length may be written in; the value is its sign in files and in print."""

    MM = "mm"
    CM = "cm"
    INCH = "in"

    @property
    def mm(self) -> float:
        """Millimetres in one of it."""
        return float(_SIZE[self])

    @classmethod
    def named(cls, text: str) -> "Unit | None":
        """Return the unit that a word or sign stands for, in any case of letters; None for any other text."""
        return _NAMES.get(text.strip().lower())


# The inch has been 25.4 mm exactly since the international yard and pound agreement of 1959.
_SIZE = {Unit.MM: Fraction(1), Unit.CM: Fraction(10), Unit.INCH: Fraction(254, 10)}

_NAMES = {
    **dict.fromkeys(("mm", "mm.", "millimetre", "millimetres", "millimeter", "millimeters"), Unit.MM),
    **dict.fromkeys(("cm", "cm.", "cms", "centimetre", "centimetres", "centimeter", "centimeters"), Unit.CM),
    **dict.fromkeys(("in", "in.", "ins", "inch", "inches", '"', "″", "”", "''"), Unit.INCH),
}

_VULGAR = {
    "½": "1/2",
    "⅓": "1/3",
    "⅔": "2/3",
    "¼": "1/4",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅕": "1/5",
    "⅖": "2/5",
    "⅗": "3/5",
    "⅘": "4/5",
    "⅙": "1/6",
    "⅚": "5/6",
}

_LENGTH = re.compile(
    r"""
    (?P<minus>[-−–‑]\s*)?
    (?:
        (?P<decimal>[0-9]{1,6}(?:[.,][0-9]{1,9})?)          # 98  37.5  37,5
      | (?:(?P<whole>[0-9]{1,6})(?:\s*[-−–‑]\s*|\s+))?      # 37 and the space or hyphen before 1/2
        (?P<over>[0-9]{1,6})\s*/\s*(?P<under>[0-9]{1,6})
    )
    \s*(?P<unit>[^\W0-9_]+\.?|"|″|”|'')?
    """,
    re.VERBOSE,
)

# Longer than any length of a body in any unit; keeps 1e300 out of exact arithmetic.
_MOST = 10**6
_LONGEST_TEXT = 60
"""Longer texts are no length; reading them would only take time."""

_WRITTEN_LIKE = 'a length is written like "98", "98 cm", "37,5", "38 1/2 in", "38-1/2" or "38½"'


class LengthError(ValueError):
    """A text or number is not a length; the message says why and how to write it."""


class UnitMissing(LengthError):
    """A number has no unit, and none was stated for all."""


class NegativeLength(LengthError):
    """A length is below nothing."""


@dataclass(frozen=True)
class TypedLength:
    """A length as it was typed: the number, the unit it was read in, and whether that unit stood with it."""

    number: Fraction
    unit: Unit
    own_unit: bool

    @property
    def mm(self) -> float:
        """The length in millimetres; exact for 37 1/2 in = 952.5."""
        return float(self.number * _SIZE[self.unit])

    def in_unit(self, unit: Unit) -> "TypedLength":
        """Return the same length in another unit, exactly."""
        return TypedLength(self.number * _SIZE[self.unit] / _SIZE[unit], unit, self.own_unit)


def parse_length(value: object, default_unit: Unit | None, *, signed: bool = False) -> float:
    """Return the length in millimetres; see `read_length`."""
    return read_length(value, default_unit, signed=signed).mm


def read_length(value: object, default_unit: Unit | None, *, signed: bool = False) -> TypedLength:
    """Return the length as typed.

    Args:
        value: a number, or a text such as "98", "98 cm", "37,5", "38 1/2 in", "38-1/2", "38½" or '38.5"'.
        default_unit: unit of a number that comes without; None when none was stated.
        signed: whether a minus may stand before it.

    Raises:
        LengthError: for anything else, a number without any unit, a negative length, and what may be a slip:
            "371/2", "37 5/4", "37 1/0".
    """
    if isinstance(value, str):
        number, unit = _read_text(value)
    elif isinstance(value, bool) or not isinstance(value, int | float):
        raise LengthError('a length is a number, or a text like "98 cm" or "38 1/2 in"')
    elif not abs(value) < _MOST:  # NaN is not below anything
        raise LengthError("this is not a number that a tape can show")
    else:
        # Through the shortest text, so that 98.7 is 987/10 and not the binary number next to it.
        number, unit = Fraction(str(value)), None
    if number < 0 and not signed:
        raise NegativeLength("a length cannot be negative")
    if unit is None and default_unit is None:
        shown = f"{float(number):g}"
        readings = ", ".join(
            f"{shown} {typed.value} would be {one_decimal(float(number * _SIZE[typed]), other)}"
            for typed, other in ((Unit.CM, Unit.INCH), (Unit.INCH, Unit.CM))
        )
        advice = f'Write "{shown} cm" or "{shown} in"'
        raise UnitMissing(f"no unit is stated; {readings}. {advice}")
    return TypedLength(number, unit or default_unit or Unit.MM, unit is not None)


def _read_text(text: str) -> tuple[Fraction, Unit | None]:
    plain = text.strip().replace("\u2044", "/")
    if len(plain) > _LONGEST_TEXT:
        raise LengthError(_WRITTEN_LIKE)
    for sign, fraction in _VULGAR.items():
        plain = plain.replace(sign, f" {fraction}")
    found = _LENGTH.fullmatch(plain.strip())
    if not found:
        raise LengthError(_hint(plain))
    unit = Unit.named(found["unit"]) if found["unit"] else None
    if found["unit"] and unit is None:
        raise LengthError(_unit_hint(found["unit"]))
    if found["decimal"]:
        number = Fraction(found["decimal"].replace(",", "."))
    else:
        number = Fraction(found["whole"] or 0) + _proper_fraction(found["over"], found["under"])
    return -number if found["minus"] else number, unit


def _proper_fraction(over: str, under: str) -> Fraction:
    if int(under) == 0:
        raise LengthError(f"{over}/{under} divides by nothing")
    if int(over) >= int(under):
        apart = f"{over[:-1]} {over[-1]}/{under}"
        guess = f'if that is what you mean, write "{apart}"' if len(over) > 1 else "is a figure missing?"
        raise LengthError(f"the fraction {over}/{under} is not less than one; {guess}")
    return Fraction(int(over), int(under))


def _hint(text: str) -> str:
    if not text:
        return "there is no number"
    if re.fullmatch(r"[-−–]?\s*(nan|inf|infinity)", text.lower()):
        return "this is not a number that a tape can show"
    if re.search(r"[0-9]\s*('|′|ft|feet|foot)", text.lower()):
        return 'feet are not read; write inches, 12 to the foot: 5 ft 4 in is "64 in"'
    if re.search(r"[0-9][eE][-+]?[0-9]", text):
        return "write the number out, without an exponent"
    return _WRITTEN_LIKE


def _unit_hint(word: str) -> str:
    if word.lower() in ("m", "metre", "metres", "meter", "meters"):
        return 'metres are not read; write "172 cm" for 1.72 m'
    if word.lower() in ("ft", "feet", "foot"):
        return 'feet are not read; write inches, 12 to the foot: 5 ft is "60 in"'
    return f'"{word}" is no unit known here; use cm, mm or in'


def format_length(mm: float, unit: Unit) -> str:
    """Return a length as people read it: to 1 mm in mm and cm ("95.3 cm"), to 1/16 in inches ("37 1/2 in").

    Half a step rounds away from zero; differences may be negative ("-1/2 in").

    Raises:
        ValueError: for NaN and infinity.
    """
    if not isfinite(mm):
        raise ValueError("only a finite length can be written")
    step = _SIZE[unit] / 16 if unit is Unit.INCH else Fraction(1)
    steps = int(Fraction(abs(mm)) / step + Fraction(1, 2))
    sign = "-" if mm < 0 and steps else ""
    if unit is Unit.INCH:
        whole, sixteenths = divmod(steps, 16)
        text = " ".join(str(part) for part in (whole, Fraction(sixteenths, 16)) if part) or "0"
    else:
        text = str(steps) if unit is Unit.MM else f"{steps // 10}.{steps % 10}"
    return f"{sign}{text} {unit.value}"


def one_decimal(mm: float, unit: Unit) -> str:
    """Return a length as "11.8 in", the way one compares a reading in one unit with that in another."""
    return f"{mm / unit.mm:.1f} {unit.value}"


def exact(mm: float, unit: Unit) -> str:
    """Return a length as a bare number to reckon on with: to 0.01 mm, "6.918", "2.7236", "−0.8"."""
    digits = {Unit.MM: 2, Unit.CM: 3, Unit.INCH: 4}[unit]
    text = f"{mm / unit.mm:.{digits}f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text.replace("-", "−")


def length_to_buy(mm: float, unit: Unit) -> str:
    """Return a length of cloth rounded up as it is sold: to 10 cm ("1.4 m") or 1/8 yd ("1 1/2 yd").

    Raises:
        ValueError: for NaN and infinity.
    """
    if not isfinite(mm):
        raise ValueError("only a finite length can be bought")
    step = Fraction(36, 8) * _SIZE[Unit.INCH] if unit is Unit.INCH else Fraction(100)
    steps = ceil(Fraction(mm) / step - Fraction(1, 10**6))  # a hair over a step is rounding, not cloth
    if unit is not Unit.INCH:
        return f"{steps // 10}.{steps % 10} m"
    whole, eighths = divmod(steps, 8)
    return " ".join([*(str(part) for part in (whole, Fraction(eighths, 8)) if part), "yd"])
