"""What there is to say about a block: its fit, what its corrections moved, and what to measure next."""

from __future__ import annotations

from drafting.base.findings import Finding
from drafting.block.block import Block
from drafting.report.corrections import correction_findings
from drafting.report.fit import fit_findings
from drafting.report.what_to_measure import advice


def block_findings(block: Block) -> tuple[Finding, ...]:
    """Return what there is to say about the fit, and which measurement would help it most."""
    return (*fit_findings(block), *correction_findings(block), *advice(block))
