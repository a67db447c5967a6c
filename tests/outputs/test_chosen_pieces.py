"""Printing some pieces of a pattern."""

from dataclasses import replace

import pytest

from drafting.base.errors import DraftRefused
from drafting.body.measurements import Side
from drafting.pieces.pattern import Pattern
from drafting.pieces.words import piece_name
from outputs.packing.layout import standing
from outputs.print.chosen_pieces import choose
from tests.outputs import samples

PATTERN = samples.pattern()


def chosen(pattern: Pattern, words: list[str]) -> list[str]:
    return [piece_name(piece) for piece in choose(pattern, words).printed]


@pytest.mark.parametrize(
    ("words", "names"),
    [
        (["leg"], ["front leg", "back leg"]),
        (["Front-Leg"], ["front leg"]),
        (["loop", "back"], ["belt loop", "back leg"]),
        (["leg", "front leg"], ["front leg", "back leg"]),
    ],
)
def test_a_word_means_every_piece_that_has_it_in_its_name(words, names):
    assert sorted(chosen(PATTERN, words)) == sorted(names)


def test_a_whole_name_means_that_piece_alone():
    lined = replace(PATTERN.pieces[0], kind="front leg lining")
    assert chosen(replace(PATTERN, pieces=(*PATTERN.pieces, lined)), ["front leg"]) == ["front leg"]


def test_a_remark_in_brackets_counts_only_in_a_whole_name():
    fly = replace(PATTERN.pieces[3], kind="fly facing", side=Side.LEFT)
    pattern = replace(PATTERN, pieces=(*PATTERN.pieces, fly))
    assert chosen(pattern, ["front"]) == ["front leg"]
    assert chosen(pattern, ["fly"]) == chosen(pattern, ["Fly facing (left front)"]) == [fly.name]


def test_all_unknown_words_are_refused_at_once_with_the_names_there_are():
    with pytest.raises(DraftRefused) as refusal:
        choose(PATTERN, ["sleeve", "leg", "", "cuff"])
    (problem,) = refusal.value.problems
    assert (problem.key, problem.value) == ("--only", 'sleeve, "", cuff')
    assert "front leg, back leg, pocket bag, belt loop" in problem.message


def test_pieces_keep_their_numbers_when_only_some_are_printed():
    chosen = choose(PATTERN, ["back", "loop"])
    assert [(placed.number, placed.piece.name) for placed in standing(chosen)] == [
        (2, "back leg"),
        (4, "belt loop"),
    ]
    assert chosen.pieces == PATTERN.pieces
