"""How the block's shape pleases a cutter, on two populations: python tests/bench/bench_shape.py [every].

On every so many-th person of the army survey (waist at the navel) and on the bodies of `bdims` with their
natural waist it measures the drawn lines, women and men apart, and prints the share that meets each row and
the percentiles behind it.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path

os.environ.update(dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"), "1"))
sys.path.insert(0, str(Path(__file__).parents[2]))

import csv
from multiprocessing import Pool

import numpy as np

from drafting import DraftRefused, Measurements, block_figures, block_lines, draft_block
from drafting.report.block_findings import block_findings
from tests.bench.shape import MEDIANS, ROWS, Numbers, shape
from tests.outside.survey import COLUMNS, SURVEY
from tests.outside.test_bdims import bodies

PERCENTILES = (1, 5, 25, 50, 75, 95, 99)


def surveyed(every: int) -> list[tuple[str, Measurements]]:
    """Return sex and measurements of every so many-th person."""
    with SURVEY.open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))[::every]
    return [
        (row["sex"], Measurements(**{key: float(row[column]) * 10 for column, key in COLUMNS.items()}))
        for row in rows
    ]


def measured(body: Measurements) -> dict[str, float] | None:
    """Return the measures of one body, None when it is refused."""
    try:
        block = draft_block(body)
    except DraftRefused:
        return None
    alone = draft_block(body, fitted=False)
    lines, plain = block_lines(block), block_lines(alone)
    out = shape(lines, body, block.ease.hip, block.ease.waist)
    before = shape(plain, body, block.ease.hip, block.ease.waist)
    wanted = block.body["total_crotch_length"].mm + block.ease.crotch
    out["miss"] = out["seam"] - wanted
    out["unfitted miss"] = before["seam"] - wanted
    out["told"] = float("crotch-out-of-reach" in {f.code for f in block_findings(block)})
    told = told_means(block)
    drawn = {
        "centre_back_height": out["back top"] - before["back top"],
        "back_fork": out["back fork"] - before["back fork"],
        "crotch_depth": before["front fork y"] - out["front fork y"],
        "front_fork": out["front fork"] - before["front fork"],
        "centre_front_height": out["front top"] - before["front top"],
        "seat_line_lean": out["back lean"] - before["back lean"],
    }
    out["means off"] = max(
        abs(told.get(key, 0.0) - value) * (10 if key == "seat_line_lean" else 1)
        for key, value in drawn.items()
    )
    out["front fork share"], out["back fork share"] = (
        100 * out[f"{name} fork"] / out["hip"] for name in ("front", "back")
    )
    out["ratio"] = out["front fork"] / out["back fork"]
    out["back in share"] = out["back in"] / max(out["half"], 1.0)
    out["s"] = float(getattr(block.fit, "number", 0.0))
    return out


def told_means(block) -> dict[str, float]:  # type: ignore[no-untyped-def]
    """Return what the figures tell of each means, mm or degrees."""
    rows = block_figures(block)["crotch"]["means"]
    return {
        row.get("key", row["name"].replace("-", "_").replace(" ", "_")): row["amount"]
        * (10 if row["unit"] == "cm" else 1)
        for row in rows
    }


def table(groups: dict[str, Numbers]) -> list[str]:
    """Return the shares of every row, one column a group."""
    text = [f"{'':46}" + "".join(f"{name:>16}" for name in groups) + "   goal"]
    for row in ROWS:
        cells = []
        for n in groups.values():
            whom = row.whom(n) if row.whom else np.ones(len(n["hip"]), dtype=bool)
            cells.append(f"{100 * row.holds(n)[whom].mean():13.1f} %" if whom.any() else f"{'-':>15}")
        text.append(f"{row.name:46}" + " ".join(cells) + f"  {row.goal}")
    return text


def percentiles(groups: dict[str, Numbers]) -> list[str]:
    """Return the percentiles of what lies behind the rows."""
    text = [f"percentiles {PERCENTILES}"]
    for key in MEDIANS:
        for name, n in groups.items():
            cells = " ".join(
                f"{v:8.2f}" if abs(v) < 10 else f"{v:8.1f}" for v in np.percentile(n[key], PERCENTILES)
            )
            text.append(f"{key:22} {name:16} {cells}  sd {n[key].std():.2f}")
    return text


def gathered(people: list[tuple[str, Measurements]], pool) -> tuple[list[str], list[dict[str, float] | None]]:  # type: ignore[no-untyped-def]
    return [sex for sex, _ in people], pool.map(measured, [body for _, body in people], chunksize=8)


def main() -> None:
    every = int(sys.argv[1]) if len(sys.argv) > 1 else 1
    groups: dict[str, Numbers] = {}
    with Pool(2) as pool:
        for source, people in (("survey", surveyed(every)), ("bdims", bodies()[:: max(every // 3, 1)])):
            sexes, all_ = gathered(people, pool)
            refused = sum(one is None for one in all_)
            print(f"{source}: {len(all_)} people, {refused} refused")
            for sex, name in (("F", "women"), ("M", "men")):
                some = [one for own, one in zip(sexes, all_, strict=True) if one and own == sex]
                groups[f"{source} {name}"] = {key: np.array([one[key] for one in some]) for key in some[0]}
    print("\n".join(table(groups)))
    if "-p" in sys.argv:
        print("\n".join(percentiles(groups)))


if __name__ == "__main__":
    main()
