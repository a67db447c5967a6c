"""Shrinkage is added once, along the grain and across it; stretch takes room away, never length."""

from dataclasses import replace

import pytest

from drafting import Ease, draft_block
from drafting.base.construction_proportions import Proportions
from drafting.base.errors import DraftRefused
from drafting.body.body import complete
from drafting.body.measurements import SideMeasurements
from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector
from drafting.pieces.pieces import Cutting, Edge, Mark, MarkKind, Material, Notch, Piece
from drafting.pieces.trueing import check_seams
from outputs.print.piece_text import cloth_text
from styles.choice.style import STRAIGHT
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import (
    Cloth,
    ease_for,
    fit_to_cloth,
    refuse_meaningless_cloth,
    width_off,
)
from styles.making.jeans import make_jeans
from tests.printed import called
from tests.styles.upper_parts import reach, whole_band
from tests.wearers import wearer
from tests.whole_jeans import block_of

RAW = Cloth(lengthwise_change=-5, crosswise_change=-2)


def oblong(material: Material = Material.DENIM, turn: float = 0.0) -> Piece:
    """1000 wide and 800 along its plumb grain, then turned; a notch halfway up its right side."""
    corners = [Point(0, 0), Point(1000, 0), Point(1000, 800), Point(0, 800)]
    around = Point(0, 0)
    names = ("hem", "right", "top", "left")
    edges = tuple(
        Edge(name, Path.through([a.turned(around, turn), b.turned(around, turn)]), 10)
        for name, a, b in zip(names, corners, [*corners[1:], corners[0]], strict=True)
    )
    grain = Path.through([Point(500, 0).turned(around, turn), Point(500, 800).turned(around, turn)])
    mark = Mark("drill", MarkKind.DRILL, Path.through([Point(250, 400), Point(250, 401)]))
    piece = Piece("oblong", edges, grain, Cutting(material=material), (mark,))
    return piece.with_edges(replace(piece.edge("right"), notches=(Notch("middle", 400),)))


@pytest.mark.parametrize("turn", [0.0, 0.3, 1.5])
def test_the_case_of_the_raw_denim(turn: float) -> None:
    """Warp 5 %, weft 2 %: 800 is cut 842.1 and 1000 is cut 1020.4, however the piece lies on the paper."""
    (piece,) = fit_to_cloth((oblong(turn=turn),), RAW)
    assert piece.edge("right").length == pytest.approx(842.105, abs=0.001)
    assert piece.edge("hem").length == pytest.approx(1020.408, abs=0.001)
    assert piece.edge("right").notches[0].distance == pytest.approx(842.105 / 2, abs=0.001)
    assert piece.grain.length == pytest.approx(842.105, abs=0.001)


def test_marks_and_allowances_go_with_it() -> None:
    (piece,) = fit_to_cloth((oblong(),), RAW)
    from_corner: Vector = piece.marks[0].path.start - piece.edge("hem").path.start
    assert (from_corner.x, from_corner.y) == pytest.approx((250 / 0.98, 400 / 0.95))
    assert piece.edge("right").allowance == 10


def test_washing_brings_it_back_to_the_size_that_was_drafted() -> None:
    (piece,) = fit_to_cloth((oblong(),), RAW)
    width, height = reach(piece)
    assert (width * 0.98, height * 0.95) == pytest.approx((1000, 800))


def test_nothing_is_added_twice() -> None:
    once = fit_to_cloth((oblong(),), RAW)
    assert fit_to_cloth(once, RAW) == once


def test_interfacing_keeps_the_size_of_the_piece_it_is_copied_from() -> None:
    piece = oblong(Material.INTERFACING)
    assert fit_to_cloth((piece,), RAW) == (piece,)


@pytest.mark.parametrize("material", [Material.POCKETING, Material.TEMPLATE])
def test_what_is_sewn_to_raw_denim_or_laid_on_it_grows_with_it(material: Material) -> None:
    denim, other = fit_to_cloth((oblong(), oblong(material)), RAW)
    assert other.drawn_larger == denim.drawn_larger
    assert other.polygon.area == pytest.approx(denim.polygon.area)


def test_the_stitching_of_the_fly_ends_at_its_stop_on_raw_denim_too() -> None:
    pieces = make_jeans(block_of("zaneta"), STRAIGHT, cloth=RAW).pattern
    template = called(pieces, "fly topstitching template (left front)").edge("centre front")
    front = pieces.piece("front leg").edge("crotch seam")
    # The template is drawn as the left front, the leg as the right one: their edges run against each other.
    below = template.notches[0].distance, front.length - front.notches[0].distance
    assert below[0] == pytest.approx(below[1], abs=0.5)


