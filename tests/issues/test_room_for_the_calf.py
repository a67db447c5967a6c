"""No test saw the girth at the calf taken with the wrong sign: 4.8 mm too much or too little room there."""

import pytest

from drafting import LegCut, draft_block
from tests.sewn_block import leg_girth
from tests.wearers import wearer


@pytest.mark.parametrize("hem", [0.34, 0.38, 0.42])
def test_a_leg_that_would_bind_has_the_calfs_own_ease_on_the_outline(hem: float) -> None:
    block = draft_block(wearer(calf_girth=430), cut=LegCut(knee_of_hip=0.46, hem_of_hip=hem))
    girth = leg_girth(block, block.body["calf_height"].mm)
    assert girth == pytest.approx(430 + block.ease.calf, abs=0.1)


def test_a_leg_that_is_wide_enough_is_not_widened() -> None:
    # Knee 450.8 and hem 333.2; 0.72 of the way up the shin there are 417.9, of which 400 + 13 are wanted.
    block = draft_block(wearer(calf_girth=400), cut=LegCut(knee_of_hip=0.46, hem_of_hip=0.34))
    assert (block.leg.knee.mm, block.leg.hem.mm) == pytest.approx((450.8, 333.2))
