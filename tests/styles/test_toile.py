"""Which pieces a toile is sewn from."""

import pytest

from drafting.pieces.pieces import Material
from styles.making.toile import toile_pieces
from tests.printed import called
from tests.whole_jeans import STYLES, WEARERS, jeans_of


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("wearer", WEARERS)
def test_a_toile_has_every_leg_yoke_band_and_facing_and_no_pocket_or_interfacing(wearer, style):
    pattern = jeans_of(wearer, style).pattern
    sewn = [piece.name for piece in pattern.pieces if piece.id in toile_pieces(pattern)]
    left_out = [piece for piece in pattern.pieces if piece.name not in sewn]
    for word in ("front leg", "back leg", "yoke", "waistband", "pocket facing"):
        assert any(word in name for name in sewn)
        assert not any(word in piece.name for piece in left_out if piece.cutting.material is Material.DENIM)
    assert all(called(pattern, name).cutting.material is Material.DENIM for name in sewn)
    assert not any("bag" in name or "fly" in name or "loop" in name for name in sewn)
