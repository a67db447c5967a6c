"""Breaks the tool on purpose: python tests/bench/fuzz.py [count [seed]]; else 500 cases and seed 1.

Each case damages good files, lets a command read them in a folder of its own, and looks at what came out: a
draft, or exit code 2 with a message in plain words. Anything else, a changed or left-over file, an endless
message or an endless wait, is printed with the number of the case, which is drawn from the seed alone.
"""

from __future__ import annotations

import os
import shutil
import signal
import sys
import tempfile
import traceback
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from random import Random
from time import perf_counter
from types import FrameType
from typing import NamedTuple

HOME = Path(__file__).parents[2]
sys.path.insert(0, str(HOME))

from click.testing import CliRunner  # noqa: E402

from outputs.commands import main as command  # noqa: E402
from tests.bench.damage import NASTY, Place, damaged, place  # noqa: E402
from tests.outputs.typed_files import FULL, UNEVEN  # noqa: E402

LONGEST_WAIT = 20.0
"""Seconds of work after which a case counts as endless; a good file takes less than one."""
LONGEST_LINE = 6000
"""Letters; a name typed is told back whole, and no disk takes a path longer than 4096."""
MOST_LINES = 90
NO_PIECE = "No piece has this in its name"
"""How `draft --only nothing` ends once all pieces are drafted: the cheapest way to draft all of them."""

CLASS = """\
wearer,unit,waist_girth,hip_girth,inside_leg_height,body_rise,left.thigh_girth,cloth.stretch
Łucja Wójcik,cm,76,98,78,27,,2
Тарас Швець,cm,84,100,81,"26,5",58,
Çağla İnce,in,30,"38 1/2",31,"10 1/2",,"1,5"
"""
EXTRAS = """
[cloth]
lengthwise_change = "-3"
stretch = "2 %"

[fitting]
full_seat = "1.5 cm"
lower_rise = 1
"""


class Endless(BaseException):
    """A command took too long."""


class Case(NamedTuple):
    """One way to use a file: how often, and the words of the command, "@" for the damaged file.

    Those that draft whole jeans or start workers come less often, for they take a second.
    """

    kind: str
    share: float
    words: tuple[str, ...]


PICTURE = ("styles", "straight", "--picture", "x.svg", "--on", "@")
CASES = (
    Case("measurements", 4, PICTURE),
    Case("measurements", 2, ("mark", "@", "x.toml", "--form")),
    Case("measurements", 1, ("draft", "@", "--only", "nothing", "--out", "x")),
    Case("fitting", 4, PICTURE),
    Case("fitting", 0.5, ("draft", "@", "--only", "nothing", "--out", "x")),
    Case("style", 1, ("draft", "ada.toml", "--style", "@", "--only", "nothing", "--out", "x")),
    Case("style", 2, ("styles", "@")),
    Case("style", 3, ("style-file", "Mine", "--like", "@", "--out", "x.toml")),
    Case("class", 0.15, ("draft-all", "@", "--only", "nothing", "--out", "x")),
    Case("lengths", 4, ("mark", "ada.toml", "@")),
    Case("lengths csv", 4, ("mark", "ada.toml", "@")),
    Case("plan", 1, ("cloth", "ada.toml", "--plan", "@", "--out", "x")),
    Case("inputs", 2, ("compare", "@", "inputs.json", "--out", "x.png")),
    Case("words", 4, ()),
)
ENDINGS = {"plan": ".json", "inputs": ".json", "class": ".csv", "lengths csv": ".csv"}

OPTIONS = (
    "--paper", "--printed-bar", "--only", "--set", "--below-waist", "--stretch", "--lengthwise-change",
    "--crosswise-change", "--style", "--rise", "--band", "--laps", "--seams", "--format",
)  # fmt: skip
WORDS = (
    ("draft", "ada.toml", "--out", "x", "--only", "nothing"),
    ("cloth", "ada.toml", "--out", "x", "--plan", "nothing.json"),
    ("measure",),
    ("style-file",),
    ("styles",),
    ("check-print",),
    ("measuring-sheet", "--unit"),
    ("compare", "ada.toml"),
    ("mark", "ada.toml"),
    ("draft-all",),
    ("measure-twice",),
    ("systems",),
    ("fitting-guide", "--unit"),
    ("worksheet", "ada.toml", "--scale"),
    ("demo", "--paper"),
)


def good_files(home: Path) -> dict[str, bytes]:
    """Return a good file of every kind, as the commands write them."""
    (home / "ada.toml").write_text(FULL)
    for words in (
        ("mark", "ada.toml", "ben.toml", "--form"),
        ("style-file", "Mine", "--out", "mine.toml"),
        ("cloth", "ada.toml", "--out", "cloth"),
        ("draft", "ada.toml", "--out", "draft"),
    ):
        done = CliRunner().invoke(command.main, words)
        assert done.exit_code == 0, done.output
    form = (home / "ben.toml").read_text(encoding="utf-8").replace('""', '"6,9"')
    rows = [line.partition("#")[0].replace("=", ",") for line in form.splitlines() if line[:1].isdigit()]
    return {
        "measurements": (FULL + UNEVEN[UNEVEN.index("\n[left]") :]).encode(),
        "fitting": (FULL + EXTRAS).encode(),
        "style": (home / "mine.toml").read_bytes(),
        "class": CLASS.encode(),
        "lengths": form.encode(),
        "lengths csv": "\n".join(rows).encode(),
        "plan": (home / "cloth" / "cloth-plan.json").read_bytes(),
        "inputs": (home / "draft" / "inputs.json").read_bytes(),
    }


