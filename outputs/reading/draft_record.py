"""What a draft was made from, whole: kept beside the pattern, to draft it again and to compare."""

from __future__ import annotations

import json
import math
import os
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from enum import Enum
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Any

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.units import Unit
from drafting.body.checks import refuse_meaningless
from drafting.body.corrections import CORRECTIONS
from drafting.body.measurements import Measurements, Population, SideMeasurements, WaistLevel
from outputs.files.kept_values import number, word, yes
from outputs.files.text_file import TextFile, read_file
from outputs.reading.measurements_file import MeasurementFile
from outputs.reading.style_options import StyleOptions
from styles.choice.settings import SETTINGS, SettingKind, value_of, with_settings
from styles.choice.style import Style
from styles.cloth.shrinkage_and_stretch import Cloth, refuse_meaningless_cloth
from styles.making.draft import jeans_for
from styles.making.jeans import Jeans

INPUTS_FILE = "inputs.json"
"""Its name in the folder of a draft."""


def tool_version() -> str:
    """Return the version of this program; "unknown" where it is run without being installed."""
    try:
        return version("jeansblock")
    except PackageNotFoundError:
        return "unknown"


@dataclass(frozen=True, kw_only=True)
class Inputs:
    """All that decides the shape of a pattern, and whose it is.

    Attributes:
        wearer: As typed.
        taken_on: As typed.
        unit: To show lengths in.
        measurements: As used, mm; of a list of readings its median.
        style: As asked for, every option applied, its rise not yet that of a body.
        cloth: As asked for.
        corrections: What was seen on the toile, mm by key of `drafting.body.corrections.CORRECTIONS`.
        fitted: False for a draft by proportions alone.
        version: Of the program that drafted it.
    """

    wearer: str
    taken_on: str
    unit: Unit
    measurements: Measurements
    style: Style
    cloth: Cloth
    corrections: Mapping[str, float] = field(default_factory=dict)
    fitted: bool = True
    version: str

    @staticmethod
    def of(read: MeasurementFile, style: Style, options: StyleOptions) -> Inputs:
        """Return what a draft of a measurements file is made from; the options count before the file."""
        return Inputs(
            wearer=read.wearer,
            taken_on=read.taken_on,
            unit=read.unit,
            measurements=read.measurements,
            style=options.style(style, read.measurements.waist_taken_at),
            cloth=Cloth(**{**read.cloth, **options.cloth}),
            corrections=read.corrections,
            fitted=options.fitted,
            version=tool_version(),
        )

    def jeans(self) -> Jeans:
        """Draft and return the jeans.

        Raises:
            DraftRefused: the measurements do not allow it.
        """
        return jeans_for(
            self.measurements,
            self.style,
            self.cloth,
            self.corrections,
            fitted=self.fitted,
            wearer=self.wearer,
            date=self.taken_on,
        )

    def text(self, printed: Mapping[str, object]) -> str:
        """Return the record as it is kept: lengths in mm, as exact as they were read.

        Args:
            printed: What was asked for in print, as plain data; it changes no shape.
        """
        settings = {key: _kept(value_of(self.style, key)) for key in SETTINGS}
        record = {
            "program": "jeansblock",
            "version": self.version,
            "wearer": self.wearer,
            "taken_on": self.taken_on,
            "shown_in": self.unit.value,
            "unit": "mm",
            "waist_taken_at": self.measurements.waist_taken_at.value,
            "estimate_like": self.measurements.estimate_like.value,
            "measurements": self.measurements.given(),
            "style": {"name": self.style.name, "says": self.style.says, "settings": settings},
            "cloth": asdict(self.cloth),
            "fitting": dict(self.corrections),
            "proportions_alone": not self.fitted,
            "printed": printed,
        }
        return json.dumps(record, ensure_ascii=False, indent=2, allow_nan=False) + "\n"


def _kept(value: object) -> object:
    """Return a setting as JSON can hold it; None for one that is not set."""
    if isinstance(value, Enum):
        return value.value
    return None if isinstance(value, float) and math.isinf(value) else value


