"""A plan of the cloth: everything is cut, nothing overlaps, and the length is never less than can be."""

from __future__ import annotations

import json
from collections import Counter
from functools import cache
from itertools import combinations
from pathlib import Path

import pytest
import shapely
from shapely.affinity import rotate, scale, translate

from drafting.base.errors import DraftRefused
from drafting.base.units import Unit, format_length
from drafting.pieces.pieces import Finish, Material
from outputs.cloth.cut_pieces import CLOTHS, Laying, pieces_to_cut
from outputs.cloth.laid_cloth import END, GAP, SELVEDGE, ClothOnTable, LaidCloth
from outputs.cloth.packing import lay
from outputs.cloth.plan import ClothPlan, make_plan
from outputs.cloth.plan_file import plan_text, read_plan
from outputs.files.text_file import read_file
from outputs.packing.layout import standing
from tests.whole_jeans import DEMO_WEARERS, UNEVEN, jeans_of

WAYS = {
    "open": {"folded": False, "one_way": False},
    "open, one way": {"folded": False, "one_way": True},
    "folded": {"folded": True, "one_way": False},
    "folded, one way": {"folded": True, "one_way": True},
}
SAG = 0.1
"""Outlines are compared within this, mm."""


@cache
def plan_of(wearers: tuple[str, ...], way: str) -> ClothPlan:
    lies = ClothOnTable(width=1500, **WAYS[way])
    patterns = [jeans_of(wearer, "shaped band").pattern for wearer in wearers]
    return make_plan(patterns, dict.fromkeys(CLOTHS, lies), show=lambda mm: format_length(mm, Unit.CM))


PLANS = [
    ((DEMO_WEARERS[0],), "open"),
    *(
        pytest.param(wearers, way, marks=pytest.mark.slow)
        for wearers, way in (
            ((DEMO_WEARERS[1],), "open"),
            ((DEMO_WEARERS[0],), "folded"),
            ((DEMO_WEARERS[1],), "open, one way"),
            ((DEMO_WEARERS[2],), "folded, one way"),
            ((UNEVEN,), "folded"),
            ((DEMO_WEARERS[3], DEMO_WEARERS[1]), "folded"),
        )
    ),
]
plans = pytest.mark.parametrize(("wearers", "way"), PLANS)


@pytest.mark.slow
@plans
def test_pieces_lie_apart_on_the_cloth_and_off_its_borders(wearers: tuple[str, ...], way: str) -> None:
    for laid in plan_of(wearers, way).cloths:
        shapes = [each.shape for each in laid.laid]
        for one, other in combinations(shapes, 2):
            assert one.distance(other) >= GAP - 0.03
        left, bottom, right, top = shapely.total_bounds(shapes)
        assert left >= (0 if laid.cloth.folded else SELVEDGE) - 0.01
        assert right <= laid.cloth.lying - SELVEDGE + 0.01
        assert bottom >= END - 0.01 and top == pytest.approx(laid.length - END)
        assert not list(laid.faults())


@pytest.mark.slow
@plans
def test_no_plan_is_shorter_than_its_bounds_nor_far_longer(wearers: tuple[str, ...], way: str) -> None:
    for laid in plan_of(wearers, way).cloths:
        tallest = max(each.shape.bounds[3] - each.shape.bounds[1] for each in laid.laid)
        area = sum(each.shape.area for each in laid.laid)
        least = max(tallest, area / laid.cloth.lying)
        assert laid.length >= max(laid.least_by_area, laid.least_by_longest) - 0.02 >= least
        if laid.material is Material.DENIM and way == "open":
            # three legs of a full figure do not lie beside each other
            assert laid.length < 1.7 * max(laid.least_by_area, laid.least_by_longest), "1.15 to 1.64 measured"


@plans
def test_the_grain_of_every_piece_runs_along_the_cloth(wearers: tuple[str, ...], way: str) -> None:
    for laid in plan_of(wearers, way).cloths:
        for each in laid.laid:
            (x0, y0), *_, (x1, y1) = each.grain.coords
            assert x0 == pytest.approx(x1, abs=1e-6)
            assert (y1 > y0) is (not each.turned)
            assert shapely.dwithin(each.shape, each.grain, 1e-6)
            assert not (each.turned and laid.cloth.one_way)


