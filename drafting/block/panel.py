"""One panel of the block, front or back, up to its waist line: one construction with two sets of amounts.

The panel is drawn with the fork to the right and the side seam to the left, so the front is the right front
and the back the left back, both seen from outside. The plumb line through the point where the centre line
crosses hip level is x = 0; y is the height above the floor.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from drafting.base.construction_proportions import Proportions
from drafting.base.formula import Length, Reason, named
from drafting.base.tolerance import LENGTH
from drafting.block.crotch_curve import crotch_curve
from drafting.block.step_record import DOWN, LEFT, RIGHT, UP, Construction, Stage
from drafting.geometry.curves import Cubic
from drafting.geometry.paths import Path, parameter_at_level
from drafting.geometry.points import Point, Vector
from drafting.geometry.solve import secant


@dataclass(frozen=True, kw_only=True)
class Levels:
    """Heights above the floor of the level lines that front and back share."""

    waist: Length
    hip: Length
    crotch: Length
    knee: Length
    hem: Length
    side_hip: Length
    """Where the side seam is plumb: hip level, unless this side's hip lies higher or lower."""
    side_waist: Length
    """Where the front's side seam ends: waist level, unless this side is longer or shorter."""

    @property
    def are_of_shorts(self) -> bool:
        """Whether the hem lies above the knee: cut out of a leg that runs on plumb from the knee."""
        return self.hem.mm > self.knee.mm


@dataclass(frozen=True, kw_only=True)
class PanelPlan:
    """The amounts of one panel; lengths in mm, angles in radians.

    Attributes:
        name: "front" or "back".
        hip: Width at hip level from the centre line to the side seam.
        fork: How far the fork reaches beyond the plumb line, at crotch level.
        drop: How far the fork lies under crotch level; None: so that the inseam gets `inseam_length`.
        lean: Angle of the centre line from plumb, positive towards the side seam.
        top: Height of the centre line's end above waist level (negative: below).
        curve_height: Height above crotch level at which the crotch curve leaves the centre line.
        curve_handle: How far the curve's handles reach to the corner, as a share.
        crease: Distance of the crease from the middle of the crotch-level width, towards the fork.
        knee: Width at knee level.
        hem: Width at hem level.
        hollow: How deep the inseam is hollowed off its chord from fork to knee.
        inseam_handle: How far the inseam's handles reach to its corner, as a share.
        even_turn: Least angle between the inseam and its chord at the fork, as a share of that at the knee.
        hollow_turn: Largest angle between the inseam and its chord at the fork.
        side_lean: How much the side seam leans inwards below hip level at least, where the waist swings out,
            else 0.
        side_hip_turn: The angle at which the side seam leaves the hip, as a share of that of its chord to the
            knee.
        side_handle: Handle of the side seam below the hip, as a share of the drop to the knee.
        knee_handle: Handle of the side seam at the knee, likewise.
        side_turn: The side seam's angle at the waist, as a multiple of that of its chord from the hip.
        inseam_length: Wanted length of the inseam, fork to hem, where `drop` is None.
        swing: How far the hem stands outwards of the crease, for a leg that bends at the knee.
        fork_turn: How much more than square to the inseam the crotch seam arrives at the fork (negative:
            less).
    """

    name: str
    hip: Length
    fork: Length
    drop: Length | None
    lean: float
    top: Length
    curve_height: Length
    curve_handle: float
    crease: Length
    knee: Length
    hem: Length
    hollow: float
    inseam_handle: float
    even_turn: float
    hollow_turn: float
    side_lean: float
    side_hip_turn: float
    side_handle: float
    knee_handle: float
    side_turn: float
    inseam_length: float | None = None
    swing: float = 0.0
    fork_turn: float = 0.0


