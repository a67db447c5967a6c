"""A pair of jeans: a style put on a block, its pieces, and the proof that they sew together."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.base.findings import Finding
from drafting.base.tolerance import SEAM
from drafting.block.block import Block
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Piece
from drafting.pieces.seams import Corner, Run, Seam
from drafting.pieces.trueing import CornerCheck, SeamCheck, check_corners, check_pieces, check_seams
from drafting.report.findings import block_findings
from styles.base.hem import check_turn_up, turn_up_on
from styles.base.part import HalfOf, Notion, Part, counted
from styles.choice.style import Band, Style
from styles.cloth.block_for_style import check_stretch
from styles.cloth.cloth import Cloth, fit_to_cloth
from styles.making.joining import back_waist, band_seams, front_waist, leg_corners, leg_seams, mark_waist
from styles.making.making_up import making_up
from styles.making.trueing_table import trueing_section, verdict
from styles.parts.back_leg import back_leg
from styles.parts.back_pocket import back_pocket, placing, pocket_size
from styles.parts.belt_loops import belt_loops, loop_count, loop_places
from styles.parts.fly import fly
from styles.parts.fly_length import fly_length
from styles.parts.front_leg import FRONT_LEG, front_leg
from styles.parts.front_pocket import front_pocket
from styles.parts.interfacing import interfacing
from styles.parts.straight_band import HalfWaist, straight_band
from styles.parts.waistband import (
    BACK_BAND,
    FRONT_BAND,
    UPPER,
    band_notions,
    centre_back_of_band,
    shaped_band,
)
from styles.top.upper import back_top, front_at
from styles.top.worn_level import check_worn_girth, girth_at


@dataclass(frozen=True)
class Jeans:
    """A style drafted for one wearer.

    Attributes:
        block: The wearer's block.
        style: The style.
        pattern: The pieces and seams; its findings include those of the trueing.
        seams: The trueing table.
        corners: The joined corners.
        notions: What must be bought besides cloth.
        cloth: What the denim does; no change and no stretch where nothing was said.
        band_length: The closed length of the waistband's upper edge, mm.
    """

    block: Block
    style: Style
    pattern: Pattern
    seams: tuple[SeamCheck, ...]
    corners: tuple[CornerCheck, ...]
    notions: tuple[Notion, ...]
    cloth: Cloth
    band_length: float

    @property
    def front_rise(self) -> float:
        """The front crotch seam from the fork to the upper edge of the jeans, mm; of the right half."""
        return front_at(self.block.front, self.style.below_waist).crotch.length

    @property
    def faults(self) -> tuple[Finding, ...]:
        """What would keep the pattern from being sewn."""
        return self.pattern.faults


def make_jeans(
    block: Block, style: Style, *, wearer: str = "", date: str = "", cloth: Cloth | None = None
) -> Jeans:
    """Return the pattern of `style` on `block`, trued and checked.

    Args:
        block: The wearer's block; its ease already suits the stretch of the cloth.
        style: The style.
        wearer: Name to print on every piece.
        date: When the measurements were taken, to print.
        cloth: What the denim loses in the wash; the seams are trued before it is added.
    """
    asked = style.turn_up
    # The rise is that of the toile; what the fitting changes is on top of it.
    style = style.on((block.toile or block).body)
    style = replace(style, turn_up=turn_up_on(block, style), back_waist_least=_back_waist_least(block, style))
    parts = _without_band(block, style)
    pieces = {piece.name: piece for piece in parts.pieces}
    fronts, backs = _waist_lengths(block, pieces, style)
    waist = (sum(fronts) + sum(backs)) * 2 / len(fronts)
    loops = [loop_places(f, b, loop_count(waist)) for f, b in zip(fronts, backs, strict=True)]
    mark_waist(block, pieces, style, loops)
    if style.band is Band.SHAPED:
        parts += _sum(
            shaped_band(HalfOf(half), style, at) for half, at in zip(block.halves, loops, strict=True)
        )
    else:
        # Along the warp a strip is strongest; where cloth shrinks unevenly it must shrink as the waist does.
        along = cloth is None or cloth.lengthwise_change == cloth.crosswise_change
        seams_of = [HalfWaist(f, b, at) for f, b, at in zip(fronts, backs, loops, strict=True)]
        parts += straight_band(seams_of, style, along=along)
    parts += belt_loops(style, waist)
    parts += Part((), notions=band_notions())
    pieces |= {piece.name: piece for piece in parts.pieces if piece.name not in pieces}
    trued = tuple(pieces.values())
    seams: tuple[Seam, ...] = (
        *leg_seams(block, pieces, style),
        *band_seams(block, pieces, style),
        *parts.seams,
    )
    seams += centre_back_of_band(block, pieces) if style.band is Band.SHAPED else ()
    corners: tuple[Corner, ...] = (*leg_corners(block, pieces), *parts.corners)

    seam_checks, corner_checks = check_seams(trued, seams), check_corners(trued, corners)
    band_length = _band_length(pieces, fronts, backs)
    findings = (
        *block_findings(block),
        *check_stretch(style, cloth or Cloth(), block.body),
        *check_turn_up(block, asked, style.turn_up),
        *check_worn_girth(block.body, _worn_level(block, style), band_length),
        *check_pieces(trued),
        *(finding for check in seam_checks for finding in check.findings),
        *(finding for check in corner_checks for finding in check.findings),
    )
    cut = fit_to_cloth(trued, cloth) if cloth else trued
    cut += interfacing(cut) if style.interfacing else ()
    pattern = Pattern(
        wearer,
        style.name,
        date,
        cut,
        seams,
        findings,
        verdict(seam_checks, corner_checks),
        (
            *making_up(cut, parts.notions, style),
            trueing_section(
                [*zip(seams, seam_checks, strict=True)], [*zip(corners, corner_checks, strict=True)]
            ),
        ),
    )
    return Jeans(
        block,
        style,
        pattern,
        seam_checks,
        corner_checks,
        counted(parts.notions),
        cloth or Cloth(),
        band_length,
    )


def _without_band(block: Block, style: Style) -> Part:
    """Return legs, yokes, pockets and fly, in the order in which they are numbered."""
    zip_length = fly_length(block, style)
    halves = [HalfOf(half) for half in block.halves]
    tops = [back_top(half.back, style).seam for half in block.halves]
    size = pocket_size(style, block.body["hip_girth"].mm, tops, crotch=block.levels.crotch.mm)
    legs = [front_leg(of, style, zip_length) for of in halves]
    fronts = {piece.name: piece for part in legs for piece in part.pieces}
    backs = [back_leg(of, style, placing(top, size)) for of, top in zip(halves, tops, strict=True)]
    pockets = [front_pocket(of, style, fronts[of.name(FRONT_LEG)]) for of in halves]
    return _sum([*legs, *backs, *pockets, back_pocket(style, size), fly(block, style, fronts)])


def _sum(parts: Iterator[Part] | list[Part]) -> Part:
    whole = Part(())
    for part in parts:
        whole += part
    return whole


def _waist_lengths(block: Block, pieces: dict[str, Piece], style: Style) -> tuple[list[float], list[float]]:
    """Return the front and the back waist seam of each half, mm."""

    def length(runs: tuple[Run, ...]) -> float:
        return sum(pieces[run.piece].edge(run.edge).length - run.start for run in runs)

    halves = [HalfOf(half) for half in block.halves]
    return (
        [length(front_waist(of, pieces, style)) for of in halves],
        [length(back_waist(of, pieces)) for of in halves],
    )


def _back_waist_least(block: Block, style: Style) -> float:
    """Return what a half of the back must measure, fronts given, for the band to go round the body, mm.

    The room that stretch lets off at the hip would leave it shorter, but an interfaced band does not give.
    """
    half_girth = (girth_at(block.body, _worn_level(block, style)).mm + SEAM) / 2
    return half_girth - min(front_at(half.front, style.below_waist).waist.length for half in block.halves)


def _worn_level(block: Block, style: Style) -> float:
    return block.levels.waist.mm - style.below_waist


def _band_length(pieces: dict[str, Piece], fronts: list[float], backs: list[float]) -> float:
    """Return the closed length of the band's upper edge, mm."""
    upper = [
        edge.length
        for piece in pieces.values()
        if piece.name.endswith((FRONT_BAND, BACK_BAND))
        for edge in piece.edges
        if edge.name == UPPER
    ]
    return sum(upper or [*fronts, *backs]) * 2 / len(fronts)
