"""Bends and corners of a line."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from tests.drafting.small_pieces import bezier, leg
from tests.fairness import bend_changes, largest_turn

ARCH = bezier((0, 0), (20, 40), (80, 40), (100, 0))
ESS = bezier((0, 0), (40, 60), (60, -60), (100, 0))


def test_an_arch_bends_one_way() -> None:
    assert bend_changes(Path((ARCH,))) == []


def test_an_even_s_changes_in_its_middle() -> None:
    path = Path((ESS,))
    assert bend_changes(path) == pytest.approx([path.length / 2], abs=1e-3)


def test_two_arches_opposed_change_where_they_join() -> None:
    path = Path((ARCH, bezier((100, 0), (120, -40), (180, -40), (200, 0))))
    assert bend_changes(path) == pytest.approx([ARCH.length])


def test_a_straight_between_two_opposed_arches_counts_once_where_it_ends() -> None:
    straight = Path.through([Point(100, 0), Point(130, -60)])
    below = bezier((130, -60), (150, -100), (210, -100), (230, -60))
    path = Path((ARCH, *straight.curves, below))
    assert bend_changes(path) == pytest.approx([ARCH.length + straight.length])


def test_a_straight_between_two_like_arches_changes_nothing() -> None:
    path = Path(
        (
            ARCH,
            *Path.through([Point(100, 0), Point(130, -60)]).curves,
            ARCH.reversed().moved(lambda p: Point(230 - p.x, p.y - 60)),
        )
    )
    assert bend_changes(path) == []


def test_a_bend_too_faint_to_see_is_no_bend() -> None:
    # 0.02 mm of S on 100 mm: curvature about 3e-5 at most, so seen at 1e-6 and not at 1e-4.
    faint = Path((bezier((0, 0), (100 / 3, 0.05), (200 / 3, -0.05), (100, 0)),))
    assert len(bend_changes(faint, 1e-6)) == 1
    assert bend_changes(faint, 1e-4) == []


@given(st.floats(-100, 100), st.floats(-100, 100))
def test_a_cubic_changes_once_when_its_handles_lie_on_opposite_sides(up: float, down: float) -> None:
    # Handles at the thirds: the height is a cubic function of x, whose bend changes at most once.
    path = Path((bezier((0, 0), (100 / 3, up), (200 / 3, down), (100, 0)),))
    changes = bend_changes(path, 0.0)
    # Second derivative of the height at both ends, up to a factor: down - 2 up and up - 2 down.
    first, last = down - 2 * up, up - 2 * down
    if min(abs(first), abs(last)) > 1:
        assert len(changes) == (first * last < 0)


def test_the_largest_turn_is_the_sharpest_corner() -> None:
    path = Path.through([Point(0, 0), Point(100, 0), Point(200, 100), Point(200, 200)])
    assert largest_turn(path) == pytest.approx(45)


def test_a_single_curve_has_no_corner() -> None:
    assert largest_turn(Path((ESS,))) == 0


def test_the_seams_of_a_leg_run_smoothly() -> None:
    assert largest_turn(leg().edge("side").path) < 1e-6
