"""Small pieces that several tests draw with."""

from collections.abc import Sequence

from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.kinds import PieceId
from drafting.pieces.pieces import Edge, Finish, Notch, NotchKind, Piece
from drafting.pieces.seams import CornerPlace, Run


def ring(corners: Sequence[tuple[float, float]], allowances: Sequence[float], **finishes: Finish) -> Piece:
    """Return a straight-sided piece; the edge from corner number i is called e0, e1, ..."""
    points = [Point(*corner) for corner in corners]
    edges = tuple(
        Edge(f"e{i}", Path.through([a, b]), allowance, finishes.get(f"e{i}", Finish.SEAM))
        for i, (a, b, allowance) in enumerate(zip(points, points[1:] + points[:1], allowances, strict=True))
    )
    middle = Point(sum(p.x for p in points) / len(points), sum(p.y for p in points) / len(points))
    return Piece("shape", edges, Path.through([middle, middle.towards(points[0], 0.1)]))


def run(piece: str, edge: str, backwards: bool = False, start: float = 0.0, end: float | None = None) -> Run:
    """Return the run along an edge of a piece of some kind."""
    return Run(PieceId(piece), edge, backwards, start, end)


def place(piece: str, edges: tuple[str, str]) -> CornerPlace:
    """Return the corner between two edges of a piece of some kind."""
    return CornerPlace(PieceId(piece), edges)


def square(*allowances: float, size: float = 100.0, **finishes: Finish) -> Piece:
    """Return a square from the origin: e0 below, e1 right, e2 above, e3 left."""
    return ring([(0, 0), (size, 0), (size, size), (0, size)], allowances, **finishes)


def bezier(*control: tuple[float, float]) -> Cubic:
    """Return the cubic with four control points given as pairs."""
    a, b, c, d = (Point(*pair) for pair in control)
    return Cubic(a, b, c, d)


def leg(*, hem_left: float = 40.0, hem_right: float = 200.0, hem: float = 40.0) -> Piece:
    """Return a front leg with invented measures: knee 200 wide at 420, hem at 0, waist near 1000."""
    left, right = hem_left, hem_right
    return Piece(
        "front leg",
        (
            Edge("hem", Path.through([Point(left, 0), Point(right, 0)]), hem, Finish.HEM),
            Edge(
                "side",
                Path(
                    (
                        bezier((right, 0), ((right + 220) / 2, 150), (220, 300), (220, 420)),
                        bezier((220, 420), (220, 600), (240, 700), (235, 1000)),
                    )
                ),
                15.0,
                notches=(Notch("knee", 420), Notch("hip", 800, NotchKind.DOUBLE)),
            ),
            Edge("waist", Path((bezier((235, 1000), (180, 990), (100, 985), (60, 992)),)), 10.0),
            Edge("fly", Path.through([Point(60, 992), Point(48, 860)]), 40.0),
            Edge("crotch", Path((bezier((48, 860), (40, 780), (30, 755), (-40, 745)),)), 10.0),
            Edge(
                "inseam",
                Path(
                    (
                        bezier((-40, 745), (0, 640), (20, 560), (20, 420)),
                        bezier((20, 420), (20, 300), ((left + 20) / 2, 150), (left, 0)),
                    )
                ),
                15.0,
                notches=(Notch("knee", 340),),
            ),
        ),
        Path.through([Point(120, 50), Point(120, 900)]),
    )
