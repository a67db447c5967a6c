"""What the fitted block leaves for the body: girths by level, the crotch seam, and what was out of reach."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from drafting.base.errors import Severity
from drafting.base.findings import Finding
from drafting.base.tolerance import ARC, CROTCH, SEAM
from drafting.block.block import Block
from drafting.block.fitting import split_off
from drafting.block.leg_shape import foot_girth
from drafting.block.means import SIDE_REACH, USUAL, Moved
from drafting.body.body import Origin
from drafting.body.measurements import Side
from drafting.body.words import of_side
from drafting.report.levels import LEVELS, GirthLevel


@dataclass(frozen=True)
class GirthLine:
    """One level of the report, mm of full girth.

    Attributes:
        level: Which level.
        height: Height above the floor, mm.
        body: Girth of the body there, None when neither measured nor estimated.
        origin: Where the body's girth comes from.
        spread: One standard deviation of an estimated girth, else 0.
        pattern: Finished girth of the pattern.
        least_ease: What the pattern must have over the body to count as enough.
        side: Whose it is, where one leg is slimmer and has a line of its own; else of both.
    """

    level: GirthLevel
    height: float
    body: float | None
    origin: Origin | None
    spread: float
    pattern: float
    least_ease: float
    side: Side | None = None

    @property
    def name(self) -> str:
        """What it is called in print, such as "top hip", "left thigh"."""
        return of_side(LEVELS[self.level], self.side)

    @property
    def key(self) -> str:
        """Its key among figures, such as "top_hip", "left_thigh"."""
        return f"{self.side.value}_{self.level.key}" if self.side else self.level.key

    @property
    def ease(self) -> float | None:
        """Pattern less body, None when the body is not known there."""
        return None if self.body is None else self.pattern - self.body

    @property
    def enough(self) -> bool:
        """Whether the pattern has the least ease; True where the body is not known."""
        return self.ease is None or self.ease >= self.least_ease - SEAM


_ONLY_OF_A_BODY = (GirthLevel.TOP_HIP, GirthLevel.MID_THIGH, GirthLevel.CALF, GirthLevel.ANKLE)
"""Levels that are told only where the body's girth there is known."""


def girth_lines(block: Block) -> tuple[GirthLine, ...]:
    """Return the girths from waist to hem; levels without a girth of the body only where always told."""
    ease, levels, body = block.ease, block.levels, block.body
    waist, hip, leg = block.waist_girth, block.hip_girth, block.leg_girth
    rows = [
        (GirthLevel.WAIST, "waist_girth", levels.waist.mm, waist, ease.waist),
        (
            GirthLevel.TOP_HIP,
            "top_hip_girth",
            body["top_hip_height"].mm,
            block.trunk_girth(body["top_hip_height"].mm),
            min(ease.waist, ease.hip),
        ),
        (GirthLevel.HIP, "hip_girth", levels.hip.mm, hip, ease.hip),
        (GirthLevel.THIGH, "thigh_girth", block.thigh_level, block.thigh_girth, ease.thigh),
        *(
            (
                level,
                f"{level.key}_girth",
                body[f"{level.key}_height"].mm,
                leg(body[f"{level.key}_height"].mm),
                least,
            )
            for level, least in (
                (GirthLevel.MID_THIGH, ease.mid_thigh),
                (GirthLevel.KNEE, ease.knee),
                (GirthLevel.CALF, ease.calf),
                (GirthLevel.ANKLE, 0.0),
            )
        ),
        (GirthLevel.HEM, *_round_the_hem(block)),
    ]
    lines = []
    for level, key, height, pattern, least in rows:
        if height < block.leg.hem_height.mm:
            continue
        value = block.body.values.get(key)
        if value is None and level in _ONLY_OF_A_BODY:
            continue
        girth, origin, spread = (value.length.mm, value.origin, value.spread) if value else (None, None, 0.0)
        lines.append(GirthLine(level, height, girth, origin, spread, pattern, least))
        if level is GirthLevel.THIGH:
            lines += _slimmer_thigh(block)
    return tuple(lines)


