"""A pair of jeans: a style put on a block, its pieces, and the proof that they sew together."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from drafting.base.findings import Finding
from drafting.base.tolerance import SEAM
from drafting.block.block import Block
from drafting.pieces.kinds import EdgeKind, PieceKind
from drafting.pieces.pattern import Pattern, Section
from drafting.pieces.pieces import Piece
from drafting.pieces.seams import Run
from drafting.pieces.trueing import CornerCheck, SeamCheck, check_corners, check_pieces, check_seams
from drafting.report.block_findings import block_findings
from styles.base.hem import check_turn_up, turn_up_on
from styles.base.part import HalfToCut, Notion, Part, counted
from styles.choice.style import Band, Style
from styles.cloth.block_for_style import check_stretch
from styles.cloth.shrinkage_and_stretch import Cloth, fit_to_cloth
from styles.making.joining import (
    Pieces,
    back_waist,
    band_seams,
    front_waist,
    leg_corners,
    leg_seams,
    mark_waist,
)
from styles.making.making_up import making_up
from styles.making.trueing_table import trueing_section, verdict
from styles.parts.back_leg import back_leg
from styles.parts.back_pocket import back_pocket, placing, pocket_size
from styles.parts.belt_loops import belt_loops, loop_count, loop_places
from styles.parts.fly import fly
from styles.parts.fly_length import fly_length
from styles.parts.front_leg import front_leg
from styles.parts.front_pocket import front_pocket
from styles.parts.interfacing import interfacing
from styles.parts.shaped_band import band_notions, centre_back_of_band, shaped_band
from styles.parts.straight_band import HalfWaist, straight_band
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
    fitted = _on_the_body(style, block)
    cut = _cut(block, fitted, cloth)
    trued = _trued(cut)
    said = (
        *block_findings(block),
        *check_stretch(fitted, cloth or Cloth(), block.body),
        *check_turn_up(block, style.turn_up, fitted.turn_up),
        *check_worn_girth(block.body, _worn_level(block, fitted), cut.band_length),
        *trued.findings,
    )
    pieces = _drawn(cut, fitted, cloth)
    pattern = Pattern(
        wearer,
        style.name,
        date,
        pieces,
        cut.part.seams,
        said,
        verdict(trued.seams, trued.corners),
        (*making_up(pieces, cut.part.notions, fitted), _table(cut, trued)),
    )
    return Jeans(
        block,
        fitted,
        pattern,
        trued.seams,
        trued.corners,
        counted(cut.part.notions),
        cloth or Cloth(),
        cut.band_length,
    )


def _on_the_body(style: Style, block: Block) -> Style:
    """Return the style with its rise, turn-up and back waist as they come out on this body."""
    # The rise is that of the toile; what the fitting changes is on top of it.
    style = style.on((block.toile or block).body)
    return replace(style, turn_up=turn_up_on(block, style), back_waist_least=_back_waist_least(block, style))


@dataclass(frozen=True)
class _Cut:
    """Everything that is cut and sewn, before the cloth shrinks.

    Attributes:
        part: All pieces in the order of their numbers, all seams and corners, all notions.
        band_length: The closed length of the waistband's upper edge, mm.
    """

    part: Part
    band_length: float


@dataclass(frozen=True)
class _Trued:
    """What the trueing found."""

    seams: tuple[SeamCheck, ...]
    corners: tuple[CornerCheck, ...]
    of_pieces: tuple[Finding, ...]

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What was found in pieces, seams and corners, in this order."""
        checks: tuple[SeamCheck | CornerCheck, ...] = (*self.seams, *self.corners)
        return (*self.of_pieces, *(finding for check in checks for finding in check.findings))


