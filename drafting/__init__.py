"""The drafting engine: measurements in, a block out.

    from drafting import Measurements, draft_block
    block = draft_block(Measurements(waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=265))

Millimetres everywhere. Names load when first used, so that reading measurements does not wait for geometry.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from drafting.block import Block as Block
    from drafting.block import draft_block as draft_block
    from drafting.errors import DraftRefused as DraftRefused
    from drafting.leg_shape import LegCut as LegCut
    from drafting.measurements import Measurements as Measurements
    from drafting.proportions import Ease as Ease
    from drafting.proportions import Proportions as Proportions

_HOMES = {
    "Block": "block",
    "DraftRefused": "errors",
    "Ease": "proportions",
    "LegCut": "leg_shape",
    "Measurements": "measurements",
    "Proportions": "proportions",
    "draft_block": "block",
}
__all__ = sorted(_HOMES)


def __getattr__(name: str) -> Any:
    """Load a public name from its module at first use."""
    if name not in _HOMES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f"{__name__}.{_HOMES[name]}"), name)