@dataclass(frozen=True)
class Panel:
    """A panel without its waist line.

    Attributes:
        plan: The amounts it was drawn with.
        levels: The level lines.
        construction: Its points, lines and steps so far.
    """

    plan: PanelPlan
    levels: Levels
    construction: Construction

    @property
    def crotch(self) -> Path:
        """The crotch seam from the fork up to the waist: curve, then the straight centre line."""
        return self.construction.lines["crotch seam"]

    @property
    def inseam(self) -> Path:
        """The inseam from hem to fork."""
        return self.construction.lines["inseam"]

    @cached_property
    def side(self) -> Path:
        """The side seam from hip level down to the hem."""
        return self.construction.lines["side seam"]

    @property
    def crease(self) -> Path:
        """The crease from hem to crotch level, bent at the knee where the lower leg swings."""
        points = self.construction.points
        knee = (points["crease at the knee"],) if self.plan.swing else ()
        return Path.through([points["crease at the hem"], *knee, points["crease"]])

    def width(self, y: float) -> float:
        """Return the width at height `y` from side seam to inseam, mm; between hip level and hem."""
        return self.inseam_x(y) - side_x(self.side, y)

    def inseam_x(self, y: float) -> float:
        """Return where the inseam (above the fork the crotch seam) lies at height `y`."""
        path = self.inseam if y <= self.inseam.end.y else self.crotch
        place = path.crossing(y)
        assert place is not None, f"{self.plan.name} has no edge at {y:.1f} mm"
        return place.x


def side_x(side: Path, y: float) -> float:
    """Return where a side seam lies at height `y`, its ends when `y` is beyond them."""
    return (side.crossing(y) or (side.start if y > side.start.y else side.end)).x


_UNDER_FORK = 5.0
"""The thigh is measured this far under the back fork at least, mm: both panels have an inseam there."""


def thigh_level(levels: Levels, back_fork: float, p: Proportions) -> float:
    """Return the height just below both forks at which the thigh is measured on the pattern."""
    return min(levels.crotch.mm - p.thigh_below_fork, back_fork - _UNDER_FORK)


_DROPS = (-30.0, 100.0)
"""The fork's drop stays within this, mm; beyond it the inseams are not trued, and the trueing says so
(common practice)."""

_INTO_FLARE = 0.15
"""A flare is rounded over twice this share of the way from knee to hem (common practice, no source)."""

_PLUMB = "plumb at the hem"
"""Where the crease would stand at the hem of a leg that swings out or in below the knee."""

_STRAIGHT = math.radians(0.2)
"""An inseam whose shin turns less than this off the chord is drawn straight from fork to knee
(common practice)."""


def draw_panel(plan: PanelPlan, levels: Levels) -> Panel:
    """Return the panel drawn step by step, from the hip point to the hem."""
    c = Construction(plan.name)
    hip = _draw_hip(c, plan, levels)
    top = _draw_centre_line(c, plan, levels)
    _draw_leg(c, plan, levels)
    upper = _draw_inseam(c, plan, levels)
    _draw_crotch_seam(c, plan, levels, top, upper)
    _draw_side_seam(c, plan, levels, hip)
    ends = "hem at the side", "hem at the inseam"
    c.line("hem", ends, Path.through([c[end] for end in ends]), "straight, so that it turns up flat")
    return Panel(plan, levels, c)


def _draw_hip(c: Construction, plan: PanelPlan, levels: Levels) -> str:
    """Draw hip and crotch level on their plumb line and the side seam's place; return the name of that."""
    c.origin("hip point", Point(0, levels.hip.mm), levels.hip, "plumb up")
    c.go("crotch corner", "hip point", DOWN, levels.hip - levels.crotch, "plumb down")
    c.stage = Stage.PANEL
    c.go("hip at the side", "hip point", LEFT, plan.hip, "square to the plumb line")
    if levels.side_hip is levels.hip:
        return "hip at the side"
    own = levels.side_hip - levels.hip
    c.go("own hip at the side", "hip at the side", UP, own, "plumb, for this side")
    return "own hip at the side"


def _draw_centre_line(c: Construction, plan: PanelPlan, levels: Levels) -> Point:
    """Draw the centre line through the hip point, leaning towards the side seam; return its upper end."""
    height = levels.waist + plan.top - levels.hip
    c.go("centre plumb", "hip point", UP, height, "plumb up")
    inwards = LEFT if plan.lean >= 0 else RIGHT
    lean = height.slope(abs(plan.lean))
    return c.go("centre at the waist", "centre plumb", inwards, lean, "level, for the lean")


