"""The drafting engine: measurements in, a block out.

    from drafting import Measurements, draft_block
    block = draft_block(Measurements(waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=265))

Millimetres everywhere. Names load when first used, so that reading measurements does not wait for geometry.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from drafting.base.errors import DraftRefused as DraftRefused
    from drafting.base.proportions import Ease as Ease
    from drafting.base.proportions import Proportions as Proportions
    from drafting.block.block import Block as Block
    from drafting.block.block import draft_block as draft_block
    from drafting.block.leg_shape import LegCut as LegCut
    from drafting.body.measurements import Measurements as Measurements

_HOMES = {
    "Block": "block.block",
    "DraftRefused": "base.errors",
    "Ease": "base.proportions",
    "LegCut": "block.leg_shape",
    "Measurements": "body.measurements",
    "Proportions": "base.proportions",
    "draft_block": "block.block",
}
__all__ = sorted(_HOMES)


def __getattr__(name: str) -> Any:
    """Load a public name from its module at first use."""
    if name not in _HOMES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f"{__name__}.{_HOMES[name]}"), name)
