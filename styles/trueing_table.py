"""The trueing report in words: every seam and joined corner with what was wanted and what was found."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.findings import Said
from drafting.pattern import Section
from drafting.trueing import CornerCheck, SeamCheck


def trueing_section(seams: Sequence[SeamCheck], corners: Sequence[CornerCheck]) -> Section:
    """Return the table of seams and corners as sentences."""
    return Section("Trueing: what meets what", (*map(_seam, seams), *map(_corner, corners)))


def verdict(seams: Sequence[SeamCheck], corners: Sequence[CornerCheck]) -> str:
    """Return one sentence that says how many seams and corners meet."""
    failing = [check.name for check in seams if not check.passes or check.findings]
    uneven = [check.name for check in corners if not check.passes]
    if not failing and not uneven:
        return f"All {len(seams)} seams and {len(corners)} joined corners meet; the table of seams has each."
    faults = (
        f"{len(failing)} of {len(seams)} seams do not meet" if failing else f"all {len(seams)} seams meet"
    )
    kinks = f"{len(uneven)} of {len(corners)} corners are uneven" if uneven else "all corners meet"
    return f"Trueing: {faults}, {kinks}: {', '.join([*failing, *uneven])}."


def _seam(check: SeamCheck) -> Said:
    text = f"{check.name}: {{0}} to {{1}}"
    if check.intended:
        text += ", wanted {2} longer, found {3}"
    text += f" – {'meets' if check.passes else 'DOES NOT MEET'}"
    if check.notches:
        worst = max(abs(notch.miss) for notch in check.notches)
        count = f"{len(check.notches)} notches" if len(check.notches) > 1 else "1 notch"
        text += f"; {count} within {worst:.1f} mm"
    return Said(text, (check.first_length, check.second_length, check.intended, check.found))


def _corner(check: CornerCheck) -> Said:
    return Said(
        f"{check.name}: {check.angle:.1f}° of {check.wanted:.0f}° – {'runs on' if check.passes else 'UNEVEN'}"
    )
