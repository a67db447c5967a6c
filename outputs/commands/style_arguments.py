"""The options of the command line that decide what is drafted, for every command that drafts."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from functools import reduce, wraps

import click

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.typed_words import in_one_line
from outputs.commands.completion import Command, style_names, word_option
from outputs.commands.shared import proportions_alone
from outputs.commands.usage import not_among
from outputs.reading.style_options import StyleOptions, read_options
from styles.choice.style import STRAIGHT, Band, Felling, Laps, Rise

LAPS = {"left": Laps.LEFT_OVER_RIGHT.value, "right": Laps.RIGHT_OVER_LEFT.value}
"""By the front that lies on top."""

_ONE = "What to draft: one of those that `jeansblock styles` lists, or a style file of your own."

one_style = click.option(
    "--style", default=STRAIGHT.name, show_default=True, metavar="NAME", shell_complete=style_names, help=_ONE
)
"""The option of a command that drafts one style."""

_SEVERAL = (
    click.option(
        "--style", "asked_styles", multiple=True, metavar="NAME", shell_complete=style_names,
        help=f"{_ONE} Give it again for several in one folder, with a sheet that compares "
        f"them.  [default: {STRAIGHT.name}]",
    ),
    click.option("--all-styles", is_flag=True, help="Draft every style that `jeansblock styles` lists."),
    click.option(
        "--shared-once", is_flag=True,
        help="Of several styles: print pieces that are the same only with the first that has them.",
    ),
)  # fmt: skip

_CHANGES = (
    word_option("--rise", (r.value for r in Rise), help="How high the jeans reach."),
    word_option("--band", (b.value for b in Band), help="How the waistband is cut."),
    word_option("--laps", LAPS, help="Which front lies on top at the fly."),
    click.option(
        "--below-waist", metavar="LENGTH",
        help='How far below the waist the jeans sit: "3 cm", "1 1/2 in"; a minus for above.',
    ),
    word_option(
        "--seams", (f.value for f in Felling),
        help="Plain and overlocked, or flat-felled with unequal allowances.",
    ),
    click.option(
        "--set", "settings", metavar="SETTING=VALUE", multiple=True,
        help='Change one setting of the style: "leg.hem_of_hip=40 %"; `jeansblock styles NAME` lists all.',
    ),
    click.option("--no-allowance", is_flag=True, help="Leave out the seam allowances, to add your own."),
    click.option(
        "--lengthwise-change", metavar="PERCENT",
        help="What washing does to the cloth along the warp; a minus for shrinking.",
    ),
    click.option("--crosswise-change", metavar="PERCENT", help="The same across the warp."),
    click.option(
        "--stretch", metavar="PERCENT", help="How far the cloth can be pulled crosswise; 0 if rigid."
    ),
    proportions_alone,
)  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class TypedChanges:
    """What was typed to change a style, as click hands it over."""

    rise: str | None
    band: str | None
    laps: str | None
    below_waist: str | None
    seams: str | None
    settings: tuple[str, ...]
    no_allowance: bool
    lengthwise_change: str | None
    crosswise_change: str | None
    stretch: str | None
    proportions_alone: bool

    def read(self) -> StyleOptions:
        """Return what is meant.

        Raises:
            DraftRefused: with every option that cannot be meant, by its name.
        """
        names: dict[str, str] = {}
        settings: dict[str, str] = {}
        problems: list[Problem] = []
        for option, key, value in self._set():
            if isinstance(value, Problem):
                problems.append(value)
            elif key in settings:
                message = f"This is set twice, by {names[key]} as well; keep one of the two."
                problems.append(Problem(option, message, Severity.REFUSAL, in_one_line(value)))
            else:
                settings[key], names[key] = value, option
        cloth = dict(self._said_of_the_cloth())
        names |= {key: f"--{key.replace('_', '-')}" for key in cloth}
        try:
            options = read_options(settings, cloth, allowance=not self.no_allowance, before_names="--set ")
        except DraftRefused as refusal:
            told = [replace(problem, key=names.get(problem.key, problem.key)) for problem in refusal.problems]
            raise DraftRefused([*problems, *told]) from refusal
        if problems:
            raise DraftRefused(problems)
        return replace(options, fitted=not self.proportions_alone)

    def _set(self) -> Iterator[tuple[str, str, str | Problem]]:
        """Yield what was set: the option, the setting's name, and its value or why it has none."""
        own = (
            ("--rise", "rise", self.rise),
            ("--below-waist", "below_waist", self.below_waist),
            ("--band", "band", self.band),
            ("--laps", "laps", self.laps),
            ("--seams", "allowances.felling", self.seams),
        )
        for option, key, typed in own:
            if typed is None:
                continue
            if key == "laps":
                yield option, key, LAPS.get(typed) or not_among(LAPS, option, typed)
            else:
                yield option, key, typed
        for change in self.settings:
            key, sign, value = (part.strip() for part in change.partition("="))
            if key and sign and value:
                yield f"--set {key}", key, value
            else:
                message = 'A setting is changed like this: --set "leg.hem_of_hip=40 %".'
                yield "", "", Problem("--set", message, Severity.REFUSAL, in_one_line(change))

    def _said_of_the_cloth(self) -> Iterator[tuple[str, str]]:
        said = {
            "lengthwise_change": self.lengthwise_change,
            "crosswise_change": self.crosswise_change,
            "stretch": self.stretch,
        }
        return ((key, typed) for key, typed in said.items() if typed is not None)


def several_styles(command: Command) -> Command:
    """Give a command the options that name one or several styles."""
    return with_options(_SEVERAL, command)


def style_arguments(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command one style by name, and `changes`: what was typed to change it."""
    return one_style(change_arguments(command))


def change_arguments(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command `changes`: what was typed to change a style."""
    return with_options(_CHANGES, handing("changes", TypedChanges, command))


def with_options(options: Iterable[Callable[[Command], Command]], command: Command) -> Command:
    """Give a command options, the first of them first in its help."""
    return reduce(lambda made, option: option(made), reversed(tuple(options)), command)


def handing(name: str, group: Callable[..., object], command: Callable[..., None]) -> Callable[..., None]:
    """Hand a command what was typed for a group of options as one value, of a class that has their types.

    Click hands over a word for each option; the group is made from those that it has as fields.
    """
    names = tuple(group.__annotations__)

    @wraps(command)
    def handed(**typed: object) -> None:
        chosen = {key: typed.pop(key) for key in names}
        command(**typed, **{name: group(**chosen)})

    return handed
