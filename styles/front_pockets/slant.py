"""A straight slant."""

from __future__ import annotations

from drafting.geometry.paths import Path
from styles.front_pockets import Mouth


def edge(mouth: Mouth) -> Path:
    """Return the edge of the opening; the scoop is not looked at."""
    return Path.through([mouth.corner, mouth.end])
