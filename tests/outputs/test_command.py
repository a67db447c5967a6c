"""The command line as a person meets it: what it prints, what it writes, how it refuses."""

import errno
import json
import math
import os
import shlex
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import chdir
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Any

import click
import pypdfium2
import pytest
from click.testing import CliRunner, Result
from hypothesis import HealthCheck, given
from hypothesis import strategies as st

from outputs.commands import main as command
from outputs.demo import DEMO_FILES
from outputs.jobs import draft as draft_files
from outputs.jobs.options import FORMATS
from outputs.paper.paper import PAPERS
from styles.choice.catalogue import catalogue_names
from tests.outputs import samples
from tests.outputs.typed_files import FULL, PLAIN
from tests.strategies import examples

ROOT = Path(__file__).parents[2]
Run = Callable[..., Result]
FILES = {"block.png", "ease.png", "figures.json", "inputs.json", "pattern-a4.pdf"}


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    monkeypatch.chdir(tmp_path)
    return lambda *words: CliRunner().invoke(command.main, [str(word) for word in words])


@pytest.fixture
def ada(tmp_path: Path) -> Path:
    (tmp_path / "ada.toml").write_text(PLAIN)
    return Path("ada.toml")


@pytest.fixture(scope="module")
def usual(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Result]:
    """A draft with no options, made once for all tests: the folder it was made in, and what was said."""
    home = tmp_path_factory.mktemp("usual")
    (home / "ada.toml").write_text(PLAIN)
    with chdir(home):
        return home, CliRunner().invoke(command.main, ["draft", "ada.toml"])


@pytest.fixture
def drafted(usual: tuple[Path, Result], ada: Path) -> Path:
    """The same as if it had been made here."""
    shutil.copytree(usual[0] / "ada-example-straight", "ada-example-straight")
    return Path("ada-example-straight")


def fresh(*words: str, folder: Path, **options: Any) -> subprocess.CompletedProcess[str]:
    """Run Python anew, as the console command does."""
    return subprocess.run(
        [sys.executable, *words],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT), "PYTHONIOENCODING": "utf-8"},
        capture_output=True,
        encoding="utf-8",
        **options,
    )


