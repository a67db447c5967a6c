"""Two versions of a pattern beside each other: what moved, how far, and because of which input."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

import numpy as np

from drafting.base.errors import DraftRefused, Problem, Severity
from drafting.pieces.kinds import PieceId
from drafting.report.moves import (
    Amounts,
    EdgeKey,
    Key,
    LengthKey,
    PointKey,
    as_sides,
    edges_of,
    lengths_of,
    moved,
    points_of,
)
from outputs.reading.draft_record import Inputs
from outputs.reading.record_changes import Change, changes
from outputs.words.progress import Progress, silent
from styles.making.jeans import Jeans


@dataclass(frozen=True)
class Move:
    """How far something moved from the old version to the new.

    Attributes:
        key: Which point, length or edge.
        now: The new place (x, y) or length, mm.
        by: New less old, mm, of the shape of `now`.
        shares: What each change does alone, in the order of the changes; 0 where it cannot be made alone.
    """

    key: LengthKey | PointKey | EdgeKey
    now: Amounts
    by: Amounts
    shares: tuple[Amounts, ...]

    @property
    def name(self) -> str:
        """What moved, in print: "front, fork", "hip", "front leg, inseam"."""
        return self.key.name

    @property
    def together(self) -> Amounts:
        """What is left: the changes working on each other, and those that cannot be made alone."""
        return self.by - sum(self.shares, np.zeros_like(self.by))

    @property
    def far(self) -> float:
        """How far it moved, mm."""
        return float(np.hypot.reduce(self.by))


@dataclass(frozen=True)
class TwoVersions:
    """Two versions, drafted anew from their inputs.

    Attributes:
        old: The older inputs.
        new: The newer ones.
        jeans: The jeans of both.
        changes: The inputs that differ.
        not_alone: Why a change cannot be made alone in the old version, by its place among the changes.
        points: Of the block.
        lengths: Of the block.
        edges: Of the pieces.
        gone: Pieces that only the old version has.
        added: Pieces that only the new one has.
    """

    old: Inputs
    new: Inputs
    jeans: tuple[Jeans, Jeans]
    changes: tuple[Change, ...]
    not_alone: Mapping[int, tuple[Problem, ...]]
    points: tuple[Move, ...]
    lengths: tuple[Move, ...]
    edges: tuple[Move, ...]
    gone: tuple[PieceId, ...]
    added: tuple[PieceId, ...]


def compare_versions(
    old: Inputs, new: Inputs, names: tuple[str, str] = ("old", "new"), progress: Progress = silent
) -> TwoVersions:
    """Draft both versions, and the old one with each change alone.

    Args:
        old: The older inputs.
        new: The newer inputs.
        names: What the two are called in a refusal.
        progress: Is told what is drafted.

    Raises:
        DraftRefused: one of the two cannot be drafted.
    """
    first, last = (_drafted(inputs, name, progress) for inputs, name in zip((old, new), names, strict=True))
    differing = changes(old, new)
    alone: list[Jeans | None] = []
    not_alone = {}
    for index, change in enumerate(differing):
        progress(f"drafting with change {index + 1} of {len(differing)} alone")
        try:
            alone.append(change.put(old).jeans())
        except DraftRefused as refusal:
            alone.append(None)
            reasons = (p for p in refusal.problems if p.severity is Severity.REFUSAL)
            not_alone[index] = tuple(reasons)
    # Where one version has sides that differ, the sides of all are told apart.
    count = max(len(jeans.block.halves) for jeans in (first, last, *filter(None, alone)))

    def moves(of: Mapping[int, Mapping[Key, Amounts]]) -> tuple[Move, ...]:
        return tuple(_moves(of[0], of[1], [of.get(2 + index) for index in range(len(differing))]))

    versions = {0: first, 1: last, **{2 + i: jeans for i, jeans in enumerate(alone) if jeans}}
    edges = {i: edges_of(jeans.pattern) for i, jeans in versions.items()}
    known = {key for version in edges.values() for key in version}
    edges = {i: as_sides(version, known) for i, version in edges.items()}
    return TwoVersions(
        old,
        new,
        (first, last),
        differing,
        not_alone,
        points=moves({i: points_of(jeans.block, count) for i, jeans in versions.items()}),
        lengths=moves({i: lengths_of(jeans.block, count) for i, jeans in versions.items()}),
        edges=moves(edges),
        gone=_pieces_beyond(edges[0], edges[1]),
        added=_pieces_beyond(edges[1], edges[0]),
    )


def _pieces_beyond(edges: Iterable[EdgeKey], others: Iterable[EdgeKey]) -> tuple[PieceId, ...]:
    """Return the pieces of which the other version has no edge."""
    there, found = ({key.piece: None for key in version} for version in (others, edges))
    return tuple(piece for piece in found if piece not in there)


def _drafted(inputs: Inputs, name: str, progress: Progress) -> Jeans:
    progress(f"drafting {name}")
    try:
        return inputs.jeans()
    except DraftRefused as refusal:
        raise DraftRefused([replace(p, source=p.source or name) for p in refusal.problems]) from refusal


def _moves(
    old: Mapping[Key, Amounts], new: Mapping[Key, Amounts], alone: list[Mapping[Key, Amounts] | None]
) -> Iterator[Move]:
    shares = [moved(old, version) if version else {} for version in alone]
    for key, by in moved(old, new).items():
        yield Move(key, new[key], by, tuple(share.get(key, np.zeros_like(by)) for share in shares))
