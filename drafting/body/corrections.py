"""Corrections after a fitting: what a wearer sees on the toile, and what a cutter changes for it, as data.

Each is one thing seen, with its own name, so that no sign has to be remembered. All that were seen are added
up to `Changes` and made at once: the order in which they are named does not matter.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields

from drafting.base.construction_proportions import COMMON
from drafting.body.measurement_table import Range

MEMORY = "from memory"


@dataclass(frozen=True, kw_only=True)
class Changes:
    """What is changed on the draft of the toile, in mm; negative the other way.

    Attributes:
        abdomen: Opening of a slash across the front at hip level, at the centre front.
        seat: The same across the back, at the centre back.
        sway: Taken off the centre back at the waist.
        rise: Let in all round between waist and hip.
        at_thigh: Let in all round between crotch and knee.
        at_knee: Let in all round at the knee.
        at_calf: Let in all round between knee and hem.
        waist: Girth let out at the waist, at the side seams.
        gape: Girth taken in at the waist, in the back darts.
        hip: Girth let out at the hip, at the side seams.
        thigh: Girth let out at the thigh.
        knees: Opening of a slash at knee level, at the inseam: the lower leg swings outwards.
        front_fork: Added to the front fork.
        back_fork: Added to the back fork.
    """

    abdomen: float = 0.0
    seat: float = 0.0
    sway: float = 0.0
    rise: float = 0.0
    at_thigh: float = 0.0
    at_knee: float = 0.0
    at_calf: float = 0.0
    waist: float = 0.0
    gape: float = 0.0
    hip: float = 0.0
    thigh: float = 0.0
    knees: float = 0.0
    front_fork: float = 0.0
    back_fork: float = 0.0


@dataclass(frozen=True)
class Correction:
    """One thing seen on the toile.

    Attributes:
        key: Its name in files and in Python.
        term: Its name in print.
        seen: What its amount measures, and where.
        done: What is done to the pattern, as a cutter would.
        change: The field of `Changes` that it moves.
        sign: 1 or -1: which way.
        usual: Amounts that one fitting commonly finds, mm.
        most: A larger amount is refused: the block is another body's, mm.
        source: Where move and amounts come from.
    """

    key: str
    term: str
    seen: str
    done: str
    change: str
    sign: int
    usual: Range
    most: float
    source: str

    @property
    def possible(self) -> Range:
        """What can be meant at all, mm."""
        return Range(1.0, self.most)


_ABOUT = "of full girth"
_ALL_ROUND = "front and back are cut across, square to the grain,"
_INSEAM_STAYS = "every girth stays, the crotch seam stays"

_HINGE_FRONT = (
    "the front is slashed at hip level from centre front to side seam, hinged at the side seam and {way} by "
    "it at the centre front, which is then drawn straight at its old slant"
)
_HINGE_BACK = (
    "the back is slashed at hip level from centre back to side seam, hinged at the side seam and {way} by it "
    "at the centre back; the back fork becomes 0.6 of it {fork}"
)
_SIDES = "a quarter of it at each edge of both side seams, from hip level {way}"

_TABLE = (
    Correction(
        "full_abdomen", "full abdomen", "how far the front waist stands too low at the centre front",
        _HINGE_FRONT.format(way="opened"), "abdomen", 1, Range(5, 25), 51,
        f"1 to 2.5 cm: {MEMORY}; no centre front comes forward more than 2 in: Hertzer, 1890s",
    ),
    Correction(
        "flat_abdomen", "flat abdomen", "how much is pinned out across the front at the centre front",
        _HINGE_FRONT.format(way="folded over"), "abdomen", -1, Range(5, 15), 25,
        f"the reverse of a full abdomen: {COMMON}",
    ),
    Correction(
        "full_seat", "full seat", "how far the back waist is pulled down at the centre back",
        _HINGE_BACK.format(way="opened", fork="wider"), "seat", 1, Range(5, 25), 40,
        f"1 to 2.5 cm, back fork 0.6 to 1.5: {MEMORY}; seat angle and back length an inch more for room: "
        "Vincent, The Cutter's Practical Guide, 1898",
    ),
    Correction(
        "flat_seat", "flat seat", "how much is pinned out across the back below the band at the centre back",
        _HINGE_BACK.format(way="folded over", fork="narrower"), "seat", -1, Range(5, 15), 30,
        "the fold taken off at the centre back, to nothing at the side: a dressmaker's answer, 2011; fold "
        f"0.6 to 1.5 cm, back fork 0.6 to 1.3: {MEMORY}",
    ),
    Correction(
        "sway_back", "sway back", "how deep the fold is that lies across the back below the band",
        "the fold is taken off the top of the centre back, to nothing at the side seam", "sway", 1,
        Range(5, 20), 30, f"a dressmaker's answer, 2011; 0.6 to 2 cm: {MEMORY}",
    ),
    Correction(
        "higher_rise", "rise higher", "how much higher the waist should reach all round",
        f"{_ALL_ROUND} between waist and hip, across the fly, and spread by it", "rise", 1, Range(5, 40), 80,
        "slash at hip level through both pieces: published order of trouser fitting, 2020; amount: " + COMMON,
    ),
    Correction(
        "lower_rise", "rise lower", "how much lower the waist should reach all round",
        f"{_ALL_ROUND} between waist and hip, across the fly, and laid over by it", "rise", -1,
        Range(5, 40), 60,
        "fold at hip level through both pieces: published order of trouser fitting, 2020; amount: " + COMMON,
    ),
    *(
        Correction(
            f"{word}_at_{place}", f"{word} at the {place}",
            f"by how much the leg should be {word}{where}",
            f"{_ALL_ROUND} {cut} and {way} by it; {_INSEAM_STAYS}", f"at_{place}", sign, Range(5, 60), 120,
            f"{source}; amount: {COMMON}",
        )
        for place, where, cut, source in (
            ("thigh", " between crotch and knee", "between crotch and knee",
             "cut at mid-thigh: sewing pages, 2016"),
            ("knee", ", where the knee itself sits half as much out of place", "at the knee",
             "split between upper and lower leg: sewing pages, 2016"),
            ("calf", " below the knee", "between knee and hem",
             "the hem keeps its girth: a dressmaker on vertical changes"),
        )
        for word, way, sign in (("longer", "spread", 1), ("shorter", "laid over", -1))
    ),
    Correction(
        "waist_in", "waist in", f"how much is pinned out at the waist, {_ABOUT}",
        _SIDES.format(way="up"), "waist", -1, Range(5, 40), 76,
        f"3 in at most, or the cut is distorted: a tailoring page, 2013; shared evenly: {COMMON}",
    ),
    Correction(
        "waist_out", "waist out", f"how much more is needed at the waist, {_ABOUT}",
        _SIDES.format(way="up"), "waist", 1, Range(5, 40), 76, f"the reverse of waist in: {COMMON}",
    ),
    Correction(
        "gaping_back", "back waist gaping", f"how much is pinned out at the back of the band, {_ABOUT}",
        "half of it in the back dart of each side, so that yoke and band are drawn shorter", "gape", 1,
        Range(5, 50), 60,
        "two darts through band and yoke, to the yoke's lower edge: refitting articles, 2018; more than 5 cm "
        "is more than two darts",
    ),
    Correction(
        "hip_in", "hip in", f"how much is pinned out at hip level, {_ABOUT}",
        _SIDES.format(way="to nothing at waist and knee"), "hip", -1, Range(5, 40), 60, COMMON,
    ),
    Correction(
        "hip_out", "hip out", f"how much more is needed at hip level, {_ABOUT}",
        _SIDES.format(way="to nothing at waist and knee"), "hip", 1, Range(5, 40), 60, COMMON,
    ),
    Correction(
        "full_thigh", "full thigh", f"how much more is needed round the thigh, {_ABOUT}",
        "the inseam is moved out at the forks, two thirds of it behind, and the side seams are kept out "
        "below the hip; beyond 3 cm the crotch is deepened and the front fork narrowed, too", "thigh", 1,
        Range(5, 30), 60, "a dressmaking school: under 3 cm at fork and side, beyond it the crotch, too",
    ),
    Correction(
        "knees_in", "knees in (knock knees)", "how far a slash at knee level opens at the inseam",
        "front and back are slashed at knee level from the inseam and hinged at the side seam: the lower leg "
        "swings outwards and its hem is drawn level again", "knees", 1, Range(5, 13), 20,
        f"0.6 to 1.3 cm in each piece: {MEMORY}",
    ),
    Correction(
        "knees_out", "knees out (bow legs)", "how far a slash at knee level opens at the side seam",
        "front and back are slashed at knee level from the side seam and hinged at the inseam: the lower leg "
        "swings inwards and its hem is drawn level again", "knees", -1, Range(5, 13), 20,
        f"0.6 to 1.3 cm in each piece: {MEMORY}",
    ),
    Correction(
        "front_crotch_pulls", "front crotch pulling",
        "lines like a smile from the front crotch; how far its inseam is let out there",
        "the inseam of the front is let out at the fork", "front_fork", 1, Range(3, 13), 25,
        "add at the front inseam in small steps: a pattern maker's fit guide; 1/2 in in a worked example",
    ),
    Correction(
        "front_crotch_pools", "front crotch pooling",
        "lines like a frown at the front crotch; how far its inseam is pinned in there",
        "the inseam of the front is taken in at the fork", "front_fork", -1, Range(3, 13), 20,
        "take in the front inseam at the crotch: a pattern maker's fit guide",
    ),
    Correction(
        "back_crotch_pulls", "back crotch pulling",
        "lines like a smile from the back crotch; how far its inseam is let out there",
        "the inseam of the back is let out at the fork", "back_fork", 1, Range(3, 25), 38,
        f"one inch in a worked example, 2012; else {COMMON}",
    ),
    Correction(
        "back_crotch_pools", "back crotch pooling",
        "lines like a frown at the back crotch; how far its inseam is pinned in there",
        "the inseam of the back is taken in at the fork", "back_fork", -1, Range(3, 13), 25,
        f"back inseam taken in 0.6 to 1.3: {MEMORY}",
    ),
)  # fmt: skip

CORRECTIONS: Mapping[str, Correction] = {correction.key: correction for correction in _TABLE}
"""Every correction by its key, from the trunk down."""


@dataclass(frozen=True)
class Fight:
    """Two things seen that work against each other without being opposites, and why."""

    first: str
    second: str
    why: str


_CROTCH = "one makes the crotch seam longer, the other shorter"
_WAIST = "one lets the waist out, the other takes it in"
FIGHTS = (
    *(
        Fight(rise, f"{part}_crotch_{seen}", _CROTCH)
        for rise, seen in (("higher_rise", "pools"), ("lower_rise", "pulls"))
        for part in ("front", "back")
    ),
    Fight("full_abdomen", "front_crotch_pools", _CROTCH),
    Fight("flat_abdomen", "front_crotch_pulls", _CROTCH),
    Fight("full_seat", "back_crotch_pools", _CROTCH),
    Fight("flat_seat", "back_crotch_pulls", _CROTCH),
    Fight("full_seat", "sway_back", "one makes the centre back higher, the other lower"),
    Fight("full_thigh", "front_crotch_pools", "one makes the fork wider, the other narrower"),
    Fight("full_thigh", "back_crotch_pools", "one makes the fork wider, the other narrower"),
    Fight("waist_out", "gaping_back", _WAIST),
    Fight("full_abdomen", "waist_in", _WAIST),
)


def changes_of(amounts: Mapping[str, float]) -> Changes:
    """Return all corrections added up.

    Args:
        amounts: Millimetres by key of `CORRECTIONS`.
    """
    # In the order of the table, so that the order of the file's lines cannot even change the rounding.
    summed = {field.name: 0.0 for field in fields(Changes)}
    for key, correction in CORRECTIONS.items():
        summed[correction.change] += correction.sign * amounts.get(key, 0.0)
    return Changes(**summed)


def opposites() -> tuple[tuple[str, str], ...]:
    """Return the pairs of keys of which only one can be seen."""
    rows = tuple(CORRECTIONS.values())
    return tuple(
        (one.key, other.key)
        for place, one in enumerate(rows)
        for other in rows[place + 1 :]
        if one.change == other.change
    )
