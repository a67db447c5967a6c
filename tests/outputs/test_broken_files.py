"""What is broken on purpose is refused in plain words, or does no harm; `tests/bench/fuzz.py` tries more."""

import csv
import json
import os
import random
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any, BinaryIO

import pytest
from click.testing import CliRunner, Result

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.units import Unit
from outputs.commands import main as command
from outputs.demo import DEMO_FILES
from outputs.files.folder import write_file
from outputs.files.writers import content
from outputs.jobs.class_table import SUMMARY_FILE, Outcome, State, class_table
from outputs.reading.draft_record import holds
from outputs.running.class_pool import refuse_foreign_summary
from outputs.words.print_report import PrintReport
from tests.bench.damage import Place, damaged, place
from tests.outputs.typed_files import PLAIN

ROOT = Path(__file__).parents[2]
Run = Callable[..., Result]
posix = pytest.mark.skipif(os.name != "posix", reason="there are no such things elsewhere")


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    monkeypatch.chdir(tmp_path)
    Path("ada.toml").write_text(PLAIN)
    return lambda *words: CliRunner().invoke(command.main, [str(word) for word in words])


def python(code: str, *words: object, **options: Any) -> subprocess.Popen[str]:
    environment = {**os.environ, "PYTHONPATH": str(ROOT), **options.pop("env", {})}
    return subprocess.Popen(
        [sys.executable, *(["-c", code] if code else ["-m", "outputs.commands.main"]), *map(str, words)],
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8", env=environment, **options,
    )  # fmt: skip


# --- endless files


@pytest.mark.slow
@pytest.mark.parametrize(
    ("name", "text", "words"),
    [
        (
            "many names",
            PLAIN + "".join(f"waist_girth_{n} = 98\n" for n in range(30_000)),
            ("draft", "@.toml"),
        ),
        ("one name", "a = 1\n" * 150_000, ("draft", "@.toml")),
        ("many readings", PLAIN + "knee_girth = [\n" + "98,\n" * 200_000 + "]\n", ("draft", "@.toml")),
        ("readings in a line", PLAIN + f"knee_girth = [{'37,' * 320}]\n", ("draft", "@.toml")),
        ("many settings", "hem = 1\nhem_ = 2\n" * 40_000, ("draft", "ada.toml", "--style", "@.toml")),
        ("blanks", " " * 900_000, ("mark", "ada.toml", "@.csv")),
        ("one step", "13, 6,9\n" * 100_000, ("mark", "ada.toml", "@.csv")),
        ("many columns", "hip_girth," + "hip_girthx," * 80_000 + "\n98\n", ("draft-all", "@.csv")),
    ],
)
def test_no_file_takes_minutes_or_a_thousand_lines(
    run: Run, name: str, text: str, words: tuple[str, ...]
) -> None:
    files = [word.replace("@", name) for word in words]
    Path(files[-1]).write_text(text)
    start = time.process_time()
    result = run(*files)
    # A good file takes a hundredth of it; the first of these took minutes.
    assert result.exit_code == 2 and time.process_time() - start < 5
    lines = result.stderr.splitlines()
    assert 1 <= len(lines) <= 80 and max(map(len, lines)) < 400 and lines[0].startswith(files[-1])


def test_a_file_may_have_as_many_problems_as_are_worth_reading(run: Run) -> None:
    Path("my.toml").write_text("".join(f"hem_{number} = 1\n" for number in range(100)))
    lines = run("draft", "ada.toml", "--style", "my.toml").stderr.splitlines()
    assert len(lines) == 61 and lines[-1] == "my.toml: There are 40 further problems."


# --- names


def test_a_problem_is_one_line_and_shows_what_cannot_be_seen() -> None:
    problem = Problem("hip", "No.\n", Severity.REFUSAL, "9\xa08\x1b[31m\u202e")
    assert str(DraftRefused([problem], "a\nb\udce0.toml")) == (
        r"a\nb\udce0.toml: hip = 9\xa08\x1b[31m\u202e: No.\n"
    )


