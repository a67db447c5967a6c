"""What the steps of a draft by hand are about, and what that is called in print; no code goes by words."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import Enum

from drafting.block.point_names import Drawn, drawn, drawn_name
from drafting.block.step_record import Step


class Portion(Enum):
    """Which portion of what a step of the draft draws an instruction is about."""

    WHOLE = "{it}"
    STRAIGHT = "{it}, straight part{number}"
    CURVED = "{it}, curved part{number}"
    GUIDE = "guide, {it}"
    """A point towards which a curve leaves its end."""
    JOINT = "joint of the {it}"
    """A point where two parts of a line meet."""


PORTIONS: dict[Portion, str] = {portion: portion.value for portion in Portion}

LEVELS: dict[Drawn, str] = {
    Drawn.WAIST_LEVEL: "waist",
    Drawn.HIP_LEVEL: "hip",
    Drawn.CROTCH_LEVEL: "crotch",
    Drawn.KNEE_LEVEL: "knee",
    Drawn.HEM_LEVEL: "hem",
}
"""Levels where it is plain that they are levels."""

_EDGE_OF = {Drawn.WHOLE_SIDE_SEAM: Drawn.SIDE_SEAM}
"""Lines that are part of an edge which another line begins."""


@dataclass(frozen=True)
class About:
    """What an instruction is about.

    Attributes:
        it: What the step draws.
        number: Which of several of a panel, 0 where there is but one.
        portion: Which portion of it.
        part: Which of several such parts, 0 where there is but one.
    """

    it: Drawn
    number: int = 0
    portion: Portion = Portion.WHOLE
    part: int = 0

    @staticmethod
    def of(step: Step, portion: Portion = Portion.WHOLE, part: int = 0) -> About:
        """Return the whole of what a step draws, or a portion of it."""
        return About(*drawn(step.name), portion, part)

    @property
    def name(self) -> str:
        """What it is called in print."""
        number = f" {self.part}" if self.part else ""
        return PORTIONS[self.portion].format(it=drawn_name(self.it, self.number), number=number)

    @property
    def edge(self) -> About:
        """The whole edge that a line belongs to."""
        return About(_EDGE_OF.get(self.it, self.it), self.number)

    @property
    def of_its_edge(self) -> About:
        """A line told as a part of its edge; what is no line as it is."""
        if self.portion in (Portion.GUIDE, Portion.JOINT):
            return self
        return replace(self, it=self.edge.it)
