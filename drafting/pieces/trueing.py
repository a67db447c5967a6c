"""Trueing: whether the pieces sew together, told as data before anything is cut.

Nothing here raises; what does not fit is a Finding.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import chain, pairwise

from shapely.geometry import LineString

from drafting.base.errors import Severity
from drafting.base.findings import Finding
from drafting.base.tolerance import FLATTEN, JOIN, LENGTH, NOTCH, SEAM
from drafting.pieces.kinds import EdgeKind, PieceId, PlaceKind
from drafting.pieces.pieces import Piece
from drafting.pieces.seams import Corner, CornerPlace, Run, Seam
from drafting.pieces.words import edge_name, piece_name, place_name

SMALLEST, LARGEST = 10.0, 2000.0
"""No piece of a pair of jeans is narrower or longer than this, in mm (common practice, no source)."""


@dataclass(frozen=True)
class NotchCheck:
    """Two notches of one place, each by its distance in mm from the common end of the seam.

    `miss` is first minus second minus the ease that lies before it.
    """

    name: str
    first: float
    second: float
    miss: float


@dataclass(frozen=True)
class SeamCheck:
    """One line of the trueing table; lengths in mm, a side that cannot be walked counting 0.

    Attributes:
        name: Name of the seam.
        first_length: Length of its first side, measured on the curves.
        second_length: Length of its second side.
        intended: By how much the first should be longer.
        found: By how much it is.
        passes: Both sides exist and the difference is within SEAM of the intended one.
        notches: The notches that both sides carry, from the common end on.
        findings: What is wrong with the lengths and notches, empty when all is well.
    """

    name: str
    first_length: float
    second_length: float
    intended: float
    found: float
    passes: bool
    notches: tuple[NotchCheck, ...]
    findings: tuple[Finding, ...]


@dataclass(frozen=True)
class CornerCheck:
    """One joined corner: the angle found and wanted in degrees (0 when a corner does not exist)."""

    name: str
    angle: float
    wanted: float
    passes: bool
    findings: tuple[Finding, ...]


_Place = tuple[PlaceKind, int]
_OnEdge = tuple[PieceId, EdgeKind]


@dataclass(frozen=True)
class _Walk:
    """One side of a seam, walked: its length, and of each notch the distance and the edge it belongs to."""

    length: float
    notches: dict[_Place, tuple[float, _OnEdge]]
    broken: str


def check_seams(pieces: Iterable[Piece], seams: Sequence[Seam]) -> tuple[SeamCheck, ...]:
    """Walk both sides of every seam and compare their lengths and notches.

    A notch needs a partner in one of the seams that its place on the edge belongs to, unless it marks the end
    of one; notches outside every declared run are not looked at.
    """
    by_id = {piece.id: piece for piece in pieces}
    walks = [(_walked(seam.first, by_id), _walked(seam.second, by_id)) for seam in seams]
    paired = {
        (edge, place)
        for first, second in walks
        for place in first.notches.keys() & second.notches.keys()
        for edge in (first.notches[place][1], second.notches[place][1])
    }
    checks = []
    for seam, (first, second) in zip(seams, walks, strict=True):
        alone = []
        for side in (first, second):
            for place, (at, edge) in side.notches.items():
                # At the end of the seam the other side's corner is the partner.
                if (edge, place) not in paired and NOTCH < at < side.length - NOTCH:
                    alone.append(_without_partner(seam.name, place, at, edge))
                    paired.add((edge, place))
        check = _compared(seam, first, second)
        checks.append(replace(check, findings=(*check.findings, *alone)))
    return tuple(checks)


def check_corners(pieces: Iterable[Piece], corners: Iterable[Corner]) -> tuple[CornerCheck, ...]:
    """Add up the interior angles that come together at each declared corner and compare the sums."""
    by_id = {piece.id: piece for piece in pieces}
    return tuple(_cornered(corner, by_id) for corner in corners)


def check_pieces(pieces: Iterable[Piece]) -> tuple[Finding, ...]:
    """Check each piece by itself: outline, grain, names, quantity, notches and size."""
    pieces = tuple(pieces)
    twice = (
        _fault(
            "name-twice",
            piece_name(which),
            f"{times} pieces have this name; each needs one of its own.",
            (),
            times,
            1,
        )
        for which, times in Counter(piece.id for piece in pieces).items()
        if times > 1
    )
    return tuple(chain(twice, *map(_piece_findings, pieces)))


def _walked(runs: tuple[Run, ...], pieces: dict[PieceId, Piece]) -> _Walk:
    length, notches, broken = 0.0, dict[_Place, tuple[float, _OnEdge]](), ""
    for run in runs:
        try:
            edge = pieces[run.piece].sewn(run.edge)
        except KeyError:
            broken = f"there is no edge {edge_name(run.edge)!r} on a piece {piece_name(run.piece)!r}"
            continue
        end = edge.length if run.end is None else run.end
        if not 0 <= run.start < end <= edge.length + LENGTH:
            broken = f"a declared stretch of {_edge(run.piece, run.edge)} is not on that edge"
            continue
        for notch in sorted(edge.notches, key=lambda notch: notch.distance, reverse=run.backwards):
            along = edge.length - notch.distance if run.backwards else notch.distance
            if run.start - LENGTH <= along <= end + LENGTH:
                notches.setdefault(notch.place, (length + along - run.start, (run.piece, run.edge)))
        length += end - run.start
    return _Walk(length, notches, broken)


def _compared(seam: Seam, first: _Walk, second: _Walk) -> SeamCheck:
    found = first.length - second.length
    broken = first.broken or second.broken
    findings = []
    if broken:
        findings.append(_fault("seam-side-missing", seam.name, f"This seam cannot be walked: {broken}."))
    elif abs(found - seam.ease) > SEAM:
        text = "One side is {0} long and the other {1}; the first is {2} longer where {3} is wanted."
        amounts = (first.length, second.length, found, seam.ease)
        findings.append(_fault("seam-length", seam.name, text, amounts, found, seam.ease))
    start, end = seam.eased or (0.0, first.length)
    notches = []
    for place, (a, _) in first.notches.items():
        if place not in second.notches:
            continue
        name, b = place_name(*place), second.notches[place][0]
        eased = seam.ease * min(max((a - start) / max(end - start, JOIN), 0.0), 1.0)
        miss = a - b - eased
        notches.append(NotchCheck(name, a, b, miss))
        if abs(miss) > NOTCH:
            text = f"Notch {name!r} lies at {{0}} on one side and {{1}} on the other, {{2}} apart when sewn."
            findings.append(_fault("notch-miss", seam.name, text, (a, b, abs(miss)), miss, NOTCH))
    passes = not broken and abs(found - seam.ease) <= SEAM
    return SeamCheck(
        seam.name, first.length, second.length, seam.ease, found, passes, tuple(notches), tuple(findings)
    )


def _without_partner(seam: str, place: _Place, at: float, edge: _OnEdge) -> Finding:
    where = f"Notch {place_name(*place)!r} on {_edge(*edge)}"
    text = f"{where}, {{0}} along the seam, has no partner on the other side."
    return _fault("notch-alone", seam, text, (at,))


def _edge(piece: PieceId, edge: EdgeKind) -> str:
    return f"{piece_name(piece)} {edge_name(edge)}"


def _cornered(corner: Corner, pieces: dict[PieceId, Piece]) -> CornerCheck:
    angles = []
    for place in (corner.first, corner.second):
        angle = _interior_angle(place, pieces)
        if angle is None:
            one, other = map(edge_name, place.edges)
            text = f"{piece_name(place.piece)!r} has no corner between {one!r} and {other!r}."
            finding = _fault("corner-missing", corner.name, text)
            return CornerCheck(corner.name, 0.0, corner.angle, False, (finding,))
        angles.append(angle)
    total = sum(angles)
    if abs(total - corner.angle) <= corner.tolerance:
        return CornerCheck(corner.name, total, corner.angle, True, ())
    text = f"Sewn together, {angles[0]:.1f} and {angles[1]:.1f} degrees make {total:.1f} "
    text += f"where {corner.angle:g} is wanted, within {corner.tolerance:g}."
    finding = Finding("corner-angle", Severity.WARNING, corner.name, text, (), total, corner.angle)
    return CornerCheck(corner.name, total, corner.angle, False, (finding,))


def _interior_angle(place: CornerPlace, pieces: dict[PieceId, Piece]) -> float | None:
    """Return the angle inside the cloth in degrees, 0 to 360, None when the two edges do not meet."""
    if place.piece not in pieces:
        return None
    edges = pieces[place.piece].edges
    for kinds in (place.edges, place.edges[::-1]):
        for before, after in pairwise((*edges, edges[0])):
            if (before.kind, after.kind) == kinds:
                arriving = before.path.direction(before.length)
                return 180 - math.degrees(arriving.angle_to(after.path.direction(0)))
    return None


def _piece_findings(piece: Piece) -> Iterator[Finding]:
    name = piece.name
    if not piece.polygon.is_valid:
        yield _fault("outline-crosses", name, "The sew line crosses itself.")
    elif not piece.polygon.buffer(FLATTEN).covers(LineString(piece.grain.flatten())):
        yield _fault("grain-outside", name, "The grain line leaves the piece.")
    for kind, times in Counter(edge.kind for edge in piece.edges).items():
        if times > 1:
            yield _fault("edge-twice", name, f"{times} edges are called {edge_name(kind)!r}.", (), times, 1)
    count = piece.cutting.quantity
    if count < 1 or (piece.cutting.pairs and count % 2):
        pairs = " in pairs" if piece.cutting.pairs else ""
        yield _fault("quantity", name, f"This piece is to be cut {count} times{pairs}.", (), count)
    for edge in piece.edges:
        for notch in edge.notches:
            if not -LENGTH <= notch.distance <= edge.length + LENGTH:
                text = f"Notch {notch.name!r} lies at {{0}} of {edge.name}, which is {{1}} long."
                amounts = (notch.distance, edge.length)
                yield _fault("notch-off-edge", name, text, amounts, *amounts)
        for place, times in Counter(notch.place for notch in edge.notches).items():
            if times > 1:
                text = f"{times} notches of {edge.name} are called {place_name(*place)!r}."
                yield _fault("notch-twice", name, text, (), times, 1)
    x0, y0, x1, y1 = piece.polygon.bounds
    if not (min(x1 - x0, y1 - y0) >= SMALLEST and max(x1 - x0, y1 - y0) <= LARGEST):
        text = "This piece is {0} wide and {1} high, which no piece of jeans is."
        yield _fault("size", name, text, (x1 - x0, y1 - y0))


def _fault(
    code: str,
    where: str,
    text: str,
    amounts: tuple[float, ...] = (),
    measured: float | None = None,
    allowed: float | None = None,
) -> Finding:
    return Finding(code, Severity.FAULT, where, text, amounts, measured, allowed)
