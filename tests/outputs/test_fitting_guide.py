"""The fitting guide: every sign leads to an entry that the draft knows, in words and on paper."""

from __future__ import annotations

import io
from pathlib import Path

import pdfplumber
import pytest
from click.testing import CliRunner

from drafting.base.units import Unit, parse_length
from drafting.body.corrections import CORRECTIONS
from outputs.commands.main import main
from outputs.commands.measuring import MEASURING_SHEETS
from outputs.fit.fitting_guide_sheet import write_fitting_guide
from outputs.fit.fitting_signs import SIGNS, Sign
from outputs.lines.fitting_guide import guide_lines
from outputs.paper.paper import MARGIN, PAPERS

MM = 72 / 25.4


@pytest.mark.parametrize("sign", SIGNS, ids=lambda sign: sign.first)
def test_every_sign_leads_to_corrections_within_their_usual_amounts_and_has_a_source(sign: Sign) -> None:
    first = CORRECTIONS[sign.first]
    assert first.usual.holds(sign.amount.low) and first.usual.holds(sign.amount.high)
    assert set(sign.then) < set(CORRECTIONS) and sign.first not in sign.then
    # What is tried next must not be the opposite of what was tried first.
    assert all(CORRECTIONS[key].change != first.change for key in sign.then)
    assert sign.seen and sign.means and sign.source


def test_every_correction_is_reached_from_some_sign() -> None:
    assert set(CORRECTIONS) == {key for sign in SIGNS for key in (sign.first, *sign.then)}


def test_whiskers_smiles_frowns_pooling_folds_and_gaping_are_in_the_guide() -> None:
    text = " ".join(sign.seen for sign in SIGNS).lower()
    for word in ("whiskers", "smile", "frown", "pooling", "fold", "stands off at the back", "rise", "fall"):
        assert word in text


@pytest.mark.parametrize("unit", Unit)
def test_the_guide_speaks_the_asked_unit_in_80_letters_a_line(unit: Unit) -> None:
    lines = list(guide_lines(unit))
    assert max(map(len, lines)) <= 80
    tries = [line.split('"')[1] for line in lines if line.startswith("    Try:")]
    for sign, typed in zip(SIGNS, tries, strict=True):
        step = 0.8 if unit is Unit.INCH else 0.5
        assert parse_length(typed, None) == pytest.approx(sign.amount.low, abs=step)


def test_the_guide_is_shown_and_writes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    shown = CliRunner().invoke(main, ["fitting-guide"])
    assert shown.exit_code == 0 and "Whiskers" in shown.output and list(tmp_path.iterdir()) == []


def test_the_pdf_is_not_written_over_another(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    first = CliRunner().invoke(main, ["fitting-guide", "--pdf"])
    assert first.exit_code == 0 and first.output.startswith("fitting-guide.pdf: ")
    page = io.BytesIO()
    write_fitting_guide(page, paper=PAPERS["a4"], unit=Unit.CM)
    assert Path("fitting-guide.pdf").read_bytes() == page.getvalue(), "the same words, the same bytes"
    again = CliRunner().invoke(main, ["fitting-guide", "--pdf"])
    assert again.exit_code == 2 and "--force" in again.output


@pytest.mark.slow
@pytest.mark.parametrize("paper", MEASURING_SHEETS)
def test_on_paper_every_sign_stands_whole_inside_the_margins(paper: str) -> None:
    written = io.BytesIO()
    sheets = write_fitting_guide(written, paper=PAPERS[paper], unit=Unit.CM).sheets
    pages = pdfplumber.open(written).pages
    assert len(pages) == sheets
    columns = []
    for page in pages:
        border = MARGIN * MM - 0.01
        for letter in page.chars:
            assert letter["x0"] >= border and letter["x1"] <= page.width - border
            assert letter["top"] >= border and letter["bottom"] <= page.height - border
        half = page.width / 2
        columns += [page.crop(box).extract_text() for box in
                    ((0, 0, half, page.height), (half, 0, page.width, page.height))]  # fmt: skip
    text = " ".join(" ".join(columns).split())
    for sign in SIGNS:
        assert sign.seen in text
    for key in CORRECTIONS:
        assert key in text
