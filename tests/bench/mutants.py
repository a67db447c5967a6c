"""Whether the tests notice a wrong number or step: python tests/bench/mutants.py [--each 12] [module ...].

Copies the project into a temporary folder, changes one number or one step of one module there at a time, and
runs the tests that stand beside the module in `TESTS` until one fails. Which changes are made is drawn by
chance, the same each time (`--seed`). It takes some seconds for each change that is caught and as long as
all tests of its list for one that survives, so it is run by hand. What it prints is a sample, not a proof: a
survivor is a missing test, a change that makes no difference, or a number that is anybody's choice.

Hypothesis draws few examples here, always the same, so a change may survive that the whole suite notices.
"""

from __future__ import annotations

import argparse
import ast
import multiprocessing
import os
import random
import shutil
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from multiprocessing.connection import Connection
from pathlib import Path
from time import perf_counter

# Loaded once, before the forks; the project itself is loaded anew in each.
os.environ.update(dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"), "1"))
import numpy  # noqa: F401
import pytest
import shapely.geometry  # noqa: F401

ROOT = Path(__file__).parents[2]
ROOMS = ("drafting", "styles", "outputs", "tests")
SURVEY = "shared"
"""The folder beside the project that holds the survey, when there is one."""
EXAMPLES = 12
SLOWEST = 300.0
"""After so many seconds a change counts as caught: it made something endless."""

BLOCK = (
    "drafting/test_panel.py",
    "drafting/test_waist_line.py",
    "outside/test_published_drafts.py",
    "drafting/test_cases_fit.py",
    "drafting/test_block.py",
)
"""What draws whole blocks."""
TOP = (
    "styles/test_upper.py",
    "styles/test_rise_and_growth.py",
    "styles/test_back_dart.py",
    "styles/test_jeans.py",
)
"""What draws yokes and bands."""
TESTS = {
    "drafting/geometry/solve.py": (
        "drafting/test_solve.py",
        "drafting/test_means.py",
        "drafting/test_block.py",
    ),
    "drafting/block/suppression.py": (
        "drafting/test_suppression.py",
        "drafting/test_cases_fit.py",
        "outside/test_published_drafts.py",
    ),
    "drafting/block/shares.py": ("drafting/test_proportions.py", "drafting/test_sides.py", *BLOCK),
    "drafting/block/fitting.py": ("drafting/test_means.py", "drafting/test_sides.py", *BLOCK),
    "drafting/pieces/trueing.py": ("drafting/test_trueing.py", "styles/test_jeans.py"),
    "drafting/pieces/allowance.py": ("drafting/test_allowance.py",),
    "drafting/block/waist_line.py": BLOCK,
    "drafting/block/panel.py": (*BLOCK, "drafting/test_leg_shape.py"),
    "drafting/block/crotch_curve.py": ("drafting/test_crotch_curve.py", "drafting/test_panel.py", *BLOCK),
    "drafting/block/thighs.py": ("drafting/test_thighs.py", "drafting/test_sides.py"),
    "drafting/geometry/curves.py": (
        "drafting/test_curves.py",
        "drafting/test_paths.py",
        "drafting/test_panel.py",
    ),
    "drafting/block/means.py": ("drafting/test_means.py", "drafting/test_fit_report.py", *BLOCK),
    "drafting/base/construction_proportions.py": ("drafting/test_proportions.py", "test_sources.py", *BLOCK),
    "drafting/block/panel_plans.py": ("drafting/test_proportions.py", *BLOCK),
    "drafting/block/leg_shape.py": ("drafting/test_leg_shape.py",),
    "drafting/body/body.py": ("drafting/test_body.py", "drafting/test_proportions.py"),
    "drafting/block/alteration.py": ("drafting/test_corrections.py",),
    "drafting/body/measurement_table.py": (
        "outside/test_survey_relations.py",
        "drafting/test_measurements.py",
    ),
    "drafting/body/relation.py": ("drafting/test_measurement_relations.py", "drafting/test_measurements.py"),
    "drafting/body/relations.py": (
        "drafting/test_measurement_relations.py",
        "outside/test_survey_relations.py",
        "drafting/test_measurements.py",
    ),
    "drafting/body/regressions.py": ("drafting/test_regressions.py", "outside/test_knee_guess.py"),
    "drafting/body/corrections.py": ("drafting/test_correction_checks.py", "drafting/test_corrections.py"),
    "styles/choice/style.py": (
        "styles/test_front_pocket.py",
        "styles/test_back_pocket.py",
        "outside/test_published_details.py",
        "outside/test_published_styles.py",
        "styles/test_jeans.py",
    ),
    "styles/cloth/shrinkage_and_stretch.py": ("styles/test_cloth.py",),
    "styles/parts/fly_length.py": ("styles/test_fly.py", "styles/test_fly_buttons.py"),
    "styles/parts/fly.py": ("styles/test_fly.py", "styles/test_fly_buttons.py"),
    "styles/parts/pocket_plan.py": ("styles/test_front_pocket.py", "styles/test_kinds.py"),
    "styles/parts/front_leg.py": ("styles/test_front_leg.py", "styles/test_front_pocket.py"),
    "styles/parts/back_pocket.py": ("styles/test_back_pocket.py", "styles/test_kinds.py"),
    "styles/top/back_dart.py": ("styles/test_back_dart.py",),
    "styles/parts/shaped_band.py": ("styles/test_waistband.py",),
    "styles/parts/belt_loops.py": ("styles/test_belt_loops.py",),
    "styles/base/hem.py": ("styles/test_turn_up.py",),
    "styles/top/worn_level.py": ("styles/test_worn_level.py",),
    "styles/top/upper.py": TOP,
    "styles/top/yoke.py": TOP,
}
"""The tests of each module, those first that are likeliest to notice and quick."""


@dataclass(frozen=True)
class Change:
    """One change of a file: the bytes from start to end become others."""

    line: int
    start: int
    end: int
    old: str
    new: str

    def made_in(self, text: bytes) -> bytes:
        return text[: self.start] + self.new.encode() + text[self.end :]


class Finder:
    """Finds what can be changed in one file."""

    def __init__(self, text: bytes) -> None:
        self.text = text
        self.tree = ast.parse(text)
        self.starts = [0]
        for line in text.splitlines(keepends=True):
            self.starts.append(self.starts[-1] + len(line))

    def changes(self) -> Iterator[Change]:
        yield from self._numbers(self.tree)
        for node in ast.walk(self.tree):
            if isinstance(node, ast.FunctionDef):
                for part in node.body:
                    for inner in ast.walk(part):
                        yield from self._steps(inner)

    def _numbers(self, node: ast.AST) -> Iterator[Change]:
        """Yield each number outside the functions, made a tenth larger, one larger, and of the other sign."""
        if isinstance(node, ast.FunctionDef | ast.Lambda | ast.JoinedStr):
            return
        if isinstance(node, ast.Constant) and type(node.value) in (int, float):
            made = [f"{node.value + 1:g}", f"({-node.value:g})", f"{node.value * 1.1:.6g}"]
            for new in made[: 3 if node.value else 1]:
                yield self._change(node, node, new)
        for child in ast.iter_child_nodes(node):
            yield from self._numbers(child)

    def _steps(self, node: ast.AST) -> Iterator[Change]:
        """Yield a comparison turned round, a plus made a minus, a smaller made a larger, a step left out."""
        turned = {"<": ">", "<=": ">=", ">": "<", ">=": "<=", "+": "-", "-": "+", "==": "!=", "*": "/"}
        if isinstance(node, ast.Compare) and len(node.ops) == 1:
            yield from self._between(node.left, node.comparators[0], turned)
        elif isinstance(node, ast.BinOp):
            yield from self._between(node.left, node.right, turned)
        elif isinstance(node, ast.Name) and node.id in ("min", "max"):
            yield self._change(node, node, "max" if node.id == "min" else "min")
        elif isinstance(node, ast.If | ast.IfExp):
            yield self._change(node.test, node.test, "False")
        elif isinstance(node, ast.AugAssign | ast.Break | ast.Continue) or (
            isinstance(node, ast.Expr) and isinstance(node.value, ast.Call)
        ):
            yield self._change(node, node, "pass")

    def _between(self, left: ast.expr, right: ast.expr, turned: dict[str, str]) -> Iterator[Change]:
        start, end = self._place(left)[1], self._place(right)[0]
        between = self.text[start:end].decode()
        sign = between.strip("() \n\\")
        if sign in turned:
            at = start + between.index(sign)
            yield Change(left.end_lineno or 0, at, at + len(sign), sign, turned[sign])

    def _change(self, first: ast.AST, last: ast.AST, new: str) -> Change:
        start, end = self._place(first)[0], self._place(last)[1]
        old = " ".join(self.text[start:end].decode().split())
        return Change(getattr(first, "lineno", 0), start, end, old, new)

    def _place(self, node: ast.AST) -> tuple[int, int]:
        at = {name: getattr(node, name) for name in ("lineno", "col_offset", "end_lineno", "end_col_offset")}
        start = self.starts[at["lineno"] - 1] + at["col_offset"]
        return start, self.starts[at["end_lineno"] - 1] + at["end_col_offset"]


class FirstFailure:
    """Tells which test failed first."""

    def __init__(self, end: Connection) -> None:
        self.end = end

    def pytest_configure(self) -> None:
        # Not imported sooner: pytest rewrites it as it loads it.
        from hypothesis import HealthCheck, Phase, settings

        settings.register_profile(
            "few",
            derandomize=True,
            max_examples=EXAMPLES,
            database=None,
            deadline=None,
            # Which body fails does not matter, so none is looked for that is simpler.
            phases=(Phase.explicit, Phase.generate),
            suppress_health_check=list(HealthCheck),
        )
        settings.load_profile("few")

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed:
            self.end.send(report.nodeid)

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        if report.failed:
            self.end.send(report.nodeid)


def _run(tree: Path, tests: list[str], end: Connection, keep_compiled: bool) -> None:
    os.chdir(tree)
    sys.path[:] = [str(tree), *(entry for entry in sys.path if entry not in ("", str(Path(__file__).parent)))]
    sys.dont_write_bytecode = not keep_compiled
    with (tree / "tests.log").open("w") as log:
        os.dup2(log.fileno(), 1)
        os.dup2(log.fileno(), 2)
    given = ["-x", "-q", "-p", "no:cacheprovider", "-p", "no:xdist", "-p", "no:cov"]
    os._exit(int(pytest.main([*given, *tests], plugins=[FirstFailure(end)])))


def failure(tree: Path, tests: list[str], *, keep_compiled: bool = False) -> str | None:
    """Return the first test that fails in a tree, None when all pass."""
    ours, theirs = multiprocessing.Pipe(duplex=False)
    fork = multiprocessing.get_context("fork")
    child = fork.Process(target=_run, args=(tree, tests, theirs, keep_compiled))
    child.start()
    child.join(SLOWEST)
    if child.is_alive():
        child.kill()
        child.join()
        return "its time"
    if child.exitcode == 0:
        return None
    return str(ours.recv()) if ours.poll() else f"pytest (exit {child.exitcode})"


def copied(to: Path) -> Path:
    """Return a copy of the project, with the survey beside it."""
    tree = to / "project"
    for room in ROOMS:
        shutil.copytree(ROOT / room, tree / room, ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("pyproject.toml", "README.md", "DEVELOPERS.md"):
        shutil.copy(ROOT / name, tree)
    if (ROOT.parent / SURVEY).exists():
        (to / SURVEY).symlink_to(ROOT.parent / SURVEY)
    return tree


def sample(module: str, each: int, seed: int) -> list[Change]:
    """Return the changes that are tried: at most one at a place, drawn by chance, in the file's order."""
    draw = random.Random(f"{seed} {module}")
    places: dict[int, list[Change]] = {}
    for change in Finder((ROOT / module).read_bytes()).changes():
        places.setdefault(change.start, []).append(change)
    chosen = draw.sample(sorted(places), min(each, len(places)))
    return [draw.choice(places[start]) for start in sorted(chosen)]


def tried(tree: Path, module: str, changes: list[Change]) -> int:
    """Try some changes of a module, print what came of each, and return how many survived."""
    tests = [f"tests/{name}" for name in TESTS[module]]
    file, survived = tree / module, 0
    whole = file.read_bytes()
    for change in changes:
        started = perf_counter()
        for compiled in (file.parent / "__pycache__").glob(f"{file.stem}.*"):
            compiled.unlink()
        file.write_bytes(change.made_in(whole))
        try:
            noticed = failure(tree, tests)
        finally:
            file.write_bytes(whole)
        survived += noticed is None
        what = f"{module}:{change.line}: {change.old} -> {change.new}"
        seconds = perf_counter() - started
        word = "caught" if noticed else "SURVIVED"
        print(f"{word:9s}{what}   [{noticed or ''} {seconds:.0f} s]", flush=True)
        first = (noticed or "").partition("::")[0]
        if first in tests:
            # What noticed one change of a module is the likeliest to notice the next.
            tests.remove(first)
            tests.insert(0, first)
    return survived


def main() -> None:
    asked = argparse.ArgumentParser(description="Change the project and see whether its tests notice.")
    asked.add_argument(
        "modules", nargs="*", default=[*TESTS], help="such as drafting/geometry/solve.py; all without"
    )
    asked.add_argument("--each", type=int, default=12, help="how many changes of each module")
    asked.add_argument("--seed", type=int, default=1)
    given = asked.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        tree = copied(Path(folder))
        needed = dict.fromkeys(f"tests/{name}" for module in given.modules for name in TESTS[module])
        if noticed := failure(tree, [*needed], keep_compiled=True):
            sys.exit(f"Unchanged, the project fails already: {noticed}\n{(tree / 'tests.log').read_text()}")
        rows = []
        for module in given.modules:
            changes = sample(module, given.each, given.seed)
            rows.append((module, len(changes), tried(tree, module, changes)))
    print(f"\n{'module':36s}{'changed':>9s}{'caught':>9s}{'survived':>9s}")
    for module, made, survived in (*rows, ("all", sum(r[1] for r in rows), sum(r[2] for r in rows))):
        print(f"{module:36s}{made:9d}{made - survived:9d}{survived:9d}")


if __name__ == "__main__":
    main()
