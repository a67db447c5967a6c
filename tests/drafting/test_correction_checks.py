"""What is said of corrections that cannot be meant, are unusual, or work against each other."""

import pytest

from drafting import DraftRefused, draft_block
from drafting.base.errors import Severity
from drafting.body.correction_checks import check_corrections
from drafting.body.corrections import CORRECTIONS, FIGHTS, Changes, opposites
from tests.wearers import wearer


def severities(**amounts: float) -> list[tuple[str, Severity]]:
    return [(problem.key, problem.severity) for problem in check_corrections(amounts)]


@pytest.mark.parametrize("key", CORRECTIONS)
def test_usual_amounts_are_not_remarked_upon_and_limits_hold(key: str) -> None:
    correction = CORRECTIONS[key]
    low, high = correction.usual
    assert severities(**{key: low}) == severities(**{key: high}) == []
    assert severities(**{key: high + 0.1}) == severities(**{key: low - 0.1}) == [(key, Severity.WARNING)]
    for wrong in (correction.most + 0.1, 0.5, 0.0, -10.0, float("nan"), float("inf")):
        assert severities(**{key: wrong}) == [(key, Severity.REFUSAL)]


@pytest.mark.parametrize("key", CORRECTIONS)
def test_every_correction_moves_an_amount_of_the_draft_and_has_words(key: str) -> None:
    correction = CORRECTIONS[key]
    assert hasattr(Changes(), correction.change) and correction.sign in (-1, 1)
    assert correction.usual.high <= correction.most
    assert all((correction.term, correction.seen, correction.done, correction.source))


@pytest.mark.parametrize("pair", opposites(), ids="-".join)
def test_of_two_opposites_only_one_can_be_seen(pair: tuple[str, str]) -> None:
    one, other = pair
    amounts = {key: CORRECTIONS[key].usual.low for key in pair}
    assert severities(**amounts) == [(other, Severity.REFUSAL)]
    assert CORRECTIONS[one].sign == -CORRECTIONS[other].sign


def test_seat_abdomen_rise_and_lengths_have_opposites() -> None:
    assert {("full_seat", "flat_seat"), ("full_abdomen", "flat_abdomen"), ("higher_rise", "lower_rise"),
            ("longer_at_knee", "shorter_at_knee"), ("knees_in", "knees_out")} <= set(opposites())  # fmt: skip


@pytest.mark.parametrize("fight", FIGHTS, ids=lambda fight: f"{fight.first}-{fight.second}")
def test_two_that_work_against_each_other_are_pointed_out_and_still_drafted(fight) -> None:
    amounts = {key: CORRECTIONS[key].usual.low for key in (fight.first, fight.second)}
    [problem] = check_corrections(amounts)
    assert problem.severity is Severity.WARNING
    assert CORRECTIONS[fight.first].term in problem.message and fight.why in problem.message
    assert draft_block(wearer(), corrections=amounts).toile


def test_a_draft_with_impossible_corrections_is_refused_with_all_of_them() -> None:
    with pytest.raises(DraftRefused) as caught:
        draft_block(wearer(), corrections={"full_seat": 150, "big_belly": 10, "sway_back": -5, "waist_in": 4})
    assert [p.key for p in caught.value.problems] == ["big_belly", "full_seat", "sway_back"]
    with pytest.raises(DraftRefused, match=r"did you mean 0\.8 cm = 8 mm"):
        draft_block(wearer(), corrections={"sway_back": 0.8})
