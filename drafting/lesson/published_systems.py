"""Hand drafts of trousers as their sources state them, in formulas of the wearer's measurements.

Only formulas and facts are taken over. Some sources were read for the front alone, some give no depth for the
crotch curve; what had to be read into one stands in its remarks.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from drafting.base.formula import cm, mm, named
from drafting.block.point_names import Drawn
from drafting.geometry.points import Point
from drafting.lesson.published import CROTCH_AT_SIDE, PanelSketch, Quantity, SystemDraft, Wearer

INCH = 25.4
"""In mm."""


def metric_block(w: Wearer) -> SystemDraft:
    """Return the textbook's trouser block; sizes below 16 (hip under 102 cm) have their own depths."""
    large = w.hip.mm >= 1020
    fork, crease = w.hip / 16 + cm(0.5), w.hip / 12 + cm(1.5)
    front_hip, back_hip = w.hip / 4 + cm(0.5), w.hip / 4 + cm(1.5)
    front_waist, back_waist = w.waist / 4 + cm(2.25), w.waist / 4 + cm(4.25)
    depth, level, leg = w.rise, w.rise - w.waist_to_hip, w.leg.mm
    knee = w.leg / 2 - cm(5)
    half_hem = w.hem.mm / 4 - 5
    half_knee = half_hem + (15 if large else 13)
    front = PanelSketch()
    front.at(Drawn.FORK, fork.mm, 0)
    front.at(Drawn.HIP_POINT, 0, level.mm)
    front.at(Drawn.HIP_AT_SIDE, -front_hip.mm, level.mm)
    front.at(Drawn.CENTRE_AT_WAIST, -10, depth.mm)
    front.at(Drawn.SIDE_AT_WAIST, -10 - front_waist.mm, depth.mm)
    front.leg(-crease.mm, knee.mm, half_knee, leg, half_hem)
    front.join(Drawn.SIDE_AT_WAIST, Drawn.CENTRE_AT_WAIST, Drawn.HIP_POINT)
    off = cm(3.25 if large else 3)
    front.curve(Drawn.HIP_POINT, Drawn.FORK, Point(0, 0), off.mm)
    front.join(Drawn.SIDE_AT_WAIST, Drawn.HIP_AT_SIDE, Drawn.KNEE_AT_SIDE, Drawn.HEM_AT_SIDE)
    front.join(Drawn.FORK, Drawn.KNEE_AT_INSEAM, Drawn.HEM_AT_INSEAM, Drawn.HEM_AT_SIDE)

    # The back is drafted over the front; its own plumb line is that of its centre line at hip level.
    inwards = crease.mm / 4
    lean = 20 / (depth.mm / 2 + 20)
    plumb = -inwards + (depth.mm / 2 - level.mm) * lean
    back = PanelSketch()
    back.at(Drawn.FORK, fork.mm * 1.5 - plumb, -5)
    back.at(Drawn.HIP_POINT, 0, level.mm)
    back.at(Drawn.HIP_AT_SIDE, -inwards - back_hip.mm - plumb, level.mm)
    back.at(Drawn.CENTRE_AT_WAIST, -inwards - 20 - plumb, depth.mm + 20)
    across = math.sqrt(max(back_waist.mm**2 - 20**2, 0.0))
    back.at(Drawn.SIDE_AT_WAIST, -inwards - 20 - across - plumb, depth.mm)
    back.at(Drawn.CURVE_START, -inwards - plumb, depth.mm / 2)
    back.leg(-crease.mm - plumb, knee.mm, half_knee + 10, leg, half_hem + 10)
    back.join(Drawn.SIDE_AT_WAIST, Drawn.CENTRE_AT_WAIST, Drawn.CURVE_START)
    back.curve(Drawn.CURVE_START, Drawn.FORK, Point(-inwards - plumb, 0), 45 if large else 42.5)
    back.join(Drawn.SIDE_AT_WAIST, Drawn.HIP_AT_SIDE, Drawn.KNEE_AT_SIDE, Drawn.HEM_AT_SIDE)
    back.join(Drawn.FORK, Drawn.KNEE_AT_INSEAM, Drawn.HEM_AT_INSEAM, Drawn.HEM_AT_SIDE)
    return SystemDraft(
        "metric block",
        "W. Aldrich's metric trouser block as “Fashion English practical textbook”, part 3, repeats it",
        {
            Quantity.CROTCH_DEPTH: depth,
            Quantity.HIP_LEVEL_ABOVE_CROTCH: level,
            Quantity.FRONT_HIP_WIDTH: front_hip,
            Quantity.BACK_HIP_WIDTH: named("from its centre line", -back.points[Drawn.HIP_AT_SIDE].x),
            Quantity.FRONT_FORK: fork,
            Quantity.BACK_FORK: named("from its centre line", back.points[Drawn.FORK].x),
            Quantity.BACK_FORK_DROP: cm(0.5),
            Quantity.CURVE_OFF_CORNER: off,
            Quantity.CENTRE_FRONT_IN_AT_WAIST: cm(1),
            Quantity.CENTRE_FRONT_BELOW_WAIST: cm(0),
            Quantity.CENTRE_BACK_IN_AT_WAIST: named(
                "from its centre line", -back.points[Drawn.CENTRE_AT_WAIST].x
            ),
            Quantity.CENTRE_BACK_ABOVE_WAIST: cm(2),
            Quantity.FRONT_WAIST: front_waist,
            Quantity.BACK_WAIST: back_waist,
            Quantity.KNEE_BELOW_CROTCH: knee,
        },
        front.done(),
        back.done(),
        "leg points of the back 1 cm out on either side, the inseam's from memory",
    )


