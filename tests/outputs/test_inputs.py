"""The record beside a draft: it holds all that decides the shape, exactly, and a damaged one is refused."""

import json
from dataclasses import fields, replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drafting.base.errors import DraftRefused
from drafting.base.units import Unit
from drafting.body.measurements import Measurements
from outputs.reading.draft_record import INPUTS_FILE, Inputs, holds, read_inputs
from outputs.reading.measurements_file import MeasurementFile, read_measurements
from outputs.reading.style_file import find_style
from outputs.reading.style_options import StyleOptions, read_options
from styles.choice.catalogue import catalogue_names
from styles.choice.settings import SETTINGS, value_of
from styles.choice.style import Style
from styles.cloth.shrinkage_and_stretch import Cloth
from tests.outputs.typed_files import FULL, PLAIN, UNEVEN
from tests.strategies import bodies

NOTHING: dict[str, str | None] = {}
shared_folder = settings(suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])


def recorded(inputs: Inputs, folder: Path) -> Inputs:
    (folder / INPUTS_FILE).write_text(inputs.text({}), encoding="utf-8")
    return read_inputs(folder)


def of(text: str, folder: Path, style: str = "straight", *changes: str, **cloth: str) -> Inputs:
    (folder / "ada.toml").write_text(text, encoding="utf-8")
    options = read_options(dict(change.split("=") for change in changes), cloth)
    return Inputs.of(read_measurements(folder / "ada.toml"), find_style(style), options)


@pytest.mark.parametrize("style", catalogue_names())
def test_every_style_comes_back_as_it_was(tmp_path: Path, style: str) -> None:
    inputs = of(UNEVEN, tmp_path, style)
    assert recorded(inputs, tmp_path) == inputs


@shared_folder
@given(
    measurements=bodies(),
    stretch=st.floats(0, 100),
    unit=st.sampled_from(Unit),
    wearer=st.text(st.characters(exclude_categories=("Cs",)), max_size=20),
)
def test_every_body_and_cloth_comes_back_to_the_last_digit(
    tmp_path: Path, measurements: Measurements, stretch: float, unit: Unit, wearer: str
) -> None:
    inputs = Inputs(
        wearer=wearer,
        taken_on="1 May",
        unit=unit,
        measurements=measurements,
        style=find_style("straight"),
        cloth=Cloth(stretch=stretch, lengthwise_change=-1 / 3),
        version="1",
    )
    assert recorded(inputs, tmp_path) == inputs


def test_options_are_recorded_with_what_they_came_to(tmp_path: Path) -> None:
    inputs = of(FULL, tmp_path, "straight", "rise=low", "leg.hem_of_hip=40 %", stretch="20")
    back = recorded(inputs, tmp_path)
    assert back == inputs and back.style.leg.hem_of_hip == 0.4 and back.cloth.stretch == 20
    bare = Inputs.of(
        read_measurements(tmp_path / "ada.toml"), find_style("straight"), StyleOptions(allowance=False)
    )
    assert recorded(bare, tmp_path).style.allowances.side_seam == 0


def test_what_was_seen_on_the_toile_is_recorded(tmp_path: Path) -> None:
    inputs = of(PLAIN + "\n[fitting]\nfull_seat = 1.5\n", tmp_path)
    assert inputs.corrections == {"full_seat": 15} and recorded(inputs, tmp_path) == inputs
    assert recorded(inputs, tmp_path).jeans().pattern == inputs.jeans().pattern


def test_all_that_decides_a_draft_has_its_place_in_the_record() -> None:
    # Whoever adds an input is told here that `outputs.reading.draft_record` has to keep it.
    kept = {"wearer", "taken_on", "unit", "measurements", "cloth", "corrections"}
    besides = {"readings", "warnings"}
    assert {field.name for field in fields(MeasurementFile)} == kept | besides
    tops = {key.partition(".")[0] for key in SETTINGS}
    assert {field.name for field in fields(Style)} == tops | {"name", "says", "back_waist_least"}
    for group in ("leg", "ease", "front_pocket", "back_pocket", "allowances"):
        inside = {key.partition(".")[2] for key in SETTINGS if key.startswith(f"{group}.")}
        assert {field.name for field in fields(value_of(Style(name=""), group))} == inside


def test_the_record_alone_gives_the_same_pattern(tmp_path: Path) -> None:
    inputs = of(UNEVEN, tmp_path, "bootcut", crosswise_change="-2")
    assert recorded(inputs, tmp_path).jeans().pattern == inputs.jeans().pattern


@pytest.mark.parametrize(
    "damage",
    [
        lambda record: record.pop("style"),
        lambda record: record["measurements"].update(hip_girth="98"),
        lambda record: record["measurements"].update(hip=98),
        lambda record: record["measurements"].update(hip_girth=float("nan")),
        lambda record: record["style"]["settings"].update(band="velcro"),
        lambda record: record["style"]["settings"].pop("ease.hip"),
        lambda record: record.update(cloth=[]),
        lambda record: record.update(fitting={"full_moon": 15}),
        lambda record: record.update(fitting={"full_seat": "15"}),
        lambda record: record.update(wearer=7),
    ],
)
def test_a_damaged_record_is_refused_in_one_sentence(tmp_path: Path, damage) -> None:
    record = json.loads(of(FULL, tmp_path).text({}))
    damage(record)
    (tmp_path / INPUTS_FILE).write_text(json.dumps(record))
    with pytest.raises(DraftRefused, match="no record of a draft"):
        read_inputs(tmp_path)


@pytest.mark.parametrize("text", ["", "[]", "null", "{", "[" * 5000])
def test_another_file_is_no_record(tmp_path: Path, text: str) -> None:
    (tmp_path / INPUTS_FILE).write_text(text)
    with pytest.raises(DraftRefused, match="no record of a draft"):
        read_inputs(tmp_path)
    assert not holds(tmp_path, text or "x")


def test_a_folder_without_a_record_is_no_draft(tmp_path: Path) -> None:
    with pytest.raises(DraftRefused, match=r"holds no inputs\.json"):
        read_inputs(tmp_path)


def test_of_several_styles_in_a_folder_one_is_named(tmp_path: Path) -> None:
    for style in ("slim", "wide"):
        (tmp_path / f"{style}-inputs.json").write_text(of(FULL, tmp_path, style).text({}))
    with pytest.raises(DraftRefused, match=r"name the record of one: slim-inputs\.json, wide-inputs\.json\."):
        read_inputs(tmp_path)
    assert read_inputs(tmp_path / "wide-inputs.json").style.name == "wide"


def test_a_folder_holds_a_draft_whatever_version_made_it(tmp_path: Path) -> None:
    inputs = of(FULL, tmp_path)
    recorded(inputs, tmp_path)
    assert holds(tmp_path, replace(inputs, version="other").text({}))
    assert not holds(tmp_path, replace(inputs, wearer="Bo").text({}))
    assert not holds(tmp_path, inputs.text({"paper": "letter"}))
    assert not holds(tmp_path / "nowhere", inputs.text({}))
