"""What a style decides, as data. Lengths in mm; the defaults are those of a straight five-pocket cut."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import Enum
from typing import TYPE_CHECKING

from drafting.base.construction_proportions import Ease
from drafting.block.leg_shape import LegCut
from drafting.body.measurements import WaistLevel

if TYPE_CHECKING:
    from drafting.body.body import Body


class Band(Enum):
    """How the waistband is made."""

    SHAPED = "shaped"
    """Cut in parts that follow the body, in two layers."""
    STRAIGHT = "straight"
    """One straight strip, folded along its upper edge; it stands above the worn level."""


class Rise(Enum):
    """How high the jeans reach, by the wearer's own trunk.

    On a front crotch seam of 31 cm up to the waist the front rises are some 22, 26 and 30 cm: low is 7 to
    9 1/2 in, mid 8 1/2 to 11, high 10 1/2 to 12 in published classes (denim shops and a fashion glossary).
    """

    LOW = "low"
    MID = "mid"
    HIGH = "high"
    NATURAL = "natural"
    """At the natural waist."""

    def below_waist(self, body: Body) -> float:
        """Return how far below the waist that is on a body, mm: a share of its crotch depth."""
        return _OF_DEPTH[self] * body["crotch_depth"].mm


_OF_DEPTH = {Rise.LOW: 0.32, Rise.MID: 0.18, Rise.HIGH: 0.05, Rise.NATURAL: 0.0}
"""Shares of the crotch depth that give those rises (own trial on the published classes)."""


class Laps(Enum):
    """Which front lies on top at the fly."""

    LEFT_OVER_RIGHT = "left over right"
    RIGHT_OVER_LEFT = "right over left"


class BackCut(Enum):
    """What takes in the waist at the back."""

    YOKE = "yoke"
    """A yoke that the dart is closed in."""
    DART = "dart"
    """A dart in the leg, which reaches up to the band."""


class Fly(Enum):
    """How the fly is closed below the band."""

    ZIP = "zip"
    BUTTONS = "buttons"


class Felling(Enum):
    """How the seams that carry the strain are finished."""

    PLAIN = "plain"
    """Sewn and overlocked, both allowances alike."""
    FELLED = "felled"
    """Flat-felled: one allowance is trimmed away under the other, so the two differ."""


@dataclass(frozen=True, kw_only=True)
class Allowances:
    """Seam allowances, 0 for those who add their own."""

    waist: float = 10  # 10 to 15 in home-sewn jeans (common practice); so are the next five
    side_seam: float = 15  # common practice
    inseam: float = 12  # common practice
    crotch_seam: float = 12  # common practice
    yoke: float = 12  # common practice
    small: float = 10
    """Pockets, facings, fly and band ends (common practice)."""
    hem: float = 30
    """Turned up twice by half: a finished hem of 15 (1.3 to 1.5 cm is usual, from memory)."""
    felling: Felling = Felling.PLAIN
    felled_wide: float = 18  # 3/4 in, a hand drafter of selvedge jeans
    felled_narrow: float = 9
    """The wide side folds over the narrow one: 3/8 in (a hand drafter of selvedge jeans)."""

    def folded_over(self, plain: float) -> float:
        """Return the allowance of the side that folds over where seams are felled: the back leg's."""
        return self.felled_wide if plain and self.felling is Felling.FELLED else plain

    def folded_in(self, plain: float) -> float:
        """Return the allowance of the side folded in where seams are felled: front inseam, yoke."""
        return self.felled_narrow if plain and self.felling is Felling.FELLED else plain


@dataclass(frozen=True, kw_only=True)
class FrontPocket:
    """The front pocket.

    Attributes:
        kind: How its opening runs: one of the modules of `styles.front_pockets`.
        width: How far its opening reaches from the side seam along the waist seam.
        depth: How far its opening reaches down the side seam.
        scoop: 0 for a straight slant, up to 1 for a deep scoop.
        watch: Whether the right one carries a watch pocket.
    """

    kind: str = "scoop"
    width: float = 100
    """10 wide by 7 deep below the band (scoop pocket of a sewing blog); opening 7 in on a work-pant sheet."""
    depth: float = 75  # scoop pocket of a sewing blog
    scoop: float = 0.6  # common practice, no source
    watch: bool = True


