"""Labels beside points."""

from __future__ import annotations

from itertools import combinations

from shapely.geometry import LineString, box
from shapely.geometry import Point as Dot

from drafting.geometry.points import Point
from outputs.canvas.canvas import Recording
from outputs.canvas.point_labels import PointLabel, draw_point_labels
from outputs.canvas.typeface import Typeface


def test_crowded_labels_keep_off_each_other_and_off_the_lines() -> None:
    sheet = Recording(Typeface())
    lines = [LineString([(0, y), (60, y)]) for y in (0, 4)] + [LineString([(20, -20), (20, 20)])]
    labels = [PointLabel(str(10 + k), Point(16 + 2 * k, 0), 2.6) for k in range(5)]
    assert draw_point_labels(sheet, labels, lines) == 0
    assert [text.string for text in sheet.texts] == ["10", "11", "12", "13", "14"]
    boxes = [text.box for text in sheet.texts]
    assert not any(one.intersects(other) for one, other in combinations(boxes, 2))
    assert not any(box.intersects(line) for box in boxes for line in lines)


def test_a_label_that_stands_away_has_a_leader() -> None:
    sheet = Recording(Typeface())
    walls = [LineString([(x, -4), (x, 4)]) for x in (-3, -2, -1, 1, 2, 3)]
    draw_point_labels(sheet, [PointLabel("7", Point(0, 0), 2.6)], walls)
    assert len(sheet.strokes) == 1


def test_a_label_without_any_room_is_counted_and_still_written() -> None:
    sheet = Recording(Typeface())
    hatched = [LineString([(-40, y / 2), (40, y / 2)]) for y in range(-80, 81)]
    assert draw_point_labels(sheet, [PointLabel("7", Point(0, 0), 2.6)], hatched) == 1
    assert len(sheet.texts) == 1


def test_no_label_without_a_leader_stands_nearer_another_point_than_its_own() -> None:
    sheet = Recording(Typeface())
    # The legs of a narrow dart and its middle: three points on two millimetres
    points = {"57": Point(1, -0.4), "59": Point(2, 0), "60": Point(0, 0)}
    wall = LineString([(-20, -0.8), (20, -0.8)])
    labels = [PointLabel(name, at, 2.9) for name, at in points.items()]
    assert draw_point_labels(sheet, labels, [wall]) == 0
    leaders = {tuple(stroke.outline.flatten()[-1]) for stroke in sheet.strokes}
    for text in sheet.texts:
        far = {name: text.box.distance(Dot(tuple(at))) for name, at in points.items()}
        led = any(text.box.distance(Dot(end)) < 0.01 for end in leaders)
        assert led or far[text.string] <= min(far.values()) + 0.1, text.string


def test_labels_stay_within_the_place_that_is_given() -> None:
    sheet = Recording(Typeface())
    within = box(0, 0, 30, 20)
    corners = [PointLabel("23", Point(x, y), 2.9) for x in (1, 29) for y in (1, 19)]
    assert draw_point_labels(sheet, corners, [], within=within) == 0
    assert all(within.covers(text.box) for text in sheet.texts)
