"""How long the whole `draft` command takes beside the bare libraries: python tests/bench/bench_draft.py
[rounds].

The floor imports the same libraries and writes as many pages, curves and figures as the command did,
bare. Both run in turns as processes of their own and find their modules compiled, as an installed program
does; the ratio is the median of the ratios of each turn.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

HOME = Path(__file__).parents[2]
sys.path.insert(0, str(HOME))

import pdfplumber  # noqa: E402

from drafting import draft_block  # noqa: E402
from outputs.demo import DEMO_FILES  # noqa: E402
from outputs.reading.measurements_file import read_measurements  # noqa: E402
from tests.bench.stopwatch import side_by_side, table  # noqa: E402

COMPILED = tempfile.TemporaryDirectory()
"""Where the modules are compiled once, whatever the environment says; it goes with the process."""


def run(*arguments: object, code: int = 0) -> None:
    environment = {**os.environ, "PYTHONPATH": str(HOME), "PYTHONPYCACHEPREFIX": COMPILED.name}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    done = subprocess.run(
        [sys.executable, *map(str, arguments)], capture_output=True, env=environment, text=True
    )
    assert done.returncode == code, done.stderr


def written(pdf: Path) -> tuple[int, int]:
    """Return the pages of a pattern and its lines and curves, all pages together."""
    with pdfplumber.open(pdf) as document:
        return len(document.pages), sum(len(p.curves) + len(p.lines) + len(p.rects) for p in document.pages)


def main() -> None:
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 9
    person = DEMO_FILES[0]
    block = draft_block(read_measurements(person).measurements)
    drawn = sum(len(panel.steps) for panel in (block.front, block.back))
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        target = folder / "jeans"
        start = "from outputs.commands.main import main; main()"

        def draft() -> None:
            shutil.rmtree(target, ignore_errors=True)
            run("-c", start, "draft", person, "--out", target)

        draft()
        pages, curves = written(target / "pattern-a4.pdf")
        bare = (HOME / "tests" / "bench" / "bare_pages.py", pages, -(-curves // pages), drawn, folder)
        refused = folder / "refused.toml"
        refused.write_text(
            'wearer = "Nobody"\nunit = "cm"\n[measurements]\nwaist_girth = 7600\n', encoding="utf-8"
        )
        taken = side_by_side(
            draft,
            lambda: run("-c", start, "--help"),
            lambda: run("-c", start, "draft", refused, code=2),
            lambda: run("-c", "pass"),
            lambda: run(*bare),
            rounds=rounds,
        )  # fmt: skip
    print(f"{pages} pages, {curves} lines and curves, {rounds} rounds")
    print(
        table(
            [
                "draft, whole command",
                "--help",
                "a refused file",
                "python alone",
                "floor: libraries and bare pages",
            ],
            taken,
        )
    )


if __name__ == "__main__":
    main()
