"""The picture of the block: all of it inside the frame, at the scale that its bar says."""

import struct
from functools import partial
from pathlib import Path
from types import SimpleNamespace

import matplotlib
import numpy as np
import pytest
from matplotlib.figure import Figure
from matplotlib.image import imread

from drafting.block.block import Block, draft_block
from outputs.demo import DEMO_FILES
from outputs.files.writers import content
from outputs.fit.block_picture import write_block_picture
from outputs.reading.measurements_file import read_measurements
from tests.outputs.typed_files import UNEVEN

LONG = "Łucja $x^{2$ " + "W" * 67


@pytest.fixture(scope="module", params=[*(path.stem for path in DEMO_FILES), "uneven"])
def block(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Block:
    file = DEMO_FILES[0].with_name(f"{request.param}.toml")
    if request.param == "uneven":
        file = tmp_path_factory.mktemp("uneven") / "uneven.toml"
        file.write_text(UNEVEN)
    return draft_block(read_measurements(file).measurements)


@pytest.fixture
def drawn(block: Block, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> SimpleNamespace:
    """Draw the block and keep the figure beside the file."""
    kept: list[Figure] = []
    save = Figure.savefig
    monkeypatch.setattr(Figure, "savefig", lambda self, *a, **k: (kept.append(self), save(self, *a, **k))[1])
    (tmp_path / "block.png").write_bytes(content(partial(write_block_picture, block, wearer=LONG)))
    return SimpleNamespace(figure=kept[0], file=tmp_path / "block.png")


@pytest.mark.slow
def test_every_word_and_line_lies_inside_the_picture(drawn: SimpleNamespace, block: Block) -> None:
    width, height = drawn.figure.canvas.get_width_height()
    axes = drawn.figure.axes[0]
    words = list(axes.texts)
    assert len(words) == (5 + 2 * 2) * len(block.halves) + 3
    for artist in (*words, *axes.patches):
        box = artist.get_window_extent()
        assert min(box.x0, box.y0) >= 0 and box.x1 <= width and box.y1 <= height


@pytest.mark.slow
def test_it_says_that_there_is_no_allowance(drawn: SimpleNamespace) -> None:
    said = [text.get_text() for text in drawn.figure.axes[0].texts]
    assert sum(text.endswith("seen from outside, without seam allowance") for text in said) == 1


@pytest.mark.slow
def test_the_edge_of_the_picture_is_white(drawn: SimpleNamespace) -> None:
    pixels = imread(drawn.file)
    for edge in (pixels[:8], pixels[-8:], pixels[:, :8], pixels[:, -8:]):
        assert np.all(edge == 1.0)


@pytest.mark.slow
def test_the_scale_bar_is_ten_centimetres_of_the_block(drawn: SimpleNamespace, block: Block) -> None:
    axes = drawn.figure.axes[0]
    boxes = [patch.get_window_extent() for patch in axes.patches]
    # The longest level stroke below the hem is the bar; the leg's own height gives the scale.
    floor = min(box.y0 for box in boxes)
    bar = max((box for box in boxes if box.y0 < floor + 20), key=lambda box: box.width)
    levels = block.levels
    across = axes.transData.transform([(0, levels.hem.mm), (0, levels.waist.mm)])
    pixels_per_mm = (across[1][1] - across[0][1]) / (levels.waist.mm - levels.hem.mm)
    assert bar.width / pixels_per_mm == pytest.approx(100, abs=0.01)


@pytest.mark.slow
def test_front_and_back_are_drawn_to_one_scale_both_ways(drawn: SimpleNamespace) -> None:
    a, b = drawn.figure.axes[0].transData.transform([(0, 0), (100, 100)])
    assert b[0] - a[0] == pytest.approx(b[1] - a[1])


@pytest.mark.slow
def test_the_same_block_gives_the_same_bytes_whatever_the_readers_own_settings(
    block: Block, tmp_path: Path
) -> None:
    (tmp_path / "one.png").write_bytes(content(partial(write_block_picture, block, wearer="Ada")))
    with matplotlib.rc_context({"font.size": 30, "figure.facecolor": "red", "savefig.bbox": "tight"}):
        (tmp_path / "two.png").write_bytes(content(partial(write_block_picture, block, wearer="Ada")))
    one = (tmp_path / "one.png").read_bytes()
    assert one == (tmp_path / "two.png").read_bytes()
    assert struct.unpack(">I", one[20:24]) == (1500,)


def test_after_a_fitting_the_toile_lies_under_the_block_inside_the_picture(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    kept: list[Figure] = []
    save = Figure.savefig
    monkeypatch.setattr(Figure, "savefig", lambda self, *a, **k: (kept.append(self), save(self, *a, **k))[1])
    body = read_measurements(DEMO_FILES[0]).measurements
    outlines = []
    for corrections in ({}, {"lower_rise": 40, "shorter_at_calf": 60, "hip_in": 30}):
        block = draft_block(body, corrections=corrections)
        (tmp_path / "block.png").write_bytes(content(partial(write_block_picture, block, wearer="Ada")))
        axes = kept[-1].axes[0]
        width, height = kept[-1].canvas.get_width_height()
        for patch in axes.patches:
            box = patch.get_window_extent()
            assert min(box.x0, box.y0) >= 0 and box.x1 <= width and box.y1 <= height
        outlines.append(len(axes.patches))
        said = [text.get_text() for text in axes.texts]
        assert any("thin dashes: the toile" in words for words in said) == bool(corrections)
    waists = [len(panel.waist) for panel in (block.front, block.back)]
    # Side seam, inseam, crotch seam, hem and the stretches of the waist, of front and back.
    assert outlines[1] - outlines[0] >= 8 + sum(waists)
