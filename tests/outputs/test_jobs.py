"""Jobs hand back data: they know no terminal, process or folder, and give the bytes that commands write."""

import ast
import subprocess
import sys
from collections.abc import Callable, Iterable, Iterator
from io import BytesIO
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from drafting.base.errors import DraftRefused
from drafting.base.units import Unit
from outputs.cloth.options import read_cloth_options
from outputs.commands.main import main
from outputs.demo import DEMO_FILES
from outputs.files.text_file import TextFile, read_file
from outputs.files.writers import content
from outputs.jobs import (
    blank,
    class_person,
    class_table,
    cloth,
    compare,
    demo,
    draft,
    lesson,
    measure,
    several_styles,
    sheets,
    styles,
)
from outputs.jobs.options import DraftOptions
from outputs.jobs.result import Result as Made
from outputs.paper.paper import PAPERS
from outputs.print.options import PrintOptions
from outputs.reading.draft_record import inputs_of
from outputs.reading.measurements_file import measurements_of
from outputs.reading.style_file import find_style, find_styles
from outputs.reading.style_options import StyleOptions, read_options
from styles.choice.catalogue import catalogue_names
from tests.outputs.typed_files import FULL, PLAIN, UNEVEN

ROOT = Path(__file__).parents[2]
OUTPUTS = ROOT / "outputs"
AROUND = ("commands", "running")
"""The rooms that know terminals and processes; jobs know neither these nor what writes into folders."""
INSIDE = [path for path in sorted(OUTPUTS.rglob("*.py")) if path.relative_to(OUTPUTS).parts[0] not in AROUND]
JOBS = sorted((OUTPUTS / "jobs").glob("*.py"))
TERMINALS = {
    "asyncio", "click", "concurrent", "curses", "logging", "multiprocessing", "select", "signal", "socket",
    "subprocess", "sys", "threading",
}  # fmt: skip
DISKS = {"glob", "os", "pathlib", "shutil", "tempfile", "outputs.files.folder", "outputs.lines"}


def name_of(path: Path) -> str:
    return ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")


