"""The lines round a piece: a cut line that runs along a bare edge keeps the curves of that edge."""

from dataclasses import replace

import pytest
from shapely.geometry import Polygon

from drafting.geometry.paths import Path
from drafting.pieces.allowance import cut_line
from drafting.pieces.pieces import NotchKind, Piece
from outputs.canvas.canvas import Polyline, Role
from outputs.print.piece_outlines import outlines
from tests.outputs import samples

LEG = samples.leg("leg", seat=30, kind=NotchKind.SINGLE)


def bare(*names: str) -> Piece:
    """Return the leg without the allowance of some edges."""
    return LEG.with_edges(*(replace(LEG.edge(name), allowance=0) for name in names))


def cut_of(piece: Piece):
    (line,) = [outline for outline, role in outlines(piece, cut_line(piece)) if role is Role.CUT]
    return line


def test_a_piece_without_allowances_is_cut_along_its_own_curves():
    cut = cut_of(bare("hem", "inseam", "crotch", "waist", "side"))
    assert isinstance(cut, Path)
    assert cut.curves == tuple(curve for edge in LEG.edges for curve in edge.path.curves)


@pytest.mark.parametrize("names", [("side",), ("waist",), ("crotch", "waist"), ("inseam", "side")], ids=str)
def test_a_bare_edge_among_others_keeps_its_curves_and_the_cut_line_its_shape(names: tuple[str, ...]):
    piece = bare(*names)
    cut, polygon = cut_of(piece), cut_line(piece).polygon
    assert isinstance(cut, Path)
    assert all(curve in cut.curves for name in names for curve in LEG.edge(name).path.curves)
    assert (cut.end - cut.start).length < 1e-6
    assert Polygon(cut.flatten()).hausdorff_distance(polygon) < 0.02
    assert Polygon(cut.flatten()).area == pytest.approx(polygon.area, rel=1e-5)


def test_a_cut_line_with_allowances_all_round_is_one_ring_of_points():
    cut = cut_of(LEG)
    assert isinstance(cut, Polyline) and cut.closed


def test_a_bare_curve_between_folds_stays_a_curve():
    pocket = samples.pocket()
    cut = cut_of(pocket)
    assert isinstance(cut, Path)
    assert all(curve in cut.curves for curve in pocket.edge("top").path.curves)
    assert cut.length == pytest.approx(120 + 160 + pocket.edge("top").length)


def test_a_fold_reaches_through_the_allowances_beside_it_and_closes_the_cut_line():
    pocket = samples.pocket()
    wide = [replace(pocket.edge(name), allowance=10) for name in ("bottom", "top")]
    drawn = list(outlines(pocket.with_edges(*wide), cut_line(pocket.with_edges(*wide))))
    (fold,) = [outline for outline, role in drawn if role is Role.FOLD]
    (cut,) = [outline for outline, role in drawn if role is Role.CUT]
    ends = fold.flatten()
    assert ends[1].tolist() == pytest.approx([0, -10])  # the bottom lies at 0
    assert ends[0, 1] > 160 + 10  # the top slopes, so its allowance is longer along the fold
    assert ends[::-1].tolist() == [pytest.approx(end) for end in cut.flatten()[[0, -1]].tolist()]
