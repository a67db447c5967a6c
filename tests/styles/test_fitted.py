"""A fitting on whole jeans: every piece follows the corrected block, and what changed is listed."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting import draft_block
from drafting.base.errors import Severity
from styles.choice.style import STRAIGHT, Rise, Style
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth
from styles.making.fitted import fitting_figures, jeans_changes
from styles.making.jeans import Jeans, make_jeans
from styles.making.jeans_figures import jeans_figures
from tests.wearers import wearer
from tests.whole_jeans import STYLES


def fitted(style: Style = STRAIGHT, **corrections: float) -> Jeans:
    return make_jeans(draft_block(wearer(), corrections=corrections), style)


def zip_of(jeans: Jeans) -> float:
    return next(change.after for change in jeans_changes(jeans) if change.name == "zip")


@pytest.mark.parametrize(("key", "by"), [("higher_rise", 20), ("lower_rise", -20)])
def test_a_rise_crosses_the_fly_so_that_the_zip_follows_in_whole_centimetres(key: str, by: float) -> None:
    jeans = fitted(**{key: 20})
    [change] = [c for c in jeans_changes(jeans) if c.name == "zip"]
    assert change.by == pytest.approx(by)
    notions = {notion.name: notion.length for notion in jeans.notions}
    assert notions["jeans zip, closed end"] == zip_of(jeans) == change.after


@pytest.mark.parametrize("rise", list(Rise))
def test_a_rise_is_moved_by_its_whole_amount_wherever_the_style_ends(rise: Rise) -> None:
    style = replace(STRAIGHT, rise=rise)
    before, after = (
        make_jeans(draft_block(wearer(), corrections=c), style) for c in ({}, {"lower_rise": 15})
    )
    assert after.style.below_waist == before.style.below_waist
    heights = [j.block.levels.waist.mm - j.style.below_waist for j in (before, after)]
    assert heights[1] - heights[0] == pytest.approx(-15)


@pytest.mark.parametrize("style", STYLES)
def test_every_style_is_sewn_after_many_corrections(style: str) -> None:
    jeans = fitted(
        STYLES[style], full_seat=12, full_abdomen=10, gaping_back=20, higher_rise=10, knees_in=8,
        longer_at_calf=20, front_crotch_pulls=5, full_thigh=10, hip_in=10,
    )  # fmt: skip
    assert jeans.faults == ()
    assert all(check.passes for check in (*jeans.seams, *jeans.corners))


def test_the_band_follows_the_waist_and_the_yoke_the_gaping_back() -> None:
    plain, taken = (
        make_jeans(draft_block(wearer()), STYLES["straight band"]),
        fitted(STYLES["straight band"], gaping_back=24),
    )
    # At the worn level, 3 cm down, the dart of a gaping back is narrower than at the waist.
    assert 12 < plain.band_length - taken.band_length < 24
    yokes = [j.pattern.piece("back yoke").edge("waist").length for j in (plain, taken)]
    assert 6 < yokes[0] - yokes[1] < 12


def test_the_stretch_of_the_cloth_and_the_fitting_go_together() -> None:
    cloth = Cloth(stretch=25)
    plain, let_out = (block_for(wearer(), STRAIGHT, cloth, c) for c in (None, {"hip_out": 20}))
    assert let_out.hip_girth - plain.hip_girth == pytest.approx(20)


def test_figures_list_what_was_corrected_and_every_length_before_and_after() -> None:
    jeans = fitted(full_seat=12, longer_at_calf=20)
    fitting = jeans_figures(jeans)["fitting"]
    assert [(c["name"], c["amount"]) for c in fitting["corrections"]] == [
        ("full_seat", 1.2), ("longer_at_calf", 2.0)
    ]  # fmt: skip
    lengths = {line["name"]: line for line in fitting["lengths"]}
    assert lengths["front inseam"]["change"] == pytest.approx(2.0, abs=0.01)
    assert lengths["hem"]["change"] == 0
    assert lengths["back crotch seam"]["after"] > lengths["back crotch seam"]["before"]
    assert all(c["source"] and c["done"] for c in fitting["corrections"])


def test_jeans_without_a_fitting_have_nothing_to_list() -> None:
    jeans = make_jeans(draft_block(wearer()), STRAIGHT)
    assert jeans_changes(jeans) == ()
    assert fitting_figures(jeans) == {} and "fitting" not in jeans_figures(jeans)


def test_shortened_between_seat_and_waist_the_seams_meet_and_the_split_is_logged() -> None:
    """Told: after a fitting, height had to come out above the seat line, and all seams be trued again.

    25 mm are made up. Right: side seams equal, no jog, and how much went at the front and at the back.
    """
    jeans = fitted(lower_rise=25)
    changes = {change.name: change.by for change in jeans_changes(jeans)}
    assert changes["front side seam"] == pytest.approx(changes["back side seam"], abs=0.01)
    assert changes["front side seam"] == pytest.approx(-25, abs=1)
    assert changes["front crotch seam"] == pytest.approx(-25, abs=1)
    assert -25.1 < changes["back crotch seam"] < -23
    assert changes["front inseam"] == pytest.approx(0, abs=0.1)
    [told] = [f for f in jeans.pattern.findings if f.code == "corrected-lengths"]
    assert (
        told.severity is Severity.NOTE
        and "front crotch seam" in told.text
        and "back crotch seam" in told.text
    )
    assert all(check.passes for check in (*jeans.seams, *jeans.corners))


def test_a_seat_wedge_leaves_the_inseams_and_their_notches_in_step() -> None:
    """Told: after a seat wedge the back inseam was 2 in shorter than the front; the knee notches missed."""
    jeans = fitted(full_seat=25)
    [inseam] = [check for check in jeans.seams if check.name == "inseam"]
    assert inseam.passes and inseam.notches
    assert all(abs(notch.miss) <= 0.5 for notch in inseam.notches)
