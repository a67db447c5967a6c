"""Worked by hand with a tape on the print: the crotch seam measured on paper is the one that the report
names.

The page is read by pdfplumber alone, which knows nothing of how it was drawn. The sew lines are told by their
dashes, the pieces by their shape: the two that cover most are the legs, and the yoke is the piece with an
edge as long as the back leg's upper one. The seam runs over the legs and the yoke up to the waistband, over
the band, and from its upper edge to the block's waist, as far as the style sits below it.
"""

from __future__ import annotations

import io
import itertools
import json
from dataclasses import replace
from functools import cache

import numpy as np
import pdfplumber
import pytest
from numpy.typing import NDArray

from drafting.report.block_figures import block_figures
from outputs.print.pdf import write_single_page_pdf
from styles.choice.style import STRAIGHT, Band
from styles.making.jeans import make_jeans
from styles.making.jeans_figures import jeans_figures
from tests.whole_jeans import block_of

MM = 25.4 / 72
SEWN, FOLDED = [4, 2.2], [9, 2, 0.6, 2, 0.6, 2]
CORNER_DEG = 20.0
"""Where a line turns by more than this at one place, one edge ends and the next begins."""

BELOW_WAIST = {"zaneta": 30, "theodoros": 30, "oksana": 45, "gulsah": 0}

Line = NDArray[np.float64]


def run_along(drawn: dict) -> Line:
    """Return a stroke of a PDF page as points in mm, 200 to each curve, shape (n, 2)."""
    t = np.linspace(0, 1, 201)[1:, None]
    points: list[Line] = []
    for operator, *ends in drawn["path"]:
        places = [np.array(end) * (MM, -MM) for end in ends]
        if operator == "c":
            a, (b, c, d) = points[-1], places
            points += list((1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t**2 * c + t**3 * d)
        else:
            points += places if places else [points[0]]
    return np.array(points)


def length(line: Line) -> float:
    return float(np.hypot(*np.diff(line, axis=0).T).sum())


def edges(ring: Line) -> list[Line]:
    """Return a closed line split where it turns sharply, starting at a corner."""
    ring = ring[np.hypot(*np.diff(ring, axis=0, prepend=ring[:1] - 1).T) > 1e-6]
    if np.hypot(*(ring[0] - ring[-1])) < 1e-3:
        ring = ring[:-1]
    ahead = np.roll(ring, -1, axis=0) - ring
    way = np.degrees(np.arctan2(ahead[:, 1], ahead[:, 0]))
    turn = np.abs((way - np.roll(way, 1) + 180) % 360 - 180)
    corners = np.flatnonzero(turn > CORNER_DEG)
    ring = np.roll(ring, -corners[0], axis=0)
    ends = [*(corners - corners[0]), len(ring)]
    closed = np.vstack([ring, ring[:1]])
    return [closed[a : b + 1] for a, b in itertools.pairwise(ends)]


@cache
def paper(wearer: str, band: Band) -> tuple[list[Line], list[float]]:
    """Return the sew lines and the lengths of the folds on the single page of a wearer's jeans, mm."""
    style = replace(STRAIGHT, band=band, below_waist=BELOW_WAIST[wearer])
    target = io.BytesIO()
    write_single_page_pdf(make_jeans(block_of(wearer), style).pattern, target)
    with pdfplumber.open(target) as pdf:
        drawn = [*pdf.pages[0].curves, *pdf.pages[0].rects, *pdf.pages[0].lines]
    sewn = [run_along(one) for one in drawn if one["dash"][0] == SEWN]
    folds = [length(run_along(one)) for one in drawn if one["dash"][0] == FOLDED]
    return sewn, folds


def upright(leg: Line) -> Line:
    """Return a leg with its hem below: it is widest, from hip to fork, in its upper half."""
    across, up = leg.T
    widest = up[[across.argmin(), across.argmax()]].mean()
    return leg if widest > (up.min() + up.max()) / 2 else -leg


def crotch_of_leg(leg: Line) -> tuple[float, list[Line]]:
    """Return the crotch seam of a leg: the edge that meets the inseam away from the hem; and all its edges.

    The hem is the edge that lies lowest; its neighbours are side seam and inseam, and the inseam ends lower.
    """
    found = edges(leg)
    hem = min(range(len(found)), key=lambda i: found[i][:, 1].max())
    before, after = found[hem - 1], found[(hem + 1) % len(found)]
    if before[0, 1] < after[-1, 1]:
        return length(found[hem - 2]), found
    return length(found[(hem + 2) % len(found)]), found


def on_paper(wearer: str, band: Band) -> float:
    """Return the crotch seam from the band of the front over the fork to the band of the back, mm."""
    sewn, _ = paper(wearer, band)
    legs = sorted(sewn, key=lambda line: np.prod(np.ptp(line, axis=0)))[-2:]
    front, back = sorted(map(upright, legs), key=lambda leg: -len(edges(leg)))
    assert (len(edges(front)), len(edges(back))) == (6, 5), "the pocket opening is one edge more"
    (front_crotch, _), (back_crotch, back_edges) = crotch_of_leg(front), crotch_of_leg(back)
    top = length(max(back_edges, key=lambda edge: edge[:, 1].mean()))
    others = [edges(line) for line in sewn if not any(line is leg for leg in legs)]
    (yoke,) = [own for own in others if len(own) == 4 and any(abs(length(edge) - top) < 0.5 for edge in own)]
    ends = sorted(length(edge) for edge in yoke)[:2]
    return front_crotch + back_crotch + ends[1]  # the yoke is deeper at the centre back than at the side


@pytest.mark.slow
@pytest.mark.parametrize("wearer", BELOW_WAIST)
def test_the_crotch_seam_on_paper_is_the_one_in_the_report(wearer: str) -> None:
    """The fold of the back band is the band's height; the front's is the same at the centre front."""
    _, folds = paper(wearer, Band.SHAPED)
    measured = on_paper(wearer, Band.SHAPED) + 2 * min(folds) + 2 * BELOW_WAIST[wearer]
    reported = block_figures(block_of(wearer))["crotch"]["total"] * 10
    assert measured == pytest.approx(reported, abs=0.5)


@pytest.mark.slow
@pytest.mark.parametrize("wearer", BELOW_WAIST)
def test_under_a_straight_band_the_seam_ends_where_the_band_is_sewn_on(wearer: str) -> None:
    measured = on_paper(wearer, Band.STRAIGHT) + 2 * BELOW_WAIST[wearer]
    assert measured == pytest.approx(block_figures(block_of(wearer))["crotch"]["total"] * 10, abs=0.5)


def test_the_figures_file_names_the_same_total() -> None:
    block = block_of("zaneta")
    figures = json.loads(json.dumps(jeans_figures(make_jeans(block, STRAIGHT))))
    assert figures["crotch"]["total"] == block_figures(block)["crotch"]["total"]
    assert figures["crotch"]["total"] == pytest.approx(71.5, abs=0.05), "71 measured and 0.5 of ease"
