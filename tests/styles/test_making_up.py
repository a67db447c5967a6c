"""The making up follows the pieces: what is not there is neither sewn nor bought."""

from dataclasses import replace

from drafting import draft_block
from drafting.pieces.kinds import PieceKind
from drafting.pieces.pieces import Material, Piece
from styles.base.part import Notion, NotionKind
from styles.choice.style import STRAIGHT, Allowances, Felling, Style
from styles.making.jeans import make_jeans
from styles.making.making_up import making_up
from styles.parts.belt_loops import belt_loops
from styles.parts.interfacing import interfacing
from tests.printed import which
from tests.styles.upper_parts import whole_band
from tests.wearers import wearer
from tests.whole_jeans import block_of, jeans_of

BAND = whole_band(draft_block(wearer()), STRAIGHT).pieces
LOOPS = belt_loops(STRAIGHT, 800).pieces


def named(*names: str) -> tuple[Piece, ...]:
    return tuple(replace(BAND[0], kind=which(name).kind, side=which(name).side) for name in names)


LEGS = named("right front leg", "left front leg", "right back leg", "left back leg")


def order(pieces: tuple[Piece, ...], style: Style = STRAIGHT) -> list[str]:
    return [line.say() for line in making_up(pieces, (), style)[1].lines]


def test_steps_are_numbered_without_gaps() -> None:
    for pieces in ((), LOOPS, (*LEGS, *BAND, *LOOPS)):
        numbers = [int(line.partition(".")[0]) for line in order(pieces)]
        assert numbers == list(range(1, len(numbers) + 1))


def test_a_part_that_does_not_exist_is_not_sewn() -> None:
    assert not any("belt loops" in line for line in order(LEGS))
    assert any("belt loops" in line for line in order((*LEGS, *LOOPS)))
    assert not any("watch pocket" in line for line in order(named("pocket facing")))


def test_interfacing_alone_is_no_band_to_sew() -> None:
    assert not any("outer band" in line for line in order(interfacing(BAND)))
    assert any("outer band" in line for line in order(BAND))


def test_a_fly_is_known_by_its_pieces_whatever_side_they_are_for() -> None:
    assert any(
        "topstitch the fly" in line
        for line in order(named("fly facing (left front)", "fly shield (right front)"))
    )


def test_pockets_come_before_the_legs_are_joined_and_the_band_after() -> None:
    lines = order((*LEGS, *BAND, *LOOPS, *named("back pocket", "pocket facing")))
    words = ("pocket facing", "back pockets", "inseams", "side seams", "outer band", "hems")
    at = [next(i for i, line in enumerate(lines) if word in line) for word in words]
    assert at == sorted(at)


def test_a_felled_inseam_is_sewn_otherwise_than_a_plain_one() -> None:
    felled = replace(STRAIGHT, allowances=Allowances(felling=Felling.FELLED))
    assert any("flat-felled" in line for line in order(LEGS, felled))
    assert not any("flat-felled" in line for line in order(LEGS))


def test_a_felled_yoke_says_which_allowance_folds_over() -> None:
    felled = replace(STRAIGHT, allowances=Allowances(felling=Felling.FELLED))
    pieces = jeans_of("zaneta", "felled").pattern.pieces
    (yoke,) = [line for line in order(pieces, felled) if "Sew each yoke" in line]
    assert "fold the leg's wide allowance over the yoke's narrow one" in yoke


def test_without_interfacing_there_is_no_piece_and_no_word_of_it() -> None:
    style = replace(STRAIGHT, interfacing=False)
    pattern = make_jeans(block_of("zaneta"), style).pattern
    assert not any(piece.cutting.material is Material.INTERFACING for piece in pattern.pieces)
    said = " ".join(line.text for section in pattern.sections for line in section.lines).lower()
    assert "interfacing" not in said and "1. mark every notch" in said


def test_the_strip_is_cut_into_as_many_loops_as_it_has_room_for() -> None:
    for waist, count in ((800, 5), (1100, 7)):
        lines = order(belt_loops(STRAIGHT, waist).pieces)
        assert any(f"cut it at the marks into {count} loops" in line for line in lines)


def test_the_hem_is_turned_up_by_half_its_allowance() -> None:
    assert any("twice by 1.5 cm" in line for line in order(LEGS))
    bare = replace(STRAIGHT, allowances=Allowances(hem=0))
    assert any("the allowance that you added" in line for line in order(LEGS, bare))


def test_equal_notions_are_counted_together_with_their_length() -> None:
    notions = (Notion(NotionKind.RIVET, 2), Notion(NotionKind.ZIP, 1, 120), Notion(NotionKind.RIVET, 4))
    lines = [line.say() for line in making_up((), notions, STRAIGHT)[0].lines]
    assert lines[:2] == ["6 x rivet", "1 x jeans zip, closed end, 12.0 cm"]


def test_lining_and_interfacing_are_listed_with_their_pieces() -> None:
    bag = replace(
        BAND[0], kind=PieceKind.BAG_BACK, cutting=replace(BAND[0].cutting, material=Material.POCKETING)
    )
    lines = [line.say() for line in making_up((bag, *interfacing(BAND)), (), STRAIGHT)[0].lines]
    assert "Pocketing for: pocket bag back." in lines
    assert "Interfacing for: front waistband, back waistband." in lines


def test_cautions_name_what_cuts_burns_and_is_swallowed() -> None:
    said = " ".join(line.say() for line in making_up((), (), STRAIGHT)[2].lines)
    assert all(
        word in said for word in ("Shears", "rotary cutters", "iron", "Rivets", "children under three")
    )


def test_the_swatch_is_measured_as_the_standard_says() -> None:
    """ISO 5077: at least 50 cm square, marks 35 cm apart, 5 cm from the edge; shrinking is negative."""
    said = " ".join(line.say() for line in making_up((), (), STRAIGHT)[3].lines)
    assert "a square of 50.0 cm" in said
    assert "two points 35.0 cm apart" in said and "at least 5.0 cm from the edges" in said
    assert "35.0 cm that became 33.6 cm is -4.0 %" in said
