"""Hand drafts of trousers as their sources state them, in formulas of the wearer's measurements.

Only formulas and facts are taken over. Some sources were read for the front alone, some give no depth for the
crotch curve; what had to be read into one stands in its remarks.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from drafting.base.formula import cm, mm, named
from drafting.geometry.points import Point
from drafting.lesson.published import Outline, SystemDraft, Wearer

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
    front = Outline()
    front.at("fork", fork.mm, 0)
    front.at("hip point", 0, level.mm)
    front.at("hip at the side", -front_hip.mm, level.mm)
    front.at("centre at the waist", -10, depth.mm)
    front.at("side at the waist", -10 - front_waist.mm, depth.mm)
    front.leg(-crease.mm, knee.mm, half_knee, leg, half_hem)
    front.join("side at the waist", "centre at the waist", "hip point")
    off = cm(3.25 if large else 3)
    front.curve("hip point", "fork", Point(0, 0), off.mm)
    front.join("side at the waist", "hip at the side", "knee at the side", "hem at the side")
    front.join("fork", "knee at the inseam", "hem at the inseam", "hem at the side")

    # The back is drafted over the front; its own plumb line is that of its centre line at hip level.
    inwards = crease.mm / 4
    lean = 20 / (depth.mm / 2 + 20)
    plumb = -inwards + (depth.mm / 2 - level.mm) * lean
    back = Outline()
    back.at("fork", fork.mm * 1.5 - plumb, -5)
    back.at("hip point", 0, level.mm)
    back.at("hip at the side", -inwards - back_hip.mm - plumb, level.mm)
    back.at("centre at the waist", -inwards - 20 - plumb, depth.mm + 20)
    across = math.sqrt(max(back_waist.mm**2 - 20**2, 0.0))
    back.at("side at the waist", -inwards - 20 - across - plumb, depth.mm)
    back.at("curve start", -inwards - plumb, depth.mm / 2)
    back.leg(-crease.mm - plumb, knee.mm, half_knee + 10, leg, half_hem + 10)
    back.join("side at the waist", "centre at the waist", "curve start")
    back.curve("curve start", "fork", Point(-inwards - plumb, 0), 45 if large else 42.5)
    back.join("side at the waist", "hip at the side", "knee at the side", "hem at the side")
    back.join("fork", "knee at the inseam", "hem at the inseam", "hem at the side")
    return SystemDraft(
        "metric block",
        "W. Aldrich's metric trouser block as “Fashion English practical textbook”, part 3, repeats it",
        {
            "crotch depth": depth, "hip level above crotch": level, "front hip width": front_hip,
            "back hip width": named("from its centre line", -back.points["hip at the side"].x),
            "front fork": fork, "back fork": named("from its centre line", back.points["fork"].x),
            "back fork drop": cm(0.5), "curve off the corner": off, "centre front in at the waist": cm(1),
            "centre front below the waist": cm(0), "centre back in at the waist":
                named("from its centre line", -back.points["centre at the waist"].x),
            "centre back above the waist": cm(2), "front waist": front_waist, "back waist": back_waist,
            "knee below crotch": knee,
        },
        front.done(), back.done(),
        "leg points of the back 1 cm out on either side, the inseam's from memory",
    )  # fmt: skip


def cutters_draft(w: Wearer) -> SystemDraft:
    """Return the plain-front trouser of a cutters' forum; its waistband is taken off the rise."""
    depth, level = w.standing_rise - cm(3), w.hip / 12
    fork, hip, waist = w.hip / 12, w.hip / 4, w.waist / 4 + cm(2)
    knee = w.leg / 2 - cm(5)
    front = Outline()
    front.at("fork", fork.mm, 0)
    front.at("hip point", 0, level.mm)
    front.at("hip at the side", -hip.mm, level.mm)
    front.at("crotch at the side", fork.mm - w.hip.mm / 3, 0)
    front.at("centre at the waist", -10, depth.mm)
    front.at("side at the waist", -waist.mm, depth.mm)
    front.leg(-w.hip.mm / 12, knee.mm, w.knee.mm / 4, w.leg.mm, w.hem.mm / 4)
    front.join("side at the waist", "centre at the waist", "hip point")
    front.curve("hip point", "fork", Point(0, 0), 45)
    front.join(
        "side at the waist", "hip at the side", "crotch at the side", "knee at the side", "hem at the side"
    )
    front.join("fork", "knee at the inseam", "hem at the inseam", "hem at the side")
    return SystemDraft(
        "Wauch", "Mansie Wauch, “Basic trouser draft”, Cutter and Tailor forum",
        {
            "crotch depth": depth, "hip level above crotch": level, "front hip width": hip,
            "front fork": fork, "curve off the corner": cm(4.5), "centre front in at the waist": cm(1),
            "centre front below the waist": cm(0), "front waist": waist, "knee below crotch": knee,
        },
        front.done(), remarks="3 cm of waistband are off the depth; the back was read below the knee only",
    )  # fmt: skip


