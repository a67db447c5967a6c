"""The numbers of a pair of jeans: those of its block, with every piece, seam and joined corner."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from drafting.pieces.trueing import SeamCheck
from drafting.pieces.words import edge_name, piece_name
from drafting.report.block_figures import block_figures, finding_figures, in_cm
from styles.base.part import NotionKind
from styles.making.fitted import fitting_figures
from styles.making.jeans import Jeans


def jeans_figures(jeans: Jeans) -> dict[str, Any]:
    """Return the numbers under the names of `block_figures`, in cm and degrees; the cloth in percent."""
    pattern = jeans.pattern
    return {
        "wearer": pattern.wearer,
        "style": pattern.style,
        "date": pattern.date,
        **block_figures(jeans.block),
        "seams": [_seam(check, edges) for check, edges in zip(jeans.seams, _edges(jeans), strict=True)],
        "corners": [
            {"name": c.name, "angle": round(c.angle, 2), "wanted": c.wanted, "passes": c.passes}
            for c in jeans.corners
        ],
        "pieces": [
            {
                "number": number,
                "name": piece.name,
                "quantity": piece.cutting.quantity,
                "pairs": piece.cutting.pairs,
                "material": piece.cutting.material.value,
                "allowances": {edge.name: in_cm(edge.allowance) for edge in piece.edges},
                "lengths": {edge.name: in_cm(edge.length) for edge in piece.edges},
            }
            for number, piece in enumerate(pattern.pieces, start=1)
        ],
        "notions": [
            {"name": n.name, "count": n.count, "length": in_cm(n.length) if n.length else None}
            for n in jeans.notions
        ],
        "fly": jeans.style.fly.value,
        "zip_length": next((in_cm(n.length) for n in jeans.notions if n.kind is NotionKind.ZIP), None),
        "waistband_length": in_cm(jeans.band_length),
        "below_waist": in_cm(jeans.style.below_waist),
        "front_rise": in_cm(jeans.front_rise),
        "hem_height": in_cm(jeans.block.levels.hem.mm),
        "least_stretch": jeans.style.least_stretch,
        "cloth": asdict(jeans.cloth),
        **fitting_figures(jeans),
        "findings": [finding_figures(finding) for finding in pattern.findings],
    }


def _edges(jeans: Jeans) -> list[list[str]]:
    return [
        [f"{piece_name(run.piece)} {edge_name(run.edge)}" for run in (*seam.first, *seam.second)]
        for seam in jeans.pattern.seams
    ]


def _seam(check: SeamCheck, edges: list[str]) -> dict[str, Any]:
    return {
        "name": check.name,
        "edges": edges,
        "lengths": [in_cm(check.first_length), in_cm(check.second_length)],
        "intended_difference": in_cm(check.intended),
        "found_difference": in_cm(check.found),
        "notches": [
            {"name": n.name, "along": [in_cm(n.first), in_cm(n.second)], "miss": in_cm(n.miss)}
            for n in check.notches
        ],
        "passes": check.passes,
    }
