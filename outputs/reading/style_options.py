"""The options of `draft` that change the style, read into it; and what they say of the cloth.

What reads settings loads late, for `--help` needs none of it.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed import LONGEST_GUESS, did_you_mean, in_one_line
from drafting.body.measurements import WaistLevel
from outputs.reading.cloth_entries import read_cloth
from styles.choice.style import Allowances, Laps, Style

LAPS = {"left": Laps.LEFT_OVER_RIGHT.value, "right": Laps.RIGHT_OVER_LEFT.value}
"""By the front that lies on top."""

OPTIONS = {
    "rise": "rise",
    "below_waist": "below_waist",
    "band": "band",
    "laps": "laps",
    "seams": "allowances.felling",
}
"""Options of their own for settings that are often changed; `--set` reaches the others."""

_NO_ALLOWANCE = Allowances(waist=0, side_seam=0, inseam=0, crotch_seam=0, yoke=0, small=0, hem=0)


@dataclass(frozen=True, kw_only=True)
class StyleOptions:
    """What was asked for.

    Attributes:
        settings: As typed, by names of `styles.choice.settings.SETTINGS`.
        allowance: False leaves all seam allowances away.
        cloth: Percentages by names of `outputs.reading.cloth_entries.CLOTH_ENTRIES`.
    """

    settings: Mapping[str, str] = field(default_factory=dict)
    allowance: bool = True
    cloth: Mapping[str, float] = field(default_factory=dict)

    def style(self, base: Style, waist: WaistLevel) -> Style:
        """Return the style as asked for; jeans whose waist was measured where they are worn sit there.

        Raises:
            DraftRefused: what was set fights with what this style has.
        """
        from styles.choice.setting_values import read_settings

        style, wrong = read_settings(self.settings, base.measured_at(waist), None)
        if wrong:
            raise DraftRefused([replace(p, key=f"--set {p.key}") for p in wrong], f"style {base.name}")
        if self.allowance:
            return style
        return replace(style, allowances=replace(_NO_ALLOWANCE, felling=style.allowances.felling))


def read_options(
    *, allowance: bool, changes: tuple[str, ...], cloth: Mapping[str, str | None], **asked: str | None
) -> StyleOptions:
    """Return the options as typed.

    Args:
        allowance: False leaves all seam allowances away.
        changes: Settings as "name=value".
        cloth: What was said of the cloth.
        **asked: The options named in `OPTIONS`; None where one was not given.

    Raises:
        DraftRefused: with every option that cannot be meant.
    """
    from styles.choice.setting_values import read_settings

    settings: dict[str, str] = {}
    named: dict[str, str] = {}
    problems = []
    for option, key in OPTIONS.items():
        value = asked.get(option)
        if option == "laps" and value is not None and value not in LAPS:
            problems.append(not_among(LAPS, "--laps", value))
        elif value is not None:
            settings[key], named[key] = LAPS[value] if option == "laps" else value, _dashed(option)
    for change in changes:
        key, sign, value = (part.strip() for part in change.partition("="))
        if not (key and sign and value):
            message = 'A setting is changed like this: --set "leg.hem_of_hip=40 %".'
            problems.append(Problem("--set", message, Severity.REFUSAL, in_one_line(change)))
        elif key in settings:
            message = f"This is set twice, by {named[key]} as well; keep one of the two."
            problems.append(Problem(f"--set {key}", message, Severity.REFUSAL, in_one_line(value)))
        else:
            settings[key], named[key] = value, f"--set {key}"
    _, wrong = read_settings(settings, Style(name=""), None)
    problems += [replace(problem, key=named.get(problem.key, problem.key)) for problem in wrong]
    percents, wrong = read_cloth({key: value for key, value in cloth.items() if value is not None})
    problems += [replace(problem, key=_dashed(problem.key)) for problem in wrong]
    if problems:
        raise DraftRefused(problems)
    return StyleOptions(settings=settings, allowance=allowance, cloth=percents)


def not_among(words: Iterable[str], option: str, typed: str) -> Problem:
    """Return the refusal of a word that is none of those that an option takes."""
    words = tuple(words)
    guess = difflib.get_close_matches(typed.lower()[:LONGEST_GUESS], words, 1)
    message = f"This is none of the choices.{did_you_mean(guess)}"
    return Problem(option, message, Severity.REFUSAL, in_one_line(typed), " or ".join(words))


def _dashed(option: str) -> str:
    return f"--{option.replace('_', '-')}"
