"""Two versions of the block over each other: the old one in thin dashes, the new one in full lines."""

from __future__ import annotations

from collections.abc import Mapping
from typing import BinaryIO

from matplotlib.axes import Axes

from drafting.base.units import Unit
from drafting.block.block import Half
from drafting.block.point_names import Drawn
from drafting.block.waist_line import BlockPanel
from drafting.body.measurements import Side
from drafting.body.words import of_side
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.report.moves import SIDES, EdgeKey, LengthKey, PointKey, halves_of
from outputs.canvas.picture import add_frame, lines, picture, spot, stroke, write, write_title
from outputs.compare.versions import Move, TwoVersions
from outputs.compare.words import far_words, letter, moved_enough
from outputs.fit.block_picture import Move as Place
from outputs.fit.block_picture import Pair, draw_caption, draw_levels, draw_outline, place_pairs
from outputs.words.print_report import PrintReport

_OLD = (0, (5, 2.5))
_GAP = 190.0
"""Between the side seams of back and front, mm: room for the moves of both."""
_OVER = 90.0
"""The level lines reach this far beyond the forks, mm: past the words beside a point."""
_HEIGHT = 10.5
"""Of the picture, inches."""
_TITLE, _CAPTION, _LABELS, _LEFT = 0.85, 0.95, 1.05, 0.25
"""Room for text above, below, right and left of the block, inches."""
_BESIDE = 12.0
"""From a point to the words about it, mm."""
_NAMED = {
    Drawn.SIDE_AT_WAIST: "left", Drawn.HIP_AT_SIDE: "left", Drawn.KNEE_AT_SIDE: "left",
    Drawn.HEM_AT_SIDE: "left", Drawn.FORK: "below", Drawn.KNEE_AT_INSEAM: "right",
    Drawn.HEM_AT_INSEAM: "right", Drawn.CENTRE_AT_WAIST: "above",
}  # fmt: skip
_AT_KNEE = (Drawn.KNEE_AT_SIDE, Drawn.KNEE_AT_INSEAM)
"""The corners whose moves are written, and on which side of the point where the fork is to the right."""


def write_versions(versions: TwoVersions, target: BinaryIO) -> PrintReport:
    """Write both blocks over each other on the same floor and plumb line, as a PNG 1575 pixels high."""
    old, new = (jeans.block for jeans in versions.jeans)
    count = max(len(old.halves), len(new.halves))
    pairs = place_pairs([halves_of(old, count), halves_of(new, count)], gap=_GAP, over=_OVER)
    left, right = pairs[0].left, pairs[-1].right
    heights = [p.y for pair in pairs for p in pair.places()]
    low, high = min(heights), max(heights)
    scale = (_HEIGHT - _TITLE - _CAPTION) / (high - low)
    before = _LABELS if count > 1 else _LEFT
    width = before + (right - left) * scale + _LABELS
    moves = {move.key: move for move in versions.points}
    unit = versions.new.unit
    with picture(target, width=width, height=_HEIGHT, description=_described(versions)) as figure:
        axes = add_frame(
            figure,
            x=(left - before / scale, right + _LABELS / scale),
            y=(low - _CAPTION / scale, high + _TITLE / scale),
        )
        for side, pair in zip(SIDES if count > 1 else (None,), pairs, strict=True):
            draw_levels(axes, pair, label_left=pair is not pairs[-1])
            for panel, place in (("front", pair.front), ("back", pair.back)):
                _draw_panels(axes, pair, panel, place)
                _write_moves(axes, pair, (panel, side), place, moves, unit)
        over = Point((left + right) / 2, high)
        room = (right - left) * scale
        write_title(axes, _whose(versions), "two versions of the block", over, room=room, above=44)
        seen = "right leg" if count == 1 else "right and left leg"
        draw_caption(
            axes, f"{seen} seen from outside, no allowance", Point(left, low), Point(right, low), scale
        )
        _draw_key(axes, Point(left, low - 0.7 / scale), scale)
    return PrintReport()


def _draw_panels(axes: Axes, pair: Pair, name: str, place: Place) -> None:
    for half, width, style in zip(pair.halves, (0.9, 1.6), (_OLD, "solid"), strict=True):
        panel: BlockPanel = getattr(half, name)
        draw_outline(axes, panel, place, width=width, style=style)
        for dart in panel.darts:
            legs = Path.through([dart.inner, dart.tip, dart.outer])
            stroke(axes, legs.moved(place), width=width, style=style)
    panel = getattr(pair.half, name)
    crease, levels = panel.points()[Drawn.CREASE].x, pair.half.levels
    middle = Point(crease, levels.hem.mm).towards(Point(crease, levels.hip.mm), 0.62)
    write(axes, place(middle), of_side(name, pair.half.side).upper(), size=13, box=True)


def _write_moves(
    axes: Axes,
    pair: Pair,
    of: tuple[str, Side | None],
    place: Place,
    moves: Mapping[LengthKey | PointKey | EdgeKey, Move],
    unit: Unit,
) -> None:
    """Mark each corner that moved and write how far, away from the outline."""
    half: Half = pair.half
    name, side = of
    panel: BlockPanel = getattr(half, name)
    flipped = place(Point(1, 0)).x < place(Point(0, 0)).x
    for point, towards in _NAMED.items():
        move = moves.get(PointKey(name, point, side))
        below_hem = point in _AT_KNEE and half.levels.knee.mm < half.levels.hem.mm
        if move is None or below_hem or not moved_enough(move, unit):
            continue
        at = place(panel.points()[point])
        spot(axes, at, "o", filled=True)
        words = far_words(move.far, unit)
        if towards == "above":
            write(axes, at, words, size=8, above=13, box=True)
        else:
            rightwards = (towards != "left") != flipped
            aside = Point(at.x + (_BESIDE if rightwards else -_BESIDE), at.y)
            across, above = "left" if rightwards else "right", -10 if towards == "below" else 0
            write(axes, aside, words, size=8, across=across, above=above, box=True)


def _draw_key(axes: Axes, at: Point, scale: float) -> None:
    """Draw what the lines mean, below the scale bar."""
    long, after = 0.45 / scale, 0.08 / scale
    for start, words, width, style in ((0.0, "old", 0.9, _OLD), (1.0 / scale, "new", 1.6, "solid")):
        a = Point(at.x + start, at.y)
        lines(axes, a, Point(a.x + long, a.y), width=width, style=style)
        write(axes, Point(a.x + long + after, a.y), words, size=8, across="left")
    a = Point(at.x + 2.0 / scale, at.y)
    spot(axes, a, "o", filled=True)
    write(axes, Point(a.x + 2 * after, a.y), "moved, and how far", size=8, across="left")


def _whose(versions: TwoVersions) -> str:
    """Return the wearer, or both, the old one first."""
    return ", ".join(dict.fromkeys((versions.old.wearer, versions.new.wearer)))


def _described(versions: TwoVersions) -> str:
    unit = versions.new.unit
    differs = [f"{letter(i)} {c.what}: {c.old}, now {c.new}" for i, c in enumerate(versions.changes)]
    moves = [
        f"{move.name} by {far_words(move.far, unit)}" for move in versions.points if moved_enough(move, unit)
    ]
    return (
        f"{_whose(versions)}: the old block in dashes under the new one in full lines. "
        f"What differs: {'; '.join(differs) or 'nothing'}. Moved: {'; '.join(moves) or 'nothing'}."
    )
