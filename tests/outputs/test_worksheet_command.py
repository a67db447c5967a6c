"""`worksheet` and `mark` as a person meets them."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pdfplumber
import pypdfium2
import pytest
from click.testing import CliRunner, Result

from outputs.commands import main as command
from outputs.commands import worksheet as worksheet_command
from outputs.lesson.sheet import SCALES
from tests.outputs.typed_files import PLAIN

Run = Callable[..., Result]


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "ada.toml").write_text(PLAIN, encoding="utf-8")
    return lambda *words: CliRunner().invoke(command.main, [str(word) for word in words])


def test_offered_scales_are_those_that_can_be_drawn() -> None:
    assert set(worksheet_command.SCALE_NAMES) == set(SCALES)


@pytest.mark.slow
def test_a_worksheet_is_named_after_the_wearer_and_says_how_many_sheets(run: Run) -> None:
    result = run("worksheet", "ada.toml", "--paper", "letter")
    assert (result.exit_code, result.stderr) == (0, "")
    with pypdfium2.PdfDocument("ada-example-worksheet.pdf") as document:
        assert result.stdout == f"ada-example-worksheet.pdf: {len(document)} sheets\n"
        assert document.get_page_size(0) == pytest.approx((11 * 72, 8.5 * 72))


def test_nothing_is_overwritten_unasked(run: Run) -> None:
    Path("ada-example-marking.pdf").write_text("mine")
    result = run("worksheet", "ada.toml", "--marking")
    assert result.exit_code == 2 and "Give --force to replace it" in result.stderr
    assert Path("ada-example-marking.pdf").read_text() == "mine"
    assert run("worksheet", "ada.toml", "--marking", "--force").exit_code == 0


def test_answers_and_room_for_answers_are_not_given_on_one_sheet(run: Run) -> None:
    result = run("worksheet", "ada.toml", "--blank", "--marking")
    assert result.exit_code == 2 and "one of --blank and --marking" in result.stderr


def test_the_marking_sheet_has_twenty_right_lengths(run: Run) -> None:
    assert run("worksheet", "ada.toml", "--marking").exit_code == 0
    with pdfplumber.open("ada-example-marking.pdf") as document:
        [table] = [table for page in document.pages for table in page.extract_tables()]
    rows = {row[1]: row for row in table[1:]}
    assert len(rows) == 20
    # hip 98 with 3 of ease: 101 / 4 - 0.5 = 24.75; a long trunk's fork is the least usual, near 98 / 16 - 1
    assert rows["front hip at the side"][3:6] == ["24.8", "24.75", "0.3"]
    assert rows["front fork level"][3] == "5.1"


def test_a_form_filled_in_with_a_slip_names_the_step_and_the_slip(run: Run) -> None:
    assert run("mark", "ada.toml", "ben.toml", "--form").exit_code == 0
    text = Path("ben.toml").read_text(encoding="utf-8")
    [hip] = [line for line in text.splitlines() if "front hip at the side" in line]
    [crease] = [line for line in text.splitlines() if "front crease," in line]
    # the hip without its ease, 98 / 4 - 0.5, and the crease right by that hip: (24.0 - 5.1) / 2 = 9.45
    text = text.replace(hip, hip.replace('""', '"24,0"')).replace(crease, crease.replace('""', "9.45"))
    Path("ben.toml").write_text(text, encoding="utf-8")
    result = run("mark", "ada.toml", "ben.toml")
    assert result.exit_code == 0
    said = " ".join(result.stdout.split())
    assert "0 of 2 lengths are right, for a draft at 1:4" in said
    number = hip.split()[0]
    assert (
        f"First mistake: step {number}, front hip at the side, 6–{number}: 24.0 cm instead of 24.8 cm" in said
    )
    assert "it is what comes out with “hip ease” left out" in said
    assert "= (98 + 3) ÷ 4 − 0.5 = 24.8 cm" in said
    assert f"it follows from step {number}" in said


def test_lengths_in_a_csv_file_may_have_units_of_their_own(run: Run) -> None:
    Path("ben.csv").write_text('step;length\n10;"9 3/4 in"\n13\t5,1\n', encoding="utf-8")
    assert "2 of 2 lengths are right" in run("mark", "ada.toml", "ben.csv").stdout


def test_every_mistake_in_the_lengths_is_told_at_once(run: Run) -> None:
    Path("ben.csv").write_text("999,3\n10,x\n11,19\n11,19\nnonsense\n13,900\n", encoding="utf-8")
    result = run("mark", "ada.toml", "ben.csv")
    assert (result.exit_code, result.stdout) == (2, "")
    lines = result.stderr.splitlines()
    assert [line.split(": ")[1] for line in lines] == [f"line {n}" for n in (1, 2, 4, 5, 6)]
    assert "No step of this draft has this number. Plausible: 1 to " in lines[0]
    assert "cannot be read" in lines[1] and "given twice" in lines[2]
    assert '"13, 6.9"' in lines[3] and "nearly so long" in lines[4]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "No length is filled in."),
        ('unit = "yd"\n[lengths]\n13 = 5\n', "unit = yd: This is no unit. Plausible: mm or cm or in."),
        ("[lengths]\n13 = 5,1\n", 'A decimal comma needs quotes, "5,1"'),
        ("13 = 5\n", "Only unit, and step numbers below the line [lengths]"),
        ("lengths = 3\n", "This should be a line [lengths]"),
        ("[lengths]\n13 = true\n", "cannot be read"),
    ],
)
def test_a_form_that_cannot_be_read_says_why(run: Run, text: str, said: str) -> None:
    Path("ben.toml").write_text(text, encoding="utf-8")
    result = run("mark", "ada.toml", "ben.toml")
    assert result.exit_code == 2 and result.stderr.startswith("ben.toml: ")
    assert said in result.stderr


def test_a_missing_lengths_file_is_refused_in_one_line(run: Run) -> None:
    result = run("mark", "ada.toml", "none.toml")
    assert result.exit_code == 2 and result.stderr == "none.toml: There is no such file.\n"
