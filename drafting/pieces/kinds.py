"""What pieces, edges, places and seams are. What they are called in print is in `drafting.pieces.words`.

Code asks for a kind and a side, never for a printed name: the values here are keys, and stay when a name
changes.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from drafting.body.measurements import Side


class PieceKind(StrEnum):
    """What a piece is."""

    FRONT_LEG = "front leg"
    BACK_LEG = "back leg"
    BACK_YOKE = "back yoke"
    POCKET_FACING = "pocket facing"
    BAG_BACK = "pocket bag back"
    BAG_FRONT = "pocket bag front"
    WATCH_POCKET = "watch pocket"
    BACK_POCKET = "back pocket"
    FLY_FACING = "fly facing"
    BUTTONHOLE_FACING = "fly facing for buttonholes"
    FLY_SHIELD = "fly shield"
    FLY_TEMPLATE = "fly topstitching template"
    FRONT_BAND = "front waistband"
    BACK_BAND = "back waistband"
    STRAIGHT_BAND = "waistband"
    BELT_LOOPS = "belt loops"


@dataclass(frozen=True)
class PieceId:
    """Which piece of a pattern.

    Attributes:
        kind: What it is.
        side: Whose it is: the side of the body where the sides differ; of the fly the front it belongs to.
        interfacing: Whether it is the interfacing of such a piece.
    """

    kind: PieceKind
    side: Side | None = None
    interfacing: bool = False


class EdgeKind(StrEnum):
    """What an edge of a piece is; two edges of a kind on different pieces need not meet."""

    WAIST = "waist"
    OUTER_WAIST = "outer waist"
    """The waist from the dart to the side."""
    DART = "dart"
    SIDE = "side seam"
    HEM = "hem"
    INSEAM = "inseam"
    CROTCH = "crotch seam"
    YOKE = "yoke seam"
    CENTRE_BACK = "centre back"
    CENTRE_FRONT = "centre front"
    OPENING = "pocket opening"
    INNER = "inner edge"
    OUTER = "outer edge"
    UPPER = "upper edge"
    LOWER = "lower edge"
    BAG = "bag edge"
    TOPSTITCHING = "topstitching"
    FOLD = "fold"
    LOWER_END = "lower end"
    WAIST_SEAM = "waist seam"
    UPPER_UNDERLAP = "upper edge of the underlap"
    SHIELD_SEAM = "shield seam"
    FRONT_END = "front end"
    RIGHT_FRONT_END = "front end on the right"
    LEFT_FRONT_END = "front end on the left"
    RIGHT_FRONT_WAIST = "right front waist seam"
    RIGHT_BACK_WAIST = "right back waist seam"
    LEFT_FRONT_WAIST = "left front waist seam"
    LEFT_BACK_WAIST = "left back waist seam"
    POCKET_LEFT = "left side"
    POCKET_RIGHT = "right side"
    POCKET_BOTTOM = "bottom"
    POCKET_OPENING = "opening"
    STRIP_LOWER = "lower side"
    STRIP_UPPER = "upper side"
    STRIP_FAR_END = "far end"
    STRIP_NEAR_END = "near end"
    INNER_DART_LEG = "inner dart leg"
    """A marked line that is sewn like an edge, as the next one."""
    OUTER_DART_LEG = "outer dart leg"


class PlaceKind(StrEnum):
    """What a notch or a mark shows."""

    HIP = "hip"
    KNEE = "knee"
    YOKE = "yoke"
    POCKET_CORNER = "pocket corner"
    POCKET_END = "pocket end"
    ZIP_STOP = "zip stop"
    FLY_STOP = "fly stop"
    LOOP = "loop"
    INNER_DART_LEG = "inner dart leg"
    OUTER_DART_LEG = "outer dart leg"
    DART_TIP = "dart tip"
    CREASE = "crease"
    TURN_UP_FOLD = "fold of the turn-up"
    TURN_UP_HEM = "lies on the hem line"
    BACK_POCKET = "back pocket"
    POCKET_OPENING = "pocket opening"
    POCKET_FACING = "pocket facing"
    WATCH_POCKET = "watch pocket"
    WATCH_POCKET_ON_RIGHT = "watch pocket, right only"
    BUTTON = "button"
    BUTTONHOLE = "buttonhole"
    CUT = "cut"
    CUT_OFF_ON_LEFT = "cut off here on the left"
    """The line along which the lapping side's band loses its underlap, as the next one."""
    CUT_OFF_ON_RIGHT = "cut off here on the right"
    FOLD = "fold"
    CENTRE_FRONT = "centre front"
    CENTRE_BACK = "centre back"
    LEFT_SIDE_SEAM = "left side seam"
    RIGHT_SIDE_SEAM = "right side seam"


class SeamKind(StrEnum):
    """What a seam joins."""

    INSEAM = "inseam"
    SIDE = "side seam"
    FRONT_CROTCH = "front crotch seam"
    BACK_CROTCH = "back crotch seam"
    YOKE = "leg to yoke"
    BACK_DART = "back dart"
    OPENING = "pocket opening"
    OPENING_OVER_FACING = "pocket opening over its facing"
    BAG = "pocket bag"
    FACING_AT_WAIST = "pocket facing to bag at the waist"
    FACING_AT_SIDE = "pocket facing to bag at the side"
    BAG_FRONT_AT_WAIST = "pocket bag front at the waist"
    BAG_FRONT_AT_SIDE = "pocket bag front at the side"
    BAG_BACK_AT_SIDE = "pocket bag back at the side"
    AT_CENTRE_FRONT = "at the centre front"
    BEHIND_FACING = "behind the facing"
    FRONT_TO_BAND = "front to the waistband"
    BACK_TO_BAND = "back to the waistband"
    BAND_SIDE = "side of the waistband"
    BAND_CENTRE_BACK = "centre back of the waistband"
    BAND_INSIDE = "inside of the waistband"


class CornerKind(StrEnum):
    """Which edge runs on across a seam."""

    CROTCH_ACROSS_INSEAM = "crotch across the inseam"
    WAIST_ACROSS_SIDE = "waist across the side seam"
    HEM_ACROSS_SIDE = "hem across the side seam"
    HEM_ACROSS_INSEAM = "hem across the inseam"
    WAIST_AT_CENTRE_FRONT = "waist at the centre front"
    WAIST_AT_CENTRE_BACK = "waist at the centre back"
    YOKE_ACROSS_SIDE = "yoke across the side seam"
    YOKE_ACROSS_CENTRE_BACK = "yoke across the centre back"
    BAND_TOP_ACROSS_SIDE = "upper edge of the waistband across its side"
    BAND_SEAM_ACROSS_SIDE = "waist seam of the waistband across its side"