def imported(path: Path) -> Iterator[str]:
    """Yield the full name of every module that a module imports, wherever the import stands."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def under(names: Iterable[str], roots: Iterable[str]) -> set[str]:
    return {name for name in names if any(f"{name}.".startswith(f"{root}.") for root in roots)}


def called(path: Path) -> set[str]:
    nodes = ast.walk(ast.parse(path.read_text(encoding="utf-8")))
    return {n.func.id for n in nodes if isinstance(n, ast.Call) and isinstance(n.func, ast.Name)}


@pytest.mark.parametrize("path", INSIDE, ids=map(name_of, INSIDE))
def test_only_commands_and_what_runs_them_know_a_terminal_or_a_process(path: Path) -> None:
    around = {f"outputs.{room}" for room in AROUND}
    assert not under(imported(path), TERMINALS | around)
    assert not called(path) & {"print", "input"}


@pytest.mark.parametrize("path", JOBS, ids=map(name_of, JOBS))
def test_a_job_knows_no_path_and_no_folder(path: Path) -> None:
    assert not under(imported(path), DISKS)
    assert "open" not in called(path)


@pytest.mark.slow
def test_all_jobs_load_without_a_command_line_and_without_what_writes_folders() -> None:
    jobs = ", ".join(name_of(path) for path in JOBS if path.stem != "__init__")
    code = f"import sys, {jobs}; print([n for n in sys.modules if n.startswith(('click', 'outputs.'))])"
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    loaded = set(ast.literal_eval(done.stdout))
    assert "outputs.jobs.draft" in loaded
    around = [*(f"outputs.{room}" for room in AROUND), "outputs.lines", "outputs.files.folder", "click"]
    assert not under(loaded, around)


def test_the_test_of_imports_sees_them_where_they_stand() -> None:
    main_file, folder = OUTPUTS / "commands" / "main.py", OUTPUTS / "files" / "folder.py"
    assert under(imported(main_file), TERMINALS) >= {"click", "sys"}
    assert under(imported(main_file), ["outputs.lines"]) and "os" in under(imported(folder), DISKS)


# --- a job gives the bytes that the command writes

ADA = TextFile("ada.toml", FULL)
STRAIGHT = find_style("straight")
Run = Callable[..., Result]


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    monkeypatch.chdir(tmp_path)
    Path("ada.toml").write_text(FULL, encoding="utf-8")
    Path("plain.toml").write_text(PLAIN, encoding="utf-8")

    def ended(*words: object) -> Result:
        result = CliRunner().invoke(main, [str(word) for word in words])
        assert result.exit_code == 0, result.stderr
        return result

    return ended


def written(folder: str | Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in Path(folder).iterdir()}


def made(result: Made) -> dict[str, bytes]:
    return {name: content(write) for name, write in result.files.items()}


def only(result: Made) -> bytes:
    (write,) = result.files.values()
    return content(write)


@pytest.mark.slow
def test_a_draft(run: Run) -> None:
    run("draft", "ada.toml", "--out", "out", "--format", "pdf", "--format", "dxf", "--set", "fly=buttons",
        "--stretch", "10")  # fmt: skip
    told: list[str] = []
    asked = DraftOptions(changes=read_options({"fly": "buttons"}, {"stretch": "10"}), formats=("pdf", "dxf"))
    drafted = draft.draft(measurements_of(ADA), STRAIGHT, asked, progress=told.append)
    streams = {name: BytesIO() for name in drafted.files}
    reports = {name: write(streams[name]) for name, write in drafted.files.items()}
    assert {name: stream.getvalue() for name, stream in streams.items()} == written("out")
    assert told == ["drafting straight"]
    assert drafted.jeans.block.levels.crotch.mm > 0 and drafted.jeans.cloth.stretch == 10
    assert drafted.sheets == {"pattern-a4.pdf": reports["pattern-a4.pdf"].sheets}
    assert drafted.paper and drafted.paper.sheets + drafted.paper.before == drafted.sheets["pattern-a4.pdf"]


@pytest.mark.slow
@pytest.mark.parametrize("paper", ["single", "a0", "36 in"])
def test_sheets_are_counted_before_they_are_written(run: Run, paper: str) -> None:
    from outputs.print.options import read_print_options

    asked = DraftOptions(printing=read_print_options(paper=paper, only="yoke"))
    drafted = draft.draft(measurements_of(ADA), STRAIGHT, asked)
    pdfs = {name: write(BytesIO()).sheets for name, write in drafted.files.items() if name.endswith(".pdf")}
    assert drafted.sheets == pdfs and pdfs.keys() > {"notes.pdf"}


def test_what_is_unusual_keeps_its_measurement_and_its_line() -> None:
    odd = measurements_of(TextFile("odd.toml", PLAIN.replace("hip_girth = 98", "hip_girth = 128")))
    drafted = draft.draft(odd, STRAIGHT, DraftOptions())
    (warning, *_) = drafted.warnings
    assert warning.key in odd.measurements.given() and warning.line
    assert drafted.findings[0].where == warning.key and drafted.findings[0].code == "measurement"


def test_a_setting_that_is_refused_has_its_own_name_where_nobody_typed_an_option() -> None:
    with pytest.raises(DraftRefused) as caught:
        read_options({"rise": "hihg", "turn_up": "a lot"}, {"stretch": "elastic"})
    assert [problem.key for problem in caught.value.problems] == ["rise", "turn_up", "stretch"]
    fights = StyleOptions(settings={"leg.hem_below_knee": "50 %"})
    with pytest.raises(DraftRefused) as caught:
        draft.draft(measurements_of(ADA), find_style("shorts"), DraftOptions(changes=fights))
    assert all(problem.key.startswith("leg.") for problem in caught.value.problems)


@pytest.mark.slow
def test_several_styles(run: Run) -> None:
    words = ("--style", "slim", "--style", "flare", "--shared-once", "--format", "svg")
    run("draft", "ada.toml", "--out", "out", *words)
    asked = DraftOptions(formats=("svg",))
    result = several_styles.draft_several(
        measurements_of(ADA), find_styles(["slim", "flare"]), asked, shared_once=True
    )
    assert made(result) == written("out")


@pytest.mark.slow
def test_a_class(run: Run) -> None:
    head = "wearer,unit,waist_girth,hip_girth,inside_leg_height,body_rise,total_crotch_length"
    Path("class.csv").write_text(f"{head}\nDora,cm,70,94,76,26,66\n", encoding="utf-8")
    run("draft-all", "class.csv", "--out", "out", "--workers", 1, "--format", "dxf")
    row = dict(zip(head.split(","), ["Dora", "cm", "70", "94", "76", "26", "66"], strict=True))
    text = f'wearer = "{row.pop("wearer")}"\nunit = "{row.pop("unit")}"\n[measurements]\n'
    read = measurements_of(TextFile("dora.toml", text + "".join(f"{k} = {v}\n" for k, v in row.items())))
    drafted = draft.draft(read, STRAIGHT, DraftOptions(formats=("dxf",)))
    assert made(drafted) == written("out/dora-straight")
    numbers = class_person.numbers_of(drafted)
    outcome = class_table.Outcome(
        number=1, place="class.csv, row 2", name="Dora", folder="dora-straight",
        state=class_table.State.DRAFTED, numbers=numbers,
    )  # fmt: skip
    assert only(class_table.class_table([outcome], Unit.CM)) == Path("out/summary.csv").read_bytes()
    kept = Path("out/dora-straight/figures.json").read_text(encoding="utf-8")
    assert class_person.numbers_kept(kept) == numbers


@pytest.mark.slow
@pytest.mark.parametrize("text", [UNEVEN, PLAIN, FULL], ids=["uneven", "plain", "full"])
def test_a_second_run_of_a_class_reads_the_numbers_that_the_first_told(text: str) -> None:
    drafted = draft.draft(measurements_of(TextFile("somebody.toml", text)), STRAIGHT, DraftOptions())
    kept = content(drafted.files["figures.json"]).decode()
    assert class_person.numbers_kept(kept) == class_person.numbers_of(drafted)


@pytest.mark.slow
def test_the_cloth(run: Run) -> None:
    run("cloth", "ada.toml", "plain.toml", "--folded", "--out", "out")
    run("cloth", "ada.toml", "plain.toml", "--plan", "out/cloth-plan.json", "--out", "again")
    read = [measurements_of(ADA), measurements_of(TextFile("plain.toml", PLAIN))]
    widths = (None, None, None)
    lies = read_cloth_options(widths=widths, folded=True, one_way=False, seconds=None)
    told: list[str] = []
    planned = cloth.plan_cloth(read, STRAIGHT, StyleOptions(), lies, progress=told.append)
    assert told == ["laying the pieces"]
    assert made(planned) == written("out") == written("again")
    again = TextFile("cloth-plan.json", content(planned.files["cloth-plan.json"]).decode())
    repeated = cloth.plan_cloth(read, STRAIGHT, StyleOptions(), lies, repeated=again)
    assert repeated.plan.cloths[0].length == planned.plan.cloths[0].length


@pytest.mark.slow
def test_the_sheets_of_a_lesson(run: Run) -> None:
    run("worksheet", "ada.toml", "--scale", "1:5", "--style", "slim")
    run("worksheet", "ada.toml", "--blank", "--paper", "letter")
    run("worksheet", "ada.toml", "--marking")
    run("systems", "ada.toml")
    run("mark", "ada.toml", "ben.toml", "--form")
    read, a4 = measurements_of(ADA), PAPERS["a4"]
    results = [
        lesson.worksheet(read, find_style("slim"), paper=a4, scale=5.0, blank=False),
        lesson.worksheet(read, STRAIGHT, paper=PAPERS["letter"], scale=4.0, blank=True),
        lesson.marking_sheet(read, STRAIGHT, paper=a4, scale=4.0),
        lesson.systems(read, paper=a4),
        lesson.form(read, STRAIGHT, name="ben.toml"),
    ]
    for result in results:
        for name, drawn in made(result).items():
            assert drawn == Path(name).read_bytes(), name


def test_the_marks_of_a_student() -> None:
    read = measurements_of(ADA)
    steps = lesson.mark(read, STRAIGHT, TextFile("ben.csv", "13, 1\n"), scale=4.0).missing
    given = "".join(f"{step.label},{step.result / 10:.2f} cm\n" for step in steps[1:]) + f"{steps[0].label},1"
    marked = lesson.mark(read, STRAIGHT, TextFile("ben.csv", given), scale=4.0)
    assert marked.first_mistake and marked.first_mistake.step.label == steps[0].label
    assert marked.right == len(steps) - 1


@pytest.mark.slow
def test_two_versions(run: Run) -> None:
    run("draft", "ada.toml", "--out", "one", "--format", "dxf")
    run("draft", "plain.toml", "--out", "two", "--format", "dxf")
    said = run("compare", "one", "two").stdout
    old, new = (inputs_of(read_file(Path(name) / "inputs.json")) for name in ("one", "two"))
    told: list[str] = []
    result = compare.compare(old, new, progress=told.append)
    count = len(result.versions.changes)
    alone = [f"drafting with change {number} of {count} alone" for number in range(1, count + 1)]
    assert told == ["drafting old", "drafting new", *alone]
    assert made(result) == {"compare.png": Path("compare.png").read_bytes()}
    assert all(change.what in said for change in result.versions.changes)


@pytest.mark.slow
def test_files_to_fill_in_and_sheets(run: Run) -> None:
    run("measure", "Ida Rook", "--unit", "in")
    run("measuring-sheet", "Ida Rook", "--paper", "letter")
    run("style-file", "Mine", "--like", "slim")
    run("check-print", "--paper", "a4")
    run("fitting-guide", "--pdf")
    run("styles", "--picture", "legs.svg", "--on", "ada.toml")
    read, legs = measurements_of(ADA), find_styles(catalogue_names())
    results = {
        "ida-rook.toml": blank.measurements_form("Ida Rook", Unit.INCH),
        "ida-rook-measuring-sheet.pdf": measure.measuring_sheet(
            "Ida Rook", paper=PAPERS["letter"], unit=Unit.CM
        ),
        "mine-style.toml": blank.style_file("Mine", find_style("slim"), Unit.CM),
        "check-print-a4.pdf": sheets.check_print(PAPERS["a4"]),
        "fitting-guide.pdf": sheets.fitting_guide(PAPERS["a4"], Unit.CM),
        "legs.svg": styles.styles_picture(legs, read, title=f"Styles of jeans on {read.wearer}", svg=True),
    }
    assert {name: only(result) for name, result in results.items()} == {
        name: Path(name).read_bytes() for name in results
    }


@pytest.mark.slow
def test_the_measurements_worth_taking_twice(run: Run) -> None:
    said = run("measure-twice", "ada.toml").stdout
    errors = measure.measure_twice(measurements_of(ADA), STRAIGHT)
    assert errors == tuple(sorted(errors, key=lambda error: -error.outline))
    assert errors[0].key.replace("_", " ").removeprefix("total ").partition(" ")[0] in said


@pytest.mark.slow
def test_the_demo_comes_person_by_person(run: Run) -> None:
    drafted: list[str] = []
    people = demo.demo([read_file(DEMO_FILES[0])], PrintOptions(paper=None), progress=drafted.append)
    assert drafted == []
    (person,) = people
    assert drafted == ["drafting straight"] and person.file.text == DEMO_FILES[0].read_text(encoding="utf-8")
    run("draft", DEMO_FILES[0], "--out", "out", "--paper", "single")
    alone = written("out")
    # A style out of the catalogue's file is recorded with 30.0 where ours in the code has 30.
    assert {**made(person.drafted), "inputs.json": b""} == {**alone, "inputs.json": b""}
