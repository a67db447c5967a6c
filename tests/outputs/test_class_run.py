"""A class drafted in one run: nobody waits for a bad row, nothing is half written, a second run goes on."""

import csv
import json
import os
import re
import signal
import subprocess
import sys
import time
from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from drafting.base.errors import Problem, Severity
from drafting.base.units import Unit
from outputs.commands import main as command
from outputs.files.writers import content
from outputs.jobs.class_table import SUMMARY_FILE, Numbers, Outcome, State, class_table
from outputs.lines.class_table import refusal_lines, summary_table
from tests.invented_class import people, table
from tests.outputs.typed_files import PLAIN

ROOT = Path(__file__).parents[2]
QUICK = ("--format", "dxf")
FILES = {"block.png", "ease.png", "figures.json", "inputs.json", "pattern.dxf"}


def run(*words: object) -> Result:
    return CliRunner().invoke(command.main, ["draft-all", *(str(word) for word in words)])


def rows(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8-sig", newline="") as stream:
        return list(csv.DictReader(stream))


def everything(folder: Path) -> dict[str, bytes]:
    return {str(p.relative_to(folder)): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


@pytest.fixture(scope="module")
def class_of_twelve(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Result]:
    """Twelve people, the fifth of whom typed two slips, drafted once for all tests."""
    home = tmp_path_factory.mktemp("class")
    twelve = people(12)
    twelve[4] |= {"hip_girth": "371/2", "estimate_like": "wimen"}
    (home / "class.csv").write_text(table(twelve), encoding="utf-8")
    result = run(home / "class.csv", "--out", home / "out", "--workers", 2, *QUICK)
    return home, result


@pytest.mark.slow
def test_one_bad_row_is_told_and_stops_nobody(class_of_twelve: tuple[Path, Result]) -> None:
    home, result = class_of_twelve
    assert result.exit_code == 2
    assert f"11 drafted, 1 refused; all of them: {home / 'out' / 'summary.csv'}" in result.stdout
    told = result.stderr.splitlines()
    assert all(line.startswith(f"{home / 'class.csv'}, row 6: Ada Field: ") for line in told)
    assert len(told) == 2 and 'hip_girth = "371/2"' in told[0] and 'Did you mean "women"?' in told[1]
    folders = [path for path in (home / "out").iterdir() if path.is_dir()]
    assert len(folders) == 11 and all({file.name for file in path.iterdir()} == FILES for path in folders)


@pytest.mark.slow
def test_people_of_one_name_get_a_folder_each(class_of_twelve: tuple[Path, Result]) -> None:
    home, _ = class_of_twelve
    wearers = Counter(
        json.loads(path.read_text(encoding="utf-8"))["wearer"] for path in home.glob("out/*/inputs.json")
    )
    assert wearers["Łucja Wójcik"] == wearers["Ελένη Ράπτη"] == 2
    assert {path.name for path in (home / "out").glob("łucja*")} == {
        "łucja-wójcik-straight", "łucja-wójcik-straight-2"
    }  # fmt: skip
    # the refused one keeps her folder's name free, so that the others keep theirs when she is corrected
    assert (home / "out" / "ada-field-straight-2").is_dir()
    assert not (home / "out" / "ada-field-straight").exists()


@pytest.mark.slow
def test_the_table_lists_everybody_in_the_order_of_the_class(class_of_twelve: tuple[Path, Result]) -> None:
    home, result = class_of_twelve
    listed = rows(home / "out" / "summary.csv")
    assert [row["person"] for row in listed] == [row["wearer"] for row in people(12)]
    assert [row["number"] for row in listed] == [str(number) for number in range(1, 13)]
    assert [row["state"] for row in listed if row["number"] == "5"] == ["refused"]
    assert "371/2" in listed[4]["refused"] and listed[4]["hip_cm"] == ""
    for row in listed[:4]:
        figures = json.loads((home / "out" / row["folder"] / "figures.json").read_text(encoding="utf-8"))
        for level in ("waist", "hip", "thigh", "knee", "hem"):
            assert float(row[f"{level}_cm"]) == pytest.approx(figures["girths"][level]["pattern"], abs=0.006)
        assert float(row["crotch_found_cm"]) == pytest.approx(figures["crotch"]["total"], abs=0.006)
        # hip and its 3 cm of ease
        hip = float(people(12)[int(row["number"]) - 1]["hip_girth"])
        assert float(row["hip_cm"]) == pytest.approx(hip + 3, abs=0.01)
    lines = result.stdout.splitlines()
    told = [line for line in lines if str(home) not in line]
    assert max(map(len, told)) <= 80 and sum(line.endswith("refused") for line in told) == 1


@pytest.mark.slow
def test_somebody_of_a_class_gets_what_draft_writes_for_one(
    class_of_twelve: tuple[Path, Result], tmp_path: Path
) -> None:
    home, _ = class_of_twelve
    first = {key: value for key, value in people(12)[0].items() if value}
    top = {key: first.pop(key) for key in ("wearer", "unit", "estimate_like")}
    text = "".join(f'{key} = "{value}"\n' for key, value in top.items())
    text += "[measurements]\n" + "".join(f"{key} = {value}\n" for key, value in first.items())
    (tmp_path / "one.toml").write_text(text, encoding="utf-8")
    alone = CliRunner().invoke(
        command.main, ["draft", str(tmp_path / "one.toml"), "--out", str(tmp_path / "one"), *QUICK]
    )
    assert alone.exit_code == 0
    assert everything(tmp_path / "one") == everything(home / "out" / "łucja-wójcik-straight")


@pytest.mark.slow
def test_a_second_run_leaves_what_is_there_and_drafts_who_was_corrected(
    class_of_twelve: tuple[Path, Result], tmp_path: Path
) -> None:
    home, _ = class_of_twelve
    before = everything(home / "out")
    corrected = people(12)
    corrected[0] |= {"hip_girth": "100"}
    (tmp_path / "class.csv").write_text(table(corrected), encoding="utf-8")
    result = run(tmp_path / "class.csv", "--out", home / "out", "--workers", 1, *QUICK)
    assert result.exit_code == 2 and "1 drafted, 10 there already, 1 refused" in result.stdout
    # somebody whose measurements changed is not replaced unasked
    assert "row 2: Łucja Wójcik: " in result.stderr and "Something else lies there" in result.stderr
    after = everything(home / "out")
    assert all(after[name] == content for name, content in before.items() if name != "summary.csv")
    assert (home / "out" / "ada-field-straight").is_dir()
    # those that were there are listed with their numbers
    assert all(row["hip_cm"] for row in rows(home / "out" / "summary.csv")[1:])


@pytest.mark.slow
def test_with_force_what_is_there_is_replaced_and_the_exit_code_is_0(tmp_path: Path) -> None:
    (tmp_path / "ada.toml").write_text(PLAIN)
    (tmp_path / "out" / "ada-example-straight").mkdir(parents=True)
    (tmp_path / "out" / "ada-example-straight" / "notes.txt").write_text("let out the thigh")
    words = (tmp_path, "--out", tmp_path / "out", "--workers", 1, *QUICK)
    refused = run(*words)
    assert refused.exit_code == 2 and "Something else lies there" in refused.stderr
    done = run(*words, "--force")
    assert (done.exit_code, done.stderr) == (0, "") and "1 drafted; all of them" in done.stdout
    found = {path.name for path in (tmp_path / "out" / "ada-example-straight").iterdir()}
    assert found == FILES | {"notes.txt"}


@pytest.mark.slow
def test_ctrl_c_leaves_whole_folders_only_and_says_how_many(tmp_path: Path) -> None:
    (tmp_path / "class.csv").write_text(table(people(40)), encoding="utf-8")
    started = subprocess.Popen(
        [sys.executable, "-m", "outputs.commands.main", "draft-all", "class.csv", "--workers", "2", *QUICK],
        cwd=tmp_path, env={**os.environ, "PYTHONPATH": str(ROOT), "PYTHONIOENCODING": "utf-8"},
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8", start_new_session=True,
    )  # fmt: skip
    out = tmp_path / "class-drafts"
    give_up = time.monotonic() + 60
    while not list(out.glob("*/figures.json")) and time.monotonic() < give_up:
        time.sleep(0.05)
    # as a terminal does: to all processes of the run
    os.killpg(started.pid, signal.SIGINT)
    said, complaint = started.communicate(timeout=60)
    assert started.returncode == 1 and "Traceback" not in complaint
    listed = rows(out / "summary.csv")
    folders = [path for path in out.iterdir() if path.is_dir()]
    assert 1 <= len(folders) == len(listed) < 40
    assert all({file.name for file in path.iterdir()} == FILES for path in folders)
    assert f"Stopped: {len(listed)} of 40 had their turn, {40 - len(listed)} are missing." in complaint
    assert f"{len(listed)} drafted; all of them" in said


@pytest.mark.skipif(os.name == "nt", reason="no pseudo-terminals")
def test_on_a_terminal_a_bar_counts_everybody_also_who_is_refused(tmp_path: Path) -> None:
    import pty

    three = people(3)
    for person in three:
        person["hip_girth"] = "wide"  # nobody is drafted, so that the bar alone is tried
    (tmp_path / "class.csv").write_text(table(three), encoding="utf-8")
    ours, theirs = pty.openpty()
    try:
        ended = subprocess.run(
            [sys.executable, "-m", "outputs.commands.main", "draft-all", "class.csv"],
            cwd=tmp_path, env={**os.environ, "PYTHONPATH": str(ROOT), "PYTHONIOENCODING": "utf-8"},
            stdout=subprocess.PIPE, stderr=theirs, timeout=60, check=False,
        )  # fmt: skip
        seen = os.read(ours, 1 << 16).decode("utf-8")
    finally:
        os.close(theirs)
        os.close(ours)
    assert ended.returncode == 2 and b"3 refused; all of them" in ended.stdout
    assert re.search(r"drafting .*3/3", seen) and seen.count("row ") == 3


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--stretch", "300", "nobody.csv"), ["--stretch = 300", "nobody.csv: There is no such file."]),
        (("--workers", "0", "class.csv"), ["0 is not in the range"]),
        (("--style", "shorts", "--set", "leg.hem_below_knee=50 %", "class.csv"), ["cannot lie both"]),
        (("--style", "bootcat", "class.csv"), ['Did you mean "bootcut"?']),
    ],
)  # fmt: skip
def test_wrong_options_are_told_before_anything_is_made(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...], told: list[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("class.csv").write_text(table(people(1)), encoding="utf-8")
    result = run(*words)
    assert result.exit_code == 2 and all(text in result.stderr for text in told)
    assert os.listdir() == ["class.csv"]


def test_a_table_of_the_same_name_that_is_not_ours_stays(tmp_path: Path) -> None:
    (tmp_path / "class.csv").write_text(table(people(1)), encoding="utf-8")
    (tmp_path / "summary.csv").write_text("my accounts\n")
    result = run(tmp_path / "class.csv", "--out", tmp_path, *QUICK)
    assert result.exit_code == 2 and "This is not the table of a class" in result.stderr
    assert (tmp_path / "summary.csv").read_text() == "my accounts\n"


# --- the table


DONE = Outcome(
    number=1, place="class.csv, row 2", name="Ada " + "x" * 40, folder="ada", state=State.DRAFTED,
    numbers=Numbers(girths=(762, 1016, 635, 457.2, 406.4), crotch=(None, 660.4), sheets=31, warnings=2),
)  # fmt: skip
REFUSED = Outcome(
    number=2, place="class.csv, row 3", name="Bo", folder="", state=State.REFUSED,
    problems=(
        Problem("hip_girth", "The hip girth is unusual.", Severity.WARNING),
        Problem("", "Something else lies there.", Severity.REFUSAL, source="out/bo"),
    ),
)  # fmt: skip


def test_the_table_speaks_in_the_unit_asked_for() -> None:
    head, ada, bo, note = summary_table([DONE, REFUSED], Unit.INCH)
    assert head.startswith("pattern, in ") and bo.split() == ["Bo", "refused"]
    assert ada.split()[2:] == ["30.0", "40.0", "25.0", "18.0", "16.0", "–", "26.0", "31", "*"]
    assert len(ada) <= 80 and "…" in ada and note.startswith("* has warnings")
    table = class_table([DONE, REFUSED], Unit.INCH).files[SUMMARY_FILE]
    written = content(table).decode("utf-8-sig").splitlines()
    assert list(csv.reader(written))[1][4:13] == [
        "30.00", "40.00", "25.00", "18.00", "16.00", "", "26.00", "31", "2"
    ]  # fmt: skip
    assert list(csv.reader(written))[2][-1] == "Something else lies there."


def test_who_was_there_already_has_sheets_and_warnings_in_the_table_and_who_was_refused_has_not() -> None:
    outcomes = [DONE, replace(DONE, state=State.THERE), REFUSED]
    written = csv.DictReader(
        content(class_table(outcomes, Unit.CM).files[SUMMARY_FILE]).decode("utf-8-sig").splitlines()
    )
    assert [(row["sheets"], row["warnings"]) for row in written] == [("31", "2"), ("31", "2"), ("", "")]


def test_a_refusal_is_told_with_place_and_name_warnings_marked() -> None:
    assert refusal_lines(REFUSED).splitlines() == [
        "class.csv, row 3: Bo: warning: hip_girth: The hip girth is unusual.",
        "class.csv, row 3: Bo: out/bo: Something else lies there.",
    ]