def a_case(number: int, seed: int, good: dict[str, bytes], folder: Path) -> tuple[str, list[str]]:
    """Lay the files of one case into an empty folder; return its kind and the words of its command."""
    dice = Random(f"{seed} {number}")
    (folder / "ada.toml").write_bytes(FULL.encode())
    (folder / "inputs.json").write_bytes(good["inputs"])
    case = dice.choices(CASES, [case.share for case in CASES])[0]
    if case.kind == "words":
        words = list(dice.choice(WORDS))
        for _ in range(dice.choice((0, 1, 1, 2, 3))):
            value = dice.choice(NASTY).replace("\0", "")
            words += [dice.choice(OPTIONS), value] if words[0] in ("draft", "cloth") else [value]
        return case.kind, words
    name = f"damaged{ENDINGS.get(case.kind, '.toml')}"
    where = dice.choices(list(Place), [40] + [1] * (len(Place) - 1))[0]
    content = damaged(good[case.kind], dice) if where is Place.FILE else good[case.kind]
    path = place(folder / name, content, where)
    return case.kind, [path.name if word == "@" else word for word in case.words]


def run(words: list[str], folder: Path) -> tuple[str, str]:
    """Run one command in a folder; return "accepted", "refused" or what was wrong, and what was said."""
    before = _listed(folder)
    try:
        with _limited(LONGEST_WAIT):
            done = CliRunner().invoke(command.main, words)
    except Endless as error:
        return "endless", "".join(traceback.format_exception(error)[-6:])
    said = done.stderr
    if done.exception and not isinstance(done.exception, SystemExit):
        return "crashed", "".join(traceback.format_exception(done.exception))
    after = _listed(folder)
    if any(after.get(name) != held for name, held in before.items()):
        return "a file was changed", said
    drafted = NO_PIECE in said or done.exit_code == 0
    new = {name for name in after if name not in before}
    if any(".writing-" in name for name in new) or (new and done.exit_code and "draft-all" not in words):
        return "left-over", f"{sorted(new)} {said}"
    if done.exit_code not in (0, 2):
        return f"exit code {done.exit_code}", said
    if done.exit_code and not said.strip():
        return "no reason", said
    lines = said.splitlines()
    if len(lines) > MOST_LINES or any(len(line) > LONGEST_LINE for line in lines):
        return "endless words", f"{len(lines)} lines, {max(map(len, lines))} letters\n{said[:600]}"
    if any(not letter.isprintable() for letter in said.replace("\n", "").replace("\t", "")):
        return "words that cannot be shown", said
    return ("accepted" if drafted else "refused"), said


def _listed(folder: Path) -> dict[str, bytes | None]:
    """Return what lies under a folder, with the bytes of ordinary files."""
    return {
        str(path.relative_to(folder)): path.read_bytes() if path.is_file() and not path.is_symlink() else None
        for path in folder.rglob("*")
    }


@contextmanager
def _limited(seconds: float) -> Iterator[None]:
    """Raise `Endless` after so much work of the processor."""

    def stop(number: int, frame: FrameType | None) -> None:
        raise Endless

    signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)


def fuzz(count: int, seed: int, first: int = 0, show: Callable[[str], None] = print) -> Counter[str]:
    """Try so many cases; return how often each thing came out, in all and by kind."""
    counts: Counter[str] = Counter()
    start = Path.cwd()
    with tempfile.TemporaryDirectory() as made:
        home = Path(made)
        os.chdir(home)
        try:
            good = good_files(home)
            for number in range(first, first + count):
                folder = home / f"case-{number}"
                folder.mkdir()
                os.chdir(folder)
                kind, words = a_case(number, seed, good, folder)
                outcome, said = run(words, folder)
                counts[outcome] += 1
                counts[f"  {kind}: {outcome}"] += 1
                if outcome not in ("accepted", "refused"):
                    show(f"case {number}, {kind}: {outcome}: {[word[:60] for word in words]}\n{said[-900:]}")
                os.chdir(home)
                shutil.rmtree(folder)
        finally:
            os.chdir(start)
    return counts


def main(count: int = 500, seed: int = 1, first: int = 0) -> None:
    """Try cases and print what came out of them."""
    started = perf_counter()
    counts = fuzz(count, seed, first)
    print(f"{count} cases of seed {seed}, {perf_counter() - started:.0f} s")
    for name, number in sorted(counts.items(), key=lambda item: (item[0].startswith(" "), item[0])):
        print(f"{name:44s} {number:6d}")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
