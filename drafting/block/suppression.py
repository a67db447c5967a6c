"""How the difference between hip and waist is shared over the seams and the dart of one half of the body.

The seat line's lean takes what its angle gives. The rest is shared over centre front, side seams and back
dart, all moving from their usual amount towards their limit in the same proportion; where the waist is as
large as the hip the same sinks give back, down to a centre front and side seams that swing outwards.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace


@dataclass(frozen=True)
class Sink:
    """One place that takes up width: usual amount and limits, mm, negative gives width out."""

    least: float
    usual: float
    most: float

    def at(self, t: float) -> float:
        """Return the amount at -1 (least) .. 0 (usual) .. 1 (most)."""
        return self.usual + (t * (self.most - self.usual) if t > 0 else t * (self.usual - self.least))


@dataclass(frozen=True)
class Suppression:
    """The shares of one half, mm measured level at the waist.

    Attributes:
        centre_front: How far the centre front leans in at the waist.
        front_side: Front side seam.
        back_side: Back side seam.
        dart: The back dart, or both of them together.
        left_over: What found no room: the waist is drafted this much too large (positive) or too small.
    """

    centre_front: float
    front_side: float
    back_side: float
    dart: float
    left_over: float = 0.0

    def towards_the_front(self, by: float, most: float) -> Suppression:
        """Return the shares, `by` mm moved from the back's side seam to the front's, which takes `most`."""
        by = max(min(by, most - self.front_side, self.back_side + PLUMB), 0.0)
        return replace(self, front_side=self.front_side + by, back_side=self.back_side - by)


CENTRE_FRONT = Sink(-60, 12, 20)
"""Usually about the 1.0 of Aldrich, at most 2 cm as a front dart (dart budget of a dressmaking school);
Hertzer brings a centre front forward by 2 in at most, the rest to 60 mm is common practice."""
FRONT_SIDE, BACK_SIDE = Sink(-50, 21, 42), Sink(-50, 15, 42)
"""What the darts do not take, the side seams do (the same dressmaking school); amounts: common practice."""
DART = Sink(0, 22, 62)
"""One dart of 2 to 2.5 cm is usual, two take up to twice 3.1 (common practice, no source)."""
DART_SHARE = 0.4
"""The dart takes no more than this share unless the seams are at their limits (common practice)."""

PLUMB = 4.0
"""A back side seam that swings out by no more at the waist still looks plumb, mm (common practice)."""

STEEPEST = 0.36
"""Seams and dart legs lean in no more than this over their height (20 degrees), or they would show
(common practice)."""


@dataclass(frozen=True)
class Sinks:
    """The sinks of one half, within what the way from waist to hip allows."""

    centre_front: Sink
    front_side: Sink
    back_side: Sink
    dart: Sink

    @staticmethod
    def over(height: float, dart_length: float, amount: float = math.inf) -> Sinks:
        """Return the sinks for a way of `height` mm from waist to hip and darts of `dart_length` mm.

        The less hip and waist of one half differ (`amount`, mm), the less of it is left to the dart.
        """

        def within(sink: Sink, limit: float) -> Sink:
            return Sink(max(sink.least, -limit), min(sink.usual, limit), min(sink.most, limit))

        slope = STEEPEST * height
        return Sinks(
            within(CENTRE_FRONT, slope),
            within(FRONT_SIDE, slope),
            within(BACK_SIDE, slope),
            Sink(
                DART.least,
                min(DART.usual, STEEPEST * dart_length, max(DART_SHARE * amount, 0.0)),
                min(DART.most, 2 * STEEPEST * dart_length),
            ),
        )

    @property
    def front(self) -> tuple[Sink, ...]:
        """Those of the front."""
        return (self.centre_front, self.front_side)

    @property
    def back(self) -> tuple[Sink, ...]:
        """Those of the back, the dart last."""
        return (self.back_side, self.dart)


@dataclass(frozen=True)
class Taken:
    """What each sink takes up, mm, in the order given, and the rest that found no room."""

    parts: tuple[float, ...]
    rest: float


def share(amount: float, sinks: Sinks, *, dart_least: float) -> Suppression:
    """Return how `amount` mm (hip less waist of one half, less the seat line's share) is taken up."""
    taken = share_apart(amount, sinks.front + sinks.back, dart_least=dart_least)
    centre_front, front_side, back_side, dart = taken.parts
    return Suppression(centre_front, front_side, back_side, dart, taken.rest)


def share_apart(amount: float, sinks: tuple[Sink, ...], *, dart_least: float = -math.inf) -> Taken:
    """Return `amount` mm shared over some sinks in proportion to their room.

    With `dart_least` the last sink is the dart: a narrower one is left out and its width given to the seams.
    What finds no room within the limits is the rest.
    """
    usual = sum(sink.usual for sink in sinks)
    room = sum(sink.most - sink.usual if amount > usual else sink.usual - sink.least for sink in sinks)
    t = min(max((amount - usual) / room, -1.0), 1.0) if room else 0.0
    parts = tuple(sink.at(t) for sink in sinks)
    if parts[-1] < dart_least:
        seams = share_apart(amount, sinks[:-1])
        return Taken((*seams.parts, 0.0), seams.rest)
    return Taken(parts, amount - sum(parts))
