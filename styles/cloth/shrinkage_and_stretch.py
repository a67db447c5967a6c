"""The cloth: what it loses in the wash is added before cutting, and what it stretches is taken off the room.

A change is what ISO 5077 calls it: (after - before) / before in percent, so that shrinking is negative. A
piece that is to measure L after the wash is drawn L / (1 + change / 100), along its grain and across it
apart.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from drafting.base.construction_proportions import Ease
from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.base.tolerance import JOIN
from drafting.body.body import Body
from drafting.geometry.points import Point
from drafting.pieces.pieces import Edge, Material, Piece

_SHRINKS_MOST, _GROWS_MOST = -20.0, 5.0
"""Loomstate denim loses up to 10 %, cotton with elastane up to 15 % across (published costing rules); the
limits leave room beyond (own judgement)."""

_STRETCHES_MOST = 100.0
"""No denim stretches to twice its width, percent (own judgement)."""

_NOT_DENIM = "No denim does that. Give what the swatch did in percent, a minus for shrinking."

_WIDTH_OFF = ((15.0, 0.0), (20.0, 2.0), (30.0, 3.0), (45.0, 5.0))
"""Stretch of the cloth and the share of the girth taken off for it, both percent: next to nothing for comfort
denim (10 to 20), 2 to 3 from 20 to 30, up to 5 for power denim (40 to 50); never more than half the stretch
(from memory)."""

_HEM_GIVES = 40.0
"""From this stretch on, percent, a hem may be narrower than the foot (only very stretchy cloth: a sewing
teacher, from memory)."""

_UNDER_THE_HEEL = ((40.0, -25.0), (50.0, -50.0))
"""Stretch in percent and the heel ease that goes with it, mm: 1 to 2 in under the foot's girth (the same,
from memory)."""


@dataclass(frozen=True, kw_only=True)
class Cloth:
    """A cloth as its swatch showed it, percent.

    Attributes:
        lengthwise_change: Along the warp, after washing; negative where it shrinks.
        crosswise_change: Across it.
        stretch: How much further it can be pulled crosswise without strain; 0 for rigid denim.
    """

    lengthwise_change: float = 0.0
    crosswise_change: float = 0.0
    stretch: float = 0.0


def cloth_problems(cloth: Cloth) -> list[Problem]:
    """Return a refusal for each value of a cloth that nobody can have measured."""
    changes = "between -20 % (it shrinks by a fifth) and 5 % (it grows)"
    ranges = {
        "lengthwise_change": (_SHRINKS_MOST, _GROWS_MOST, changes),
        "crosswise_change": (_SHRINKS_MOST, _GROWS_MOST, changes),
        "stretch": (0.0, _STRETCHES_MOST, "between 0 % and 100 %"),
    }
    return [
        Problem(key, _NOT_DENIM, Severity.REFUSAL, f"{getattr(cloth, key):g} %", said)
        for key, (low, high, said) in ranges.items()
        if not low <= getattr(cloth, key) <= high
    ]


def refuse_meaningless_cloth(cloth: Cloth) -> None:
    """Refuse a cloth that nobody can have measured.

    Raises:
        DraftRefused: with every value that is out of range.
    """
    if problems := cloth_problems(cloth):
        raise DraftRefused(problems)


def fit_to_cloth(pieces: tuple[Piece, ...], cloth: Cloth) -> tuple[Piece, ...]:
    """Return the pieces drawn larger for what the cloth loses in the wash.

    Edges, notches, marks and grain move together; allowances keep their width. Pocket bags and the template
    are drawn larger too, though they do not shrink: they are sewn to the denim, or laid on it, before the
    wash. Interfacing is copied from pieces that have their size. A piece already drawn larger is returned as
    it is, so that nothing is added twice.
    """
    along, across = (1 / (1 + change / 100) for change in (cloth.lengthwise_change, cloth.crosswise_change))
    if along == across == 1:
        return pieces
    return tuple(_larger(piece, along, across) if _shrinks(piece) else piece for piece in pieces)


def _shrinks(piece: Piece) -> bool:
    return piece.cutting.material is not Material.INTERFACING and piece.drawn_larger == (1.0, 1.0)


def _larger(piece: Piece, along: float, across: float) -> Piece:
    start, grain = piece.grain.start, piece.grain.direction(0)

    def move(p: Point) -> Point:
        way = p - start
        return start + grain * (way.dot(grain) * along) + grain.left * (grain.cross(way) * across)

    moved = piece.moved(move)
    edges = tuple(
        replace(
            larger,
            # A turn-up is cloth of the leg and shrinks with it; the hem lies across the grain.
            allowance=edge.allowance + 2 * edge.turn_up * (along - 1),
            turn_up=edge.turn_up * along,
            notches=tuple(replace(n, distance=_along(edge, n.distance, move)) for n in edge.notches),
        )
        for edge, larger in zip(piece.edges, moved.edges, strict=True)
    )
    return replace(moved, edges=edges, drawn_larger=(along, across))


def _along(edge: Edge, distance: float, move: Callable[[Point], Point]) -> float:
    """Return where a place on an edge lies once the edge is moved, mm from its start."""
    if distance <= JOIN:
        return 0.0
    if distance >= edge.length - JOIN:
        return edge.path.moved(move).length
    return edge.path.split(distance)[0].moved(move).length


def _between(table: tuple[tuple[float, float], ...], at: float) -> float:
    """Return the value at a place between the lines of a table, beyond its ends that of the end."""
    places, values = zip(*table, strict=True)
    return float(np.interp(at, places, values))


def width_off(stretch: float) -> float:
    """Return the share of a girth, 0 to 0.05, that a cloth of so many percent of stretch lets off."""
    return _between(_WIDTH_OFF, stretch) / 100


def ease_for(cloth: Cloth, body: Body, usual: Ease | None = None) -> Ease:
    """Return the room that a block of this cloth needs, smaller where the cloth stretches.

    The widths of hip, thigh, knee and calf give way; lengths do not, nor the waist, whose interfaced band
    does not stretch. A hem has to pass the heel as ever, but for very stretchy cloth.

    Args:
        cloth: The cloth.
        body: Whose girths the shares are taken of; an unknown girth leaves its ease as it is.
        usual: The room in rigid denim.
    """
    usual, share = usual or Ease(), width_off(cloth.stretch)

    def off(key: str) -> float:
        girth = body.get(key)
        return share * girth.mm if girth else 0.0

    heel = usual.heel
    if cloth.stretch >= _HEM_GIVES:
        heel = min(heel, _between(_UNDER_THE_HEEL, cloth.stretch))
    return replace(
        usual,
        hip=usual.hip - off("hip_girth"),
        thigh=usual.thigh - off("thigh_girth"),
        knee=usual.knee - off("knee_girth"),
        calf=usual.calf - off("calf_girth"),
        heel=heel,
    )