@plans
def test_every_piece_is_cut_the_right_number_of_times(wearers: tuple[str, ...], way: str) -> None:
    plan = plan_of(wearers, way)
    gives = {Laying.PAIR: 2}
    cut: Counter[tuple[int, str]] = Counter()
    for laid in plan.cloths:
        for each in laid.laid:
            cut[each.piece.wearer, each.piece.name] += gives.get(each.piece.lie, 1)
    needed = {
        (wearer, piece.name): piece.cutting.quantity
        for wearer, pattern in enumerate(plan.patterns, start=1)
        for piece in pattern.pieces
        if piece.cutting.material is not Material.TEMPLATE
    }
    assert dict(cut) == needed


def test_of_a_pair_on_open_cloth_one_is_the_mirror_image_of_the_other() -> None:
    pattern = jeans_of(DEMO_WEARERS[0], "shaped band").pattern
    pieces = pieces_to_cut([pattern], Material.DENIM, folded=False)
    pairs = {p.name: p.cutting.quantity for p in pattern.pieces if p.cutting.pairs}
    for name, quantity in pairs.items():
        of_name = [piece for piece in pieces if piece.name == name]
        up, down = ([p for p in of_name if p.lie is lie] for lie in (Laying.UP, Laying.FLIPPED))
        assert len(up) == len(down) and len(up) + len(down) == (quantity if of_name else 0)
        for one, other in zip(up, down, strict=True):
            image = scale(one.shape, -1, 1, origin=(one.width / 2, 0))
            assert image.symmetric_difference(other.shape).area < SAG
    legs = [piece.shape for piece in pieces if piece.name == "back leg"]
    assert legs[0].symmetric_difference(legs[1]).area > 1000, "and no leg is its own mirror image"
    assert rotate(legs[0], 180).symmetric_difference(legs[1]).area > 1000


def test_a_piece_for_the_fold_is_whole_on_open_cloth_and_half_along_the_fold_on_folded() -> None:
    pattern = jeans_of(DEMO_WEARERS[0], "shaped band").pattern
    halves = {
        p.piece.name: p for p in standing(pattern) if any(e.finish is Finish.FOLD for e in p.piece.edges)
    }
    whole = {p.name: p for p in pieces_to_cut([pattern], Material.DENIM, folded=False) if p.name in halves}
    assert set(whole) == {"back waistband", "fly shield (right front)"}
    for name, piece in whole.items():
        assert piece.lie is Laying.UNFOLDED
        assert piece.shape.area == pytest.approx(2 * halves[name].line.polygon.area, rel=1e-4)
        image = scale(piece.shape, -1, 1, origin=(piece.width / 2, 0))
        assert image.symmetric_difference(piece.shape).area < 1
    denim = plan_of((DEMO_WEARERS[0],), "folded").cloths[0]
    on_fold = [each for each in denim.laid if each.piece.lie is Laying.ON_FOLD]
    assert Counter(each.piece.name for each in on_fold) == {
        "back waistband": 2,
        "fly shield (right front)": 1,
    }
    for each in on_fold:
        fold = shapely.box(-1, 0, 0.01, denim.length)
        touching = each.shape.boundary.intersection(fold).length
        edge = next(e for e in halves[each.piece.name].piece.edges if e.finish is Finish.FOLD)
        assert touching >= edge.length - 0.1


def test_turned_pieces_are_turned_by_exactly_half_a_turn() -> None:
    for laid in plan_of((DEMO_WEARERS[0],), "open").cloths:
        for each in laid.laid:
            turned = rotate(each.piece.shape, 180) if each.turned else each.piece.shape
            left, bottom, _, _ = turned.bounds
            expected = translate(turned, each.x - left, each.y - bottom)
            assert expected.symmetric_difference(each.shape).area < SAG


def test_the_same_pieces_give_the_same_plan() -> None:
    pieces = pieces_to_cut([jeans_of(DEMO_WEARERS[1], "shaped band").pattern], Material.DENIM, folded=True)
    cloth = ClothOnTable(width=1400, folded=True)
    one, other = ([(each.x, each.y, each.turned) for each in lay(pieces, cloth)] for _ in range(2))
    assert one == other


def test_cloth_too_narrow_for_a_piece_is_refused_with_the_width_that_would_do() -> None:
    pattern = jeans_of(DEMO_WEARERS[0], "shaped band").pattern
    lies = dict.fromkeys(CLOTHS, ClothOnTable(width=600, folded=True))
    with pytest.raises(DraftRefused) as refusal:
        make_plan([pattern], lies, show=lambda mm: format_length(mm, Unit.CM))
    problem, *others = refusal.value.problems
    assert {other.key for other in others} <= {"--pocketing-width", "--interfacing-width"}
    assert problem.key == "--width" and problem.value == "60.0 cm"
    assert "2 back leg (both layers) is 51.9 cm wide" in problem.message
    assert problem.plausible == "105.8 cm and wider", "twice 51.9 and 1 off the selvedges"


