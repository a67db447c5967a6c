"""The picture of the ease: all inside the frame, to scale, shortfalls hatched and named."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from types import SimpleNamespace

import matplotlib
import numpy as np
import pytest
from matplotlib.figure import Figure
from matplotlib.image import imread
from matplotlib.patches import Polygon
from PIL import Image

from drafting.base.units import Unit
from drafting.block.block import Block, draft_block
from drafting.report.ease_profile import ease_profiles
from outputs.demo import DEMO_FILES
from outputs.files.writers import content
from outputs.fit.ease_chart import EASE, SHORT
from outputs.fit.ease_picture import write_ease_picture
from outputs.reading.measurements_file import read_measurements
from tests.outputs.typed_files import FULL, PLAIN, UNEVEN

LONG = "Łucja $x^{2$ " + "W" * 67
SHORT_TOP_HIP = PLAIN + "top_hip_girth = 100\n"
SHORT_MID_THIGH = PLAIN + "mid_thigh_girth = 64\ncalf_girth = 52\n"
Draw = Callable[..., SimpleNamespace]
Drafter = Callable[[str], Block]


@pytest.fixture
def block_of(tmp_path: Path) -> Drafter:
    def drafted(text: str) -> Block:
        (tmp_path / "ada.toml").write_text(text)
        return draft_block(read_measurements(tmp_path / "ada.toml").measurements)

    return drafted


@pytest.fixture
def draw(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Draw:
    """Draw a block and keep the figure beside the file, with the hatching of trunk and leg."""
    kept: list[Figure] = []
    save = Figure.savefig
    monkeypatch.setattr(Figure, "savefig", lambda self, *a, **k: (kept.append(self), save(self, *a, **k))[1])

    def drawn(block: Block, *, unit: Unit = Unit.CM) -> SimpleNamespace:
        file = tmp_path / "ease.png"
        file.write_bytes(content(partial(write_ease_picture, block, wearer=LONG, unit=unit)))
        axes = kept[-1].axes[0]
        hatched = [patch for patch in axes.patches if isinstance(patch, Polygon)]
        in_zones = [patch for patch in hatched if patch.get_xy()[:, 1].max() > 2]
        return SimpleNamespace(
            figure=kept[-1],
            file=file,
            words=[text.get_text() for text in axes.texts],
            short=[patch for patch in in_zones if patch.get_hatch() == SHORT],
            ease=[patch for patch in in_zones if patch.get_hatch() == EASE],
        )

    return drawn


BODIES = [*(path.stem for path in DEMO_FILES), UNEVEN, SHORT_TOP_HIP, SHORT_MID_THIGH]


@pytest.mark.slow
@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("body", BODIES, ids=lambda text: text[-30:].strip().splitlines()[-1])
def test_every_word_and_line_lies_inside_the_picture_on_white(
    body: str, unit: Unit, draw: Draw, block_of: Drafter
) -> None:
    demo = DEMO_FILES[0].with_name(f"{body}.toml")
    drawn = draw(block_of(demo.read_text(encoding="utf-8") if demo.exists() else body), unit=unit)
    width, height = drawn.figure.canvas.get_width_height()
    axes = drawn.figure.axes[0]
    for artist in (*axes.texts, *axes.patches, *axes.lines):
        box = artist.get_window_extent()
        assert min(box.x0, box.y0) >= 0 and box.x1 <= width and box.y1 <= height
    pixels = imread(drawn.file)
    for edge in (pixels[:8], pixels[-8:], pixels[:, :8], pixels[:, -8:]):
        assert np.all(edge == 1.0)


@pytest.mark.slow
@pytest.mark.parametrize("body", [FULL, UNEVEN, SHORT_TOP_HIP, SHORT_MID_THIGH])
def test_no_two_words_lie_on_each_other(body: str, draw: Draw, block_of: Drafter) -> None:
    boxes = [text.get_window_extent() for text in draw(block_of(body)).figure.axes[0].texts]
    for index, one in enumerate(boxes):
        assert not any(one.overlaps(other) for other in boxes[index + 1 :])


def test_without_a_shortfall_nothing_is_hatched_both_ways(draw: Draw, block_of: Drafter) -> None:
    drawn = draw(block_of(FULL))
    assert drawn.short == [] and len(drawn.ease) == 2  # trunk and leg
    assert "Nothing is short where the body is known." in drawn.words
    assert not any("SHORT" in word for word in drawn.words)


@pytest.mark.slow
@pytest.mark.parametrize(
    ("body", "level"), [(SHORT_TOP_HIP, "top hip"), (SHORT_MID_THIGH, "mid thigh")], ids=["trunk", "leg"]
)
def test_a_shortfall_is_hatched_both_ways_and_named_with_its_amount(
    body: str, level: str, draw: Draw, block_of: Drafter
) -> None:
    block = block_of(body)
    drawn = draw(block)
    [line] = [line for profile in ease_profiles(block) for line in profile.levels if line.level == level]
    amount = f"{(line.body + line.least_ease - line.pattern) / 10:.1f} cm"
    assert len(drawn.short) == 1
    assert {f"short {amount}", f"SHORT {amount}", f"Short: {level} by {amount}."} <= set(drawn.words)


def test_between_two_levels_that_are_enough_a_tight_spot_is_named(draw: Draw, block_of: Drafter) -> None:
    block = block_of(PLAIN + "waist_height = 103\nthigh_girth = 66\ncalf_girth = 52\n")
    _, leg = ease_profiles(block)
    assert all(line.enough for line in leg.levels)
    [spot] = leg.tight_spots()
    assert 450 < spot.at.height < 700 and spot.by > 1
    drawn = draw(block)
    assert len(drawn.short) == 1 and f"short {spot.by / 10:.1f} cm" in drawn.words


def test_ease_is_as_wide_in_the_trunk_as_in_the_leg(draw: Draw, block_of: Drafter) -> None:
    block = block_of(FULL)
    trunk, leg = ease_profiles(block)
    widths = []
    for profile, patch in zip((trunk, leg), draw(block).ease, strict=True):
        pattern = [p.girth for p, _ in profile.side_by_side()]
        places = patch.get_xy()[: len(pattern), 0]
        widths.append(np.ptp(places) / np.ptp(pattern))
    assert widths[0] == pytest.approx(widths[1])


@pytest.mark.slow
def test_each_level_says_how_its_girth_is_known(draw: Draw, block_of: Drafter) -> None:
    full, plain = draw(block_of(FULL)).words, draw(block_of(PLAIN)).words
    # waist, hip, thigh and knee; calf, ankle and heel by the women's regressions of Natick TR-15/007
    assert full.count("measured") == 4 and sum(word.startswith("estimated ± ") for word in full) == 3
    assert plain.count("measured") == 2 and plain.count("not known") == 3


def test_the_picture_is_described_in_words_inside_the_file(draw: Draw, block_of: Drafter) -> None:
    with Image.open(draw(block_of(PLAIN), unit=Unit.INCH).file) as image:
        words = image.info["Description"]
    # 760 and 10 mm to the next sixteenth
    assert "waist: body 29 15/16 in measured, pattern 30 5/16 in, ease 3/8 in" in words
    assert "thigh: pattern " in words and words.endswith("Nothing is short where the body is known.")


@pytest.mark.slow
def test_the_same_block_gives_the_same_bytes_whatever_the_readers_own_settings(
    tmp_path: Path, block_of: Drafter
) -> None:
    block = block_of(FULL)
    (tmp_path / "one.png").write_bytes(
        content(partial(write_ease_picture, block, wearer="Ada", unit=Unit.CM))
    )
    with matplotlib.rc_context({"font.size": 30, "hatch.linewidth": 9, "savefig.bbox": "tight"}):
        (tmp_path / "two.png").write_bytes(
            content(partial(write_ease_picture, block, wearer="Ada", unit=Unit.CM))
        )
    assert (tmp_path / "one.png").read_bytes() == (tmp_path / "two.png").read_bytes()