def cutters_draft(w: Wearer) -> SystemDraft:
    """Return the plain-front trouser of a cutters' forum; its waistband is taken off the rise."""
    depth, level = w.standing_rise - cm(3), w.hip / 12
    fork, hip, waist = w.hip / 12, w.hip / 4, w.waist / 4 + cm(2)
    knee = w.leg / 2 - cm(5)
    front = PanelSketch()
    front.at(Drawn.FORK, fork.mm, 0)
    front.at(Drawn.HIP_POINT, 0, level.mm)
    front.at(Drawn.HIP_AT_SIDE, -hip.mm, level.mm)
    front.at(CROTCH_AT_SIDE, fork.mm - w.hip.mm / 3, 0)
    front.at(Drawn.CENTRE_AT_WAIST, -10, depth.mm)
    front.at(Drawn.SIDE_AT_WAIST, -waist.mm, depth.mm)
    front.leg(-w.hip.mm / 12, knee.mm, w.knee.mm / 4, w.leg.mm, w.hem.mm / 4)
    front.join(Drawn.SIDE_AT_WAIST, Drawn.CENTRE_AT_WAIST, Drawn.HIP_POINT)
    front.curve(Drawn.HIP_POINT, Drawn.FORK, Point(0, 0), 45)
    front.join(Drawn.SIDE_AT_WAIST, Drawn.HIP_AT_SIDE, CROTCH_AT_SIDE, Drawn.KNEE_AT_SIDE, Drawn.HEM_AT_SIDE)
    front.join(Drawn.FORK, Drawn.KNEE_AT_INSEAM, Drawn.HEM_AT_INSEAM, Drawn.HEM_AT_SIDE)
    return SystemDraft(
        "Wauch",
        "Mansie Wauch, “Basic trouser draft”, Cutter and Tailor forum",
        {
            Quantity.CROTCH_DEPTH: depth,
            Quantity.HIP_LEVEL_ABOVE_CROTCH: level,
            Quantity.FRONT_HIP_WIDTH: hip,
            Quantity.FRONT_FORK: fork,
            Quantity.CURVE_OFF_CORNER: cm(4.5),
            Quantity.CENTRE_FRONT_IN_AT_WAIST: cm(1),
            Quantity.CENTRE_FRONT_BELOW_WAIST: cm(0),
            Quantity.FRONT_WAIST: waist,
            Quantity.KNEE_BELOW_CROTCH: knee,
        },
        front.done(),
        remarks="3 cm of waistband are off the depth; the back was read below the knee only",
    )


