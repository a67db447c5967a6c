"""No test saw the hem of rigid denim in very stretchy cloth when of the foot the ankle alone was measured."""

import pytest

from drafting import LegCut
from styles.choice.style import Style
from styles.cloth.block_for_style import block_for
from styles.cloth.shrinkage_and_stretch import Cloth
from tests.sewn_block import leg_girth
from tests.wearers import wearer

NARROW = Style(name="narrow", leg=LegCut(knee_of_hip=0.38, hem_of_hip=0.2))


@pytest.mark.parametrize(("stretch", "hem"), [(0, 320), (30, 320), (40, 295), (50, 270)])
def test_a_heel_told_by_the_ankle_gives_way_in_cloth_that_stretches(stretch: float, hem: float) -> None:
    # Ankle 240 and 80 more make the heel 320; 25 to 50 under it in very stretchy cloth (from memory).
    block = block_for(wearer(ankle_girth=240), NARROW, Cloth(stretch=stretch))
    assert block.leg.hem.mm == pytest.approx(hem)
    assert leg_girth(block, 0.01) == pytest.approx(hem, abs=0.1)
