"""What a file or a module that is put in its place adds: a style, a shape of pocket, an opening."""

from pathlib import Path

import pytest

from drafting.base.errors import DraftRefused
from drafting.base.units import Unit
from drafting.body.measurements import Measurements
from drafting.pieces.allowance import cut_line
from outputs.files.text_file import read_file
from outputs.reading.style_file import find_style, read_style, style_text
from styles import back_pockets, front_pockets
from styles.choice import catalogue
from styles.choice.catalogue import catalogue_names
from styles.choice.style import STRAIGHT, Style
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth
from styles.making.jeans import Jeans, make_jeans
from tests.printed import called

ARROW = '''
"""A pocket that narrows to a point at once."""
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from styles.back_pockets import PocketOutline, PocketSize

def outline(size: PocketSize) -> PocketOutline:
    low = Point(size.taper - size.opening / 2, -size.height / 2)
    return PocketOutline.alike(
        Path.through([Point(-size.opening / 2, 0), low]),
        Path.through([low, Point(0, -size.height)]),
    )
'''
STEP = '''
"""Down from the waist, a slant between, out to the side."""
from drafting.geometry.paths import Path
from styles.front_pockets import Mouth

def edge(mouth: Mouth) -> Path:
    return Path.through(
        [mouth.corner, mouth.corner + mouth.down * 20, mouth.end + mouth.out * -20, mouth.end]
    )
'''


def jeans(style: Style) -> Jeans:
    body = Measurements(waist_girth=760, hip_girth=980, inside_leg_height=780, body_rise=265)
    return make_jeans(block_for(body, style, Cloth()), style)


def put(monkeypatch: pytest.MonkeyPatch, package: object, folder: Path, name: str, text: str) -> None:
    folder.mkdir(exist_ok=True)
    (folder / name).write_text(text, encoding="utf-8")
    monkeypatch.setattr(package, "__path__", [*package.__path__, str(folder)])  # type: ignore[attr-defined]


def test_a_pocket_is_added_by_its_module_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    put(monkeypatch, back_pockets, tmp_path / "back", "arrow_head.py", ARROW)
    put(monkeypatch, front_pockets, tmp_path / "front", "step.py", STEP)
    own = tmp_path / "own.toml"
    own.write_text('[back_pocket]\nshape = "arrow head"\n[front_pocket]\nkind = "step"\n', encoding="utf-8")
    style = read_style(read_file(own))
    made = jeans(style)
    assert not made.faults
    pocket, leg = (called(made.pattern, name) for name in ("back pocket", "front leg"))
    # A rectangle over a triangle of the same height, less the taper: three quarters of what is round it.
    x0, y0, x1, y1 = pocket.polygon.bounds
    assert pocket.polygon.area / ((x1 - x0) * (y1 - y0)) == pytest.approx(0.75, abs=0.06)
    assert len(leg.edge("pocket opening").path.curves) == 3
    for piece in made.pattern.pieces:
        assert cut_line(piece).polygon.area > 0
    assert "arrow head or cut corners or pointed" in style_text(style, Unit.CM)
    assert 'kind = "step"' in style_text(style, Unit.CM)


def test_a_kind_that_does_not_exist_is_told_with_those_that_do(tmp_path: Path) -> None:
    own = tmp_path / "own.toml"
    own.write_text('[back_pocket]\nshape = "ruond"\n[front_pocket]\nkind = "slat"\n', encoding="utf-8")
    with pytest.raises(DraftRefused) as refused:
        read_style(read_file(own))
    first, second = refused.value.problems
    assert (first.key, first.line, first.value) == ("back_pocket.shape", 2, "ruond")
    assert 'Did you mean "rounded"' in first.message
    assert first.plausible == "cut corners or pointed or rounded or square"
    assert (second.key, second.line, second.plausible) == (
        "front_pocket.kind",
        4,
        "scoop or slant or western",
    )


def test_a_style_is_added_by_its_file_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = tmp_path / "catalogue"
    folder.mkdir()
    for source in catalogue.CATALOGUE.glob("*.toml"):
        (folder / source.name).write_bytes(source.read_bytes())
    (folder / "work.toml").write_text('like = "wide"\n[back_pocket]\nshape = "square"\n', encoding="utf-8")
    before = catalogue_names()
    monkeypatch.setattr(catalogue, "CATALOGUE", folder)
    assert catalogue_names() == (*before, "work")
    style = find_style("work")
    assert (style.name, style.back_pocket.shape, style.leg) == ("work", "square", find_style("wide").leg)
    assert not jeans(style).faults


def test_a_style_written_out_reads_back_with_its_kinds(tmp_path: Path) -> None:
    path = tmp_path / "straight.toml"
    path.write_text(style_text(STRAIGHT, Unit.MM), encoding="utf-8")
    assert read_style(read_file(path)) == STRAIGHT
