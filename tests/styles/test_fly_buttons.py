"""A fly that is closed by buttons: as many as the rise has room for, and each behind its buttonhole."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Point

from drafting import Measurements, draft_block
from drafting.pieces.allowance import cut_line
from styles.choice.style import STRAIGHT, Band, Fly, Laps, Rise, Style
from styles.making.jeans import Jeans, make_jeans
from styles.parts.fly_length import fly_length
from tests.printed import called
from tests.strategies import bodies, examples
from tests.whole_jeans import WEARERS, block_of

BUTTONED = replace(STRAIGHT, fly=Fly.BUTTONS)


def piece_named(jeans: Jeans, start: str):  # type: ignore[no-untyped-def]
    return next(piece for piece in jeans.pattern.pieces if piece.name.startswith(start))


@examples(40)
@given(bodies(), st.sampled_from(Rise))
def test_on_any_body_buttons_stand_as_published_and_end_no_later_than_a_zip(
    body: Measurements, rise: Rise
) -> None:
    """About 4.5 cm apart, the first 1 in below the band, the last 3/4 to 1 in above the notch (a theatre
    cutter's trouser draft, 2011)."""
    block = draft_block(body)
    style = replace(BUTTONED, rise=rise).on(block.body)
    fly, zipped = fly_length(block, style), fly_length(block, replace(style, fly=Fly.ZIP))
    assert 1 <= len(fly.buttons) <= 4 and fly.zip is None
    assert fly.buttons[0] == pytest.approx(25.4)
    assert all(b - a == pytest.approx(45) for a, b in pairwise(fly.buttons))
    assert 19 - 1e-9 <= fly.opening - fly.buttons[-1] <= 25.4 + 1e-9
    # A zip is sold in whole centimetres, so its opening may be up to one shorter than there is room for.
    assert fly.opening < zipped.opening + 10


def test_a_higher_rise_takes_more_buttons() -> None:
    block = block_of("zaneta")
    counts = [
        len(fly_length(block, replace(BUTTONED, rise=rise).on(block.body)).buttons)
        for rise in (Rise.LOW, Rise.MID, Rise.HIGH)
    ]
    assert counts == [2, 2, 3]


@pytest.mark.parametrize("wearer", WEARERS)
@pytest.mark.parametrize(("laps", "band"), list(zip(Laps, Band, strict=True)))
def test_every_seam_meets_and_every_piece_can_be_cut(wearer: str, laps: Laps, band: Band) -> None:
    jeans = make_jeans(block_of(wearer), replace(BUTTONED, laps=laps, band=band))
    assert not jeans.faults
    assert all(check.passes for check in (*jeans.seams, *jeans.corners))
    for piece in jeans.pattern.pieces:
        assert cut_line(piece).polygon.is_valid
    notches = {notch.name for piece in jeans.pattern.pieces for edge in piece.edges for notch in edge.notches}
    assert "fly stop" in notches and "zip stop" not in notches
    assert any("behind the facing" in check.name for check in jeans.seams)


@pytest.mark.parametrize("width", [25, 38, 60])
@pytest.mark.parametrize("laps", Laps)
def test_each_button_lies_in_its_buttonhole_within_the_stitched_fly(width: float, laps: Laps) -> None:
    style = replace(BUTTONED, fly_width=width, laps=laps, rise=Rise.HIGH)
    jeans = make_jeans(block_of("zaneta"), style)
    facing, shield, template = (
        piece_named(jeans, name) for name in ("fly facing for", "fly shield", "fly topstitching")
    )
    holes = [mark.path for mark in facing.marks if mark.name == "buttonhole"]
    buttons = [mark.path.start for mark in shield.marks if mark.name == "button"]
    assert len(holes) == len(buttons) == 3
    centre = [LineString(piece.edge("centre front").path.flatten()) for piece in (facing, shield, template)]
    for hole, button in zip(holes, buttons, strict=True):
        ends = [centre[0].distance(Point(*end)) for end in (hole.start, hole.end)]
        # The button's shank sits 3 mm inside the outer end of the hole.
        assert min(ends) + 3 == pytest.approx(centre[1].distance(Point(*button)), abs=0.1)
        assert max(ends) - min(ends) == pytest.approx(16, abs=0.1)
        assert max(ends) < width
        assert facing.polygon.covers(LineString([hole.start, hole.end]))
    # As far down from the waist on one piece as on the other, walked along the centre front.
    waist = [centre[0].length - centre[0].project(Point(*hole.start)) for hole in holes]
    if laps is Laps.RIGHT_OVER_LEFT:
        waist = [centre[0].project(Point(*hole.start)) for hole in holes]
    assert waist == pytest.approx([25.4, 70.4, 115.4], abs=0.5)


def buttons_of(style: Style) -> tuple[Jeans, list[str]]:
    jeans = make_jeans(block_of("zaneta"), style)
    return jeans, [line.text for section in jeans.pattern.sections for line in section.lines]


def test_buttons_are_bought_and_sewn_in_place_of_the_zip() -> None:
    jeans, said = buttons_of(replace(BUTTONED, rise=Rise.HIGH))
    bought = {notion.name: notion.count for notion in jeans.notions}
    assert bought["fly button, 14 mm (9/16 in)"] == 3
    assert not any("zip" in name for name in bought)
    sewing = [line for line in said if "topstitch the fly" in line]
    assert len(sewing) == 1 and "buttonholes" in sewing[0]
    assert not any("zip" in line for line in said)
    _, zipped = buttons_of(STRAIGHT)
    assert not any("fly facing for buttonholes" in line for line in zipped)


def test_one_layer_of_the_buttonholes_facing_is_stiffened() -> None:
    jeans, _ = buttons_of(BUTTONED)
    doubled, stiff = (
        called(jeans.pattern, f"fly facing for buttonholes (left front){end}") for end in ("", " interfacing")
    )
    assert (doubled.cutting.quantity, stiff.cutting.quantity) == (2, 1)
