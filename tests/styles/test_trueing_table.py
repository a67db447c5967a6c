"""The trueing table in words, and its verdict in one sentence."""

from drafting.trueing import CornerCheck, NotchCheck, SeamCheck
from styles.trueing_table import trueing_section, verdict

MEETS = SeamCheck("inseam", 780, 776, 4, 4, True, (NotchCheck("knee", 400, 398, -0.2),), ())
MISSES = SeamCheck("outseam", 1000, 1008, 0, -8, False, (), ())
SMOOTH = CornerCheck("crotch", 180.2, 180, True, ())
UNEVEN = CornerCheck("hem", 170, 180, False, ())


def test_when_all_meets_one_sentence_says_so() -> None:
    assert verdict([MEETS], [SMOOTH]) == "All 1 seams and 1 joined corners meet; the table of seams has each."


def test_what_does_not_meet_is_counted_and_named() -> None:
    assert (
        verdict([MEETS, MISSES], [SMOOTH]) == "Trueing: 1 of 2 seams do not meet, all corners meet: outseam."
    )
    assert verdict([MEETS], [SMOOTH, UNEVEN]) == "Trueing: all 1 seams meet, 1 of 2 corners are uneven: hem."


def test_each_seam_and_corner_has_its_line() -> None:
    lines = [
        line.say(lambda mm: f"{mm:.0f} mm")
        for line in trueing_section([MEETS, MISSES], [SMOOTH, UNEVEN]).lines
    ]
    assert lines == [
        "inseam: 780 mm to 776 mm, wanted 4 mm longer, found 4 mm – meets; 1 notch within 0.2 mm",
        "outseam: 1000 mm to 1008 mm – DOES NOT MEET",
        "crotch: 180.2° of 180° – runs on",
        "hem: 170.0° of 180° – UNEVEN",
    ]
