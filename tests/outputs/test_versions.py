"""Two versions compared: hand-checkable moves, each input's own share, and what is said of it."""

import re
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner
from PIL import Image

from drafting.base.errors import DraftRefused
from drafting.base.units import Unit
from drafting.report.moves import lengths_of
from outputs.commands import main as command
from outputs.compare.versions import Move, TwoVersions, compare_versions
from outputs.compare.versions_picture import write_versions
from outputs.compare.words import letter
from outputs.lines.versions import signed, version_lines
from outputs.reading.draft_record import Inputs
from outputs.reading.measurements_file import read_measurements
from outputs.reading.style_file import find_style
from outputs.reading.style_options import read_options
from tests.outputs.typed_files import FULL, PLAIN, UNEVEN

WIDER = PLAIN.replace("98", "102")


@pytest.fixture
def inputs(tmp_path: Path):
    def of(text: str, *changes: str, style: str = "straight", **cloth: str) -> Inputs:
        (tmp_path / "ada.toml").write_text(text, encoding="utf-8")
        options = read_options(dict(change.split("=") for change in changes), cloth)
        return Inputs.of(read_measurements(tmp_path / "ada.toml"), find_style(style), options)

    return of


def found(moves: tuple[Move, ...], name: str) -> Move:
    return next(move for move in moves if move.name == name)


def length(versions: TwoVersions, name: str) -> float:
    return float(found(versions.lengths, name).by[0])


def point(versions: TwoVersions, name: str) -> tuple[float, float]:
    across, up = found(versions.points, name).by
    return float(across), float(up)


def by(move: Move) -> list[float]:
    return [round(float(share[0]), 1) for share in (*move.shares, move.together)]


# --- what moves


def test_nothing_moves_between_a_draft_and_itself(inputs) -> None:
    same = compare_versions(inputs(FULL), inputs(FULL))
    assert same.changes == () and not same.gone and not same.added
    assert max(move.far for move in (*same.points, *same.lengths, *same.edges)) == 0
    text = "\n".join(version_lines(same))
    assert "Nothing differs" in text and "together" not in text


def test_four_centimetres_of_hip_move_what_they_must(inputs) -> None:
    wider = compare_versions(inputs(PLAIN), inputs(WIDER))
    assert [(c.what, c.old, c.new) for c in wider.changes] == [("hip girth", "98.0 cm", "102.0 cm")]
    assert length(wider, "hip") == pytest.approx(40, abs=0.01)
    # knee 46 % and hem 42 % of the hip, `styles/catalogue/straight.toml`
    assert length(wider, "knee") == pytest.approx(18.4, abs=0.01)
    assert length(wider, "hem") == pytest.approx(16.8, abs=0.01)
    assert length(wider, "waist") == pytest.approx(0, abs=0.01)
    # a quarter of the 40 goes to each panel, at the side seam, on the same level
    for panel in ("front", "back"):
        assert point(wider, f"{panel}, hip at the side") == pytest.approx((-10, 0), abs=0.01)
    # the hem stays on the floor
    assert point(wider, "front, hem at the side")[1] == 0
    # one input: all of it is its share
    assert all(np.array_equal(move.shares[0], move.by) for move in wider.points)


def test_a_longer_leg_lifts_everything_above_the_knee_and_nothing_else(inputs) -> None:
    longer = compare_versions(inputs(FULL), inputs(FULL.replace("78", "80").replace("103", "105")))
    assert [change.what for change in longer.changes] == ["inside leg height", "waist height"]
    for name in ("waist", "hip", "knee", "hem", "crotch seam"):
        assert length(longer, name) == pytest.approx(0, abs=0.1)
    assert length(longer, "side seam") == pytest.approx(20, abs=0.5)
    assert point(longer, "front, centre at the waist") == pytest.approx((0, 20), abs=0.1)
    assert point(longer, "front, hem at the side") == pytest.approx((0, 0), abs=0.1)


# --- because of what


def test_each_input_has_its_own_share_and_the_shares_add_up(inputs) -> None:
    both = compare_versions(inputs(PLAIN), inputs(WIDER, "leg.hem_of_hip=50 %", stretch="20"))
    assert [change.what for change in both.changes] == ["hip girth", "leg.hem_of_hip", "cloth, stretch"]
    # 20 % of stretch takes 2 % of the girth off: 98 x 0.02 of the old hip alone, 102 x 0.02 of the new
    assert by(found(both.lengths, "hip")) == [40.0, 0.0, -19.6, -0.8]
    # hem: 0.42 x 40; 0.08 x 980; and of both together 0.08 x 40
    assert by(found(both.lengths, "hem")) == [16.8, 78.4, 0.0, 3.2]
    for move in (*both.points, *both.edges):
        assert np.allclose(sum(move.shares) + move.together, move.by)


