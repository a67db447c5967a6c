"""Every number of the trade says where it comes from, and every publication that it names is listed.

A number that stands by itself in a module, a row of a table, a default of a style: each is marked with a
publication of the table "Sources" in DEVELOPERS.md, or honestly as practice, memory, trial or judgement.
Numbers that belong to the computing alone are named here as such and give a reason.
"""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import takewhile
from pathlib import Path

import pytest

from drafting.base.construction_proportions import Ease, Proportions
from drafting.block.leg_shape import LegCut
from drafting.block.means import MEANS
from drafting.body import relations as measurement_relations
from drafting.body.corrections import CORRECTIONS
from drafting.body.regressions import REGRESSIONS
from drafting.lesson.published_systems import SYSTEMS
from outputs.fit.fitting_signs import SIGNS

ROOT = Path(__file__).parents[1]
HONEST = ("common practice", "from memory", "own trial", "own judgement")
"""How a number is marked that has no publication."""

# Those of the computing alone; each still says why it is as it is.
COMPUTING = {
    "drafting/geometry/curves.py": {"_EVENLY", "_ROUNDING", "QUARTER_ROUND", "_INSIDE"},
    "drafting/report/ease_profile.py": {"_STEP"},
    "drafting/block/fitting.py": {"CLOSE", "_WEIGHTS", "_SLOPES", "_THIGH_ROUNDS"},
    "drafting/base/formula.py": {"_LIST _SUM _PRODUCT _ATOM"},
    "drafting/lesson/marking.py": {"COUNT"},
    "drafting/block/crotch_curve.py": {"_HANDLES"},
    "drafting/block/panel.py": {"_UNDER_FORK", "_FLATTEST"},
    "drafting/lesson/published.py": {"QUARTER_ELLIPSE", "_CLOSE"},
    "drafting/lesson/published_systems.py": {"INCH"},
    "drafting/base/typed_words.py": {"LONGEST_TEXT", "LONGEST_GUESS"},
    "drafting/base/units.py": {"_MOST", "_LONGEST_TEXT", "_SIZE"},
    "drafting/report/drawn_lines.py": {"CLOSE"},
    "drafting/pieces/seams.py": {"Corner.angle"},
    "drafting/geometry/solve.py": {"_HALVINGS", "_IDLE"},
    "drafting/report/tape_error.py": {"LEAST", "_SAG _STEP"},
    "drafting/block/thighs.py": {"_BY_SLIMMING", "_BY_BULGE", "_ROUNDS"},
    "drafting/base/tolerance.py": {"JOIN", "LENGTH", "FLATTEN", "NOTCH", "SAME"},
    "drafting/block/waist_line.py": {"_ROUNDS", "_SLACK_AT_CENTRE _SLACK_AT_SIDE"},
    "styles/top/back_dart.py": {"_ROUNDS"},
    "styles/front_pockets/scoop.py": {"_FLATTENED"},
    "styles/top/yoke.py": {"_ROUNDS", "_FULLNESS"},
    "styles/parts/fly_length.py": {"_CLOSE"},
}  # fmt: skip
# Of what people take away, these are of the trade; all else there is the layout of a sheet.
OF_THE_TRADE = {
    "outputs/cloth/options.py": {"USUAL"},
    "outputs/cloth/laid_cloth.py": {"GAP", "SELVEDGE", "END", "NARROWEST WIDEST"},
    "outputs/packing/layout.py": {"GAP"},
    "outputs/measuring/measuring_table.py": {"READINGS"},
    "outputs/paper/paper.py": {"MARGIN", "LARGE", "ROLL_LEAST ROLL_MOST", "A4", "LETTER"},
    "outputs/print/piece_outlines.py": {"NOTCH_APART", "NOTCH_INWARD"},
    "outputs/print/pattern_print.py": {"ROLLS"},
    "outputs/paper/printer_scale.py": {"TOLERANCE", "LEAST MOST", "APART"},
    "outputs/reading/tape_readings.py": {"ENDS_APART"},
    "outputs/sheets/scale_bars.py": {"BORDERS"},
}  # fmt: skip
# Tables whose rows have a source of their own, read further down.
TABLES = {
    "drafting/body/corrections.py": {"_TABLE"},
    "drafting/block/means.py": {"CENTRE_BACK", "BACK_FORK", "CENTRE_FRONT", "FRONT_FORK", "DEPTH"},
    "drafting/body/relations.py": {"RELATIONS"},
    "drafting/body/regressions.py": {"REGRESSIONS"},
    "outputs/fit/fitting_signs.py": {"SIGNS"},
}
MODULES = [path for room in ("drafting", "styles", "outputs") for path in sorted((ROOT / room).rglob("*.py"))]
NAMES = [str(path.relative_to(ROOT)) for path in MODULES]


def one_line(text: str) -> str:
    """Return a text in one line, the parts of strings that go on joined."""
    return re.sub(r"\s+", " ", re.sub(r'"\s*f?"(?!")', "", text))


def table() -> dict[str, str]:
    """Return the publications of DEVELOPERS.md by the words that the code names them with."""
    whole = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    lines = whole.partition("\n## Sources\n")[2].partition("\n## ")[0].splitlines()
    rows = [[cell.strip() for cell in line.strip("|").split("|")] for line in lines if line[:1] == "|"]
    assert all(len(row) == 3 and all(row) for row in rows)
    return {row[0]: row[1] for row in rows[2:]}


SOURCES = table()


