"""The trueing table, and its verdict in one sentence."""

from drafting.pieces.seams import Corner, Seam
from drafting.pieces.trueing import CornerCheck, NotchCheck, SeamCheck
from styles.making.trueing_table import trueing_section, verdict
from tests.drafting.small_pieces import place, run

MEETS = SeamCheck("inseam", 780, 776, 4, 4, True, (NotchCheck("knee", 400, 398, -0.2),), ())
MISSES = SeamCheck("outseam", 1000, 1008, 0, -8, False, (), ())
SMOOTH = CornerCheck("crotch", 180.2, 180, True, ())
UNEVEN = CornerCheck("hem", 170, 180, False, ())


def test_when_all_meets_one_sentence_says_so_and_how_well() -> None:
    assert verdict([MEETS], [SMOOTH]) == (
        "All 1 seams and 1 joined corners meet: lengths within 0.0 mm of what is wanted, notches within "
        "0.2 mm, corners within 0.2°; the table of seams has each."
    )


def test_what_does_not_meet_is_counted_and_named() -> None:
    assert (
        verdict([MEETS, MISSES], [SMOOTH]) == "Trueing: 1 of 2 seams do not meet, all corners meet: outseam."
    )
    assert verdict([MEETS], [SMOOTH, UNEVEN]) == "Trueing: all 1 seams meet, 1 of 2 corners are uneven: hem."


def test_each_seam_and_corner_has_its_row_with_both_edges() -> None:
    inseam = Seam("inseam", (run("front", "inseam"),), (run("back", "inseam"),), ease=4)
    outseam = Seam("outseam", (run("front", "side"), run("facing", "side")), (run("back", "side"),))
    corners = [
        Corner(name, place("front", ("a", "b")), place("back", ("a", "b"))) for name in ("crotch", "hem")
    ]
    section = trueing_section(
        [(inseam, MEETS), (outseam, MISSES)], [(corners[0], SMOOTH), (corners[1], UNEVEN)]
    )
    assert section.table
    rows = [[cell.say(lambda mm: f"{mm:.0f}") for cell in row] for row in section.table.rows]
    assert rows == [
        ["inseam", "front: inseam – back: inseam", "780", "776", "4.0 mm", "4.0 mm", "1: 0.2 mm", "meets"],
        [
            *("outseam", "front: side, facing: side – back: side", "1000", "1008"),
            *("0.0 mm", "-8.0 mm", "–", "DOES NOT MEET"),
        ],
        ["Joined corners"],
        ["crotch", "front – back", "", "", "180°", "180.2°", "–", "runs on"],
        ["hem", "front – back", "", "", "180°", "170.0°", "–", "UNEVEN"],
    ]
