"""Invented wearers whose numbers a reader can follow in the head."""

from __future__ import annotations

from typing import Any

from drafting.body.measurements import Measurements

WOMAN: dict[str, Any] = {"waist_girth": 760, "hip_girth": 980, "inside_leg_height": 780, "body_rise": 265}
"""Crotch depth 265 + 5 = 270, waist height 780 + 265 - 20 = 1025, crotch height 1025 - 270 = 755."""


def wearer(**changed: Any) -> Measurements:
    """Return WOMAN with other or further measurements, mm; None takes one away."""
    return Measurements(**{**WOMAN, **changed})
