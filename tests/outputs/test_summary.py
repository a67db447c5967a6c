"""The table on the terminal: right numbers, in the wearer's unit, in 80 columns."""

from dataclasses import replace
from pathlib import Path

import pytest

from drafting.base.errors import Problem, Severity
from drafting.base.findings import Finding
from drafting.base.units import Unit, parse_length
from drafting.block.block import draft_block
from drafting.body.body import Origin
from drafting.report.fit import GirthLine
from outputs.demo import DEMO_FILES
from outputs.lines import summary
from outputs.lines.summary import summary_lines
from outputs.lines.wrapped import wrapped
from outputs.reading.measurements_file import read_measurements
from styles.choice.style import STRAIGHT
from styles.cloth.shrinkage_and_stretch import Cloth
from styles.making.jeans import Jeans, make_jeans
from tests.outputs.typed_files import FULL, PLAIN, UNEVEN


def jeans_of(path: Path) -> Jeans:
    return make_jeans(draft_block(read_measurements(path).measurements), STRAIGHT)


@pytest.fixture(scope="module")
def plain(tmp_path_factory: pytest.TempPathFactory) -> Jeans:
    path = tmp_path_factory.mktemp("plain") / "ada.toml"
    path.write_text(PLAIN)
    return jeans_of(path)


@pytest.fixture(scope="module")
def full(tmp_path_factory: pytest.TempPathFactory) -> Jeans:
    path = tmp_path_factory.mktemp("full") / "ada.toml"
    path.write_text(FULL)
    return jeans_of(path)


def cells(line: str) -> list[str]:
    """Return the name and the three columns of a line of the table, and what follows."""
    return [line[:15].strip(), *(line[at : at + 10].strip() for at in (15, 25, 35)), line[47:].strip()]


def test_the_table_shows_body_ease_and_pattern_in_the_files_unit(plain: Jeans) -> None:
    lines = list(summary_lines(plain, Unit.CM, ()))
    assert cells(lines[0]) == ["in cm", "body", "ease", "pattern", ""]
    assert cells(lines[1]) == ["waist", "76.0", "1.0", "77.0", "measured"]
    assert cells(lines[2]) == ["hip", "98.0", "3.0", "101.0", "measured"]
    assert cells(lines[3])[:3] == ["thigh", "–", "–"]


def test_the_same_lengths_stand_there_in_inches_and_in_millimetres(plain: Jeans) -> None:
    inches, mm = (list(summary_lines(plain, unit, ())) for unit in (Unit.INCH, Unit.MM))
    assert cells(inches[0])[0] == "in inches"
    assert cells(inches[1]) == ["waist", "29 15/16", "3/8", "30 5/16", "measured"]
    assert cells(mm[1]) == ["waist", "760", "10", "770", "measured"]
    # behind the tables a sentence may take another line in another unit
    tables = (lines[: max(at for at, line in enumerate(lines) if not line)] for lines in (inches, mm))
    for in_inches, in_mm in zip(*tables, strict=True):
        a, b = cells(in_inches)[3], cells(in_mm)[3]
        if b.isdigit():
            assert parse_length(a, Unit.INCH) == pytest.approx(int(b), abs=1.4)


def test_pattern_less_body_is_ease_on_every_line(full: Jeans) -> None:
    lines = [cells(line) for line in summary_lines(full, Unit.CM, ())]
    numbers = [[float(cell) for cell in line[1:4]] for line in lines[1 : lines.index([""] * 5)]]
    assert len(numbers) >= 8
    for body, ease, pattern in numbers:
        assert pattern - body == pytest.approx(ease, abs=0.11)


def test_every_level_says_where_its_value_comes_from(full: Jeans, plain: Jeans) -> None:
    marks = {cells(line)[0]: cells(line)[4] for line in summary_lines(full, Unit.CM, ())}
    assert (marks["waist"], marks["thigh"], marks["crotch seam"]) == ("measured",) * 3
    # calf from hip and thigh, both measured: 1.8 cm, Natick TR-15/007
    assert marks["calf"] == "estimated ± 1.8"
    marks = {cells(line)[0]: cells(line)[4] for line in summary_lines(plain, Unit.CM, ())}
    assert (marks["hip"], marks["thigh"], marks["crotch seam"]) == (
        "measured", "by construction", "by construction",
    )  # fmt: skip


def test_the_levels_say_how_high_they_lie_and_how_that_is_known(full: Jeans, plain: Jeans) -> None:
    def levels(jeans: Jeans) -> dict[str, tuple[str, str]]:
        lines = list(summary_lines(jeans, Unit.CM, ()))
        at = next(n for n, line in enumerate(lines) if cells(line)[0] == "above floor")
        return {line[:15].strip(): (line[15:25].strip(), line[27:]) for line in lines[at + 1 : at + 5]}

    # 78 + 27 - 2: a seated rise is some 2 cm more than the standing difference (common practice)
    assert levels(plain)["waist level"] == ("103.0", "worked out")
    assert levels(plain)["hip level"][1] == levels(plain)["knee level"][1] == "by construction"
    # the crotch line hangs half a centimetre under the seat: 103 - 27.5
    assert levels(plain)["crotch level"] == ("75.5", "2.5 below the body's own")
    assert levels(full)["waist level"] == ("103.0", "measured")
    # knee height from the inside leg alone: 0.99 cm, Natick TR-15/007
    assert levels(full)["knee level"][1] == "estimated ± 1.0"


