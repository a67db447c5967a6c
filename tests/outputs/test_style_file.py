from __future__ import annotations

from dataclasses import fields, is_dataclass
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.base.errors import DraftRefused
from drafting.base.units import Unit
from outputs.files.text_file import read_file
from outputs.reading.style_file import find_style, read_style, style_text
from styles.choice import catalogue
from styles.choice.catalogue import catalogue_names
from styles.choice.settings import SETTINGS, value_of
from styles.choice.style import STRAIGHT, Rise, Style
from tests.strategies import examples


def written(folder: Path, text: str) -> Path:
    path = folder / "mine.toml"
    path.write_text(text, encoding="utf-8")
    return path


def refusal(folder: Path, text: str) -> list[str]:
    with pytest.raises(DraftRefused) as refused:
        read_style(read_file(written(folder, text)))
    return str(refused.value).splitlines()


def names_of(style: object, prefix: str = "") -> set[str]:
    """Return every setting that the data of a style hold."""
    found = set()
    for field in fields(style):  # type: ignore[arg-type]
        value = getattr(style, field.name)
        inner = names_of(value, f"{field.name}.") if is_dataclass(value) else {prefix + field.name}
        found |= inner
    return found


def test_every_setting_of_a_style_can_be_set() -> None:
    assert names_of(STRAIGHT) - {"name", "says", "back_waist_least"} == set(SETTINGS)


def test_the_straight_style_of_the_catalogue_is_the_default() -> None:
    assert find_style("straight") == STRAIGHT


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("name", catalogue_names())
def test_a_style_written_out_whole_reads_back_as_it_was(tmp_path: Path, name: str, unit: Unit) -> None:
    style = find_style(name)
    again = read_style(read_file(written(tmp_path, style_text(style, unit))))
    # A sixteenth of an inch is the roundest of what is written.
    for key in SETTINGS:
        value, found = value_of(style, key), value_of(again, key)
        number = isinstance(value, int | float) and not isinstance(value, bool)
        assert found == (pytest.approx(value, abs=25.4 / 32 + 1e-9) if number else value), key
    assert (again.name, again.says) == (style.name, style.says)


def test_a_copy_with_a_few_lines_changed_is_a_style_of_its_own(tmp_path: Path) -> None:
    text = 'like = "bootcut"\nunit = "in"\nband_height = "1 1/2"\n[leg]\nhem_of_hip = "50 %"\nhem_most = 21\n'
    style, bootcut = read_style(read_file(written(tmp_path, text))), find_style("bootcut")
    assert (style.name, style.band_height, style.leg.hem_of_hip) == ("mine", 38.1, 0.5)
    assert style.leg.hem_most == pytest.approx(21 * 25.4)
    assert (style.leg.knee_of_hip, style.ease, style.rise) == (
        bootcut.leg.knee_of_hip,
        bootcut.ease,
        bootcut.rise,
    )


def test_a_length_below_the_waist_takes_the_place_of_the_rise(tmp_path: Path) -> None:
    assert find_style("bootcut").rise is Rise.MID
    style = read_style(read_file(written(tmp_path, 'like = "bootcut"\nbelow_waist = "-1 cm"\n')))
    assert (style.rise, style.below_waist) == (None, -10)


def test_everything_that_is_wrong_is_told_at_once_with_its_line(tmp_path: Path) -> None:
    lines = refusal(
        tmp_path,
        'band = "curved"\nlaps = 3\nrise = "mid"\nbelow_waist = "3 cm"\n[leg]\nhem = "40 %"\n'
        'knee_of_hip = "460 %"\n[front_pocket]\nwatch = "perhaps"\nwidth = 10\n',
    )
    said = "\n".join(lines)
    for line, words in (
        (1, "band = curved: This is none of the choices. Plausible: shaped or straight."),
        (2, "laps = 3: This is none of the choices."),
        (4, "below_waist = 3 cm: The rise is set as well; keep one of the two."),
        (6, "leg.hem = 40 %: No setting has this name. Did you mean"),
        (7, "leg.knee_of_hip = 460 %: No jeans are made like that"),
        (9, "front_pocket.watch = perhaps: This is answered by yes or no."),
        (10, "front_pocket.width = 10: The length cannot be read: no unit is stated"),
    ):
        assert f"mine.toml: line {line}: {words}" in said
    assert len(lines) == 7


def test_settings_that_fight_are_told(tmp_path: Path) -> None:
    said = refusal(tmp_path, '[leg]\nhem_least = "40 cm"\nhem_most = "30 cm"\n')
    assert "hem_least" in said[0] and "wider than the widest" in said[0]
    said = refusal(tmp_path, '[leg]\nhem_below_knee = "50 %"\nhem_above_knee = "20 %"\n')
    assert "leg.hem_above_knee" in said[0]


@pytest.mark.parametrize("like", ["mine", "no such", "Straight "])
def test_a_style_is_like_another_one_of_the_catalogue(tmp_path: Path, like: str) -> None:
    assert "No other style that `jeansblock styles` lists" in refusal(tmp_path, f'like = "{like}x"\n')[0]


def test_a_misspelt_style_is_told_what_there_is() -> None:
    with pytest.raises(DraftRefused) as refused:
        find_style("bootcutt")
    assert 'Did you mean "bootcut"?' in str(refused.value) and "wide" in str(refused.value)


def test_a_file_put_into_the_catalogue_is_offered(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "balloon.toml").write_text('[leg]\nknee_of_hip = "60 %"\n', encoding="utf-8")
    monkeypatch.setattr(catalogue, "CATALOGUE", tmp_path)
    assert catalogue_names() == ("balloon",)
    assert find_style("balloon") == Style(name="balloon", leg=find_style("balloon").leg)


@examples(60)
@given(text=st.text(max_size=200) | st.text(alphabet='=[]".%\nabcdefghijk 0123456789-_', max_size=120))
def test_any_text_is_a_style_or_is_refused(text: str, tmp_path_factory: pytest.TempPathFactory) -> None:
    path = tmp_path_factory.mktemp("any") / "mine.toml"
    path.write_text(text, encoding="utf-8", errors="replace", newline="")
    try:
        assert isinstance(read_style(read_file(path)), Style)
    except DraftRefused as refused:
        assert refused.problems


@examples(100)
@given(
    key=st.sampled_from(sorted(SETTINGS)),
    value=st.floats()
    | st.integers()
    | st.booleans()
    | st.text(max_size=20)
    | st.dates()
    | st.lists(st.integers(), max_size=2),
)
def test_any_value_of_a_setting_is_taken_or_refused(key: str, value: object) -> None:
    from styles.choice.setting_values import read_settings

    style, problems = read_settings({key: value}, STRAIGHT, Unit.CM)
    assert isinstance(style, Style) and all(problem.key for problem in problems)
