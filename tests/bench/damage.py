"""Ways to damage a good file, drawn by dice: its values, lines and bytes, and what stands in its place."""

from __future__ import annotations

import os
import re
from collections.abc import Callable
from enum import Enum
from pathlib import Path
from random import Random

NASTY = (
    "", " ", "0", "-0", "-1", "1e308", "-1e308", "1e-308", "1e999", "nan", "NaN", "inf", "-inf", "Infinity",
    "true", "false", "null", "None", "yes", "9" * 30, "9" * 5000, "0x" + "f" * 400, "0.000000001", "97,5",
    "38 1/2", "38½ in", "1/0", "371/2", "98 cm", "98\xa0cm", "98\xa0", "cm 98", "98 furlongs", "３８", "٩٨",
    "1979-05-27", "1979-05-27T07:32:00Z", "07:32:00", "[]", "[98, 98.5, 99]", "[98, \"x\", [1]]", "{}",
    "{ a = 1, b.c = 2 }", '"""', "'''", '"98', "“98”", "«98»", "98″", '"98""', "\\u0000", '"\\u001b[31mred"',
    '"a\\nb"', '"' + "x" * 500 + '"', "x" * 5000, "../../etc/passwd", "/etc/passwd", "/dev/null", "/dev/zero",
    "no/such/place", "CON", "nul.toml", "a/b", "..", ".", "-", "--", "--help", "%s%n{0}", "‮evil", "a\u200fb",
    "a\nb", "a\rb", "\x1b[31mred", "🙂", "\ud800".encode("utf-8", "surrogatepass").decode("utf-8", "replace"),
    "Żaneta Łęcka", "İPEK", "देवी", "50 %", "150 %", "-3 %", "1000000 %", "leg.hem_of_hip=40 %",
    "leg.hem_of_hip=999 %", "rise=low", "turn_up=4 cm", "a4", "36 in", "single", "shorts", "flare", "women",
)  # fmt: skip
"""Values as a person, a spreadsheet or a cat may type them."""

_VALUE = re.compile(rb"""(?<=[=:,])(\s*)("[^"\n]*"|[^\s,{}\[\]#]+)""")
_NUMBER = re.compile(rb"-?[0-9]+(?:\.[0-9]+)?")


class Place(Enum):
    """What stands where the file should be."""

    FILE = "file"
    MISSING = "missing"
    FOLDER = "folder"
    PIPE = "pipe"
    DEVICE = "device"
    LINK_TO_NOWHERE = "link to nowhere"
    LINK_TO_ITSELF = "link to itself"
    ODD_NAME = "odd name"
    LONG_NAME = "long name"
    NO_TEXT_NAME = "name that is no text"


def place(path: Path, content: bytes, where: Place) -> Path:
    """Put what `where` says at a path, or beside it; return what to name on the command line."""
    names = {
        Place.ODD_NAME: f"a\nb‮\x1b[31m '\"{path.suffix}",
        Place.NO_TEXT_NAME: f"{os.fsdecode(b'Ad' + bytes([0xE0]))}{path.suffix}",
    }
    if where in names:
        path = path.with_name(names[where])
    if where in (Place.FILE, *names):
        path.write_bytes(content)
    elif where is Place.FOLDER:
        path.mkdir()
    elif where is Place.PIPE:
        os.mkfifo(path)
    elif where is Place.DEVICE:
        path.symlink_to("/dev/zero")
    elif where is Place.LINK_TO_NOWHERE:
        path.symlink_to("nowhere")
    elif where is Place.LINK_TO_ITSELF:
        path.symlink_to(path.name)
    return path.with_name("x" * 5000 + path.suffix) if where is Place.LONG_NAME else path


def damaged(content: bytes, dice: Random) -> bytes:
    """Return a file with one to four things wrong, or none that matters."""
    for _ in range(dice.choice((1, 1, 2, 4))):
        content = dice.choices(list(_DAMAGES), list(_DAMAGES.values()))[0](content, dice)
    return content


def _nasty_value(content: bytes, dice: Random) -> bytes:
    word = dice.choice(NASTY)
    quoted = f'"{word}"' if dice.random() < 0.5 else word
    return _replaced(_VALUE, content, lambda _: b" " + quoted.encode(), dice)


