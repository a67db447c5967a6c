"""No test saw shorts 20 mm too long when their toile asked for more length at a knee they do not have."""

import pytest

from drafting import LegCut, draft_block
from tests.wearers import wearer

SHORTS = LegCut(hem_above_knee=0.4)


@pytest.mark.parametrize("place", ["knee", "calf"])
@pytest.mark.parametrize("word", ["longer", "shorter"])
def test_what_is_changed_below_the_hem_of_shorts_changes_nothing(word: str, place: str) -> None:
    block = draft_block(wearer(), cut=SHORTS, corrections={f"{word}_at_{place}": 20})
    assert block.toile
    for panel in ("front", "back"):
        before, after = (getattr(each, panel) for each in (block.toile, block))
        for name, point in before.points().items():
            assert tuple(after.points()[name]) == pytest.approx(tuple(point), abs=1e-6), name
        assert after.side.length == pytest.approx(before.side.length)


def test_what_is_let_in_at_the_thigh_is_all_that_shorts_get() -> None:
    corrections = {"longer_at_thigh": 10, "longer_at_knee": 20}
    block = draft_block(wearer(), cut=SHORTS, corrections=corrections)
    assert block.toile
    assert block.levels.crotch.mm - block.toile.levels.crotch.mm == pytest.approx(10)
    assert block.front.side.length - block.toile.front.side.length == pytest.approx(10, abs=0.3)
