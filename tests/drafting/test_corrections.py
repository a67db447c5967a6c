"""Every correction of a fitting: what must change by it, and what must stay, as a cutter would lay the tape.

What must change and stay follows from the move itself, slash and hinge (common practice, no source), unless
a source stands beside it. Seams are measured as chains of chords, apart from the engine.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString

from drafting import Block, LegCut, Measurements, draft_block
from drafting.body.body import Origin
from drafting.body.corrections import CORRECTIONS, Changes, changes_of
from drafting.body.measurements import SideMeasurements
from drafting.geometry.paths import Path
from drafting.report.block_figures import block_figures
from drafting.report.block_findings import block_findings
from outputs.reading.measurements_file import read_measurements
from tests.fairness import largest_turn
from tests.sewn_block import joins, outline, width_at
from tests.strategies import bodies, examples
from tests.wearers import wearer
from tests.whole_jeans import DEMO

WEARERS = ("zaneta", "oksana", "gulsah")
SEWABLE = 0.6
"""A change that no needle sees, mm."""
STILL = ("waist", "hip", "knee", "hem", "front inseam", "front side seam", "front crotch", "back crotch")

STAYS: dict[str, tuple[str, ...]] = {
    "full_abdomen": ("hip", "knee", "hem", "front inseam", "front side seam", "back crotch"),
    "full_seat": ("waist", "hip", "knee", "hem", "front inseam", "front side seam", "front crotch"),
    "sway_back": tuple(name for name in STILL if name != "back crotch"),
    "higher_rise": ("waist", "hip", "knee", "hem", "thigh", "front inseam"),
    "longer_at_thigh": ("waist", "hip", "knee", "hem"),
    "longer_at_knee": ("waist", "hip", "knee", "hem"),
    "longer_at_calf": ("waist", "hip", "knee", "hem", "thigh", "front crotch", "back crotch"),
    "waist_in": ("hip", "knee", "hem", "front inseam", "front crotch", "back crotch"),
    "gaping_back": tuple(name for name in STILL if name != "waist"),
    "hip_in": ("waist", "knee", "hem", "front inseam", "front crotch", "back crotch"),
    "full_thigh": ("waist", "hip", "knee", "hem"),
    "knees_in": ("waist", "hip", "thigh", "knee", "hem", "front crotch", "back crotch"),
    "front_crotch_pulls": ("waist", "hip", "knee", "hem", "front side seam"),
    "back_crotch_pulls": ("waist", "hip", "knee", "hem", "front inseam", "front side seam", "front crotch"),
}
"""What stays, by the first of each pair of opposites; the other keeps the same."""


def stays(key: str) -> tuple[str, ...]:
    change = CORRECTIONS[key].change
    return next(names for first, names in STAYS.items() if CORRECTIONS[first].change == change)


def length(path: Path) -> float:
    return float(LineString(path.flatten(0.001)).length)


def tape(block: Block) -> dict[str, float]:
    """Return girths and seams as a tape finds them, mm."""
    front, back = block.front, block.back
    shapes = outline(front), outline(back)
    levels = block.levels

    def leg(y: float) -> float:
        return sum(width_at(shape, y) for shape in shapes)

    return {
        "waist": 2 * (length(front.closed_waist) + length(back.closed_waist)),
        "hip": 2 * (front.trunk_width(levels.hip.mm) + back.trunk_width(levels.hip.mm)),
        "thigh": leg(block.thigh_level),
        "knee": leg(block.leg.knee_height.mm),
        "hem": leg(block.leg.hem_height.mm + 0.01),
        "front inseam": length(front.lower.inseam),
        "back inseam": length(back.lower.inseam),
        "front side seam": length(front.side),
        "back side seam": length(back.side),
        "front crotch": length(front.lower.crotch),
        "back crotch": length(back.lower.crotch),
    }


@cache
def measured(name: str) -> Measurements:
    return read_measurements(DEMO / f"{name}.toml").measurements


@cache
def toile(name: str) -> dict[str, float]:
    return tape(draft_block(measured(name)))


def signed(key: str, amount: float) -> float:
    return CORRECTIONS[key].sign * amount


def usual(key: str) -> float:
    """Return an amount in the middle of the usual ones, mm."""
    return sum(CORRECTIONS[key].usual) / 2


def gains(name: str, key: str, amount: float) -> tuple[dict[str, float], Block]:
    block = draft_block(measured(name), corrections={key: amount})
    before, after = toile(name), tape(block)
    return {length: after[length] - before[length] for length in before}, block


each_wearer = pytest.mark.parametrize("name", WEARERS)
each_correction = pytest.mark.parametrize("key", CORRECTIONS)


def keys(*changes: str) -> pytest.MarkDecorator:
    return pytest.mark.parametrize("key", [key for key, c in CORRECTIONS.items() if c.change in changes])


@each_correction
@each_wearer
def test_what_a_correction_does_not_touch_stays_and_all_seams_are_trued(name: str, key: str) -> None:
    gained, block = gains(name, key, usual(key))
    assert {n: gained[n] for n in stays(key) if abs(gained[n]) > SEWABLE} == {}
    seams = tape(block)
    assert seams["front side seam"] == pytest.approx(seams["back side seam"], abs=0.05)
    wanted = seams["back inseam"] + block.proportions.inseam_ease
    assert seams["front inseam"] == pytest.approx(wanted, abs=0.05)
    assert joins(block).within()
    assert outline(block.front).is_valid and outline(block.back).is_valid


@examples(60)
@given(bodies(), st.sampled_from(sorted(CORRECTIONS)))
def test_on_any_body_a_corrected_block_is_trued_and_simple(body: Measurements, key: str) -> None:
    block = draft_block(body, corrections={key: usual(key)})
    for half in block.halves:
        # On a trunk of a hand's breadth the search for it ends a little further off, far below a seam's 1 mm.
        assert half.front.side.length == pytest.approx(half.back.side.length, abs=0.2)
        for panel in (half.front, half.back):
            assert outline(panel).is_valid
    front, back = block.front.lower, block.back.lower
    # A fork that would have to be dropped out of all proportion stays where it is on the toile, too.
    assert block.toile
    miss = front.inseam.length - back.inseam.length - block.proportions.inseam_ease
    before = block.toile.front.lower.inseam.length - block.toile.back.lower.inseam.length
    assert abs(miss) <= max(0.05, abs(before - block.proportions.inseam_ease))


@keys("abdomen")
@each_wearer
def test_an_abdomen_moves_the_centre_front_by_its_amount_and_the_waist_by_the_hinge(
    name: str, key: str
) -> None:
    amount = usual(key)
    gained, block = gains(name, key, amount)
    assert block.toile
    assert gained["front crotch"] == pytest.approx(signed(key, amount), rel=0.12)
    height = (block.toile.levels.waist - block.toile.levels.hip).mm
    # Similar triangles: the slash opens by the amount at the end of the front's width.
    by_hinge = 2 * height * amount / block.toile.front.lower.plan.hip.mm
    assert gained["waist"] == pytest.approx(signed(key, by_hinge), abs=0.1)
    tops = [b.front.points()["centre at the waist"] for b in (block.toile, block)]
    assert tops[1].x == pytest.approx(tops[0].x, abs=0.01), "the fly keeps its place"


@keys("seat")
@each_wearer
def test_a_seat_moves_the_centre_back_by_its_amount_and_the_fork_by_six_tenths(name: str, key: str) -> None:
    amount = usual(key)
    gained, block = gains(name, key, amount)
    assert block.toile
    forks = [b.back.lower.plan.fork.mm for b in (block.toile, block)]
    # 0.6 to 1.5 for 1 to 2.5 (from memory)
    assert forks[1] - forks[0] == pytest.approx(signed(key, 0.6 * amount))
    seats = [b.back.points()["centre at the waist"] for b in (block.toile, block)]
    hip = block.toile.back.points()["hip point"]
    longer = (seats[1] - hip).length - (seats[0] - hip).length
    lean = block.toile.back.lower.plan.lean
    assert longer == pytest.approx(signed(key, amount * math.cos(lean)), rel=0.05)
    assert amount < abs(gained["back crotch"]) < 1.7 * amount
    # More seat angle, as Vincent gives for more room (The Cutter's Practical Guide, 1898).
    leans = [b.back.lower.plan.lean for b in (block.toile, block)]
    assert (leans[1] - leans[0]) * signed(key, 1) > 0


@keys("seat")
@each_wearer
def test_a_seat_swings_the_top_of_the_back_about_the_side_of_its_hip(name: str, key: str) -> None:
    amount = usual(key)
    _, block = gains(name, key, amount)
    assert block.toile
    sides = [b.back.points()["side at the waist"].x for b in (block.toile, block)]
    levels, width = block.toile.levels, block.toile.back.lower.plan.hip.mm
    # Similar triangles: the slash opens by the amount at the end of the back's width.
    outwards = signed(key, (levels.waist - levels.hip).mm * amount / width)
    assert sides[0] - sides[1] == pytest.approx(outwards, abs=1)
    darts = [sum(dart.width for dart in b.back.darts) for b in (block.toile, block)]
    assert darts[1] == pytest.approx(darts[0], abs=1)


@each_wearer
def test_a_sway_back_takes_its_amount_off_the_centre_back_alone(name: str) -> None:
    gained, _ = gains(name, "sway_back", 12)
    assert gained["back crotch"] == pytest.approx(-12, abs=0.01)


@keys("rise")
@each_wearer
def test_a_rise_moves_the_waist_alike_at_the_fly_the_side_and_behind(name: str, key: str) -> None:
    amount = usual(key)
    gained, block = gains(name, key, amount)
    by = signed(key, amount)
    assert gained["front side seam"] == pytest.approx(by, rel=0.05)
    assert gained["front crotch"] == pytest.approx(by, rel=0.03)
    # The seat leans, so that a level cut opens it by less along the seam.
    assert gained["back crotch"] == pytest.approx(by, rel=0.08)
    assert block.toile
    for panel in ("front", "back"):
        before, after = (getattr(b, panel).points() for b in (block.toile, block))
        for point in ("hip point", "fork", "crease", "knee at the side", "hem at the inseam"):
            assert tuple(after[point]) == pytest.approx(tuple(before[point]), abs=SEWABLE)


@pytest.mark.parametrize(
    ("place", "knee_to_hem", "crotch_to_knee"), [("thigh", 0, 1), ("knee", 0.5, 0.5), ("calf", 1, 0)]
)
@pytest.mark.parametrize("word", ["longer", "shorter"])
@each_wearer
def test_length_goes_in_where_the_leg_is_cut(
    name: str, word: str, place: str, knee_to_hem: float, crotch_to_knee: float
) -> None:
    key, amount = f"{word}_at_{place}", 20
    gained, block = gains(name, key, amount)
    by = signed(key, amount)
    assert block.toile
    spans = []
    for each in (block.toile, block):
        levels = each.levels
        spans.append((levels.knee.mm - levels.hem.mm, levels.crotch.mm - levels.knee.mm))
    assert spans[1][0] - spans[0][0] == pytest.approx(knee_to_hem * by)
    assert spans[1][1] - spans[0][1] == pytest.approx(crotch_to_knee * by)
    for seam in ("front inseam", "back inseam", "front side seam"):
        assert gained[seam] == pytest.approx(by, rel=0.03)
    assert abs(gained["front crotch"]) < 1 and abs(gained["back crotch"]) < 1.5
    # What lies above the cut is as far apart as before.
    assert (block.levels.waist - block.levels.crotch).mm == pytest.approx(
        (block.toile.levels.waist - block.toile.levels.crotch).mm
    )


@keys("waist")
@each_wearer
def test_the_waist_is_let_out_or_taken_in_by_its_amount(name: str, key: str) -> None:
    gained, block = gains(name, key, 24)
    assert gained["waist"] == pytest.approx(signed(key, 24), abs=0.05)
    assert block.toile
    for panel in ("front", "back"):
        widths = [getattr(b, panel).waist_length for b in (block.toile, block)]
        assert widths[1] - widths[0] == pytest.approx(signed(key, 6), abs=0.02), "a quarter at each edge"
        centres = [getattr(b, panel).points()["centre at the waist"] for b in (block.toile, block)]
        assert tuple(centres[1]) == pytest.approx(tuple(centres[0]))


@each_wearer
def test_a_gaping_back_is_taken_into_the_back_darts_alone(name: str) -> None:
    gained, block = gains(name, "gaping_back", 24)
    assert gained["waist"] == pytest.approx(-24, abs=0.05)
    assert block.toile
    widths = [sum(dart.width for dart in b.back.darts) for b in (block.toile, block)]
    # Half of it at each dart; the waist line runs on at another slant over a wider dart.
    assert widths[1] - widths[0] == pytest.approx(12, rel=0.15)
    assert block.front.waist_length == pytest.approx(block.toile.front.waist_length, abs=0.01)


@keys("hip")
@each_wearer
def test_the_hip_is_let_out_or_taken_in_by_its_amount_at_the_side_seams(name: str, key: str) -> None:
    gained, block = gains(name, key, 24)
    assert gained["hip"] == pytest.approx(signed(key, 24), abs=0.01)
    assert block.toile
    for panel in ("front", "back"):
        before, after = (getattr(b, panel).points() for b in (block.toile, block))
        assert before["hip at the side"].x - after["hip at the side"].x == pytest.approx(signed(key, 6))
        for point in ("crease", "knee at the side", "hem at the side", "fork"):
            assert tuple(after[point]) == pytest.approx(tuple(before[point]), abs=0.01)


@pytest.mark.parametrize("amount", [10, 25, 45])
@each_wearer
def test_a_full_thigh_gets_its_amount(name: str, amount: float) -> None:
    gained, _ = gains(name, "full_thigh", amount)
    assert gained["thigh"] == pytest.approx(amount, abs=0.3)


@keys("knees")
@each_wearer
def test_the_lower_leg_swings_alike_on_both_panels_and_stays_level_and_as_wide(name: str, key: str) -> None:
    gained, block = gains(name, key, 10)
    assert block.toile
    shin = (block.leg.knee_height - block.leg.hem_height).mm
    # The wedge of 10 mm over the mean width of a panel at the knee, as far as the hem.
    outwards = signed(key, 10 * shin / (block.leg.knee.mm / 2))
    for panel in ("front", "back"):
        before, after = (getattr(b, panel).points() for b in (block.toile, block))
        for point in ("hem at the side", "hem at the inseam"):
            assert before[point].x - after[point].x == pytest.approx(outwards)
            assert after[point].y == before[point].y
        for point in ("knee at the side", "knee at the inseam", "fork", "hip at the side"):
            assert tuple(after[point]) == pytest.approx(tuple(before[point]), abs=SEWABLE)
    assert max(abs(gained[seam]) for seam in ("front inseam", "front side seam", "back side seam")) < 1.6


def test_the_crease_bends_at_the_knee_with_the_leg() -> None:
    straight = draft_block(wearer()).front.lower.crease
    bent = draft_block(wearer(), corrections={"knees_in": 10}).front.lower.crease
    assert (len(straight.curves), len(bent.curves)) == (1, 2)


@keys("front_fork", "back_fork")
@each_wearer
def test_a_crotch_is_let_out_or_taken_in_at_its_own_fork(name: str, key: str) -> None:
    gained, block = gains(name, key, 8)
    part, other = ("front", "back") if key.startswith("front") else ("back", "front")
    assert block.toile
    plans = [getattr(b, part).lower.plan for b in (block.toile, block)]
    assert plans[1].fork.mm - plans[0].fork.mm == pytest.approx(signed(key, 8))
    assert gained[f"{part} crotch"] * signed(key, 1) > 4
    # The other fork is only dropped or lifted to true the inseam.
    assert abs(gained[f"{other} crotch"]) < 2
    assert gained["thigh"] * signed(key, 1) > 4


def test_what_was_seen_at_the_crotch_is_not_fitted_away() -> None:
    body = wearer(total_crotch_length=700, thigh_girth=580)
    block = draft_block(body, corrections={"front_crotch_pulls": 8})
    assert block.toile
    assert block.toile.crotch_length == pytest.approx(705, abs=0.1)
    more = block.crotch_length - block.toile.crotch_length
    assert more > 3
    crotch = block_figures(block)["crotch"]
    assert crotch["target"] == pytest.approx(70.5 + more / 10, abs=0.02)
    assert crotch["corrected"] == pytest.approx(more / 10, abs=0.001)
    codes = {finding.code for finding in block_findings(block)}
    assert "crotch-corrected" in codes and "crotch-out-of-reach" not in codes


def test_all_are_made_at_once_whatever_their_order() -> None:
    amounts = {
        "full_seat": 12,
        "higher_rise": 10,
        "front_crotch_pulls": 5,
        "longer_at_calf": 20,
        "hip_in": 15,
    }
    backwards = dict(reversed(amounts.items()))
    first, second = (draft_block(wearer(), corrections=each) for each in (amounts, backwards))
    assert block_figures(first) == block_figures(second)
    assert list(first.corrections) == list(second.corrections)


def test_what_works_against_each_other_is_added_up() -> None:
    assert changes_of({"higher_rise": 20, "lower_rise": 5, "sway_back": 7}) == Changes(rise=15, sway=7)


@pytest.mark.parametrize("none", [None, {}])
def test_a_block_without_corrections_is_the_toile_itself(none: Mapping[str, float] | None) -> None:
    plain, corrected = draft_block(wearer()), draft_block(wearer(), corrections={"full_seat": 10})
    same = draft_block(wearer(), corrections=none)
    assert same.toile is None and corrected.toile
    assert block_figures(same) == block_figures(plain) == block_figures(corrected.toile)
    assert same.front.side == plain.front.side == corrected.toile.front.side


def test_levels_of_the_body_move_with_the_pattern_and_say_so() -> None:
    block = draft_block(wearer(), corrections={"longer_at_calf": 20, "higher_rise": 10})
    assert block.toile
    moved = {
        key: value.length.mm - block.toile.body[key].mm
        for key, value in block.body.values.items()
        if value.origin is Origin.CORRECTED
    }
    assert moved["waist_height"] == pytest.approx(30)
    assert moved["hip_height"] == moved["knee_height"] == moved["inside_leg_height"] == pytest.approx(20)
    assert moved["crotch_depth"] == pytest.approx(10)
    assert 0 < moved["calf_height"] < 20
    assert block.levels.waist.mm == block.body["waist_height"].mm
    assert block.front.lower.levels.waist.formula() == "waist height + corrected: waist height"


def test_the_room_that_the_wearer_chose_counts_as_ease() -> None:
    block = draft_block(wearer(), corrections={"hip_in": 20, "waist_in": 15})
    assert (block.ease.hip, block.ease.waist) == (10, -5)
    assert "girth-short" not in {finding.code for finding in block_findings(block)}


def test_the_steps_name_what_was_corrected() -> None:
    block = draft_block(wearer(), corrections={"front_crotch_pulls": 8, "full_seat": 10})
    [fork] = [step for step in block.front.steps if step.name == "fork level"]
    assert fork.length and fork.length.mm == block.front.lower.plan.fork.mm
    names = {length.name for step in block.steps if step.length for length in step.length.inner()}
    assert {"corrected: front fork", "corrected: back fork for the seat"} <= names


@each_correction
def test_every_correction_is_told_with_lengths_before_and_after(key: str) -> None:
    block = draft_block(wearer(total_crotch_length=700), corrections={key: usual(key)})
    findings = {finding.code: finding for finding in block_findings(block)}
    assert findings["corrected"].amounts == (usual(key),)
    assert len(findings["corrected-lengths"].amounts) >= 2
    assert CORRECTIONS[key].source and CORRECTIONS[key].done


@each_correction
def test_a_body_whose_sides_differ_is_corrected_on_both_sides(key: str) -> None:
    left = SideMeasurements(outside_leg_length=1040, half_hip_arc=510)
    right = SideMeasurements(outside_leg_length=1055, half_hip_arc=490)
    block = draft_block(wearer(hip_girth=1000, left=left, right=right), corrections={key: usual(key)})
    assert len(block.halves) == 2
    for half in block.halves:
        assert half.front.side.length == pytest.approx(half.back.side.length, abs=0.05)
    assert block.toile
    apart = [b.halves[0].front.side.length - b.halves[1].front.side.length for b in (block.toile, block)]
    # Only the curve of the sides is drawn out or flattened a little.
    assert apart[0] == pytest.approx(apart[1], abs=1.5)


@pytest.mark.parametrize("key", ["longer_at_thigh", "longer_at_calf", "knees_in"])
def test_shorts_are_changed_above_their_hem_only(key: str) -> None:
    block = draft_block(wearer(), cut=LegCut(hem_above_knee=0.4), corrections={key: 10})
    assert block.toile
    longer = block.front.side.length - block.toile.front.side.length
    assert longer == pytest.approx(10 if key == "longer_at_thigh" else 0, abs=0.3)
    told = "correction-below-hem" in {finding.code for finding in block_findings(block)}
    assert told == (key != "longer_at_thigh")


@pytest.mark.parametrize("hem", [0.40, 0.60])
@keys("knees")
def test_a_lower_leg_swings_without_a_corner_at_the_knee_tapered_or_flared(key: str, hem: float) -> None:
    cut = LegCut(knee_of_hip=0.44, hem_of_hip=hem)
    block = draft_block(wearer(), cut=cut, corrections={key: 13})
    assert joins(block).within()
    for panel in (block.front, block.back):
        assert largest_turn(panel.side) < 0.1 and largest_turn(panel.lower.inseam) < 0.1


def strays(line: Path) -> float:
    """Return how far a line strays to either side of the straight between its ends: the lesser, mm."""
    points = line.flatten(0.01)
    chord = points[-1] - points[0]
    off = (points - points[0]) @ [-chord[1], chord[0]] / math.hypot(*chord)
    return float(min(off.max(), -off.min()))


@pytest.mark.parametrize(("amount", "most"), [(15, 0.05), (25, 0.2), (51, 1.5)])
@each_wearer
def test_a_waist_line_raised_for_an_abdomen_is_straight_to_the_eye(
    name: str, amount: float, most: float
) -> None:
    """Square to both seams it would bend both ways: 0.6 mm for 25, 3 mm for Hertzer's utmost of 2 in.

    A pencil line is 0.5 mm wide (common practice).
    """
    block = draft_block(measured(name), corrections={"full_abdomen": amount})
    assert strays(block.front.closed_waist) < most
    assert joins(block).within()
