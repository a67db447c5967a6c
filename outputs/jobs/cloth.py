"""What `cloth` writes: the plan to look at and the plan to repeat, in one folder."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from drafting.base.units import Unit, format_length, length_to_buy
from drafting.pieces.pieces import Material
from outputs.cloth.laid_cloth import LaidCloth
from outputs.cloth.options import ClothOptions
from outputs.cloth.plan import ClothPlan, make_plan
from outputs.cloth.plan_file import plan_text, read_plan
from outputs.cloth.plan_sheet import write_plan_pdf
from outputs.files.folder import write_folder
from outputs.fit.summary import wrapped
from outputs.reading.jeans_from_file import jeans_from, refuse_faults
from outputs.reading.measurements_file import MeasurementFile
from outputs.reading.style_options import StyleOptions
from outputs.words.progress import tell
from styles.choice.style import Style


def plan_into(
    target: Path,
    read: Sequence[MeasurementFile],
    style: Style,
    options: StyleOptions,
    lies: ClothOptions,
    *,
    force: bool,
    anyway: bool = False,
) -> Iterator[str]:
    """Draft, plan, and write both files into the folder `target`; yield the lines to print.

    Args:
        target: The folder; its own place must exist.
        read: The measurements of every wearer; the first one's unit is used for all.
        style: What to draft.
        options: What shall be otherwise.
        lies: How the cloths lie, or the plan to repeat.
        force: Replace files that are already there.
        anyway: Plan a pattern that a check found faulty.

    Raises:
        DraftRefused: the measurements, a fault (without `anyway`), the cloth, the plan, the folder (without
            `force`) or the disk do not allow it; the folder is as it was before.
    """
    unit = read[0].unit
    jeans = [jeans_from(each, style, options) for each in read]
    for each, source in zip(jeans, read, strict=True):
        if not anyway:
            refuse_faults([each], source)
    patterns = [each.pattern for each in jeans]
    if lies.plan:
        plan = read_plan(lies.plan, patterns)
    else:
        tell("laying the pieces")
        plan = make_plan(patterns, lies.on_table, show=lambda mm: format_length(mm, unit))
        if lies.seconds:
            plan = _searched(plan, lies.seconds)
    warnings: list[str] = []
    written = write_folder(
        target,
        {
            "cloth-plan.pdf": lambda path: warnings.extend(_write_pdf(plan, path, unit)),
            "cloth-plan.json": lambda path: _write_text(plan_text(plan, unit), path),
        },
        force=force,
    )
    for laid in plan.cloths:
        yield from wrapped(said_of(laid, unit))
    for warning in warnings:
        yield from wrapped(f"warning: {warning}")
    yield from map(str, written)


def _searched(plan: ClothPlan, seconds: int) -> ClothPlan:
    """Return the plan with that of the denim made shorter if a search finds one."""
    from outputs.cloth.longer_search import search

    tell(f"looking {seconds} seconds for a shorter plan")
    cloths = (
        search(laid, seconds=seconds) if laid.material is Material.DENIM else laid for laid in plan.cloths
    )
    return replace(plan, cloths=tuple(cloths))


def said_of(laid: LaidCloth, unit: Unit) -> str:
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


def _write_pdf(plan: ClothPlan, path: Path, unit: Unit) -> list[str]:
    with path.open("wb") as stream:
        return write_plan_pdf(plan, stream, unit=unit)


def _write_text(text: str, path: Path) -> None:
    path.write_text(text, encoding="utf-8", newline="\n")
