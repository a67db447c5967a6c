"""The house: its rooms in order, what each may know of the others, and which libraries it may use.

`ROOMS` is the table. A room knows only rooms above it, so that there is no circle among them. An import
counts wherever it stands: in a function, as `from package import module`, or as a name handed to
`import_module`. A line that allows more than is used fails, too, so that the table says what is.
"""

import ast
import sys
import tomllib
from collections.abc import Iterator
from fnmatch import fnmatch
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
FLOORS = ("drafting", "styles", "outputs")
TOP = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", *FLOORS, "tests"}
MOST_MODULES = 16
"""In one room: more could not be found by their names."""

# room: the rooms that it may know, those of its own floor last and without the floor's name; its libraries,
# and of the standard library what reads files, talks to a terminal or starts processes.
ROOMS = {
    "drafting.base": ("", ""),
    "drafting.geometry": ("base", "numpy"),
    "drafting.body": ("base", ""),
    "drafting.block": ("base geometry body", "numpy"),
    "drafting.pieces": ("base geometry body", "numpy shapely"),
    "drafting.report": ("base geometry body block pieces", "numpy shapely"),
    "drafting.lesson": ("base geometry body block", ""),
    "drafting": ("base body block report", ""),
    "styles.front_pockets": ("drafting: geometry", ""),
    "styles.back_pockets": ("drafting: base geometry", ""),
    "styles.choice": ("drafting: base body block; front_pockets back_pockets", "pathlib tomllib"),
    "styles.base": ("drafting: base geometry body block pieces; choice", "numpy shapely"),
    "styles.cloth": ("drafting: base geometry body block pieces; choice", "numpy"),
    "styles.top": ("drafting: base geometry body block pieces; choice", "shapely"),
    "styles.parts": (
        "drafting: base geometry body block pieces; front_pockets back_pockets choice base top", "",
    ),
    "styles.making": ("drafting: base geometry body block pieces report; choice base cloth top parts", ""),
    "styles": ("choice making", ""),
    "outputs.demo": ("", "pathlib"),
    "outputs.words": ("drafting: base body", ""),
    "outputs.files": ("drafting: base; words", "csv io os pathlib shutil tempfile tomllib"),
    "outputs.paper": ("drafting: base", ""),
    "outputs.reading": ("drafting: base body; styles: choice cloth making; words files", "json os pathlib"),
    "outputs.canvas": (
        "drafting: base geometry; words paper", "PIL io matplotlib numpy pathlib reportlab shapely",
    ),
    "outputs.packing": ("drafting: base geometry pieces", "numpy shapely"),
    "outputs.sheets": ("drafting: geometry pieces; paper canvas packing", "numpy shapely"),
    "outputs.print": (
        "drafting: base geometry pieces; words files paper canvas packing sheets", "numpy shapely",
    ),
    "outputs.cloth": (
        "drafting: base geometry pieces; words files paper canvas packing sheets",
        "json numpy shapely spyrrow",
    ),
    "outputs.measuring": ("drafting: base geometry body; words paper reading canvas sheets", "numpy"),
    "outputs.fit": ("drafting: base geometry body block report; words paper canvas", "matplotlib"),
    "outputs.compare": (
        "drafting: base geometry body block pieces report; styles: choice base top making; words "
        "paper reading canvas sheets print fit", "matplotlib numpy",
    ),
    "outputs.lesson": (
        "drafting: base geometry body block lesson; words files paper reading canvas packing sheets "
        "print fit", "numpy shapely",
    ),
    "outputs.jobs": (
        "drafting: base body block pieces report lesson; styles: choice cloth making; words files "
        "paper reading print cloth measuring fit compare lesson", "csv io json",
    ),
    "outputs.lines": (
        "drafting: base body block pieces report lesson; styles: choice cloth making; words files "
        "paper reading print cloth fit compare lesson jobs", "numpy pathlib",
    ),
    "outputs.running": (
        "drafting: base; styles: choice; words files reading jobs", "multiprocessing os pathlib sys",
    ),
    "outputs.commands": (
        "drafting: base body; styles: choice; demo words files paper reading print cloth lesson jobs "
        "lines running", "click io os pathlib shutil sys",
    ),
    "outputs": ("", ""),
}  # fmt: skip

OUTSIDE = {
    "argparse", "cmd", "csv", "curses", "getpass", "glob", "io", "json", "logging", "multiprocessing", "os",
    "pathlib", "pickle", "shutil", "socket", "subprocess", "sys", "tempfile", "tomllib", "urllib",
}  # fmt: skip
"""What reads files, talks to a terminal or starts a process."""


