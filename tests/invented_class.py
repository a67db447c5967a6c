"""A class of invented people, the same each time: bodies of ordinary proportions with some noise."""

from __future__ import annotations

import csv
from io import StringIO
from random import Random

NAMES = ("Łucja Wójcik", "Çağla İnce", "Ελένη Ράπτη", "Тарас Швець", "Ada Field", "Noor Haddad")
COLUMNS = (
    "wearer", "unit", "taken_on", "estimate_like", "waist_girth", "hip_girth", "inside_leg_height",
    "body_rise", "total_crotch_length", "thigh_girth", "knee_girth",
)  # fmt: skip


def people(count: int, seed: int = 1) -> list[dict[str, str]]:
    """Return the cells of so many invented people in cm; every third gives crotch, thigh and knee as well.

    Waist, rise and leg go with the hip as on ordinary bodies (from memory), give or take some centimetres.
    """
    dice = Random(seed)
    made = []
    for number in range(count):
        hip = dice.uniform(88, 118)
        leg = dice.uniform(70, 86)
        rise = 0.27 * hip + dice.uniform(-1, 1)
        body = {
            "waist_girth": hip - dice.uniform(16, 26), "hip_girth": hip, "inside_leg_height": leg,
            "body_rise": rise,
        }  # fmt: skip
        if number % 3 == 0:
            body |= {
                "total_crotch_length": 2 * rise + 0.18 * hip,
                "thigh_girth": 0.59 * hip,
                "knee_girth": 0.39 * hip,
            }
        cells = {key: f"{length:.1f}" for key, length in body.items()}
        made.append(
            {
                "wearer": NAMES[number % len(NAMES)],
                "unit": "cm",
                "estimate_like": ("women", "men")[number % 2],
            }
            | cells
        )
    return made


def table(rows: list[dict[str, str]], separator: str = ",") -> str:
    """Return the rows as CSV with a first row of names."""
    text = StringIO()
    writer = csv.DictWriter(text, COLUMNS, restval="", delimiter=separator, lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return text.getvalue()
