"""The levels at which the fit report sets a girth of the pattern beside the body's."""

from __future__ import annotations

from enum import StrEnum


class GirthLevel(StrEnum):
    """A level of the report, from the top down; the values are no words to print."""

    WAIST = "waist"
    TOP_HIP = "top hip"
    HIP = "hip"
    THIGH = "thigh"
    MID_THIGH = "mid thigh"
    KNEE = "knee"
    CALF = "calf"
    ANKLE = "ankle"
    HEM = "hem"

    @property
    def key(self) -> str:
        """Its key among figures and measurements, such as "mid_thigh"."""
        return self.value.replace(" ", "_")


LEVELS: dict[GirthLevel, str] = {level: level.value for level in GirthLevel}
"""What they are called in print."""