def holds(folder: Path, record: str) -> bool:
    """Return whether a folder holds the draft of a record, whichever version of the program made it."""
    try:
        kept, wanted = json.loads(read_file(folder / INPUTS_FILE).text), json.loads(record)
        return {**kept, "version": ""} == {**wanted, "version": ""}
    except (ValueError, TypeError, RecursionError):  # a refusal is a ValueError
        return False


def read_inputs(draft: Path) -> Inputs:
    """Return what a draft was made from.

    Args:
        draft: its folder, or the record itself, such as one of several styles in a folder.

    Raises:
        DraftRefused: when there is no record, or one that was damaged.
    """
    path = draft / INPUTS_FILE if os.path.isdir(draft) else draft
    if path is not draft and not path.exists():
        message = f"This folder holds no {INPUTS_FILE}, so it is no draft that can be made again."
        if several := sorted(record.name for record in draft.glob(f"*-{INPUTS_FILE}")):
            message = f"This folder holds several styles; name the record of one: {', '.join(several)}."
        raise DraftRefused([Problem("", message, Severity.REFUSAL)], str(draft))
    return inputs_of(read_file(path))


def inputs_of(record: TextFile) -> Inputs:
    """Return what a draft was made from, out of its record as `Inputs.text` writes it.

    Raises:
        DraftRefused: when it was damaged.
    """
    try:
        inputs = _of_record(json.loads(record.text))
        refuse_meaningless(inputs.measurements)
        refuse_meaningless_cloth(inputs.cloth)
    except DraftRefused as refusal:
        raise DraftRefused(refusal.problems, record.source) from refusal
    except (ValueError, KeyError, TypeError, AttributeError, ArithmeticError, RecursionError) as error:
        message = "This is no record of a draft, or somebody changed it; draft anew."
        raise DraftRefused([Problem("", message, Severity.REFUSAL)], record.source) from error
    return inputs


def _of_record(record: Any) -> Inputs:
    """Return the inputs of a record; any error of `inputs_of` says it is none."""
    lengths = {key: number(mm) for key, mm in record["measurements"].items()}
    measurements = Measurements(
        **{key: mm for key, mm in lengths.items() if "." not in key},
        waist_taken_at=WaistLevel(record["waist_taken_at"]),
        estimate_like=Population(record["estimate_like"]),
        left=_side(lengths, "left."),
        right=_side(lengths, "right."),
    )
    style, settings = record["style"], record["style"]["settings"]
    held = {key: _held(key, settings[key]) for key in SETTINGS}
    return Inputs(
        wearer=word(record["wearer"]),
        taken_on=word(record["taken_on"]),
        unit=Unit(record["shown_in"]),
        measurements=measurements,
        # The rise last: setting the length below the waist takes it away.
        style=with_settings(
            Style(name=word(style["name"]), says=word(style["says"])),
            {**{key: value for key, value in held.items() if key != "rise"}, "rise": held["rise"]},
        ),
        cloth=Cloth(**{key: number(percent) for key, percent in record["cloth"].items()}),
        corrections=_corrections(record["fitting"]),
        # A record of an earlier version has no word of it: then every draft was fitted.
        fitted=not yes(record.get("proportions_alone", False)),
        version=word(record["version"]),
    )


def _held(key: str, kept: Any) -> Any:
    """Return a setting as a style holds it."""
    setting = SETTINGS[key]
    if setting.kind is SettingKind.CHOICE:
        return None if kept is None else setting.choices()[kept]
    if setting.kind is SettingKind.YES_OR_NO:
        return yes(kept)
    value = setting.most if kept is None and math.isinf(setting.most) else number(kept)
    if not setting.least <= value <= setting.most:
        raise ValueError("no style has this setting")
    return value


def _corrections(kept: Mapping[str, Any]) -> dict[str, float]:
    if unknown := kept.keys() - CORRECTIONS.keys():
        raise KeyError(*unknown)
    return {key: number(mm) for key, mm in kept.items()}


def _side(lengths: Mapping[str, float], prefix: str) -> SideMeasurements | None:
    found = {key.removeprefix(prefix): mm for key, mm in lengths.items() if key.startswith(prefix)}
    return SideMeasurements(**found) if found else None
