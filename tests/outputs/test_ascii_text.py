"""Names spelled in ASCII as their bearers would find them in a passport."""

import re

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from outputs.words.ascii_text import STAND_IN, distinct_names, in_ascii


@pytest.mark.parametrize(
    ("typed", "spelled"),
    [
        ("Żaneta Łęcka", "Zaneta Lecka"),
        ("Gülşah Çınaroğlu", "Gulsah Cinaroglu"),
        ("İpek IŞIK", "Ipek ISIK"),
        ("Θεόδωρος Καρύδης", "Theodoros Karydis"),
        ("Ελένη Παπαδοπούλου", "Eleni Papadopoulou"),
        ("Παύλος", "Pavlos"),
        ("Οὐρανία", "Ourania"),
        ("Оксана Щербак", "Oksana Shcherbak"),
        ("ЩЕРБАК", "SHCHERBAK"),
        ("Андрей Ёлкин", "Andrey Yolkin"),
        ("Ђорђе Његић", "Djordje Njegic"),
        ("Zoë Müller-Groß", "Zoe Muller-Gross"),
        ("Ærøskøbing", "Aeroskobing"),
        ("“14 ± 1” × 2 – ½", '"14 +/- 1" x 2 - 1/2'),
        ("a\tb\nc", "a b c"),
    ],
)
def test_a_name_is_spelled_in_plain_letters(typed: str, spelled: str):
    """The spellings are common practice, no source."""
    assert in_ascii(typed) == spelled


def test_a_letter_of_two_ways_of_writing_is_spelled_alike():
    composed, apart = "Й\u0307 ü й", "И\u0306\u0307 u\u0308 и\u0306"
    assert in_ascii(composed) == in_ascii(apart)


def test_a_letter_without_a_spelling_is_told():
    assert in_ascii("山 Ada") == f"{STAND_IN} Ada"


@given(st.text(max_size=30))
@example("\ud800\x00\x7f\uffff")
def test_any_text_becomes_printable_ascii_and_ascii_stays_as_it_is(text: str):
    plain = in_ascii(text)
    assert re.fullmatch("[ -~]*", plain)
    assert in_ascii(plain) == plain


def test_names_that_would_be_alike_get_a_number():
    assert distinct_names(["back leg", "Back-Leg", "BACK_LEG", "front leg"], longest=31) == [
        "BACK_LEG", "BACK_LEG_2", "BACK_LEG_3", "FRONT_LEG",
    ]  # fmt: skip


@given(st.lists(st.text(max_size=12), max_size=12), st.integers(8, 31))
@example(["same name that is long"] * 12, 8)
@example(["山", "", "PIECE_2", "-"], 8)
def test_names_are_short_plain_and_different_whatever_they_are_made_of(names: list[str], longest: int):
    found = distinct_names(names, longest=longest)
    assert len(set(found)) == len(found) == len(names)
    assert all(re.fullmatch("[A-Z0-9_]+", name) and len(name) <= longest for name in found)
