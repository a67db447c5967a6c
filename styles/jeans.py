"""A pair of jeans: a style put on a block, its pieces, and the proof that they sew together."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.block import Block
from drafting.findings import Finding, Level
from drafting.pattern import Pattern
from drafting.trueing import CornerCheck, SeamCheck, check_corners, check_pieces, check_seams
from styles.legs import leg_corners, leg_pieces, leg_seams
from styles.style import Style


@dataclass(frozen=True)
class Jeans:
    """A style drafted for one wearer.

    Attributes:
        block: The wearer's block.
        style: The style.
        pattern: The pieces and seams; its findings include those of the trueing.
        seams: The trueing table.
        corners: The joined corners.
    """

    block: Block
    style: Style
    pattern: Pattern
    seams: tuple[SeamCheck, ...]
    corners: tuple[CornerCheck, ...]

    @property
    def faults(self) -> tuple[Finding, ...]:
        """What would keep the pattern from being sewn."""
        return tuple(finding for finding in self.pattern.findings if finding.level is Level.FAULT)


def make_jeans(block: Block, style: Style, *, wearer: str = "", date: str = "") -> Jeans:
    """Return the pattern of `style` on `block`, trued and checked."""
    pieces = leg_pieces(block, style.allowances)
    declared = leg_seams(block, pieces)
    seams = check_seams(pieces, declared)
    corners = check_corners(pieces, leg_corners(block))
    findings = (
        *block.findings(),
        *check_pieces(pieces),
        *(finding for check in seams for finding in check.findings),
        *(finding for check in corners for finding in check.findings),
    )
    pattern = Pattern(wearer, style.name, date, pieces, declared, findings)
    return Jeans(block, style, pattern, seams, corners)
