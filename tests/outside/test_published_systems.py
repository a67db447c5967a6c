"""The published drafts of the comparison, against the results that their sources print.

Sources: WAUCH, METRIC, ROSENFELD, ITALIAN, RUSSIAN as in `test_published_drafts.py`.
"""

from __future__ import annotations

import pytest

from drafting import draft_block
from drafting.base.formula import named
from drafting.lesson.compared import OWN, compared
from drafting.lesson.published import QUANTITIES, PublishedPanel, SystemDraft, Wearer
from drafting.lesson.published_systems import (
    SYSTEMS,
    cutters_draft,
    designers_draft,
    half_girth_draft,
    home_draft,
    metric_block,
)
from tests.wearers import wearer

INCH = 25.4


def measured(**mm: float) -> Wearer:
    """Return a wearer of METRIC's size 12 (part of it from memory) with other measures, mm."""
    size = {"waist": 680, "hip": 940, "rise": 280, "standing_rise": 280, "leg": 760, "waist_to_hip": 206}
    size |= {"knee": 492, "hem": 440} | mm
    return Wearer(**{name: named(name, value) for name, value in size.items()})


def at(panel: PublishedPanel | None, name: str) -> tuple[float, float]:
    assert panel is not None
    point = panel.points[name]
    return point.x, point.y


def test_the_half_girth_draft_gives_its_printed_results() -> None:
    # RUSSIAN: half hip 52, half waist 38: depth 27, width 26.5, fork 5.2 and 3.5 at the side, all printed
    draft = half_girth_draft(measured(hip=1040, waist=760))
    assert draft.amounts["crotch depth"].mm == pytest.approx(270)
    assert draft.amounts["front hip width"].mm == pytest.approx(265)
    assert draft.amounts["front fork"].mm == pytest.approx(52)
    side = at(draft.front, "side at the waist")[0] - at(draft.front, "hip at the side")[0]
    assert side == pytest.approx(35)


def test_the_half_girth_hip_level_is_a_third_of_the_depth() -> None:
    # RUSSIAN: depth 29, hip line 9.7 above the crotch line, printed; a half hip of 56 gives that depth
    draft = half_girth_draft(measured(hip=1120))
    assert draft.amounts["hip level above crotch"].mm == pytest.approx(97, abs=0.5)


def test_rosenfelds_quarters_are_those_he_prints() -> None:
    # ROSENFELD, lesson 411, printed: hip 43 gives 10 3/4, waist 25 gives 6 1/4 and 2 for fullness
    draft = designers_draft(measured(hip=43 * INCH, waist=25 * INCH))
    assert draft.amounts["front hip width"].mm == pytest.approx(10.75 * INCH)
    assert draft.amounts["front waist"].mm == pytest.approx((6.25 + 2) * INCH)


def test_a_trousers_fork_is_the_twelfth_that_rosenfeld_prints() -> None:
    # ROSENFELD, lesson 411, printed: a sixth of half of 43 is 3 5/8; he writes sixteenths, so 1/16 in is what
    # he rounds away (43/12 = 3.583). WAUCH takes the same twelfth of the seat.
    draft = cutters_draft(measured(hip=43 * INCH))
    assert draft.amounts["front fork"].mm == pytest.approx(3.625 * INCH, abs=INCH / 16)


def test_the_knee_of_an_american_text_is_the_one_it_prints() -> None:
    # An American designer's text of about 1910 to 1920, printed: leg 32, half of it less 2 in is 14 in. Our
    # designer's draft has the same rule.
    draft = designers_draft(measured(leg=32 * INCH))
    assert draft.amounts["knee below crotch"].mm == pytest.approx(14 * INCH)


def test_rosenfelds_pantaloon_is_that_of_lesson_82() -> None:
    # ROSENFELD, lesson 82: side 42, rise 10, waist 24, hip 42: hip 10.5, fork 2.625, knee 14 below the
    # crotch line; the curve lies 1.36 off the corner
    draft = designers_draft(
        measured(hip=42 * INCH, waist=24 * INCH, standing_rise=10 * INCH, leg=32 * INCH, hem=16 * INCH)
    )
    wanted = {"front hip width": 10.5, "front fork": 2.625, "front waist": 8, "knee below crotch": 14}
    for quantity, inches in wanted.items():
        assert draft.amounts[quantity].mm == pytest.approx(inches * INCH), quantity
    assert draft.amounts["curve off the corner"].mm == pytest.approx(1.36 * INCH, abs=0.1)
    hem = at(draft.front, "hem at the inseam")[0] - at(draft.front, "hem at the side")[0]
    assert hem == pytest.approx(8 * INCH)


