"""The house: what may stand where, and who may know of whom."""

import ast
import sys
import tomllib
from collections.abc import Iterator
from fnmatch import fnmatch
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
ROOMS = ("drafting", "styles", "outputs")
MODULES = [path for room in ROOMS for path in sorted((ROOT / room).rglob("*.py"))]
TOP = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", *ROOMS, "tests"}
# What reads files, talks to a terminal or draws on a page.
OUTSIDE = {
    "argparse", "cmd", "csv", "curses", "getpass", "glob", "io", "json", "logging", "os", "pathlib", "pickle",
    "shutil", "socket", "subprocess", "sys", "tempfile", "tomllib", "urllib",
}  # fmt: skip


def imported(path: Path) -> Iterator[str]:
    """Yield the full name of every module that a file imports, inside functions too."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: a relative import hides where it leads"
            yield node.module or ""


def room(path: Path) -> str:
    return path.relative_to(ROOT).parts[0]


def roots(path: Path) -> set[str]:
    return {name.partition(".")[0] for name in imported(path)}


def names(paths: list[Path]) -> list[str]:
    return [str(path.relative_to(ROOT)) for path in paths]


def test_there_are_modules_in_every_room() -> None:
    assert {room(path) for path in MODULES} == set(ROOMS)


@pytest.mark.parametrize("path", MODULES, ids=names(MODULES))
def test_imports_go_from_outputs_over_styles_to_drafting_only(path: Path) -> None:
    later = set(ROOMS[ROOMS.index(room(path)) + 1 :]) | {"tests"}
    assert not roots(path) & later


@pytest.mark.parametrize("path", MODULES, ids=names(MODULES))
def test_a_room_uses_the_libraries_it_is_given(path: Path) -> None:
    given = {
        "drafting": {"numpy", "shapely"},
        "styles": {"numpy", "shapely"},
        "outputs": {"PIL", "click", "matplotlib", "numpy", "reportlab", "shapely", "spyrrow"},
    }[room(path)]
    assert roots(path) <= given | set(ROOMS) | set(sys.stdlib_module_names)


ENGINE = [path for path in MODULES if room(path) == "drafting"]


@pytest.mark.parametrize("path", ENGINE, ids=names(ENGINE))
def test_the_engine_touches_no_file_and_no_terminal(path: Path) -> None:
    assert not roots(path) & OUTSIDE
    called = {
        node.func.id
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
    }
    assert not called & {"open", "print", "input"}


def test_nothing_else_stands_at_the_top_of_the_house() -> None:
    made_by_use = [line.strip("/") for line in (ROOT / ".gitignore").read_text().split()]
    found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    assert {name for name in found if not any(fnmatch(name, made) for made in made_by_use)} == TOP


def test_every_room_is_packed_into_the_installed_project() -> None:
    packed = tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["setuptools"]["packages"]
    found = {".".join(path.parent.relative_to(ROOT).parts) for path in MODULES}
    assert set(packed) == found


def test_tests_mirror_the_rooms() -> None:
    found = {path.name for path in (ROOT / "tests").iterdir() if path.is_dir() and path.name != "__pycache__"}
    assert found <= {*ROOMS, "outside", "bench"}
