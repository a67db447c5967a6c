"""Words in plain ASCII, for files that can hold nothing else: letters spelled out, accents left away."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable

STAND_IN = "?"
"""What is written for a letter that has no spelling here."""

# Spelled as in passports and on road signs, from memory: Cyrillic after ICAO Doc 9303 and BGN/PCGN (ya, yu),
# Greek after ISO 843 (ELOT 743) with its commonest pairs of letters. One table serves all languages of a
# script, so a Ukrainian г is g here. It names blocks and labels, it does not restore a name.
_SPELLED = {
    "ł": "l", "ı": "i", "ß": "ss", "æ": "ae", "œ": "oe", "ø": "o", "đ": "d", "ð": "d", "þ": "th", "ħ": "h",
    "а": "a", "б": "b", "в": "v", "г": "g", "ґ": "g", "д": "d", "е": "e", "ё": "yo", "є": "ye", "ж": "zh",
    "з": "z", "и": "i", "і": "i", "ї": "yi", "й": "y", "ј": "j", "к": "k", "л": "l", "љ": "lj", "м": "m",
    "н": "n", "њ": "nj", "о": "o", "п": "p", "р": "r", "с": "s", "т": "t", "ћ": "c", "ђ": "dj", "у": "u",
    "ў": "u", "ф": "f", "х": "kh", "ц": "ts", "ч": "ch", "џ": "dz", "ш": "sh", "щ": "shch", "ъ": "",
    "ы": "y", "ь": "", "э": "e", "ю": "yu", "я": "ya",
    "αυ": "av", "ευ": "ev", "ου": "ou", "γγ": "ng", "γχ": "nch",
    "α": "a", "β": "v", "γ": "g", "δ": "d", "ε": "e", "ζ": "z", "η": "i", "θ": "th", "ι": "i", "κ": "k",
    "λ": "l", "μ": "m", "ν": "n", "ξ": "x", "ο": "o", "π": "p", "ρ": "r", "σ": "s", "ς": "s", "τ": "t",
    "υ": "y", "φ": "f", "χ": "ch", "ψ": "ps", "ω": "o",
    "“": '"', "”": '"', "„": '"', "‘": "'", "’": "'", "–": "-", "—": "-", "−": "-", "⁄": "/", "±": "+/-",
    "×": "x",
}  # fmt: skip


def _with_capitals() -> dict[str, str]:
    forms = dict(_SPELLED)
    for letters, latin in _SPELLED.items():
        for form in (letters.capitalize(), letters.upper()):
            if not form.isascii():  # the capitals of ı and ß are plain letters already
                forms.setdefault(form, latin.capitalize())
    return forms


_FORMS = _with_capitals()
_ANY_FORM = re.compile("|".join(sorted(map(re.escape, _FORMS), key=len, reverse=True)))


def in_ascii(text: str) -> str:
    """Return the text in printable ASCII: "Żaneta Łęcka" as "Zaneta Lecka", "Щербак" as "Shcherbak".

    Control characters become spaces, and every letter without a spelling becomes STAND_IN.
    """
    bare = "".join(map(_without_accents, unicodedata.normalize("NFC", text)))
    spelled = _ANY_FORM.sub(_latin, bare)
    return "".join(
        ch if " " <= ch <= "~" else " " if unicodedata.category(ch) == "Cc" else STAND_IN for ch in spelled
    )


def _without_accents(letter: str) -> str:
    """Return the letter without its accents, unless it has a spelling with them, as й has."""
    if letter in _FORMS:
        return letter
    return "".join(ch for ch in unicodedata.normalize("NFKD", letter) if not unicodedata.combining(ch))


def _latin(found: re.Match[str]) -> str:
    latin = _FORMS[found[0]]
    in_capitals = found[0].isupper() and found.string[found.end() : found.end() + 1].isupper()
    return latin.upper() if in_capitals else latin


def plain_words(text: str) -> list[str]:
    """Return the words of a text in letters A-Z and digits alone, such as FRONT and LEG for "front leg"."""
    return re.findall("[A-Z0-9]+", in_ascii(text).upper())


def distinct_names(names: Iterable[str], *, longest: int) -> list[str]:
    """Return a name of A-Z, 0-9 and _ for each, all different: "front leg" as FRONT_LEG.

    A name that would be taken already gets a number behind it, and one without any letter is PIECE.

    Args:
        names: Any texts.
        longest: Letters in a name at most, its number included; at least 8.
    """
    taken: list[str] = []
    for name in names:
        plain = "_".join(plain_words(name)) or "PIECE"
        free, number = plain[:longest].rstrip("_"), 1
        while free in taken:
            number += 1
            free = f"{plain[: longest - len(f'_{number}')]}_{number}"
        taken.append(free)
    return taken