def _slimmer_thigh(block: Block) -> Iterator[GirthLine]:
    """Yield the line of the leg whose thigh was measured slimmer."""
    p, thigh = block.proportions, block.body.values.get("thigh_girth")
    for half in block.halves:
        if half.slimmer and half.side and thigh:
            yield GirthLine(
                level=GirthLevel.THIGH,
                height=half.thigh_level(p),
                body=thigh.length.mm - half.slimmer,
                origin=thigh.origin,
                spread=thigh.spread,
                pattern=half.thigh_girth(p),
                least_ease=block.ease.thigh,
                side=half.side,
            )


def _round_the_hem(block: Block) -> tuple[str, float, float, float]:
    """Return what the hem must pass: the heel, or of shorts the knee; its height, girth and least ease."""
    height = block.leg.hem_height.mm
    key, least = ("knee_girth", block.ease.knee) if block.leg.short else ("heel_girth", block.ease.heel)
    return key, height, block.leg_girth(height), least


@dataclass(frozen=True)
class CrotchLine:
    """The crotch seam: drafted lengths and what the whole should be, mm; None where the body's is not known.

    After a fitting the target is that of the toile and what the corrections made of its seam: what was seen
    counts for more than the tape, and is not fitted away.
    """

    front: float
    back: float
    target: float | None
    corrected: float = 0.0
    """What the corrections added to the whole seam."""

    @property
    def total(self) -> float:
        """The whole seam from front waist to back waist."""
        return self.front + self.back


def crotch_line(block: Block) -> CrotchLine:
    """Return the drafted crotch seam beside the body's crotch length plus ease."""
    total = block.body.get("total_crotch_length")
    target = None if total is None else total.mm + block.ease.crotch
    in_front, behind = block.front.lower.crotch.length, block.back.lower.crotch.length
    if block.toile is None:
        return CrotchLine(in_front, behind, target)
    corrected = block.crotch_length - block.toile.crotch_length
    return CrotchLine(in_front, behind, None if target is None else target + corrected, corrected)


def body_profile(block: Block) -> tuple[list[float], list[float]]:
    """Return heights (mm, rising) and girths of the leg from ankle to thigh where the body tells them."""
    body = block.body
    rows = [
        (body[f"{level}_height"].mm, girth.mm)
        for level in ("ankle", "calf", "knee", "mid_thigh")
        if (girth := body.get(f"{level}_girth"))
    ]
    if thigh := body.get("thigh_girth"):
        rows.append((body["inside_leg_height"].mm, thigh.mm))
    rows.sort()
    return [height for height, _ in rows], [girth for _, girth in rows]


def fit_findings(block: Block) -> tuple[Finding, ...]:
    """Return what there is to say about the fit, the body's own findings first."""
    return (*block.body.findings, *_crotch(block), *_widths(block), *_means(block))


def _crotch(block: Block) -> Iterator[Finding]:
    line = crotch_line(block)
    if line.target is not None and abs(line.total - line.target) > CROTCH:
        word = "short" if line.total < line.target else "long"
        reach = ", with every means at its limit" if block.fit.number else ""
        text = (
            f"The crotch seam stays {{0}} too {word}: {{1}} where crotch length"
            f"{', ease and corrections' if block.toile else ' and ease'} make {{2}}{reach}. "
            "Measure the crotch length and the rise again before cutting."
        )
        amounts = (abs(line.total - line.target), line.total, line.target)
        yield Finding(
            "crotch-out-of-reach", Severity.WARNING, "crotch seam", text, amounts, line.total, line.target
        )
    elif abs(block.fit.number) > USUAL:
        word = "longer" if block.fit.number > 0 else "shorter"
        text = (
            f"The crotch length is {word} than a cutter's usual proportions reach: forks, crotch line and "
            "centre back go beyond them for it. Measure crotch length and rise again."
        )
        yield Finding("crotch-out-of-proportion", Severity.NOTE, "crotch seam", text)
    yield from _split(block)
    yield from _guessed_crotch(block)


