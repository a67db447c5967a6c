"""All benches in turn: python -m tests.bench [whole]; then one table of their ratios and floors.

Without `whole` they take few rounds and few people, some minutes together.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from tests.bench.stopwatch import read_table

HERE = Path(__file__).parent
QUICK = {"bench_block": ["5"], "bench_class": ["5", "10", "1"], "bench_survey": ["40"]}
ROUNDS = ["3"]
"""What a bench is given that is not among the quick ones."""


def main() -> None:
    whole = sys.argv[1:] == ["whole"]
    ratios: dict[str, list[tuple[str, float]]] = {}
    for bench in sorted(HERE.glob("bench_*.py")):
        print(f"\n== {bench.stem}", flush=True)
        given = [] if whole else QUICK.get(bench.stem, ROUNDS)
        done = subprocess.run([sys.executable, bench, *given], stdout=subprocess.PIPE, text=True, check=True)
        print(done.stdout, end="", flush=True)
        ratios[bench.stem] = read_table(done.stdout)
    print(f"\n{'bench':14s} {'what':46s} {'to floor':>9s}")
    for name, rows in ratios.items():
        for what, ratio in rows:
            print(f"{name.removeprefix('bench_'):14s} {what:46s} {ratio:8.2f}x")


if __name__ == "__main__":
    main()