def test_a_plan_file_gives_the_same_plan_again(tmp_path: Path) -> None:
    plan = plan_of((DEMO_WEARERS[0],), "folded")
    path = tmp_path / "cloth-plan.json"
    path.write_text(plan_text(plan, Unit.CM), encoding="utf-8")
    again = read_plan(read_file(path), plan.patterns)
    assert plan_text(again, Unit.CM) == plan_text(plan, Unit.CM)
    for one, other in zip(plan.cloths, again.cloths, strict=True):
        assert [each.shape.bounds for each in one.laid] == [each.shape.bounds for each in other.laid]


def changed(plan: ClothPlan, path: Path, change) -> None:
    content = json.loads(plan_text(plan, Unit.CM))
    change(content)
    path.write_text(json.dumps(content), encoding="utf-8")


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (lambda c: c["cloths"][0]["pieces"].pop(0), "denim: the plan lacks 1 of 1 front leg, wearer 1."),
        (
            lambda c: c["cloths"][0]["pieces"].append(c["cloths"][0]["pieces"][0]),
            "denim: the plan has 1 too many of 1 front leg, wearer 1.",
        ),
        (lambda c: c["cloths"][0]["pieces"][0].update(x=-5), "1 front leg (both layers) lies beyond"),
        (lambda c: c["cloths"][0]["pieces"][0].update(c["cloths"][0]["pieces"][1] | {
            key: c["cloths"][0]["pieces"][0][key] for key in ("number", "piece", "lies")
        }), "are less than 3 mm apart"),
        (lambda c: c["cloths"][0].update(width=float("inf")), "This is no cloth plan"),
        (lambda c: c["cloths"][0]["pieces"][0].update(y=float("nan")), "This is no cloth plan"),
        (lambda c: c.pop("cloths"), "This is no cloth plan"),
    ],
)  # fmt: skip
def test_a_plan_file_that_does_not_fit_the_pieces_is_refused(change, told: str, tmp_path: Path) -> None:
    plan = plan_of((DEMO_WEARERS[0],), "folded")
    path = tmp_path / "plan.json"
    changed(plan, path, change)
    with pytest.raises(DraftRefused) as refusal:
        read_plan(read_file(path), plan.patterns)
    assert told in str(refusal.value) and str(path) in str(refusal.value)


def test_a_plan_of_other_measurements_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "plan.json"
    path.write_text(plan_text(plan_of((DEMO_WEARERS[1],), "open"), Unit.CM), encoding="utf-8")
    with pytest.raises(DraftRefused, match="not those of this plan any more"):
        read_plan(read_file(path), [jeans_of(DEMO_WEARERS[0], "shaped band").pattern])


def test_share_and_area_of_two_squares_are_what_one_reckons_in_the_head() -> None:
    pieces = pieces_to_cut(
        [jeans_of(DEMO_WEARERS[0], "shaped band").pattern], Material.POCKETING, folded=True
    )
    cloth = ClothOnTable(width=1000, folded=True)
    laid = LaidCloth(Material.POCKETING, cloth, tuple(lay(pieces, cloth)))
    area = sum(piece.shape.area for piece in pieces)
    assert laid.share_used == pytest.approx(2 * area / (1000 * laid.length))
    assert laid.least_by_area == pytest.approx(area / (500 - SELVEDGE) + 2 * END)


def test_folded_or_open_the_same_area_becomes_pieces() -> None:
    pattern, areas = jeans_of(DEMO_WEARERS[0], "shaped band").pattern, []
    for folded in (False, True):
        cloth = ClothOnTable(width=1500, folded=folded)
        pieces = pieces_to_cut([pattern], Material.DENIM, folded=folded)
        laid = LaidCloth(Material.DENIM, cloth, tuple(lay(pieces, cloth)))
        areas.append(laid.share_used * 1500 * laid.length)
    assert areas[0] == pytest.approx(areas[1], rel=1e-4)


@pytest.mark.slow
def test_a_longer_search_is_never_worse_and_keeps_the_gap() -> None:
    pytest.importorskip("spyrrow", reason="the longer search is an extra")
    from outputs.cloth.longer_search import search

    for wearer, way in ((DEMO_WEARERS[1], "open, one way"), (DEMO_WEARERS[0], "folded")):
        start = plan_of((wearer,), way).cloths[0]
        better = search(start, seconds=1)
        assert better.length <= start.length
        assert not list(better.faults())
        assert [each.piece for each in better.laid] == [each.piece for each in start.laid]
