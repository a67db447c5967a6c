"""What must move and what must not: a higher or lower rise, one size wider, 25 mm longer at the knee.

All of it is common practice among cutters, no source.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass, fields, replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from drafting import Block, DraftRefused, Measurements, draft_block
from drafting.block.block import Half
from outputs.reading.measurements_file import read_measurements
from styles.choice.style import STRAIGHT, Band, Style
from styles.making.jeans import Jeans, make_jeans
from styles.parts.fly_length import fly_length
from tests.strategies import bodies, examples
from tests.wearers import wearer
from tests.whole_jeans import DEMO, DEMO_WEARERS, back_waist, block_of, front_waist, notch_at, whole_waist

STEP = 25.0
RISES = (-25.0, 0.0, 30.0, 55.0)
MM = 1.0

few = examples(15)


@dataclass(frozen=True)
class Sizes:
    """What a tape finds on the pieces of one pair whose sides are alike, mm."""

    front_side: float
    back_side: float
    front_inseam: float
    back_inseam: float
    centre_front: float
    centre_back: float
    yoke_centre: float
    yoke_side: float
    waist: float
    band: float
    zip_opening: float
    zip_length: float
    pocket_opening: float
    back_pocket: float
    hem: float
    knee_notch: float

    @staticmethod
    def of(jeans: Jeans) -> Sizes:
        piece = jeans.pattern.piece
        front, back, yoke = piece("front leg"), piece("back leg"), piece("back yoke")
        (side,) = (check for check in jeans.seams if check.name == "side seam")
        (zipper,) = (notion.length for notion in jeans.notions if "zip" in notion.name)
        return Sizes(
            front_side=side.first_length,
            back_side=side.second_length,
            front_inseam=front.edge("inseam").length,
            back_inseam=back.edge("inseam").length,
            centre_front=front.edge("crotch seam").length,
            centre_back=back.edge("crotch seam").length + yoke.edge("centre back").length,
            yoke_centre=yoke.edge("centre back").length,
            yoke_side=yoke.edge("side seam").length,
            waist=front_waist(jeans) + back_waist(jeans),
            band=sum(check.second_length for check in jeans.seams if "to the waistband" in check.name),
            zip_opening=front.edge("crotch seam").length - notch_at(front, "crotch seam", "zip stop"),
            zip_length=zipper,
            pocket_opening=front.edge("pocket opening").length,
            back_pocket=piece("back pocket").edge("opening").length,
            hem=front.edge("hem").length + back.edge("hem").length,
            knee_notch=notch_at(front, "inseam", "knee"),
        )

    def less(self, other: Sizes) -> dict[str, float]:
        """Return by how much each is larger than in the other."""
        return {f.name: getattr(self, f.name) - getattr(other, f.name) for f in fields(self)}


def drop(block: Block, style: Style, below: float) -> tuple[Sizes, Sizes]:
    """Return the sizes at a rise and at one 25 mm lower."""
    high, low = (replace(style, below_waist=below + lowered) for lowered in (0.0, STEP))
    return Sizes.of(make_jeans(block, high)), Sizes.of(make_jeans(block, low))


def assert_the_rise_moved_alike(high: Sizes, low: Sizes) -> None:
    for sizes in (high, low):
        assert sizes.front_side == pytest.approx(sizes.back_side, abs=MM)
        assert sizes.band == pytest.approx(sizes.waist, abs=MM)
        assert sizes.zip_length < sizes.zip_opening < sizes.centre_front
    lower = high.less(low)
    for edge in ("front_side", "back_side", "centre_front", "centre_back"):
        assert lower[edge] == pytest.approx(STEP, abs=MM), edge
    for still in ("front_inseam", "back_inseam", "yoke_centre", "hem", "knee_notch"):
        assert lower[still] == pytest.approx(0, abs=0.1), still
    assert lower["yoke_side"] == pytest.approx(0, abs=MM)
    assert lower["zip_length"] >= 0 and lower["zip_opening"] == pytest.approx(lower["zip_length"])


@pytest.mark.parametrize("name", DEMO_WEARERS)
@pytest.mark.parametrize("below", RISES)
def test_25_mm_less_rise_is_taken_off_front_and_back_and_both_side_seams(name: str, below: float) -> None:
    assert_the_rise_moved_alike(*drop(block_of(name), STRAIGHT, below))


@pytest.mark.parametrize("name", DEMO_WEARERS)
def test_the_same_holds_under_a_straight_band(name: str) -> None:
    style = replace(STRAIGHT, band=Band.STRAIGHT)
    jeans = [make_jeans(block_of(name), replace(style, below_waist=below)) for below in (30, 55)]
    sizes = [Sizes.of(one) for one in jeans]
    assert sizes[0].centre_front - sizes[1].centre_front == pytest.approx(STEP, abs=MM)
    assert sizes[0].centre_back - sizes[1].centre_back == pytest.approx(STEP, abs=MM)
    assert sizes[0].front_side - sizes[1].front_side == pytest.approx(STEP, abs=MM)
    strips = [one.pattern.piece("waistband").edge("inner edge").length for one in jeans]
    waists = [whole_waist(one) for one in jeans]
    assert strips[1] - strips[0] == pytest.approx(waists[1] - waists[0], abs=MM)


@given(body=bodies(sides=False), below=st.floats(-25, 55))
@few
def test_the_rise_moves_alike_on_any_body(body: Measurements, below: float) -> None:
    try:
        block = draft_block(body)
    except DraftRefused:
        assume(False)
    # On a shorter trunk a low rise leaves no room for the whole yoke, which then gives way.
    way = block.levels.waist.mm - block.levels.hip.mm - below - STEP
    assume(0.85 * way >= STRAIGHT.band_height + STRAIGHT.yoke_side)
    assume(block.levels.waist.mm - block.levels.crotch.mm >= 250)
    high, low = drop(block, STRAIGHT, below)
    # A waist so much smaller than the hip that its yoke is cut deeper asks for less of that lower down, and a
    # dart that a belly leaves out for more.
    assume(max(high.yoke_centre, low.yoke_centre) <= STRAIGHT.yoke_centre + MM)
    assert_the_rise_moved_alike(high, low)


@pytest.mark.parametrize("name", DEMO_WEARERS)
def test_over_the_whole_range_of_rises_zip_and_pocket_follow(name: str) -> None:
    block = block_of(name)
    rises = [replace(STRAIGHT, below_waist=below) for below in range(-25, 105, 5)]
    zips = [fly_length(block, style) for style in rises]
    assert all(a.zip >= b.zip for a, b in itertools.pairwise(zips))
    assert zips[0].zip - zips[-1].zip >= 50, "125 mm of rise ask for another zip"
    for style in (rises[0], rises[-1]):
        leg = make_jeans(block, style).pattern.piece("front leg")
        assert notch_at(leg, "side seam", "hip") >= 0, "the pocket ends above the hip notch"


# One size wider: hip and waist 40 mm more.
WIDER = 40.0


def size_apart(**changed: float) -> tuple[Block, Block]:
    girths = {"hip_girth": 980.0, "waist_girth": 760.0} | {k: v for k, v in changed.items() if "girth" in k}
    others = {key: value for key, value in changed.items() if "girth" not in key}
    wider = {key: value + WIDER for key, value in girths.items()}
    return draft_block(wearer(**girths, **others)), draft_block(wearer(**wider, **others))


@pytest.mark.parametrize("waist", [700.0, 760.0, 880.0])
@pytest.mark.parametrize("leg", [700.0, 780.0, 860.0])
def test_one_size_wider_moves_widths_and_not_the_length_of_the_leg(waist: float, leg: float) -> None:
    before, after = size_apart(waist_girth=waist, inside_leg_height=leg)
    assert after.hip_girth - before.hip_girth == pytest.approx(WIDER, abs=0.1)
    assert after.waist_girth - before.waist_girth == pytest.approx(WIDER, abs=0.1)
    small, large = (Sizes.of(make_jeans(block, STRAIGHT)) for block in (before, after))
    wider = large.less(small)
    for still in ("front_inseam", "back_inseam", "front_side", "back_side", "knee_notch"):
        assert wider[still] == pytest.approx(0, abs=1.5), still
    assert wider["yoke_centre"] == pytest.approx(0, abs=0.1)
    assert 2 * wider["waist"] == pytest.approx(WIDER, abs=4), "the band grows by the size"
    assert 2 * wider["band"] == pytest.approx(WIDER, abs=4)
    assert wider["back_pocket"] == pytest.approx(STRAIGHT.back_pocket.opening * WIDER, abs=1.5)
    assert wider["hem"] > 0


def test_one_size_wider_lengthens_the_crotch_seam_as_bodies_do() -> None:
    """By 0.38 of the hip, 15 mm of 40: the forks grow, and the trunk is less long for the hip."""
    before, after = size_apart()
    small, large = (Sizes.of(make_jeans(block, STRAIGHT)) for block in (before, after))
    wider = large.less(small)
    assert 0 <= wider["centre_front"] <= 4 + MM
    assert 5 - MM <= wider["centre_back"] <= 13 + MM


# 25 mm longer at the knee: everything above is lifted.
HEIGHTS = ("inside_leg_height", "waist_height", "hip_height", "knee_height", "outside_leg_length")
TOP = (
    "centre_front", "centre_back", "yoke_centre", "yoke_side", "waist", "band", "zip_opening",
    "pocket_opening", "back_pocket", "hem",
)  # fmt: skip


def lifted(body: Measurements, *, knee: bool) -> Measurements:
    """Return a body whose legs are 25 mm longer: below the knee, or above it."""
    keys = [key for key in HEIGHTS if knee or key != "knee_height"]
    known = {key: getattr(body, key) for key in keys}
    return replace(body, **{key: mm + STEP for key, mm in known.items() if mm is not None})


def halves_alike(before: Half, after: Half) -> None:
    """Assert that trunk and forks only moved up."""
    for panel in ("front", "back"):
        old, new = (getattr(half, panel).points() for half in (before, after))
        for point in ("hip point", "hip at the side", "fork"):
            assert (new[point].x, new[point].y) == pytest.approx((old[point].x, old[point].y + STEP), abs=0.5)


KNEE_KNOWN = [name for name in DEMO_WEARERS if name != "gulsah"]
"""Of the fourth the knee was not measured, so that it moves with the leg."""


@pytest.mark.parametrize("name", KNEE_KNOWN)
def test_25_mm_longer_below_the_knee_changes_only_the_stretch_below_the_knee(name: str) -> None:
    body = read_measurements(DEMO / f"{name}.toml").measurements
    before, after = draft_block(body), draft_block(lifted(body, knee=True))
    old, new = (Sizes.of(make_jeans(block, STRAIGHT)) for block in (before, after))
    longer = new.less(old)
    halves_alike(before.halves[0], after.halves[0])
    for edge in ("front_inseam", "back_inseam", "front_side", "back_side", "knee_notch"):
        assert longer[edge] == pytest.approx(STEP, abs=0.5), edge
    for still in TOP:
        assert longer[still] == pytest.approx(0, abs=0.5), still


@pytest.mark.parametrize("name", KNEE_KNOWN)
def test_25_mm_longer_above_the_knee_leaves_knee_and_hem_where_they_were(name: str) -> None:
    """The thigh's slope changes with its length, so that seams there gain 25 within a millimetre."""
    body = read_measurements(DEMO / f"{name}.toml").measurements
    before, after = draft_block(body), draft_block(lifted(body, knee=False))
    old, new = (Sizes.of(make_jeans(block, STRAIGHT)) for block in (before, after))
    longer = new.less(old)
    assert longer["knee_notch"] == pytest.approx(0, abs=0.1)
    for edge in ("front_inseam", "back_inseam", "front_side", "back_side"):
        assert longer[edge] == pytest.approx(STEP, abs=1.5), edge
    for still in ("yoke_centre", "back_pocket", "hem"):
        assert longer[still] == pytest.approx(0, abs=0.1), still
    assert longer["waist"] == pytest.approx(0, abs=MM)
    assert longer["zip_opening"] in (-10, 0, 10), "a whole centimetre of zip at most"


def test_where_the_knee_was_not_measured_it_moves_half_as_far_as_the_leg() -> None:
    before, after = draft_block(wearer()), draft_block(wearer(inside_leg_height=780 + STEP))
    assert after.levels.knee.mm - before.levels.knee.mm == pytest.approx(STEP / 2)
    assert after.leg_girth(1) == pytest.approx(before.leg_girth(1), abs=0.1)


@pytest.mark.parametrize("hair", [-1e-9, 1e-13, 1e-7])
def test_a_rise_a_hair_off_the_waist_is_the_waist(hair: float) -> None:
    at, beside = (
        make_jeans(block_of("zaneta"), replace(STRAIGHT, below_waist=below)) for below in (0.0, hair)
    )
    assert max(map(abs, Sizes.of(beside).less(Sizes.of(at)).values())) < 1e-3
