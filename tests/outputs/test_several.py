"""Several styles in one run: the same as each alone, what they share, and what is refused."""

import re
from collections.abc import Iterable, Sequence
from pathlib import Path
from types import SimpleNamespace

import pdfplumber
import pytest
import shapely
from click.testing import CliRunner, Result
from shapely.affinity import translate

from drafting.pieces.allowance import cut_line
from drafting.pieces.kinds import PieceId
from drafting.pieces.pieces import Piece
from drafting.pieces.words import piece_name
from outputs.canvas.canvas import Recording
from outputs.canvas.typeface import Typeface
from outputs.commands import main as command
from outputs.compare.comparison import Compared, compare
from outputs.demo import AVERAGE
from outputs.packing.layout import standing
from outputs.print.piece_drawing import draw_piece
from outputs.reading.jeans_from_file import jeans_from
from outputs.reading.measurements_file import read_measurements
from outputs.reading.style_file import find_styles
from outputs.reading.style_options import StyleOptions
from outputs.words.print_report import PrintReport
from styles.choice.catalogue import catalogue_names
from styles.choice.style import Style
from tests.outputs import samples
from tests.outputs.typed_files import PLAIN
from tests.printed import called

POCKET = 'name = "big pocket"\nlike = "straight"\n[back_pocket]\npoint = "4 cm"\n'
"""Straight, but for the point of the back pocket, which hangs 2 cm lower."""
NAMES = ("straight", "flare", "big-pocket")


def run(*words: object) -> Result:
    return CliRunner().invoke(command.main, [str(word) for word in words])


def asked(*names: str) -> list[str]:
    return [word for name in names for word in ("--style", name)]


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "ada.toml").write_text(PLAIN)
    (tmp_path / "big.toml").write_text(POCKET)
    return tmp_path


