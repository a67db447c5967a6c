"""Tables over several sheets."""

from __future__ import annotations

from outputs.canvas.canvas import Align
from outputs.canvas.text_flow import Area, Flow, Heads
from outputs.canvas.typeface import Typeface

AREA = Area(10, 10, 110, 60)
HEADS = Heads(("what", "how much"), (3, 1), frozenset({1}))


def flow(rows: list[tuple[str, ...]]) -> Flow:
    made = Flow(Typeface(), AREA)
    made.table(HEADS, rows)
    return made


def test_a_long_table_goes_on_with_its_heads_on_the_next_sheet() -> None:
    made = flow([(f"row {number}", "1") for number in range(30)])
    assert len(made.sheets) >= 3
    for sheet in made.sheets:
        assert sheet.texts[0].string == "what"
        left, bottom, right, top = sheet.ink().bounds
        assert left >= 10 and right <= 110 and bottom >= 10 and top <= 60
    written = [text.string for sheet in made.sheets for text in sheet.texts if text.string.startswith("row")]
    assert written == [f"row {number}" for number in range(30)]


def test_numbers_stand_flush_right_and_long_cells_are_wrapped_within_their_column() -> None:
    [sheet] = flow(
        [("a long text that does not go into one line of this narrow table at all, not at all", "7")]
    ).sheets
    [number] = [some for some in sheet.texts if some.string == "7"]
    assert number.align is Align.RIGHT and number.box.bounds[2] <= 110
    words = [some for some in sheet.texts if some.align is Align.LEFT]
    assert len(words) >= 3 and all(some.box.bounds[2] <= 85 for some in words)


def test_a_heading_is_not_left_alone_at_the_foot() -> None:
    for count in range(5, 15):
        rows = [*((f"row {n}", "1") for n in range(count)), ("Heading",), ("after", "1")]
        for sheet in flow(rows).sheets:
            assert sheet.texts[-1].string != "Heading"
