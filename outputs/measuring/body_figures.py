"""The body from front, side, seated, between the legs and from above, every measurement marked on it."""

from __future__ import annotations

from drafting.geometry.paths import Path
from drafting.geometry.points import Point, Vector
from outputs.canvas.canvas import Align, Canvas, Role, line
from outputs.measuring import body_outline as body
from outputs.measuring.body_outline import smooth
from outputs.measuring.tape_marks import CLEAR, Figure, arc, write_number

CAPTION = 2.6
"""Type size of the captions, mm."""
STEP = 6.4
"""Distance of two dimension lines, mm."""
CUT = 640
"""Level at which the drawing between the legs breaks off."""
ELASTIC = 14
"""Width of the elastic at the waist, mm of body."""
FRONT_MOST = -116
"""How far the trunk reaches forwards in side view."""
APART, OFF = 11.0, 2.4
"""Distance on paper of the two girths seen from above, and of a tape beside one of them, mm."""
WAIST_HALVES, HIP_HALVES = Vector(136, 98), Vector(176, 125)
"""Half axes of waist and hip seen from above, mm of body."""
_CROTCH = (
    (-102, body.WAIST), (-110, body.TOP_HIP), (-97, body.HIP), (-58, 788), (0, 768),
    (66, 790), (102, 850), (102, body.TOP_HIP), (88, body.WAIST),
)  # fmt: skip
CROTCH_TAPE, SEAM_POINT = smooth(_CROTCH), Point(0, 768)
"""The tape between the legs, and where the inside leg seams will meet on it."""


def draw_figures(canvas: Canvas, *, left: float, right: float, top: float, bottom: float) -> None:
    """Draw all views between four edges of a sheet, in mm; lower than 90 mm the numbers would touch."""
    floor = bottom + 2 * CAPTION
    scale = (top - floor - STEP) / body.TORSO
    front = Figure(canvas, Point(left + 2.6 * STEP + body.HALF_WIDTH * scale, floor), scale)
    _front(front)
    edge = front.at(body.HALF_WIDTH, 0).x + 2 * STEP
    side = Figure(canvas, Point(edge - body.TOES * scale, floor), scale)
    _side(side)

    edge = side.at(body.SEAT_POINT, 0).x + 4 * STEP
    width = right - edge
    depth = body.CHAIR_END - body.SEATED_TOES
    small = min((width - 1.6 * STEP) / depth, (top - floor) * 0.52 / body.SEATED_TORSO)
    seated = Figure(canvas, Point(edge - body.SEATED_TOES * small, top - body.SEATED_TORSO * small), small)
    _seated(seated)

    room = seated.foot.y - 4 * CAPTION - floor
    depth = body.SEAT_POINT - FRONT_MOST
    trunk = min(room / (body.TORSO - CUT), (width * 0.6 - 2 * STEP) / depth)
    _between_legs(Figure(canvas, Point(edge + STEP - FRONT_MOST * trunk, floor - CUT * trunk), trunk))
    heights = 2 * (WAIST_HALVES.y + HIP_HALVES.y)
    above = min((width * 0.4 - 1.4 * STEP) / (2 * HIP_HALVES.x), (room - APART - OFF) / heights)
    _from_above(
        canvas, Point(right - 1.3 * STEP - HIP_HALVES.x * above, floor + HIP_HALVES.y * above + OFF), above
    )


def _caption(figure: Figure, words: str, x: float, y: float) -> None:
    figure.canvas.text(words, Point(x, y), CAPTION, align=Align.CENTRE)


def _floor(figure: Figure, left: float, right: float) -> None:
    figure.leader(Point(left, figure.foot.y), Point(right, figure.foot.y))


def _x(contour: Path, y: float) -> float:
    place = contour.crossing(y)
    assert place is not None, f"the contour has no height {y}"
    return place.x


def _elastic(f: Figure, level: float, front: Path, back: Path) -> None:
    """Draw the elastic that marks the waist, seen from the side."""
    for y in (level - ELASTIC / 2, level + ELASTIC / 2):
        f.leader(f.at(_x(front, y), y), f.at(_x(back, y), y))


