"""With one shorter leg and both outside lengths measured, both sides of the waist stood 7.5 mm too high."""

import pytest

from drafting import Block, draft_block
from drafting.block.block import Half
from drafting.body.measurements import Side, SideMeasurements
from tests.wearers import wearer

# The whole body's inside leg is 780 and its outside length 1040; the left leg is 15 shorter, the hips alike.
EVEN = draft_block(wearer(outside_leg_length=1040))
SHORTER = {"inside_leg_height": 765}
WAYS = [
    (SHORTER, {}, None),
    ({**SHORTER, "outside_leg_length": 1025}, {}, 1040),
    ({**SHORTER, "outside_leg_length": 1025}, {"outside_leg_length": 1040}, None),
    ({**SHORTER, "outside_leg_length": 1025}, {"outside_leg_length": 1040}, 1040),
    ({**SHORTER, "outside_leg_length": 1025}, {"inside_leg_height": 780, "outside_leg_length": 1040}, None),
]
"""The same body, told in five ways: left side, right side, outside length of the whole."""


def half(block: Block, side: Side) -> Half:
    return next(half for half in block.halves if half.side is side)


@pytest.mark.parametrize(("left", "right", "whole"), WAYS)
def test_the_longer_leg_is_that_of_an_even_body_and_the_other_ends_higher(
    left: dict[str, float], right: dict[str, float], whole: float | None
) -> None:
    sides = {"left": SideMeasurements(**left), "right": SideMeasurements(**right)}
    block = draft_block(wearer(outside_leg_length=whole, **sides))
    # 0.1: the shin of the shorter leg, not plumb, is made up along its own line
    assert half(block, Side.RIGHT).front.side.length == pytest.approx(EVEN.front.side.length, abs=0.1)
    assert half(block, Side.LEFT).front.side.length == pytest.approx(EVEN.front.side.length - 15, abs=0.1)
    assert half(block, Side.LEFT).levels.hem.mm == 15
    for side in Side:
        top = half(block, side).front.points()["side at the waist"]
        assert top.y == pytest.approx(EVEN.front.points()["side at the waist"].y, abs=0.1)


def test_a_shorter_leg_and_a_higher_hip_are_told_apart() -> None:
    # Left: 15 less leg, but only 5 less outside, so that 10 more lie above the hip; shared between the sides.
    left = SideMeasurements(inside_leg_height=765, outside_leg_length=1035)
    block = draft_block(wearer(left=left, right=SideMeasurements(outside_leg_length=1040)))
    right_side, left_side = (half(block, side).front.side.length for side in (Side.RIGHT, Side.LEFT))
    assert right_side == pytest.approx(EVEN.front.side.length - 5, abs=0.2)
    assert left_side == pytest.approx(EVEN.front.side.length - 10, abs=0.2)