@posix
@pytest.mark.parametrize("name", ["a\nb\x1b[31m\u202e.toml", os.fsdecode(b"Ad\xe0.toml"), "\n.toml"])
def test_a_wearer_named_after_an_odd_file_gets_a_name_that_can_be_printed(run: Run, name: str) -> None:
    Path(name).write_text(PLAIN.replace("Ada Example", ""))
    result = run("styles", "straight", "--picture", "legs.svg", "--on", name)
    assert result.exit_code == 0
    assert all(sign.isprintable() for sign in Path("legs.svg").read_text(encoding="utf-8").replace("\n", ""))
    Path(f"style-{name}").write_text('[leg]\nhem_of_hip = "40 %"\n')
    assert run("style-file", "Mine", "--like", f"style-{name}", "--out", "mine.toml").exit_code == 0


def test_the_table_of_a_class_takes_a_place_that_is_no_text() -> None:
    place = os.fsdecode(b"Ad\xe0.csv, row 2")
    refused = Outcome(number=1, place=place, name="Ada", folder="", state=State.REFUSED)
    (_, row) = csv.reader(
        content(class_table([refused], Unit.CM).files[SUMMARY_FILE]).decode("utf-8-sig").splitlines()
    )
    assert r"Ad\udce0.csv, row 2" in row


def test_names_survive_an_output_that_lacks_their_letters(run: Run, tmp_path: Path) -> None:
    # What a program writes into when its output goes to a file, on some systems.
    told = python(
        "", "measure", "Łucja", "--out", "łucja.toml", cwd=tmp_path, env={"PYTHONIOENCODING": "cp1252"}
    )
    said, complaint = told.communicate()
    assert (told.returncode, complaint) == (0, "") and r"\u0142ucja.toml" in said


def test_names_too_long_for_any_disk_are_refused_by_every_command(run: Run) -> None:
    name = "x" * 5000
    for words in (
        ("draft", name),
        ("draft-all", name),
        ("compare", name, "ada.toml"),
        ("measure", "A", "--out", name),
    ):
        assert run(*words).exit_code == 2


# --- what is no ordinary file


@posix
@pytest.mark.parametrize("where", [where for where in Place if where is not Place.FILE])
@pytest.mark.parametrize("words", [("draft", "@"), ("draft-all", "@"), ("compare", "@", "ada.toml")])
def test_whatever_stands_in_the_place_of_a_file_is_told_at_once(
    run: Run, where: Place, words: tuple[str, ...]
) -> None:
    path = place(Path("bad.json" if words[0] == "compare" else "bad.csv"), b"hip_girth\nx\n", where)
    result = run(*(path.name if word == "@" else word for word in words), "--out", "out.png")
    assert result.exit_code == 2 and 0 < len(result.stderr.splitlines()) < 10
    assert where is Place.ODD_NAME or not Path("out.png").is_file()


@posix
def test_a_pipe_in_a_folder_is_no_record_to_wait_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "inputs.json")
    assert not holds(tmp_path, "{}")


# --- a record that somebody changed


@pytest.fixture(scope="module")
def record(tmp_path_factory: pytest.TempPathFactory) -> str:
    from outputs.reading.draft_record import Inputs
    from outputs.reading.measurements_file import read_measurements
    from outputs.reading.style_options import StyleOptions
    from styles.choice.style import STRAIGHT

    path = tmp_path_factory.mktemp("record") / "ada.toml"
    path.write_text(PLAIN)
    return Inputs.of(read_measurements(path), STRAIGHT, StyleOptions()).text({})


