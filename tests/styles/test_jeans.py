"""Every pair of jeans sews together: each seam, notch, corner, band, pocket and fly, for every wearer and
style."""

from __future__ import annotations

import itertools
import re

import numpy as np
import pytest
import shapely

from drafting.base.tolerance import MITRE, NOTCH, SEAM
from drafting.body.measurements import Side
from drafting.pieces.allowance import cut_line
from drafting.pieces.pieces import Finish, Material
from outputs.print.piece_text import title
from styles.choice.style import Band, Laps
from styles.making.jeans import Jeans
from styles.making.jeans_figures import jeans_figures
from styles.parts.fly_length import shield_width
from tests.printed import called
from tests.whole_jeans import (
    STYLES,
    UNEVEN,
    WEARERS,
    back_waist,
    front_waist,
    jeans_of,
    notch_at,
    sides_of,
    whole_waist,
)  # fmt: skip

HAIR = 0.01
"""What arithmetic and flattening leave, mm."""


@pytest.fixture(params=WEARERS)
def name(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture(params=STYLES)
def jeans(name: str, request: pytest.FixtureRequest) -> Jeans:
    return jeans_of(name, request.param)


def test_nothing_keeps_it_from_being_sewn(jeans: Jeans) -> None:
    assert [fault.say() for fault in jeans.faults] == []


def test_every_seam_meets_within_1_mm_of_its_declared_ease(jeans: Jeans) -> None:
    assert len({check.name for check in jeans.seams}) == len(jeans.seams) == len(jeans.pattern.seams)
    misses = {check.name: check.first_length - check.second_length - check.intended for check in jeans.seams}
    assert {seam: miss for seam, miss in misses.items() if abs(miss) > SEAM} == {}
    assert all(min(check.first_length, check.second_length) > 0 for check in jeans.seams)


def test_only_the_inseam_is_eased(jeans: Jeans) -> None:
    eased = {check.name.split()[-1] for check in jeans.seams if check.intended}
    assert eased == {"inseam"}


def test_every_notch_meets_its_partner_within_half_a_millimetre(jeans: Jeans) -> None:
    misses = {
        f"{check.name}: {notch.name}": notch.miss
        for check in jeans.seams
        for notch in check.notches
        if abs(notch.miss) > NOTCH
    }
    assert misses == {}


def test_each_kind_of_seam_has_the_notches_that_it_needs(jeans: Jeans) -> None:
    seen = {(check.name, notch.name) for check in jeans.seams for notch in check.notches}
    for side in sides_of(jeans):
        needed = {
            (f"{side}inseam", "knee"),
            (f"{side}side seam", "hip"),
            (f"{side}side seam", "knee"),
            (f"{side}back leg to yoke", "yoke"),
            (f"{side}pocket facing to bag at the waist", "pocket corner"),
            (f"{side}pocket facing to bag at the side", "pocket end"),
        }
        assert needed <= seen
    assert sum(notch == "zip stop" for _, notch in seen) >= 3, "facing, shield and template"


def test_every_loop_but_that_at_the_centre_back_has_a_notch_on_waist_and_band(jeans: Jeans) -> None:
    halves = {}
    for check in jeans.seams:
        if check.name.endswith("to the waistband"):
            side = check.name.split()[0] if check.name.split()[0] in ("left", "right") else ""
            halves.setdefault(side, []).extend(notch.name for notch in check.notches)
    for loops in halves.values():
        assert sorted(loops) == [f"loop {number}" for number in range(1, len(loops) + 1)]
        assert len(loops) in (2, 3), "5 or 7 loops in all"


def test_all_joined_corners_run_on(jeans: Jeans) -> None:
    assert {check.name: round(check.angle, 1) for check in jeans.corners if not check.passes} == {}


def test_band_and_waist_are_equally_long_between_each_pair_of_marks(jeans: Jeans) -> None:
    bands = [check for check in jeans.seams if check.name.endswith("to the waistband")]
    for check in bands:
        ends = [(0.0, 0.0), *((n.first, n.second) for n in check.notches)]
        ends = [*sorted(ends), (check.first_length, check.second_length)]
        for (a, b), (c, d) in itertools.pairwise(ends):
            assert c - a == pytest.approx(d - b, abs=NOTCH), check.name
    lengths = sorted(check.first_length for check in bands)
    own = [waist(jeans, side) for side in sides_of(jeans) for waist in (front_waist, back_waist)]
    if jeans.style.band is Band.STRAIGHT:
        own *= 2 // len(sides_of(jeans))  # one strip goes round both sides
    assert lengths == pytest.approx(sorted(own), abs=HAIR)


def test_the_band_is_the_waist_and_the_underlap(jeans: Jeans) -> None:
    pieces = jeans.pattern.pieces
    seams = [
        edge.length * (piece.cutting.quantity // 2 if "front" in piece.name or "left " in piece.name else 1)
        for piece in pieces
        if piece.name.endswith("waistband")
        for edge in piece.edges
        if edge.name.endswith("waist seam")
    ]
    shield = [e.length for p in pieces if p.name.endswith("waistband") for e in p.edges if "shield" in e.name]
    assert shield == [pytest.approx(shield_width(jeans.style))]
    if jeans.style.band is Band.STRAIGHT:
        strip = jeans.pattern.piece("waistband").edge("inner edge").length
        whole = whole_waist(jeans) + shield_width(jeans.style)
        assert strip == pytest.approx(whole, abs=SEAM)
        assert len(seams) == 4


def test_a_shaped_band_lies_on_the_waist_all_round(name: str) -> None:
    jeans = jeans_of(name, "shaped band")
    seams = [
        called(jeans.pattern, f"{side}{part} waistband").edge("waist seam").length
        for side in sides_of(jeans)
        for part in ("front", "back")
    ]
    assert sum(seams) * 2 / len(sides_of(jeans)) == pytest.approx(whole_waist(jeans), abs=SEAM)


def test_the_yoke_is_as_long_below_as_the_back_leg_is_above(jeans: Jeans) -> None:
    for side in sides_of(jeans):
        leg, yoke = (
            called(jeans.pattern, side + part).edge("yoke seam") for part in ("back leg", "back yoke")
        )
        assert yoke.length == pytest.approx(leg.length, abs=SEAM)


def test_the_pocket_opening_is_as_long_on_leg_bag_and_facing(jeans: Jeans) -> None:
    for side in sides_of(jeans):
        leg, bag, facing = (
            called(jeans.pattern, side + part) for part in ("front leg", "pocket bag front", "pocket facing")
        )
        opening = leg.edge("pocket opening").length
        assert bag.edge("pocket opening").length == pytest.approx(opening, abs=HAIR)
        (drawn,) = (mark.path.length for mark in facing.marks if mark.name == "pocket opening")
        assert drawn == pytest.approx(opening, abs=HAIR)


def test_the_fly_covers_the_zip_and_its_stop(jeans: Jeans) -> None:
    (length,) = (notion.length for notion in jeans.notions if "zip" in notion.name)
    lapping = "left" if jeans.style.laps is Laps.LEFT_OVER_RIGHT else "right"
    covered = "right" if lapping == "left" else "left"
    facing = called(jeans.pattern, f"fly facing ({lapping} front)")
    shield = called(jeans.pattern, f"fly shield ({covered} front)")
    template = called(jeans.pattern, f"fly topstitching template ({lapping} front)")
    openings = []
    for piece in (facing, shield, template):
        centre = piece.edge("centre front")
        at = notch_at(piece, "centre front", "zip stop")
        names = [edge.name for edge in piece.edges]
        before = names[names.index("centre front") - 1]
        openings.append(at if before == "waist" else centre.length - at)
        assert centre.length > openings[-1]
    assert openings == pytest.approx([openings[0]] * 3)
    assert length < openings[0] < length + 20, "the stop lies just above the end of the opening"
    assert shield.edge("centre front").length > facing.edge("centre front").length
    assert shield_width(jeans.style) > jeans.style.fly_width, "shield wider than the topstitching"


def test_every_piece_has_a_name_of_its_own_and_a_number(jeans: Jeans) -> None:
    pieces = jeans.pattern.pieces
    assert len({piece.name for piece in pieces}) == len(pieces)
    listed = jeans_figures(jeans)["pieces"]
    assert [(one["number"], one["name"]) for one in listed] == list(enumerate((p.name for p in pieces), 1))
    assert [title(n, p) for n, p in enumerate(pieces, 1)] == [
        f"{n}. {p.name}" for n, p in enumerate(pieces, 1)
    ]


def test_the_five_pocket_jeans_are_complete(jeans: Jeans) -> None:
    names = {piece.name.removeprefix("right ").removeprefix("left ") for piece in jeans.pattern.pieces}
    names = {name.split(" (")[0] for name in names}
    band = {"waistband"} if jeans.style.band is Band.STRAIGHT else {"front waistband", "back waistband"}
    legs = {"front leg", "back leg", "back yoke"}
    pockets = {"pocket facing", "pocket bag back", "pocket bag front", "watch pocket", "back pocket"}
    closing = {"fly facing", "fly shield", "fly topstitching template", "belt loops"}
    assert legs | pockets | closing | band <= names


def test_every_piece_says_how_it_is_cut_and_of_what_and_where_its_grain_lies(jeans: Jeans) -> None:
    pattern = r"cut (\d+) = (\d+) pairs?, flip for the second|cut \d+, this side up"
    for piece in jeans.pattern.pieces:
        found = re.fullmatch(pattern, piece.cutting.text())
        assert found, piece.name
        assert found[1] is None or int(found[1]) == 2 * int(found[2])
        assert piece.cutting.material in Material
        assert piece.grain.length >= 5, piece.name
        assert piece.polygon.covers(shapely.LineString(piece.grain.flatten())), piece.name


def test_every_piece_can_be_cut_out_and_its_cut_line_keeps_outside_its_sew_line(jeans: Jeans) -> None:
    for piece in jeans.pattern.pieces:
        cut = cut_line(piece).polygon
        assert cut.geom_type == "Polygon" and cut.is_valid, piece.name
        assert cut.buffer(HAIR).covers(piece.polygon), piece.name


def test_no_corner_spikes_further_than_two_and_a_half_allowances(jeans: Jeans) -> None:
    """The hem's depth excepted: there the cut line mirrors the leg."""
    far = {}
    for piece in jeans.pattern.pieces:
        cut, ring = cut_line(piece), piece.polygon.exterior
        widths = [0.0 if edge.finish is Finish.HEM else edge.allowance for edge in piece.edges]
        for place, side in enumerate(cut.sides):
            if side.edge.finish is Finish.HEM:
                continue
            widest = max(widths[place - 1], widths[place], widths[(place + 1) % len(widths)])
            reach = float(np.max(shapely.distance(shapely.points(side.points), ring)))
            if reach > MITRE * widest + HAIR:
                far[f"{piece.name}, {side.edge.name}"] = (round(reach, 1), widest)
    assert far == {}


def test_straight_stretches_of_the_cut_line_lie_one_allowance_from_the_sew_line(jeans: Jeans) -> None:
    for piece in jeans.pattern.pieces:
        cut = cut_line(piece)
        for side in cut.sides:
            edge = side.edge
            if edge.finish is Finish.SEAM and edge.length > 8 * max(edge.allowance, 5):
                middle = shapely.Point(tuple(edge.path.point(edge.length / 2)))
                assert middle.distance(cut.polygon.exterior) == pytest.approx(edge.allowance, abs=0.1), (
                    f"{piece.name}, {edge.name}"
                )


def test_what_belongs_to_one_front_alone_says_to_which(name: str) -> None:
    for style, lapping, covered in (("shaped band", "left", "right"), ("right over left", "right", "left")):
        names = {piece.name for piece in jeans_of(name, style).pattern.pieces if "fly" in piece.name}
        assert names == {
            f"fly facing ({lapping} front)",
            f"fly facing ({lapping} front) interfacing",
            f"fly shield ({covered} front)",
            f"fly topstitching template ({lapping} front)",
        }


def test_the_other_lap_draws_the_fly_the_other_way_round(name: str) -> None:
    if name == UNEVEN:
        return
    left, right = (
        called(jeans_of(name, style).pattern, f"fly facing ({side} front)")
        for style, side in (("shaped band", "left"), ("right over left", "right"))
    )
    turned = left.mirrored()
    assert turned.polygon.symmetric_difference(right.polygon).area < 1


@pytest.mark.parametrize("style", STYLES)
def test_a_body_with_two_sides_gives_right_and_left_pieces_to_be_cut_once(style: str) -> None:
    jeans = jeans_of(UNEVEN, style)
    for part in (
        "front leg",
        "back leg",
        "back yoke",
        "pocket facing",
        "pocket bag back",
        "pocket bag front",
    ):
        for side in Side:
            assert called(jeans.pattern, f"{side.value} {part}").cutting.text() == "cut 1, this side up"
        assert part not in {piece.name for piece in jeans.pattern.pieces}
    watches = [piece.name for piece in jeans.pattern.pieces if "watch" in piece.name]
    assert watches == ["watch pocket"]


def test_the_verdict_says_that_all_seams_and_corners_meet(jeans: Jeans) -> None:
    assert jeans.pattern.verdict.startswith(
        f"All {len(jeans.seams)} seams and {len(jeans.corners)} joined corners meet"
    )