def designers_draft(w: Wearer) -> SystemDraft:
    """Return the pantaloon front of 1918, its lesson 82; inches and quarters of the girths."""
    depth, fork = w.standing_rise, w.hip / 16
    hip, waist, drop = w.hip / 4, w.waist / 4 + mm(2 * INCH), mm(INCH / 2)
    knee = w.leg / 2 - mm(2 * INCH)
    crease = (fork.mm - hip.mm) / 2
    front = PanelSketch()
    front.at(Drawn.FORK, fork.mm, 0)
    front.at(Drawn.CURVE_START, 0, fork.mm)
    front.at(CROTCH_AT_SIDE, -hip.mm, 0)
    front.at(Drawn.CENTRE_AT_WAIST, 0, depth.mm - drop.mm)
    front.at(Drawn.SIDE_AT_WAIST, -waist.mm, depth.mm)
    front.at(Drawn.HEM_AT_INSEAM, crease + w.hem.mm / 4, -w.leg.mm)
    front.at(Drawn.HEM_AT_SIDE, crease - w.hem.mm / 4, -w.leg.mm)
    front.join(Drawn.SIDE_AT_WAIST, Drawn.CENTRE_AT_WAIST, Drawn.CURVE_START)
    # The middle of the chord, pushed half an inch towards the corner.
    off = mm(fork.mm / math.sqrt(2) - INCH / 2)
    front.curve(Drawn.CURVE_START, Drawn.FORK, Point(0, 0), max(off.mm, 0.0))
    front.join(Drawn.SIDE_AT_WAIST, CROTCH_AT_SIDE, Drawn.HEM_AT_SIDE)
    front.join(Drawn.FORK, Drawn.HEM_AT_INSEAM, Drawn.HEM_AT_SIDE)
    return SystemDraft(
        "Rosenfeld",
        "I. Rosenfeld, The Practical Designer, 1918, lesson 82",
        {
            Quantity.CROTCH_DEPTH: depth,
            Quantity.FRONT_HIP_WIDTH: hip,
            Quantity.FRONT_FORK: fork,
            Quantity.CURVE_OFF_CORNER: off,
            Quantity.CENTRE_FRONT_IN_AT_WAIST: cm(0),
            Quantity.CENTRE_FRONT_BELOW_WAIST: drop,
            Quantity.FRONT_WAIST: waist,
            Quantity.KNEE_BELOW_CROTCH: knee,
        },
        front.done(),
        remarks="the hip is laid off on the crotch line; pleats in the waist",
    )


def home_draft(w: Wearer) -> SystemDraft:
    """Return the home-dressmaking draft of an Italian page, front and back."""
    depth, level = w.rise, w.rise / 2
    fork, further = w.hip / 20 + cm(1), w.hip / 20 + cm(2)
    front_hip, front_waist, back_waist = w.hip / 4, w.waist / 4 + cm(1), w.waist / 4 + cm(3)
    back_hip, inwards = w.hip / 4 + cm(2), w.hip / 24
    crease = front_hip.mm / 3
    front, back = PanelSketch(), PanelSketch()
    front.at(Drawn.FORK, fork.mm, 0)
    front.at(Drawn.HIP_POINT, 0, level.mm)
    front.at(Drawn.HIP_AT_SIDE, -front_hip.mm, level.mm)
    front.at(Drawn.CENTRE_AT_WAIST, 0, depth.mm)
    front.at(Drawn.SIDE_AT_WAIST, -front_waist.mm, depth.mm)
    back.at(Drawn.FORK, fork.mm + further.mm, -10)
    back.at(Drawn.HIP_POINT, 0, level.mm)
    back.at(Drawn.HIP_AT_SIDE, -back_hip.mm, level.mm)
    back.at(Drawn.CENTRE_AT_WAIST, -inwards.mm, depth.mm + 40)
    across = math.sqrt(max(back_waist.mm**2 - 40**2, 0.0))
    back.at(Drawn.SIDE_AT_WAIST, -inwards.mm - across, depth.mm)
    for out, more in ((front, 0.0), (back, 20.0)):
        for side, sign in (("inseam", 1), ("side", -1)):
            out.at(f"hem at the {side}", -crease + sign * (90 + more), -w.leg.mm)
        out.join(Drawn.SIDE_AT_WAIST, Drawn.CENTRE_AT_WAIST, Drawn.HIP_POINT)
        out.curve(Drawn.HIP_POINT, Drawn.FORK, Point(0, out.points[Drawn.FORK].y), None)
        out.join(Drawn.SIDE_AT_WAIST, Drawn.HIP_AT_SIDE, Drawn.HEM_AT_SIDE)
        out.join(Drawn.FORK, Drawn.HEM_AT_INSEAM, Drawn.HEM_AT_SIDE)
    return SystemDraft(
        "Italian home draft",
        "“Pantaloni: cartamodello”, a home-dressmaking page",
        {
            Quantity.CROTCH_DEPTH: depth,
            Quantity.HIP_LEVEL_ABOVE_CROTCH: level,
            Quantity.FRONT_HIP_WIDTH: front_hip,
            Quantity.BACK_HIP_WIDTH: back_hip,
            Quantity.FRONT_FORK: fork,
            Quantity.BACK_FORK: fork + further,
            Quantity.BACK_FORK_DROP: cm(1),
            Quantity.CENTRE_FRONT_IN_AT_WAIST: cm(0),
            Quantity.CENTRE_FRONT_BELOW_WAIST: cm(0),
            Quantity.CENTRE_BACK_IN_AT_WAIST: inwards,
            Quantity.CENTRE_BACK_ABOVE_WAIST: cm(4),
            Quantity.FRONT_WAIST: front_waist,
            Quantity.BACK_WAIST: back_waist,
        },
        front.done(),
        back.done(),
        "hem 9 cm to either side of the crease (8 to 10); its curves are not stated",
    )