def _front(f: Figure) -> None:
    for path in body.FRONT_VIEW:
        f.stroke(path)
    column = f.at(body.HALF_WIDTH, 0).x + 6
    for key, y in (("waist_girth", body.WAIST), ("top_hip_girth", body.TOP_HIP), ("hip_girth", body.HIP)):
        x = _x(body.OUTER_LEG, y)
        f.girth(key, f.at(-x, y), f.at(x, y), Point(column, f.at(0, y).y))
    for key, y in (
        ("thigh_girth", body.CROTCH - 40),
        ("mid_thigh_girth", body.MID_THIGH),
        ("knee_girth", body.KNEE),
        ("calf_girth", body.CALF),
        ("ankle_girth", body.ANKLE),
    ):
        inner, outer = _x(body.INNER_LEG, y), _x(body.OUTER_LEG, y)
        f.girth(key, f.at(inner, y), f.at(outer, y), Point(column, f.at(0, y).y))
    _floor(f, f.at(-body.HALF_WIDTH, 0).x - 2.2 * STEP, f.at(body.HALF_WIDTH, 0).x)
    f.height("inside_leg_height", f.foot.x, f.foot.y, f.at(0, body.CROTCH).y - CLEAR, at=0.33)

    contour = body.mirrored(body.OUTER_LEG)
    for key, level, off in (("calf_height", body.CALF, 4.0), ("knee_height", body.KNEE, 10.5)):
        left, head = f.at(-body.HALF_WIDTH, 0).x - off, f.at(0, level).y
        f.leader(Point(f.at(_x(contour, level), 0).x - CLEAR, head), Point(left - 1, head))
        f.height(key, left, f.foot.y, head)
    for key, low, off in (("waist_to_top_hip", body.TOP_HIP, 3.0), ("waist_to_hip", body.HIP, 10.0)):
        tape = f.beside(contour, low, body.WAIST, -off)
        f.tape(tape)
        ends = tape.flatten()
        for end in (ends[0], ends[-1]):
            f.leader(Point(end[0] + off - CLEAR, end[1]), Point(end[0] - 1, end[1]))
        middle = ends[len(ends) // 2]
        f.number(key, Point(middle[0] - 3.2, middle[1]))
    f.stroke(body.KNEECAP, Role.DIMENSION)
    _caption(f, "front", f.foot.x, f.foot.y - CAPTION * 1.6)


def _side(f: Figure) -> None:
    for path in body.SIDE_VIEW:
        f.stroke(path)
    _elastic(f, body.WAIST, body.FRONT_CONTOUR, body.BACK_CONTOUR)
    last = f.at(body.SEAT_POINT, 0).x
    for key, level, step in (("hip_height", body.HIP, 1), ("waist_height", body.WAIST, 2)):
        x, y = last + step * STEP - 1, f.at(0, level).y
        f.leader(Point(f.at(_x(body.BACK_CONTOUR, level), 0).x + CLEAR, y), Point(x + 1, y))
        f.height(key, x, f.foot.y, y)
    f.height("stature", last + 3 * STEP - 1, f.foot.y, f.at(0, body.TORSO).y, at=0.4, open_end=True)
    _floor(f, f.at(body.TOES, 0).x, last + 3 * STEP)
    middle = smooth(((-6, body.WAIST), (-2, body.HIP), (-6, body.KNEE), (2, body.ANKLE), (2, 3)))
    f.stroke(middle, Role.TAPE)
    f.leader(f.at(-6, 640), f.at(-160, 640))
    f.number("outside_leg_length", f.at(-160, 640) + Vector(-3, 0))
    _caption(f, "side", f.foot.x, f.foot.y - CAPTION * 1.6)


def _seated(f: Figure) -> None:
    for path in (*body.SEATED_VIEW, *body.CHAIR):
        f.stroke(path)
    x, waist, seat = (
        f.at(body.CHAIR_END, 0).x + 0.6 * STEP,
        f.at(0, body.SEATED_WAIST).y,
        f.at(0, body.SEAT).y,
    )
    _elastic(f, body.SEATED_WAIST, body.LAP, body.SEATED_BACK)
    f.leader(Point(f.at(96, 0).x + CLEAR, waist), Point(x + 1, waist))
    f.leader(Point(f.at(body.CHAIR_END, 0).x + CLEAR, seat), Point(x + 1, seat))
    f.height("body_rise", x, seat, waist)
    f.girth("heel_girth", f.at(-334, 22), f.at(-444, 84), f.at(-530, 160))
    _floor(f, f.at(body.SEATED_TOES, 0).x, f.at(body.CHAIR_END, 0).x)
    _caption(f, "seated", f.at(-200, 0).x, f.foot.y - CAPTION * 1.6)


def _between_legs(f: Figure) -> None:
    for contour in (body.FRONT_CONTOUR, body.BACK_CONTOUR):
        f.canvas.stroke(f.beside(contour, CUT, body.TORSO, 0), Role.BODY)
    _elastic(f, body.WAIST, body.FRONT_CONTOUR, body.BACK_CONTOUR)
    f.stroke(CROTCH_TAPE, Role.TAPE)
    f.leader(f.at(SEAM_POINT.x, SEAM_POINT.y - 16), f.at(SEAM_POINT.x, SEAM_POINT.y + 16))
    total = f.at(0, 905)
    f.number("total_crotch_length", total)
    f.leader(Point(total.x, total.y - 2.8), f.at(12, 778))
    for key, end, x in (
        ("front_crotch_length", Point(-112, 880), -185),
        ("back_crotch_length", Point(104, 880), 195),
    ):
        number = f.at(x, 880)
        f.leader(f.at(end.x, end.y), number + Vector(3.0 if x < 0 else -3.0, 0))
        f.number(key, number)
    _caption(f, "between the legs", f.at(0, 0).x, f.at(0, CUT).y - CAPTION * 1.6)


def _from_above(canvas: Canvas, middle: Point, scale: float) -> None:
    """Draw the waist over the hip as seen from above, the front below; `middle` is that of the hip."""
    up = 2 * HIP_HALVES.y * scale + APART
    for halves, key, at in (
        (WAIST_HALVES, "front_waist_arc", middle + Vector(0, up)),
        (HIP_HALVES, "front_hip_arc", middle),
    ):
        across, along = halves.x * scale, halves.y * scale
        canvas.stroke(arc(at, across, along, 0, 180), Role.BODY)
        canvas.stroke(arc(at, across, along, 180, 360), Role.TAPE)
        for x in (-across, across):
            canvas.stroke(line((at.x + x - 1.2, at.y), (at.x + x + 1.2, at.y)), Role.DIMENSION)
        write_number(canvas, key, at + Vector(0, -along + 3.2))
    across, along = HIP_HALVES.x * scale + OFF, HIP_HALVES.y * scale + OFF
    canvas.stroke(arc(middle, across, along, -90, 90), Role.TAPE)
    write_number(canvas, "half_hip_arc", middle + Vector(across + 3.4, 0))
    foot = middle.y - along - CAPTION * 1.8
    canvas.text("from above", Point(middle.x, foot), CAPTION, align=Align.CENTRE)
    foot = middle.y + up - WAIST_HALVES.y * scale - 2.6
    canvas.text("front", Point(middle.x, foot), CAPTION * 0.8, align=Align.CENTRE)