def _split(block: Block) -> Iterator[Finding]:
    """Say what became of the front and the back part of a measured crotch length."""
    off, front = split_off(block.body), block.body.get("front_crotch_length")
    if off is None or front is None:
        return
    text = "The front part of your crotch length is {0}; whole length, hip and waist let {1} expect. "
    if block.fit.split:
        up, down = ("higher", "lower") if block.fit.split > 0 else ("lower", "higher")
        text += f"For a part of the difference the centre front stands {up} and the centre back {down}; "
    else:
        text += "That is as near as a tape tells, so the whole length alone is fitted; "
    text += "the forks do not follow it, because a seam lies forward of the point that a person feels."
    amounts = (front.mm, front.mm - off)
    yield Finding("crotch-split", Severity.NOTE, "crotch seam", text, amounts, *amounts)


_NEAR = 10.0
"""A crotch seam that is likely to be off by less is off by nothing that a tape would find, mm
(own judgement)."""


def _guessed_crotch(block: Block) -> Iterator[Finding]:
    """Say how far the crotch seam may be off where neither crotch length nor sex is known."""
    guess = block.body.crotch_guess
    if guess is None:
        return
    text = "Your crotch length is not known. "
    if "total_crotch_length" in block.body.values:
        text += (
            "Women's and men's would differ by {0} for your measurements, so their mean, {1}, is drafted; "
            "single people differ from it by {2} either way. Measure it."
        )
        amounts: tuple[float, ...] = (abs(guess.women - guess.men), guess.mean, guess.spread)
        yield Finding("crotch-guessed", Severity.NOTE, "crotch seam", text, amounts, guess.mean, None)
        return
    miss = block.crotch_length - guess.mean - block.ease.crotch
    likely = f"probably {{0}} too {'short' if miss < 0 else 'long'}"
    text += (
        f"The crotch seam is {likely if abs(miss) >= _NEAR else 'probably about right'}, give or take {{1}}: "
        "for your measurements women's would be {2} and men's {3}. Measure it, or say whose averages may "
        "stand in."
    )
    amounts = (abs(miss), guess.spread, guess.women, guess.men)
    yield Finding("crotch-guessed", Severity.NOTE, "crotch seam", text, amounts, miss, 0.0)


def _widths(block: Block) -> Iterator[Finding]:
    over = block.waist_girth - block.body["waist_girth"].mm - block.ease.waist
    if abs(over) > SEAM:
        word, mend = ("large", "an elastic or a further dart") if over > 0 else ("small", "a higher waist")
        text = (
            "The difference between hip and waist is more than seams and darts can take up: the waist is "
            f"drafted {{0}} too {word}. Consider {mend}."
        )
        yield Finding("suppression-left-over", Severity.WARNING, "waist", text, (abs(over),), over, 0.0)
    yield from _front_waist(block)
    for line in girth_lines(block):
        if not line.enough and line.body is not None:
            text = (
                f"The {line.name} is short: pattern {{0}}, body {{1}}, and at least {{2}} of ease is wanted."
            )
            amounts = (line.pattern, line.body, line.least_ease)
            yield Finding(
                "girth-short",
                Severity.WARNING,
                line.name,
                text,
                amounts,
                line.pattern,
                line.body + line.least_ease,
            )
    yield from _between_levels(block)
    yield from _hem(block)
    if block.fit.thigh > SEAM:
        text = "The thigh needed {0} more width than the proportions give: added at the forks and over the "
        text += f"side seams{', with a deeper crotch' if block.fit.thigh > SIDE_REACH else ''}."
        yield Finding(
            "thigh-widened", Severity.NOTE, "thigh", text, (block.fit.thigh,), block.fit.thigh, None
        )
    if block.fit.bulge:
        text = "The side seams are kept out further than the proportions draw them, for the mid-thigh."
        yield Finding("mid-thigh-widened", Severity.NOTE, "mid thigh", text)


def _front_waist(block: Block) -> Iterator[Finding]:
    """Say when front and back cannot take up what the front waist arc asks of each."""
    arc = block.body.get("front_waist_arc")
    if arc is None or block.toile:
        return
    front, wanted = 2 * block.shares.front_waist, arc.mm + block.ease.waist / 2
    if abs(front - wanted) > ARC:
        text = (
            "The front of the waist is {0} where your front waist arc asks for {1}; the whole waist comes "
            f"first. There the side seams will sit further {'back' if front > wanted else 'forward'} than "
            "you measured."
        )
        yield Finding("waist-split", Severity.NOTE, "waist", text, (front, wanted), front, wanted)


