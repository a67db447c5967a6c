"""The parts of a DXF file of release 12, as text: group codes, each with its value on the line below.

Release 12 is what every reader knows: no splines, no handles, ASCII only. Codes after Autodesk's published
"DXF Reference"; lengths are millimetres with four decimals.
"""

from __future__ import annotations

from collections.abc import Iterable

from drafting.geometry.curves import Coordinates
from drafting.geometry.points import Point
from outputs.canvas.canvas import CAPITAL, Align
from outputs.words.ascii_text import in_ascii

LONGEST_NAME = 31
"""Letters of a block's name in release 12."""
_MILLIMETRES, _METRIC, _CLOSED = 4, 1, 1
"""Values of $INSUNITS, $MEASUREMENT and of a polyline's flag."""


def dxf_file(*, notes: Iterable[str], blocks: Iterable[str], entities: Iterable[str]) -> bytes:
    """Return the whole file, in millimetres; `notes` are comments at its head."""
    header = _tags(
        *((9, "$ACADVER"), (1, "AC1009")),
        *((9, "$INSUNITS"), (70, _MILLIMETRES)),
        *((9, "$MEASUREMENT"), (70, _METRIC)),
    )
    parts = [
        *(_tags((999, in_ascii(note))) for note in notes),
        _section("HEADER", [header]),
        _section("BLOCKS", blocks),
        _section("ENTITIES", entities),
        _tags((0, "EOF")),
    ]
    return "".join(parts).encode("ascii")


def block(name: str, entities: Iterable[str]) -> str:
    """Return a block with its base at the origin; `name` is ASCII, at most LONGEST_NAME letters."""
    head = _tags((0, "BLOCK"), (8, 0), (2, name), (70, 0), *_place(Point(0, 0)), (3, name))
    return "".join([head, *entities, _tags((0, "ENDBLK"), (8, 0))])


def insert(name: str, at: Point) -> str:
    """Return the block shown with its base at `at`."""
    return _tags((0, "INSERT"), (8, 0), (2, name), *_place(at))


def point(layer: int, at: Point) -> str:
    """Return a point."""
    return _tags((0, "POINT"), (8, layer), *_place(at))


def polyline(layer: int, points: Coordinates, *, closed: bool) -> str:
    """Return the line through points of shape (n, 2); a closed one returns to its first point."""
    if len(points) == 2 and not closed:
        start, end = (Point(*ends) for ends in points.tolist())
        return _tags((0, "LINE"), (8, layer), *_place(start), *_place(end, first=11))
    head = _tags((0, "POLYLINE"), (8, layer), (66, 1), (70, _CLOSED if closed else 0), *_place(Point(0, 0)))
    corners = (_tags((0, "VERTEX"), (8, layer), *_place(Point(*corner))) for corner in points.tolist())
    return "".join([head, *corners, _tags((0, "SEQEND"), (8, layer))])


def text(
    layer: int, string: str, at: Point, size: float, *, angle: float = 0.0, align: Align = Align.LEFT
) -> str:
    """Return one line of text in ASCII, its type `size` mm high, its baseline through `at`."""
    plain = in_ascii(string).replace("%%", "% %").replace("^", "'")  # both begin a control code
    placed = [(72, {Align.CENTRE: 1, Align.RIGHT: 2}[align]), *_place(at, first=11)] if align.value else []
    return _tags(
        (0, "TEXT"), (8, layer), *_place(at), (40, size * CAPITAL), (1, plain), (50, angle), *placed
    )  # fmt: skip


def _section(name: str, parts: Iterable[str]) -> str:
    return "".join([_tags((0, "SECTION"), (2, name)), *parts, _tags((0, "ENDSEC"))])


def _place(at: Point, *, first: int = 10) -> tuple[tuple[int, float], ...]:
    return (first, float(at.x)), (first + 10, float(at.y)), (first + 20, 0.0)


def _tags(*pairs: tuple[int, str | int | float]) -> str:
    """Return group codes with their values; codes are set right in three columns, as is the custom."""
    return "".join(f"{code:3d}\n{_value(value)}\n" for code, value in pairs)


def _value(value: str | int | float) -> str:
    if not isinstance(value, float):
        return str(value)
    written = f"{value:.4f}"
    return "0.0000" if written == "-0.0000" else written
