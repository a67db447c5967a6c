"""The cloth of one or more pairs of jeans: how much to buy, and where every piece lies."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass, replace
from functools import partial

from drafting.base.units import Unit, format_length
from drafting.pieces.pieces import Material
from outputs.cloth.laid_cloth import LaidCloth
from outputs.cloth.options import ClothOptions
from outputs.cloth.plan import ClothPlan, make_plan
from outputs.cloth.plan_file import plan_text, read_plan
from outputs.cloth.plan_sheet import write_plan_pdf
from outputs.files.text_file import TextFile
from outputs.files.writers import late_writer
from outputs.jobs.result import Result
from outputs.reading.jeans_from_file import jeans_from, refuse_faults
from outputs.reading.measurements_file import MeasurementFile
from outputs.reading.style_options import StyleOptions
from outputs.words.progress import Progress, silent
from styles.choice.style import Style
from styles.making.jeans import Jeans

Waiting = Callable[[int], AbstractContextManager[object]]
"""Stands round a search that takes so many seconds, to show that it goes on."""


@dataclass(frozen=True, kw_only=True, eq=False)
class ClothPlanned(Result):
    """A plan of every cloth.

    Attributes:
        jeans: Of each wearer.
        plan: Where their pieces lie.
        unit: The first wearer's, used for all.
    """

    jeans: tuple[Jeans, ...]
    plan: ClothPlan
    unit: Unit


def plan_cloth(
    read: Sequence[MeasurementFile],
    style: Style,
    options: StyleOptions,
    lies: ClothOptions,
    *,
    repeated: TextFile | None = None,
    anyway: bool = False,
    progress: Progress = silent,
    waiting: Waiting = nullcontext,
) -> ClothPlanned:
    """Draft jeans and plan how they are cut.

    Args:
        read: The measurements of every wearer.
        style: What to draft.
        options: What shall be otherwise.
        lies: How the cloths lie.
        repeated: The plan to repeat; None to make one.
        anyway: Plan a pattern that a check found faulty.
        progress: Is told what is done.
        waiting: Stands round the search for a shorter plan.

    Raises:
        DraftRefused: the measurements, a fault (without `anyway`), the cloth or the plan do not allow it.
    """
    unit = read[0].unit
    jeans = tuple(jeans_from(each, style, options) for each in read)
    for each, source in zip(jeans, read, strict=True):
        if not anyway:
            refuse_faults([each], source)
    patterns = [each.pattern for each in jeans]
    if repeated:
        plan = read_plan(repeated, patterns)
    else:
        progress("laying the pieces")
        plan = make_plan(patterns, lies.on_table, show=partial(format_length, unit=unit))
        if lies.seconds:
            progress(f"looking {lies.seconds} seconds for a shorter plan")
            plan = _searched(plan, lies.seconds, waiting)
    return ClothPlanned(
        files={
            "cloth-plan.pdf": partial(write_plan_pdf, plan, unit=unit),
            "cloth-plan.json": late_writer(lambda: plan_text(plan, unit)),
        },
        warnings=tuple(problem for each in read for problem in each.warnings),
        jeans=jeans,
        plan=plan,
        unit=unit,
    )


def _searched(plan: ClothPlan, seconds: int, waiting: Waiting) -> ClothPlan:
    """Return the plan with that of the denim made shorter if a search finds one."""
    from outputs.cloth.longer_search import search

    def shorter(laid: LaidCloth) -> LaidCloth:
        if laid.material is not Material.DENIM:
            return laid
        with waiting(seconds):
            return search(laid, seconds=seconds)

    return replace(plan, cloths=tuple(map(shorter, plan.cloths)))
