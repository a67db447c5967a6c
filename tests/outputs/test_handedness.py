"""A pattern in three formats is the same way round in all: a right front stays a right front."""

import pytest
from shapely import affinity
from shapely.geometry import LinearRing, LineString, Polygon

from outputs.packing.layout import StandingPiece
from outputs.print.dxf import DxfLayer
from tests.outputs.drawings import (
    WHOLE,
    cut,
    dxf_line,
    dxf_of,
    dxf_piece,
    on_layer,
    packed_source,
    pdf_cut_lines,
    source,
    svg_lines,
    svg_of,
)

LOPSIDED = ("front leg", "fly facing (left front)", "back yoke", "pocket facing")
"""Pieces that no one could take for their own mirror image."""


def source_of(name: str, form: str) -> StandingPiece:
    """Return a piece as it lies in one of the formats."""
    pieces = (packed_source if form == "pdf" else source)(*WHOLE[0])
    return next(one for one in pieces if one.piece.name == name)


def read_back(name: str, form: str) -> LineString:
    """Return the cut line as one of the formats has it, in the order of the file."""
    placed = source_of(name, form)
    if form == "svg":
        (line,) = svg_lines(svg_of(*WHOLE[0]), placed.number, "cut-line")
    elif form == "dxf":
        (outline,) = on_layer(dxf_piece(dxf_of(*WHOLE[0]), placed.number), DxfLayer.CUT)
        line = dxf_line(outline)
    else:
        lines = pdf_cut_lines(*WHOLE[0])
        line = min(lines, key=lambda one: one.centroid.distance(cut(placed).centroid))
    return line


@pytest.mark.slow
@pytest.mark.parametrize("form", ["pdf", "svg", "dxf"])
@pytest.mark.parametrize("name", LOPSIDED)
def test_a_lopsided_piece_has_the_turn_and_the_shape_of_its_source_and_not_of_the_mirror(
    name: str, form: str
):
    read, true = read_back(name, form), cut(source_of(name, form))
    mirrored = affinity.scale(true, xfact=-1, origin=true.envelope.centroid)
    assert read.is_ring and LinearRing(read.coords).is_ccw
    assert true.exterior.is_ccw
    assert Polygon(read).hausdorff_distance(true) < 0.1
    assert Polygon(read).hausdorff_distance(mirrored) > 5


@pytest.mark.slow
@pytest.mark.parametrize("form", ["pdf", "svg", "dxf"])
def test_the_right_front_has_its_fork_on_the_right(form: str):
    """The front is drawn as the right one seen from outside, the fork to the right (DEVELOPERS.md)."""
    grain, line = source_of("front leg", form).piece.grain, read_back("front leg", form)
    turned = grain.end.y < grain.start.y
    points = list((affinity.rotate(line, 180) if turned else line).coords)
    hem_left, hem_right = sorted(sorted(points, key=lambda p: p[1])[:2])
    left, right = min(points), max(points)
    top = max(p[1] for p in points)
    assert right[0] - hem_right[0] > hem_left[0] - left[0]
    assert hem_left[1] + 500 < right[1] < top - 150