def everything(folder: Path) -> dict[str, bytes]:
    return {str(p.relative_to(folder)): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


def page_count(path: Path) -> int:
    with pypdfium2.PdfDocument(path) as document:
        return len(document)


# --- measure


def test_measure_writes_a_file_named_after_the_wearer_and_says_what_to_do_next(run: Run) -> None:
    result = run("measure", "Ada Field", "--unit", "in")
    assert (result.exit_code, result.stderr) == (0, "")
    assert result.stdout == 'Fill in ada-field.toml, then run: jeansblock draft "ada-field.toml"\n'
    text = Path("ada-field.toml").read_text(encoding="utf-8")
    assert 'wearer = "Ada Field"' in text and 'unit = "in"' in text


def test_measure_refuses_to_overwrite(run: Run) -> None:
    Path("ada.toml").write_text("mine")
    result = run("measure", "Ada")
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr == (
        "ada.toml: This already exists; nothing was changed. "
        "Give --force to replace it, or --out for another place.\n"
    )
    assert Path("ada.toml").read_text() == "mine"
    assert run("measure", "Ada", "--force").exit_code == 0
    assert 'wearer = "Ada"' in Path("ada.toml").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", ["../../escape", "a/b\\c", "🙂", "CON", ".hidden", "x" * 80])
def test_measure_writes_in_this_folder_whatever_the_name(run: Run, tmp_path: Path, name: str) -> None:
    assert run("measure", name).exit_code == 0
    (written,) = tmp_path.iterdir()
    assert written.suffix == ".toml" and written.stem.lower() != "con"


@pytest.mark.parametrize("name", ["", "  ", "two\nlines", "x" * 10_000, "\x1b[31mred"])
def test_measure_refuses_a_name_that_cannot_be_printed(run: Run, tmp_path: Path, name: str) -> None:
    result = run("measure", name)
    assert result.exit_code == 2 and result.stderr.startswith("wearer = ") and len(result.stderr) < 200
    assert not list(tmp_path.iterdir())


# --- draft: refusals


def test_an_untouched_measurements_file_is_told_what_is_missing(run: Run, tmp_path: Path) -> None:
    run("measure", "Ada")
    result = run("draft", "ada.toml")
    assert (result.exit_code, result.stdout) == (2, "")
    lines = result.stderr.splitlines()
    assert len(lines) == 4 and all(line.startswith("ada.toml: line ") for line in lines)
    assert "The waist girth is needed for a draft." in lines[0]
    assert [path.name for path in tmp_path.iterdir()] == ["ada.toml"]


def test_every_mistake_in_a_file_is_told_at_once_with_line_and_value(run: Run, tmp_path: Path) -> None:
    slips = PLAIN.replace("hip_girth = 98", "hip_girt = 98").replace(
        "leg_height = 78", 'leg_height = "371/2"'
    )
    (tmp_path / "ada.toml").write_text(slips)
    result = run("draft", "ada.toml")
    assert result.exit_code == 2 and not Path("ada-example-straight").exists()
    assert 'line 7: hip_girt = 98: No measurement has this name. Did you mean "hip_girth"?' in result.stderr
    assert 'line 8: inside_leg_height = "371/2"' in result.stderr


@pytest.mark.parametrize("name", ["missing.toml", ".", "no/such/file.toml"])
def test_a_file_that_is_none_is_refused_in_one_line(run: Run, name: str) -> None:
    result = run("draft", name)
    assert result.exit_code == 2 and result.stderr.count("\n") == 1 and result.stderr.startswith(f"{name}: ")


def test_a_mistyped_option_is_refused_with_a_hint(run: Run, ada: Path) -> None:
    result = run("draft", ada, "--papper", "a4")
    assert result.exit_code == 2 and "Did you mean" in result.stderr and "--paper" in result.stderr
    result = run("draft", ada, "--paper", "foolscap")
    assert result.exit_code == 2 and "No paper has this name. Papers are a4, letter, " in result.stderr
    result = run("draft", ada, "--format", "pfd")
    assert result.exit_code == 2 and 'Did you mean "pdf"?' in result.stderr


@pytest.mark.slow
def test_a_faulty_pattern_is_written_only_when_asked_for(
    run: Run, ada: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    samples.break_a_seam(monkeypatch)
    result = run("draft", ada)
    assert result.exit_code == 2 and not Path("ada-example-straight").exists()
    assert result.stderr.splitlines()[0] == "inseam: Front and back differ by 4.0 cm."
    assert "--anyway" in result.stderr
    result = run("draft", ada, "--anyway")
    assert result.exit_code == 0 and "fault: inseam: Front and back differ by 4.0 cm." in result.stdout
    assert {path.name for path in Path("ada-example-straight").iterdir()} == FILES
    cover = pypdfium2.PdfDocument("ada-example-straight/pattern-a4.pdf")[0].get_textpage().get_text_range()
    assert "FAULTY: do not cut from this pattern" in cover and "(inseam)" in cover


@pytest.mark.parametrize(
    ("option", "value", "told"),
    [
        ("below-waist", "30 cm", "No jeans are made like that: how far below the waist the jeans sit"),
        ("below-waist", "3", "no unit is stated"),
        ("below-waist", "low", "The length cannot be read"),
        ("lengthwise-change", "-30", "Plausible: between -20 %"),
        ("crosswise-change", "nan", "A percentage is written like"),
        ("stretch", "-5", "Plausible: between 0 % and 100 %"),
        ("stretch", "a\nb", "--stretch = a b: A percentage is written like"),
    ],
)
def test_an_option_that_cannot_be_meant_is_refused_with_what_is_plausible(
    run: Run, ada: Path, option: str, value: str, told: str
) -> None:
    result = run("draft", ada, f"--{option}", value)
    assert (result.exit_code, result.stdout) == (2, "") and result.stderr.count("\n") == 1
    assert result.stderr.startswith(f"--{option} = ") and told in result.stderr
    assert "Plausible: " in result.stderr and os.listdir() == ["ada.toml"]


def test_all_wrong_options_are_told_at_once(run: Run, ada: Path) -> None:
    result = run("draft", ada, "--below-waist", "1 m", "--stretch", "200", "--crosswise-change", "50")
    lines = result.stderr.splitlines()
    assert result.exit_code == 2
    assert [line.partition(" ")[0] for line in lines] == ["--below-waist", "--crosswise-change", "--stretch"]


# --- draft: what is written


def test_draft_writes_pattern_numbers_and_pictures_and_says_where(
    run: Run, drafted: Path, usual: tuple[Path, Result]
) -> None:
    folder, result = drafted, usual[1]
    assert (result.exit_code, result.stderr) == (0, "")
    assert {path.name for path in folder.iterdir()} == FILES
    pages = page_count(folder / "pattern-a4.pdf")
    assert result.stdout.splitlines()[-6:] == [
        f"{folder / 'pattern-a4.pdf'}: {pages} sheets",
        str(folder / "figures.json"),
        str(folder / "inputs.json"),
        str(folder / "block.png"),
        str(folder / "ease.png"),
        "Print sheet 1 alone at 100 % and measure its bars before you print the rest.",
    ]
    assert (folder / "block.png").read_bytes().startswith(b"\x89PNG")


@pytest.mark.slow
@pytest.mark.parametrize("paper", [*PAPERS, "single"])
def test_every_paper_that_can_be_typed_can_be_printed(run: Run, ada: Path, paper: str) -> None:
    result = run("draft", ada, "--paper", paper, "--out", "out")
    assert result.exit_code == 0
    pages = page_count(Path("out") / f"pattern-{paper}.pdf")
    assert pages == 1 if paper == "single" else pages > 1
    assert f"pattern-{paper}.pdf: {pages} {'page' if pages == 1 else 'sheets'}" in result.stdout


@pytest.mark.slow
def test_a_pattern_is_written_in_the_formats_asked_for_and_each_once(run: Run, ada: Path) -> None:
    result = run("draft", ada, "--format", "svg", "--format", "dxf", "--format", "svg")
    assert (result.exit_code, result.stderr) == (0, "")
    folder = Path("ada-example-straight")
    others = FILES - {"pattern-a4.pdf"}
    assert {path.name for path in folder.iterdir()} == {"pattern.svg", "pattern.dxf", *others}
    assert result.stdout.splitlines()[-6:-4] == [str(folder / "pattern.svg"), str(folder / "pattern.dxf")]


@pytest.mark.slow
def test_letters_that_a_dxf_cannot_spell_are_told(run: Run) -> None:
    Path("ada.toml").write_text(PLAIN.replace("Ada Example", "Ada 山"), encoding="utf-8")
    result = run("draft", "ada.toml", "--format", "dxf")
    assert "no plain spelling is known for these, '?' in the DXF: 山 (U+5C71)" in " ".join(
        result.stdout.split()
    )


@pytest.mark.slow
@pytest.mark.parametrize("style", catalogue_names())
def test_every_style_that_can_be_typed_can_be_drafted(run: Run, ada: Path, style: str) -> None:
    assert run("draft", ada, "--style", style).exit_code == 0
    figures = json.loads(Path(f"ada-example-{style}/figures.json").read_text(encoding="utf-8"))
    assert figures["style"] == style


def test_pieces_too_large_for_one_page_are_refused(
    run: Run, ada: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("outputs.print.pdf.LONGEST_PAGE", 500.0)
    result = run("draft", ada, "--paper", "single")
    assert result.exit_code == 2 and result.stderr.startswith("--paper single: The pieces need one page of ")
    assert everything(Path()).keys() == {"ada.toml"}


def test_nothing_is_overwritten_without_force(run: Run, ada: Path, drafted: Path) -> None:
    before = everything(Path())
    result = run("draft", ada, "--paper", "letter")
    assert result.exit_code == 2 and "already exists" in result.stderr
    assert everything(Path()) == before


@pytest.mark.slow
def test_force_replaces_our_files_and_keeps_all_others(run: Run, ada: Path, drafted: Path) -> None:
    folder = drafted
    (folder / "notes.txt").write_text("let out the thigh")
    (folder / "figures.json").write_text("old")
    result = run("draft", ada, "--force", "--paper", "letter")
    assert result.exit_code == 0 and "left there from before: notes.txt, pattern-a4.pdf\n" in result.stdout
    assert {path.name for path in folder.iterdir()} == FILES | {"notes.txt", "pattern-letter.pdf"}
    assert (folder / "notes.txt").read_text() == "let out the thigh"
    assert json.loads((folder / "figures.json").read_text(encoding="utf-8"))["unit"] == "cm"


@pytest.mark.slow
@pytest.mark.parametrize(
    "writer",
    [
        "print.pattern_print.write_sheets_with_notes",
        "print.formats.write_svg",
        "print.formats.write_dxf",
        "jobs.draft._figures_text",
        "jobs.draft.write_block_picture",
        "jobs.draft.write_ease_picture",
    ],
)
def test_when_the_disk_is_full_nothing_is_half_written(
    run: Run, ada: Path, monkeypatch: pytest.MonkeyPatch, writer: str
) -> None:
    def full(*_: object, **__: object) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(f"outputs.{writer}", full)
    formats = [word for name in ("pdf", "svg", "dxf") for word in ("--format", name)]
    result = run("draft", ada, "--only", "yoke", *formats)
    told = result.stdout.splitlines()
    assert result.exit_code == 2 and len(told) == 1 and told[0].startswith("to print: ")
    assert "This cannot be written: no space left on device. Nothing was changed." in result.stderr
    assert os.listdir() == ["ada.toml"]


@pytest.mark.slow
def test_an_interrupted_draft_leaves_nothing_behind(
    run: Run, ada: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def interrupted(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(draft_files, "_figures_text", interrupted)
    result = run("draft", ada, "--only", "yoke")
    assert (result.exit_code, result.stderr.strip()) == (1, "Aborted!")
    assert os.listdir() == ["ada.toml"]


@pytest.mark.slow
def test_the_same_measurements_give_the_same_bytes(run: Run, tmp_path: Path) -> None:
    (tmp_path / "ada.toml").write_text(FULL)
    formats = [word for name in FORMATS for word in ("--format", name)]
    first = fresh(
        "-m", "outputs.commands.main", "draft", "ada.toml", "--out", "one", *formats, folder=tmp_path
    )
    assert first.returncode == 0
    assert run("draft", "ada.toml", "--out", "two", *formats).exit_code == 0
    assert len(everything(Path("one"))) == len(FILES) + len(FORMATS) - 1
    assert everything(Path("one")) == everything(Path("two"))


# --- style and cloth


def figures_of(run: Run, *words: object) -> Any:
    assert run("draft", *words, "--only", "yoke", "--out", "out", "--force").exit_code == 0
    return json.loads(Path("out/figures.json").read_text(encoding="utf-8"))


@pytest.mark.slow
def test_the_options_change_the_jeans(run: Run, ada: Path, drafted: Path) -> None:
    as_ever = json.loads((drafted / "figures.json").read_text(encoding="utf-8"))
    names = {piece["name"] for piece in as_ever["pieces"]}
    assert "fly facing (left front)" in names and "front waistband" in names
    other = figures_of(
        run, ada, "--band", "straight", "--laps", "right", "--below-waist", "-1/2 in", "--seams", "felled"
    )  # fmt: skip
    names = {piece["name"]: piece for piece in other["pieces"]}
    assert "fly facing (right front)" in names and "waistband" in names and "front waistband" not in names
    assert other["below_waist"] == pytest.approx(-1.27)
    # one side of a felled seam is folded over the other: 18 and 9 mm
    assert names["front leg"]["allowances"]["inseam"] == 0.9
    assert names["back leg"]["allowances"]["inseam"] == 1.8


@pytest.mark.slow
def test_allowances_can_be_left_away(run: Run, ada: Path) -> None:
    figures = figures_of(run, ada, "--no-allowance")
    denim = [piece for piece in figures["pieces"] if piece["name"] in ("front leg", "back leg", "back yoke")]
    assert len(denim) == 3 and not any(sum(piece["allowances"].values()) for piece in denim)


@pytest.mark.slow
def test_the_cloth_of_the_command_line_counts_before_that_of_the_file(run: Run, ada: Path) -> None:
    ada.write_text(PLAIN + '\n[cloth]\nlengthwise_change = "-3 %"\nstretch = 20\n')
    of_file = figures_of(run, ada)
    assert of_file["cloth"] == {"lengthwise_change": -3, "crosswise_change": 0, "stretch": 20}
    figures = figures_of(run, ada, "--stretch", "0", "--crosswise-change", "−2,5")
    assert figures["cloth"] == {"lengthwise_change": -3, "crosswise_change": -2.5, "stretch": 0}
    # 20 % of stretch takes 2 % of the hip girth off: 98 x 0.02
    eases = [one["girths"]["hip"]["ease"] for one in (figures, of_file)]
    assert eases[0] - eases[1] == pytest.approx(1.96, abs=0.01)


@pytest.mark.slow
def test_a_waist_measured_where_the_jeans_are_worn_is_their_upper_edge(run: Run, ada: Path) -> None:
    ada.write_text(PLAIN.replace("[measurements]", 'waist_taken_at = "worn"\n[measurements]'))
    assert figures_of(run, ada)["below_waist"] == 0
    assert figures_of(run, ada, "--below-waist", "2 cm")["below_waist"] == 2


@pytest.mark.slow
def test_labels_that_were_cut_down_are_told_in_one_message(run: Run, ada: Path) -> None:
    # The facing that carries buttonholes is too small for more than its name.
    lines = run("draft", ada, "--set", "fly=buttons").stdout.replace("\n  ", " ").splitlines()
    (told,) = (line for line in lines if "label" in line)
    assert told.startswith("labels shortened on: ") and told.endswith("; the piece list has them whole")


# --- figures.json


@pytest.fixture(scope="module")
def demo_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("demo") / "demo"
    result = CliRunner().invoke(command.main, ["demo", "--out", str(folder)])
    assert result.exit_code == 0
    return folder


def numbers(value: Any) -> Iterator[float]:
    if isinstance(value, dict):
        value = list(value.values())
    if isinstance(value, list):
        for item in value:
            yield from numbers(item)
    elif isinstance(value, float):
        yield value


@pytest.mark.slow
@pytest.mark.parametrize("wearer", [path.stem for path in DEMO_FILES])
def test_the_figures_stand_under_the_names_that_others_rely_on(demo_folder: Path, wearer: str) -> None:
    figures = json.loads((demo_folder / f"{wearer}-straight" / "figures.json").read_text(encoding="utf-8"))
    assert figures["unit"] == "cm"
    assert {"waist", "hip", "thigh", "knee", "hem"} <= figures["girths"].keys()
    for girth in figures["girths"].values():
        assert {"body", "ease", "pattern"} <= girth.keys()
        if girth["body"] is not None:
            assert girth["body"] + girth["ease"] == pytest.approx(girth["pattern"], abs=0.002)
    crotch = figures["crotch"]
    assert crotch["front"] + crotch["back"] == pytest.approx(crotch["total"], abs=0.002)
    # gulsah measured no crotch length; women's and men's averages agree for her, and their mean is drafted
    assert crotch["target"] == pytest.approx(crotch["total"], abs=0.5)
    lengths = figures["lengths"]
    assert lengths.keys() == {"inseam_front", "inseam_back", "outseam_front", "outseam_back"}
    assert all(50 < length < 130 for length in lengths.values())
    assert figures["corners"] and all(corner["passes"] for corner in figures["corners"])
    assert figures["seams"] and figures["pieces"] and isinstance(figures["findings"], list)
    for seam in figures["seams"]:
        assert {"name", "edges"} <= seam.keys() and seam["passes"] is True
        first, second = seam["lengths"]
        assert first - second == pytest.approx(seam["found_difference"], abs=0.002)
        assert seam["found_difference"] == pytest.approx(seam["intended_difference"], abs=0.1)
    cut = {piece["name"]: piece["quantity"] for piece in figures["pieces"]}
    assert cut["front leg"] == cut["back leg"] == cut["back yoke"] == 2 and len(cut) >= 12
    assert {notion["name"] for notion in figures["notions"]} > {"rivet"} and 4 <= figures["zip_length"] <= 20
    waist = figures["girths"]["waist"]["pattern"]
    assert figures["below_waist"] == 3.0 and waist < figures["waistband_length"] < waist + 15
    assert figures["cloth"] == {"lengthwise_change": 0, "crosswise_change": 0, "stretch": 0}
    found = list(numbers(figures))
    assert len(found) > 20 and all(math.isfinite(number) for number in found)


@pytest.mark.slow
def test_what_is_unusual_about_the_measurements_stands_among_the_findings(run: Run, ada: Path) -> None:
    ada.write_text(f"{PLAIN}ankle_girth = 40\n")
    result = run("draft", ada, "--only", "yoke", "--out", "out")
    findings = json.loads(Path("out/figures.json").read_text(encoding="utf-8"))["findings"]
    said = {one["where"]: one["text"] for one in findings if one["level"] == "warning"}
    assert said.keys() == {"ankle_girth"} and "unusual" in said["ankle_girth"]
    assert f"warning: {said['ankle_girth']}" in " ".join(result.stdout.split())


# --- demo


@pytest.mark.slow
def test_the_demo_drafts_every_invented_wearer(demo_folder: Path) -> None:
    assert len(DEMO_FILES) >= 3
    expected = {path.name for path in DEMO_FILES} | {f"{path.stem}-straight" for path in DEMO_FILES}
    assert {path.name for path in demo_folder.iterdir()} == expected
    for path in DEMO_FILES:
        assert (demo_folder / path.name).read_bytes() == path.read_bytes()
        assert {file.name for file in (demo_folder / f"{path.stem}-straight").iterdir()} == FILES


def test_every_demo_file_says_that_the_person_is_invented() -> None:
    assert all("invented" in path.read_text(encoding="utf-8").splitlines()[0] for path in DEMO_FILES)


@pytest.mark.slow
def test_the_demo_says_that_its_people_are_invented_and_overwrites_nothing(run: Run) -> None:
    Path("demo").mkdir()
    result = run("demo")
    assert result.exit_code == 2 and result.stderr.startswith("demo: This already exists")
    result = run("demo", "--force", "--paper", "single")
    assert result.stdout.count("an invented person") == len(DEMO_FILES)


# --- help, loading, pipes


COMMANDS = sorted(command.main.commands)


@pytest.mark.parametrize("name", COMMANDS)
def test_the_help_of_every_command_has_examples_that_parse_and_says_what_each_option_does(
    run: Run, name: str
) -> None:
    lines = run(name, "--help").stdout.splitlines()
    assert sum("Example: " in line for line in lines) == 1
    made = None
    for line in lines:
        words = shlex.split(line.partition("jeansblock ")[2], comments=True) if "jeansblock " in line else []
        if words[:1] == [name]:
            with click.Context(command.main) as ctx:
                made = command.main.commands[name].make_context(name, words[1:], parent=ctx)
    assert made, "no example names the command"
    assert all(param.help for param in made.command.params if isinstance(param, click.Option))


def test_the_general_help_names_every_command_and_the_first_steps(run: Run) -> None:
    result = run("--help")
    assert all(f"\n  {name} " in result.stdout for name in COMMANDS)
    assert "jeansblock measure" in result.stdout
    assert result.stdout.count("...") == 1, "a command's line is cut short"
    assert all(len(line) <= 80 for line in result.stdout.splitlines())


SLOW = ("matplotlib", "numpy", "reportlab", "shapely")
LOADED = f"import sys; print([name for name in {SLOW!r} if name in sys.modules])"


@pytest.mark.slow
@pytest.mark.parametrize(
    "words",
    [
        ["--help"],
        ["draft", "--help"],
        ["draft", "bad.toml"],
        ["measure", "Ada"],
        ["measuring-sheet", ""],
        ["measure-twice", "bad.toml"],
        ["draft-all", "--help"],
        ["compare", "bad.toml", "bad.toml"],
    ],
)
def test_help_and_refusals_do_not_wait_for_the_heavy_libraries(tmp_path: Path, words: list[str]) -> None:
    (tmp_path / "bad.toml").write_text(PLAIN.replace("76", "7600"))
    code = f"from outputs.commands.main import main; main({words!r}, standalone_mode=False); {LOADED}"
    ended = fresh("-c", code, folder=tmp_path)
    assert ended.returncode == 0 and ended.stdout.splitlines()[-1] == "[]"
    assert ("waist_girth = 7600" in ended.stderr) == ("bad.toml" in words)


@pytest.mark.skipif(os.name != "posix", reason="pipes close otherwise elsewhere")
def test_a_reader_that_stops_reading_makes_no_noise(tmp_path: Path) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    ended = subprocess.run(
        [sys.executable, "-m", "outputs.commands.main", "draft", "--help"],
        cwd=tmp_path, env={**os.environ, "PYTHONPATH": str(ROOT)}, stdout=writing, stderr=subprocess.PIPE,
    )  # fmt: skip
    os.close(writing)
    assert ended.stderr == b"" and ended.returncode == 1


def test_a_failing_terminal_is_told_without_a_traceback(
    run: Run, ada: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object, **__: object) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(draft_files, "draft", full)
    result = run("draft", ada)
    assert (result.exit_code, result.stderr) == (1, "No space left on device\n")


def test_the_version_is_that_of_the_project(run: Run) -> None:
    try:
        installed = version("jeansblock")
    except PackageNotFoundError:
        pytest.skip("the project is on the path but not installed")
    assert f'version = "{installed}"' in (ROOT / "pyproject.toml").read_text()
    assert run("--version").stdout == f"main, version {installed}\n"


@given(st.binary(max_size=400) | st.text(max_size=200).map(str.encode))
@examples(60, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
def test_any_file_at_all_gives_a_draft_or_a_plain_refusal(run: Run, content: bytes) -> None:
    Path("any.toml").write_bytes(content)
    result = run("draft", "any.toml", "--out", "out", "--force")
    assert result.exit_code == 2 and result.stderr.startswith("any.toml: ")
    assert not Path("out").exists()