def test_a_cloth_that_keeps_its_size_changes_nothing() -> None:
    assert fit_to_cloth((oblong(),), Cloth(stretch=20)) == (oblong(),)


def test_each_piece_says_what_was_added() -> None:
    (piece,) = fit_to_cloth((oblong(),), RAW)
    assert cloth_text(piece) == "drawn 5.3 % longer, 2.0 % wider for the first wash"
    (grown,) = fit_to_cloth((oblong(),), Cloth(crosswise_change=1))
    assert cloth_text(grown) == "drawn 1.0 % narrower for the first wash"
    assert cloth_text(oblong()) == ""


def test_the_parts_of_a_band_still_meet() -> None:
    band = whole_band(draft_block(wearer()), STRAIGHT, loops=False)
    checks = check_seams(
        fit_to_cloth(band.pieces, Cloth(lengthwise_change=-10, crosswise_change=-2)), band.seams
    )
    assert all(check.passes for check in checks)


def test_a_cloth_that_cannot_be_is_refused_with_every_reason() -> None:
    with pytest.raises(DraftRefused) as refusal:
        refuse_meaningless_cloth(Cloth(lengthwise_change=-50, crosswise_change=8, stretch=float("nan")))
    assert [problem.key for problem in refusal.value.problems] == [
        "lengthwise_change",
        "crosswise_change",
        "stretch",
    ]
    assert "lengthwise_change = -50 %" in str(refusal.value)
    refuse_meaningless_cloth(RAW)


@pytest.mark.parametrize(
    ("stretch", "share"), [(0, 0), (15, 0), (20, 0.02), (25, 0.025), (30, 0.03), (45, 0.05), (80, 0.05)]
)
def test_width_comes_off_by_the_class_of_the_cloth(stretch: float, share: float) -> None:
    """From memory."""
    assert width_off(stretch) == pytest.approx(share)


@pytest.mark.parametrize("stretch", range(101))
def test_never_more_than_half_the_stretch_is_taken(stretch: int) -> None:
    assert width_off(stretch) <= stretch / 200


BODY = complete(wearer(thigh_girth=580, knee_girth=370, calf_girth=360, heel_girth=320), Proportions())


def test_rigid_denim_keeps_its_ease() -> None:
    assert ease_for(Cloth(stretch=10), BODY) == Ease()


def test_stretch_takes_width_of_the_leg_but_no_length_and_not_the_waist() -> None:
    ease = ease_for(Cloth(stretch=20), BODY)
    assert ease.hip == pytest.approx(30 - 0.02 * 980)
    assert ease.thigh == pytest.approx(25 - 0.02 * 580)
    assert ease.knee == pytest.approx(40 - 0.02 * 370)
    assert (ease.waist, ease.crotch, ease.heel) == (10, 5, 5)


def test_an_unknown_girth_keeps_its_ease() -> None:
    body = complete(wearer(), Proportions())
    assert body.get("calf_girth") is None
    assert ease_for(Cloth(stretch=45), body).calf == Ease().calf


def test_a_hem_goes_under_the_foot_only_in_very_stretchy_cloth() -> None:
    """Foot entry 320: 25 to 50 under it with very stretchy cloth, 269 to 295."""
    assert ease_for(Cloth(stretch=39), BODY).heel == 5
    assert 320 + ease_for(Cloth(stretch=40), BODY).heel == 295
    assert 320 + ease_for(Cloth(stretch=50), BODY).heel == 270


def test_a_thigh_that_was_measured_on_each_side_alone_gives_way_too() -> None:
    sides = {"left": SideMeasurements(thigh_girth=600), "right": SideMeasurements(thigh_girth=590)}
    block = block_for(wearer(**sides), STRAIGHT, Cloth(stretch=45))
    assert block.ease.thigh == pytest.approx(25 - 0.05 * 600)


def test_a_block_of_stretch_denim_is_narrower_and_as_long() -> None:
    rigid = draft_block(wearer())
    soft = draft_block(wearer(), ease=ease_for(Cloth(stretch=30), rigid.body))
    assert soft.hip_girth == pytest.approx(rigid.hip_girth - 0.03 * 980)
    assert soft.front.lower.inseam.length == pytest.approx(rigid.front.lower.inseam.length, abs=3)