@pytest.mark.parametrize(
    ("where", "value", "told"),
    [
        (("style", "settings", "band_height"), 1e5, "no record"),
        (("style", "settings", "band_height"), None, "no record"),
        (("style", "settings", "ease.hip"), 1e300, "no record"),
        (("style", "settings", "front_pocket.width"), 5, "no record"),
        (("style", "settings", "front_pocket.watch"), "no", "no record"),
        (("measurements", "hip_girth"), 10**400, "no record"),
        (("measurements", "hip_girth"), -980, "hip_girth = -980"),
        (("cloth", "stretch"), 300, "stretch = 300"),
    ],
)
def test_a_record_with_what_nobody_can_have_typed_is_refused_by_name(
    run: Run, record: str, where: tuple[str, ...], value: object, told: str
) -> None:
    changed = json.loads(record)
    holder = changed
    for key in where[:-1]:
        holder = holder[key]
    holder[where[-1]] = value
    Path("inputs.json").write_text(json.dumps(changed))
    result = run("compare", "inputs.json", "ada.toml")
    assert result.exit_code == 2 and result.stderr.startswith("inputs.json: ") and told in result.stderr
    assert not Path("compare.png").exists()


# --- links


@pytest.mark.slow
@posix
def test_folders_of_a_class_or_the_demo_that_are_links_are_not_followed(run: Run, tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "elsewhere" / "figures.json").write_text("precious")
    Path("class.csv").write_text(
        "wearer,unit,waist_girth,hip_girth,inside_leg_height,body_rise\nAda,cm,76,98,78,27\n"
    )
    for folder in ("out/ada-straight", f"demo/{DEMO_FILES[-1].stem}-straight"):
        Path(folder).parent.mkdir()
        Path(folder).symlink_to(tmp_path / "elsewhere")
    for words in (("draft-all", "class.csv", "--out", "out", "--force"), ("demo", "--force")):
        result = run(*words)
        assert result.exit_code == 2 and "This is a link and may lead elsewhere" in result.stderr
    assert len(list(Path("demo").iterdir())) == 1
    assert [path.name for path in (tmp_path / "elsewhere").iterdir()] == ["figures.json"]
    assert (tmp_path / "elsewhere" / "figures.json").read_text() == "precious"


def test_the_table_of_a_large_class_is_known_as_ours_and_a_link_to_nowhere_is_not(tmp_path: Path) -> None:
    table = tmp_path / SUMMARY_FILE
    table.write_bytes(content(class_table([], Unit.CM).files[SUMMARY_FILE]) + b"1,Ada\n" * 300_000)
    refuse_foreign_summary(tmp_path)
    table.unlink()
    table.symlink_to("nowhere")
    with pytest.raises(DraftRefused, match="not the table of a class"):
        refuse_foreign_summary(tmp_path)


# --- two runs at once, and runs that are ended


def test_a_file_that_appears_meanwhile_is_not_overwritten(tmp_path: Path) -> None:
    def overtaken(stream: BinaryIO) -> PrintReport:
        (tmp_path / "ada.toml").write_text("theirs")
        stream.write(b"ours")
        return PrintReport()

    with pytest.raises(DraftRefused, match="already exists"):
        write_file(tmp_path / "ada.toml", overtaken, force=False)
    assert [(path.name, path.read_text()) for path in tmp_path.iterdir()] == [("ada.toml", "theirs")]


WRITING = """
import os, signal, sys
from pathlib import Path
from typing import BinaryIO
from outputs.files import folder
from outputs.files.writers import text_writer
target, word, ends_at = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
steps = 0
def counted(move):
    def step(*args, **extra):
        global steps
        steps += 1
        if steps == ends_at:
            os.kill(os.getpid(), signal.SIGKILL)
        return move(*args, **extra)
    return step
os.replace, os.link = counted(os.replace), counted(os.link)
names = [f"{number}.txt" for number in range(30 if ends_at == 0 else 3)]
for _ in range(20 if ends_at == 0 else 1):
    folder.write_folder(target, {name: text_writer(word) for name in names}, force=True)
"""


