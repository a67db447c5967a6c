"""Every tolerance of the project, each with its reason. Millimetres unless the name says otherwise."""

JOIN = 1e-6
"""Two ends closer than this are one point: far above rounding (1e-12), far below anything cut."""

LENGTH = 1e-4
"""A length solved for (a seam, a waist line) is done when it is this close: a tenth of a micron."""

FLATTEN = 0.01
"""Largest gap between a curve and the chords that stand for it, where a polygon is needed."""

SEAM = 1.0
"""Two sewn edges may miss their intended difference by this: a sewer cannot see it (common practice)."""

CROTCH = 10.0
"""The crotch seam may miss the body's crotch length plus ease by this much and still count as fitted: a tape
along it errs by 10 to 20 (own judgement)."""

ARC = 5.0
"""The front of the waist may miss its measured arc plus ease by this much (own judgement)."""

ANGLE_DEG = 3.0
"""A joined curve that turns less than this at the seam is smooth to the eye (common practice, no source)."""

WAIST_CORNER_DEG = 5.0
"""The same where front and back waist meet at the side seam: a corner hidden in the waistband seam
(common practice)."""

HEM_CORNER_DEG = 8.0
"""The same at the hem, which is kept straight so that it turns up flat (common practice, no source)."""

MITRE = 2.5
"""A cut corner lies at most this many allowances from the sew line; sharper corners are blunted (common
practice, no source)."""

NOTCH = 0.5
"""Two notches of one name may miss each other along the seam by this much: half the width of a snip."""

SAME = 0.1
"""Two pieces whose places differ by no more are one piece: a fifth of the printed cut line, no more than a
print itself may be off."""
