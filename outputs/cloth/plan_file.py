"""A cloth plan as a file that a program reads back: cloth-plan.json, lengths in centimetres."""

from __future__ import annotations

import json
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.units import Unit, length_to_buy
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Material
from outputs.cloth.cut_pieces import CLOTHS, CutPiece
from outputs.cloth.laid_cloth import (
    END,
    GAP,
    NARROWEST,
    SELVEDGE,
    WIDEST,
    ClothOnTable,
    Laid,
    LaidCloth,
    rounded,
)
from outputs.cloth.plan import ClothPlan, all_pieces
from outputs.files.kept_values import yes
from outputs.files.text_file import TextFile

CM = Unit.CM.mm


def plan_text(plan: ClothPlan, unit: Unit) -> str:
    """Return the file's text; what to buy is told as cloth is sold in `unit`."""
    content = {
        "cloth_plan": 1,
        "lengths": "cm",
        "wearers": [pattern.wearer for pattern in plan.patterns],
        "gap": GAP / CM,
        "free_at_selvedges": SELVEDGE / CM,
        "free_at_ends": END / CM,
        "cloths": [_cloth(laid, unit) for laid in plan.cloths],
    }
    return json.dumps(content, ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def _cloth(laid: LaidCloth, unit: Unit) -> dict[str, Any]:
    return {
        "cloth": laid.material.value,
        "width": round(laid.cloth.width / CM, 4),
        "folded": laid.cloth.folded,
        "one_way": laid.cloth.one_way,
        "length": round(laid.length / CM, 2),
        "buy": length_to_buy(laid.length, unit),
        "share_used": round(laid.share_used, 4),
        "least_by_area": round(laid.least_by_area / CM, 2),
        "least_by_longest_piece": round(laid.least_by_longest / CM, 2),
        "pieces": [
            {
                "wearer": each.piece.wearer,
                "number": each.piece.number,
                "piece": each.piece.name,
                "lies": each.piece.lie.value,
                "turned": each.turned,
                "x": round(each.x / CM, 3),
                "y": round(each.y / CM, 3),
            }
            for each in laid.laid
        ],
    }


def read_plan(file: TextFile, patterns: Sequence[Pattern]) -> ClothPlan:
    """Return the plan of a file, laid with the pieces of these patterns.

    Raises:
        DraftRefused: the file is no such plan, its pieces are others, or they no longer fit: they overlap or
            leave the cloth, as they do when measurements or style were changed.
    """
    try:
        entries = {Material(entry["cloth"]): entry for entry in json.loads(file.text)["cloths"]}
        on_table = {
            cloth: ClothOnTable(
                width=_width(entry), folded=yes(entry["folded"]), one_way=yes(entry["one_way"])
            )
            for cloth, entry in entries.items()
        }
        places = {cloth: [_place(each) for each in entry["pieces"]] for cloth, entry in entries.items()}
    except (KeyError, TypeError, ValueError, AttributeError, ArithmeticError, RecursionError) as error:
        raise _refusal(file, ["This is no cloth plan as this program writes it."]) from error
    plain = ClothOnTable(width=0.0)
    pieces = all_pieces(patterns, {cloth: on_table.get(cloth, plain) for cloth in CLOTHS})
    problems = list(_differences(pieces, places))
    if problems:
        raise _refusal(file, problems)
    cloths = tuple(
        LaidCloth(cloth, on_table[cloth], tuple(_laid(cut, places[cloth]))) for cloth, cut in pieces.items()
    )
    faults = [f"{laid.material.value}: {fault}." for laid in cloths for fault in laid.faults()]
    if faults:
        changed = "The pieces are not those of this plan any more; make a new one."
        raise _refusal(file, [*faults, changed])
    return ClothPlan(tuple(patterns), cloths)


_Key = tuple[int, int, str]
_Place = tuple[_Key, str, float, float, bool]


def _width(entry: Mapping[str, Any]) -> float:
    width = float(entry["width"]) * CM
    if not NARROWEST <= width <= WIDEST:
        raise ValueError("no cloth is that wide")
    return width


def _place(entry: Mapping[str, Any]) -> _Place:
    key = int(entry["wearer"]), int(entry["number"]), str(entry["lies"])
    x, y = rounded(float(entry["x"]) * CM), rounded(float(entry["y"]) * CM)
    return key, str(entry["piece"]), x, y, yes(entry["turned"])


def _differences(
    pieces: Mapping[Material, list[CutPiece]], places: Mapping[Material, list[_Place]]
) -> Iterator[str]:
    """Yield which pieces the plan has too few or too many of."""
    for cloth in CLOTHS:
        needed = Counter((piece.key, piece.name) for piece in pieces.get(cloth, ()))
        there = Counter((key, name) for key, name, *_ in places.get(cloth, ()))
        for which, more, differ in (("lacks", "", needed - there), ("has", " too many", there - needed)):
            for ((wearer, number, _), name), count in differ.items():
                yield f"{cloth.value}: the plan {which} {count}{more} of {number} {name}, wearer {wearer}."


def _laid(pieces: Sequence[CutPiece], places: Sequence[_Place]) -> Iterator[Laid]:
    """Yield the pieces in the places that the plan has for them."""
    left: defaultdict[_Key, list[_Place]] = defaultdict(list)
    for place in places:
        left[place[0]].append(place)
    for piece in pieces:
        _, _, x, y, turned = left[piece.key].pop(0)
        yield Laid(piece, x, y, turned)


def _refusal(file: TextFile, messages: Sequence[str]) -> DraftRefused:
    return DraftRefused([Problem("", message, Severity.REFUSAL) for message in messages], file.source)
