"""The shape of a block in a cutter's measures, read from its drawn lines as numbers.

Lines are those of `drafting.block_lines`: of the right half, x from the plumb line through the point where
the centre line crosses hip level, positive towards the fork, y above the floor, mm.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from drafting import Measurements

Line = NDArray[np.float64]


def x_at(line: Line, y: float) -> float:
    """Return where a line that runs downwards or upwards first crosses the height `y`; an end beyond it."""
    above = line[:, 1] - y
    for k in range(len(line) - 1):
        if above[k] * above[k + 1] <= 0 and above[k] != above[k + 1]:
            share = above[k] / (above[k] - above[k + 1])
            return float(line[k, 0] + share * (line[k + 1, 0] - line[k, 0]))
    return float(line[np.abs(above).argmin(), 0])


def length(line: Line) -> float:
    """Return the length of a run of chords, mm."""
    return float(np.hypot(*np.diff(line, axis=0).T).sum())


def angles(line: Line) -> Line:
    """Return the angles of the chords of a line from the grain, degrees, positive towards the fork going
    down."""
    way = np.diff(line, axis=0)
    way = way[np.hypot(*way.T) > 1e-9]
    return np.asarray(np.degrees(np.arctan2(way[:, 0], -way[:, 1])))


def between(line: Line, high: float, low: float) -> Line:
    """Return the part of a line that runs downwards between two heights, cut exactly there."""
    inside = line[(line[:, 1] < high) & (line[:, 1] > low)]
    return np.vstack([(x_at(line, high), high), inside, (x_at(line, low), low)])


def evenly(line: Line, step: float) -> Line:
    """Return the line at equal steps of its length, of some `step` mm."""
    along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))])
    at = np.linspace(0, along[-1], max(int(along[-1] / step), 4))
    return np.column_stack([np.interp(at, along, line[:, k]) for k in (0, 1)])


def tightest_radius(line: Line) -> float:
    """Return the radius of the tightest bend, mm, over stretches of some 10 mm."""
    p = evenly(line, 5.0)[::2]
    a, b = np.diff(p, axis=0)[:-1], np.diff(p, axis=0)[1:]
    turn = np.arctan2(a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0], (a * b).sum(axis=1))
    run = (np.hypot(*a.T) + np.hypot(*b.T)) / 2
    return float(1 / max(np.abs(turn / run).max(), 1e-9))


def straight_top(crotch: Line) -> Line:
    """Return the straight run of a crotch seam from the waist down."""
    ways = np.diff(crotch, axis=0)
    first = ways[0] / np.hypot(*ways[0])
    end = 1
    while end < len(ways) and abs(first[0] * ways[end][1] - first[1] * ways[end][0]) < 1e-3 * np.hypot(
        *ways[end]
    ):
        end += 1
    return crotch[[0, end]]


def shape(lines: dict[str, Any], body: Measurements, ease_hip: float, ease_waist: float) -> dict[str, float]:
    """Return the measures of shape of one block, mm, degrees and shares.

    Args:
        lines: As `block_lines` gives them.
        body: What was measured; waist, hip and inside leg are needed.
        ease_hip: Ease of the whole hip, mm.
        ease_waist: Ease of the whole waist, mm.
    """
    front, back, levels = lines["front"], lines["back"], lines["levels"]
    waist, hip, knee = levels["waist"], levels["hip"], levels["knee"]
    assert body.hip_girth and body.waist_girth and body.inside_leg_height
    out: dict[str, float] = {"hip": body.hip_girth, "to take in": body.hip_girth - body.waist_girth}
    out["waist of hip"] = body.waist_girth / body.hip_girth
    half = (body.hip_girth + ease_hip - body.waist_girth - ease_waist) / 2
    out["half"] = half
    sides = {}
    for name, panel in (("front", front), ("back", back)):
        crotch, side = panel["crotch seam"], panel["side seam"]
        out[f"{name} fork"] = float(crotch[-1, 0])
        out[f"{name} fork y"] = float(crotch[-1, 1])
        out[f"{name} top"] = float(crotch[0, 1]) - waist
        top = straight_top(crotch)
        out[f"{name} lean"] = float(np.degrees(np.arctan2(-(top[0, 0] - top[1, 0]), top[0, 1] - top[1, 1])))
        out[f"{name} in"] = (
            -x_at(crotch, waist)
            if crotch[0, 1] >= waist
            else -float(top[0, 0] + (top[0, 0] - top[1, 0]) / (top[0, 1] - top[1, 1]) * (waist - top[0, 1]))
        )
        out[f"{name} waist"] = sum(length(run) for run in panel["waist"])
        out[f"{name} hip"] = -x_at(side, hip)
        leg = evenly(between(side, hip, knee), 2.0)
        out[f"{name} outseam"] = float(np.abs(angles(leg)).max())
        chord = leg[-1] - leg[0]
        out[f"{name} chord"] = float(np.degrees(np.arctan2(abs(chord[0]), -chord[1])))
        out[f"{name} side radius"] = tightest_radius(between(side, hip, knee))
        out[f"{name} hip radius"] = tightest_radius(between(side, hip + 100, hip - 90))
        out[f"{name} inseam radius"] = tightest_radius(between(panel["inseam"], crotch[-1, 1] - 1, knee))
        out[f"{name} inseam at fork"] = float(abs(angles(panel["inseam"][:8])[0]))
        crease = panel["crease"]
        grain = float(crease[np.argmax(crease[:, 1]), 0])
        sides[name] = (out[f"{name} fork"] - grain, out[f"{name} hip"] + grain)
        out[f"{name} seam"] = length(crotch)
        out[f"{name} take side"] = float(side[0, 0] - x_at(side, hip))
        out[f"{name} side top"] = float(side[0, 1]) - waist
        out[f"{name} darts"] = sum(float(np.hypot(*(dart[2] - dart[0]))) for dart in panel["darts"])
        out[f"{name} curve radius"] = tightest_radius(crotch)
        out[f"{name} off 45"] = off_the_corner(crotch, levels["crotch"]) / out[f"{name} fork"]
    out["balance"] = (sides["back"][0] - sides["front"][0]) - (sides["back"][1] - sides["front"][1])
    out["past front"] = sides["back"][0] - sides["front"][0]
    out["drift"] = ((out["front waist"] - out["back waist"]) - (out["front hip"] - out["back hip"])) / 2
    out["line"] = body.inside_leg_height - out["front fork y"]
    out["drop"] = out["front fork y"] - out["back fork y"]
    out["seam"] = out["front seam"] + out["back seam"]
    return out


def off_the_corner(crotch: Line, level: float) -> float:
    """Return how far the curve lies off the corner of plumb line and crotch level, at 45 degrees, mm."""
    up = crotch[:, 1] - level - crotch[:, 0]
    k = int(np.argmax((up[:-1] > 0) & (up[1:] <= 0)))
    share = up[k] / (up[k] - up[k + 1])
    x, y = crotch[k] + share * (crotch[k + 1] - crotch[k])
    return float(np.hypot(x, y - level))


Numbers = dict[str, NDArray[np.float64]]


@dataclass(frozen=True)
class Row:
    """One row of the table: what must hold, for whom, and the share that must meet it."""

    name: str
    holds: Callable[[Numbers], NDArray[np.bool_]]
    goal: float
    whom: Callable[[Numbers], NDArray[np.bool_]] | None = None


def slimmer(n: Numbers) -> NDArray[np.bool_]:
    """Return whose waist is under .95 of the hip."""
    return n["waist of hip"] < 0.95


def taking_in(least: float) -> Callable[[Numbers], NDArray[np.bool_]]:
    """Return who has at least so many mm of hip less waist."""
    return lambda n: n["to take in"] >= least


def within(value: NDArray[np.float64], low: float, high: float) -> NDArray[np.bool_]:
    """Return where a value lies between two others."""
    return (value >= low) & (value <= high)


def forks(n: Numbers) -> NDArray[np.float64]:
    """Return both forks as a share of the hip."""
    return (n["front fork"] + n["back fork"]) / n["hip"]


ROWS = (
    Row("front fork 4.7 to 6.7 % of hip", lambda n: within(n["front fork"] / n["hip"], 0.047, 0.067), 95),
    Row("front : back fork .38 to .55", lambda n: within(n["front fork"] / n["back fork"], 0.38, 0.55), 98),
    Row("both forks <= 22 %", lambda n: forks(n) <= 0.22, 85),
    Row("both forks <= 23.5 %", lambda n: forks(n) <= 0.235, 97),
    Row("centre-front top <= 3 (waist < .95 hip)", lambda n: n["front top"] <= 3, 98, slimmer),
    Row("centre front >= -.5 deg (12 cm to take in)", lambda n: n["front lean"] >= -0.5, 98, taking_in(120)),
    Row("centre back lean <= 16", lambda n: n["back lean"] <= 16, 98),
    Row("centre back share <= 60 % (8 cm)", lambda n: n["back in share"] <= 0.6, 95, taking_in(80)),
    Row("drift <= 20 or third", lambda n: n["drift"] <= np.maximum(20, n["half"] / 3), 95),
    Row("drift <= 20", lambda n: n["drift"] <= 20, 80),
    Row("back outseam <= 16", lambda n: n["back outseam"] <= 16, 88),
    Row("front outseam <= 10", lambda n: n["front outseam"] <= 10, 95),
    Row("back outseam <= 1.4 chord + 2", lambda n: n["back outseam"] <= 1.4 * n["back chord"] + 2, 99),
    Row("balance >= -2", lambda n: n["balance"] >= -2, 99),
    Row("line <= 38", lambda n: n["line"] <= 38, 92),
    Row("line <= 30", lambda n: n["line"] <= 30, 62),
    Row("raise 15 to 60", lambda n: within(n["back top"], 15, 60), 95),
    Row("back side radius >= 200", lambda n: n["back side radius"] >= 200, 95),
    Row("drop <= 20", lambda n: n["drop"] <= 20, 90),
    Row("back inseam at fork <= 28", lambda n: n["back inseam at fork"] <= 28, 90),
    Row("seam within 10", lambda n: np.abs(n["miss"]) <= 10, 97),
    Row("beyond it, told", lambda n: (np.abs(n["miss"]) <= 10) | (n["told"] > 0), 100),
    Row("told is drawn", lambda n: n["means off"] <= 1, 99.5),
)  # fmt: skip

MEDIANS = (
    "front fork share", "back fork share", "ratio", "line", "back top", "front top", "back lean",
    "front lean",
    "back in share", "drift", "back outseam", "front outseam", "balance", "past front", "drop",
    "back inseam at fork", "front inseam at fork", "miss", "unfitted miss", "front take side",
    "back take side",
    "back darts", "back side top", "back side radius", "back curve radius", "front curve radius", 
    "front off 45", "back off 45", "s",
)  # fmt: skip
