"""No test saw seven belt loops for five on a body whose sides differ, each half counted as a whole waist."""

import pytest

from drafting import draft_block
from drafting.body.measurements import SideMeasurements
from drafting.pieces.kinds import PieceKind
from styles.choice.style import STRAIGHT
from styles.making.jeans import make_jeans
from tests.wearers import wearer


@pytest.mark.parametrize(("waist", "hip", "loops"), [(760, 980, 5), (1080, 1160, 7)])
@pytest.mark.parametrize("apart", [0, 10])
def test_loops_are_counted_on_the_whole_waist(waist: float, hip: float, loops: int, apart: float) -> None:
    left, right = (SideMeasurements(half_hip_arc=arc) for arc in (hip / 2 + apart, hip / 2 - apart))
    block = draft_block(wearer(waist_girth=waist, hip_girth=hip, left=left, right=right))
    halves = 2 if apart else 1
    assert len(block.halves) == halves
    jeans = make_jeans(block, STRAIGHT)
    # One strip, of 100 for each loop.
    assert jeans.pattern.piece(PieceKind.BELT_LOOPS).polygon.bounds == pytest.approx((0, 0, 100 * loops, 14))
    bands = [check for check in jeans.seams if check.name.endswith("to the waistband")]
    # The loop at the centre back has no notch.
    marked = [notch.name for check in bands for notch in check.notches if notch.name.startswith("loop ")]
    assert len(marked) == halves * (loops - 1) / 2