def _cut(block: Block, style: Style, cloth: Cloth | None) -> _Cut:
    """Return the pieces of a style that suits the body, with every seam between them."""
    parts = _without_band(block, style)
    pieces = {piece.id: piece for piece in parts.pieces}
    fronts, backs = _waist_lengths(block, pieces, style)
    waist = (sum(fronts) + sum(backs)) * 2 / len(fronts)
    loops = [loop_places(f, b, loop_count(waist)) for f, b in zip(fronts, backs, strict=True)]
    mark_waist(block, pieces, style, loops)
    seams_of = [HalfWaist(f, b, at) for f, b, at in zip(fronts, backs, loops, strict=True)]
    parts += _band(block, style, seams_of, cloth)
    parts += belt_loops(style, waist)
    parts += Part((), notions=band_notions())
    # Pieces that stand already keep their place and the notches they were given.
    pieces |= {piece.id: piece for piece in parts.pieces if piece.id not in pieces}
    seams = (*leg_seams(block, pieces, style), *band_seams(block, pieces, style), *parts.seams)
    if style.band is Band.SHAPED:
        seams += centre_back_of_band(block, pieces)
    corners = (*leg_corners(block, pieces), *parts.corners)
    whole = Part(tuple(pieces.values()), seams, corners, parts.notions)
    return _Cut(whole, _band_length(pieces, fronts, backs))


def _band(block: Block, style: Style, waist: list[HalfWaist], cloth: Cloth | None) -> Part:
    """Return the waistband for a waist seam, notched as that is."""
    if style.band is Band.SHAPED:
        halves = zip(map(HalfToCut, block.halves), waist, strict=True)
        return _sum(shaped_band(half, style, seam.notches) for half, seam in halves)
    # Along the warp a strip is strongest; where cloth shrinks unevenly it must shrink as the waist does.
    along = cloth is None or cloth.lengthwise_change == cloth.crosswise_change
    return straight_band(waist, style, along=along)


def _trued(cut: _Cut) -> _Trued:
    part = cut.part
    return _Trued(
        check_seams(part.pieces, part.seams),
        check_corners(part.pieces, part.corners),
        check_pieces(part.pieces),
    )


def _drawn(cut: _Cut, style: Style, cloth: Cloth | None) -> tuple[Piece, ...]:
    """Return the pieces as they are drawn: larger for the wash, and with their interfacing."""
    pieces = fit_to_cloth(cut.part.pieces, cloth) if cloth else cut.part.pieces
    return (*pieces, *interfacing(pieces)) if style.interfacing else pieces


def _table(cut: _Cut, trued: _Trued) -> Section:
    """Return the table of what meets what."""
    part = cut.part
    seams = [*zip(part.seams, trued.seams, strict=True)]
    return trueing_section(seams, [*zip(part.corners, trued.corners, strict=True)])


def _without_band(block: Block, style: Style) -> Part:
    """Return legs, yokes, pockets and fly, in the order in which they are numbered."""
    zip_length = fly_length(block, style)
    halves = [HalfToCut(half) for half in block.halves]
    tops = [back_top(half.back, style).seam for half in block.halves]
    size = pocket_size(style, block.body["hip_girth"].mm, tops, crotch=block.levels.crotch.mm)
    legs = [front_leg(of, style, zip_length) for of in halves]
    fronts = {piece.id: piece for part in legs for piece in part.pieces}
    backs = [back_leg(of, style, placing(top, size)) for of, top in zip(halves, tops, strict=True)]
    pockets = [front_pocket(of, style, fronts[of.id(PieceKind.FRONT_LEG)]) for of in halves]
    return _sum([*legs, *backs, *pockets, back_pocket(style, size), fly(block, style, fronts)])


def _sum(parts: Iterable[Part]) -> Part:
    whole = Part(())
    for part in parts:
        whole += part
    return whole


def _waist_lengths(block: Block, pieces: Pieces, style: Style) -> tuple[list[float], list[float]]:
    """Return the front and the back waist seam of each half, mm."""

    def length(runs: tuple[Run, ...]) -> float:
        return sum(pieces[run.piece].edge(run.edge).length - run.start for run in runs)

    halves = [HalfToCut(half) for half in block.halves]
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


def _band_length(pieces: Pieces, fronts: list[float], backs: list[float]) -> float:
    """Return the closed length of the band's upper edge, mm."""
    upper = [
        edge.length
        for piece in pieces.values()
        if piece.kind in (PieceKind.FRONT_BAND, PieceKind.BACK_BAND)
        for edge in piece.edges
        if edge.kind is EdgeKind.UPPER
    ]
    return sum(upper or [*fronts, *backs]) * 2 / len(fronts)
