"""What a fitting changed on a pair of jeans, as numbers: those of the block, and the fly."""

from __future__ import annotations

from typing import Any

from drafting.body.corrections import CORRECTIONS
from drafting.report.block_figures import in_cm
from drafting.report.corrections import LengthChange, length_changes
from styles.making.jeans import Jeans
from styles.parts.fly_length import fly_length


def jeans_changes(jeans: Jeans) -> tuple[LengthChange, ...]:
    """Return every length before and after the corrections; nothing where none were given."""
    block, style = jeans.block, jeans.style
    if block.toile is None:
        return ()
    before, after = (fly_length(each, style) for each in (block.toile, block))
    fly = (
        LengthChange("zip", before.zip, after.zip)
        if before.zip is not None and after.zip is not None
        else LengthChange("fly opening", before.opening, after.opening)
    )
    return (*length_changes(block), fly)


def fitting_figures(jeans: Jeans) -> dict[str, Any]:
    """Return the corrections with what they did, in cm; empty where none were given."""
    if jeans.block.toile is None:
        return {}
    return {
        "fitting": {
            "corrections": [
                {
                    "name": key,
                    "amount": in_cm(amount),
                    "done": CORRECTIONS[key].done,
                    "source": CORRECTIONS[key].source,
                }
                for key, amount in jeans.block.corrections.items()
            ],
            "lengths": [
                {"name": c.name, "before": in_cm(c.before), "after": in_cm(c.after), "change": in_cm(c.by)}
                for c in jeans_changes(jeans)
            ],
        }
    }
