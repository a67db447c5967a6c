"""Lengths as people type and read them."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.base.units import LengthError, Unit, format_length, length_to_buy, parse_length, read_length


@pytest.mark.parametrize(
    "text",
    [
        "37 1/2",
        "37-1/2",
        "37½",
        "37 ½",
        "37.5in",
        "37,5 in",
        "37.5",
        "37 1/2 inches",
        '37.5"',
        "37½″",
        "37–1/2 in.",
        "37\u20111/2 in",
        "37\u22121/2 in",
        " 37 1/2 IN ",
        "37 1\u20442",
        "952.5 mm",
        "95,25 cm",
        "95.25 cm.",
        "95.25 centimetres",
    ],
)
def test_thirty_seven_and_a_half_inches_are_952_5_mm_however_written(text: str) -> None:
    assert parse_length(text, Unit.INCH) == 952.5


@pytest.mark.parametrize(
    ("value", "mm"),
    [
        ("98", 980),
        ("98 cm", 980),
        ("980 mm", 980),
        (98, 980),
        (98.7, 987),
        ("97,5", 975),
        ("38 1/2 in", 977.9),
        ("38-1/2", 385),
        ("0", 0),
        ("½ in", 12.7),
    ],
)
def test_a_number_without_a_unit_is_in_the_unit_stated(value: str | float, mm: float) -> None:
    assert parse_length(value, Unit.CM) == mm


@pytest.mark.parametrize(
    ("value", "hint"),
    [
        ("371/2", 'write "37 1/2"'),
        ("371/2 in", 'write "37 1/2"'),
        ("37 5/4", "not less than one"),
        ("37 1/0", "divides by nothing"),
        ("-4", "negative"),
        ("-37 1/2", "negative"),
        ("−4", "negative"),
        (-4, "negative"),
        ("nan", "tape"),
        ("-inf", "tape"),
        (float("nan"), "tape"),
        (float("inf"), "tape"),
        (1e300, "tape"),
        (10**5000, "tape"),
        ("1e999999999", "exponent"),
        ("", "no number"),
        ("5'4\"", "feet"),
        ("5 ft", "inches, 12 to the foot"),
        ("1.72 m", "172 cm"),
        ("38 zoll", "no unit known"),
        ("37 1/2 1/2", "written like"),
        ("1,234.5", "written like"),
        ("ninety", "written like"),
        ("9" * 100_000, "written like"),
        ("98" + " " * 80 + "x", "written like"),
        (True, "a length is a number"),
        (None, "a length is a number"),
    ],
    ids=lambda value: str(value)[:12] if not isinstance(value, int) else "number",
)
def test_what_is_no_length_is_refused_with_a_hint(value, hint: str) -> None:
    with pytest.raises(LengthError, match=hint):
        parse_length(value, Unit.CM)


@pytest.mark.parametrize("value", [30, "30", 30.0])
def test_a_bare_number_is_read_both_ways_and_refused_where_no_unit_is_stated(value: str | float) -> None:
    with pytest.raises(LengthError, match=r"30 cm would be 11\.8 in, 30 in would be 76\.2 cm"):
        parse_length(value, None)


def test_a_length_with_its_own_unit_needs_no_other() -> None:
    length = read_length("30 in", None)
    assert (length.mm, length.unit, length.own_unit) == (762, Unit.INCH, True)


@pytest.mark.parametrize(
    ("mm", "unit", "text"),
    [
        (952.5, Unit.CM, "95.3 cm"),
        (952.4, Unit.CM, "95.2 cm"),
        (7, Unit.CM, "0.7 cm"),
        (952.5, Unit.MM, "953 mm"),
        (952.5, Unit.INCH, "37 1/2 in"),
        (25.4, Unit.INCH, "1 in"),
        (1.6, Unit.INCH, "1/16 in"),
        (25.0, Unit.INCH, "1 in"),
        (0, Unit.INCH, "0 in"),
        (-12.7, Unit.INCH, "-1/2 in"),
        (-0.2, Unit.CM, "0.0 cm"),
    ],
)
def test_lengths_are_written_to_a_millimetre_or_a_sixteenth(mm: float, unit: Unit, text: str) -> None:
    assert format_length(mm, unit) == text


def test_what_is_not_finite_is_not_written() -> None:
    with pytest.raises(ValueError, match="finite"):
        format_length(float("nan"), Unit.CM)


@given(st.floats(0, 5000), st.sampled_from(Unit))
def test_what_is_written_reads_back_within_half_a_step(mm: float, unit: Unit) -> None:
    step = 25.4 / 16 if unit is Unit.INCH else 1
    assert abs(parse_length(format_length(mm, unit), None) - mm) <= step / 2 + 1e-9


@given(st.integers(0, 200), st.integers(0, 15))
def test_sixteenths_of_an_inch_are_exact(whole: int, sixteenths: int) -> None:
    mm = parse_length(f"{whole} {sixteenths}/16 in", None)
    assert mm == pytest.approx((16 * whole + sixteenths) * 25.4 / 16, abs=1e-12)
    assert parse_length(format_length(mm, Unit.INCH), None) == mm


@given(st.text(alphabet="0123456789 .,/-½¼\"'incmft", max_size=20))
def test_any_text_is_a_length_or_is_refused(text: str) -> None:
    try:
        assert parse_length(text, Unit.CM) >= 0
    except LengthError as error:
        assert str(error)


def test_a_length_in_another_unit_is_the_same_length_exactly() -> None:
    inches = read_length("38 1/2 in", None).in_unit(Unit.CM)
    assert (inches.number, inches.unit, inches.mm) == (Fraction("97.79"), Unit.CM, 977.9)
    assert inches.in_unit(Unit.INCH) == read_length("38 1/2 in", None)


@pytest.mark.parametrize(
    ("mm", "unit", "told"),
    [
        (1300, Unit.CM, "1.3 m"),
        (1300.01, Unit.CM, "1.4 m"),
        (1300.0000001, Unit.MM, "1.3 m"),
        (950, Unit.MM, "1.0 m"),
        (914.4, Unit.INCH, "1 yd"),
        (915, Unit.INCH, "1 1/8 yd"),
        (300, Unit.INCH, "3/8 yd"),
        (1300, Unit.INCH, "1 1/2 yd"),
    ],
)
def test_cloth_is_bought_to_the_next_10_cm_or_eighth_of_a_yard(mm: float, unit: Unit, told: str) -> None:
    """A yard is 914.4 mm (international yard and pound agreement of 1959), an eighth 114.3."""
    assert length_to_buy(mm, unit) == told


def test_no_one_buys_an_endless_length() -> None:
    with pytest.raises(ValueError, match="finite"):
        length_to_buy(float("inf"), Unit.CM)
