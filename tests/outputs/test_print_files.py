"""Which PDF files a draft writes: on rolls and sheets, some pieces, pieces apart, corrected ones."""

import re
from collections.abc import Callable
from pathlib import Path

import pdfplumber
import pypdfium2
import pytest
from click.testing import CliRunner, Result
from hypothesis import given
from hypothesis import strategies as st

from outputs.commands.main import main
from outputs.files.folder import write_folder
from outputs.jobs import draft as draft_files
from outputs.jobs.options import DraftOptions
from outputs.lines.draft import paper_lines
from outputs.paper.paper import PAPERS, Orientation, Roll
from outputs.paper.printer_scale import PrinterScale
from outputs.print.options import PrintOptions
from outputs.reading.measurements_file import read_measurements
from outputs.words.print_report import PrintReport
from styles.choice.style import STRAIGHT
from tests.outputs.typed_files import PLAIN

Run = Callable[..., Result]


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    monkeypatch.chdir(tmp_path)
    Path("ada.toml").write_text(PLAIN)
    for picture in ("write_block_picture", "write_ease_picture"):  # slow, and tested elsewhere
        monkeypatch.setattr(draft_files, picture, lambda *_, **__: PrintReport())

    def draft(*words: str) -> Result:
        return CliRunner().invoke(main, ["draft", "ada.toml", "--out", "out", *words])

    return draft


def pdfs() -> dict[str, int]:
    """Return the PDF files written, each with its number of pages."""
    return {path.name: len(pypdfium2.PdfDocument(path)) for path in Path("out").glob("*.pdf")}


def words_of(name: str) -> str:
    with pdfplumber.open(Path("out") / name) as pdf:
        return " ".join(" ".join(page.extract_text().split()) for page in pdf.pages)


@pytest.mark.slow
def test_a_roll_gives_one_page_and_notes_for_home(run: Run) -> None:
    result = run("--paper", "36 in")
    assert (result.exit_code, result.stderr) == (0, "")
    found = pdfs()
    assert found.pop("pattern-roll-36-in.pdf") == 1 and found.keys() == {"notes.pdf"}
    assert "pattern-roll-36-in.pdf: 1 page\n" in result.stdout
    notes = words_of("notes.pdf")
    assert "At the copy shop" in notes and "both 100 mm bars" in notes and "Denim: 1 front leg ×2" in notes


@pytest.mark.slow
def test_large_sheets_are_few_and_no_piece_lies_on_two_of_them(run: Run) -> None:
    run("--paper", "a0")
    found = pdfs()
    assert 1 <= found["pattern-a0.pdf"] <= 4
    assert "measure on every sheet" in words_of("notes.pdf")
    assert "Nothing to tape" in words_of("notes.pdf"), "no piece lies over a join"


@pytest.mark.slow
def test_only_the_pieces_asked_for_are_printed_and_all_sheets_say_how_many(run: Run) -> None:
    result = run("--only", "front leg, yoke")
    assert result.exit_code == 0 and "2 of 17 pieces printed: front leg, back yoke" in result.stdout
    assert pdfs().keys() == {"pattern-a4-part.pdf"}
    said = words_of("pattern-a4-part.pdf")
    assert "2 of 17 pieces" in said and "Denim: 1 front leg ×2, 3 back yoke ×2." in said
    assert "pocketing" not in said.partition("The pieces and their allowances")[2].partition("row A")[0]


def test_a_name_that_no_piece_has_is_refused_and_nothing_is_written(run: Run) -> None:
    result = run("--only", "front leg,sleeve")
    assert result.exit_code == 2 and not Path("out").exists()
    assert result.stderr.startswith(
        "--only = sleeve: No piece has this in its name. The pieces are: front leg, "
    )


def test_a_toile_is_legs_yokes_band_and_what_closes_the_pocket_opening(run: Run) -> None:
    result = run("--toile", "--paper", "36 in")
    (told,) = (line for line in result.stdout.replace("\n  ", " ").splitlines() if "pieces printed" in line)
    names = "front leg, back leg, back yoke, pocket facing, front waistband, back waistband"
    assert told == f"6 of 17 pieces printed: {names}"
    assert "pattern-roll-36-in-toile.pdf" in pdfs()


