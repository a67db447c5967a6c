"""The drafting engine: measurements in, a block out. Millimetres everywhere.

>>> from drafting import Measurements, block_figures, block_lines, draft_block
>>> block = draft_block(
...     Measurements(waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=265)
... )
>>> block_figures(block)["girths"]["waist"]["body"]  # figures are in cm
76.0
>>> lines = block_lines(block)
>>> lines["front"]["side seam"].shape[1]
2
>>> sorted(lines["levels"])
['crotch', 'hem', 'hip', 'knee', 'waist']

What no draft could be meant by is refused, with every reason at once:

>>> from drafting import DraftRefused
>>> try:
...     draft_block(Measurements(waist_girth=7600, hip_girth=980, inside_leg_height=780, body_rise=265))
... except DraftRefused as refusal:
...     [problem.key for problem in refusal.problems]
['waist_girth']

Names load when first used, so that reading measurements does not wait for geometry.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from drafting.base.construction_proportions import Ease as Ease
    from drafting.base.construction_proportions import Proportions as Proportions
    from drafting.base.errors import DraftRefused as DraftRefused
    from drafting.block.block import Block as Block
    from drafting.block.block import draft_block as draft_block
    from drafting.block.leg_shape import LegCut as LegCut
    from drafting.body.measurements import Measurements as Measurements
    from drafting.body.measurements import Population as Population
    from drafting.body.measurements import Side as Side
    from drafting.body.measurements import SideMeasurements as SideMeasurements
    from drafting.body.measurements import WaistLevel as WaistLevel
    from drafting.report.block_figures import block_figures as block_figures
    from drafting.report.block_findings import block_findings as block_findings
    from drafting.report.drawn_lines import block_lines as block_lines

_HOMES = {
    "Block": "block.block",
    "DraftRefused": "base.errors",
    "Ease": "base.construction_proportions",
    "LegCut": "block.leg_shape",
    "Measurements": "body.measurements",
    "Population": "body.measurements",
    "Proportions": "base.construction_proportions",
    "Side": "body.measurements",
    "SideMeasurements": "body.measurements",
    "WaistLevel": "body.measurements",
    "block_figures": "report.block_figures",
    "block_findings": "report.block_findings",
    "block_lines": "report.drawn_lines",
    "draft_block": "block.block",
}
__all__ = sorted(_HOMES)


def __getattr__(name: str) -> Any:
    """Load a public name from its module at first use."""
    if name not in _HOMES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f"{__name__}.{_HOMES[name]}"), name)
