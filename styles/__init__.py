"""Styles: what turns a block into a pair of jeans.

>>> from drafting import Measurements
>>> from styles import draft_jeans, jeans_figures, jeans_lines
>>> jeans = draft_jeans(
...     Measurements(waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=265),
...     "bootcut",
...     settings={"below_waist": "4 cm"},
...     crosswise_change=-3,
... )
>>> jeans_figures(jeans)["below_waist"]  # cm
4.0
>>> sorted(jeans_lines(jeans)["watch pocket"])  # the sew line of each edge
['inner edge', 'lower edge', 'outer edge', 'upper edge']
>>> jeans.block.waist_girth > 760
True

Names load when first used.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from styles.choice.style import Style as Style
    from styles.making.draft import draft_jeans as draft_jeans
    from styles.making.jeans import Jeans as Jeans
    from styles.making.jeans_figures import jeans_figures as jeans_figures
    from styles.making.sew_lines import jeans_lines as jeans_lines

_HOMES = {
    "Jeans": "making.jeans",
    "Style": "choice.style",
    "draft_jeans": "making.draft",
    "jeans_figures": "making.jeans_figures",
    "jeans_lines": "making.sew_lines",
}
__all__ = sorted(_HOMES)


def __getattr__(name: str) -> Any:
    """Load a public name from its module at first use."""
    if name not in _HOMES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f"{__name__}.{_HOMES[name]}"), name)
