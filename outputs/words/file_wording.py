"""How problems in a measurements file speak of lengths: in the file's unit, and as they were typed there."""

from collections.abc import Mapping

from drafting.base.units import TypedLength, Unit, format_length, one_decimal
from drafting.body.checks import Wording, usual_reading
from drafting.body.measurement_table import Range

__all__ = ["FileWording"]


class FileWording(Wording):
    """Speaks of lengths in the file's unit, and of values as they were typed."""

    def __init__(self, unit: Unit, lengths: Mapping[str, TypedLength], typed: Mapping[str, str]) -> None:
        """Hold the unit to show lengths in and, by key, the lengths read and the values as typed."""
        self.unit = unit
        self.lengths = lengths
        self.texts = typed

    def show(self, mm: float) -> str:
        """Return a length in the file's unit."""
        return format_length(mm, self.unit)

    def typed(self, key: str, value: object) -> str:
        """Return the value as it stands in the file."""
        return self.texts[key]

    def other_reading(self, key: str, mm: float, usual: Range) -> str:
        """Return both readings of a value that would be usual in another unit; empty for any other."""
        length = self.lengths[key]
        others = {unit.value: unit.mm for unit in Unit if unit is not length.unit}
        number = float(length.number)
        found = usual_reading(usual, number, others)
        if not found:
            return ""
        other, meant = Unit(found[0]), found[1]
        return (
            f" {number:g} read as {length.unit.value} is {one_decimal(mm, other)};"
            f" did you mean {number:g} {other.value} = {one_decimal(meant, length.unit)}?"
        )