def _other_number(content: bytes, dice: Random) -> bytes:
    factor = dice.choice((0, -1, 0.1, 0.5, 0.8, 0.9, 0.97, 1.03, 1.1, 1.25, 2, 2.54, 10, 1000, 1e300))
    return _replaced(_NUMBER, content, lambda old: f"{float(old) * factor:.6g}".encode(), dice)


def _near_number(content: bytes, dice: Random) -> bytes:
    """Change some numbers so little that a draft may still be made of them."""
    for _ in range(dice.choice((1, 2, 5))):
        factor = dice.uniform(0.9, 1.12)
        content = _replaced(_NUMBER, content, lambda old, by=factor: f"{float(old) * by:.4g}".encode(), dice)
    return content


def _replaced(
    pattern: re.Pattern[bytes], content: bytes, new: Callable[[bytes], bytes], dice: Random
) -> bytes:
    found = list(pattern.finditer(content))
    if not found:
        return content
    match = dice.choice(found)
    return content[: match.start()] + new(match[0]) + content[match.end() :]


def _lines(content: bytes, dice: Random) -> bytes:
    rows = content.split(b"\n")
    here, there = dice.randrange(len(rows)), dice.randrange(len(rows))
    doing = dice.randrange(5)
    if doing == 0:
        del rows[here]
    elif doing == 1:
        rows.insert(there, rows[here])
    elif doing == 2:
        rows[here], rows[there] = rows[there], rows[here]
    elif doing == 3:
        rows[here] = rows[here].replace(b"=", dice.choice((b":", b"==", b"", b" ", b"= =")))
    else:
        junk = (
            b"[measurements]",
            b"[[left]]",
            b"hip_girt = 98",
            b"left = 3",
            b"}",
            b"[",
            b'"a b" = 1',
            b"a.b.c = 1",
        )
        rows.insert(here, dice.choice(junk))
    return b"\n".join(rows)


def _cut_off(content: bytes, dice: Random) -> bytes:
    return content[: dice.randrange(len(content) + 1)]


def _letters(content: bytes, dice: Random) -> bytes:
    old, new = dice.choice(
        (("\n", "\r\n"), ("\n", "\r"), (" ", "\xa0"), ('"', "”"), ('"', "'"), (".", ","), (",", ";"))
    )  # fmt: skip
    return content.replace(old.encode(), new.encode())


def _encoding(content: bytes, dice: Random) -> bytes:
    text = (
        "ą é\n" + content.decode("utf-8", "replace")
        if dice.random() < 0.3
        else content.decode("utf-8", "replace")
    )
    return text.encode(
        dice.choice(("utf-8-sig", "latin-1", "utf-16", "utf-16-le", "utf-32", "cp1250")), "replace"
    )


def _bytes(content: bytes, dice: Random) -> bytes:
    made = bytearray(content or b" ")
    for _ in range(dice.choice((1, 3, 30))):
        made[dice.randrange(len(made))] = dice.randrange(256)
    return bytes(made)


def _huge(content: bytes, dice: Random) -> bytes:
    """Many lines, long lines, deep nesting, many columns."""
    return dice.choice(
        (
            lambda: content + b"#\n" * 5_000_000,
            lambda: content + b"\n" + b"".join(b"waist_girth_%d = 98\n" % n for n in range(30_000)),
            lambda: b"a = 1\n" * 150_000,
            lambda: content + b"[" * 900_000,
            lambda: content + b"\nhip_girth = " + b"[" * 400 + b"]" * 400,
            lambda: content + b"\nhip_girth = [\n" + b"98,\n" * 200_000 + b"]\n",
            lambda: b"hip_girth," * 90_000 + b"\n" + content,
            lambda: b" " * 900_000 + content,
            lambda: content + b"\n" + b"13, 6,9\n" * 100_000,
            lambda: content + b"\n" + b"x," * 400_000,
            lambda: b'{"a":' * 100_000 + content,
            lambda: content + b"\n[" + b".".join([b"a"] * 450) + b"]\n",
        )
    )()


_DAMAGES: dict[Callable[[bytes, Random], bytes], float] = {
    _nasty_value: 30,
    _other_number: 20,
    _near_number: 25,
    _lines: 15,
    _cut_off: 4,
    _letters: 6,
    _encoding: 5,
    _bytes: 8,
    _huge: 2,
}