def _draw_leg(c: Construction, plan: PanelPlan, levels: Levels) -> None:
    """Draw the fork's level, the crease, and knee and hem set evenly about it."""
    c.go("fork level", "crotch corner", RIGHT, plan.fork, "level")
    middle = (plan.hip - plan.fork) / 2 - plan.crease
    c.stage = Stage.LEG
    c.go("crease", "crotch corner", LEFT, middle, "level; the straight grain stands on it")
    c.go("crease at the knee", "crease", DOWN, levels.crotch - levels.knee, "plumb down")
    foot = _PLUMB if plan.swing else "crease at the hem"
    c.go(foot, "crease", DOWN, levels.crotch - levels.hem, "plumb down")
    if plan.swing:
        swing = named("corrected: swing of the lower leg", abs(plan.swing), Reason.TOILE)
        c.go("crease at the hem", foot, LEFT if plan.swing > 0 else RIGHT, swing, "level")
    widths = {"knee": plan.knee} if levels.are_of_shorts else {"knee": plan.knee, "hem": plan.hem}
    for level, width in widths.items():
        c.go(f"{level} at the inseam", f"crease at the {level}", RIGHT, width / 2, "level")
        c.go(f"{level} at the side", f"crease at the {level}", LEFT, width / 2, "level")


def _draw_inseam(c: Construction, plan: PanelPlan, levels: Levels) -> Cubic:
    """Draw the inseam, the fork dropped for its length; return its part from fork to knee."""
    c.stage = Stage.PANEL
    drop = plan.drop or named("drop that trues the inseam", _drop_for(plan, levels, c), Reason.INSEAM)
    c.go("fork", "fork level", DOWN, drop, "plumb down")
    c.stage = Stage.LEG
    upper = _inseam_curve(plan, c, c["fork"])
    if levels.are_of_shorts:
        inseam = _down_to(upper, levels.hem.mm).reversed()
        c.meet("hem at the inseam", ("fork", "knee at the inseam"), inseam.start, "where hem level cuts it")
    else:
        inseam = Path((upper, *_below_knee(c, "inseam"))).reversed()
    c.line(
        "inseam",
        ("hem at the inseam", "knee at the inseam", "fork"),
        inseam,
        "straight or rounded into a flare to the knee, then hollowed",
    )
    return upper


def _draw_crotch_seam(c: Construction, plan: PanelPlan, levels: Levels, top: Point, inseam: Cubic) -> None:
    """Draw the crotch seam: down the centre line, then a curve that meets the inseam at the fork.

    It arrives square to the inseam so that both forks join smoothly, or as far off as the other panel's the
    other way.
    """
    down = (c["hip point"] - top).unit
    c.stage = Stage.PANEL
    start_at = levels.crotch + plan.curve_height
    start = top + down * ((top.y - start_at.mm) / -down.y)
    c.meet(
        "curve start",
        ("centre at the waist", "hip point", "crotch corner"),
        start,
        "on the centre line, this high above crotch level",
        plan.curve_height,
    )
    c.stage = Stage.CURVE
    arrive = inseam.direction(0).left.turned(plan.fork_turn)
    curve = crotch_curve(start, down, c["fork"], arrive, handle=plan.curve_handle)
    seam = Path((Cubic.line(top, start), curve)).reversed()
    c.line(
        "crotch seam",
        ("fork", "curve start", "centre at the waist"),
        seam,
        "curve into the corner, then straight",
    )


def _draw_side_seam(c: Construction, plan: PanelPlan, levels: Levels, hip: str) -> None:
    """Draw the side seam below the hip, then into the shin.

    It leaves the hip at a share of the angle of its chord to the knee; straight on where the waist swings
    out.
    """
    c.stage = Stage.LEG
    start, knee, shin = c[hip], c["knee at the side"], _shin(c, "side")
    drop = start.y - knee.y
    chord = math.atan2(knee.x - start.x, drop)
    lean = max(plan.side_lean, plan.side_hip_turn * chord)
    leave = Vector(math.sin(lean), -math.cos(lean))
    thigh = Cubic(
        start,
        start + leave * (plan.side_handle * drop),
        knee + shin * (-plan.knee_handle * drop),
        knee,
    )
    if levels.are_of_shorts:
        side = _down_to(thigh, levels.hem.mm)
        c.meet("hem at the side", (hip, "knee at the side"), side.end, "where hem level cuts it")
    else:
        side = Path((thigh, *_below_knee(c, "side")))
    c.line(
        "side seam",
        (hip, "knee at the side", "hem at the side"),
        side,
        "in one sweep to the knee, then straight or rounded into a flare",
    )


