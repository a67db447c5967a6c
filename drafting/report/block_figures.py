"""The numbers of a draft under fixed names, in cm, for people and programs that read `figures.json`."""

from __future__ import annotations

import math
from dataclasses import asdict
from typing import Any

from drafting.base.findings import Finding
from drafting.base.tolerance import SEAM
from drafting.block.block import Block
from drafting.block.fitting import split_off
from drafting.body.words import of_side
from drafting.report.block_findings import block_findings
from drafting.report.fit import crotch_line, girth_lines


def in_cm(mm: float | None) -> float | None:
    """Return millimetres as centimetres to a hundredth of a millimetre; None stays None."""
    return None if mm is None else round(mm / 10, 3)


def finding_figures(finding: Finding) -> dict[str, Any]:
    """Return a finding as plain data, its sentence in centimetres."""
    return {
        "code": finding.code,
        "level": finding.severity.value,
        "where": finding.where,
        "text": finding.say(),
    }


def seam_figures(name: str, edges: list[str], first: float, second: float, intended: float) -> dict[str, Any]:
    """Return one line of the seam table; lengths given in mm, first minus second should be `intended`."""
    return {
        "name": name,
        "edges": edges,
        "lengths": [in_cm(first), in_cm(second)],
        "intended_difference": in_cm(intended),
        "found_difference": in_cm(first - second),
        "passes": abs(first - second - intended) <= SEAM,
    }


def split_figures(block: Block) -> dict[str, float | None] | None:
    """Return the front part of the crotch length beside what the body lets expect; None without the parts."""
    off, front = split_off(block.body), block.body.get("front_crotch_length")
    if off is None or front is None:
        return None
    return {
        "front_measured": in_cm(front.mm),
        "front_expected": in_cm(front.mm - off),
    }


def block_figures(block: Block) -> dict[str, Any]:
    """Return girths, crotch seam, lengths, seams, pieces and findings of the block, in cm.

    `girths` maps a level to body, ease and pattern; body and ease are None where the body is not known.
    """
    front, back, crotch = block.front, block.back, crotch_line(block)
    inseams = front.lower.inseam.length, back.lower.inseam.length
    outseams = front.side.length, back.side.length
    return {
        "unit": "cm",
        "girths": {
            line.key: {
                "body": in_cm(line.body),
                "ease": in_cm(line.ease),
                "pattern": in_cm(line.pattern),
                "origin": line.origin.value if line.origin else None,
                "spread": in_cm(line.spread),
                "enough": line.enough,
            }
            for line in girth_lines(block)
        },
        "crotch": {
            "front": in_cm(crotch.front),
            "back": in_cm(crotch.back),
            "total": in_cm(crotch.total),
            "target": in_cm(crotch.target),
            **({"corrected": in_cm(crotch.corrected)} if block.toile else {}),
            "split": split_figures(block),
            "means": [
                {
                    "key": means.key,
                    "name": means.name,
                    "amount": in_cm(means.amount) if means.unit == "mm" else round(means.amount, 2),
                    "unit": "cm" if means.unit == "mm" else "deg",
                }
                for means in block.moved
            ],
        },
        "body": {
            key: {
                "value": in_cm(value.length.mm),
                "origin": value.origin.value,
                "spread": in_cm(value.spread),
                "source": value.source,
            }
            for key, value in block.body.values.items()
        },
        "suppression": {
            "centre_back": in_cm(
                (block.levels.waist.mm - block.levels.hip.mm) * math.tan(block.back.lower.plan.lean)
            ),
            "seat_line_degrees": round(math.degrees(block.shares.lean), 2),
            **{name: in_cm(amount) for name, amount in asdict(block.shares.suppression).items()},
        },
        "lengths": {
            "inseam_front": in_cm(inseams[0]),
            "inseam_back": in_cm(inseams[1]),
            "outseam_front": in_cm(outseams[0]),
            "outseam_back": in_cm(outseams[1]),
        },
        "seams": [
            seam_figures("inseam", ["front inseam", "back inseam"], *inseams, block.proportions.inseam_ease),
            seam_figures("side seam", ["front side seam", "back side seam"], *outseams, 0.0),
        ],
        "pieces": [
            {"name": of_side(name, half.side), "quantity": 1 if half.side else 2}
            for half in block.halves
            for name in ("front", "back")
        ],
        "findings": [finding_figures(finding) for finding in block_findings(block)],
    }
