"""What is asked of a style otherwise, read from what was typed; and what is said of the cloth.

What reads settings loads late, for `--help` needs none of it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from drafting.base.errors import DraftRefused
from drafting.body.measurements import WaistLevel
from outputs.reading.cloth_entries import read_cloth
from styles.choice.style import Allowances, Style

_NO_ALLOWANCE = Allowances(waist=0, side_seam=0, inseam=0, crotch_seam=0, yoke=0, small=0, hem=0)


@dataclass(frozen=True, kw_only=True)
class StyleOptions:
    """What was asked for.

    Attributes:
        settings: As typed, by names of `styles.choice.settings.SETTINGS`.
        allowance: False leaves all seam allowances away.
        cloth: Percentages by names of `outputs.reading.cloth_entries.CLOTH_ENTRIES`.
        fitted: False leaves crotch seam and thigh as the proportions give them.
        before_names: What stood before the name of a setting where it was typed, such as "--set "; refusals
            name it in the same way.
    """

    settings: Mapping[str, str] = field(default_factory=dict)
    allowance: bool = True
    cloth: Mapping[str, float] = field(default_factory=dict)
    fitted: bool = True
    before_names: str = ""

    def style(self, base: Style, waist: WaistLevel) -> Style:
        """Return the style as asked for; jeans whose waist was measured where they are worn sit there.

        Raises:
            DraftRefused: what was set fights with what this style has.
        """
        from styles.choice.setting_values import read_settings

        style, wrong = read_settings(self.settings, base.measured_at(waist), None)
        if wrong:
            problems = [replace(p, key=f"{self.before_names}{p.key}") for p in wrong]
            raise DraftRefused(problems, f"style {base.name}")
        if self.allowance:
            return style
        return replace(style, allowances=replace(_NO_ALLOWANCE, felling=style.allowances.felling))


def read_options(
    settings: Mapping[str, str],
    cloth: Mapping[str, str],
    *,
    allowance: bool = True,
    before_names: str = "",
) -> StyleOptions:
    """Return what was asked for.

    Args:
        settings: As typed, by names of `styles.choice.settings.SETTINGS`.
        cloth: Percentages as typed, by names of `outputs.reading.cloth_entries.CLOTH_ENTRIES`.
        allowance: False leaves all seam allowances away.
        before_names: See `StyleOptions`; what is refused here has the bare names.

    Raises:
        DraftRefused: with every value that cannot be meant, each with its name as key.
    """
    from styles.choice.setting_values import read_settings

    _, wrong = read_settings(settings, Style(name=""), None)
    percents, wrong_cloth = read_cloth(cloth)
    if wrong or wrong_cloth:
        raise DraftRefused([*wrong, *wrong_cloth])
    return StyleOptions(settings=settings, allowance=allowance, cloth=percents, before_names=before_names)