def half_girth_draft(w: Wearer) -> SystemDraft:
    """Return the half-girth draft of a Russian home-sewing page: even the depth comes from the hip."""
    half, half_waist = (w.hip / 2).called("half hip"), (w.waist / 2).called("half waist")
    depth, width = half / 2 + cm(1), half / 2 + cm(0.5)
    fork, level, waist = half / 10, depth / 3, half_waist / 2
    surplus = (width - waist - cm(0.5)) / 2
    crease = (fork.mm - width.mm) / 2
    front = PanelSketch()
    front.at(Drawn.FORK, fork.mm, 0)
    front.at(Drawn.HIP_POINT, 0, level.mm)
    front.at(Drawn.HIP_AT_SIDE, -width.mm, level.mm)
    front.at(Drawn.CENTRE_AT_WAIST, -5, depth.mm)
    front.at(Drawn.SIDE_AT_WAIST, -width.mm + surplus.mm, depth.mm)
    for side, sign in (("inseam", 1), ("side", -1)):
        front.at(f"hem at the {side}", crease + sign * (crease + width.mm - 50), -w.leg.mm)
    front.join(Drawn.SIDE_AT_WAIST, Drawn.CENTRE_AT_WAIST, Drawn.HIP_POINT)
    front.curve(Drawn.HIP_POINT, Drawn.FORK, Point(0, 0), None)
    front.join(Drawn.SIDE_AT_WAIST, Drawn.HIP_AT_SIDE, Drawn.HEM_AT_SIDE)
    front.join(Drawn.FORK, Drawn.HEM_AT_INSEAM, Drawn.HEM_AT_SIDE)
    return SystemDraft(
        "half-girth draft",
        "half-girth drafts of two Russian home-sewing pages (handmadebase.com, bliss-deco.ru)",
        {
            Quantity.CROTCH_DEPTH: depth,
            Quantity.HIP_LEVEL_ABOVE_CROTCH: level,
            Quantity.FRONT_HIP_WIDTH: width,
            Quantity.FRONT_FORK: fork,
            Quantity.CENTRE_FRONT_IN_AT_WAIST: cm(0.5),
            Quantity.CENTRE_FRONT_BELOW_WAIST: cm(0),
            Quantity.FRONT_WAIST: width - surplus - cm(0.5),
        },
        front.done(),
        remarks="half of the waist's surplus is a tuck; hem 5 cm in from the side (4 to 6); curve not stated",
    )


SYSTEMS: tuple[Callable[[Wearer], SystemDraft], ...] = (
    metric_block,
    cutters_draft,
    designers_draft,
    home_draft,
    half_girth_draft,
)
"""The systems that are compared."""