def _hem(block: Block) -> Iterator[Finding]:
    """Say when knee or hem are wider than the style asks, because the body needs it."""
    leg, body = block.leg, block.body
    amounts: tuple[float, ...]
    if leg.knee.mm > leg.knee_asked + SEAM:
        text = "The leg is widened at the knee from {0} to {1}: "
        knee, amounts = body.get("knee_girth"), (leg.knee_asked, leg.knee.mm)
        if knee and leg.knee.mm <= knee.mm + block.ease.knee + SEAM:
            text += "the knee, {2} round, has {3} of room."
            amounts += (knee.mm, leg.knee.mm - knee.mm)
        else:
            text += "at that the calf has its room."
        yield Finding("knee-raised", Severity.NOTE, "knee", text, amounts, leg.knee.mm, leg.knee_asked)
    foot, asked, hem = foot_girth(body, block.ease), leg.hem_asked, leg.hem.mm
    if leg.short or hem <= asked + SEAM:
        return
    text = "The hem is widened from {0} to {1}: "
    amounts = (asked, hem)
    if foot is None or hem > foot.mm + SEAM:
        text += "with a wider knee it keeps the cut of its style, and the calf its room."
    elif heel := body.get("heel_girth"):
        text += "closed, it must pass the heel, {2} round, and {3} more."
        amounts += (heel.mm, block.ease.heel)
    else:
        text += (
            "closed, it must pass the heel, which you did not measure: the ankle, {2} round, and {3} more."
        )
        amounts += (body["ankle_girth"].mm, hem - body["ankle_girth"].mm)
    yield Finding("hem-raised", Severity.NOTE, "hem", text, amounts, hem, asked)


def _between_levels(block: Block) -> Iterator[Finding]:
    """Check the leg every centimetre between the levels that were measured."""
    heights, girths = body_profile(block)
    if len(heights) < 2:
        return
    # Cloth that stretches is cut smaller than the body; no stretch of the leg may give more than its levels.
    gives = -min(block.ease.thigh, block.ease.knee, block.ease.calf, 0.0)
    worst = 0.0, 0.0
    for y in np.arange(max(heights[0], block.leg.hem_height.mm), min(heights[-1], block.thigh_level), 10.0):
        short = float(np.interp(y, heights, girths)) - _leg_room(block, float(y)) - gives
        worst = max(worst, (short, float(y)))
    if worst[0] > SEAM:
        text = "Between the measured levels the leg is up to {0} tighter than the body, {1} above the floor."
        yield Finding("leg-short", Severity.WARNING, "leg", text, worst, -worst[0], 0.0)


def _leg_room(block: Block, y: float) -> float:
    """Return how thick a leg of the fuller thigh finds room at a height in either leg, mm.

    A leg with a slimmer thigh is taken to be slimmer in proportion, down to its knee.
    """
    low, high = block.body["knee_height"].mm, block.body["inside_leg_height"].mm
    share = min(max((y - low) / (high - low), 0.0), 1.0)
    return min(half.leg_girth(max(y, half.levels.hem.mm)) + share * half.slimmer for half in block.halves)


def _means(block: Block) -> Iterator[Finding]:
    used = means_used(block)
    if used:
        lengths = [means for means in used if means.unit == "mm"]
        words = [f"{means.name} {_sign(means.amount)}{{{n}}}" for n, means in enumerate(lengths)]
        words += [
            f"{means.name} {_sign(means.amount)}{abs(means.amount):.1f}°"
            for means in used
            if means.unit != "mm"
        ]
        text = "To fit the crotch length the proportions were changed: " + "; ".join(words) + "."
        amounts = tuple(abs(means.amount) for means in lengths)
        yield Finding("means-used", Severity.NOTE, "crotch seam", text, amounts)


def _sign(amount: float) -> str:
    return "+" if amount > 0 else "−"


_TOLD = 0.5
"""A means that moved by less, mm or degrees, is not worth a word in the report (common practice)."""


def means_used(block: Block) -> tuple[Moved, ...]:
    """Return the means of fitting that moved by so much that it is told."""
    return tuple(means for means in block.moved if abs(means.amount) >= _TOLD)
