"""What can be typed for a paper."""

import pytest

from drafting.base.units import LengthError
from outputs.paper.paper import A4, PAPERS, Paper, Roll, read_paper


@pytest.mark.parametrize("name", PAPERS)
def test_a_sheet_is_meant_by_its_name_in_any_case(name: str):
    assert read_paper(f" {name.upper()} ") is PAPERS[name]


# 36 in x 25.4
@pytest.mark.parametrize(
    ("typed", "width"),
    [("841 mm", 841), ("36 in", 914.4), ('36"', 914.4), ("91,4 cm", 914), ("1118mm", 1118)],
)
def test_a_length_is_the_width_of_a_roll(typed: str, width: float):
    roll = read_paper(typed)
    assert isinstance(roll, Roll) and roll.width == pytest.approx(width)


def test_a_roll_is_called_as_it_was_typed():
    assert read_paper("36 in") == Roll("roll 36 in", pytest.approx(914.4))


def test_one_big_page_is_no_paper():
    assert read_paper("single") is None


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("a2", "No paper has this name. Papers are a4, letter"),
        ("foolscap", "or the width of a roll such as"),
        ("36", "no unit is stated"),
        ("3 m", "metres are not read"),
        ("10 mm", "No roll of paper is that wide"),
        ("100 in", "No roll of paper is that wide"),
        ("", "No paper has this name"),
    ],
)
def test_what_is_neither_is_refused_with_what_there_is(typed: str, told: str):
    with pytest.raises(LengthError, match=told):
        read_paper(typed)


# ISO 216: A0 has 1 m2, each smaller sheet is half the next, to the millimetre below.
def test_large_sheets_are_those_of_iso_216():
    assert (PAPERS["a0"].width, PAPERS["a0"].height) == (841, 1189)
    assert (PAPERS["a1"].width, PAPERS["a1"].height) == (1189 // 2, 841)
    assert [name for name, paper in PAPERS.items() if paper.is_large] == ["a1", "a0"]


def test_fitting_a_corrected_page_goes_by_its_size_in_the_file():
    from outputs.paper.printer_scale import PrinterScale

    corrected = A4.corrected(PrinterScale(0.97, 0.98))
    assert corrected.fit_factor(Paper("A4", 210, 297), 5) == pytest.approx(200 / 210)
