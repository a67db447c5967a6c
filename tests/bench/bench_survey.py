"""What the block does on the bodies of the army survey: python tests/bench/bench_survey.py [every].

Drafts everybody (or every so many-th) twice, by the proportions alone and fitted, and prints a
table: misses of the crotch seam, ease of the thigh, seams and joins by percentiles, then blocks a
second on one core, on two, and on a quarter and a half of the people. Without the survey's file beside the
project it says so.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path

# One block on one core: the linear algebra must not spread by itself.
os.environ.update(dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"), "1"))
sys.path.insert(0, str(Path(__file__).parents[2]))

from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass, fields
from multiprocessing import Pool
from time import perf_counter

import numpy as np

from drafting import Block, DraftRefused, Measurements, draft_block
from tests.outside.survey import SURVEY, body_of, everyone
from tests.outside.test_survey import CROTCH
from tests.sewn_block import joins, unfair_lines

PERCENTILES = (1, 5, 50, 95, 99)
ROUNDS = 3
"""Each timing is the best of so many: another program slows a round, none makes it faster."""


@dataclass(frozen=True)
class Outcome:
    """What came of one block; lengths in mm, angles in degrees."""

    crotch: float
    thigh: float
    thigh_wanted: float
    outseam: float
    inseam: float
    crotch_join: float
    centre_front: float
    centre_back: float
    side_waist: float
    dart: float
    girths: float
    unfair: float


def people(every: int) -> list[Measurements]:
    return [body_of(row) for row in everyone()[::every]]


def outcome(body: Measurements, *, fitted: bool) -> Outcome | None:
    """Return what came of a body, None when it was refused."""
    try:
        block = draft_block(body, fitted=fitted)
    except DraftRefused:
        return None
    front, back, turned = block.front, block.back, joins(block)
    assert body.total_crotch_length and body.thigh_girth
    return Outcome(
        crotch=block.crotch_length - body.total_crotch_length - block.ease.crotch,
        thigh=block.thigh_girth - body.thigh_girth,
        thigh_wanted=block.ease.thigh,
        outseam=abs(front.side.length - back.side.length),
        inseam=abs(front.lower.inseam.length - back.lower.inseam.length - block.proportions.inseam_ease),
        crotch_join=turned.crotch,
        centre_front=turned.centre_front,
        centre_back=turned.centre_back,
        side_waist=turned.side_waist,
        dart=turned.dart,
        girths=max(map(abs, girth_misses(block, body))),
        unfair=len(unfair_lines(block)),
    )


def girth_misses(block: Block, body: Measurements) -> tuple[float, ...]:
    """Return what waist, hip, knee and hem miss of body and ease, or of the leg's own widths, mm."""
    assert body.waist_girth and body.hip_girth
    return (
        block.waist_girth - body.waist_girth - block.ease.waist,
        block.hip_girth - body.hip_girth - block.ease.hip,
        block.leg_girth(block.levels.knee.mm) - block.leg.knee.mm,
        block.leg_girth(block.levels.hem.mm) - block.leg.hem.mm,
    )


def by_book(body: Measurements) -> Outcome | None:
    return outcome(body, fitted=False)


def by_fit(body: Measurements) -> Outcome | None:
    return outcome(body, fitted=True)


def draft_only(body: Measurements) -> None:
    """Draft and forget: what is timed."""
    with suppress(DraftRefused):
        draft_block(body)


def row(name: str, cells: Sequence[str]) -> str:
    return f"| {name} | {' | '.join(cells)} |"


def report(outcomes: Sequence[Sequence[Outcome | None]]) -> list[str]:
    """Return the table, one column for each way of drafting."""
    drafted = [[one for one in column if one] for column in outcomes]
    numbers = [
        {field.name: np.array([getattr(one, field.name) for one in column]) for field in fields(Outcome)}
        for column in drafted
    ]

    def spread(name: str) -> list[str]:
        return [" / ".join(str(round(v)) for v in np.percentile(n[name], PERCENTILES)) for n in numbers]

    def share(passes: Callable[[dict[str, np.ndarray]], np.ndarray]) -> list[str]:
        return [f"{100 * passes(n).mean():.1f} %" for n in numbers]

    def worst(name: str, digits: int) -> list[str]:
        return [f"{n[name].max():.{digits}f}" for n in numbers]

    def tail(name: str) -> list[str]:
        return [f"{np.percentile(n[name], 99):.1f} / {n[name].max():.1f}" for n in numbers]

    shown = " / ".join(map(str, PERCENTILES))
    return [
        row(f"{len(outcomes[0])} people", ["proportions alone", "fitted"]),
        "|---|---|---|",
        row("refused", [str(len(all_) - len(some)) for all_, some in zip(outcomes, drafted, strict=True)]),
        row(f"crotch seam less (crotch length + ease), mm, percentiles {shown}", spread("crotch")),
        row(f"crotch seam within {CROTCH:.0f} mm", share(lambda n: np.abs(n["crotch"]) <= CROTCH)),
        row(f"ease of the thigh, mm, percentiles {shown}", spread("thigh")),
        row("thigh with its whole ease", share(lambda n: n["thigh"] >= n["thigh_wanted"] - 0.1)),
        row("waist, hip, knee and hem within 1 mm", share(lambda n: n["girths"] <= 1)),
        row("outseam, front less back, largest, mm", worst("outseam", 3)),
        row("inseam, front less back less ease, largest, mm", worst("inseam", 3)),
        row("crotch across the inseam, degrees, 99th / largest", tail("crotch_join")),
        row("waist to centre front, off square", tail("centre_front")),
        row("waist to centre back, off square", tail("centre_back")),
        row("waist across the side seam, off straight", tail("side_waist")),
        row("waist across the closed dart", tail("dart")),
        row(
            "people with a line that bends back where a cutter's would not", share(lambda n: n["unfair"] > 0)
        ),
    ]


def best(work: Callable[[], object]) -> float:
    """Return the least seconds of a few rounds."""
    taken = []
    for _ in range(ROUNDS):
        start = perf_counter()
        work()
        taken.append(perf_counter() - start)
    return min(taken)


def main() -> None:
    if not SURVEY.exists():
        print("The survey's file is not beside the project; nothing to draft.")
        return
    bodies = people(int(sys.argv[1]) if len(sys.argv) > 1 else 1)
    with Pool() as pool:
        print("\n".join(report([pool.map(way, bodies, chunksize=50) for way in (by_book, by_fit)])))
    print()
    for name, some in (("a quarter", bodies[::4]), ("a half", bodies[::2]), ("all", bodies)):
        seconds = best(lambda some=some: [draft_only(body) for body in some])  # type: ignore[misc]
        print(f"one core, {name} ({len(some)}): {len(some) / seconds:.0f} blocks a second")
    with Pool(2) as pool:
        pool.map(draft_only, bodies[:100])  # both started
        seconds = best(lambda: pool.map(draft_only, bodies, chunksize=50))
    print(f"two cores, all ({len(bodies)}): {len(bodies) / seconds:.0f} blocks a second")


if __name__ == "__main__":
    main()
