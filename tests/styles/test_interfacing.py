"""Interfacing follows the pieces that are stiffened, without allowance."""

from dataclasses import replace

import pytest

from drafting import draft_block
from drafting.body.measurements import Side
from drafting.pieces.allowance import cut_line
from drafting.pieces.kinds import PieceKind
from drafting.pieces.pieces import Material
from drafting.pieces.trueing import check_pieces
from outputs.print.piece_text import allowance_text
from styles.choice.style import STRAIGHT
from styles.cloth.shrinkage_and_stretch import Cloth, fit_to_cloth
from styles.parts.belt_loops import belt_loops
from styles.parts.interfacing import interfacing
from tests.styles.upper_parts import reach, whole_band
from tests.wearers import wearer

BAND = whole_band(draft_block(wearer()), STRAIGHT).pieces


def test_only_bands_and_fly_facings_are_stiffened() -> None:
    facing = replace(BAND[0], kind=PieceKind.FLY_FACING, side=Side.LEFT)
    copies = interfacing((*BAND, facing, *belt_loops(STRAIGHT, 800).pieces))
    assert [copy.name for copy in copies] == [
        "front waistband interfacing",
        "back waistband interfacing",
        "fly facing (left front) interfacing",
    ]


def test_one_of_the_two_layers_is_stiffened() -> None:
    front, back = interfacing(BAND)
    assert (front.cutting.quantity, front.cutting.pairs) == (2, True)
    assert (back.cutting.quantity, back.cutting.pairs) == (1, False)
    assert {copy.cutting.material for copy in (front, back)} == {Material.INTERFACING}


def test_it_ends_at_the_sew_line_and_says_so() -> None:
    for copy in interfacing(BAND):
        assert cut_line(copy).polygon.equals_exact(copy.polygon, 0.01)
        assert allowance_text(copy) == "cut without seam allowance"
    assert check_pieces(interfacing(BAND)) == ()


def test_its_lapping_side_ends_at_the_centre_front() -> None:
    (mark,) = interfacing(BAND)[0].marks
    centre = next(mark for mark in BAND[0].marks if mark.name == "centre front")
    assert (mark.name, mark.path) == ("cut off here on the left", centre.path)


def test_it_is_as_large_as_the_cloth_it_is_fused_to() -> None:
    fitted = fit_to_cloth(BAND, Cloth(lengthwise_change=-5, crosswise_change=-2))
    assert reach(interfacing(fitted)[0]) == pytest.approx(reach(fitted[0]))
    assert fit_to_cloth(interfacing(fitted), Cloth(lengthwise_change=-5)) == interfacing(fitted)