def _shin(c: Construction, seam: str) -> Vector:
    """Return the direction of a seam at the knee: into a leg that narrows, else plumb, for shorts too.

    A lower leg that swings out or in does so below the knee; what lies above it is drawn as for any other.
    """
    hem, knee = c.points.get(f"hem at the {seam}"), c[f"knee at the {seam}"]
    if hem is None or _flares(c, seam):
        return DOWN
    if plumb := c.points.get(_PLUMB):
        hem += plumb - c["crease at the hem"]
    return (hem - knee).unit


def _flares(c: Construction, seam: str) -> bool:
    """Return whether a seam stands further from the middle of the leg at the hem than at the knee."""
    hem, knee = (abs(c[f"{at} at the {seam}"].x - c[f"crease at the {at}"].x) for at in ("hem", "knee"))
    return hem > knee


def _below_knee(c: Construction, seam: str) -> tuple[Cubic, ...]:
    """Return a seam from knee to hem: straight, or rounded into the flare or the swing of the lower leg.

    So a flared leg is narrowest at the knee, not above it.
    """
    knee, hem = c[f"knee at the {seam}"], c[f"hem at the {seam}"]
    if not _flares(c, seam) and _PLUMB not in c.points:
        return (Cubic.line(knee, hem),)
    round_, leave = _INTO_FLARE * (knee.y - hem.y), _shin(c, seam)
    corner = knee + leave * round_
    flare = (hem - corner).unit
    start = corner + flare * round_
    return Cubic.bent(knee, leave, start, flare, 2 / 3), Cubic.line(start, hem)


def _down_to(curve: Cubic, y: float) -> Path:
    """Return a curve that runs downwards as far as the height `y`; the whole of it where it ends above."""
    t = parameter_at_level(curve, y)
    return Path((curve if t is None else curve.split(t)[0],))


def _inseam_curve(plan: PanelPlan, c: Construction, fork: Point) -> Cubic:
    """Return the inseam from fork to knee: one bend, running into the shin, as hollow as the fork allows.

    The handles reach the share k of the way to the corner of the two end tangents, so the curve lies 3k/4 of
    the corner's distance off the chord.
    """
    knee, shin = c["knee at the inseam"], _shin(c, "inseam")
    chord = knee - fork
    at_knee = chord.angle_to(shin)
    if at_knee < _STRAIGHT:
        return Cubic.line(fork, knee)
    reach = plan.hollow / (0.75 * plan.inseam_handle) / (chord.length * math.sin(at_knee))
    at_fork = math.atan2(reach * math.sin(at_knee), max(1 - reach * math.cos(at_knee), 0.0))
    at_fork = min(max(at_fork, plan.even_turn * at_knee), plan.hollow_turn)
    leave = chord.turned(-at_fork)
    return Cubic.bent(fork, leave, knee, shin, plan.inseam_handle)


_FLATTEST = -0.5
"""The inseam is taken to lose at least half of what its fork drops."""


def _drop_for(plan: PanelPlan, levels: Levels, c: Construction) -> float:
    """Return the fork's drop, within _DROPS, that gives the inseam its wanted length: it falls some 1:1."""
    assert plan.inseam_length is not None
    level, wanted = c["fork level"], plan.inseam_length
    shin = 0.0 if levels.are_of_shorts else Path(_below_knee(c, "inseam")).length

    def kept(drop: float) -> float:
        return min(max(drop, _DROPS[0]), _DROPS[1])

    def miss(drop: float) -> float:
        curve = _inseam_curve(plan, c, level + DOWN * kept(drop))
        thigh = _down_to(curve, levels.hem.mm) if levels.are_of_shorts else curve
        return thigh.length + shin - wanted

    return kept(secant(miss, 5.0, -1.0, enough=LENGTH, rounds=19, slopes=(-math.inf, _FLATTEST)))
