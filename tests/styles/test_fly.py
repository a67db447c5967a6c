"""Fly facing, shield, topstitching template and zip."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point

from drafting.block.block import draft_block
from drafting.body.measurements import SideMeasurements
from drafting.pieces.pieces import Finish, Material
from styles.choice.style import STRAIGHT, Band, Laps
from styles.parts.fly_length import fly_length
from styles.top.upper import front_at, seam_depth
from tests.front_parts import front_parts
from tests.strategies import bodies, examples
from tests.wearers import wearer

BLOCK = draft_block(wearer())


def fly_pieces(style=STRAIGHT, block=BLOCK):
    return {piece.name: piece for piece in front_parts(block, style).pieces if piece.name.startswith("fly")}


def zip_of(style=STRAIGHT, block=BLOCK):
    return next(notion for notion in front_parts(block, style).notions if "zip" in notion.name)


@examples(60)
@given(bodies(), st.floats(0, 70))
def test_on_any_body_the_fly_covers_a_zip_of_whole_centimetres_and_its_stop(measurements, below_waist):
    block = draft_block(measurements)
    style = replace(STRAIGHT, below_waist=below_waist)
    made, bought = fly_pieces(style, block), zip_of(style, block)
    assert bought.count == 1 and bought.length % 10 == 0 and 40 <= bought.length <= 200
    rise = front_at(block.front, seam_depth(style)).crotch.length + style.band_height
    assert bought.length <= max(rise - 130, 40)
    for name, piece in made.items():
        centre = piece.edge("centre front").length
        assert centre >= bought.length + 10, name
        assert centre > fly_length(block, style).opening >= 50


def test_the_opening_ends_where_the_seam_has_hardly_turned():
    centre = front_at(BLOCK.front, seam_depth(STRAIGHT)).crotch.reversed()
    opening = fly_length(BLOCK, STRAIGHT).opening
    assert math.degrees(centre.direction(0).angle_to(centre.direction(opening))) < 15
    assert opening > 0.9 * centre.curves[0].length


def test_left_over_right_has_the_facing_on_the_left_front_and_the_shield_on_the_right():
    assert list(fly_pieces()) == [
        "fly facing (left front)",
        "fly shield (right front)",
        "fly topstitching template (left front)",
    ]
    assert all(piece.cutting.quantity == 1 for piece in fly_pieces().values())


def test_lapping_the_other_way_mirrors_every_piece_of_the_fly():
    usual, other = fly_pieces(), fly_pieces(replace(STRAIGHT, laps=Laps.RIGHT_OVER_LEFT))
    for (_, piece), (name, turned) in zip(usual.items(), other.items(), strict=True):
        assert ("left" in name) is ("shield" in name)
        flipped = piece.mirrored().polygon
        assert flipped.symmetric_difference(turned.polygon).area < 0.01


def test_seen_from_its_own_face_a_left_facing_has_the_centre_front_on_its_right():
    """The facing lies face inwards behind the left front, whose centre is at its left from outside."""
    facing = fly_pieces()["fly facing (left front)"]
    assert facing.edge("centre front").path.end.x > facing.polygon.centroid.x
    template = fly_pieces()["fly topstitching template (left front)"]
    assert template.edge("centre front").path.start.x < template.polygon.centroid.x


def test_facing_is_a_little_wider_than_the_topstitching_and_the_shield_is_laid_on_the_fold():
    made = fly_pieces()
    facing, shield, template = made.values()
    assert facing.edge("waist").length == pytest.approx(38 + 6)
    assert template.edge("waist").length == pytest.approx(38)
    assert shield.edge("waist").length == pytest.approx(45)
    assert shield.edge("fold").finish is Finish.FOLD
    assert template.cutting.material is Material.TEMPLATE
    assert shield.edge("centre front").length == pytest.approx(facing.edge("centre front").length + 10)


def test_the_j_is_parallel_to_the_centre_and_turns_in_square_to_the_seam():
    template = fly_pieces(replace(STRAIGHT, laps=Laps.RIGHT_OVER_LEFT)).popitem()[1]
    stitching, centre = template.edge("topstitching").path, template.edge("centre front").path
    assert abs(stitching.direction(0).cross(centre.direction(centre.length))) < 1e-6
    corner = stitching.direction(stitching.length).angle_to(centre.direction(0))
    assert math.degrees(corner) == pytest.approx(90, abs=0.01)


def test_a_rise_lower_by_25_mm_shortens_zip_opening_and_facing_alike_by_two_or_three_centimetres():
    low = replace(STRAIGHT, below_waist=STRAIGHT.below_waist + 25)
    change = zip_of().length - zip_of(low).length
    assert change in (20, 30)
    for name, piece in fly_pieces().items():
        shorter = fly_pieces(low)[name]
        difference = piece.edge("centre front").length - shorter.edge("centre front").length
        assert difference == pytest.approx(change, abs=0.001)


def test_two_different_sides_have_one_fly_whose_stop_is_notched_alike_on_both_fronts():
    block = draft_block(
        wearer(left=SideMeasurements(half_hip_arc=500), right=SideMeasurements(half_hip_arc=480))
    )
    legs = [p for p in front_parts(block, STRAIGHT).pieces if p.name.endswith("front leg")]
    stops = []
    for piece, forwards in zip(legs, (True, False), strict=True):
        seam = piece.edge("crotch seam")
        (stop,) = seam.notches
        stops.append(stop.distance if forwards else seam.length - stop.distance)
    assert stops[0] == pytest.approx(stops[1], abs=0.01)
    assert len(fly_pieces(block=block)) == 3


@pytest.mark.parametrize(
    ("rise_in", "shortest_in", "longest_in"),
    [(8, 2.5, 4), (9.5, 4.5, 6)],
    ids=["low rise", "middle rise"],
)
def test_zips_are_as_long_as_published_for_their_front_rise(rise_in, shortest_in, longest_in):
    """Front rise with band 7 to 8.5 in: zip 2.5 to 4 in; 8.5 to 10 in: 4.5 to 6 in (lzfash.com, how to
    measure jeans). Half an inch is allowed, as shops round."""
    full = front_at(BLOCK.front, 0).crotch.length
    style = replace(STRAIGHT, below_waist=full - rise_in * 25.4)
    zip_in = zip_of(style).length / 25.4
    assert shortest_in - 0.5 <= zip_in <= longest_in + 0.5


def test_the_stitched_j_of_a_work_pant_ends_about_where_its_size_chart_says():
    """J-stitch 7 in below the band and 1.5 in wide, front rise 12.5 in with a band of 1 3/4, size 32
    (work-pant size chart, casualindustrees.com)."""
    block = draft_block(wearer(waist_girth=851, hip_girth=965, inside_leg_height=810, body_rise=260))
    full = front_at(block.front, 0).crotch.length
    style = replace(STRAIGHT, band_height=44, below_waist=full - 12.5 * 25.4, band=Band.SHAPED)
    template = fly_pieces(style, block)["fly topstitching template (left front)"]
    assert template.edge("waist").length == pytest.approx(1.5 * 25.4, abs=0.5)
    assert template.edge("centre front").length == pytest.approx(7 * 25.4, abs=20)


# Common practice, no source: a sewer would see each of these on the finished fly.
def test_stitching_facing_and_shield_end_one_below_the_other_below_the_stop():
    facing, shield, template = fly_pieces().values()
    opening = fly_length(BLOCK, STRAIGHT).opening
    below = [piece.edge("centre front").length - opening for piece in (template, facing, shield)]
    assert below == pytest.approx([5, 15, 25])


def test_the_stitching_runs_straight_down_to_five_quarters_of_its_width_above_its_end():
    template = fly_pieces(replace(STRAIGHT, laps=Laps.RIGHT_OVER_LEFT)).popitem()[1]
    straight, bend = template.edge("topstitching").path.curves
    assert straight.straight and straight.length == pytest.approx(
        template.edge("centre front").length - 1.25 * 38
    )
    # Round and not cut off: longer than the chord, shorter than two sides of the corner.
    assert 1.05 * (bend.end - bend.start).length < bend.length < 38 + 1.25 * 38


@pytest.mark.parametrize("laps", Laps)
def test_the_grain_of_the_template_keeps_clear_of_its_edges(laps):
    curved = draft_block(wearer(waist_girth=700, hip_girth=1060))
    template = fly_pieces(replace(STRAIGHT, laps=laps), curved).popitem()[1]
    ends = (template.grain.start, template.grain.end)
    assert min(template.polygon.exterior.distance(Point(*end)) for end in ends) > 5
