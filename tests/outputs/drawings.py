"""SVG, DXF and the single PDF page read back by other libraries, in mm on the area of the layout, y up."""

from __future__ import annotations

import io
import re
from functools import cache

import ezdxf
import numpy as np
import pdfplumber
import svgelements
from ezdxf.document import Drawing
from ezdxf.entities import DXFGraphic
from shapely.geometry import LineString, Polygon

from drafting.pieces.pattern import Pattern
from outputs.canvas.typeface import Typeface
from outputs.packing.layout import StandingPiece
from outputs.paper.paper import MARGIN
from outputs.print.dxf import write_dxf
from outputs.print.pdf import write_single_page_pdf
from outputs.print.single_page import drawn_side_by_side, single_page
from outputs.print.svg import write_svg
from tests.outputs import samples
from tests.outputs.reassembly import CUT_WIDTH, MM, flat
from tests.whole_jeans import jeans_of

FINE = 0.0005
"""Gap of the polyline that stands for the source, mm: far below what is asked of any file."""
WHOLE = (("zaneta", "shaped band"), ("gulsah", "no allowances"))
"""Whole pairs to read back: with allowances, and with cut lines that are the curves of the pieces."""


@cache
def pattern_of(wearer: str, style: str) -> Pattern:
    """Return a whole pair, or the small sample for the style "sample"."""
    return samples.pattern() if style == "sample" else jeans_of(wearer, style).pattern


@cache
def source(wearer: str, style: str) -> tuple[StandingPiece, ...]:
    """Return the pieces as they stand on the area of the SVG and the DXF."""
    return drawn_side_by_side(pattern_of(wearer, style), Typeface()).layout.pieces


@cache
def packed_source(wearer: str, style: str) -> tuple[StandingPiece, ...]:
    """Return the pieces as they lie on the single page."""
    return single_page(pattern_of(wearer, style), Typeface()).layout.pieces


def written(write, pattern: Pattern) -> bytes:
    """Return the file that a writer makes of the pattern."""
    target = io.BytesIO()
    write(pattern, target)
    return target.getvalue()


@cache
def svg_of(wearer: str, style: str) -> bytes:
    """Return the SVG of a pair."""
    return written(write_svg, pattern_of(wearer, style))


@cache
def dxf_of(wearer: str, style: str) -> Drawing:
    """Return the DXF of a pair as ezdxf reads it."""
    return read_dxf(written(write_dxf, pattern_of(wearer, style)))


def read_dxf(data: bytes) -> Drawing:
    """Return a DXF as ezdxf reads it."""
    return ezdxf.read(io.StringIO(data.decode("ascii")))


@cache
def svg_paths(data: bytes) -> dict[str, list[svgelements.Path]]:
    """Return the paths of every innermost group, by its id, one unit to the millimetre."""
    found: dict[str, list[svgelements.Path]] = {}
    drawing = svgelements.SVG.parse(io.BytesIO(data), ppi=25.4)
    for group in drawing.select(lambda one: isinstance(one, svgelements.Group)):
        paths = [one for one in group if isinstance(one, svgelements.Path)]
        if paths:
            found[group.id] = paths
    return found


def page_height(data: bytes) -> float:
    """Return the height that the head of an SVG gives in mm."""
    return float(re.search(rb'height="([0-9.]+)mm"', data)[1])


def svg_lines(data: bytes, number: int, layer: str) -> list[LineString]:
    """Return the lines of one layer of a piece, curves at 60 places each."""
    height = page_height(data)
    named = re.compile(rf"piece-{number}-.*-{layer}|piece-{number}-{layer}")
    return [
        _area_line(path, height)
        for name, paths in svg_paths(data).items()
        if named.fullmatch(name)
        for path in paths
    ]


def _area_line(path: svgelements.Path, height: float) -> LineString:
    points = []
    for segment in path:
        curved = isinstance(segment, svgelements.CubicBezier)
        places = [segment.point(t) for t in np.linspace(0, 1, 61)[1:]] if curved else [segment.end]
        points += [(place.x - MARGIN, height - MARGIN - place.y) for place in places]
    return LineString(points)


def dxf_piece(drawing: Drawing, number: int) -> list[DXFGraphic]:
    """Return what a piece's block shows on the area."""
    return list(drawing.modelspace().query("INSERT")[number - 1].virtual_entities())


def on_layer(entities: list[DXFGraphic], layer: int, kind: str = "POLYLINE") -> list[DXFGraphic]:
    """Return the entities of one kind on one layer."""
    return [one for one in entities if one.dxf.layer == str(layer) and one.dxftype() == kind]


def dxf_line(polyline: DXFGraphic) -> LineString:
    """Return a polyline, the first point repeated when it is closed."""
    points = [(v.dxf.location.x, v.dxf.location.y) for v in polyline.vertices]
    return LineString([*points, points[0]] if polyline.is_closed else points)


@cache
def pdf_cut_lines(wearer: str, style: str) -> list[LineString]:
    """Return the closed cut lines of the single page that are no plain rectangles."""
    with pdfplumber.open(io.BytesIO(written(write_single_page_pdf, pattern_of(wearer, style)))) as pdf:
        (page,) = pdf.pages
        height = float(page.height) * MM - MARGIN
        drawn = [one for one in page.curves if one["dash"][0] == []]
        heavy = [one for one in drawn if abs(one["linewidth"] * MM - CUT_WIDTH) < 0.01]
        lines = [np.asarray(flat(one, height).coords) for one in heavy]
    return [LineString(line - [MARGIN, 0]) for line in lines]


def sewn(placed: StandingPiece) -> Polygon:
    """Return the sew line of the source, finer than any file."""
    return Polygon(placed.piece.outline(FINE))


def cut(placed: StandingPiece) -> Polygon:
    """Return the cut line of the source, from its curves where nothing is added to them."""
    added = any(edge.allowance for edge in placed.piece.edges)
    return placed.line.polygon if added else sewn(placed)
