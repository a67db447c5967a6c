"""Things are known by what they are: with every printed name changed, the same is drafted."""

from __future__ import annotations

import importlib
import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from drafting.base.formula import Length
from drafting.base.units import Unit
from drafting.block.block import Block
from drafting.lesson.hand_draft import HandDraft, hand_draft
from drafting.lesson.marking import asked_for, mark_lengths
from drafting.pieces.pieces import Piece
from drafting.report.moves import edges_of, lengths_of, points_of
from outputs.compare.comparison import compare
from outputs.lesson.finish import carried
from outputs.lesson.words import GROUNDS, Writing, further_rows
from outputs.print.chosen_pieces import choose
from styles.choice.style import STRAIGHT, BackCut, Band, Fly, Laps, Style
from styles.cloth.shrinkage_and_stretch import Cloth
from styles.making.jeans import Jeans, make_jeans
from styles.making.jeans_figures import jeans_figures
from styles.making.toile import toile_pieces
from tests.whole_jeans import block_of

SIGN = "§"
TABLES = {
    "drafting.body.words": ("SIDES",),
    "drafting.pieces.words": ("PIECES", "EDGES", "PLACES", "SEAMS", "CORNERS"),
    "drafting.block.point_names": ("DRAWN",),
    "drafting.lesson.words": ("PORTIONS", "LEVELS"),
    "drafting.report.moves": ("LENGTHS",),
    "drafting.report.levels": ("LEVELS",),
    "styles.base.part": ("NOTIONS",),
    "outputs.cloth.cut_pieces": ("LAYINGS",),
    "outputs.lesson.words": ("GROUNDS",),
    "drafting.lesson.published": ("QUANTITIES",),
}
STYLES = {
    "yoke and shaped band": (STRAIGHT, "gulsah"),
    "dart and strip": (replace(STRAIGHT, back=BackCut.DART, band=Band.STRAIGHT, turn_up=30), "theodoros"),
    "buttons, right over left": (
        replace(STRAIGHT, fly=Fly.BUTTONS, laps=Laps.RIGHT_OVER_LEFT, interfacing=True),
        "zaneta",
    ),
    "uneven body": (STRAIGHT, "uneven"),
    "uneven body, dart": (replace(STRAIGHT, back=BackCut.DART, band=Band.STRAIGHT), "uneven"),
}
CLOTH = Cloth(lengthwise_change=-3.0, crosswise_change=-1.0)


def other(words: str) -> str:
    """Return words that no longer hold the old ones: each spelt backwards, what stands in braces kept."""
    return SIGN + re.sub(r"\{\w+\}|\w+", lambda m: m[0] if m[0][0] == "{" else m[0][::-1], words)


@pytest.fixture
def renamed(monkeypatch: pytest.MonkeyPatch) -> Any:
    """Return a function that changes every printed name, and those of all lengths drafted from then on."""

    def rename() -> None:
        for module, tables in TABLES.items():
            for table in tables:
                words = getattr(importlib.import_module(module), table)
                for key, text in list(words.items()):
                    monkeypatch.setitem(words, key, other(text))
        monkeypatch.setattr("drafting.pieces.words.INTERFACING", other("{piece} interfacing"))
        made = Length.__init__

        def named(self: Length, mm: float, name: str = "", *rest: Any, **more: Any) -> None:
            made(self, mm, other(name) if name and SIGN not in name else name, *rest, **more)

        monkeypatch.setattr(Length, "__init__", named)

    return rename


def jeans(style: Style, wearer: str) -> Jeans:
    return make_jeans(drafted(wearer), style, wearer=wearer, cloth=CLOTH)


def drafted(wearer: str) -> Block:
    """Return a block drafted now, so that its lengths have the names of now."""
    return block_of.__wrapped__(wearer)


def bare(value: Any) -> Any:
    """Return figures without a word or a key: the numbers and truths in their order."""
    if isinstance(value, dict):
        return [bare(inner) for inner in value.values()]
    if isinstance(value, list | tuple):
        return [bare(inner) for inner in value]
    return SIGN if isinstance(value, str) else value


def places(piece: Piece) -> Iterator[tuple[float, ...]]:
    for path in (*(edge.path for edge in piece.edges), *(mark.path for mark in piece.marks), piece.grain):
        for curve in path.curves:
            yield (*curve.start, *curve.c1, *curve.c2, *curve.end)
    for edge in piece.edges:
        yield (edge.allowance, edge.turn_up, *(notch.distance for notch in edge.notches))


