"""Making up: what to buy, the order of sewing for the pieces that exist, cautions, and how to test a swatch.

All of it is common practice for home-sewn jeans without one source, but where a line says otherwise.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from drafting.base.findings import Sentence
from drafting.pieces.kinds import EdgeKind, PieceKind
from drafting.pieces.pattern import Section
from drafting.pieces.pieces import Material, Piece
from styles.base.part import Notion, counted
from styles.choice.style import BackCut, Felling, Fly, Style

_EDGE, _TWO_ROWS = "2 to 3 mm (1/8 in)", "2 to 3 mm and 9 mm (1/8 and 3/8 in)"
"""Topstitching from an edge or seam: 1/16 to 1/8 in, the second row about 3/8 (a hand drafter of selvedge
jeans). Small distances are read in both units, as presser feet are."""

_PAST_HOLE = "10 mm (3/8 in)"
"""The tip of a dart lies so far beyond its hole (`styles.top.back_dart`)."""

_SWATCH, _MARKED = 500.0, 350.0
"""ISO 5077: a specimen at least 50 cm square, marks at least 35 cm apart and 5 cm from the edge."""


@dataclass(frozen=True)
class _Step:
    """One step of the sewing: the kinds of pieces it needs, and what is done."""

    needs: tuple[PieceKind, ...]
    does: str
    amounts: tuple[float, ...] = ()


_FLY = {
    Fly.ZIP: _Step(
        (PieceKind.FLY_FACING, PieceKind.FLY_SHIELD),
        "Sew the crotch seam of the fronts up to the zip stop. Sew the fly facing to the lapping "
        "front and the zip to facing and shield; press the under front back some 6 mm less than to "
        "its centre line, so that the lap covers the zip. Then topstitch the fly along its template and "
        "bar-tack it at the bottom of the curve.",
    ),
    Fly.BUTTONS: _Step(
        (PieceKind.FLY_FACING, PieceKind.BUTTONHOLE_FACING, PieceKind.FLY_SHIELD),
        "Sew the crotch seam of the fronts up to the fly stop. Sew the fly facing to the lapping front and "
        f"press it in. Sew the pair for the buttonholes face to face along the centre front, {_EDGE} "
        "inside the line so that it does not show; turn it and work the buttonholes. Lay it behind the "
        "facing, waist and inner edges level, topstitch the fly along its template through all layers, and "
        "bar-tack the two together between the buttonholes and at the bottom of the curve. Sew the shield "
        "to the other front; set its buttons through both layers.",
    ),
}

_INSEAM = {
    Felling.PLAIN: "Sew the inseams from hem to hem in one go over the crotch, ease in what the notches "
    "leave, overlock both allowances together.",
    Felling.FELLED: "Sew the inseams from hem to hem in one go over the crotch, fold the wide allowance "
    "over the narrow one, press, and topstitch the fold down: a flat-felled seam.",
}

_YOKE = {
    Felling.PLAIN: "Sew each yoke to its back leg, press the seam up, and topstitch in two rows, "
    f"{_TWO_ROWS} from the seam.",
    Felling.FELLED: "Sew each yoke to its back leg, fold the leg's wide allowance over the yoke's narrow "
    f"one, press it up, and topstitch in two rows, {_TWO_ROWS} from the seam: a flat-felled seam.",
}

_TOOLS = (
    Sentence("Needle: jeans 90/14 for light denim, 100/16 for heavy; a new one for each pair."),
    Sentence(
        "Stitch: 2.5 to 3 mm for seams; 3.5 to 4 for topstitching, heavy thread above, usual one below."
    ),
    Sentence("Thread: two reels of all-purpose, one or two of topstitching thread."),
)

_CAUTIONS = (
    Sentence("Shears and rotary cutters: cut away from your hand and close the blade when you lay it down."),
    Sentence(
        "The iron stays hot after it is switched off, and fusing takes it hotter and longer than pressing."
    ),
    Sentence(
        "Rivets, buttons and snaps: hammer on a firm block with your eyes covered, fingers clear of the tool."
    ),
    Sentence(
        "Small parts: on clothes for children under three leave off buttons, rivets and snaps that a "
        "child could pull off and swallow; the rules of your country say what is allowed."
    ),
    Sentence(
        "Clothes for children up to fourteen: mind the rules on cords and drawstrings at waist and hems "
        "(EN 14682)."
    ),
)

# After ISO 5077; the example of the shrunk mark is arithmetic.
_SWATCH_TEST = (
    Sentence(
        "Cut a square of {0} from the cloth you will use, not from its selvedge, and mark which way the "
        "warp runs.",
        (_SWATCH,),
    ),
    Sentence(
        "Mark two points {0} apart along the warp and two across it, at least {1} from the edges; three "
        "pairs each way tell more (after ISO 5077).",
        (_MARKED, 50.0),
    ),
    Sentence(
        "Wash, dry and iron it exactly as you will the jeans; loomstate denim goes on shrinking up to the "
        "third wash."
    ),
    Sentence("Let it lie flat until it is cool and dry, then measure both ways again."),
    Sentence(
        "Change in percent = (after - before) / before x 100, a minus for shrinking: {0} that became {1} "
        "is -4.0 %. Give lengthwise and crosswise change apart.",
        (_MARKED, 0.96 * _MARKED),
    ),
    Sentence(
        "Either wash the cloth before cutting and give no change, or give the change and cut it unwashed: "
        "never both. For the stretch, pull {0} of it crosswise along a ruler, without strain, and give "
        "the gain in percent.",
        (100.0,),
    ),
)


def making_up(pieces: Iterable[Piece], notions: Iterable[Notion], style: Style) -> tuple[Section, ...]:
    """Return what is printed for the sewer: what to buy, the order of sewing, cautions, and the swatch test.

    Args:
        pieces: All pieces; a step appears only where every piece it needs is among them.
        notions: What the parts need; equal ones are counted together.
        style: Its allowances decide how inseam and hem are sewn, its fly how that is.
    """
    pieces = tuple(pieces)
    return (
        Section("What you need besides denim", (*_shopping(pieces, notions), *_TOOLS)),
        Section("In the order of sewing", tuple(_numbered(pieces, style))),
        Section("Take care", _CAUTIONS),
        Section("How much the cloth shrinks and stretches", _SWATCH_TEST),
    )


def _shopping(pieces: tuple[Piece, ...], notions: Iterable[Notion]) -> Iterator[Sentence]:
    for notion in counted(notions):
        text = f"{notion.count} x {notion.name}"
        yield Sentence(f"{text}, {{0}}", (notion.length,)) if notion.length else Sentence(text)
    for material in (Material.POCKETING, Material.INTERFACING):
        cut = [piece.name_in_its_cloth for piece in pieces if piece.cutting.material is material]
        if cut:
            yield Sentence(f"{material.value.capitalize()} for: {', '.join(cut)}.")


def _numbered(pieces: tuple[Piece, ...], style: Style) -> Iterator[Sentence]:
    there = {piece.kind for piece in pieces if piece.cutting.material is not Material.INTERFACING}
    possible = (step for step in _steps(style, pieces) if there.issuperset(step.needs))
    for number, step in enumerate(possible, start=1):
        yield Sentence(f"{number}. {step.does}", step.amounts)


def _steps(style: Style, pieces: tuple[Piece, ...]) -> tuple[_Step, ...]:
    """Return every step there could be, in order."""
    room = style.allowances
    return (
        _Step((), f"{_fuse(pieces)}ark every notch and drill hole."),
        _Step(
            (PieceKind.WATCH_POCKET,), "Hem the watch pocket and topstitch it onto the right pocket facing."
        ),
        _Step(
            (PieceKind.POCKET_FACING,),
            "Sew each pocket facing onto its bag. Sew the bag to the front's pocket opening, turn, "
            f"topstitch the opening {_EDGE} from its edge, close the bag, baste it to waist and side seam.",
        ),
        _FLY[style.fly],
        _Step(
            (PieceKind.BACK_POCKET,),
            "Hem the back pockets, press their sides in, lay them over the drill marks and sew them on in "
            f"two rows, {_TWO_ROWS} from the edge; bar-tack the upper corners.",
        ),
        _Step((PieceKind.BACK_YOKE,), _YOKE[room.felling]),
        *_centre_back(style, pieces),
        _Step((PieceKind.FRONT_LEG, PieceKind.BACK_LEG), _INSEAM[room.felling]),
        _Step(
            (PieceKind.FRONT_LEG, PieceKind.BACK_LEG),
            "Sew the side seams from the hem up, notches at knee and hip meeting. Try on now: this seam "
            "is the one to mend. Press it towards the back and topstitch from the waist to below the "
            "pocket.",
        ),
        _Step(
            (PieceKind.BELT_LOOPS,),
            "Fold the strip for the belt loops lengthwise in three, topstitch both edges, and cut it at "
            f"the marks{_into_loops(pieces)}. Baste the loops to the waist seam at their notches and at the "
            "centre back.",
        ),
        _Step(
            (PieceKind.FRONT_BAND, PieceKind.BACK_BAND),
            "Sew front and back waistband together at the sides, outer band and facing apart; on the "
            "lapping side cut the front off first at its line. Sew both along the upper edge and the "
            "ends, then the outer band to the waist seam; turn the facing under and topstitch all round, "
            f"{_EDGE} from the edge.",
        ),
        _Step(
            (PieceKind.STRAIGHT_BAND,),
            "Sew the outer half of the waistband to the waist seam, its marks on centre back and side "
            "seams. Fold it along its middle, close the ends, turn the inner edge under and topstitch all "
            f"round, {_EDGE} from the edge.",
        ),
        _Step(
            (PieceKind.BELT_LOOPS,),
            "Turn the upper ends of the belt loops in, a little above the band, and bar-tack both ends.",
        ),
        _Step((PieceKind.FRONT_LEG, PieceKind.BACK_LEG), _hem(style), (room.hem / 2, style.turn_up)),
        _Step(
            (PieceKind.FRONT_LEG,),
            "Work the buttonhole, set the button and the rivets, first on a scrap of as many layers of "
            "cloth.",
        ),
    )


def _into_loops(pieces: tuple[Piece, ...]) -> str:
    """Return how many loops the strip makes, such as " into 5 loops"."""
    strips = (piece for piece in pieces if piece.kind is PieceKind.BELT_LOOPS)
    return "".join(f" into {1 + len(strip.marks)} loops" for strip in strips)


def _fuse(pieces: tuple[Piece, ...]) -> str:
    stiffened = any(piece.cutting.material is Material.INTERFACING for piece in pieces)
    return "Fuse the interfacing to the pieces it copies; m" if stiffened else "M"


def _centre_back(style: Style, pieces: tuple[Piece, ...]) -> Iterator[_Step]:
    """Yield how the darts are sewn, where there are any, and the centre back."""
    if any(piece.has(EdgeKind.DART) for piece in pieces):
        yield _Step(
            (PieceKind.BACK_LEG,),
            f"Sew the darts of the backs from the waist, along their legs, to {_PAST_HOLE} beyond the drill "
            "hole; knot the ends and press the darts towards the centre back.",
        )
    meeting = ", yoke seams meeting" if style.back is BackCut.YOKE else ""
    yield _Step(
        (PieceKind.BACK_LEG,), f"Sew the backs together at the centre back{meeting}; topstitch in two rows."
    )


def _hem(style: Style) -> str:
    room = style.allowances
    if style.turn_up:
        hem = "Turn the raw edge in by {0}" if room.hem else "Turn the raw edge in by half of what you added"
        return (
            f"{hem}. Fold the end of the leg to the inside along the fold of the turn-up, {{1}} below the "
            f"hem line, and sew the turned edge down {_EDGE} from it. Then fold the turn-up of {{1}} "
            "outwards along the hem line, press, and catch it at both seams."
        )
    if room.hem:
        return "Turn the hems up twice by {0} and topstitch them from the inside."
    return (
        "Turn the hems up twice, by half of the allowance that you added, and topstitch them from the inside."
    )