def test_the_measurement_to_take_next_is_told_with_what_it_would_gain(plain: Jeans) -> None:
    said = " ".join(summary_lines(plain, Unit.CM, ()))
    assert "To narrow the fit most, measure the total crotch   length next" in said


def test_seam_lengths_stand_front_beside_back(plain: Jeans) -> None:
    lines = list(summary_lines(plain, Unit.CM, ()))
    front, back = plain.block.front, plain.block.back
    rows = {cells(line)[0]: cells(line)[1:3] for line in lines[lines.index("") :]}
    assert [float(cell) for cell in rows["inseam"]] == pytest.approx(
        [front.lower.inseam.length / 10, back.lower.inseam.length / 10], abs=0.051
    )
    assert [float(cell) for cell in rows["outseam"]] == pytest.approx(
        [front.side.length / 10, back.side.length / 10], abs=0.051
    )


def test_a_body_whose_sides_differ_gets_the_seams_of_both(tmp_path: Path) -> None:
    (tmp_path / "ada.toml").write_text(UNEVEN)
    jeans = jeans_of(tmp_path / "ada.toml")
    rows = {cells(line)[0]: cells(line)[1] for line in summary_lines(jeans, Unit.CM, ())}
    for half in jeans.block.halves:
        assert half.side is not None
        for name, seam in (("inseam", half.front.lower.inseam), ("outseam", half.front.side)):
            assert float(rows[f"{name} {half.side.value}"]) == pytest.approx(seam.length / 10, abs=0.051)
    assert float(rows["inseam right"]) > float(rows["inseam left"])


def test_a_girth_without_enough_ease_stands_out(plain: Jeans, monkeypatch: pytest.MonkeyPatch) -> None:
    tight = GirthLine("calf", 300, 360, Origin.MEASURED, 0, 355, 20)
    monkeypatch.setattr(summary, "girth_lines", lambda block: (tight,))
    row = cells(list(summary_lines(plain, Unit.CM, ()))[1])
    assert row == ["calf", "36.0", "-0.5", "35.5", "measured, SHORT"]


def test_warnings_and_findings_follow_in_the_files_unit(plain: Jeans) -> None:
    finding = Finding("length", Severity.WARNING, "calf", "The calf is short by {0}.", (25.4,))
    pattern = type(plain.pattern)("", "", "", plain.pattern.pieces, plain.pattern.seams, (finding,))
    jeans = replace(plain, pattern=pattern)
    problem = Problem("stature", "This is unusual.", Severity.WARNING, "2.1 m", line=9)
    assert list(summary_lines(jeans, Unit.INCH, (problem,)))[-2:] == [
        "warning: line 9: stature = 2.1 m: This is unusual.",
        "warning: calf: The calf is short by 1 in.",
    ]


@pytest.mark.parametrize("path", DEMO_FILES, ids=lambda path: path.stem)
@pytest.mark.parametrize("unit", Unit)
def test_no_line_is_longer_than_a_terminal_or_ends_in_a_space(path: Path, unit: Unit) -> None:
    for line in summary_lines(jeans_of(path), unit, ()):
        assert len(line) <= 80 and line == line.rstrip()


def made(jeans: Jeans, unit: Unit = Unit.CM) -> list[str]:
    """Return the lines on pieces, notions, trueing and cloth, whole."""
    lines = list(summary_lines(jeans, unit, ()))
    at = next(n for n, line in enumerate(lines) if " pieces: " in line)
    return "\n".join(lines[at:]).replace("\n  ", " ").splitlines()


def test_what_is_made_and_what_is_to_buy_stands_there_in_a_line_each(plain: Jeans) -> None:
    pieces, bought, trueing, *_ = made(plain)
    count, band = len(plain.pattern.pieces), plain.band_length / 10
    assert pieces == (
        f"{count} pieces: shaped waistband of {band:.1f} cm, worn 3.0 cm below the waist, left over right"
    )
    assert bought.startswith("to buy: 6 x rivet; jeans zip, closed end, ") and " x jeans button" not in bought
    assert trueing == (f"trueing: {len(plain.seams)} seams and {len(plain.corners)} joined corners, all meet")


def test_a_seam_that_fails_is_named(plain: Jeans) -> None:
    short = replace(plain.seams[0], passes=False)
    trueing = made(replace(plain, seams=(short, *plain.seams[1:])))[2]
    assert trueing.endswith(f"these do not meet: {short.name}")


def test_the_cloth_is_told_where_it_changes_the_draft(plain: Jeans) -> None:
    assert not any(line.startswith("cloth: ") for line in made(plain))
    shrinking = replace(plain, cloth=Cloth(lengthwise_change=-3, crosswise_change=-1.5))
    assert made(shrinking)[3] == "cloth: cut unwashed, drawn for -3 % lengthwise, -1.5 % crosswise"
    assert made(replace(plain, cloth=Cloth(stretch=20)))[3] == (
        "cloth: 20 % of stretch, 2.0% taken off the widths for it"
    )


def test_jeans_worn_at_or_above_the_waist_are_said_to_be(plain: Jeans) -> None:
    at, above = (replace(plain, style=replace(STRAIGHT, below_waist=mm)) for mm in (0, -20))
    assert "worn at the waist," in made(at)[0] and "worn 2.0 cm above the waist," in made(above)[0]


def test_a_long_message_goes_on_set_in_under_its_first_line() -> None:
    lines = wrapped("note: " + "crotch " * 30)
    assert len(lines) == 3 and all(line.startswith("  crotch") for line in lines[1:])