def outlines(made: Jeans) -> list[list[tuple[float, ...]]]:
    return [list(places(piece)) for piece in made.pattern.pieces]


@pytest.mark.parametrize("name", STYLES)
def test_renaming_all_that_is_printed_changes_no_figure_and_no_place(name: str, renamed: Any) -> None:
    before = jeans(*STYLES[name])
    figures, shapes, toile = jeans_figures(before), outlines(before), toile_pieces(before.pattern)
    steps = [section for section in before.pattern.sections if not section.table]
    renamed()
    after = jeans(*STYLES[name])
    assert bare(jeans_figures(after)) == bare(figures)
    assert jeans_figures(after)["girths"].keys() == figures["girths"].keys()
    assert outlines(after) == shapes
    assert toile_pieces(after.pattern) == toile
    # The same is bought and sewn in the same order, and every name did change.
    assert [len(section.lines) for section in after.pattern.sections if not section.table] == [
        len(section.lines) for section in steps
    ]
    assert all(SIGN in piece.name for piece in after.pattern.pieces)
    assert all(SIGN in edge.name for piece in after.pattern.pieces for edge in piece.edges)
    assert all(SIGN in check.name for check in (*after.seams, *after.corners))


def test_versions_and_styles_are_compared_by_what_pieces_are(renamed: Any) -> None:
    def compared() -> tuple[Any, ...]:
        made = [jeans(STRAIGHT, "uneven"), jeans(replace(STRAIGHT, fly_width=45), "uneven")]
        block = made[0].block
        return (
            [list(each.shared) for each in compare(made)],
            list(edges_of(made[0].pattern)),
            [mm.tolist() for mm in (*points_of(block, 2).values(), *lengths_of(block, 2).values())],
        )

    before = compared()
    renamed()
    assert compared() == before


@pytest.mark.parametrize("wearer", ["gulsah", "uneven"])
def test_a_lesson_goes_by_steps_and_lengths_not_by_their_names(wearer: str, renamed: Any) -> None:
    def lesson() -> tuple[Any, ...]:
        block = drafted(wearer)
        draft: HandDraft = hand_draft(block.halves[0])
        asked = asked_for([draft])
        lengths = {
            step.label: step.result + (12 if number % 5 == 3 else 0) for number, step in enumerate(asked)
        }
        marks = [(m.step.label, m.mark, m.because) for m in mark_lengths([draft], lengths, 4)]
        lines = [line for panel in ("front", "back") for line in carried(draft, panel, Writing(Unit.CM))]
        panels = [re.findall(r"[\d.]+", line) for line in lines]
        rows = further_rows(block, draft, Writing(Unit.CM), blank=False)
        numbers = [(row[1], row[2], row[3] in GROUNDS.values()) for row in rows]
        return [step.label for step in asked], marks, panels, numbers

    before = lesson()
    renamed()
    assert lesson() == before


def test_a_length_keeps_its_reason_under_another_name() -> None:
    block = block_of("gulsah")
    lengths = [i.length for i in hand_draft(block.halves[0]).instructions if i.length]
    reasons = [leaf.reason for top in lengths for leaf in top.inner()]
    again = [leaf.called("another").reason for top in lengths for leaf in top.inner()]
    assert again == reasons and set(reasons) - {None} <= GROUNDS.keys() and any(reasons)


def test_a_person_asks_for_pieces_by_their_printed_names(renamed: Any) -> None:
    renamed()
    pattern = jeans(STRAIGHT, "gulsah").pattern
    assert [piece.kind for _, piece in choose(pattern, [other("back yoke")]).numbered] == ["back yoke"]


UNEXPLAINED = {
    "front waist straight from centre to side", "back waist straight from centre to side",
    "break above the knee", "narrowest hem of the style", "widest hem of the style",
}  # fmt: skip
"""Named numbers besides the body's that stand on the drawing, or in the style."""


@pytest.mark.parametrize("wearer", ["gulsah", "theodoros", "uneven"])
def test_a_number_that_no_formula_gives_has_a_reason_or_is_measured(wearer: str) -> None:
    block = block_of(wearer)
    given = {value.length.name for value in block.body.values.values()}
    leaves = [
        leaf
        for half in block.halves
        for step in hand_draft(half).instructions
        for leaf in (step.length.inner() if step.length else ())
    ]
    bare_ones = {leaf.name for leaf in leaves if leaf.name and not leaf.parts and leaf.reason is None}
    assert bare_ones <= given | UNEXPLAINED