def marked(text: str) -> bool:
    """Return whether a text names a publication of the table, or says honestly that there is none."""
    flat = one_line(text)
    return any(word in flat.lower() for word in HONEST) or any(words in flat for words in SOURCES)


@dataclass(frozen=True)
class Named:
    """A number, or some, by name, with what is said of it: in the comment above or beside it, or below it."""

    name: str
    line: int
    said: str


def has_number(node: ast.expr | None) -> bool:
    """Return whether numbers stand in an expression, other than 0 and 1, which mean none and all."""
    return node is not None and any(
        isinstance(part, ast.Constant) and type(part.value) in (int, float) and part.value not in (0, 1)
        for part in ast.walk(node)
    )


def numbers_in(body: list[ast.stmt], lines: list[str], within: str = "") -> Iterator[Named]:
    for place, node in enumerate(body):
        if isinstance(node, ast.ClassDef) and ast.unparse(node.bases[0] if node.bases else node) != "Enum":
            yield from numbers_in(node.body, lines, f"{node.name}.")
        if not isinstance(node, ast.Assign | ast.AnnAssign) or not has_number(node.value):
            continue
        if isinstance(node.value, ast.Call) and ast.unparse(node.value.func) == "constant":
            continue  # a row of a table of proportions, read further down
        targets = node.targets if isinstance(node, ast.Assign) else [node.target]
        parts = (part for target in targets for part in ast.walk(target))
        name = " ".join(part.id for part in parts if isinstance(part, ast.Name))
        after = body[place + 1] if place + 1 < len(body) else None
        below = isinstance(after, ast.Expr) and isinstance(after.value, ast.Constant) and after.value.value
        above = [*takewhile(lambda line: line.lstrip()[:1] == "#", reversed(lines[: node.lineno - 1]))]
        beside = [line.partition("#")[2] for line in lines[node.lineno - 1 : node.end_lineno]]
        said = " ".join([*(line.strip(" #") for line in reversed(above)), *beside, str(below or "")])
        yield Named(within + name, node.lineno, said.strip())


def numbers(path: Path) -> list[Named]:
    text = path.read_text(encoding="utf-8")
    return [*numbers_in(ast.parse(text).body, text.splitlines())]


@pytest.mark.parametrize("path", MODULES, ids=NAMES)
def test_a_number_says_where_it_comes_from_or_why_the_computing_wants_it(path: Path) -> None:
    module = str(path.relative_to(ROOT))
    found = {number.name: number for number in numbers(path) if number.name not in TABLES.get(module, ())}
    computing, trade = COMPUTING.get(module, set()), OF_THE_TRADE.get(module, set())
    assert computing | trade <= found.keys(), "named in this test and no longer in the module"
    wanting = trade if module.startswith("outputs/") else found.keys() - computing
    assert [f"{name}, line {found[name].line}" for name in wanting if not marked(found[name].said)] == []
    assert [name for name in sorted(computing) if not found[name].said] == []


LEGEND = dict(re.findall(r"^    ([A-Z]+)  +(.*(?:\n {8,}.*)*)", measurement_relations.__doc__ or "", re.M))
"""What the short marks of the relations stand for."""
ROWS = [
    *((f"{row.name}", row.source) for part in (Proportions(), Ease(), LegCut()) for row in part.constants()),
    *((mean.name, mean.source) for mean in MEANS),
    *((correction.key, correction.source) for correction in CORRECTIONS.values()),
    *(
        (relation.key, LEGEND.get(relation.source.split()[0].strip(":,"), relation.source))
        for relation in measurement_relations.RELATIONS
    ),
    *((row.target, row.source) for rows in REGRESSIONS.values() for row in rows),
    *((sign.seen, sign.source) for sign in SIGNS),
]


def test_every_row_of_a_table_of_the_trade_has_its_source() -> None:
    assert len(ROWS) > 150
    assert [name for name, source in ROWS if not marked(source)] == []


def test_every_published_system_that_is_compared_is_in_the_table() -> None:
    drafts = (ROOT / "drafting" / "lesson" / "published_systems.py").read_text(encoding="utf-8")
    assert len(re.findall(r"return SystemDraft\(", drafts)) == len(SYSTEMS)
    for part in drafts.split("return SystemDraft(")[1:]:
        assert any(words in one_line(part) for words in SOURCES), part[:80]


CATALOGUE = sorted((ROOT / "styles" / "catalogue").glob("*.toml"))


@pytest.mark.parametrize("path", CATALOGUE, ids=lambda path: path.stem)
def test_a_style_of_the_catalogue_says_where_its_numbers_come_from(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert tomllib.loads(text)
    for group in re.split(r"\n(?=\[)", text):
        if re.search(r'= "?-?\d', group):
            comments = " ".join(line.partition("#")[2] for line in group.splitlines())
            assert marked(comments), f"{path.stem}: {group.splitlines()[0]}"


def test_each_publication_of_the_table_is_named_in_the_code() -> None:
    files = [*MODULES, *CATALOGUE]
    code = one_line(" ".join(path.read_text(encoding="utf-8") for path in files))
    assert [words for words in SOURCES if words not in code] == []


def test_what_is_not_marked_is_seen() -> None:
    lines = ["A = 3.0", '"""Of the hem, mm."""', "B = 4.0  # common practice", "# from memory", "C = (5, 6)"]
    found = numbers_in(ast.parse("\n".join(lines)).body, lines)
    assert {number.name: marked(number.said) for number in found} == {"A": False, "B": True, "C": True}
