"""What `drafting` and `styles` show to a notebook: names, lines that are the drawn ones, refusals."""

import math
from dataclasses import replace

import numpy as np
import pytest
from shapely.geometry import LineString, Point, Polygon

import drafting
import styles
from drafting import (
    DraftRefused,
    Measurements,
    Population,
    SideMeasurements,
    WaistLevel,
    block_figures,
    block_lines,
    draft_block,
)
from styles import draft_jeans, jeans_figures, jeans_lines

ADA = Measurements(
    waist_girth=760,
    hip_girth=980,
    inside_leg_height=780,
    body_rise=265,
    total_crotch_length=690,
    estimate_like=Population.WOMEN,
)


@pytest.mark.parametrize("face", [drafting, styles], ids=["drafting", "styles"])
def test_a_public_face_shows_what_it_names_and_nothing_else(face: object) -> None:
    assert all(getattr(face, name).__doc__ for name in face.__all__)
    with pytest.raises(AttributeError, match="no attribute 'nothing'"):
        getattr(face, "nothing")  # noqa: B009


@pytest.mark.parametrize("name", ["front", "back"])
def test_the_lines_of_a_panel_go_round_it_without_a_gap(name: str) -> None:
    lines = block_lines(draft_block(ADA))
    panel, levels = lines[name], lines["levels"]
    crotch, inseam, side, waist = (panel[key] for key in ("crotch seam", "inseam", "side seam", "waist"))
    assert np.allclose(crotch[-1], inseam[0], atol=1e-6) and np.allclose(waist[0][0], crotch[0], atol=1e-6)
    assert np.allclose(waist[-1][-1], side[0], atol=1e-6)
    assert inseam[-1][1] == side[-1][1] == pytest.approx(levels["hem"])
    assert len(waist) == len(panel["darts"]) + 1
    for dart, before, after in zip(panel["darts"], waist[:-1], waist[1:], strict=True):
        assert np.allclose(dart[0], before[-1], atol=1e-6) and np.allclose(dart[2], after[0], atol=1e-6)
        assert dart[1][1] < min(dart[0][1], dart[2][1])


@pytest.mark.parametrize("name", ["front", "back"])
def test_x_counts_from_the_centre_line_at_hip_level_towards_the_fork(name: str) -> None:
    lines = block_lines(draft_block(ADA))
    crotch, level = lines[name]["crotch seam"], lines["levels"]["hip"]
    (x, y), (lower_x, lower_y) = crotch[
        :2
    ]  # the straight centre line, which the curve may leave above the hip
    assert x + (lower_x - x) * (level - y) / (lower_y - y) == pytest.approx(0, abs=0.02)
    assert crotch[-1][0] > 30 and (lines[name]["side seam"][:, 0] < 0).all()


def test_chords_stay_near_the_curve() -> None:
    block = draft_block(ADA)
    lines = LineString(block_lines(block)["back"]["side seam"])
    path = block.back.side
    off = [path.point(d) for d in np.linspace(0, path.length, 500)]
    assert max(lines.distance(Point(p.x, p.y)) for p in off) <= 0.02


def test_the_waist_runs_add_up_to_the_waist_in_the_figures() -> None:
    block = draft_block(ADA)
    lines = block_lines(block)
    runs = sum(LineString(run).length for panel in ("front", "back") for run in lines[panel]["waist"])
    assert 2 * runs == pytest.approx(block_figures(block)["girths"]["waist"]["pattern"] * 10, abs=0.2)


def test_the_right_half_is_drawn_where_the_sides_differ() -> None:
    uneven = replace(ADA, left=SideMeasurements(inside_leg_height=770))
    right = block_lines(draft_block(uneven))["levels"]["hem"]
    other = replace(ADA, right=SideMeasurements(inside_leg_height=770))
    assert (right, block_lines(draft_block(other))["levels"]["hem"]) == (0, 10)


def test_an_edge_of_the_jeans_is_as_long_as_the_figures_say() -> None:
    jeans = draft_jeans(ADA, "bootcut")
    lines = jeans_lines(jeans)
    for piece in jeans_figures(jeans)["pieces"]:
        edges = lines[piece["name"]]
        found = {name: round(LineString(edge).length / 10, 2) for name, edge in edges.items()}
        assert found == pytest.approx(piece["lengths"], abs=0.02)


def test_the_edges_of_a_piece_are_a_ring_against_the_clock() -> None:
    for edges in jeans_lines(draft_jeans(ADA)).values():
        rings = [*edges.values()]
        assert all(
            np.allclose(a[-1], b[0], atol=1e-6) for a, b in zip(rings, rings[1:] + rings[:1], strict=True)
        )
        assert Polygon(np.vstack([ring[:-1] for ring in rings])).exterior.is_ccw


def test_settings_cloth_and_fitting_count() -> None:
    plain = jeans_figures(draft_jeans(ADA, "slim"))
    lower = jeans_figures(draft_jeans(ADA, "slim", settings={"below_waist": "6 cm", "fly": "buttons"}))
    assert (lower["below_waist"], lower["fly"]) == (6, "buttons") and plain["fly"] == "zip"
    shrinks = jeans_lines(draft_jeans(ADA, "slim", lengthwise_change=-5))
    side = [
        LineString(lines["back leg"]["side seam"]).length
        for lines in (shrinks, jeans_lines(draft_jeans(ADA, "slim")))
    ]
    assert side[0] > 1.03 * side[1]
    assert draft_jeans(ADA, "slim", fitting={"full_seat": 10}).block.corrections == {"full_seat": 10}
    stretch = draft_jeans(ADA, "slim", stretch=25).block
    assert stretch.hip_girth < draft_jeans(ADA, "slim").block.hip_girth


def test_a_style_of_ones_own_is_taken_as_it_is() -> None:
    mine = replace(draft_jeans(ADA, "wide").style, name="mine", below_waist=50.0)
    assert draft_jeans(ADA, mine).style.below_waist == 50


def test_jeans_whose_waist_was_measured_where_they_are_worn_sit_there() -> None:
    worn = replace(ADA, waist_taken_at=WaistLevel.WORN)
    assert draft_jeans(worn, "slim").style.below_waist == 0


def test_everything_that_cannot_be_meant_is_refused_at_once() -> None:
    with pytest.raises(DraftRefused) as refused:
        draft_jeans(
            replace(ADA, hip_girth=math.nan), "bootcutt", settings={"rise": "higher", "pleats": "2"},
            stretch=400, fitting={"full_seat": -1, "wide_soul": 5},
        )  # fmt: skip
    keys = [problem.key for problem in refused.value.problems]
    assert sorted(keys) == ["full_seat", "hip_girth", "pleats", "rise", "stretch", "style", "wide_soul"]
    assert 'Did you mean "bootcut"?' in str(refused.value)


def test_a_draft_by_proportions_alone_leaves_the_crotch_seam_as_they_give_it() -> None:
    long = replace(ADA, total_crotch_length=740)
    alone, fitted = draft_jeans(long, "slim", fitted=False), draft_jeans(long, "slim")
    assert jeans_figures(alone)["crotch"]["means"] == []
    assert fitted.block.crotch_length > alone.block.crotch_length + 10
