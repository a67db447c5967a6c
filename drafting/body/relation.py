"""What one measurement may be, given others: a row of `drafting.body.relations`."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from math import inf

from drafting.body.measurement_table import Range

Expect = Callable[..., Range]
"""Takes the values that are given, in mm, and returns the range of the one that is judged."""


@dataclass(frozen=True, kw_only=True)
class Relation:
    """What `key` may be when the measurements named in `given` are known.

    Attributes:
        key: the measurement judged.
        given: the measurements it is judged by, in the order in which the callables take them.
        usual: their values to the range that passes without remark.
        possible: their values to the range outside which the draft is refused.
        ask: what may have happened, for the wearer.
        unless: measurements that, when known, make this relation idle, as a better one exists.
        compare: what to set beside the value: a name, and how it follows from the given values.
        source: where the usual range comes from.
    """

    key: str
    given: tuple[str, ...]
    usual: Expect
    ask: str
    source: str
    possible: Expect = lambda *values: Range(-inf, inf)
    unless: tuple[str, ...] = ()
    compare: tuple[str, Callable[..., float]] | None = None

    def judged(self, known: Mapping[str, float]) -> Iterator[Mapping[str, str]]:
        """Yield, for the body and then each side, which known values stand for this relation's names.

        Args:
            known: lengths in millimetres by key, a side's own as "left.thigh_girth".

        Yields:
            This relation's names to keys of `known`. A side is yielded only when a value of its own counts.
        """
        names = (self.key, *self.given)
        sides = [side for side in ("left.", "right.") if any(key.startswith(side) for key in known)]
        for prefix in ("", *sides):
            used = {name: prefix + name if prefix + name in known else name for name in names}
            complete = all(key in known for key in used.values())
            own = not prefix or any(key.startswith(prefix) for key in used.values() if key not in names)
            if complete and own and not any(key in known for key in self.unless):
                yield used


def times(low: float, high: float) -> Expect:
    """Range from low times the given value to high times the same."""
    return lambda other: Range(low * other, high * other)


def plus(low: float, high: float) -> Expect:
    """Range from the (sum of the) given values plus low to the same plus high."""
    return lambda *others: Range(sum(others) + low, sum(others) + high)


def less(low: float, high: float) -> Expect:
    """Range from the first given value less the second plus low, to the same plus high."""
    return lambda upper, lower: Range(upper - lower + low, upper - lower + high)
