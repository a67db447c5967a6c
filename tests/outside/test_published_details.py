"""Details of jeans beside published sizes: ours follow the body, so they are held to a range.

Sources:
    SHEET     work-pant specification sheet, sizes 30 to 38 (casualindustrees.com), inches; hip laid flat 3 in
              below the waistband, so its girth is twice that.
    DRAFTER   a hand drafter of selvedge jeans (masterclasses.historical-tailoring.com).
    SERIES    a sewing blog's jeans series, part 7, belt loops (yousewgirl.blogspot.com, 2013).
"""

import pytest

from drafting import draft_block
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from styles.choice.style import STRAIGHT
from styles.parts.back_pocket import pocket_size
from styles.parts.belt_loops import WIDTH, loop_length
from tests.printed import called
from tests.styles.upper_parts import whole_band
from tests.wearers import wearer
from tests.whole_jeans import jeans_of

INCH = 25.4
YOKE = Path.through([Point(0, 1000), Point(-250, 1000)])


@pytest.mark.parametrize(("flat_hip", "opening"), [(18.75, 6.25), (20.75, 6.5), (22.75, 6.5)])
def test_the_back_pocket_opens_within_three_quarters_of_an_inch_of_the_work_pants(
    flat_hip: float, opening: float
) -> None:
    """SHEET: the pockets of work pants grade by 1/4 in over five sizes, ours with the hip."""
    size = pocket_size(STRAIGHT, 2 * flat_hip * INCH, [YOKE], crotch=700)
    assert size.opening == pytest.approx(opening * INCH, abs=0.75 * INCH)


def test_the_back_pocket_stands_from_the_centre_back_as_two_makers_say() -> None:
    """SHEET: 2 1/4 in; 1 1/2 to 2 1/2 in by a pattern maker (jsterndesigns.com, 2019)."""
    assert 1.5 * INCH <= pocket_size(STRAIGHT, 1000, [YOKE], crotch=700).from_centre <= 2.5 * INCH


def test_the_pocket_may_lie_as_far_under_the_yoke_as_the_drafter_has_it() -> None:
    """DRAFTER: 1 1/2 in inside, 2 in outside, the seam allowance of 3/8 in included."""
    size = pocket_size(STRAIGHT, 1000, [YOKE], crotch=700)
    assert 1.5 * INCH - 10 <= size.below_yoke <= 2 * INCH - 10


def test_belt_loops_are_as_wide_and_as_long_as_published() -> None:
    """SHEET: 5/8 by 2 1/2 in finished; SERIES: each cut 4 in long."""
    assert pytest.approx(5 / 8 * INCH, abs=2) == WIDTH
    assert loop_length(STRAIGHT) == pytest.approx(4 * INCH, abs=2)
    assert loop_length(STRAIGHT) - 2.5 * INCH >= 25, "room to turn both ends"


def test_the_buttonhole_lies_as_the_drafter_works_it() -> None:
    """DRAFTER: 3/4 in from both edges of a 1 1/2 in band, starts 1/2 in from the end, 3/4 in long."""
    front, _ = whole_band(draft_block(wearer()), STRAIGHT).pieces
    marks = {mark.name: mark.path for mark in front.marks}
    hole, centre = marks["buttonhole"], marks["centre front"]
    assert hole.length == pytest.approx(0.75 * INCH, abs=0.5)
    assert centre.start.x - hole.start.x == pytest.approx(0.5 * INCH)
    assert hole.start.y == pytest.approx((centre.start.y + centre.end.y) / 2)


def test_the_band_is_within_the_published_heights() -> None:
    """1 1/2 to 2 1/4 in (trade book, DRAFTER), SHEET: 1 3/4 in."""
    assert 1.5 * INCH <= STRAIGHT.band_height <= 2.25 * INCH


def test_a_straight_cut_has_no_turn_up_and_asks_for_no_stretch() -> None:
    """Rigid denim, hemmed plain (common practice, no source)."""
    assert (STRAIGHT.turn_up, STRAIGHT.least_stretch) == (0, 0)


def test_felled_seams_have_the_allowances_of_the_drafter() -> None:
    """DRAFTER: 3/4 in on the side that folds over, 3/8 in on the other, to whole millimetres below."""
    felled = STRAIGHT.allowances
    assert (felled.felled_wide, felled.felled_narrow) == (18, 9)
    assert 0 <= 0.75 * INCH - felled.felled_wide < 1.1 and 0 <= 0.375 * INCH - felled.felled_narrow < 1.1
    pattern = jeans_of("zaneta", "felled").pattern
    # DRAFTER: back inseam 3/4 and front inseam 3/8; back yoke seam 3/4, the yoke's lower edge 3/8.
    wide, narrow = (
        (("back leg", "inseam"), ("back leg", "yoke seam")),
        (
            ("front leg", "inseam"),
            ("back yoke", "yoke seam"),
        ),
    )
    assert [called(pattern, piece).edge(edge).allowance for piece, edge in (*wide, *narrow)] == [18, 18, 9, 9]