@pytest.fixture
def quick(here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Leave numbers and pictures of the single styles away."""
    monkeypatch.setattr("outputs.jobs.draft._figures_text", lambda _: "")
    for picture in ("write_block_picture", "write_ease_picture"):
        monkeypatch.setattr(f"outputs.jobs.draft.{picture}", lambda *_, **__: PrintReport())


@pytest.fixture(scope="module")
def home(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with three styles of one run in "all", and one of them alone in "flare"."""
    folder = tmp_path_factory.mktemp("several")
    own = folder / "big.toml"
    own.write_text(POCKET)
    result = run("draft", AVERAGE, *asked("straight", "flare", str(own)), "--out", folder / "all")
    assert (result.exit_code, result.stderr) == (0, "")
    (folder / "said.txt").write_text(result.stdout, encoding="utf-8")
    assert run("draft", AVERAGE, "--style", "flare", "--out", folder / "flare").exit_code == 0
    return folder


@pytest.fixture(scope="module")
def said(home: Path) -> str:
    return (home / "said.txt").read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def several(home: Path) -> tuple[Compared, ...]:
    read = read_measurements(AVERAGE)
    styles = find_styles(["straight", "flare", str(home / "big.toml")])
    return compare([jeans_from(read, style, StyleOptions()) for style in styles])


# --- the same as alone


@pytest.mark.slow
def test_every_file_of_a_style_is_that_of_a_run_for_it_alone(home: Path) -> None:
    alone = {path.name: path.read_bytes() for path in (home / "flare").iterdir()}
    among = {path.name.removeprefix("flare-"): path.read_bytes() for path in (home / "all").glob("flare-*")}
    assert alone.keys() == {"pattern-a4.pdf", "figures.json", "inputs.json", "block.png", "ease.png"}
    assert among == alone


@pytest.mark.slow
def test_a_folder_has_the_files_of_each_style_and_the_comparison(home: Path, said: str) -> None:
    each = ("pattern-a4.pdf", "figures.json", "inputs.json", "block.png", "ease.png")
    files = {f"{name}-{file}" for name in NAMES for file in each} | {"comparison.pdf", "comparison.png"}
    assert {path.name for path in (home / "all").iterdir()} == files
    assert all(str(home / "all" / file) in said for file in files)
    assert f"{home / 'all' / 'comparison.pdf'}: 1 page" in said
    assert all(len(line) <= 80 for line in said.splitlines() if not line.startswith(str(home)))


@pytest.fixture
def drafted(here: Path, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Draft nothing; the styles that were asked for and the folder end up here."""
    found: list[str] = []

    def draft(_: object, styles: Sequence[Style], *__: object, **___: object) -> SimpleNamespace:
        found.extend(style.name for style in styles)
        return SimpleNamespace(drafted=(), files={})

    def write(target: Path, *_: object, **__: object) -> None:
        found.append(str(target))

    monkeypatch.setattr("outputs.jobs.several_styles.draft_several", draft)
    monkeypatch.setattr(command, "write_folder", write)
    monkeypatch.setattr("outputs.lines.several_styles.several_lines", lambda *_: ())
    return found


def test_the_folder_is_named_after_the_wearer_and_a_style_is_drafted_once(drafted: list[str]) -> None:
    assert run("draft", "ada.toml", *asked("straight", "skinny", "straight")).exit_code == 0
    assert drafted == ["straight", "skinny", "ada-example-styles"]
    Path("ada-example-styles").mkdir()
    result = run("draft", "ada.toml", *asked("straight", "skinny"))
    assert result.exit_code == 2 and "ada-example-styles: This already exists" in result.stderr


def test_all_styles_are_those_of_the_catalogue_and_those_named_besides(drafted: list[str]) -> None:
    assert run("draft", "ada.toml", "--all-styles", *asked("big.toml", "slim")).exit_code == 0
    assert drafted == [*catalogue_names(), "big pocket", "ada-example-styles"]


# --- shared pieces


def names(pieces: Iterable[PieceId]) -> set[str]:
    return set(map(piece_name, pieces))


def shape(piece: Piece) -> shapely.Polygon:
    polygon = cut_line(piece).polygon
    return translate(polygon, -polygon.centroid.x, -polygon.centroid.y)


def drawn_words(compared: Compared, name: str) -> str:
    """Return what is printed on a piece, less its number and the style's name."""
    pattern = compared.jeans.pattern
    (placed,) = (each for each in standing(pattern) if each.piece.name == name)
    page = Recording(Typeface())
    draw_piece(page, placed, pattern)
    words = " ".join(text.string for text in page.texts).replace(f"{compared.style}, scale", "scale")
    return re.sub(r"\b\d+\. ", "", words)


@pytest.mark.slow
def test_the_pieces_said_to_be_shared_print_alike(several: tuple[Compared, ...]) -> None:
    """Cut lines are compared by shapely, words as they are drawn; every place may be 0.1 mm off."""
    named = {compared.style: compared for compared in several}
    for compared in several:
        for name, style in zip(map(piece_name, compared.shared), compared.shared.values(), strict=True):
            pieces = [called(each.jeans.pattern, name) for each in (compared, named[style])]
            assert shapely.hausdorff_distance(*map(shape, pieces)) < 0.2
            if name in ("belt loops", "back yoke", "watch pocket"):
                assert drawn_words(compared, name) == drawn_words(named[style], name)


@pytest.mark.slow
def test_only_what_a_style_changes_is_not_shared(several: tuple[Compared, ...]) -> None:
    """A lower point moves the pocket's marks on the back leg, too."""
    straight, flare, big = several
    assert not straight.shared and set(big.shared.values()) == {"straight"}
    assert {piece.name for piece in big.jeans.pattern.pieces} - names(big.shared) == {
        "back leg",
        "back pocket",
    }
    assert not {"front leg", "back leg"} & names(flare.shared) and "belt loops" in names(flare.shared)


@pytest.mark.slow
def test_a_shared_piece_is_named_on_the_terminal_and_on_the_sheet(home: Path, said: str) -> None:
    words = "big pocket: all pieces but back leg, back pocket: the same as straight"
    assert words in " ".join(said.split())
    with pdfplumber.open(home / "all" / "comparison.pdf") as document:
        assert words in " ".join(document.pages[0].crop((390, 60, 595, 800)).extract_text().split())


@pytest.mark.slow
def test_shared_pieces_can_be_printed_once(here: Path, quick: None) -> None:
    """A piece is a group of the SVG whose name tells its number."""
    words = ("--shared-once", "--format", "svg", "--format", "pdf", "--out", "out")
    assert run("draft", "ada.toml", *asked("straight", "big.toml"), *words).exit_code == 0

    def pieces(name: str) -> set[str]:
        text = Path(f"out/{name}-pattern.svg").read_text(encoding="utf-8")
        names = re.findall(r'<g id="piece-(\d+-[a-z-]+)">', text)
        return {name for name in names if not name.endswith(("-line", "-grain", "-text"))}

    assert pieces("big-pocket") < pieces("straight")
    assert {name.partition("-")[2] for name in pieces("big-pocket")} == {"back-leg", "back-pocket"}
    with pdfplumber.open("out/big-pocket-pattern-a4.pdf") as document:
        notes = " ".join(document.pages[1].extract_text().split())
        assert len(document.pages) < 16
    assert "Printed with another style" in notes and "all pieces but back leg, back pocket" in notes


@pytest.mark.slow
def test_chosen_pieces_are_printed_of_every_style_and_sheets_are_counted_for_each(
    here: Path, quick: None
) -> None:
    words = (
        "draft",
        "ada.toml",
        *asked("straight", "slim"),
        "--only",
        "yoke",
        "--format",
        "svg",
        "--out",
        "out",
    )
    assert run(*words).exit_code == 0
    for style in ("straight", "slim"):
        text = Path(f"out/{style}-pattern-part.svg").read_text(encoding="utf-8")
        assert "3. back yoke" in text and "front leg" not in text
    counted = run("draft", "ada.toml", *asked("straight", "slim"), "--only", "yoke", "--count").stdout
    assert [line for line in counted.splitlines() if line.startswith("===")] == ["=== straight", "=== slim"]
    result = run("draft", "ada.toml", *asked("straight", "slim"), "--only", "sleeve", "--out", "none")
    assert result.exit_code == 2 and not Path("none").exists()


@pytest.mark.slow
def test_a_style_without_a_piece_of_its_own_gets_no_pattern_and_is_told_so(here: Path, quick: None) -> None:
    Path("twin.toml").write_text('name = "twin {0}"\nlike = "straight"\n')
    words = ("--shared-once", "--out", "out", "--format", "dxf")
    result = run("draft", "ada.toml", *asked("straight", "twin.toml"), *words)
    assert "twin {0}: all pieces: the same as straight" in result.stdout
    assert "twin {0}: no pattern of its own is written" in result.stdout
    assert [path.name for path in Path("out").glob("*-pattern*")] == ["straight-pattern.dxf"]


# --- refusals


def test_one_wrong_file_among_three_refuses_all_with_a_message_each(here: Path) -> None:
    Path("bad.toml").write_text('like = "slim"\nrise = "sky"\n[leg]\nknee_of_hip = "4 %"\n')
    result = run("draft", "ada.toml", *asked("straight", "bad.toml", "bigg"), "--stretch", "300")
    assert (result.exit_code, result.stdout) == (2, "")
    starts = (
        "--stretch = 300",
        "bad.toml: line 2: rise = sky",
        "bad.toml: line 4: leg.knee_of_hip = 4 %",
        "--style = bigg: There is no style of this name",
    )
    for line, start in zip(result.stderr.splitlines(), starts, strict=True):
        assert line.startswith(start)
    assert {path.name for path in here.iterdir()} == {"ada.toml", "big.toml", "bad.toml"}


def test_faults_of_all_styles_are_told_together_with_the_style(
    here: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    samples.break_a_seam(monkeypatch)
    result = run("draft", "ada.toml", *asked("straight", "skinny"))
    lines = result.stderr.splitlines()
    assert result.exit_code == 2 and not Path("ada-example-styles").exists()
    assert lines[:2] == [
        f"style {name}: inseam: Front and back differ by 4.0 cm." for name in ("straight", "skinny")
    ]
    assert len(lines) == 3 and "--anyway" in lines[2]


def test_a_setting_that_fights_with_a_style_is_told_with_the_style(here: Path) -> None:
    """Shorts end above the knee already."""
    result = run("draft", "ada.toml", *asked("straight", "shorts"), "--set", "leg.hem_below_knee=50 %")
    assert result.exit_code == 2 and not Path("ada-example-styles").exists()
    assert result.stderr.startswith("style shorts: --set leg.hem_below_knee = 50 %: The hem cannot lie both")
    assert result.stderr.count("\n") == 1


def test_two_styles_of_one_name_are_refused(here: Path) -> None:
    Path("big.toml").write_text('name = "Straight"\nlike = "slim"\n')
    result = run("draft", "ada.toml", *asked("straight", "big.toml"))
    assert result.exit_code == 2
    assert result.stderr.startswith("--style = straight: Several styles have this name")


def test_more_styles_than_can_be_told_apart_are_refused(here: Path) -> None:
    names = [f"own{number}.toml" for number in range(13)]
    for name in names:
        Path(name).write_text('like = "straight"\n')
    result = run("draft", "ada.toml", *asked(*names))
    assert result.exit_code == 2 and "--style = 13: " in result.stderr and "up to 12" in result.stderr


@pytest.mark.slow
def test_when_a_writer_fails_nothing_is_written(
    here: Path, quick: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object, **__: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("outputs.compare.comparison_sheet.write_picture", full)
    result = run("draft", "ada.toml", *asked("straight", "skinny"), "--format", "dxf")
    assert result.exit_code == 2 and "no space left on device" in result.stderr
    assert {path.name for path in here.iterdir()} == {"ada.toml", "big.toml"}
