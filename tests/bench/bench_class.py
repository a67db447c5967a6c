"""What a class costs: python tests/bench/bench_class.py [fewer more [rounds]]; else 50, 200 and 3.

Invented people are drafted by `draft-all`, as DXF and pictures: once `fewer` and once `more` by one worker,
for the memory; and, in `rounds` turns, a dozen by one worker, a dozen by two, and a dozen one after the other
in this process, whose time is the floor. Memory is the largest resident size of the process that hands out
the work, and of the worker.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from os import environ
from pathlib import Path

HOME = Path(__file__).parents[2]
sys.path.insert(0, str(HOME))

from outputs.files.folder import write_folder  # noqa: E402
from outputs.jobs.draft import draft  # noqa: E402
from outputs.jobs.options import DraftOptions  # noqa: E402
from outputs.reading.class_file import find_people  # noqa: E402
from outputs.reading.measurements_file import MeasurementFile  # noqa: E402
from styles.choice.style import STRAIGHT  # noqa: E402
from tests.bench.stopwatch import side_by_side, table  # noqa: E402
from tests.invented_class import people  # noqa: E402
from tests.invented_class import table as table_of  # noqa: E402

DOZEN = 12
RUN = """
import resource, sys
from outputs.commands.main import main
code = 0
try:
    main()
except SystemExit as end:
    code = end.code
if __name__ == "__main__":
    sizes = [resource.getrusage(who).ru_maxrss for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
    print(code or 0, *sizes)
"""


def draft_all(folder: Path, count: int, workers: int) -> tuple[float, float]:
    """Draft so many people anew; return MB of the process that hands out, and of the worker."""
    source = folder / f"class-{count}.csv"
    source.write_text(table_of(people(count)), encoding="utf-8")
    with tempfile.TemporaryDirectory(dir=folder) as out:
        words = ["draft-all", source, "--out", out, "--workers", workers, "--format", "dxf"]
        done = subprocess.run(
            [sys.executable, "-c", RUN, *map(str, words)],
            env={**environ, "PYTHONPATH": str(HOME)}, capture_output=True, text=True, check=True,
        )  # fmt: skip
        code, own, worker = done.stdout.splitlines()[-1].split()
        drafted = len(list(Path(out).glob("*/figures.json")))
    assert code == "0" and drafted == count, done.stdout + done.stderr
    return int(own) / 1024, int(worker) / 1024


def one_by_one(folder: Path) -> None:
    """Draft a dozen in this process."""
    source = folder / "dozen.csv"
    source.write_text(table_of(people(DOZEN)), encoding="utf-8")
    with tempfile.TemporaryDirectory(dir=folder) as out:
        for number, person in enumerate(find_people(source)):
            assert isinstance(person.read, MeasurementFile)
            drafted = draft(person.read, STRAIGHT, DraftOptions(formats=("dxf",)))
            write_folder(Path(out) / str(number), drafted.files, force=False)


def main() -> None:
    given = [int(word) for word in sys.argv[1:]]
    fewer, more, rounds = (given + [50, 200, 3][len(given) :])[:3]
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        for count in (fewer, more):
            own, worker = draft_all(folder, count, 1)
            print(f"{count:4d} people: {own:5.0f} MB handing out, {worker:5.0f} MB the worker", flush=True)
        if not rounds:
            return
        taken = side_by_side(
            lambda: draft_all(folder, DOZEN, 1),
            lambda: draft_all(folder, DOZEN, 2),
            lambda: one_by_one(folder),
            rounds=rounds,
        )
    print(table(["a dozen, 1 worker", "a dozen, 2 workers", "floor: a dozen in one process"], taken))


if __name__ == "__main__":
    main()
