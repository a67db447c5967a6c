"""The block that a style asks for: its leg, and the room that it wants in a cloth."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict

from drafting.base.construction_proportions import Ease, Proportions
from drafting.base.errors import Severity
from drafting.base.findings import Finding, literal
from drafting.block.block import Block, draft_block
from drafting.body.body import Body, complete
from drafting.body.measurements import Measurements
from drafting.body.sides import known_of_both
from styles.choice.style import Style
from styles.cloth.shrinkage_and_stretch import Cloth, ease_for


def block_for(
    measurements: Measurements,
    style: Style,
    cloth: Cloth,
    corrections: Mapping[str, float] | None = None,
    *,
    fitted: bool = True,
) -> Block:
    """Return the block with the leg of a style and the room it wants in this cloth.

    Args:
        measurements: In millimetres.
        style: The style.
        cloth: The cloth.
        corrections: What was seen on its toile, mm by key of `drafting.body.corrections.CORRECTIONS`.
        fitted: False leaves crotch seam and thigh as the proportions give them.
    """
    ease = style.ease
    if cloth.stretch:
        ease = ease_for(cloth, complete(known_of_both(measurements), Proportions()), ease)
    return draft_block(measurements, ease=ease, cut=style.leg, corrections=corrections, fitted=fitted)


def check_stretch(style: Style, cloth: Cloth, body: Body) -> tuple[Finding, ...]:
    """Return a warning where a style asks for more stretch than the cloth has, and how tight it gets."""
    if cloth.stretch >= style.least_stretch:
        return ()
    wanted, usual = asdict(style.ease), asdict(Ease())
    girths = {level: body.get(f"{level}_girth") for level in ("hip", "thigh", "knee", "calf")}
    known = {level: girth.mm for level, girth in girths.items() if girth}
    level = min(known, key=lambda level: wanted[level] / known[level])
    ease, least = wanted[level], usual[level]
    text = (
        f"The {literal(style.name)} cut is drawn for cloth that stretches by {style.least_stretch:.0f} % or "
        f"more; this one is given {cloth.stretch:.0f} %. In rigid denim the {level} has only {{0}} of room "
        "where {1} is usual: it will not go on, or bind when you sit. Take such a cloth, or a wider style."
    )
    return (Finding("stretch-missing", Severity.WARNING, "cloth", text, (ease, least), ease, least),)