def test_an_input_that_cannot_be_changed_alone_is_told_and_counts_as_together(inputs) -> None:
    # 103 to the waist and 100 to the crotch leave no room for a trunk, nor do 126 and 78 fit a rise of 27
    old, new = inputs(FULL), inputs(FULL.replace("= 78", "= 100").replace("= 103", "= 126"))
    mixed = compare_versions(old, new)
    alone = {mixed.changes[index].what for index in mixed.not_alone}
    assert alone == {"inside leg height", "waist height"}
    inseam = found(mixed.lengths, "inseam")
    assert inseam.by == pytest.approx(220, abs=15) and np.array_equal(inseam.together, inseam.by)
    text = " ".join(" ".join(version_lines(mixed)).split())
    assert "not drafted alone: " in text


def test_a_measurement_given_or_taken_back_is_a_change(inputs) -> None:
    given = compare_versions(inputs(PLAIN), inputs(PLAIN + "total_crotch_length = 71\n"))
    assert [(c.old, c.new) for c in given.changes] == [("not given", "71.0 cm")]
    back = compare_versions(given.new, given.old)
    assert length(back, "crotch seam") == pytest.approx(-length(given, "crotch seam"))


def test_rise_and_length_below_the_waist_are_one_input(inputs) -> None:
    low = compare_versions(inputs(PLAIN), inputs(PLAIN, "rise=low"))
    assert [(c.what, c.old, c.new) for c in low.changes] == [
        ("where the jeans sit", "3.0 cm below waist", "low rise")
    ]
    # the block ends at the waist; the legs that are cut from it reach less high
    assert all(move.far == 0 for move in low.points)
    assert float(found(low.edges, "back yoke, centre back").by[0]) == pytest.approx(0, abs=1)
    assert float(found(low.edges, "front leg, crotch seam").by[0]) < -20
    assert compare_versions(low.new, low.old).jeans[1].style == low.jeans[0].style


@pytest.mark.slow
def test_of_a_body_whose_sides_differ_each_side_is_compared(inputs) -> None:
    uneven = compare_versions(inputs(PLAIN), inputs(UNEVEN))
    # left leg 77 instead of 78
    assert length(uneven, "right inseam") == pytest.approx(0, abs=0.1)
    assert length(uneven, "left inseam") == pytest.approx(-10, abs=0.5)
    assert not uneven.gone and not uneven.added
    assert found(uneven.edges, "left front leg, inseam").by[0] < -9
    back = compare_versions(uneven.new, uneven.old)
    assert length(back, "left inseam") == pytest.approx(-length(uneven, "left inseam"))
    assert len(lengths_of(uneven.jeans[1].block, 2)) == 13


def test_what_a_fitting_found_is_an_input_like_any_other(inputs) -> None:
    seat = compare_versions(inputs(PLAIN), inputs(WIDER + "[fitting]\nfull_seat = 2\n"))
    assert [(c.what, c.old, c.new) for c in seat.changes] == [
        ("hip girth", "98.0 cm", "102.0 cm"),
        ("fitting, full seat", "not given", "2.0 cm"),
    ]
    # the back fork becomes 0.6 of it wider, `drafting/body/corrections.py`
    shares = found(seat.points, "back, fork").shares
    assert shares[1][0] == pytest.approx(12, abs=0.1)
    assert compare_versions(seat.new, seat.old).changes[1].new == "not given"


def test_a_block_whose_rise_was_shortened_says_which_points_came_down(inputs) -> None:
    # Told: a first block fitted poorly, and what the second changed was to be shown. The 12 mm are made up.
    shorter = compare_versions(inputs(PLAIN), inputs(PLAIN.replace("body_rise = 27", "body_rise = 25.8")))
    assert [change.what for change in shorter.changes] == ["body rise, seated"]
    for name in ("front, centre at the waist", "front, side at the waist"):
        assert point(shorter, name)[1] == pytest.approx(-12, abs=1)
    # a trunk that is less long has its centre back higher over the waist, by 0.48 of it
    assert point(shorter, "back, centre at the waist")[1] == pytest.approx(-12 * (1 - 0.48), abs=1)
    for name in ("front, knee at the inseam", "back, hem at the side", "front, fork"):
        # the forks of a trunk that is less long are longer by 0.12 and 0.23 of it, and the crease by half
        assert max(map(abs, point(shorter, name))) < 12 * 0.26
    assert length(shorter, "side seam") == pytest.approx(-12, abs=0.5)
    assert abs(length(shorter, "hem")) < 0.1
    said = "\n".join(version_lines(shorter))
    assert "27.0 cm, now 25.8 cm" in said and "front, centre at the waist" in said


def test_pieces_that_come_and_go_are_named(inputs) -> None:
    strip = compare_versions(inputs(PLAIN), inputs(PLAIN, "band=straight"))
    assert [piece.kind for piece in strip.gone] == ["front waistband", "back waistband"]
    assert [piece.kind for piece in strip.added] == ["waistband"]


