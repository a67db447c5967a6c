"""First guesses of what was not measured, from surveys of real bodies, each with its spread.

Least squares on the 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II, Natick TR-15/007, public
domain); knee girth on the 507 bodies of Heinz et al., Journal of Statistics Education 11(2), 2003 (`bdims`).
Soldiers are fitter than the public, and ISO 8559-3 warns against carrying a regression from one population to
another: a guess is always labelled as one, with the spread of single persons about the line (one standard
deviation).
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from drafting.base.formula import Length, named
from drafting.body.measurements import Population, WaistLevel

ARMY = "2012 US Army survey, Natick TR-15/007"
HEINZ = "507 bodies, Heinz et al. 2003"


@dataclass(frozen=True)
class Regression:
    """A line through a survey: `target = constant + sum(factor * predictor)`, in centimetres.

    Attributes:
        target: Key of the measurement guessed.
        constant: In cm.
        factors: Factor of each predictor, by its key.
        spread: One standard deviation of single persons about the line, cm.
        source: Which survey.
        both_ends: Whether the target starts and ends at the waist: taken higher, it gets longer twice.
    """

    target: str
    constant: float
    factors: Mapping[str, float]
    spread: float
    source: str = ARMY
    both_ends: bool = False

    def guess(self, known: Mapping[str, Length], above: float = 0.0) -> Length | None:
        """Return the guess from known lengths (mm), None when a predictor is missing.

        `above` is how far the waist was taken above the survey's, mm.
        """
        if not self.factors.keys() <= known.keys():
            return None
        total = self.constant * 10 + sum(factor * known[key].mm for key, factor in self.factors.items())
        return named(self.target.replace("_", " "), total + self._by_waist * above)

    def spread_at(self, unsure: float) -> float:
        """Return the spread, mm, where the level of the waist is itself unsure by so many mm."""
        return math.hypot(self.spread * 10, self._by_waist * unsure)

    @property
    def _by_waist(self) -> float:
        """What a waist taken higher adds beyond what the line makes of the greater waist height."""
        return 2 - self.factors["waist_height"] if self.both_ends else 0.0


ABOVE_NAVEL = {WaistLevel.NATURAL: (50.0, 10.0), WaistLevel.WORN: (0.0, 15.0)}
"""How far the waist lies above the survey's, which is at the navel, and how sure that is, mm: the natural
waist 4 to 6 cm above it, jeans worn about there (from memory)."""


BOTH_AGREE = 15.0
"""The lines of women and of men stand in for one another where they differ by no more, mm (own judgement: six
tenths of a single person's spread)."""


@dataclass(frozen=True)
class CrotchGuess:
    """What the crotch lengths of women and of men with the same measurements let expect, mm.

    Attributes:
        women: By the line of women.
        men: By the line of men.
        spread: One standard deviation of a single person of either sex about their mean.
    """

    women: float
    men: float
    spread: float

    @property
    def mean(self) -> float:
        """The middle of both."""
        return (self.women + self.men) / 2

    @property
    def agreed(self) -> bool:
        """Whether the mean may stand for either."""
        return abs(self.women - self.men) <= BOTH_AGREE


def crotch_guess(known: Mapping[str, Length], above: float, unsure: float) -> CrotchGuess | None:
    """Return what both sexes' lines say of the total crotch length; None where a predictor is missing.

    `above` is how far the waist was taken above the survey's, mm, `unsure` the spread of that.
    """
    said: list[tuple[float, float]] = []
    for population in (Population.WOMEN, Population.MEN):
        [line] = [row for row in REGRESSIONS[population] if row.target == "total_crotch_length"]
        guess = line.guess(known, above)
        if guess is None:
            return None
        said.append((guess.mm, line.spread_at(unsure)))
    (women, spread_of_women), (men, spread_of_men) = said
    single = (spread_of_women + spread_of_men) / 2
    return CrotchGuess(women, men, math.hypot(single, (women - men) / 2))


def _rise(hip: float, waist: float, rise: float) -> dict[str, float]:
    return {"hip_girth": hip, "waist_girth": waist, "waist_height": rise, "inside_leg_height": -rise}


# In the order of use: a later line may stand on an earlier guess; of two for one target the first that can is
# used.
REGRESSIONS: dict[Population, tuple[Regression, ...]] = {
    Population.WOMEN: (
        Regression("thigh_girth", -3.73, {"hip_girth": 0.701, "waist_girth": 0.003, "stature": -0.040}, 1.9),
        Regression("thigh_girth", -9.08, {"hip_girth": 0.688, "waist_girth": 0.005}, 1.92),
        Regression("knee_height", -2.90, {"inside_leg_height": 0.435, "stature": 0.084}, 0.95),
        Regression("knee_height", 3.00, {"inside_leg_height": 0.536}, 0.99),
        Regression("calf_girth", 11.96, {"hip_girth": 0.053, "thigh_girth": 0.324}, 1.8),
        Regression("knee_girth", 5.20, {"thigh_girth": 0.219, "calf_girth": 0.502}, 1.41, HEINZ),
        Regression("ankle_girth", 2.91, {"calf_girth": 0.379, "stature": 0.028}, 0.94),
        Regression("ankle_girth", 6.80, {"calf_girth": 0.396}, 0.95),
        Regression("heel_girth", 2.02, {"ankle_girth": 0.482, "stature": 0.114}, 0.95),
        Regression("heel_girth", 6.40, {"ankle_girth": 0.536, "inside_leg_height": 0.167}, 0.93),
        Regression("total_crotch_length", 7.24, _rise(0.414, -0.078, 0.972), 2.35, both_ends=True),
    ),
    Population.MEN: (
        Regression("thigh_girth", -1.92, {"hip_girth": 0.760, "waist_girth": -0.017, "stature": -0.065}, 1.9),
        Regression("thigh_girth", -10.65, {"hip_girth": 0.722, "waist_girth": -0.004}, 1.96),
        Regression("knee_height", -3.45, {"inside_leg_height": 0.440, "stature": 0.086}, 1.1),
        Regression("knee_height", 2.07, {"inside_leg_height": 0.553}, 1.18),
        Regression("calf_girth", 10.69, {"hip_girth": 0.122, "thigh_girth": 0.258}, 1.7),
        Regression("knee_girth", 11.63, {"thigh_girth": 0.162, "calf_girth": 0.441}, 1.49, HEINZ),
        Regression("ankle_girth", 1.85, {"calf_girth": 0.381, "stature": 0.035}, 0.81),
        Regression("ankle_girth", 7.22, {"calf_girth": 0.400}, 0.84),
        Regression("heel_girth", 1.23, {"ankle_girth": 0.633, "stature": 0.106}, 0.94),
        Regression("heel_girth", 5.33, {"ankle_girth": 0.704, "inside_leg_height": 0.152}, 0.94),
        Regression("total_crotch_length", 0.71, _rise(0.352, 0.050, 0.995), 2.55, both_ends=True),
    ),
    Population.NOBODY: (),
}
