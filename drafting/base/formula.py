"""Lengths that know their formula.

The same line of code that places a point also prints how: `hip / 16 - cm(1)` is a number of millimetres, the
text "hip girth ÷ 16 − 1.0" and the text "98.0 ÷ 16 − 1.0", and it knows that the hip girth moves it.

    >>> hip = named("hip girth", 980)
    >>> fork = hip / 16 - cm(1)
    >>> fork.formula(), fork.numbers(), round(float(fork), 2)
    ('hip girth ÷ 16 − 1.0', '98.0 ÷ 16 − 1.0', 51.25)
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import Enum

Show = Callable[[float], str]
"""How a number of millimetres is written."""


class Reason(Enum):
    """Why a number that no formula gives is what it is."""

    CROTCH_SEAM = "the crotch seam comes to its length"
    USUAL_RANGE = "it stays what a cutter usually draws"
    CROTCH_AND_THIGH = "crotch seam and thigh come to theirs"
    FRONT_WAIST = "the front waist bends one way"
    BACK_WAIST = "the back waist bends one way"
    INSEAM = "the inseam comes to its length"
    SIDE_SEAM = "front and back side seam are equally long"
    CALF = "the leg clears the calf"
    SUPPRESSION = "the waist comes to its girth"
    TOILE = "it was seen on the toile"
    SIDE_OF_BODY = "one side of the body has more"
    EASE = "room is wanted there"


_LIST, _SUM, _PRODUCT, _ATOM = range(4)
"""How tightly a formula holds together, for its brackets."""


def bare_centimetres(mm: float) -> str:
    """Return millimetres as centimetres to one millimetre: 51.25 gives "5.1"."""
    return f"{mm / 10:.1f}".replace("-", "−")


@dataclass(frozen=True, slots=True, eq=False)
class Length:
    """A length in millimetres with the expression it comes from.

    Attributes:
        mm: The value.
        name: What it is called inside other formulas; empty for a bare constant and for an unnamed
            expression.
        sign: The operator between the parts, empty for a leaf.
        parts: The operands of an expression; a plain float is a pure number.
        reason: Of a leaf why it is what it is; None where it is measured, on the body or on the drawing.
    """

    mm: float
    name: str = ""
    sign: str = ""
    parts: tuple[Length | float | str, ...] = ()
    reason: Reason | None = None

    def __float__(self) -> float:
        """Return the value in millimetres."""
        return float(self.mm)

    def __add__(self, other: Length) -> Length:
        """Return the sum; a bare nothing is left out of the formula."""
        return self if other._bare_nothing else Length(self.mm + other.mm, "", "+", (self, other))

    def __sub__(self, other: Length) -> Length:
        """Return the difference; a bare nothing is left out of the formula."""
        return self if other._bare_nothing else Length(self.mm - other.mm, "", "−", (self, other))

    def __mul__(self, factor: float) -> Length:
        """Return the product with a pure number; once is left out of the formula."""
        return self if factor == 1 else Length(self.mm * factor, "", "×", (self, factor))

    def __truediv__(self, divisor: float) -> Length:
        """Return the quotient by a pure number."""
        return Length(self.mm / divisor, "", "÷", (self, divisor))

    def slope(self, angle: float) -> Length:
        """Return the offset of a line that leans by `angle` radians over this height."""
        return Length(self.mm * math.tan(angle), "", "×", (self, f"tan {math.degrees(angle):.2f}°"))

    @property
    def _bare_nothing(self) -> bool:
        return not self.mm and not self.name and not self.parts

    def called(self, name: str) -> Length:
        """Return the same length under a name: other formulas print the name, its own the expression."""
        return Length(self.mm, name, self.sign, self.parts, self.reason)

    def formula(self, show: Show = bare_centimetres) -> str:
        """Return the expression in names; bare constants are written by `show`."""
        return self._spelt(lambda leaf: leaf.name or show(leaf.mm))[0]

    def numbers(self, show: Show = bare_centimetres) -> str:
        """Return the expression with every value put in."""
        return self._spelt(lambda leaf: show(leaf.mm))[0]

    def inner(self) -> Iterator[Length]:
        """Yield this length and every one that it is reckoned from."""
        yield self
        for part in self.parts:
            if isinstance(part, Length):
                yield from part.inner()

    def _text(self, leaf: Callable[[Length], str]) -> tuple[str, int]:
        return (leaf(self), _ATOM) if self.name else self._spelt(leaf)

    def _spelt(self, leaf: Callable[[Length], str]) -> tuple[str, int]:
        if not self.sign:
            return leaf(self), _ATOM
        texts = [
            part._text(leaf) if isinstance(part, Length) else (_number(part), _ATOM) for part in self.parts
        ]
        if self.sign == "largest":
            return f"the largest of {', '.join(text for text, _ in texts)}", _LIST
        binds = _SUM if self.sign in "+−" else _PRODUCT
        first, second = texts
        left = f"({first[0]})" if first[1] < binds else first[0]
        # a − (b + c) needs its brackets, a + (b + c) does not; nothing here divides by a sum
        weak = second[1] < binds if self.sign == "+" else second[1] <= binds
        right = f"({second[0]})" if weak else second[0]
        if self.sign in "+−" and right.startswith("−"):
            # 8.0 + −0.8 reads better as 8.0 − 0.8
            return f"{left} {'−' if self.sign == '+' else '+'} {right[1:]}", binds
        return f"{left} {self.sign} {right}", binds


def named(name: str, mm: float, reason: Reason | None = None) -> Length:
    """Return a leaf: a measurement, an ease or a fitted amount under its own name, and why it is so much."""
    return Length(mm, name, reason=reason)


def cm(value: float) -> Length:
    """Return a constant given in centimetres, as handbooks print it."""
    return Length(value * 10)


def mm(value: float) -> Length:
    """Return a constant given in millimetres."""
    return Length(value)


def largest(*lengths: Length) -> Length:
    """Return the largest of the lengths, the formula naming all of them; one alone stays itself."""
    if len(lengths) == 1:
        return lengths[0]
    return Length(max(length.mm for length in lengths), "", "largest", lengths)


def _number(value: Length | float | str) -> str:
    return value if isinstance(value, str) else f"{value:g}"
