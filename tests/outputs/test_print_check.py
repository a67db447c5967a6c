"""The sheet that tests a printer."""

import io
from pathlib import Path

import numpy as np
import pdfplumber
import pypdfium2
import pytest
from click.testing import CliRunner

from outputs.commands.main import main
from outputs.files.writers import content
from outputs.jobs.sheets import check_print
from outputs.paper.paper import Paper
from tests.outputs.reassembly import HOME, MM, bars


def printed(paper: Paper) -> bytes:
    (write,) = check_print(paper).files.values()
    return content(write)


@pytest.mark.slow
@pytest.mark.parametrize("paper", HOME.values(), ids=HOME)
def test_the_test_is_one_sheet_with_a_true_square_and_bars(paper: Paper):
    (page,) = pdfplumber.open(io.BytesIO(printed(paper))).pages
    assert (float(page.width) * MM, float(page.height) * MM) == pytest.approx((paper.width, paper.height))
    assert sorted(bars(page)) == pytest.approx([-101.6, -100, 100, 101.6], abs=0.01)
    assert any((r["width"] * MM, r["height"] * MM) == pytest.approx((50, 50), abs=0.01) for r in page.rects)
    text = " ".join(page.extract_text().split())
    assert f"Paper {paper.label}, one side" in text and 'check-print --printed-bar "97 mm"' in text


# Dead borders of home printers: 5 mm, and 1/4 in = 6.35 mm (makers' data sheets).
@pytest.mark.parametrize("border", [5.0, 6.35])
@pytest.mark.parametrize("paper", HOME.values(), ids=HOME)
def test_a_dead_border_takes_no_ink(paper: Paper, border: float):
    (page,) = pypdfium2.PdfDocument(printed(paper))
    image = np.asarray(page.render(scale=4 * MM, grayscale=True).to_pil())
    dead = round(border * 4)
    inner = image[dead:-dead, dead:-dead]
    assert (image < 255).sum() == (inner < 255).sum() > 1000


def test_the_same_paper_gives_the_same_bytes():
    assert printed(HOME["a4"]) == printed(HOME["a4"])


def test_the_command_writes_the_sheet_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.chdir(tmp_path)
    result = CliRunner().invoke(main, ["check-print", "--paper", "letter"])
    assert result.exit_code == 0 and "measure both 100 mm bars" in result.stdout
    assert Path("check-print-letter.pdf").read_bytes() == printed(HOME["letter"])
    again = CliRunner().invoke(main, ["check-print", "--paper", "letter"])
    assert again.exit_code == 2 and "already exists" in again.stderr


def test_the_command_says_what_to_change_and_writes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.chdir(tmp_path)
    result = CliRunner().invoke(main, ["check-print", "--printed-bar", "97 mm"])
    assert result.exit_code == 0
    said = " ".join(result.stdout.split())
    assert "set the scale in the print window to 103.1 %" in said  # 100 / 0.97
    assert "a hip girth of 100.0 cm as 97.0 cm" in said
    assert all(len(line) <= 80 for line in result.stdout.splitlines()) and not list(tmp_path.iterdir())
    wrong = CliRunner().invoke(main, ["check-print", "--printed-bar", "80 mm"])
    assert wrong.exit_code == 2 and wrong.stderr.startswith("--printed-bar = 80 mm: ")