@dataclass(frozen=True, kw_only=True)
class BackPocket:
    """The patch pocket on the back.

    Attributes:
        shape: Its outline: one of the modules of `styles.back_pockets`.
        opening: Width at the top as a share of the hip girth.
        height: Height of the straight sides as a share of the opening.
        taper: How much narrower it is at the bottom of the sides, each side.
        point: How far its bottom hangs below the sides.
        below_yoke: Its top edge below the yoke seam, parallel to it; above a dart, below where one would be.
        from_centre: Its inner top corner from the centre back.
    """

    shape: str = "pointed"
    opening: float = 0.148
    """6 1/4 in for a hip of 39 1/2 (work-pant sheet); hip/8 (trade-school slide); women 12.5 to 14.5 (from
    memory)."""
    height: float = 0.95  # women 14 to 16 cm high (from memory)
    taper: float = 8  # common practice, no source
    point: float = 20  # common practice, no source
    below_yoke: float = 32
    """1 1/2 in inside, 2 in outside (a hand drafter of selvedge jeans)."""
    from_centre: float = 48
    """1 1/2 to 2 1/2 in (two denim pattern makers)."""


@dataclass(frozen=True, kw_only=True)
class Style:
    """One style of jeans.

    Attributes:
        name: What it is called.
        says: What it is like, in a few words.
        rise: How high it reaches by the wearer's trunk; None leaves it to `below_waist`.
        below_waist: How far below the block's waist the upper edge of the jeans sits; negative above it.
        leg: How the leg is cut.
        turn_up: Depth of the turn-up at the hem; 0 for none.
        ease: The room that it wants in rigid denim; cloth that stretches lets some of it off.
        least_stretch: The stretch that its cloth needs at least, percent.
        band: How the waistband is made.
        band_height: Finished height of the waistband.
        back: What takes in the waist at the back.
        yoke_centre: Depth of the yoke at the centre back, below the band.
        yoke_side: Depth of the yoke at the side seam, below the band.
        fly_width: Width of the fly's topstitching from the centre front.
        fly: How the fly is closed.
        laps: Which front lies on top.
        interfacing: Whether there are pieces that stiffen the waistband and the fly facing.
        back_waist_least: What one half of the back must measure where the jeans are worn, dart closed; not
            set by anybody, but taken from the body.
    """

    name: str
    says: str = "plumb from the knee, the block's own leg"
    rise: Rise | None = None
    below_waist: float = 30  # common practice, no source
    leg: LegCut = field(default_factory=LegCut)
    turn_up: float = 0.0
    ease: Ease = field(default_factory=Ease)
    least_stretch: float = 0.0
    band: Band = Band.SHAPED
    band_height: float = 40
    """1 3/4 in on a work-pant sheet; 1 1/2 to 2 1/4 in (a trade book of 1949)."""
    back: BackCut = BackCut.YOKE
    yoke_centre: float = 65  # 6 to 9 cm (from memory)
    yoke_side: float = 35  # 3 to 5 cm (from memory)
    fly_width: float = 38
    """4 to 5 (trade-school slide), 1 1/2 in (work-pant sheet)."""
    fly: Fly = Fly.ZIP
    laps: Laps = Laps.LEFT_OVER_RIGHT
    interfacing: bool = True
    back_waist_least: float = 0.0
    front_pocket: FrontPocket = field(default_factory=FrontPocket)
    back_pocket: BackPocket = field(default_factory=BackPocket)
    allowances: Allowances = field(default_factory=Allowances)

    def measured_at(self, waist: WaistLevel) -> Style:
        """Return the style for this waist: jeans whose waist was measured where they are worn sit there."""
        return replace(self, rise=None, below_waist=0.0) if waist is WaistLevel.WORN else self

    def on(self, body: Body) -> Style:
        """Return the style with its rise in mm of this body."""
        return (
            self if self.rise is None else replace(self, rise=None, below_waist=self.rise.below_waist(body))
        )


STRAIGHT = Style(name="straight")
