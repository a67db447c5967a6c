"""A small invented pattern to print: two leg-like pieces with curved edges, a band and a pocket piece."""

from __future__ import annotations

from typing import Any

import pytest

from drafting.base.errors import Severity
from drafting.base.findings import Finding
from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path
from drafting.geometry.points import Point
from drafting.pieces.pattern import Pattern
from drafting.pieces.pieces import Cutting, Edge, Finish, Mark, MarkKind, Material, Notch, NotchKind, Piece
from styles.making import draft


def curve(*points: tuple[float, float]) -> Path:
    """Return one cubic through its four control points."""
    return Path((Cubic(*(Point(x, y) for x, y in points)),))


def straight(*points: tuple[float, float]) -> Path:
    """Return the straight run through the points."""
    return Path.through([Point(x, y) for x, y in points])


def leg(name: str, *, seat: float, kind: NotchKind) -> Piece:
    """Return a leg 1040 mm long whose crotch reaches `seat` mm beyond its centre line."""
    waist = 210.0
    notches = (Notch("knee", 450, kind), Notch("hip", 860, kind))
    inseam_notches = (Notch("knee", 330, kind),)
    edges = (
        Edge("hem", straight((0, 0), (220, 0)), 30, Finish.HEM),
        Edge(
            "inseam", curve((220, 0), (235, 420), (240, 640), (260 + seat, 780)), 15, notches=inseam_notches
        ),
        Edge("crotch", curve((260 + seat, 780), (220 + seat * 0.3, 785), (232, 850), (waist + 20, 1040)), 10),
        Edge("waist", curve((waist + 20, 1040), (150, 1030), (60, 1030), (20, 1040)), 10),
        Edge("side", curve((20, 1040), (-40, 820), (-20, 520), (0, 0)), 15, notches=notches),
    )
    return Piece(
        name,
        edges,
        grain=straight((110, 60), (110, 960)),
        cutting=Cutting(2, pairs=True),
        marks=(
            Mark("hip_level", MarkKind.LINE, straight((-10, 860), (228, 860))),
            Mark("knee level", MarkKind.LINE, straight((-10, 450), (232, 450))),
            Mark("pocket corner", MarkKind.DRILL, straight((60, 900), (60, 901))),
        ),
    )


def pocket() -> Piece:
    """Return a piece without allowances whose left side is laid on the fold."""
    edges = (
        Edge("bottom", straight((0, 0), (120, 0))),
        Edge("right", straight((120, 0), (120, 160))),
        Edge("top", curve((120, 160), (80, 130), (40, 130), (0, 160))),
        Edge("centre", straight((0, 160), (0, 0)), finish=Finish.FOLD),
    )
    cutting = Cutting(1, material=Material.POCKETING)
    return Piece("pocket bag", edges, grain=straight((60, 20), (60, 120)), cutting=cutting)


def loop() -> Piece:
    """Return a strip 12 mm wide, drafted lying, its grain along it."""
    edges = (
        Edge("front", straight((0, 0), (90, 0)), 6),
        Edge("end", straight((90, 0), (90, 12)), 6),
        Edge("back", straight((90, 12), (0, 12)), 6),
        Edge("start", straight((0, 12), (0, 0)), 6),
    )
    return Piece("belt loop", edges, grain=straight((10, 6), (80, 6)), cutting=Cutting(5))


def pattern(wearer: str = "Ada Example (invented)") -> Pattern:
    """Return the sample pattern for a wearer who does not exist."""
    found = (
        Finding(
            "crotch",
            Severity.WARNING,
            "crotch seam",
            "The crotch seam is {0}, {1} shorter than the measured {2} including ease.",
            (642, 6, 648),
        ),
        Finding(
            "thigh", Severity.NOTE, "thigh girth", "Not measured; estimated from hip girth as {0}.", (581,)
        ),
    )
    front = leg("front leg", seat=30, kind=NotchKind.SINGLE)
    back = leg("back leg", seat=80, kind=NotchKind.DOUBLE)
    return Pattern(wearer, "straight leg", "2025-03-01", (front, back, pocket(), loop()), findings=found)


def break_a_seam(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let every pair of jeans come out with a seam whose edges differ by 40 mm."""
    made = draft.make_jeans

    def unsewable(*args: Any, **options: Any) -> Any:
        jeans = made(*args, **options)
        fault = Finding("seam", Severity.FAULT, "inseam", "Front and back differ by {0}.", (40.0,))
        object.__setattr__(jeans.pattern, "findings", (fault,))
        return jeans

    monkeypatch.setattr(draft, "make_jeans", unsewable)
