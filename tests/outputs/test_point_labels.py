"""Labels beside points."""

from __future__ import annotations

from itertools import combinations

from shapely.geometry import LineString

from drafting.points import Point
from outputs.canvas import Recording
from outputs.pdf_fonts import Typeface
from outputs.point_labels import PointLabel, draw_point_labels


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