def designers_draft(w: Wearer) -> SystemDraft:
    """Return the pantaloon front of 1918, its lesson 82; inches and quarters of the girths."""
    depth, fork = w.standing_rise, w.hip / 16
    hip, waist, drop = w.hip / 4, w.waist / 4 + mm(2 * INCH), mm(INCH / 2)
    knee = w.leg / 2 - mm(2 * INCH)
    crease = (fork.mm - hip.mm) / 2
    front = Outline()
    front.at("fork", fork.mm, 0)
    front.at("curve start", 0, fork.mm)
    front.at("crotch at the side", -hip.mm, 0)
    front.at("centre at the waist", 0, depth.mm - drop.mm)
    front.at("side at the waist", -waist.mm, depth.mm)
    front.at("hem at the inseam", crease + w.hem.mm / 4, -w.leg.mm)
    front.at("hem at the side", crease - w.hem.mm / 4, -w.leg.mm)
    front.join("side at the waist", "centre at the waist", "curve start")
    # The middle of the chord, pushed half an inch towards the corner.
    off = mm(fork.mm / math.sqrt(2) - INCH / 2)
    front.curve("curve start", "fork", Point(0, 0), max(off.mm, 0.0))
    front.join("side at the waist", "crotch at the side", "hem at the side")
    front.join("fork", "hem at the inseam", "hem at the side")
    return SystemDraft(
        "Rosenfeld", "I. Rosenfeld, The Practical Designer, 1918, lesson 82",
        {
            "crotch depth": depth, "front hip width": hip, "front fork": fork, "curve off the corner": off,
            "centre front in at the waist": cm(0), "centre front below the waist": drop, "front waist": waist,
            "knee below crotch": knee,
        },
        front.done(), remarks="the hip is laid off on the crotch line; pleats in the waist",
    )  # fmt: skip


def home_draft(w: Wearer) -> SystemDraft:
    """Return the home-dressmaking draft of an Italian page, front and back."""
    depth, level = w.rise, w.rise / 2
    fork, further = w.hip / 20 + cm(1), w.hip / 20 + cm(2)
    front_hip, front_waist, back_waist = w.hip / 4, w.waist / 4 + cm(1), w.waist / 4 + cm(3)
    back_hip, inwards = w.hip / 4 + cm(2), w.hip / 24
    crease = front_hip.mm / 3
    front, back = Outline(), Outline()
    front.at("fork", fork.mm, 0)
    front.at("hip point", 0, level.mm)
    front.at("hip at the side", -front_hip.mm, level.mm)
    front.at("centre at the waist", 0, depth.mm)
    front.at("side at the waist", -front_waist.mm, depth.mm)
    back.at("fork", fork.mm + further.mm, -10)
    back.at("hip point", 0, level.mm)
    back.at("hip at the side", -back_hip.mm, level.mm)
    back.at("centre at the waist", -inwards.mm, depth.mm + 40)
    across = math.sqrt(max(back_waist.mm**2 - 40**2, 0.0))
    back.at("side at the waist", -inwards.mm - across, depth.mm)
    for out, more in ((front, 0.0), (back, 20.0)):
        for side, sign in (("inseam", 1), ("side", -1)):
            out.at(f"hem at the {side}", -crease + sign * (90 + more), -w.leg.mm)
        out.join("side at the waist", "centre at the waist", "hip point")
        out.curve("hip point", "fork", Point(0, out.points["fork"].y), None)
        out.join("side at the waist", "hip at the side", "hem at the side")
        out.join("fork", "hem at the inseam", "hem at the side")
    return SystemDraft(
        "Italian home draft", "“Pantaloni: cartamodello”, a home-dressmaking page",
        {
            "crotch depth": depth, "hip level above crotch": level, "front hip width": front_hip,
            "back hip width": back_hip, "front fork": fork, "back fork": fork + further,
            "back fork drop": cm(1), "centre front in at the waist": cm(0),
            "centre front below the waist": cm(0), "centre back in at the waist": inwards,
            "centre back above the waist": cm(4), "front waist": front_waist, "back waist": back_waist,
        },
        front.done(), back.done(),
        "hem 9 cm to either side of the crease (8 to 10); its curves are not stated",
    )  # fmt: skip


def half_girth_draft(w: Wearer) -> SystemDraft:
    """Return the half-girth draft of a Russian home-sewing page: even the depth comes from the hip."""
    half, half_waist = (w.hip / 2).called("half hip"), (w.waist / 2).called("half waist")
    depth, width = half / 2 + cm(1), half / 2 + cm(0.5)
    fork, level, waist = half / 10, depth / 3, half_waist / 2
    surplus = (width - waist - cm(0.5)) / 2
    crease = (fork.mm - width.mm) / 2
    front = Outline()
    front.at("fork", fork.mm, 0)
    front.at("hip point", 0, level.mm)
    front.at("hip at the side", -width.mm, level.mm)
    front.at("centre at the waist", -5, depth.mm)
    front.at("side at the waist", -width.mm + surplus.mm, depth.mm)
    for side, sign in (("inseam", 1), ("side", -1)):
        front.at(f"hem at the {side}", crease + sign * (crease + width.mm - 50), -w.leg.mm)
    front.join("side at the waist", "centre at the waist", "hip point")
    front.curve("hip point", "fork", Point(0, 0), None)
    front.join("side at the waist", "hip at the side", "hem at the side")
    front.join("fork", "hem at the inseam", "hem at the side")
    return SystemDraft(
        "half-girth draft",
        "half-girth drafts of two Russian home-sewing pages (handmadebase.com, bliss-deco.ru)",
        {
            "crotch depth": depth, "hip level above crotch": level, "front hip width": width,
            "front fork": fork, "centre front in at the waist": cm(0.5),
            "centre front below the waist": cm(0), "front waist": width - surplus - cm(0.5),
        },
        front.done(),
        remarks="half of the waist's surplus is a tuck; hem 5 cm in from the side (4 to 6); curve not stated",
    )  # fmt: skip


SYSTEMS: tuple[Callable[[Wearer], SystemDraft], ...] = (
    metric_block, cutters_draft, designers_draft, home_draft, half_girth_draft,
)  # fmt: skip
"""The systems that are compared."""
