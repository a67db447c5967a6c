"""The area of the pieces split into sheets of paper."""

from itertools import combinations, pairwise

import numpy as np
import pytest
from shapely.geometry import MultiPoint, box

from outputs.packing.layout import GAP, standing
from outputs.paper.paper import A4, LETTER, PAPERS, Paper
from outputs.sheets.tiling import SheetSide, Tile, TileFormat, Tiling, tiled
from tests.outputs import samples


@pytest.fixture(scope="module", params=sorted(PAPERS))
def tiling(request) -> Tiling:
    return tiled(samples.pattern(), PAPERS[request.param])


def test_paper_sizes_are_those_of_iso_216_and_ansi():
    sizes = {name: (paper.width, paper.height) for name, paper in PAPERS.items()}
    assert sizes["a4"] == (210, 297)
    assert sizes["a3"] == (297, 420)
    assert sizes["letter"] == pytest.approx((215.9, 279.4))
    assert sizes["legal"] == pytest.approx((215.9, 355.6))


def test_the_page_for_either_paper_fits_on_both():
    either = PAPERS["either"]
    assert either.width == A4.width
    assert either.height == LETTER.height


# What home printers' dead borders make of "fit to page": plain division, checked by hand.
@pytest.mark.parametrize(
    ("page", "sheet", "border", "factor"),
    [
        (A4, A4, 5, 200 / 210),
        (A4, LETTER, 5, 269.4 / 297),
        (LETTER, A4, 5, 200 / 215.9),
        (A4, A4, 3, 204 / 210),
    ],
)
def test_fit_to_page_shrinks_by_the_tighter_side(page: Paper, sheet: Paper, border: float, factor: float):
    assert page.fit_factor(sheet, border) == pytest.approx(factor)


def test_rows_are_lettered_without_i_and_o():
    names = [Tile(row, 0).row_name for row in range(26)]
    assert names[:9] == list("ABCDEFGHJ")
    assert not {"I", "O"} & set(names)
    assert names[-3:] == ["Z", "AA", "AB"]


def test_a_tile_says_where_it_is():
    assert Tile(1, 2).name == "B3"
    assert Tile(1, 2).words == "row B, column 3"


def test_an_a4_window_is_180_by_267_mm():
    form = TileFormat(A4)
    assert (form.width, form.height) == (180, 267)
    assert (form.left, form.right, form.bottom, form.top) == (18, 198, 18, 285)


@pytest.mark.slow
def test_windows_meet_without_gap_or_overlap(tiling: Tiling):
    for tile in tiling.places:
        left, bottom, right, top = tiling.window(tile)
        beside = tiling.window(Tile(tile.row, tile.column + 1))
        below = tiling.window(Tile(tile.row + 1, tile.column))
        assert beside[0] == pytest.approx(right)
        assert below[3] == pytest.approx(bottom)
        assert (right - left, top - bottom) == pytest.approx((tiling.format.width, tiling.format.height))


@pytest.mark.slow
def test_every_point_of_every_cut_line_lies_on_a_printed_sheet(tiling: Tiling):
    printed = [box(*tiling.window(tile)) for tile in tiling.tiles]
    for piece in tiling.layout.pieces:
        left_over = MultiPoint(piece.cut)
        for window in printed:
            left_over = left_over.difference(window)
        assert left_over.is_empty


def test_sheets_that_no_piece_touches_are_left_out(tiling: Tiling):
    empty = set(tiling.places) - set(tiling.tiles)
    assert all(
        not shape.intersects(box(*tiling.window(tile))) for tile in empty for shape in tiling.layout.shapes
    )
    assert all(
        any(shape.distance(box(*tiling.window(tile))) < 1 for shape in tiling.layout.shapes)
        for tile in tiling.tiles
    )


def test_some_places_of_the_sample_are_empty():
    tiling = tiled(samples.pattern(), PAPERS["legal"])
    assert len(tiling.tiles) < tiling.rows * tiling.columns


def test_neighbours_agree_on_their_join(tiling: Tiling):
    for tile in tiling.tiles:
        right, above = tiling.neighbour(tile, SheetSide.RIGHT), tiling.neighbour(tile, SheetSide.ABOVE)
        if right:
            assert tiling.join(tile, SheetSide.RIGHT) == tiling.join(right, SheetSide.LEFT)
        if above:
            assert tiling.join(tile, SheetSide.ABOVE) == tiling.join(above, SheetSide.BELOW)


def test_nothing_joins_where_no_sheet_is_printed():
    tiling = tiled(samples.pattern(), A4)
    assert tiling.join(Tile(0, 0), SheetSide.ABOVE) is None
    assert tiling.join(Tile(0, 0), SheetSide.LEFT) is None


def test_every_grain_is_upright(tiling: Tiling):
    for placed in tiling.layout.pieces:
        way = placed.piece.grain.end - placed.piece.grain.start
        assert way.x == pytest.approx(0, abs=1e-9)


def test_pieces_lie_apart(tiling: Tiling):
    for one, other in combinations(tiling.layout.shapes, 2):
        assert one.distance(other) >= GAP - 1e-6


def test_turning_and_moving_keeps_the_cut_line_round_its_piece():
    for before, placed in zip(samples.pattern().pieces, standing(samples.pattern()), strict=True):
        moved = placed.at(100, 50)
        assert moved.cut.min(axis=0) == pytest.approx([100, 50])
        assert moved.piece.polygon.area == pytest.approx(before.polygon.area)
        assert moved.line.polygon.buffer(1e-6).covers(moved.piece.polygon)


def test_pieces_keep_their_numbers_in_the_order_of_the_pattern():
    layout = tiled(samples.pattern(), A4).layout
    assert [placed.number for placed in layout.pieces] == [1, 2, 3, 4]
    assert [placed.piece.name for placed in layout.pieces] == [p.name for p in samples.pattern().pieces]
    assert all(np.isfinite(placed.cut).all() for placed in layout.pieces)
    assert all(a.number < b.number for a, b in pairwise(layout.pieces))
