"""A plan of the cloth in lines: what to buy, and what was written."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.base.units import Unit, format_length, length_to_buy
from outputs.cloth.laid_cloth import LaidCloth
from outputs.files.writers import Written
from outputs.jobs.cloth import ClothPlanned
from outputs.lines.wrapped import wrapped
from outputs.lines.written import lacking


def cloth_lines(planned: ClothPlanned, written: Written) -> Iterator[str]:
    """Yield what to buy of each cloth, what the files lack, and the files."""
    for laid in planned.plan.cloths:
        yield from wrapped(_to_buy(laid, planned.unit))
    yield from lacking(written.files.values())
    yield from map(str, written.files)


def _to_buy(laid: LaidCloth, unit: Unit) -> str:
    """Return in one sentence what to buy of a cloth, and how well the plan uses it."""

    def show(mm: float) -> str:
        return format_length(mm, unit)

    least = max(laid.least_by_area, laid.least_by_longest)
    lies = "folded" if laid.cloth.folded else "open"
    return (
        f"{laid.material.value}: buy {length_to_buy(laid.length, unit)} of {show(laid.cloth.width)} width "
        f"({show(laid.length)} needed, {lies}, {laid.share_used:.0%} of it used; "
        f"no plan is shorter than {show(least)})"
    )
