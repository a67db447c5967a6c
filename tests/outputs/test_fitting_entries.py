"""What a wearer writes below [fitting] after the toile: read, refused in plain words, drafted and listed."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.units import Unit
from drafting.body.corrections import CORRECTIONS
from outputs.commands.main import main
from outputs.reading.measurement_template import write_template
from outputs.reading.measurements_file import MeasurementFile, read_measurements
from styles.choice.style import STRAIGHT
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth
from styles.making.jeans import make_jeans
from styles.making.jeans_figures import jeans_figures
from tests.outputs.typed_files import PLAIN

FITTING = PLAIN + "\n[fitting]\n"
FIRST = FITTING.count("\n") + 1
"""Line of the first entry below [fitting]."""


@pytest.fixture
def read(tmp_path: Path):
    def reads(text: str) -> MeasurementFile:
        path = tmp_path / "ada.toml"
        path.write_text(text, encoding="utf-8")
        return read_measurements(path)

    return reads


@pytest.fixture
def problems(read):
    def reads(text: str) -> tuple[Problem, ...]:
        with pytest.raises(DraftRefused) as caught:
            read(text)
        return caught.value.problems

    return reads


@pytest.mark.parametrize(
    ("typed", "mm"), [("1.5", 15), ('"1,5"', 15), ('"15 mm"', 15), ('"1/2 in"', 12.7), ("'3/8\"'", 9.525)]
)
def test_an_amount_is_read_like_any_length(read, typed: str, mm: float) -> None:
    file = read(f"{FITTING}full_seat = {typed}\n")
    assert file.corrections == {"full_seat": pytest.approx(mm)}
    assert file.warnings == ()


def test_without_a_fitting_or_with_nothing_filled_in_there_are_no_corrections(read) -> None:
    for text in (PLAIN, FITTING, f'{FITTING}sway_back = ""\n'):
        assert read(text).corrections == {}


def test_everything_wrong_is_told_at_once_with_line_value_and_range(problems) -> None:
    found = problems(
        f"{FITTING}full_seat = 15\nflat_seat = -1\nfull_belly = 2\nwaist_in = [2, 3]\nhigher_rise = true\n"
        'sway_back = "much"\nfull_thigh = 0\n'
    )
    refused = {p.key: p for p in found}
    lines = {
        "full_seat": 0, "flat_seat": 1, "full_belly": 2, "waist_in": 3, "higher_rise": 4, "sway_back": 5,
        "full_thigh": 6,
    }  # fmt: skip
    assert {key.removeprefix("fitting."): p.line for key, p in refused.items()} == {
        key: FIRST + line for key, line in lines.items()
    }
    assert all(p.severity is Severity.REFUSAL for p in found)
    seat = refused["fitting.full_seat"]
    assert "did you mean 15 mm = 1.5 cm?" in seat.message
    assert (seat.value, seat.plausible) == ("15", "0.5 cm to 2.5 cm")
    assert "a name of its own" in refused["fitting.flat_seat"].message
    assert 'Did you mean "full_abdomen"?' in refused["fitting.full_belly"].message
    assert refused["fitting.sway_back"].plausible == "0.5 cm to 2.0 cm"


def test_opposites_are_refused_and_fights_warned_of(read, problems) -> None:
    [opposite] = problems(f"{FITTING}full_seat = 1\nflat_seat = 1\n")
    assert opposite.key == "fitting.flat_seat" and "opposites" in opposite.message
    file = read(f"{FITTING}higher_rise = 1\nfront_crotch_pools = 0.5\n")
    [fight] = file.warnings
    assert (fight.key, fight.line) == ("fitting.front_crotch_pools", FIRST + 1)
    assert len(file.corrections) == 2


def test_a_large_amount_is_warned_of_in_the_files_unit(read) -> None:
    inches = FITTING.replace('unit = "cm"', 'unit = "in"').replace("76", "30").replace("98", "38 ").replace(
        "78", "31"
    ).replace("27", "10.5")  # fmt: skip
    [warning] = read(f'{inches}full_thigh = "1 1/2"\n').warnings
    assert warning.plausible == "3/16 in to 1 3/16 in" and "much" in warning.message


@pytest.mark.parametrize("name", ["left_hip", "one_side", '"right hip"'])
def test_what_was_seen_on_one_side_is_sent_to_left_and_right(problems, name: str) -> None:
    [problem] = problems(f"{FITTING}{name} = 1\n")
    assert "[left] and [right]" in problem.message and "outside_leg_length" in problem.message


def test_what_is_no_table_and_a_misspelt_unit_are_told_plainly(problems) -> None:
    [problem] = problems(f"fitting = 3\n{PLAIN}")
    assert "[fitting]" in problem.message
    found = problems(FITTING.replace('unit = "cm"', 'unit = "inchs"') + "full_seat = 99\nfull_set = 1\n")
    # An amount of unknown unit is neither large nor small.
    assert [p.key for p in found if p.key.startswith("fitting")] == ["fitting.full_set"]


@pytest.mark.parametrize("unit", Unit)
def test_the_blank_file_lists_every_correction_and_reads_as_none(read, unit: Unit) -> None:
    blank = write_template("Ada", unit)
    body = {"waist_girth": "76 cm", "hip_girth": "98 cm", "inside_leg_height": "78 cm", "body_rise": "27 cm"}
    for key, value in body.items():
        blank = blank.replace(f'{key} = ""', f'{key} = "{value}"')
    assert read(blank).corrections == {}
    lines = blank.splitlines()
    start = lines.index("[fitting]")
    assert [line.split(" = ")[0] for line in lines[start + 1 :]] == list(CORRECTIONS)
    filled = blank.replace('full_seat = ""', 'full_seat = "1 cm"')
    assert read(filled).corrections == {"full_seat": 10}


@pytest.mark.slow
def test_a_draft_lists_what_was_corrected_with_before_and_after(tmp_path: Path) -> None:
    text = FITTING + 'lower_rise = 2\nlonger_at_calf = "3 cm"\nhigher_rise = ""\n'
    (tmp_path / "ada.toml").write_text(text)
    out = tmp_path / "out"
    told = CliRunner().invoke(
        main, ["draft", str(tmp_path / "ada.toml"), "--out", str(out), "--format", "svg"]
    )
    assert told.exit_code == 0, told.output
    lines = told.output.splitlines()
    assert max(map(len, lines)) <= 80 or str(tmp_path) in max(lines, key=len)
    assert "corrected after the fitting: rise lower 2.0 cm; longer at the calf 3.0 cm" in lines
    [inseam] = [line.split() for line in lines if line.startswith("front inseam")]
    assert inseam[-1] == "+3.0"
    assert float(inseam[-2]) - float(inseam[-3]) == pytest.approx(3.0, abs=0.11)
    [zip_line] = [line.split() for line in lines if line.startswith("zip ")]
    assert zip_line[-1] in ("-2.0", "-3.0")  # zips come in whole centimetres
    figures = json.loads((out / "figures.json").read_text())
    assert [c["name"] for c in figures["fitting"]["corrections"]] == ["lower_rise", "longer_at_calf"]


def test_the_order_of_the_lines_gives_the_same_pattern(read) -> None:
    entries = ["full_seat = 1", "waist_in = 2", "knees_in = 0.8"]
    drawn = []
    for order in (entries, entries[::-1]):
        file = read(FITTING + "\n".join(order) + "\n")
        jeans = make_jeans(block_for(file.measurements, STRAIGHT, Cloth(), file.corrections), STRAIGHT)
        drawn.append((repr(jeans.pattern), json.dumps(jeans_figures(jeans))))
    assert drawn[0] == drawn[1]