def test_wauchs_draft_closes_as_he_says() -> None:
    # WAUCH: side 102, leg 76, waist 84, seat 100, knee 52, bottom 44: his hip point lands exactly above his
    # crotch point at the side (25 - 8.33 = 16.67), 16.67 to either side of the crease
    draft = cutters_draft(measured(hip=1000, waist=840, standing_rise=260, leg=760, knee=520, hem=440))
    crotch, hip = at(draft.front, "crotch at the side"), at(draft.front, "hip at the side")
    assert crotch[0] == pytest.approx(hip[0]) == pytest.approx(-250)
    fork, crease = at(draft.front, "fork")[0], -1000 / 12
    assert fork - crease == pytest.approx(1000 / 6) == pytest.approx(crease - crotch[0])
    assert draft.amounts["crotch depth"].mm == pytest.approx(230)
    assert draft.amounts["front waist"].mm == pytest.approx(230)
    assert draft.amounts["knee below crotch"].mm == pytest.approx(760 - 430)  # 43 above the floor
    knee = at(draft.front, "knee at the inseam")[0] - at(draft.front, "knee at the side")[0]
    assert knee == pytest.approx(260)


def test_the_metric_block_lies_where_the_book_puts_it() -> None:
    # METRIC, size 12: points reckoned by hand from the book's rules, see `test_published_drafts.py`
    draft = metric_block(measured())
    front = {
        "hip at the side": (-240, 74), "centre at the waist": (-10, 280), "fork": (63.75, 0),
        "side at the waist": (-202.5, 280), "knee at the inseam": (-93.3 + 118, -330),
        "hem at the side": (-93.3 - 105, -760),
    }  # fmt: skip
    back = {
        "hip at the side": (-180 - 78.25, 74), "fork": (189 - 78.25, -5),
        "centre at the waist": (50 - 78.25, 300), "side at the waist": (-161.6 - 78.25, 280),
        "hem at the inseam": (115 - 78.25, -760), "knee at the side": (-128 - 78.25, -330),
    }  # fmt: skip
    for panel, points in ((draft.front, front), (draft.back, back)):
        for name, (x, y) in points.items():
            assert at(panel, name) == pytest.approx((x, y), abs=0.4), name


def test_the_metric_block_has_the_ease_that_the_book_says() -> None:
    # METRIC: hip + 4; waist, less a front dart of 2 and two back darts of 2, has 1 cm of ease, printed
    draft = metric_block(measured())
    assert draft.back is not None
    assert draft.amounts["front waist"].mm + draft.amounts["back waist"].mm - 60 == pytest.approx(345)


def test_the_italian_draft_gives_the_widths_of_its_formulas() -> None:
    # ITALIAN with hip 94, waist 68, depth 28, reckoned by hand
    amounts = home_draft(measured()).amounts
    wanted = {
        "front fork": 57, "front hip width": 235, "front waist": 180, "back hip width": 255, "back fork": 124,
        "centre back in at the waist": 39.2, "back waist": 200, "hip level above crotch": 140,
    }  # fmt: skip
    for quantity, mm in wanted.items():
        assert amounts[quantity].mm == pytest.approx(mm, abs=0.05), quantity


def all_drafts() -> tuple[SystemDraft, ...]:
    return compared(draft_block(wearer(), fitted=False))


def test_ours_comes_first_and_states_every_quantity() -> None:
    own, *others = all_drafts()
    assert own.name == OWN and set(own.amounts) == set(QUANTITIES)
    assert len(others) == len(SYSTEMS) >= 3
    assert all(other.source and set(other.amounts) <= set(QUANTITIES) for other in others)


def test_amounts_are_the_distances_of_the_drawn_points() -> None:
    for draft in all_drafts():
        amounts, fork = draft.amounts, draft.front.points["fork"]
        assert fork.x == pytest.approx(amounts["front fork"].mm), draft.name
        if draft.back:
            back = draft.back.points["fork"]
            assert back.x == pytest.approx(amounts["back fork"].mm, abs=0.01), draft.name
            assert -back.y == pytest.approx(amounts["back fork drop"].mm, abs=0.01), draft.name
        centre = draft.front.points["centre at the waist"]
        assert -centre.x == pytest.approx(amounts["centre front in at the waist"].mm, abs=0.01), draft.name


def test_a_stated_depth_of_the_crotch_curve_is_drawn() -> None:
    for draft in all_drafts()[1:]:
        if depth := draft.amounts.get("curve off the corner"):
            [curve] = [line for line in draft.front.lines if not all(c.straight for c in line.curves)]
            places = [curve.curves[0].point(t / 200) for t in range(201)]
            near = min(place.x**2 + place.y**2 for place in places)
            assert near**0.5 == pytest.approx(depth.mm, abs=0.1), draft.name


@pytest.mark.parametrize("hip", [700, 940, 1300, 1700])
def test_small_and_large_bodies_are_drafted_too(hip: float) -> None:
    for draft in compared(draft_block(wearer(hip_girth=hip, waist_girth=hip * 0.8), fitted=False)):
        for panel in (draft.front, draft.back):
            if panel:
                xs = [p.x for p in panel.points.values()]
                assert all(abs(x) < hip for x in xs)
