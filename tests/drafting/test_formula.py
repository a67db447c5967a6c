"""Lengths that know their formula."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.base.formula import Length, bare_centimetres, cm, largest, mm, named

HIP, WAIST, EASE = named("hip", 980), named("waist", 760), named("ease", 30)


@pytest.mark.parametrize(
    ("length", "formula", "numbers", "value"),
    [
        (HIP / 16 - cm(1), "hip ÷ 16 − 1.0", "98.0 ÷ 16 − 1.0", 51.25),
        ((HIP + EASE) / 4, "(hip + ease) ÷ 4", "(98.0 + 3.0) ÷ 4", 252.5),
        (HIP - (WAIST + EASE), "hip − (waist + ease)", "98.0 − (76.0 + 3.0)", 190),
        (HIP - (WAIST - EASE), "hip − (waist − ease)", "98.0 − (76.0 − 3.0)", 250),
        (HIP + (WAIST - EASE), "hip + waist − ease", "98.0 + 76.0 − 3.0", 1710),
        (HIP - WAIST / 2, "hip − waist ÷ 2", "98.0 − 76.0 ÷ 2", 600),
        (HIP - mm(0), "hip", "98.0", 980),
        (HIP * 0.5 / 2, "hip × 0.5 ÷ 2", "98.0 × 0.5 ÷ 2", 245),
        (mm(8).slope(math.radians(45)), "0.8 × tan 45.00°", "0.8 × tan 45.00°", 8),
        (largest(HIP / 2, WAIST), "the largest of hip ÷ 2, waist", "the largest of 98.0 ÷ 2, 76.0", 760),
    ],
)
def test_a_length_prints_how_it_was_reckoned(
    length: Length, formula: str, numbers: str, value: float
) -> None:
    assert length.formula() == formula
    assert length.numbers() == numbers
    assert float(length) == pytest.approx(value)


def test_what_is_added_to_a_largest_stands_outside_it() -> None:
    more = largest(HIP, WAIST) + EASE
    assert more.formula() == "(the largest of hip, waist) + ease"
    assert (EASE + largest(HIP, WAIST)).formula() == "ease + (the largest of hip, waist)"


def test_the_largest_of_one_is_that_one() -> None:
    assert largest(HIP) is HIP


def test_a_named_length_is_a_name_to_others_and_an_expression_to_itself() -> None:
    fork = (HIP / 16 - cm(1)).called("front fork")
    assert fork.formula() == "hip ÷ 16 − 1.0"
    assert (fork + EASE).formula() == "front fork + ease"
    assert (fork + EASE).numbers() == "5.1 + 3.0"


def names(length: Length) -> set[str]:
    return {inner.name for inner in length.inner() if inner.name}


def test_a_length_knows_every_measurement_that_moves_it() -> None:
    fork = (HIP / 16 - cm(1)).called("front fork")
    assert names(largest(fork, WAIST) - mm(3)) == {"front fork", "hip", "waist"}
    assert names(cm(1)) == set()


def test_the_reader_chooses_the_unit() -> None:
    def inches(length: float) -> str:
        return f'{length / 25.4:g}"'

    assert (named("hip", 1016) / 16 - mm(12.7)).formula(inches) == 'hip ÷ 16 − 0.5"'
    assert (named("hip", 1016) / 16 - mm(12.7)).numbers(inches) == '40" ÷ 16 − 0.5"'


def test_a_minus_is_printed_as_a_minus() -> None:
    assert bare_centimetres(-8) == "−0.8"


lengths = st.recursive(
    st.floats(-2000, 2000).map(lambda value: named("leaf", value)),
    lambda inner: st.one_of(
        st.builds(lambda a, b: a + b, inner, inner),
        st.builds(lambda a, b: a - b, inner, inner),
        st.builds(lambda a, n: a * n, inner, st.integers(1, 9)),
        st.builds(lambda a, n: a / n, inner, st.integers(1, 9)),
    ),
    max_leaves=12,
)


@given(lengths)
def test_the_printed_numbers_reckon_to_the_length(length: Length) -> None:
    # Written to the last digit, the text read back as arithmetic is the value: no bracket is missing.
    text = length.numbers(lambda value: f"({value!r})")
    for sign, python in (("−", "-"), ("×", "*"), ("÷", "/")):
        text = text.replace(sign, python)
    assert eval(text) == pytest.approx(length.mm, rel=1e-9, abs=1e-6)