def dotted(path: Path) -> str:
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


MODULES = {dotted(path): path for floor in FLOORS for path in sorted((ROOT / floor).rglob("*.py"))}
PACKAGES = {name for name, path in MODULES.items() if path.name == "__init__.py"}


def room_of(module: str) -> str:
    return module if module in PACKAGES else module.rpartition(".")[0]


@cache
def imported(module: str) -> frozenset[str]:
    """Return the full name of every module that a module imports, wherever the import stands."""
    return frozenset(_imported(module))


def _imported(module: str) -> Iterator[str]:
    for node in ast.walk(ast.parse(MODULES[module].read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0 and node.module, f"{module}: a relative import hides where it leads"
            inner = [f"{node.module}.{alias.name}" for alias in node.names]
            modules = [name for name in inner if name in MODULES]
            yield from modules
            # The package alone is meant only where a name of its own is taken.
            if len(modules) < len(inner):
                yield node.module
        elif isinstance(node, ast.Constant) and "." in str(node.value) and node.value in MODULES:
            yield str(node.value)  # a name that is handed to import_module


def allowed(room: str) -> set[str]:
    found = set()
    for group in ROOMS[room][0].split("; "):
        floor, _, names = group.rpartition(": ")
        found |= {f"{floor or room.partition('.')[0]}.{name}" for name in names.split()}
    return found


def known(room: str) -> set[str]:
    inside = [module for module in MODULES if room_of(module) == room]
    used = {room_of(name) for module in inside for name in imported(module) if name in MODULES}
    return used - {room}


def libraries(room: str) -> set[str]:
    inside = [module for module in MODULES if room_of(module) == room]
    roots = {name.partition(".")[0] for module in inside for name in imported(module)} - set(FLOORS)
    return {name for name in roots if name in OUTSIDE or name not in sys.stdlib_module_names}


def test_every_room_stands_in_the_table() -> None:
    assert {room_of(module) for module in MODULES} == set(ROOMS)


@pytest.mark.parametrize("room", ROOMS)
def test_a_room_knows_the_rooms_that_the_table_says(room: str) -> None:
    assert known(room) == allowed(room)


@pytest.mark.parametrize("room", ROOMS)
def test_a_room_knows_only_rooms_above_it(room: str) -> None:
    order = list(ROOMS)
    assert all(order.index(name) < order.index(room) for name in allowed(room))


@pytest.mark.parametrize("room", ROOMS)
def test_a_room_uses_the_libraries_that_the_table_says(room: str) -> None:
    assert libraries(room) == set(ROOMS[room][1].split())


@pytest.mark.parametrize("room", ROOMS)
def test_a_room_is_small_enough_to_look_around_in(room: str) -> None:
    inside = [module for module in MODULES if room_of(module) == room and module not in PACKAGES]
    assert len(inside) <= MOST_MODULES


@pytest.mark.parametrize("floor", FLOORS)
def test_no_module_lies_on_a_floor_beside_the_rooms(floor: str) -> None:
    assert [path.name for path in (ROOT / floor).glob("*.py")] == ["__init__.py"]


def test_no_module_knows_itself_over_others() -> None:
    done: set[str] = set()

    def walk(module: str, above: tuple[str, ...]) -> None:
        assert module not in above, " -> ".join((*above, module))
        if module not in done:
            for name in sorted(imported(module) & MODULES.keys()):
                walk(name, (*above, module))
            done.add(module)

    for module in MODULES:
        # A public face loads late what it shows, and every module lies below its floor's face.
        if module not in FLOORS:
            walk(module, ())


ENGINE = [module for module in MODULES if module.startswith("drafting")]


@pytest.mark.parametrize("module", ENGINE)
def test_the_engine_touches_no_file_and_no_terminal(module: str) -> None:
    called = {
        node.func.id
        for node in ast.walk(ast.parse(MODULES[module].read_text(encoding="utf-8")))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
    }
    assert not called & {"open", "print", "input"}


def test_nothing_else_stands_at_the_top_of_the_house() -> None:
    made_by_use = [line.strip("/") for line in (ROOT / ".gitignore").read_text().split()]
    found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    assert {name for name in found if not any(fnmatch(name, made) for made in made_by_use)} == TOP


def test_every_room_is_packed_into_the_installed_project() -> None:
    packed = tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["setuptools"]["packages"]
    assert set(packed) == PACKAGES


def test_tests_mirror_the_rooms() -> None:
    found = {path.name for path in (ROOT / "tests").iterdir() if path.is_dir() and path.name != "__pycache__"}
    assert found <= {*FLOORS, "outside", "bench", "issues"}
