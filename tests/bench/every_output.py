"""Writes the demo and twenty drafts over all options into a folder, and tells what each file holds as a hash.

    python -m tests.bench.every_output FOLDER > hashes

Run it on two states of the project, and `diff` of the two lists says which file changed by as much as a byte.
It runs the installed `jeansblock` beside the Python that runs it, so that a state is an environment.
"""

from __future__ import annotations

import hashlib
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

# Invented people, like those of the demo.
FILES = {
    "ada.toml": """wearer = "Ada Field"
unit = "cm"

[measurements]
waist_girth = 76
hip_girth = 98
inside_leg_height = 78
waist_height = 104.5
total_crotch_length = 69
thigh_girth = 58
knee_girth = 38
calf_girth = 36.5
""",
    "inches.toml": """wearer = "Bertram Holm"
unit = "in"

[measurements]
waist_girth = "38 1/2"
hip_girth = "41 1/4"
inside_leg_height = "31 1/2"
body_rise = "10 3/4"

[fitting]
full_seat = "1/2 in"

[cloth]
lengthwise_change = "-3 %"
""",
    "uneven.toml": """wearer = "Cosima Wren"
unit = "cm"

[measurements]
waist_girth = 81
hip_girth = 103
inside_leg_height = 77
waist_height = 103
total_crotch_length = 72

[left]
outside_leg_length = 104

[right]
outside_leg_length = 102.8
""",
    "class.csv": """wearer,unit,waist_girth,hip_girth,inside_leg_height,body_rise,total_crotch_length
Dora,cm,70,94,76,26,66
Emil,cm,86,99,82,25.5,
Fritz,cm,86,9,82,25.5,
""",
    "mine.toml": """name = "mine"
like = "slim"
below_waist = "3 cm"

[leg]
hem_of_hip = "38 %"
""",
}

COMMANDS = """
demo
draft ada.toml
draft ada.toml --out all --all-styles --format pdf --format svg --format dxf --format png
draft ada.toml --out once --style slim --style flare --shared-once --paper letter
draft ada.toml --out roll --paper "36 in" --style wide
draft ada.toml --out a0 --paper a0 --seams felled --band straight
draft ada.toml --out single --paper single --laps right --rise natural
draft ada.toml --out shrinks --lengthwise-change -5 --crosswise-change -3 --no-allowance
draft ada.toml --out stretch --stretch 25 --style skinny --orientation portrait
draft ada.toml --out buttons --set fly=buttons --set back_pocket.shape=square --rise low
draft ada.toml --out printer --printed-bar "97 mm" --paper a3 --toile
draft ada.toml --out apart --apart --only yoke --style mine.toml
draft inches.toml --style bootcut --paper either
draft inches.toml --out inch-shorts --style shorts --set turn_up=2in
draft uneven.toml --style tapered --format svg --format pdf
draft uneven.toml --out uneven-cropped --style cropped --orientation landscape
draft-all class.csv --out class --workers 1
worksheet ada.toml
worksheet inches.toml --out lesson --scale 1:5 --paper letter --blank
worksheet ada.toml --out marking --marking
systems ada.toml
cloth ada.toml
cloth ada.toml --out stretch-cloth --style wide --width "150 cm"
measure Ida
measure Ida --unit in --force
measuring-sheet "Ida Rook"
measuring-sheet "Ida Rook" --paper letter --force
measure-twice ada.toml
fitting-guide
check-print
compare ada-straight shrinks --out compare-two.png
compare stretch buttons
styles
styles straight
style-file own
draft --help
""".strip().splitlines()


def ended(folder: Path) -> Iterator[str]:
    """Run every command in a folder; yield a line for each with its exit code and what it said, as a hash."""
    import shlex

    program = Path(sys.executable).with_name("jeansblock")
    for command in COMMANDS:
        done = subprocess.run([program, *shlex.split(command)], cwd=folder, capture_output=True, check=False)
        yield f"{_hash(done.stdout + done.stderr)}  exit {done.returncode}  {command}"


def _hash(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()[:16]


def main() -> None:
    """Print a line for each command, then one for each file."""
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True)
    for name, text in FILES.items():
        (folder / name).write_text(text, encoding="utf-8")
    for line in ended(folder):
        print(line, flush=True)
    for path in sorted(path for path in folder.rglob("*") if path.is_file()):
        print(f"{_hash(path.read_bytes())}  {path.relative_to(folder)}")


if __name__ == "__main__":
    main()
