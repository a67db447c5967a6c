"""DEVELOPERS.md is true to the code: rooms, modules it names, codes of findings, and the notebook."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import matplotlib
import pypdfium2
import pytest

ROOT = Path(__file__).parents[1]
GUIDE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
FLOORS = ("drafting", "styles", "outputs")
MODULES = [path for floor in FLOORS for path in sorted((ROOT / floor).rglob("*.py"))]
PATHS = sorted(set(re.findall(r"`((?:drafting|styles|outputs|tests)/[\w/.]+)`", GUIDE)))
ROOMS = {str(path.parent.relative_to(ROOT)) for path in MODULES} - set(FLOORS)


def section(title: str) -> str:
    found = GUIDE.partition(f"\n## {title}\n")[2]
    assert found, title
    return found.partition("\n## ")[0]


def test_every_room_has_its_line() -> None:
    lines = section("The house").splitlines()
    named = [re.findall(r"`([a-z_/]+)`", line.split("|")[1]) for line in lines if line.startswith("| `")]
    told = {name for names in named for name in names} | {"styles/back_pockets"}
    assert told >= ROOMS


@pytest.mark.parametrize(
    "named", sorted(set(re.findall(r"`((?:drafting|styles|outputs|tests)/[\w/.]+)`", GUIDE)))
)
def test_what_it_names_is_there(named: str) -> None:
    assert (ROOT / named).exists()


@pytest.mark.parametrize("named", sorted(set(re.findall(r"`(\w+\.py)`", GUIDE))))
def test_a_module_that_it_names_shortly_is_there(named: str) -> None:
    assert any(path.name == named for path in (*MODULES, *(ROOT / "tests").rglob("*.py")))


def codes() -> Iterator[str]:
    """Yield the code of every finding that is made, as it stands where one is called."""
    for path in MODULES:
        tree = ast.parse(path.read_text(encoding="utf-8"))
        constants = {
            ast.unparse(node.targets[0]): node.value
            for node in tree.body
            if isinstance(node, ast.Assign) and isinstance(node.value, ast.Constant)
        }
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and ast.unparse(node.func) in ("Finding", "_fault"):
                code = constants.get(ast.unparse(node.args[0]), node.args[0])
                if isinstance(code, ast.Constant):
                    yield code.value


def test_the_codes_of_findings_are_listed() -> None:
    listed = re.findall(r"^\| `([a-z-]+)` \|", section("Codes of findings"), re.MULTILINE)
    assert listed == sorted(set(codes()))


@pytest.fixture
def no_window() -> None:
    matplotlib.use("Agg")


def test_the_notebook_has_ten_lines_and_does_what_it_says(no_window: None) -> None:
    code = section("In a notebook").partition("```python\n")[2].partition("```")[0]
    assert len([line for line in code.splitlines() if line]) == 10
    found: dict[str, object] = {}
    exec(compile(code, "notebook", "exec"), found)
    drawn, girths, pdf, report = (found[name] for name in ("drawn", "girths", "pdf", "report"))
    assert [len(lines) for lines in drawn] == [1, 1, 1, 1]
    assert drawn[0][0].get_xydata().shape[1] == 2
    assert girths["hip"]["body"] == 98.0 and girths["hem"]["pattern"] > 30
    assert len(pypdfium2.PdfDocument(pdf.getvalue())) == report.sheets > 10