@pytest.mark.slow
@posix
@pytest.mark.parametrize("step", range(1, 7))
def test_a_run_killed_while_it_replaces_files_leaves_each_of_them_whole(tmp_path: Path, step: int) -> None:
    target = tmp_path / "ada"
    target.mkdir()
    for number in range(3):
        (target / f"{number}.txt").write_text("old")
    ended = python(WRITING, target, "new", step)
    ended.communicate()
    assert ended.returncode == -signal.SIGKILL
    held = [(target / f"{number}.txt").read_text() for number in range(3)]
    # Two moves a file: the old one gets a second name, then the new one takes its place.
    assert held == ["new"] * ((step - 1) // 2) + ["old"] * (3 - (step - 1) // 2)


@pytest.mark.slow
@posix
def test_of_two_runs_at_once_in_one_folder_all_files_are_of_one(tmp_path: Path) -> None:
    (tmp_path / "ada").mkdir()
    runs = [python(WRITING, tmp_path / "ada", word, 0) for word in ("one", "two")]
    assert [run.communicate()[1] for run in runs] == ["", ""]
    held = [path.read_text() for path in (tmp_path / "ada").iterdir()]
    assert len(held) == 30 and len(set(held)) == 1


ASKED_TO_END = """
import os, signal, sys
from outputs.commands import main as command
from outputs.files import folder
from outputs.files.writers import text_writer
real = folder.os.link
def ended(*args, **extra):
    os.kill(os.getpid(), getattr(signal, sys.argv[1]))
    return real(*args, **extra)
folder.os.link = ended
# Tests that run in the background of a shell hand down that they ignore some.
for name in ("SIGTERM", "SIGHUP"):
    signal.signal(getattr(signal, name), signal.SIG_DFL)
signal.signal(signal.SIGINT, signal.default_int_handler)
command.main(["measure", "Ada"])
"""


@pytest.mark.slow
@posix
@pytest.mark.parametrize("name", ["SIGTERM", "SIGHUP", "SIGINT"])
def test_a_run_that_is_asked_to_end_leaves_nothing_behind(tmp_path: Path, name: str) -> None:
    ended = python(ASKED_TO_END, name, cwd=tmp_path)
    _, complaint = ended.communicate()
    assert "Traceback" not in complaint and not list(tmp_path.iterdir())
    # Ended by the very signal; click ends with 1 after Ctrl-C.
    assert ended.returncode == (1 if name == "SIGINT" else -getattr(signal, name))


@posix
def test_a_disk_that_takes_no_more_bytes_leaves_nothing_behind(tmp_path: Path) -> None:
    limited = "import resource; resource.setrlimit(resource.RLIMIT_FSIZE, (2000, 2000));"
    ended = python(
        f"{limited} from outputs.commands.main import main; main(['measure', 'Ada'])", cwd=tmp_path
    )
    _, complaint = ended.communicate()
    assert ended.returncode == 2 and "ada.toml: This cannot be written: file too large." in complaint
    assert not list(tmp_path.iterdir())


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="there is no full device")
def test_a_full_output_is_told_without_a_traceback(tmp_path: Path) -> None:
    with open("/dev/full", "w") as full:
        ended = subprocess.run(
            [sys.executable, "-m", "outputs.commands.main", "styles"],
            cwd=tmp_path, env={**os.environ, "PYTHONPATH": str(ROOT)}, stdout=full, stderr=subprocess.PIPE,
        )  # fmt: skip
    assert (ended.returncode, ended.stderr) == (1, b"No space left on device\n")


# --- some of what the fuzzer tries


@pytest.mark.parametrize("seed", range(25))
def test_a_damaged_file_is_read_or_refused_in_plain_words(run: Run, seed: int) -> None:
    Path("ada.toml").write_bytes(damaged(PLAIN.encode(), random.Random(seed)))
    result = run("styles", "straight", "--picture", "legs.svg", "--on", "ada.toml")
    assert result.exit_code in (0, 2) and bool(result.stderr) == bool(result.exit_code)
    assert sorted(os.listdir()) == ["ada.toml", *(["legs.svg"] if result.exit_code == 0 else [])]
