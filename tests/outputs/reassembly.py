"""A tiled PDF put together again from the file alone, as a reader with tape and scissors would."""

from __future__ import annotations

import re
from dataclasses import dataclass

import numpy as np
import pdfplumber
import shapely
from shapely.geometry import LineString, box

from outputs.paper.paper import PAPERS

MM = 25.4 / 72
DOTTED = [0.1, 1.3]
DASHED = [4, 2.2]
CUT_WIDTH = 0.5
HOME = {name: paper for name, paper in PAPERS.items() if not paper.is_large}
"""What home printers take."""


@dataclass
class Sheet:
    """One tile as read back, in millimetres from the lower left corner of its page."""

    row: str
    column: int
    joins: dict[str, float]
    size: tuple[float, float]
    cut: list[LineString]
    sew: list[LineString]


def bars(page) -> list[float]:
    """Return the lengths in mm of all hairlines of a page that carry ticks, upright ones negative."""
    hair = [one for one in page.lines if abs(one["linewidth"] * MM - 0.15) < 0.01]
    return [(one["width"] - one["height"]) * MM for one in hair if max(one["width"], one["height"]) * MM > 10]


def sheets(file) -> list[Sheet]:
    """Return the tiles of a PDF."""
    with pdfplumber.open(file) as pdf:
        return tiles_among(pdf.pages)


def tiles_among(pages) -> list[Sheet]:
    """Return the tiles: pages that say in words which row and column they are."""
    found = []
    for page in pages:
        place = re.search(r"row ([A-Z]+), column (\d+)", page.extract_text())
        if place:
            found.append(_sheet(page, place[1], int(place[2])))
    return found


def _sheet(page, row: str, column: int) -> Sheet:
    width, height = float(page.width) * MM, float(page.height) * MM
    joins = {}
    for line in page.lines:
        if line["dash"][0] == DOTTED:
            if line["width"] < 1e-6:
                x = line["x0"] * MM
                joins["left" if x < width / 2 else "right"] = x
            else:
                y = line["y0"] * MM
                joins["below" if y < height / 2 else "above"] = y
    drawn = [*page.curves, *page.rects]  # a notch is a single line
    cut = [d for d in drawn if d["dash"][0] == [] and abs(d["linewidth"] * MM - CUT_WIDTH) < 0.03]
    sew = [d for d in drawn if d["dash"][0] == DASHED]
    return Sheet(
        row, column, joins, (width, height), [flat(c, height) for c in cut], [flat(s, height) for s in sew]
    )


def flat(drawn, height: float) -> LineString:
    """Return a PDF path as a line: curves from their control points, at 60 places each."""
    t = np.linspace(0, 1, 61)[1:, None]
    points = []
    for operator, *ends in drawn["path"]:
        ends = [np.array([x * MM, height - y * MM]) for x, y in ends]
        if operator == "c":
            a, (b, c, d) = points[-1], ends
            points += list((1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t**2 * c + t**3 * d)
        elif operator == "h":
            points.append(points[0])
        else:
            points += ends
    return LineString(points)


def places(tiles: list[Sheet]) -> dict[tuple[str, int], np.ndarray]:
    """Return where each sheet's lower left corner comes to lie when the joins are laid on each other."""
    by_place = {(s.row, s.column): s for s in tiles}
    rows = sorted({s.row for s in tiles})
    found = {(tiles[0].row, tiles[0].column): np.zeros(2)}
    waiting = list(found)
    while waiting:
        row, column = waiting.pop()
        here, at = by_place[row, column], found[row, column]
        index = rows.index(row)
        steps = {
            "right": ((row, column + 1), "left", 0),
            "left": ((row, column - 1), "right", 0),
            "above": ((rows[index - 1] if index else "", column), "below", 1),
            "below": (([*rows, ""][index + 1], column), "above", 1),
        }
        for side, (other, facing, axis) in steps.items():
            if side in here.joins and other not in found:
                found[other] = at.copy()
                found[other][axis] += here.joins[side] - by_place[other].joins[facing]
                waiting.append(other)
    return found


def window(sheet: Sheet) -> tuple[float, float, float, float]:
    """Return the part of a sheet inside its joins, or inside the 10 mm border where nothing joins."""
    width, height = sheet.size
    return (
        sheet.joins.get("left", 10.0),
        sheet.joins.get("below", 10.0),
        sheet.joins.get("right", width - 10.0),
        sheet.joins.get("above", height - 10.0),
    )


def assembled(tiles: list[Sheet], kind: str) -> shapely.Geometry:
    """Return the cut or the sew lines of all sheets, each seen through its window, taped together."""
    where = places(tiles)
    parts = []
    for sheet in tiles:
        seen = box(*window(sheet))
        dx, dy = where[sheet.row, sheet.column]
        for line in getattr(sheet, kind):
            parts.append(shapely.affinity.translate(line.intersection(seen), dx, dy))
    return shapely.union_all(parts)
