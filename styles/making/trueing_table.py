"""The trueing report in words: every seam and joined corner with what was wanted and what was found."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.base.findings import Sentence, literal
from drafting.pieces.pattern import Section, TextTable
from drafting.pieces.seams import Corner, Run, Seam
from drafting.pieces.trueing import CornerCheck, SeamCheck
from drafting.pieces.words import edge_name, piece_name

_HEADS = ("seam", "one side – the other side", "one", "other", "wanted", "found", "notches", "")
_SHARES = (42, 52, 15, 15, 13, 13, 16, 14)
"""Widths of the columns, in parts of the whole (own trial)."""


def trueing_section(
    seams: Sequence[tuple[Seam, SeamCheck]], corners: Sequence[tuple[Corner, CornerCheck]]
) -> Section:
    """Return the table of seams and corners, each as it was declared with what was found.

    Differences are told in mm whatever the wearer's unit, as they are smaller than a tape shows.
    """
    rows = (*_seams(seams), (Sentence("Joined corners"),), *_corners(corners))
    says = Sentence(
        "Wanted and found: by how much the first side is longer. Notches: the largest distance of two that "
        "are to meet. A joined corner: both angles together, 180° where the edge runs straight on."
    )
    return Section("Trueing: what meets what", (says,), TextTable(_HEADS, _SHARES, rows))


def verdict(seams: Sequence[SeamCheck], corners: Sequence[CornerCheck]) -> str:
    """Return one sentence that says how many seams and corners meet, and how well."""
    failing = [check.name for check in seams if not check.passes or check.findings]
    uneven = [check.name for check in corners if not check.passes]
    if not failing and not uneven:
        off = max((abs(check.found - check.intended) for check in seams), default=0.0)
        apart = max((abs(notch.miss) for check in seams for notch in check.notches), default=0.0)
        turned = max((abs(check.angle - check.wanted) for check in corners), default=0.0)
        return (
            f"All {len(seams)} seams and {len(corners)} joined corners meet: lengths within {off:.1f} mm of "
            f"what is wanted, notches within {apart:.1f} mm, corners within {turned:.1f}°; the table of "
            "seams has each."
        )
    faults = (
        f"{len(failing)} of {len(seams)} seams do not meet" if failing else f"all {len(seams)} seams meet"
    )
    kinks = f"{len(uneven)} of {len(corners)} corners are uneven" if uneven else "all corners meet"
    return f"Trueing: {faults}, {kinks}: {', '.join([*failing, *uneven])}."


def _seams(seams: Sequence[tuple[Seam, SeamCheck]]) -> Iterator[tuple[Sentence, ...]]:
    for seam, check in seams:
        misses = [abs(notch.miss) for notch in check.notches]
        yield (
            Sentence(literal(seam.name)),
            Sentence(literal(f"{_edges(seam.first)} – {_edges(seam.second)}")),
            Sentence("{0}", (check.first_length,)),
            Sentence("{0}", (check.second_length,)),
            Sentence(_millimetres(check.intended)),
            Sentence(_millimetres(check.found)),
            Sentence(f"{len(misses)}: {_millimetres(max(misses))}" if misses else "–"),
            Sentence("meets" if check.passes and not check.findings else "DOES NOT MEET"),
        )


def _corners(corners: Sequence[tuple[Corner, CornerCheck]]) -> Iterator[tuple[Sentence, ...]]:
    for corner, check in corners:
        pieces = dict.fromkeys(map(piece_name, (corner.first.piece, corner.second.piece)))
        yield (
            Sentence(literal(corner.name)),
            Sentence(literal(" – ".join(pieces))),
            *(Sentence(""), Sentence("")),
            Sentence(f"{check.wanted:.0f}°"),
            Sentence(f"{check.angle:.1f}°"),
            Sentence("–"),
            Sentence("runs on" if check.passes else "UNEVEN"),
        )


def _edges(runs: tuple[Run, ...]) -> str:
    return ", ".join(f"{piece_name(run.piece)}: {edge_name(run.edge)}" for run in runs)


def _millimetres(mm: float) -> str:
    # What rounds to nothing has no sign.
    return f"{round(mm, 1) + 0.0:.1f} mm"
