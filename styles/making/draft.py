"""A pair of jeans from measurements: the block that a style asks for in a cloth, cut into trued pieces."""

from __future__ import annotations

from collections.abc import Mapping

from drafting.base.errors import DraftRefused, Severity
from drafting.body.checks import check_measurements
from drafting.body.correction_checks import check_corrections
from drafting.body.measurements import Measurements
from styles.choice.catalogue import catalogue_style
from styles.choice.setting_values import read_settings
from styles.choice.style import Style
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth, cloth_problems
from styles.making.jeans import Jeans, make_jeans


def draft_jeans(
    measurements: Measurements,
    style: str | Style = "straight",
    *,
    settings: Mapping[str, object] | None = None,
    stretch: float = 0.0,
    lengthwise_change: float = 0.0,
    crosswise_change: float = 0.0,
    fitting: Mapping[str, float] | None = None,
    fitted: bool = True,
) -> Jeans:
    """Return the jeans drafted for the measurements.

    Args:
        measurements: In millimetres; waist girth, hip girth, inside leg height and one of waist height or
            body rise are needed.
        style: A name of the catalogue, or a style.
        settings: What shall be otherwise in it, as `--set` takes it: name to value, a length with its unit
            ("3 cm"), a share in percent ("42 %").
        stretch: How far the cloth can be pulled crosswise, percent.
        lengthwise_change: What washing does to the cloth along the warp, percent; negative for shrinking.
        crosswise_change: The same across the warp.
        fitting: What was seen on the toile, mm by key of `drafting.body.corrections.CORRECTIONS`.
        fitted: False leaves crotch seam and thigh as the proportions give them, for lessons and to compare.

    Raises:
        DraftRefused: with everything at once that no draft could be meant by: a measurement that is missing
            or impossible, a style that does not exist, a setting, a cloth or a correction out of its range.
    """
    cloth = Cloth(lengthwise_change=lengthwise_change, crosswise_change=crosswise_change, stretch=stretch)
    problems = [*check_measurements(measurements), *check_corrections(fitting or {}), *cloth_problems(cloth)]
    try:
        asked = catalogue_style(style) if isinstance(style, str) else style
    except DraftRefused as refusal:
        asked, problems = Style(name=""), [*problems, *refusal.problems]
    asked, wrong = read_settings(settings or {}, asked.measured_at(measurements.waist_taken_at), None)
    refusals = [problem for problem in (*problems, *wrong) if problem.severity is Severity.REFUSAL]
    if refusals:
        raise DraftRefused(refusals)
    return jeans_for(measurements, asked, cloth, fitting or {}, fitted=fitted)


def jeans_for(
    measurements: Measurements,
    style: Style,
    cloth: Cloth,
    fitting: Mapping[str, float],
    *,
    fitted: bool = True,
    wearer: str = "",
    date: str = "",
) -> Jeans:
    """Return the jeans of a style in a cloth.

    Args:
        measurements: In millimetres.
        style: With everything that was asked for, its rise not yet that of a body.
        cloth: The cloth.
        fitting: What was seen on the toile, mm by key of `drafting.body.corrections.CORRECTIONS`.
        fitted: False leaves crotch seam and thigh as the proportions give them.
        wearer: Name to print on every piece.
        date: When the measurements were taken, to print.

    Raises:
        DraftRefused: the measurements do not allow it.
    """
    block = block_for(measurements, style, cloth, fitting, fitted=fitted)
    return make_jeans(block, style, wearer=wearer, date=date, cloth=cloth)
