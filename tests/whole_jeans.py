"""Whole pairs of jeans to look at: the demo wearers and one uneven body, in every style that the data
allow."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

from drafting import Measurements, draft_block
from drafting.block.block import Block
from drafting.body.measurements import Side, SideMeasurements
from drafting.pieces.pieces import Piece
from outputs.reading.measurements_file import read_measurements
from styles.choice.style import STRAIGHT, Allowances, Band, Felling, Laps, Style
from styles.making.jeans import Jeans, make_jeans
from tests.printed import called
from tests.wearers import wearer

DEMO = Path(__file__).parents[1] / "outputs" / "demo"
DEMO_WEARERS = tuple(sorted(path.stem for path in DEMO.glob("*.toml")))
UNEVEN = "uneven"
"""An invented body whose left hip is fuller and whose right leg is longer."""
WEARERS = (*DEMO_WEARERS, UNEVEN)

NO_ALLOWANCES = Allowances(waist=0, side_seam=0, inseam=0, crotch_seam=0, yoke=0, small=0, hem=0)
STYLES: dict[str, Style] = {
    "shaped band": STRAIGHT,
    "straight band": replace(STRAIGHT, band=Band.STRAIGHT),
    "right over left": replace(STRAIGHT, laps=Laps.RIGHT_OVER_LEFT),
    "straight band, right over left": replace(STRAIGHT, band=Band.STRAIGHT, laps=Laps.RIGHT_OVER_LEFT),
    "felled": replace(STRAIGHT, allowances=Allowances(felling=Felling.FELLED)),
    "no allowances": replace(STRAIGHT, allowances=NO_ALLOWANCES),
    "low": replace(STRAIGHT, below_waist=80),
    "high": replace(STRAIGHT, below_waist=-25),
}


@cache
def block_of(name: str) -> Block:
    """Return the block of a demo wearer or of the uneven body."""
    if name == UNEVEN:
        left = SideMeasurements(outside_leg_length=1040, half_hip_arc=510)
        right = SideMeasurements(outside_leg_length=1055, half_hip_arc=490)
        return draft_block(wearer(hip_girth=1000, left=left, right=right))
    return draft_block(measurements_of(name))


def measurements_of(name: str) -> Measurements:
    """Return what was measured of a demo wearer."""
    return read_measurements(DEMO / f"{name}.toml").measurements


@cache
def jeans_of(name: str, style: str) -> Jeans:
    """Return the jeans of one of WEARERS in one of STYLES."""
    return make_jeans(block_of(name), STYLES[style], wearer=name)


def sides_of(jeans: Jeans) -> tuple[str, ...]:
    """Return what the names of the pieces begin with, half by half: nothing where both are alike."""
    return tuple(f"{half.side.value} " if half.side else "" for half in jeans.block.halves)


def both(jeans: Jeans, lengths: list[float]) -> float:
    """Return the sum of an amount of each half over the whole body."""
    return sum(lengths) * 2 / len(jeans.block.halves)


def front_waist(jeans: Jeans, side: str = "") -> float:
    """Return the sewn front waist of one half, mm: the leg, and the facing from the pocket corner on."""
    leg, facing = (called(jeans.pattern, side + name) for name in ("front leg", "pocket facing"))
    waist = facing.edge("waist")
    hidden = next(notch.distance for notch in waist.notches if notch.name == "pocket corner")
    starts_at_side = side == f"{Side.LEFT.value} "
    return leg.edge("waist").length + (hidden if starts_at_side else waist.length - hidden)


def back_waist(jeans: Jeans, side: str = "") -> float:
    """Return the sewn back waist of one half, mm: the yoke's upper edge."""
    return called(jeans.pattern, side + "back yoke").edge("waist").length


def whole_waist(jeans: Jeans) -> float:
    """Return the waist seam all round, mm, pockets and yokes sewn and the dart closed."""
    return both(jeans, [front_waist(jeans, side) + back_waist(jeans, side) for side in sides_of(jeans)])


def notch_at(piece: Piece, edge: str, name: str) -> float:
    """Return how far a notch lies from the start of its edge, mm."""
    return next(notch.distance for notch in piece.edge(edge).notches if notch.name == name)