def test_a_version_that_cannot_be_drafted_is_named(inputs) -> None:
    broken = replace(inputs(PLAIN), measurements=replace(inputs(PLAIN).measurements, hip_girth=None))
    with pytest.raises(DraftRefused) as caught:
        compare_versions(inputs(PLAIN), broken, ("one", "other"))
    assert str(caught.value).startswith("other: hip_girth: The hip girth is needed")


# --- what is said and drawn


def test_lines_have_80_letters_and_say_moves_in_the_wearers_unit(inputs) -> None:
    inch = WIDER.replace('unit = "cm"', 'unit = "in"').replace("102", '"102 cm"')
    inch = re.sub(r"= (\d+)$", r'= "\1 cm"', inch, flags=re.MULTILINE)
    for new, hip in ((WIDER, "+40.0"), (inch, "+1 9/16")):
        lines = list(version_lines(compare_versions(inputs(PLAIN), inputs(new, "leg.hem_of_hip=50 %"))))
        assert max(map(len, lines)) <= 80
        (row,) = (line for line in lines if line.startswith("hip "))
        assert hip in row
    assert signed(-7.9375, Unit.INCH) == "-5/16" and signed(-0.04, Unit.CM) == "0"
    assert [letter(i) for i in (0, 25, 26)] == ["A", "Z", "A2"]


@pytest.mark.slow
@pytest.mark.parametrize(("old", "new"), [(PLAIN, WIDER), (PLAIN, UNEVEN)])
def test_the_picture_shows_both_in_line_patterns_and_says_so(inputs, old: str, new: str) -> None:
    stream = BytesIO()
    write_versions(compare_versions(inputs(old), inputs(new)), stream)
    image = Image.open(stream)
    assert image.height == 1575
    assert "old block in dashes" in image.text["Description"] and "Moved: " in image.text["Description"]
    pixels = np.asarray(image.convert("RGB"))
    # black and white alone: no colour carries meaning
    assert (pixels.max(axis=2) - pixels.min(axis=2)).max() <= 2
    # nothing is cut off at the edge
    edge = np.concatenate(
        [pixels[0].ravel(), pixels[-1].ravel(), pixels[:, 0].ravel(), pixels[:, -1].ravel()]
    )
    assert edge.min() == 255


def test_a_picture_of_two_wearers_names_both(inputs) -> None:
    stream = BytesIO()
    other = PLAIN.replace("Ada Example", "Łucja Wójcik")
    write_versions(compare_versions(inputs(PLAIN), inputs(other)), stream)
    said = Image.open(stream).text["Description"]
    assert said.startswith("Ada Example, Łucja Wójcik: the old block")


# --- the command


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "old.toml").write_text(PLAIN)
    (tmp_path / "new.toml").write_text(WIDER)
    return lambda *words: CliRunner().invoke(command.main, [str(word) for word in words])


@pytest.mark.slow
def test_folders_are_drafted_anew_from_what_they_record(run) -> None:
    for name, *options in (("old",), ("new", "--stretch", "20", "--set", "allowances.side_seam=0 cm")):
        assert run("draft", f"{name}.toml", "--out", name, "--format", "dxf", *options).exit_code == 0
    Path("old.toml").unlink(), Path("new.toml").unlink()
    result = run("compare", "old", "new")
    assert (result.exit_code, result.stderr) == (0, "")
    assert "hip girth: 98.0 cm, now 102.0 cm" in result.stdout and "cloth, stretch: 0 %" in result.stdout
    assert "allowances.side_seam: 1.5 cm, now 0.0 cm" in result.stdout
    assert result.stdout.splitlines()[-1] == "compare.png" and Path("compare.png").is_file()


@pytest.mark.slow
def test_files_are_compared_in_the_style_asked_for_and_nothing_is_overwritten(run) -> None:
    result = run("compare", "old.toml", "new.toml", "--style", "cropped", "--out", "a.png")
    assert result.exit_code == 0 and "new: Ada Example, spring, cropped" in result.stdout
    first = Path("a.png").read_bytes()
    result = run("compare", "old.toml", "old.toml", "--out", "a.png")
    assert result.exit_code == 2 and "already exists" in result.stderr and Path("a.png").read_bytes() == first
    assert run("compare", "old.toml", "new.toml", "--style", "cropped", "--out", "b.png").exit_code == 0
    assert Path("b.png").read_bytes() == first


def test_both_wrong_versions_are_told_at_once(run) -> None:
    Path("new.toml").write_text(PLAIN.replace("98", "980"))
    Path("empty").mkdir()
    result = run("compare", "empty", "new.toml")
    assert result.exit_code == 2 and not Path("compare.png").exists()
    assert (
        result.stderr.startswith("empty: This folder holds no")
        and "new.toml: line 7: hip_girth" in result.stderr
    )
