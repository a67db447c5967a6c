"""The sheet that compares drafting systems, read back from its PDF."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pdfplumber
import pytest
from click.testing import CliRunner, Result

from drafting import Measurements, draft_block
from drafting.lesson.compared import compared
from drafting.lesson.published import QUANTITIES
from outputs.commands import main as command
from outputs.demo import DEMO_FILES
from tests.outputs.typed_files import PLAIN

Run = Callable[..., Result]
MM = 72 / 25.4


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "ada.toml").write_text(PLAIN, encoding="utf-8")
    return lambda *words: CliRunner().invoke(command.main, [str(word) for word in words])


@pytest.mark.slow
def test_the_sheet_tabulates_every_system_as_it_is_drafted(run: Run) -> None:
    result = run("systems", "ada.toml")
    assert (result.exit_code, result.stderr) == (0, "")
    assert result.stdout == "ada-example-systems.pdf: 1 sheet\n"
    with pdfplumber.open("ada-example-systems.pdf") as document:
        [page] = document.pages
        [table] = page.extract_tables()
        text, patterns = page.extract_text(), {str(line["dash"]) for line in page.lines}
    body = Measurements(waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=270)
    drafts = compared(draft_block(body, fitted=False))
    assert [row[0].replace("\n", " ") for row in table[1:]] == list(QUANTITIES)
    for row in table[1:]:
        for cell, draft in zip(row[1:], drafts, strict=False):
            length = draft.amounts.get(row[0].replace("\n", " "))
            if length is None:
                assert cell == "–"
            else:
                assert float(cell.partition(":")[0]) * 10 == pytest.approx(length.mm, abs=0.51)
    [fork] = [row for row in table if row[0] == "front fork"]
    assert fork[2].replace("\n", " ") == "6.6: hip girth ÷ 16 + 0.5"
    # half hip 49: 4.9 is the least, hip / 12 = 8.2 the most
    assert fork[-1] == "3.3"
    assert "not for cutting" in text and "Rosenfeld, The Practical Designer, 1918" in text
    assert len(patterns) >= 5  # told apart without colour


@pytest.mark.slow
@pytest.mark.parametrize("source", DEMO_FILES, ids=[path.stem for path in DEMO_FILES])
def test_every_demo_wearer_fits_one_sheet(run: Run, source: Path) -> None:
    assert run("systems", source, "--paper", "either", "--out", "s.pdf").stdout == "s.pdf: 1 sheet\n"


@pytest.mark.slow
def test_the_same_measurements_give_the_same_bytes(run: Run) -> None:
    for name in ("one.pdf", "two.pdf"):
        run("systems", "ada.toml", "--out", name)
    assert Path("one.pdf").read_bytes() == Path("two.pdf").read_bytes()


def test_nothing_is_overwritten_unasked(run: Run) -> None:
    Path("s.pdf").write_text("mine")
    result = run("systems", "ada.toml", "--out", "s.pdf")
    assert result.exit_code == 2 and Path("s.pdf").read_text() == "mine"
