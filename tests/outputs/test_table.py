"""One reader for all tables: what parts their cells, how rows are counted, and quotes that do not close."""

import pytest

from outputs.files.table import separator, table_rows


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("wearer,unit,hip_girth\nAda;cm;98\n", ","),
        ("wearer;unit;hip_girth\nAda,B;cm;98,5\n", ";"),
        ("13;6,9\n14;7,1\n", ";"),
        ("13\t6,9\n", "\t"),
        ("a title\n\n13;6,9;by hand\n", ";"),
        ("a title\n", ","),
        ("", ","),
    ],
)
def test_the_commonest_sign_of_the_first_line_that_has_any_parts_the_cells(text: str, found: str) -> None:
    assert separator(text) == found


def test_rows_are_counted_as_a_spreadsheet_does() -> None:
    rows = list(table_rows('a,b\r\n\r\n"one, two","three\nlines"\r\n , \n5,6'))
    assert [row.number for row in rows] == [1, 2, 3, 4, 5]
    assert [row.empty for row in rows] == [False, True, False, True, False]
    assert rows[2].cells == ("one, two", "three\nlines")


def test_a_row_whose_quotes_do_not_close_has_no_cells_and_the_others_have_theirs() -> None:
    rows = list(table_rows('a,b\n"38"x,1\n3,"4\n'))
    assert [row.cells for row in rows] == [("a", "b"), None, None]
    assert not any(row.empty for row in rows)