def test_pieces_apart_give_a_file_each_with_the_number_of_the_whole(run: Run) -> None:
    assert run("--apart", "--only", "yoke,watch pocket", "--paper", "letter").exit_code == 0
    assert pdfs().keys() == {"pattern-letter-part-3-back-yoke.pdf", "pattern-letter-part-7-watch-pocket.pdf"}
    assert "3. back yoke" in words_of("pattern-letter-part-3-back-yoke.pdf")


@pytest.mark.slow
def test_a_corrected_file_is_called_so(run: Run) -> None:
    assert (
        run("--printed-bar", "97 mm", "--printed-bar", "98 mm", "--paper", "24 in", "--toile").exit_code == 0
    )
    assert "pattern-roll-24-in-toile-corrected-97-98.pdf" in pdfs()
    assert "It is corrected for a printer that prints" in words_of("notes.pdf")


def test_how_much_paper_it_takes_is_told_before_anything_is_written(run: Run) -> None:
    printing = PrintOptions(paper=PAPERS["letter"], toile=True, orientation=Orientation.LANDSCAPE)
    read = read_measurements(Path("ada.toml"))
    drafted = draft_files.draft(read, STRAIGHT, DraftOptions(printing=printing))
    (told,) = paper_lines(drafted)
    assert not Path("out").exists()
    assert re.fullmatch(r"to print: \d+ sheets of US Letter in landscape and \d+ to read first", told)
    (name,) = drafted.sheets
    write_folder(Path("out"), {name: drafted.files[name]}, force=False)
    assert pdfs() == drafted.sheets == {"pattern-letter-toile.pdf": sum(map(int, re.findall(r"\d+", told)))}


@pytest.mark.slow
def test_sheets_lie_as_was_asked_and_else_as_fewest_are_needed(run: Run) -> None:
    ways = ("portrait", "landscape", "fewest")
    counted = [run("--count", "--only", "leg,yoke,bag", "--orientation", way).stdout for way in ways]
    lines = [dict(line.split(": ") for line in each.splitlines()) for each in counted]
    for paper in PAPERS:
        portrait, landscape, fewest = (each[paper] for each in lines)
        sheets = [int(said.split()[0]) for said in (portrait, landscape)]
        assert "landscape" in landscape and "landscape" not in portrait
        assert fewest == (landscape if sheets[1] < sheets[0] else portrait)


@pytest.mark.slow
def test_the_count_is_that_of_the_files_and_nothing_is_written(run: Run) -> None:
    counted = run("--count", "--paper", "420 mm", "--only", "leg,yoke")
    assert (counted.exit_code, counted.stderr) == (0, "") and not Path("out").exists()
    lines = dict(line.split(": ") for line in counted.stdout.splitlines())
    assert [*PAPERS, "single"] == [name for name in lines if not name.startswith("roll")]
    assert "roll 420 mm" in lines and lines["single"].startswith("1 page, ")
    run("--paper", "letter", "--only", "leg,yoke")
    pattern, notes = map(int, re.findall(r"\d+", lines["letter"]))
    assert pattern + notes == pdfs()["pattern-letter-part.pdf"]
    run("--paper", "420 mm", "--only", "leg,yoke", "--force")
    assert int(lines["roll 420 mm"].split()[0]) == pdfs()["pattern-roll-420-mm-part.pdf"]


def test_wrong_options_of_printing_and_of_the_jeans_are_told_together(run: Run) -> None:
    result = run("--paper", "a2", "--printed-bar", "80 mm", "--stretch", "200", "--only", "leg", "--toile")
    told = [line.partition(" ")[0] for line in result.stderr.splitlines()]
    assert result.exit_code == 2 and told == ["--stretch", "--paper", "--printed-bar", "--only"]


@pytest.mark.slow
def test_the_same_draft_gives_the_same_bytes(run: Run) -> None:
    def files() -> dict[str, bytes]:
        return {path.name: path.read_bytes() for path in Path("out").glob("*.pdf")}

    words = ("--paper", "36 in", "--printed-bar", "99", "--toile")
    run(*words)
    first = files()
    run(*words, "--force")
    assert files() == first and len(first) == 2


@given(st.floats(90, 105), st.floats(90, 105), st.sampled_from([*PAPERS.values(), Roll("roll 1.5 in", 300)]))
def test_file_names_are_plain_whatever_the_printer(across: float, up: float, paper) -> None:
    name = PrintOptions(paper=paper, scale=PrinterScale(across / 100, up / 100)).name
    assert name.replace("-", "").replace(".", "").isalnum() and len(name) < 60
